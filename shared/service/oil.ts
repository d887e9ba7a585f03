import { ALL_DANGERS } from '../dangers.ts'
import { defineOperation } from '../operation.ts'
import { lawOfJob } from '../rules/job-law.ts'
import { computeOil } from './oil/compute.ts'
import { oilFields } from './oil/fields.ts'
import { oilResult } from './oil/result.ts'

/** How much oil goes back in, and of which type, as an operation. */
export const oil = defineOperation({
  name: 'oil',
  opens: lawOfJob,
  summary: 'How much compressor oil goes back in, and whether its type may',
  description:
    "Oil per replaced part from published tables with their spread, for a new compressor by a published drain rule, for a sudden leak, after a flush, and for what recovery brought out; never above the system's total. The maker's figure overrides all of it. An oil that must not go in (PAG in an electric compressor, mineral oil with R-134a, another family than the one in the machine) is refused with the reason.",
  fields: oilFields,
  result: oilResult,
  cautions: { always: ['pressure', 'maker-first', 'local-rules'], mayAlso: ALL_DANGERS },
  example: {
    refrigerant: 'R-134a',
    replaced: ['condenser', 'drier'],
    oilTotal: '8 fl oz',
    leak: 'sudden',
    newOil: 'PAG 46',
    existingOil: 'PAG 46',
    compressorDrive: 'open',
  },
  compute: computeOil,
})
