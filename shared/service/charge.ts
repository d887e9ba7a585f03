import { ALL_DANGERS } from '../dangers.ts'
import { defineOperation } from '../operation.ts'
import { lawOfJob } from '../rules/job-law.ts'
import { chargeFields } from './charge/input/fields.ts'
import { checkItems } from './charge/input/most-items.ts'
import { computeCharge } from './charge/verdict/answer.ts'
import { chargeResult } from './charge/verdict/result.ts'

/** How much refrigerant goes back in, as an operation. */
export const charge = defineOperation({
  name: 'charge',
  opens: lawOfJob,
  summary: 'How much refrigerant goes back in after a job',
  description:
    'After couplers were parted, a section was opened, the whole system was opened or pressure was lost: the mass to weigh in, its band, and what to set on the scale. Of parted couplings without a maker’s figure it bounds what can be gone by a caliper. Refuses a correction where only the weighed full charge is right, and never makes up a label charge or the spill volume of a coupling.',
  fields: chargeFields,
  result: chargeResult,
  cautions: {
    always: [
      'pressure',
      'cold-burns',
      'asphyxiation',
      'goggles-even-empty',
      'weigh-the-charge',
      'maker-first',
      'local-rules',
    ],
    mayAlso: ALL_DANGERS,
  },
  example: {
    refrigerant: 'R-134a',
    job: 'section-opened',
    sealed: true,
    labelCharge: '2 lb 6 oz',
    hoseSize: '#8',
    length: '9 ft ±0.5 ft',
    phase: 'liquid',
    temperature: '110 °F ±5 °F',
    ambient: '75 °F',
    serviceHoseBore: '1/4 in',
    serviceHoseLength: '72 in',
    serviceHoseHolds: 'liquid',
  },
  check: checkItems,
  compute: (input) => computeCharge(input),
})
