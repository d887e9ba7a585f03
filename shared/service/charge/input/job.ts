import { CalcError } from '../../../errors.ts'
import { OPENING_JOBS, type OpeningJob } from '../../../fields/index.ts'
import type { Notes } from '../../../notes.ts'
import type { AskedCharge, ChargeInput } from './fields.ts'

/** Whoever describes couplings has parted them: then the job need not be named. */
const DESCRIBED = ['couplingType', 'parted', 'couplings', 'couplingsOn'] as const

/** The input with its job. @throws {CalcError} `missing-input` where nothing says which. */
export function withJob(
  asked: AskedCharge,
  { assumptions }: Pick<Notes, 'assumptions'>,
): ChargeInput {
  if (asked.job) return { ...asked, job: asked.job }
  if (DESCRIBED.every((name) => asked[name] === undefined)) {
    throw new CalcError('missing-input', '"job" is missing.', {
      path: ['job'],
      hint: `It takes: ${OPENING_JOBS.join(', ')}.`,
    })
  }
  const job: OpeningJob = 'couplers-parted'
  assumptions.push({
    field: 'job',
    taken: job,
    because: 'couplings were described and no other job was named',
    short: 'couplings parted, nothing else opened',
  })
  return { ...asked, job }
}
