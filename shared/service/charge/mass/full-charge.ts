import data from '../../../../data/service/charge.json' with { type: 'json' }
import type { OpeningJob } from '../../../fields/index.ts'
import { settle, tied, total } from '../../../quantity/index.ts'
import { fillIn } from '../../../sentence.ts'
import type { ChargeInput } from '../input/fields.ts'
import { partsOf } from '../input/gather.ts'
import type { Setting } from '../space/setting.ts'
import { partChange } from './inventory.ts'
import { type ChargeJob, negative } from './job.ts'
import { chargeSource } from './line-check.ts'
import { massOf, values } from './shown.ts'

const { advice: ADVICE } = data

/**
 * The whole charge to weigh in: label charge + Σ (new volume − old volume) × operating density.
 *
 * The maker's charge for the altered machine overrides it, and the maker's own addition the altered
 * parts. Without a label charge nothing is made up: the answer says where it is found.
 */
export function fullChargeOf(setting: Setting, input: ChargeInput, applied: OpeningJob): ChargeJob {
  const { labelCharge, makerCharge, makerCorrection } = input
  const { notes } = setting
  const parts = partsOf(input).map(({ item, path }) => partChange(setting, item, path))
  const altered = parts.length > 0 || makerCorrection !== undefined
  const change = makerCorrection
    ? tied(makerCorrection, "maker's addition")
    : total(parts.map((entry) => entry.mass))
  if (!altered && !makerCharge) {
    notes.assumptions.push({ field: 'parts', ...data.assumptions['no-new-part'] })
  }
  warnOfBlend(setting, applied)
  const own = labelCharge && total([tied(labelCharge, 'label charge'), change])
  const target = makerCharge ? tied(makerCharge, "maker's charge") : own
  const frame = {
    kind: 'full-charge' as const,
    toAdd: target,
    missing: undefined,
    totalTarget: target,
    changeOfCharge: altered ? change : undefined,
    ownEstimate: makerCharge ? own : undefined,
    couplings: [],
    sections: [],
    parts,
    advice: [
      ...(applied === 'pressure-lost' ? [ADVICE['repair-first']] : []),
      ADVICE.whole,
      ...(input.recovered ? [ADVICE['recovered-back']] : []),
    ],
  }
  if (!target) {
    notes.warnings.push({ code: 'label-gone', message: data.warnings['label-gone'] })
    notes.sources.push(chargeSource('full-charge-ways'))
    return { ...frame, needs: ['labelCharge'] }
  }
  if (settle(target).si < 0 || (own && settle(own).si < 0)) {
    throw negative('The full charge', 'parts')
  }
  notes.steps.push({
    what: 'Full charge',
    formula: makerCharge
      ? "the maker's charge for the machine as it is now, which overrides our own"
      : makerCorrection
        ? "label charge + the maker's addition"
        : 'label charge + change by altered parts',
    values: values({
      'maker’s charge': makerCharge,
      'label charge': labelCharge,
      change: altered ? massOf(change) : undefined,
    }),
    gives: massOf(target),
  })
  return { ...frame, needs: [] }
}

function warnOfBlend({ r, notes }: Setting, applied: OpeningJob): void {
  if (applied !== 'pressure-lost' || r.info.kind !== 'zeotrope') return
  notes.warnings.push({
    code: 'blend-shifted',
    message: fillIn(data.warnings['blend-shifted'], { refrigerant: r.info.id }),
  })
}
