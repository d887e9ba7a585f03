import type { Warning } from '../../operation.ts'
import type { ChargeInput, Job } from './job.ts'

/** Fields that went into nothing, and why: nobody should think that they counted. */
export function unusedChargeFields(
  input: ChargeInput,
  job: Job,
  kind: 'correction' | 'full-charge',
): readonly Warning[] {
  const rules = kind === 'full-charge' ? ofFullCharge(input) : ofCorrection(input, job)
  return rules
    .filter(([field, unused]) => unused && input[field] !== undefined && input[field] !== false)
    .map(([field, , why]) => ({ code: 'not-used', message: `${field} was not used: ${why}.` }))
}

type Rule = readonly [field: keyof ChargeInput, unused: boolean, why: string]

function ofFullCharge(input: ChargeInput): readonly Rule[] {
  const lost = 'where the full charge is weighed in, what was lost before does not matter'
  const noPart = 'no altered part of oldVolume, newVolume or parts takes it'
  const stateless = !input.parts && !input.oldVolume && !input.newVolume && !hasSection(input)
  return [
    ...(['spillVolume', 'spillFrom', 'spillTo', 'partings', 'airInclusion', 'whatIf'] as const).map(
      (field): Rule => [field, true, lost],
    ),
    ['vapourSpace', true, lost],
    ['chargeTolerance', true, 'a full charge is weighed in and held against nothing'],
    ...(['phase', 'temperature', 'pressure', 'quality'] as const).map(
      (field): Rule => [field, stateless, noPart],
    ),
  ]
}

const hasSection = ({ sections, volume, hoseSize, tubeSize, innerDiameter }: ChargeInput) =>
  [sections, volume, hoseSize, tubeSize, innerDiameter].some((value) => value !== undefined)

function ofCorrection(input: ChargeInput, job: Job): readonly Rule[] {
  const noCouplings = !input.couplings && !input.couplingsOn
  return [
    ['partings', noCouplings, 'no coupling is named'],
    [
      'vapourSpace',
      job.couplings.every(({ air }) => air === undefined),
      'no airInclusion is given',
    ],
    ['whatIf', job.whatIf === undefined, 'every spill volume is known, so this is no what-if'],
  ]
}
