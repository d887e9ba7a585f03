import type { Figure, Level } from '../../../answer/told.ts'
import type { PressureReading } from '../../../quantity/index.ts'
import type { PullDownResult } from '../pull-down-part.ts'
import type { risePart } from '../rise-part.ts'
import type { sentences } from '../sentences.ts'
import type { TargetResult } from '../target-part.ts'
import type { WaterResult } from '../water-part.ts'

/** What was found, of which the answer is told. */
export interface Found {
  readonly target: TargetResult
  /** Fields of the target for which common practice stands. */
  readonly assumed: readonly string[]
  readonly vacuum: PressureReading | undefined
  readonly water: WaterResult | undefined
  readonly pullDown: PullDownResult | undefined
  readonly rise: ReturnType<typeof risePart>
}

export type Next = keyof typeof sentences.next

/** An answer by the ids of its sentences; the entry says which. */
export interface Says {
  /** `check` unless it says otherwise. */
  readonly level?: Level
  readonly headline: keyof typeof sentences.headlines
  readonly figures: readonly (Figure | undefined)[]
  readonly next: readonly (Next | false)[]
}
