import data from '../../../data/service/lesson.json' with { type: 'json' }
import { FAULT_KINDS, type FaultKind } from '../../cycle/index.ts'
import type { Cause } from '../../diagnosis/index.ts'
import { TEXTS as SIMULATED } from '../simulate/texts.ts'

/** Every sentence of this step: they are edited in `data/service/lesson.json`. */
export const TEXTS = data

/** A cause that can be named: what a machine can have, or nothing. */
export type Named = FaultKind | 'none'
export const NAMED = ['none', ...FAULT_KINDS] as const

/** A fault that a case is drawn from, with the ends of its severity. */
interface Truth {
  readonly fault: Named
  readonly from?: number
  readonly to?: number
}

/** What is often said, and the cases that speak against it. */
export interface Topic {
  readonly id: string
  readonly claim: string
  readonly source: keyof typeof data.sources
  readonly machines: readonly string[]
  /** Where the weather lies from the nominal one, K, and its humidity. */
  readonly weather?: {
    readonly ambientK: number
    readonly returnAirK: number
    readonly humidity: number
  }
  /** The moves are counted from the nominal weather, not from the sound machine in that of the case. */
  readonly before?: 'nominal'
  /** What the saying supposes: its moves are predicted. */
  readonly supposed: { readonly fault: Named; readonly severity?: number }
  readonly truths: readonly Truth[]
  readonly broken: string
}

export const TOPICS = data.topics as unknown as readonly Topic[]
export const TOPIC_IDS = TOPICS.map(({ id }) => id) as [string, ...string[]]

/** A cause in words: "condenser short of air". */
export const wordsOf = (cause: Cause | Named): string =>
  cause === 'none' || cause === 'reading-or-test-wrong'
    ? TEXTS.causes[cause === 'none' ? 'none' : 'reading-or-test-wrong']
    : SIMULATED.faults[cause]
