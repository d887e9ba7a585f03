import type { CautionId } from './cautions.ts'
import type { Assumption, Computation, Step, Warning } from './operation.ts'
import type { Source } from './sources.ts'

/** What the parts of a step gather on the way to its answer. */
export interface Notes {
  readonly steps: Step[]
  readonly cautions: CautionId[]
  readonly sources: Source[]
  readonly assumptions: Assumption[]
  readonly warnings: Warning[]
}

/** Notes with nothing in them yet. */
export const newNotes = (): Notes => ({
  steps: [],
  cautions: [],
  sources: [],
  assumptions: [],
  warnings: [],
})

/** A result with what was noted on the way to it. */
export const withNotes = <R>(result: R, notes: Notes): Computation<R> => ({ result, ...notes })
