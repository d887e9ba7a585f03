import type { Warning } from '../../../operation.ts'
import type { ChargeInput } from './fields.ts'

/** What the job made of the input, as far as it decides which fields counted. */
interface Used {
  readonly kind: 'correction' | 'full-charge'
  readonly whatIf: boolean
  readonly air: boolean
}

type Rule = readonly [field: keyof ChargeInput, unused: boolean, why: string]

/** Fields that went into nothing, and why: nobody should think that they counted. */
export function unusedChargeFields(input: ChargeInput, used: Used): readonly Warning[] {
  const rules = used.kind === 'full-charge' ? ofFullCharge(input) : ofCorrection(input, used)
  return rules
    .filter(([field, unused]) => unused && input[field] !== undefined && input[field] !== false)
    .map(([field, , why]) => ({ code: 'not-used', message: `${field} was not used: ${why}.` }))
}

const SPILL = [
  'couplings',
  'couplingsOn',
  'parted',
  'coldest',
  'suctionDry',
  'spillVolume',
  'mouthDiameter',
  'firstDepth',
  'secondDepth',
  'hexSize',
  'joinedLength',
  'spillFrom',
  'spillTo',
  'partings',
  'airInclusion',
  'whatIf',
  'vapourSpace',
  'sections',
  'volume',
  'hoseSize',
  'tubeSize',
  'innerDiameter',
] as const

function ofFullCharge(input: ChargeInput): readonly Rule[] {
  const lost = 'where the full charge is weighed in, what was lost before does not matter'
  const noPart = 'no altered part of oldVolume, newVolume or parts takes it'
  const stateless = !input.parts && !input.oldVolume && !input.newVolume && !hasSection(input)
  return [
    ...SPILL.map((field): Rule => [field, true, lost]),
    ['chargeTolerance', true, 'a full charge is weighed in and held against nothing'],
    ...(['phase', 'temperature', 'pressure', 'quality'] as const).map(
      (field): Rule => [field, stateless, noPart],
    ),
  ]
}

const hasSection = ({ sections, volume, hoseSize, tubeSize, innerDiameter }: ChargeInput) =>
  [sections, volume, hoseSize, tubeSize, innerDiameter].some((value) => value !== undefined)

function ofCorrection(input: ChargeInput, { whatIf, air }: Used): readonly Rule[] {
  const none = !input.couplings && !input.couplingsOn && !input.parted
  return [
    ['partings', none, 'no coupling is named'],
    ['suctionDry', none, 'no coupling is named'],
    ['coldest', none, 'no coupling is named'],
    ['vapourSpace', !air, 'no airInclusion is given'],
    ['whatIf', !whatIf, 'no range of spill volumes stands behind the answer'],
  ]
}
