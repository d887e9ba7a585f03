import * as z from 'zod'
import { CalcError } from '../../errors.ts'
import type { Place } from '../../instrument/index.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import { WATER_SOURCES } from '../../physics/water.ts'
import {
  absolutePressure,
  duration,
  pressureDifference,
  quantityOut,
  SEA_LEVEL_PA,
} from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import type { EvacuationInput } from './fields.ts'
import { vacuumSource } from './hold-limit.ts'
import { limitOut, limitPart } from './limit-part.ts'
import { negligibleSlope, pointsOf, scatterGiven } from './rise-input.ts'
import { leakPart } from './rise-leak.ts'
import type { RisePoint } from './rise-shape.ts'
import { judgeRise } from './rise-verdict.ts'
import { RISE_VERDICTS, type RiseJudgement } from './rise-view.ts'
import { sentences } from './sentences.ts'
import { heldPart, type Target, type TargetResult } from './target-part.ts'
import { levelWidth } from './vacuum-reading.ts'

const SHAPES = [
  'flat',
  'steady',
  'slowing-toward-air',
  'levelling-at-water',
  'levelling-at-water-and-steady',
  'levelling',
  'levelling-and-steady',
] as const

export const riseOut = z
  .strictObject({
    verdict: z.enum(RISE_VERDICTS),
    because: z.string().describe('Why, with the numbers'),
    moisture: z
      .enum(['liquid-water', 'dissolved'])
      .optional()
      .describe('Liquid water, or water and refrigerant dissolved in the oil'),
    risePerMinute: quantityOut.describe('Steady rise a minute that the readings show'),
    plateau: quantityOut.optional().describe('Pressure at which the rise levels off'),
    plateauFrom: quantityOut
      .optional()
      .describe('Lowest that the readings and the gauge leave open'),
    plateauTo: quantityOut.optional().describe('Highest that they leave open'),
    level: quantityOut.describe('Last reading of the series, with the ± of its level'),
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
    refrigerantInside: quantityOut
      .optional()
      .describe('What a rise above the vapour pressure of water amounts to, if it is refrigerant'),
    smallestLeak: quantityOut
      .optional()
      .describe('Smallest inflow of air that these readings could have shown'),
    limit: limitOut.optional(),
    shapes: z
      .array(
        z.strictObject({
          shape: z.enum(SHAPES),
          criterion: z
            .number()
            .describe('Bayesian information criterion above the best shape; 6 and more is strong'),
        }),
      )
      .describe('How well each shape fits'),
  })
  .describe('Standing vacuum')

export type RiseResult = Computed<z.output<typeof riseOut>>

interface RisePart {
  readonly result: RiseResult
  readonly held: TargetResult['held']
}

/** The readings of a standing vacuum in SI, and what they were judged to be. */
interface ReadRise {
  readonly points: readonly RisePoint[]
  /** Expanded uncertainty of the level of a reading, Pa. */
  readonly levelPlusMinusPa: number
  readonly judged: RiseJudgement
}

/**
 * Reads a standing vacuum; undefined when no readings are given.
 *
 * @param system - The coldest part, as taken, with the ± of its thermometer.
 */
export function readRise(
  input: EvacuationInput,
  system: EvacuationInput['temperature'],
  target: Target,
  place: () => Place,
  notes: Notes,
): ReadRise | undefined {
  const { rise } = input
  if (!rise) return undefined
  if (!system) {
    throw new CalcError('missing-input', 'To read a rise takes the temperature of the system.', {
      path: ['temperature'],
      hint: sentences.assumed['temperature-of-rise'],
    })
  }
  const pressures = rise.map(({ pressure }) => pressure)
  const onGauge = pressures.some(({ kind }) => kind === 'gaugePressure')
  const points = pointsOf(rise, onGauge ? place().barometerPa : SEA_LEVEL_PA)
  const levelPlusMinusPa = levelWidth(pressures, input, 'rise', place, notes)
  const judged = judgeRise({
    points,
    temperature: system,
    barometerPa: place().barometerPa,
    levelPlusMinusPa,
    scatterPa: scatterGiven(input),
    proportional: !onGauge,
    negligibleSlope: negligibleSlope(input, notes),
    dryBelowPa: target.holdBelow.si,
  })
  return { points, levelPlusMinusPa, judged }
}

/** What is said of a standing vacuum; undefined when no readings are given. Parameters as of {@link readRise}. */
export function risePart(
  input: EvacuationInput,
  system: EvacuationInput['temperature'],
  target: Target,
  r: Refrigerant | undefined,
  place: () => Place,
  notes: Notes,
): RisePart | undefined {
  const read = readRise(input, system, target, place, notes)
  if (!read) return undefined
  const { points, levelPlusMinusPa, judged } = read
  notes.sources.push(vacuumSource('rise-shapes'), vacuumSource('shape-selection'), ...WATER_SOURCES)
  if (judged.moisture === 'dissolved') notes.sources.push(vacuumSource('residual-oil'))
  notes.steps.push({
    what: 'Reading the rise',
    formula: sentences.steps['reading-the-rise'],
    values: {
      readings: judged.usedPoints,
      vapourPressure: absolutePressure(judged.vapourPa),
      ...Object.fromEntries(shapes(judged).map(({ shape, criterion }) => [shape, criterion])),
    },
    gives: judged.verdict,
  })
  warnOfVerdict(judged, notes)
  const result = {
    verdict: judged.verdict,
    because: judged.because,
    moisture: judged.moisture,
    risePerMinute: pressureDifference(judged.slope * 60, judged.slopePlusMinus * 60),
    ...plateauOut(judged),
    level: vacuum(points.at(-1)?.pressurePa ?? 0, levelPlusMinusPa),
    vapourPressure: absolutePressure(judged.vapourPa),
    watchFor: judged.watchForS === undefined ? undefined : duration(judged.watchForS),
    ...leakPart(input, judged, r, place, notes),
    limit: limitPart(input, points, judged, levelPlusMinusPa, notes),
    shapes: shapes(judged),
  }
  return { result, held: heldPart(target, points, levelPlusMinusPa) }
}

const LOWEST_PA = 0.1

/** A pressure in the unit that vacuum gauges show, however high it rose. */
const vacuum = (pressurePa: number, plusMinusPa?: number) =>
  absolutePressure(Math.max(pressurePa, LOWEST_PA), plusMinusPa).sized(LOWEST_PA)

function plateauOut({ plateau }: RiseJudgement) {
  if (!plateau) return {}
  return {
    plateau: vacuum(plateau.pa),
    plateauFrom: vacuum(plateau.fromPa),
    plateauTo: vacuum(plateau.toPa),
  }
}

const WARNINGS = {
  'tight-and-dry': 'vacuum-finds-only-large-leaks',
  leaking: 'water-may-hide-under-a-leak',
  wet: 'dry-and-test-again',
  'wet-and-leaking': 'dry-and-test-again',
  'levels-off-above-water': 'above-water-settled-by',
} as const

function warnOfVerdict({ verdict }: RiseJudgement, notes: Notes): void {
  if (verdict === 'too-short-to-tell' || verdict === 'cannot-tell') return
  const code = WARNINGS[verdict]
  notes.warnings.push({ code, message: sentences.warnings[code] })
  if (verdict === 'tight-and-dry') notes.sources.push(vacuumSource('tm-5-3805-296-23-4'))
}

function shapes({ fits }: RiseJudgement) {
  const all = [
    ['flat', fits.flat],
    ['steady', fits.steady],
    ['slowing-toward-air', fits.slowing],
    ['levelling-at-water', fits.levelling],
    ['levelling-at-water-and-steady', fits.both],
    ['levelling', fits.free],
    ['levelling-and-steady', fits.freeAndSteady],
  ] as const
  const best = Math.min(...all.map(([, { bic }]) => bic))
  return all.map(([shape, { bic }]) => ({
    shape,
    criterion: Number(Math.min(bic - best, 999).toFixed(1)),
  }))
}
