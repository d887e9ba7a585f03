import * as z from 'zod'
import { CalcError } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import { WATER_SOURCES } from '../../physics/water.ts'
import {
  absolutePressure,
  duration,
  pressureDifference,
  quantityIn,
  quantityOut,
} from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { plausible } from '../plausible.ts'
import { vacuumSource } from './hold-limit.ts'
import { limitOut, limitPart } from './limit-part.ts'
import { dryBelow, negligible, pointsOf, type RiseInput, TEN_MINUTES_S } from './rise-input.ts'
import { leakPart } from './rise-leak.ts'
import { judgeRise } from './rise-verdict.ts'
import { RISE_VERDICTS, type RiseJudgement } from './rise-view.ts'
import { levelUncertainty, temperatureUncertainty } from './uncertainty.ts'

export const risePointIn = z.strictObject({
  time: quantityIn.duration.describe('Time since the valve to the pump was closed'),
  pressure: quantityIn.pressure.describe('Pressure read then, such as 650 micron or 29.4 inHg vac'),
})

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
    limit: limitOut.optional(),
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

type RiseResult = Computed<z.output<typeof riseOut>>

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
  const points = pointsOf(input.rise, barometerPa)
  const levelPlusMinusPa = levelUncertainty(
    input.rise.map(({ pressure }) => pressure),
    barometerPa,
    'rise',
    notes,
  )
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
  notes.sources.push(vacuumSource('rise-shapes'), vacuumSource('shape-selection'), ...WATER_SOURCES)
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
