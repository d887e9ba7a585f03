import * as z from 'zod'
import { CalcError, under } from '../../errors.ts'
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
  compareWithBand,
  type PressureReading,
  propagate,
  type Quantity,
  quantityOut,
  SEA_LEVEL_PA,
  say,
  temperature,
  toAbsolute,
  toGauge,
} from '../../quantity/index.ts'
import { plausible } from '../plausible.ts'
import { levelUncertainty, temperatureUncertainty } from './uncertainty.ts'

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

type WaterResult = Computed<z.output<typeof waterOut>>

interface WaterInput {
  readonly temperature?: Quantity<'temperature'> | undefined
  readonly vacuum?: PressureReading | undefined
}

/** What vacuum water needs to boil, and whether the given vacuum does it; undefined when neither is given. */
export function waterPart(
  { temperature: system, vacuum }: WaterInput,
  barometerPa: number,
  notes: Notes,
): WaterResult | undefined {
  if (!system && !vacuum) return undefined
  notes.sources.push(...WATER_SOURCES)
  const needed = system ? neededPart(system, barometerPa, notes) : undefined
  if (!vacuum) return needed?.result
  const inside = under('vacuum', () => toAbsolute(vacuum, barometerPa))
  if (inside.si > barometerPa * 1.02) {
    throw new CalcError(
      'out-of-range',
      `${say(inside)} is above the barometer: that is no vacuum.`,
      {
        path: ['vacuum'],
        hint: 'Write vacuum gauge readings as inHg vac, electronic ones as micron.',
      },
    )
  }
  const boiling = under('vacuum', () => propagate([inside], waterBoilingTemperature))
  const boilingTemperature = temperature(boiling.si, boiling.plusMinus)
  notes.steps.push({
    what: 'Boiling point of water at this vacuum',
    formula: 'temperature at which the vapour pressure of water equals the absolute pressure',
    values: { absolutePressure: inside },
    gives: boilingTemperature,
  })
  if (!needed) return { boilingTemperature }
  const taken = {
    inside: levelUncertainty([vacuum], barometerPa, 'vacuum', notes),
    temperature: temperatureUncertainty(needed.system, notes),
  }
  const limit = propagate(
    [{ si: needed.system.si, plusMinus: taken.temperature }],
    waterVapourPressure,
  )
  const comparison = compareWithBand(
    { si: inside.si - limit.si, plusMinus: Math.hypot(taken.inside, limit.plusMinus ?? 0) },
    Number.NEGATIVE_INFINITY,
    0,
  )
  const boils = comparison === 'inside' ? 'yes' : comparison === 'above' ? 'no' : 'cannot-tell'
  if (boils === 'cannot-tell') {
    notes.warnings.push({
      code: 'vacuum-too-near-to-tell',
      message:
        'The uncertainty of vacuum and temperature reaches over the boiling line. An electronic gauge that reads in micron settles it.',
    })
  }
  if (boils === 'no') {
    notes.warnings.push({
      code: 'water-does-not-boil',
      message:
        'At this vacuum water stays liquid, however long the pump runs. Pull deeper, or warm the system.',
    })
  }
  return { ...needed.result, boilingTemperature, boils }
}

/** Hotter than boiling at sea level no system is evacuated. */
const HOTTEST_K = 373.15

function neededPart(system: Quantity<'temperature'>, barometerPa: number, notes: Notes) {
  plausible(system, 200, HOTTEST_K, 'A temperature', ['temperature'])
  const found = under('temperature', () => propagate([system], waterVapourPressure))
  const pressure = absolutePressure(found.si, found.plusMinus)
  const gaugeNeeded = toGauge(found.si, barometerPa, found.plusMinus)
  notes.steps.push({
    what: 'Vacuum that water needs to boil',
    formula:
      'vapour pressure of water at the temperature of the system; gauge = absolute − barometer',
    values: { temperature: system, barometer: absolutePressure(barometerPa) },
    gives: pressure,
  })
  const form = system.si < WATER_TRIPLE_K ? ('ice' as const) : ('liquid' as const)
  if (form === 'ice') {
    notes.warnings.push({
      code: 'water-is-ice',
      message: 'Below 32 °F (0 °C) water is ice and leaves very slowly: warm the system first.',
    })
  }
  return {
    system,
    result: {
      vapourPressure: pressure,
      gaugeNeeded,
      gaugeAtSeaLevel: toGauge(found.si, SEA_LEVEL_PA, found.plusMinus),
      form,
    },
  }
}
