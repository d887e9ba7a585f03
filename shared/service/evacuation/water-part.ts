import * as z from 'zod'
import { CalcError, under } from '../../errors.ts'
import type { Place } from '../../instrument/index.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import {
  WATER_SOURCES,
  WATER_TRIPLE_K,
  waterBoilingTemperature,
  waterVapourPressure,
} from '../../physics/water.ts'
import {
  absolutePressure,
  type Budget,
  budget,
  compareWithBand,
  type PressureReading,
  propagate,
  type Quantity,
  quantityOut,
  SEA_LEVEL_PA,
  say,
  settling,
  temperature,
  toGauge,
} from '../../quantity/index.ts'
import { fillIn } from '../../sentence.ts'
import { plausible } from '../plausible.ts'
import { sentences } from './sentences.ts'

export const waterOut = z
  .strictObject({
    vapourPressure: quantityOut
      .optional()
      .describe('Water boils once the system is below this absolute pressure'),
    gaugeNeeded: quantityOut
      .optional()
      .describe('What a gauge at this place shows at that pressure'),
    gaugeAtSeaLevel: quantityOut.optional().describe('The same at sea level'),
    form: z
      .enum(['liquid', 'ice'])
      .optional()
      .describe('What water is at that temperature: ice leaves slowly, warm the system'),
    boilingTemperature: quantityOut
      .optional()
      .describe('Water boils at the given vacuum above this'),
    boils: z
      .enum(['yes', 'no', 'cannot-tell'])
      .optional()
      .describe('Whether water at that temperature boils at the given vacuum'),
  })
  .describe('Water under vacuum')

export type WaterResult = Computed<z.output<typeof waterOut>>

/**
 * What vacuum water needs to boil, and whether the given vacuum does it; undefined when neither is given.
 *
 * @param vacuum - As taken, with the ± of its gauge.
 */
export function waterPart(
  system: Quantity<'temperature'> | undefined,
  vacuum: PressureReading | undefined,
  place: () => Place,
  notes: Notes,
): WaterResult | undefined {
  if (!system && !vacuum) return undefined
  notes.sources.push(...WATER_SOURCES)
  const needed = system ? neededPart(system, place(), notes) : undefined
  if (!vacuum) return needed
  const inside = insideOf(vacuum, place)
  const boiling = under('vacuum', () => propagate([inside], waterBoilingTemperature))
  const boilingTemperature = temperature(boiling.si, boiling.plusMinus)
  notes.steps.push({
    what: 'Boiling point of water at this vacuum',
    formula: 'temperature at which the vapour pressure of water equals the absolute pressure',
    values: { absolutePressure: inside },
    gives: boilingTemperature,
  })
  if (!system) return { boilingTemperature }
  return { ...needed, boilingTemperature, boils: boilsPart(system, vacuum, place, notes) }
}

/** A vacuum as an absolute pressure. @throws {CalcError} `out-of-range` for what is none at this place. */
export function insideOf(
  vacuum: PressureReading,
  place: () => Place,
): Quantity<'absolutePressure'> {
  const inside =
    vacuum.kind === 'absolutePressure'
      ? absolutePressure(vacuum.si, vacuum.plusMinus)
      : under('vacuum', () => place().absolute(vacuum))
  const highest = vacuum.kind === 'absolutePressure' ? SEA_LEVEL_PA : place().barometerPa
  if (inside.si <= highest * 1.02) return inside
  throw new CalcError('out-of-range', `${say(inside)} is above the barometer: that is no vacuum.`, {
    path: ['vacuum'],
    hint: 'Write vacuum gauge readings as inHg vac, electronic ones as micron.',
  })
}

/** Whether water at the temperature boils at the vacuum, with the ± of gauge, place and thermometer. */
function boilsPart(
  system: Quantity<'temperature'>,
  vacuum: PressureReading,
  place: () => Place,
  notes: Notes,
): NonNullable<WaterResult['boils']> {
  const ingredients = [
    { name: 'vacuum gauge', si: vacuum.si, plusMinus: vacuum.plusMinus },
    { name: 'thermometer', si: system.si, plusMinus: system.plusMinus },
  ]
  const above =
    vacuum.kind === 'absolutePressure'
      ? budget(ingredients, (read, kelvin) => read - waterVapourPressure(kelvin))
      : budget(
          [...ingredients, place().barometer],
          (read, kelvin, air) => read + air - waterVapourPressure(kelvin),
        )
  const comparison = compareWithBand(above, Number.NEGATIVE_INFINITY, 0)
  if (comparison === 'cannot-tell') {
    notes.warnings.push({
      code: 'vacuum-too-near-to-tell',
      message: fillIn(sentences.warnings['vacuum-too-near-to-tell'], { what: blamed(above) }),
    })
    return 'cannot-tell'
  }
  if (comparison === 'inside') return 'yes'
  notes.warnings.push({
    code: 'water-does-not-boil',
    message: sentences.warnings['water-does-not-boil'],
  })
  return 'no'
}

/** What brings the most uncertainty. */
const blamed = (found: Budget) => {
  const name = settling(found.parts, Math.abs(found.si))?.largest.name ?? 'gauge'
  return `the ${name}`
}

/** Hotter than boiling at sea level no system is evacuated. */
const HOTTEST_K = 373.15
const COLDEST_K = 200

function neededPart(system: Quantity<'temperature'>, place: Place, notes: Notes): WaterResult {
  plausible(system, COLDEST_K, HOTTEST_K, 'A temperature', ['temperature'])
  const found = under('temperature', () => propagate([system], waterVapourPressure))
  const pressure = absolutePressure(found.si, found.plusMinus)
  notes.steps.push({
    what: 'Vacuum that water needs to boil',
    formula:
      'vapour pressure of water at the temperature of the system; gauge = absolute − barometer',
    values: { temperature: system, barometer: absolutePressure(place.barometerPa) },
    gives: pressure,
  })
  const form = system.si < WATER_TRIPLE_K ? ('ice' as const) : ('liquid' as const)
  if (form === 'ice') {
    notes.warnings.push({ code: 'water-is-ice', message: sentences.warnings['water-is-ice'] })
  }
  return {
    vapourPressure: pressure,
    gaugeNeeded: place.gauge(found.si, found.plusMinus),
    gaugeAtSeaLevel: toGauge(found.si, SEA_LEVEL_PA, found.plusMinus),
    form,
  }
}
