import data from '../../../data/service/recovery.json' with { type: 'json' }
import { CalcError, refusal } from '../../errors.ts'
import { quantity, say } from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { saturatedDensity } from '../../refrigerant/index.ts'
import { fillIn } from '../../sentence.ts'
import { sourceTable } from '../../source-table.ts'
import type { Source } from '../../sources.ts'

const sourceOf = sourceTable(data.sources)

/** Density of the water by which a cylinder's capacity is stamped, kg/m³ at 60 °F (IAPWS-95 at 1 atm). */
const WATER_DENSITY = 999.016
/** 77 °F, at which the guideline takes the liquid's specific gravity. */
const FILLING_K = quantity('temperature', 77, '°F').si
/** 131 °F, at which the liquid may not yet fill the cylinder. */
const HOTTEST = quantity('temperature', data.servicePressure.at.value, data.servicePressure.at.unit)
const HOTTEST_K = HOTTEST.si
const BISECTIONS = 60

/** One rule and the mass that it allows, kg of refrigerant. */
export interface FillLimit {
  readonly rule:
    | 'eighty-percent'
    | 'filling-density'
    | 'not-full-at-131f'
    | 'gross-rating'
    | 'sixty-percent-of-gross'
  readonly massKg: number
  readonly source: Source
}

interface CylinderFacts {
  /** Stamped water capacity, kg of water. */
  readonly waterCapacityKg: number
  readonly tareKg?: number | undefined
  /** Marked highest gross weight, kg. */
  readonly grossRatingKg?: number | undefined
}

/** Specific gravity of the saturated liquid at 77 °F against water at 60 °F. */
export const specificGravity = (r: Refrigerant) =>
  saturatedDensity(r, FILLING_K, 'liquid') / WATER_DENSITY

/**
 * Every rule that limits the contents of a recovery cylinder, smallest mass first.
 *
 * @throws {CalcError} `refused` for a refrigerant that is a gas at any pressure at 131 °F:
 *   there the cylinder's pressure decides, not the liquid level.
 */
export function fillLimits(r: Refrigerant, facts: CylinderFacts): readonly FillLimit[] {
  if (r.maximumTemperatureK < HOTTEST_K) throw noLiquid(r)
  const { waterCapacityKg, tareKg, grossRatingKg } = facts
  const limits: FillLimit[] = [
    {
      rule: 'eighty-percent',
      massKg: data.fillFraction.value * waterCapacityKg * specificGravity(r),
      source: sourceOf('ahri-guideline-k'),
    },
    {
      rule: 'not-full-at-131f',
      massKg: (waterCapacityKg / WATER_DENSITY) * saturatedDensity(r, HOTTEST_K, 'liquid'),
      source: sourceOf('cfr-173-304b'),
    },
  ]
  const listed = data.fillingDensity.find((row) => row.refrigerant === r.info.id)
  if (listed) {
    limits.push({
      rule: 'filling-density',
      massKg: listed.ofWaterCapacity * waterCapacityKg,
      source: sourceOf('cfr-173-304a'),
    })
  }
  if (grossRatingKg !== undefined) {
    if (tareKg !== undefined) {
      limits.push({
        rule: 'gross-rating',
        massKg: Math.max(grossRatingKg - tareKg, 0),
        source: sourceOf('cfr-173-304a'),
      })
    }
    if (r.info.id === data.grossRatingFraction.refrigerant) {
      limits.push({
        rule: 'sixty-percent-of-gross',
        massKg: data.grossRatingFraction.value * grossRatingKg,
        source: sourceOf('cfr-82b-app-a-recovery'),
      })
    }
  }
  return limits.toSorted((a, b) => a.massKg - b.massKg)
}

/** Gas at any pressure on a hot day: no level means anything. */
function noLiquid(r: Refrigerant): CalcError {
  const [message = '', hint = ''] = data.refusals.gas
  const listed = data.fillingDensity.find((row) => row.refrigerant === r.info.id)
  const density = listed ? `${Math.round(100 * listed.ofWaterCapacity)} %` : 'the listed share'
  return refusal(fillIn(message, { refrigerant: r.info.id, at: say(HOTTEST) }), {
    hint: fillIn(hint, { density }),
    path: ['waterCapacity'],
    cautions: ['full-cylinder', 'carbon-dioxide'],
  })
}

/**
 * Temperature at which the saturated liquid of this mass just fills the cylinder.
 *
 * Liquid density falls as temperature rises, so halving the span between the coldest and the
 * hottest saturated liquid finds the only crossing.
 *
 * @returns K; undefined when the contents pass the critical point before they fill it with liquid.
 * @throws {CalcError} `refused` when they would fill it at any temperature.
 */
export function liquidFullTemperature(
  r: Refrigerant,
  massKg: number,
  waterCapacityKg: number,
): number | undefined {
  const wanted = (massKg / waterCapacityKg) * WATER_DENSITY
  const liquid = (temperatureK: number) => saturatedDensity(r, temperatureK, 'liquid')
  let [low, high] = [r.minimumTemperatureK, r.maximumTemperatureK]
  if (liquid(high) >= wanted) return undefined
  if (liquid(low) <= wanted) {
    throw new CalcError('refused', 'The cylinder cannot hold this mass at any temperature.', {
      hint: 'Check the water capacity and the weights.',
      path: ['waterCapacity'],
    })
  }
  for (let step = 0; step < BISECTIONS; step += 1) {
    const middle = (low + high) / 2
    if (liquid(middle) > wanted) low = middle
    else high = middle
  }
  return (low + high) / 2
}
