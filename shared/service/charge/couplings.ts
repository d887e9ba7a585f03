import { CalcError } from '../../errors.ts'
import type { Assumption, Step, Warning } from '../../operation.ts'
import { density, type Quantity } from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { type Estimate, product, reading, settle, times } from './estimate.ts'
import type { Coupling } from './fields.ts'
import { massQuantity } from './inventory.ts'
import { fillingOf } from './states.ts'

/** What one coupling lost over all its partings. */
export interface CouplingLoss {
  readonly name: string
  readonly contents: string
  readonly partings: number
  readonly density: Quantity<'density'>
  /** Undefined in a what-if. */
  readonly loss: Estimate | undefined
  /** Least and most that it lost; the same figure twice where the spill volume is known. */
  readonly least: Estimate
  readonly most: Estimate
  /** Air taken in over all rejoinings, m³ at the pressure of the place; undefined when not given. */
  readonly air: Estimate | undefined
  readonly spillVolume: Quantity<'volume'> | undefined
  readonly step: Step
  readonly assumptions: readonly Assumption[]
  readonly warnings: readonly Warning[]
}

/**
 * Loss of a coupling whose halves both seal: spill volume × density on its side × partings.
 *
 * No spill volume of a refrigerant coupling was found in print, so there is no default: it comes
 * from the coupler's maker or a measurement, or the answer is a what-if over a range that the
 * user gives.
 *
 * @throws {CalcError} `refused` without a spill volume, `bad-input` for both kinds at once.
 */
export function couplingLoss(
  r: Refrigerant,
  coupling: Coupling,
  whatIf: boolean,
  barometerPa: number,
  path: readonly (string | number)[],
): CouplingLoss {
  const { phase, temperature, pressure, quality } = coupling
  const filling = fillingOf(r, { phase, temperature, pressure, quality }, barometerPa, path)
  const partings = coupling.partings ?? 1
  const name = coupling.name ?? `${filling.phase} coupling`
  const range = spillRange(coupling, whatIf, path)
  const lost = (spill: Quantity<'volume'>) =>
    times(partings, product(reading(spill), filling.density))
  const least = lost(range.from)
  const most = lost(range.to)
  const { si, plusMinus } = settle(filling.density)
  const shownDensity = density(si, plusMinus)
  return {
    name,
    contents: filling.how,
    partings,
    density: shownDensity,
    loss: range.known ? least : undefined,
    least,
    most,
    air: coupling.airInclusion && times(partings, reading(coupling.airInclusion)),
    spillVolume: coupling.spillVolume,
    step: {
      what: `Refrigerant lost at the ${name}`,
      formula: 'spill volume × density on its side × partings',
      values: {
        ...(range.known
          ? { 'spill volume': range.from }
          : { 'spill volume from': range.from, 'spill volume to': range.to }),
        contents: filling.how,
        density: shownDensity,
        partings,
      },
      gives: range.known
        ? massQuantity(least)
        : `${grams(least)} to ${grams(most)}, a what-if and no measurement`,
    },
    assumptions: [
      ...filling.assumptions,
      ...(coupling.partings === undefined
        ? [
            {
              field: [...path, 'partings'].join('.'),
              taken: 'parted once',
              because: 'the number of partings was not given',
            },
          ]
        : []),
    ],
    warnings: filling.warnings,
  }
}

const grams = (estimate: Estimate) => `${(settle(estimate).si * 1000).toPrecision(3)} g`

interface SpillRange {
  readonly known: boolean
  readonly from: Quantity<'volume'>
  readonly to: Quantity<'volume'>
}

function spillRange(
  { spillVolume, spillFrom, spillTo }: Coupling,
  whatIf: boolean,
  path: readonly (string | number)[],
): SpillRange {
  if (spillVolume && (spillFrom || spillTo)) {
    throw new CalcError('bad-input', 'A spill volume is known or a what-if range, not both.', {
      path: [...path, 'spillFrom'],
      hint: 'Keep spillVolume where the maker or a measurement gives it ("3 mL ±0.5 mL").',
    })
  }
  if (spillVolume) return { known: true, from: spillVolume, to: spillVolume }
  if (!spillFrom || !spillTo) {
    if (whatIf) {
      throw new CalcError('missing-input', 'A what-if needs the range of the spill volume.', {
        path: [...path, spillFrom ? 'spillTo' : 'spillFrom'],
        hint: 'Give spillFrom and spillTo ("1 mL", "8 mL"). No published figure exists, so the range is yours.',
      })
    }
    throw new CalcError(
      'refused',
      'Without the spill volume of the coupling there is no correction to compute: no published figure exists, and none is made up here.',
      {
        path: [...path, 'spillVolume'],
        hint: "Ask the coupler's maker or measure it (spillVolume), try a range of your own (whatIf with spillFrom and spillTo), or recover and weigh in the full charge.",
      },
    )
  }
  if (!whatIf) {
    throw new CalcError('refused', 'A range of spill volumes gives a what-if, not a correction.', {
      path: [...path, 'spillFrom'],
      hint: 'Set whatIf, or give spillVolume from the maker or a measurement.',
    })
  }
  if (spillTo.si < spillFrom.si) {
    throw new CalcError('bad-input', 'The what-if range ends below its start.', {
      path: [...path, 'spillTo'],
      hint: 'Give spillFrom as the smaller volume.',
    })
  }
  return { known: false, from: spillFrom, to: spillTo }
}
