import data from '../../../../data/service/charge.json' with { type: 'json' }
import { dangersOf } from '../../../dangers.ts'
import { CalcError, refusal } from '../../../errors.ts'
import { isCarbonDioxide, type OpeningJob } from '../../../fields/index.ts'
import type { Refrigerant } from '../../../refrigerant/index.ts'
import type { ChargeInput } from './fields.ts'

export interface Decision {
  /** The job that the answer follows; a half that did not seal makes another of the one asked. */
  readonly applied: OpeningJob
  readonly kind: 'correction' | 'full-charge'
  readonly why: string
  /** Whether the couplings were never of a kind that holds the charge. */
  readonly notTwoValves: boolean
}

type Asked = Pick<ChargeInput, 'job' | 'want' | 'sealed' | 'couplingType'>

const { why, hints } = data

/**
 * Which job applies, and whether a correction can be right in it.
 *
 * @throws {CalcError} `refused` when a correction is wanted where only the weighed full charge is right.
 */
export function decide(input: Asked): Decision {
  const decision = byJob(input)
  if (input.want === 'correction' && decision.kind === 'full-charge') {
    throw new CalcError('refused', `A correction is not right here. ${decision.why}`, {
      path: ['want'],
      hint: hints['leave-want-out'],
    })
  }
  if (input.want === 'full-charge' && decision.kind === 'correction') {
    return { ...decision, kind: 'full-charge', why: `${decision.why} ${why['full-asked']}` }
  }
  return decision
}

function byJob({ job, sealed, couplingType }: Asked): Decision {
  const notTwoValves =
    job === 'couplers-parted' && couplingType !== undefined && couplingType !== 'two-valve'
  if (job === 'system-opened' || job === 'pressure-lost') {
    return { applied: job, kind: 'full-charge', why: why[job], notTwoValves }
  }
  if (notTwoValves || sealed === false) {
    const applied = job === 'couplers-parted' ? 'pressure-lost' : 'system-opened'
    const first = notTwoValves
      ? 'not-two-valves'
      : job === 'couplers-parted'
        ? 'half-leaked'
        : 'section-leaked'
    return { applied, kind: 'full-charge', why: `${why[first]} ${why[applied]}`, notTwoValves }
  }
  return { applied: job, kind: 'correction', why: why[job], notTwoValves }
}

/**
 * Carbon dioxide's couplings never part under charge.
 *
 * @throws {CalcError} `refused`, level stop.
 */
export function refuseDangerous(r: Refrigerant, input: ChargeInput): void {
  const couplings = input.couplings ?? input.parted ?? (input.couplingsOn ? [1] : [])
  if (!isCarbonDioxide(r)) return
  if (input.job !== 'couplers-parted' && couplings.length === 0) return
  throw refusal('Do not part couplings of an R-744 system under charge.', {
    path: ['job'],
    hint: hints['carbon-dioxide-couplings'],
    cautions: dangersOf({ refrigerant: r, does: ['parts-couplings'] }),
  })
}
