import * as z from 'zod'
import { CalcError } from '../../errors.ts'
import type { Computed } from '../../operation.ts'
import {
  absolutePressure,
  duration,
  leakRate,
  massFlow,
  type PressureReading,
  pressureDifference,
  type Quantity,
  quantityIn,
  quantityOut,
  toAbsolute,
} from '../../quantity/index.ts'
import { type Refrigerant, saturationPressure } from '../../refrigerant/index.ts'
import { LEAK_RATE_SOURCES, massOfLeak, refrigerantLoss } from '../leak-rate.ts'
import type { Notes } from '../notes.ts'
import { plausible } from '../plausible.ts'
import { propertySources } from '../property-sources.ts'
import { under } from '../refrigerant-input.ts'
import { say } from '../say.ts'
import { WATER_SOURCES } from '../water.ts'
import { HOLD_LIMITS, holdLimit, judgeLimit, permitted, vacuumSource } from './hold-limit.ts'
import { AIR } from './hose-flow.ts'
import { judgeRise, RISE_VERDICTS, type RiseJudgement } from './rise-verdict.ts'

export const risePointIn = z.strictObject({
  time: quantityIn.duration.describe('Time since the valve to the pump was closed'),
  pressure: quantityIn.pressure.describe('Pressure read then, such as 650 micron or 29.4 inHg vac'),
})

export const LIMIT_VERDICTS = ['kept', 'broken', 'cannot-tell', 'too-short-to-tell'] as const

export const riseOut = z
  .strictObject({
    verdict: z.enum(RISE_VERDICTS),
    because: z.string(),
    moisture: z
      .enum(['liquid-water', 'dissolved'])
      .optional()
      .describe('Liquid water, or water and refrigerant dissolved in the oil'),
    risePerMinute: quantityOut.describe('Steady rise a minute that the readings show'),
    plateau: quantityOut.optional().describe('Pressure at which the rise levels off'),
    plateauFrom: quantityOut.optional(),
    plateauTo: quantityOut.optional(),
    vapourPressure: quantityOut.describe('Of water at the temperature of the system'),
    watchFor: quantityOut
      .optional()
      .describe('Time from the first reading after which it should be clear'),
    leakRate: quantityOut.optional().describe('Air that comes in: volume × steady rise'),
    refrigerantAtSameFlow: quantityOut
      .optional()
      .describe('Refrigerant that the same pV flow would carry'),
    refrigerantAtRestFrom: quantityOut
      .optional()
      .describe('Refrigerant lost at rest pressure through the same hole, low end'),
    refrigerantAtRestTo: quantityOut.optional().describe('The same, high end'),
    smallestLeak: quantityOut
      .optional()
      .describe('Smallest inflow of air that these readings could have shown'),
    limit: z
      .strictObject({
        id: z.string(),
        rule: z.string(),
        verdict: z.enum(LIMIT_VERDICTS),
        rise: quantityOut,
        atEnd: quantityOut,
      })
      .optional()
      .describe('The chosen published rule'),
    shapes: z
      .array(
        z.strictObject({
          shape: z.enum(['flat', 'steady', 'levelling', 'levelling-and-steady']),
          criterion: z
            .number()
            .describe('Bayesian information criterion above the best shape; 6 and more is strong'),
        }),
      )
      .describe('How well each shape fits'),
  })
  .describe('Standing vacuum')

export type RiseResult = Computed<z.output<typeof riseOut>>

export interface RiseInput {
  readonly temperature?: Quantity<'temperature'> | undefined
  readonly volume?: Quantity<'volume'> | undefined
  readonly rise?:
    | readonly { readonly time: Quantity<'duration'>; readonly pressure: PressureReading }[]
    | undefined
  readonly riseScatter?: Quantity<'pressureDifference'> | undefined
  readonly negligibleRise?: Quantity<'pressureDifference'> | undefined
  readonly dryBelow?: PressureReading | undefined
  readonly limit?: string | undefined
}

const MICRON_PA = 0.133322387415
const TEN_MINUTES_S = 600
/** Judgement, no source: a fifth of the 500 micron in 10 min that common practice lets pass. */
const NEGLIGIBLE_PA = 100 * MICRON_PA
/** Common practice: above this a standing vacuum is not called dry. */
const DRY_BELOW_PA = 1000 * MICRON_PA
const TEMPERATURE_K = 3
/** Half a scale division of a compound gauge, Pa, and the usual error of an electronic one. */
const DIAL_PA = 850
const ELECTRONIC_SHARE = 0.1

/** Reads a standing vacuum; undefined when no readings are given. */
export function risePart(
  input: RiseInput,
  r: Refrigerant | undefined,
  barometerPa: number,
  notes: Notes,
): RiseResult | undefined {
  if (!input.rise) return undefined
  if (!input.temperature) {
    throw new CalcError('missing-input', 'To read a rise takes the temperature of the system.', {
      path: ['temperature'],
      hint: 'Give the temperature of the coldest part: water levels off at its vapour pressure there.',
    })
  }
  const points = input.rise.map(({ time, pressure }, index) => ({
    timeS: plausible(time, 0, 30 * 86_400, 'A time', ['rise', index, 'time']).si,
    pressurePa: belowAir(
      under2(['rise', index, 'pressure'], () => toAbsolute(pressure, barometerPa)).si,
      barometerPa,
      index,
    ),
  }))
  const levelPlusMinusPa = levelUncertainty(input.rise, barometerPa, notes)
  const judged = judgeRise({
    points,
    temperatureK: plausible(input.temperature, 200, 420, 'A temperature', ['temperature']).si,
    temperaturePlusMinusK: temperatureUncertainty(input.temperature, notes),
    barometerPa,
    levelPlusMinusPa,
    scatterPa: input.riseScatter && Math.abs(input.riseScatter.si) / 2,
    proportional: input.rise.every(({ pressure }) => pressure.kind === 'absolutePressure'),
    negligibleSlope: negligible(input, notes) / TEN_MINUTES_S,
    dryBelowPa: dryBelow(input, barometerPa, notes),
  })
  notes.sources.push(
    vacuumSource('thermo-king-decay'),
    vacuumSource('shape-selection'),
    ...WATER_SOURCES,
  )
  if (judged.moisture === 'dissolved') notes.sources.push(vacuumSource('residual-oil'))
  const risePerMinute = pressureDifference(judged.slope * 60, judged.slopePlusMinus * 60)
  notes.steps.push({
    what: 'Reading the rise',
    formula:
      'least squares of flat, steady, levelling (1 − e^−t/τ) and both together; the shape with the smallest Bayesian information criterion, when it leads by 6',
    values: {
      readings: judged.usedPoints,
      vapourPressure: absolutePressure(judged.vapourPa),
      ...Object.fromEntries(shapes(judged).map(({ shape, criterion }) => [shape, criterion])),
    },
    gives: judged.verdict,
  })
  warnOfVerdict(judged, notes)
  return {
    verdict: judged.verdict,
    because: judged.because,
    moisture: judged.moisture,
    risePerMinute,
    ...(judged.plateau
      ? {
          plateau: absolutePressure(judged.plateau.pa),
          plateauFrom: absolutePressure(Math.max(judged.plateau.fromPa, 0.1)),
          plateauTo: absolutePressure(Math.max(judged.plateau.toPa, 0.1)),
        }
      : {}),
    vapourPressure: absolutePressure(judged.vapourPa),
    watchFor: judged.watchForS === undefined ? undefined : duration(judged.watchForS),
    ...leakPart(input, judged, r, barometerPa, notes),
    limit: limitPart(input, points, judged, levelPlusMinusPa, notes),
    shapes: shapes(judged),
  }
}

function leakPart(
  { volume, temperature }: RiseInput,
  judged: RiseJudgement,
  r: Refrigerant | undefined,
  barometerPa: number,
  notes: Notes,
) {
  const leaks = judged.verdict === 'leaking' || judged.verdict === 'wet-and-leaking'
  if (!volume || !temperature) {
    if (leaks) {
      notes.warnings.push({
        code: 'no-volume',
        message: 'With the internal volume of the system and hoses the size of the leak follows.',
      })
    }
    return {}
  }
  plausible(volume, 1e-6, 1_000, 'An internal volume', ['volume'])
  const smallest = leakRate(volume.si * 2 * judged.fits.steady.slopeUncertainty)
  if (!leaks) return { smallestLeak: smallest }
  const flow = volume.si * judged.slope
  const plusMinus = Math.hypot(
    volume.si * judged.slopePlusMinus,
    judged.slope * (volume.plusMinus ?? 0),
  )
  const rate = leakRate(flow, plusMinus)
  notes.steps.push({
    what: 'Inflow of air',
    formula: 'internal volume × steady rise, while the inside is below half of the barometer',
    values: { volume, risePerMinute: pressureDifference(judged.slope * 60) },
    gives: rate,
  })
  if (!r) return { leakRate: rate, smallestLeak: smallest }
  const same = massFlow(massOfLeak(flow, r.molarMass, temperature.si))
  const rest = under('temperature', () => saturationPressure(r, temperature.si, 'dew'))
  const band = refrigerantLoss(
    flow,
    {
      measuredMolarMass: AIR.molarMass,
      measuredHighPa: barometerPa,
      measuredLowPa: 0,
      restHighPa: rest,
      restLowPa: barometerPa,
    },
    r,
    temperature.si,
  )
  notes.sources.push(...LEAK_RATE_SOURCES, ...propertySources(r))
  notes.steps.push({
    what: 'Refrigerant through the same hole',
    formula:
      'at the same pV flow: flow × molar mass ÷ (gas constant × temperature); at rest pressure: × (p − barometer)/barometer × √(28.96/molar mass) up to × (p² − barometer²)/barometer² × 1.2 to 2.5 for the thinner vapour',
    values: { leakRate: rate, restPressure: absolutePressure(rest), molarMass: r.molarMass },
    gives: same,
  })
  return {
    leakRate: rate,
    refrigerantAtSameFlow: same,
    refrigerantAtRestFrom: massFlow(band.fromKgPerS),
    refrigerantAtRestTo: massFlow(band.toKgPerS),
    smallestLeak: smallest,
  }
}

function limitPart(
  { limit: id, temperature }: RiseInput,
  points: readonly { readonly timeS: number; readonly pressurePa: number }[],
  judged: RiseJudgement,
  levelPlusMinusPa: number,
  notes: Notes,
): RiseResult['limit'] {
  if (id === undefined) return undefined
  const limit = holdLimit(id)
  if (!limit) {
    throw new CalcError('unknown-name', `There is no hold limit "${id}".`, {
      path: ['limit'],
      hint: `There are: ${HOLD_LIMITS.join(', ')}.`,
    })
  }
  notes.sources.push(limit.source)
  const scatterPa = judged.fits.scatter * judged.fits.expectedSigmaPa
  const found = judgeLimit(limit, points, scatterPa, levelPlusMinusPa)
  const most = permitted(limit, points[0]?.pressurePa ?? 1)
  if (temperature && most.si > judged.vapourPa) {
    notes.warnings.push({
      code: 'limit-does-not-show-dryness',
      message: `This rule lets the pressure stand at ${say(most)}, above the ${say(absolutePressure(judged.vapourPa))} at which water boils here: a system that keeps it may still hold water.`,
    })
  }
  if (found.verdict === 'kept' && judged.verdict === 'leaking') {
    notes.warnings.push({
      code: 'limit-kept-yet-leaking',
      message:
        'The rule is kept, and still the pressure rises steadily: rules for a standing vacuum are coarse. Find the leak before charging.',
    })
  }
  notes.steps.push({
    what: 'Hold limit',
    formula: limit.rule,
    values: { rise: pressureDifference(found.risePa), after: duration(limit.withinS) },
    gives: found.verdict,
  })
  return {
    id: limit.id,
    rule: limit.rule,
    verdict: found.verdict,
    rise: pressureDifference(found.risePa, 2 * Math.SQRT2 * scatterPa),
    atEnd: absolutePressure(found.atEndPa, levelPlusMinusPa),
  }
}

function warnOfVerdict({ verdict }: RiseJudgement, notes: Notes): void {
  if (verdict === 'tight-and-dry') {
    notes.warnings.push({
      code: 'vacuum-finds-only-large-leaks',
      message:
        'A standing vacuum shows large leaks only: one that loses a few hundred grams of refrigerant a year can pass it. Leak-test under nitrogen pressure before, and with a detector after charging.',
    })
    notes.sources.push(vacuumSource('tm-5-3805-296-23-4'))
  }
  if (verdict === 'leaking') {
    notes.warnings.push({
      code: 'water-may-hide-under-a-leak',
      message:
        'A leak hides water that may be there as well: after the repair evacuate again and read another rise.',
    })
  }
  if (verdict === 'wet' || verdict === 'wet-and-leaking') {
    notes.warnings.push({
      code: 'dry-and-test-again',
      message:
        'While it is wet a smaller leak hides under the rise. Break the vacuum with dry nitrogen, evacuate again (warm, with a short wide hose), and test again.',
    })
  }
}

function shapes({ fits }: RiseJudgement) {
  const all = [fits.flat, fits.steady, fits.levelling, fits.both]
  const best = Math.min(...all.map(({ bic }) => bic))
  return all.map(({ model, bic }) => ({
    shape: model,
    criterion: Number(Math.min(bic - best, 999).toFixed(1)),
  }))
}

function levelUncertainty(rise: NonNullable<RiseInput['rise']>, barometerPa: number, notes: Notes) {
  const stated = rise.flatMap(({ pressure }) => pressure.plusMinus ?? [])
  if (stated.length > 0) return Math.max(...stated)
  const dial = rise.some(({ pressure }) => pressure.kind === 'gaugePressure')
  const highest = Math.max(...rise.map(({ pressure }) => toAbsolute(pressure, barometerPa).si))
  notes.assumptions.push({
    field: 'rise',
    taken: dial ? 'a compound gauge within ±0.25 inHg' : 'an electronic gauge within ±10 %',
    because: 'no uncertainty was given with the readings; write it as "650 ±30 micron"',
  })
  return dial ? DIAL_PA : ELECTRONIC_SHARE * highest
}

function temperatureUncertainty({ plusMinus }: Quantity<'temperature'>, notes: Notes): number {
  if (plusMinus !== undefined) return Math.min(plusMinus, 30)
  notes.assumptions.push({
    field: 'temperature',
    taken: '±5.4 °F (3 K)',
    because: 'no uncertainty was given, and the coldest part is seldom where it was measured',
  })
  return TEMPERATURE_K
}

function negligible({ negligibleRise }: RiseInput, notes: Notes): number {
  if (negligibleRise) return plausible(negligibleRise, 0.01, 1e5, 'A rise', ['negligibleRise']).si
  notes.assumptions.push({
    field: 'negligibleRise',
    taken: '100 micron in 10 min',
    because:
      'no rise of no consequence was given; a fifth of the 500 micron in 10 min of common practice (judgement)',
  })
  return NEGLIGIBLE_PA
}

function dryBelow({ dryBelow: given }: RiseInput, barometerPa: number, notes: Notes): number {
  if (given) return under('dryBelow', () => toAbsolute(given, barometerPa)).si
  notes.assumptions.push({
    field: 'dryBelow',
    taken: '1000 micron',
    because: 'no dividing line between dry and damp was given; common practice',
  })
  return DRY_BELOW_PA
}

function belowAir(pressurePa: number, barometerPa: number, index: number): number {
  if (pressurePa <= barometerPa * 1.02) return pressurePa
  throw new CalcError(
    'out-of-range',
    `Reading ${index + 1} of the rise, ${say(absolutePressure(pressurePa))}, is above the barometer: that is no vacuum.`,
    {
      path: ['rise', index, 'pressure'],
      hint: 'Write vacuum gauge readings as inHg vac, electronic ones as micron.',
    },
  )
}

function under2<T>(path: readonly (string | number)[], work: () => T): T {
  try {
    return work()
  } catch (error) {
    throw error instanceof CalcError ? error.under(...path) : error
  }
}
