import { CalcError } from '../../errors.ts'
import type { Step, Warning } from '../../operation.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import type { Case } from './cases.ts'
import { reading, settle, total } from './estimate.ts'
import { partsOf, sectionsOf } from './gather.ts'
import { massQuantity, partChange, values } from './inventory.ts'
import { type ChargeInput, type Job, negative } from './job.ts'

/**
 * The whole charge to weigh in: label charge + Σ (new volume − old volume) × operating density.
 *
 * The maker's charge for the altered machine goes before it, and the maker's own addition before
 * the altered parts.
 *
 * @throws {CalcError} `missing-input` without a label charge: it is never made up.
 */
export function fullChargeOf(
  r: Refrigerant,
  input: ChargeInput,
  applied: Case,
  barometerPa: number,
): Job {
  const { labelCharge, makerCharge, makerCorrection } = input
  const parts = partsOf(input).map(({ item, path }) => partChange(r, item, barometerPa, path))
  const change = makerCorrection
    ? reading(makerCorrection)
    : total(parts.map((entry) => entry.mass))
  if (!labelCharge && !makerCharge) {
    throw new CalcError('missing-input', 'The charge on the label of the machine is needed.', {
      path: ['labelCharge'],
      hint: "Read it from the machine's label or its maker's manual, such as 2 lb 6 oz or 1.1 kg; it is never guessed.",
    })
  }
  const own = labelCharge && total([reading(labelCharge), change])
  const target = makerCharge ? reading(makerCharge) : own
  if (!target) throw negative('The full charge', 'labelCharge')
  if (settle(target).si < 0 || (own && settle(own).si < 0)) {
    throw negative('The full charge', 'parts')
  }
  const step: Step = {
    what: 'Full charge',
    formula: makerCharge
      ? "the maker's charge for the machine as it is now, which goes before our own"
      : makerCorrection
        ? "label charge + the maker's addition"
        : 'label charge + change by altered parts',
    values: values({
      'maker’s charge': makerCharge,
      'label charge': labelCharge,
      change: parts.length > 0 || makerCorrection ? massQuantity(change) : undefined,
    }),
    gives: massQuantity(target),
  }
  return {
    toAdd: target,
    missing: undefined,
    totalTarget: target,
    changeOfCharge: parts.length > 0 || makerCorrection ? change : undefined,
    ownEstimate: makerCharge ? own : undefined,
    couplings: [],
    sections: [],
    parts,
    steps: [...parts.map((entry) => entry.step), step],
    sources: parts.flatMap((entry) => [
      ...entry.sources,
      ...entry.checks.map(({ source }) => source),
    ]),
    assumptions: [
      ...parts.flatMap((entry) => entry.assumptions),
      ...(parts.length === 0 && !makerCharge && !makerCorrection
        ? [
            {
              field: 'parts',
              taken: 'no part of another inner volume was put in',
              because: 'none was given',
            },
          ]
        : []),
    ],
    warnings: [
      ...parts.flatMap((entry) => entry.warnings),
      ...unused(input),
      ...blendLeak(r, applied),
    ],
    advice: [
      ...(applied === 'pressure-lost'
        ? ['Find and repair the leak before anything is weighed in.']
        : []),
      'Recover what is left, replace the drier if the system stood open, evacuate, prove it tight, then weigh in the full charge.',
      ...(input.recovered
        ? ['What was recovered goes back only after it was recycled or reclaimed as the rules ask.']
        : []),
    ],
  }
}

function unused(input: ChargeInput): readonly Warning[] {
  const given = [
    ...(input.couplings || input.couplingsOn ? ['couplings'] : []),
    ...(sectionsOf(input).length > 0 ? ['sections'] : []),
  ]
  if (given.length === 0) return []
  return [
    {
      code: 'not-used',
      message: `The ${given.join(' and ')} given do not enter: where the full charge is weighed in, what was lost before does not matter.`,
    },
  ]
}

function blendLeak(r: Refrigerant, applied: Case): readonly Warning[] {
  if (applied !== 'pressure-lost' || r.info.kind !== 'zeotrope') return []
  return [
    {
      code: 'blend-shifted',
      message: `${r.info.id} is a blend whose parts leak at different rates: what is left has another composition. Do not top it up; charge new refrigerant as liquid.`,
    },
  ]
}
