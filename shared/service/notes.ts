import type { Caution } from '../cautions.ts'
import type { Assumption, Computation, Step, Warning } from '../operation.ts'
import type { Source } from '../sources.ts'

/** What the parts of a step gather on the way to its answer. */
export interface Notes {
  readonly steps: Step[]
  readonly cautions: Caution[]
  readonly sources: Source[]
  readonly assumptions: Assumption[]
  readonly warnings: Warning[]
}

export const newNotes = (): Notes => ({
  steps: [],
  cautions: [],
  sources: [],
  assumptions: [],
  warnings: [],
})

export const withNotes = <R>(result: R, notes: Notes): Computation<R> => ({ result, ...notes })
