import figures from '../../../../data/service/diagnosis.json' with { type: 'json' }
import type { FaultKind } from '../../../cycle/index.ts'
import type { Cause } from '../../../diagnosis/hypotheses.ts'
import type { Pattern } from '../../../diagnosis/patterns.ts'
import type { AtRest } from '../../../physics/at-rest.ts'

const { againstPattern, againstVacuum, againstRest, ruledOut: againstLook } = figures.evidence
/** What each published pattern stands for, of the faults of the model. */
const FAULTS_OF = figures.evidence.patterns as Readonly<Record<string, readonly FaultKind[]>>

/** Patterns of a low side that draws in air through any leak: nothing but what starves it comes so far. */
export const VACUUM: readonly string[] = ['restriction-in-vacuum', 'starved-in-vacuum']

/** Causes of the model that the first of some patterns stands for, that of its headline first. */
export const causesOf = ([first]: readonly Pattern[]): readonly FaultKind[] =>
  (first && FAULTS_OF[first.id]) ?? []

/** What a pressure at rest off saturation stands for, whatever the machine shows when it runs. */
export const causeAtRest = (rest: AtRest | undefined): FaultKind | undefined =>
  rest?.state === 'above' ? 'air' : rest?.state === 'below' ? 'undercharge' : undefined

/** What was looked for and not found: a machine at rest on saturation has no air in it. */
export const ruledOutBy = ({ rest, ruledOut }: Evidence): readonly FaultKind[] =>
  rest?.state === 'at' ? [...ruledOut, 'air'] : ruledOut

/** What speaks beside the machine model. */
export interface Evidence {
  /** Published patterns that the readings surely show. */
  readonly patterns: readonly Pattern[]
  /** The pressure at rest against saturation, where both were read. */
  readonly rest: AtRest | undefined
  readonly ruledOut: readonly FaultKind[]
}

/** From this severity on, air in the system shows at rest. */
const AIR_SHOWS_FROM = 0.15
/** From this severity on, so little is left that no liquid stands in it at rest. */
const EMPTY_FROM = 0.9

/** ln of how likely the evidence is if this is the cause, against a cause that explains it. */
export function logEvidence(
  { patterns, rest, ruledOut }: Evidence,
  { cause, severity }: { readonly cause: Cause; readonly severity: number },
): number {
  if (cause === 'reading-or-test-wrong') return 0
  let log = 0
  for (const { id } of patterns) {
    if (!(FAULTS_OF[id] as readonly Cause[] | undefined)?.includes(cause))
      log += Math.log(VACUUM.includes(id) ? againstVacuum : againstPattern)
  }
  const air = cause === 'air' && severity >= AIR_SHOWS_FROM
  const empty = cause === 'undercharge' && severity >= EMPTY_FROM
  if (rest?.state === 'above' && !air) log += Math.log(againstRest)
  if (rest?.state === 'at' && (air || empty)) log += Math.log(againstRest)
  if (rest?.state === 'below' && !empty) log += Math.log(againstRest)
  if ((ruledOut as readonly Cause[]).includes(cause)) log += Math.log(againstLook)
  return log
}
