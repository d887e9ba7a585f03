import * as z from 'zod'
import { CalcError } from '../../errors.ts'
import type { Computed } from '../../operation.ts'
import {
  absolutePressure,
  leakRate,
  massFlow,
  type PressureReading,
  pressureDifference,
  propagate,
  type Quantity,
  quantityOut,
  show,
  volumeFlow,
} from '../../quantity/index.ts'
import { type Refrigerant, saturationPressure } from '../../refrigerant/index.ts'
import { HOLD_LIMITS, holdLimit, judgeLimit } from '../evacuation/hold-limit.ts'
import { LEAK_RATE_SOURCES, massOfLeak, refrigerantLoss } from '../leak-rate.ts'
import type { Notes } from '../notes.ts'
import { plausible } from '../plausible.ts'
import { propertySources } from '../property-sources.ts'
import { under } from '../refrigerant-input.ts'
import { leakSource } from './facts.ts'
import { measured } from './pressure-part.ts'

export const standingOut = z
  .strictObject({
    kind: z.enum(['pressure', 'vacuum']),
    verdict: z.enum(['no-leak-shown', 'leak', 'cannot-tell', 'rises']),
    sentence: z.string(),
    measuredChange: quantityOut.describe('End less start, as read'),
    byTemperature: quantityOut.describe('Change that the gas law expects from the temperatures'),
    unexplained: quantityOut.describe('What is left: negative is lost gas'),
    leakRate: quantityOut.optional().describe('Flow of the leak with volume and time'),
    testGasFlow: quantityOut.optional().describe('The same as a volume at the pressure of the air'),
    refrigerantAtSameFlow: quantityOut
      .optional()
      .describe('Refrigerant that the same pV flow carries'),
    refrigerantAtRestFrom: quantityOut
      .optional()
      .describe('Refrigerant lost through the same hole at its rest pressure, low end'),
    refrigerantAtRestTo: quantityOut.optional().describe('The same, high end'),
    smallestLeak: quantityOut.optional().describe('Smallest leak that this test could have shown'),
    smallestAsRefrigerant: quantityOut
      .optional()
      .describe('The same as refrigerant at the same pV flow'),
    limit: z
      .strictObject({
        id: z.string(),
        rule: z.string(),
        verdict: z.enum(['kept', 'broken', 'cannot-tell', 'too-short-to-tell']),
      })
      .optional(),
  })
  .describe('Standing pressure or vacuum, corrected for temperature')

export type StandingResult = Computed<z.output<typeof standingOut>>

export interface StandingInput {
  readonly startPressure?: PressureReading | undefined
  readonly endPressure?: PressureReading | undefined
  readonly startTemperature?: Quantity<'temperature'> | undefined
  readonly endTemperature?: Quantity<'temperature'> | undefined
  readonly elapsed?: Quantity<'duration'> | undefined
  readonly volume?: Quantity<'volume'> | undefined
  readonly vacuumLimit?: string | undefined
}

/** One small division of a service gauge, Pa, and of a thermometer, K. */
const SERVICE_GAUGE_PA = 7_000
const VACUUM_GAUGE_PA = 850
const THERMOMETER_K = 1
const NITROGEN_MOLAR_MASS = 0.0280134

interface Standing {
  readonly start: Quantity<'absolutePressure'>
  readonly end: Quantity<'absolutePressure'>
  readonly fromK: Quantity<'temperature'>
  readonly toK: Quantity<'temperature'>
}

/** Reads a standing test by the absolute gas law; undefined when none of its readings is given. */
export function standingPart(
  input: StandingInput,
  r: Refrigerant | undefined,
  barometerPa: number,
  notes: Notes,
): StandingResult | undefined {
  const needed = ['startPressure', 'endPressure', 'startTemperature', 'endTemperature'] as const
  if (needed.every((name) => input[name] === undefined)) return undefined
  const standing = readingsOf(input, barometerPa, notes)
  const { start, end, fromK, toK } = standing
  const kind = start.si < barometerPa * 0.98 ? ('vacuum' as const) : ('pressure' as const)
  const expected = propagate([start, fromK, toK], (p, from, to) => p * (to / from - 1))
  const left = propagate([start, end, fromK, toK], (p, q, from, to) => q - (p * to) / from)
  const change = readable(
    end.si - start.si,
    Math.hypot(start.plusMinus ?? 0, end.plusMinus ?? 0),
    kind,
  )
  const byTemperature = readable(expected.si, expected.plusMinus, kind)
  const unexplained = readable(left.si, left.plusMinus, kind)
  notes.sources.push(leakSource('achr-gas-law'))
  notes.steps.push({
    what: 'Change by temperature alone',
    formula:
      'start pressure × (end temperature ÷ start temperature − 1), pressures and temperatures absolute',
    values: { start, startTemperature: fromK, endTemperature: toK },
    gives: byTemperature,
  })
  notes.steps.push({
    what: 'Change that temperature does not explain',
    formula: 'end pressure − start pressure × end temperature ÷ start temperature',
    values: { start, end },
    gives: unexplained,
  })
  const verdict = verdictOf(kind, unexplained)
  if (verdict === 'cannot-tell') {
    notes.warnings.push({
      code: 'readings-disagree',
      message:
        'The pressure is higher than the gas law allows: the temperatures were not those of the gas (sun, a warm engine), or the gauge moved. Let it settle and read again.',
    })
  }
  return {
    kind,
    verdict,
    sentence: sentence(kind, verdict, change, byTemperature, unexplained),
    measuredChange: change,
    byTemperature,
    unexplained,
    ...sizePart(input, standing, unexplained, verdict, r, barometerPa, notes),
    limit: limitPart(input, standing, kind, notes),
  }
}

/** Under pressure a small difference is still read in psi, not in the micron of a vacuum gauge. */
const readable = (pa: number, plusMinus: number | undefined, kind: 'pressure' | 'vacuum') => {
  const difference = pressureDifference(pa, plusMinus)
  return kind === 'pressure' && Math.abs(pa) < 500 ? difference.in('psi') : difference
}

function verdictOf(
  kind: 'pressure' | 'vacuum',
  { si, plusMinus = 0 }: Quantity<'pressureDifference'>,
): StandingResult['verdict'] {
  if (kind === 'vacuum') return si - plusMinus > 0 ? 'rises' : 'no-leak-shown'
  if (si + plusMinus < 0) return 'leak'
  return si - plusMinus > 0 ? 'cannot-tell' : 'no-leak-shown'
}

/** "Fell 3.1 psi; 3.1 ±0.9 psi explained by cooling: no leak shown." */
function sentence(
  kind: 'pressure' | 'vacuum',
  verdict: StandingResult['verdict'],
  change: Quantity<'pressureDifference'>,
  byTemperature: Quantity<'pressureDifference'>,
  unexplained: Quantity<'pressureDifference'>,
): string {
  const read = magnitude(change.within(undefined))
  const moved = change.si < 0 ? `Fell ${read}` : change.si > 0 ? `Rose ${read}` : 'Did not change'
  const cause = byTemperature.si < 0 ? 'fall by cooling' : 'rise by warming'
  const band = magnitude(byTemperature.within(unexplained.plusMinus))
  const explained =
    change.si < 0 && byTemperature.si < 0
      ? `${band} explained by cooling`
      : byTemperature.si === 0
        ? `no change expected, ±${amount(unexplained.plusMinus ?? 0)}`
        : `${band} of ${cause} expected`
  const rest = magnitude(unexplained)
  switch (verdict) {
    case 'no-leak-shown':
      return `${moved}; ${explained}: no leak shown.`
    case 'leak':
      return `${moved}; ${explained}; ${rest} is not: it leaks.`
    case 'rises':
      return `${moved}; ${explained}: it rises, by air or by water. Two readings cannot tell which; a series can.`
    case 'cannot-tell':
      return kind === 'pressure'
        ? `${moved}; ${explained}; ${rest} too high: the readings do not fit together.`
        : `${moved}; ${explained}: cannot tell.`
  }
}

const US = { units: 'us', precise: false } as const
const magnitude = (q: Quantity<'pressureDifference'>) => {
  const { value, unit, plusMinus } = show(
    pressureDifference(Math.abs(q.si), q.plusMinus).in('psi'),
    US,
  )
  const shown = Number(value.toFixed(plusMinus === undefined ? 1 : 2))
  return plusMinus === undefined ? `${shown} ${unit}` : `${shown} ±${plusMinus} ${unit}`
}
const amount = (pa: number) => {
  const { value, unit } = show(pressureDifference(pa).in('psi'), US)
  return `${Number(value.toPrecision(2))} ${unit}`
}

function readingsOf(input: StandingInput, barometerPa: number, notes: Notes): Standing {
  const { startPressure, endPressure, startTemperature, endTemperature } = input
  if (!startPressure || !endPressure || !startTemperature || !endTemperature) {
    const missing = (
      ['startPressure', 'endPressure', 'startTemperature', 'endTemperature'] as const
    ).filter((name) => input[name] === undefined)
    throw new CalcError(
      'missing-input',
      'A standing test needs pressure and temperature at its start and at its end.',
      {
        path: missing.slice(0, 1),
        hint: `Give ${missing.join(', ')} as well: gas shrinks as it cools.`,
      },
    )
  }
  const deep = [startPressure, endPressure].every(({ kind, si }) =>
    kind === 'gaugePressure' ? si < 0 : si < 0.98 * barometerPa,
  )
  const gaugePa = deep ? VACUUM_GAUGE_PA : SERVICE_GAUGE_PA
  const readings = [startPressure, endPressure, startTemperature, endTemperature]
  if (readings.some(({ plusMinus }) => plusMinus === undefined)) {
    notes.assumptions.push({
      field: 'startPressure',
      taken: `gauge ${deep ? '±0.25 inHg' : '±1 psi (7 kPa)'} and thermometer ±1.8 °F (1 K) where none was stated`,
      because: 'no uncertainty was given with the readings; write it as "150 ±0.5 psig"',
    })
  }
  notes.assumptions.push({
    field: 'barometer',
    taken: 'the same at both readings',
    because:
      'a gauge reads against the air; over days a change of weather adds up to about 0.4 psi',
  })
  return {
    start: measured(startPressure, barometerPa, 'startPressure', gaugePa),
    end: measured(endPressure, barometerPa, 'endPressure', gaugePa),
    fromK: settled(startTemperature, 'startTemperature'),
    toK: settled(endTemperature, 'endTemperature'),
  }
}

const settled = (given: Quantity<'temperature'>, path: string) =>
  plausible(given, 200, 420, 'A temperature', [path]).within(given.plusMinus ?? THERMOMETER_K)

function sizePart(
  { elapsed, volume }: StandingInput,
  { toK, start, end }: Standing,
  unexplained: Quantity<'pressureDifference'>,
  verdict: StandingResult['verdict'],
  r: Refrigerant | undefined,
  barometerPa: number,
  notes: Notes,
) {
  if (!elapsed || !volume) {
    if (verdict === 'leak') {
      notes.warnings.push({
        code: 'no-volume-or-time',
        message:
          'With the internal volume and the time between the readings the size of the leak follows.',
      })
    }
    return {}
  }
  const seconds = plausible(elapsed, 1, 400 * 86_400, 'A time', ['elapsed']).si
  const litres = plausible(volume, 1e-6, 1_000, 'An internal volume', ['volume'])
  const smallest = ((unexplained.plusMinus ?? 0) * litres.si) / seconds
  const temperatureK = toK.si
  const asRefrigerant = (flow: number, model: Refrigerant) =>
    massFlow(massOfLeak(flow, model.molarMass, temperatureK))
  const shown = {
    smallestLeak: leakRate(smallest),
    ...(r ? { smallestAsRefrigerant: asRefrigerant(smallest, r) } : {}),
  }
  if (r) notes.sources.push(...LEAK_RATE_SOURCES, ...propertySources(r))
  if (verdict !== 'leak' && verdict !== 'rises') return shown
  const flow = propagate(
    [{ si: Math.abs(unexplained.si), plusMinus: unexplained.plusMinus }, litres],
    (change, v) => (change * v) / seconds,
  )
  const rate = leakRate(flow.si, flow.plusMinus)
  notes.steps.push({
    what: 'Leak rate',
    formula: 'internal volume × unexplained change ÷ time',
    values: { volume: litres, unexplained, elapsed },
    gives: rate,
  })
  const asVolume = volumeFlow(
    flow.si / barometerPa,
    flow.plusMinus === undefined ? undefined : flow.plusMinus / barometerPa,
  ).in('mL/min')
  if (!r) return { ...shown, leakRate: rate, testGasFlow: asVolume }
  const rest = under('endTemperature', () => saturationPressure(r, temperatureK, 'dew'))
  const vacuum = verdict === 'rises'
  const band = refrigerantLoss(
    flow.si,
    {
      measuredMolarMass: NITROGEN_MOLAR_MASS,
      measuredHighPa: vacuum ? barometerPa : (start.si + end.si) / 2,
      measuredLowPa: vacuum ? (start.si + end.si) / 2 : barometerPa,
      restHighPa: rest,
      restLowPa: barometerPa,
    },
    r,
    temperatureK,
  )
  notes.steps.push({
    what: 'Refrigerant through the same hole',
    formula:
      'same pV flow × molar mass ÷ (gas constant × temperature); at rest pressure × the ratio of pressure differences and √(28/molar mass), up to × the ratio of differences of squared pressures and 1.2 to 2.5 for the thinner vapour',
    values: { leakRate: rate, restPressure: absolutePressure(rest), molarMass: r.molarMass },
    gives: asRefrigerant(flow.si, r),
  })
  return {
    ...shown,
    leakRate: rate,
    testGasFlow: asVolume,
    refrigerantAtSameFlow: asRefrigerant(flow.si, r),
    refrigerantAtRestFrom: massFlow(band.fromKgPerS),
    refrigerantAtRestTo: massFlow(band.toKgPerS),
  }
}

function limitPart(
  { vacuumLimit, elapsed }: StandingInput,
  { start, end }: Standing,
  kind: 'pressure' | 'vacuum',
  notes: Notes,
): StandingResult['limit'] {
  if (vacuumLimit === undefined) return undefined
  if (kind !== 'vacuum') {
    throw new CalcError(
      'bad-input',
      'The rule for a standing vacuum does not fit a test under pressure.',
      {
        path: ['vacuumLimit'],
        hint: 'Leave it out, or give the readings of the vacuum.',
      },
    )
  }
  const limit = holdLimit(vacuumLimit)
  if (!limit || !elapsed) {
    throw new CalcError(
      limit ? 'missing-input' : 'unknown-name',
      limit ? 'A rule for a standing vacuum needs the time.' : `There is no rule "${vacuumLimit}".`,
      {
        path: [limit ? 'elapsed' : 'vacuumLimit'],
        hint: limit
          ? 'Give the time between the two readings.'
          : `There are: ${HOLD_LIMITS.join(', ')}.`,
      },
    )
  }
  notes.sources.push(limit.source)
  const points = [
    { timeS: 0, pressurePa: start.si },
    { timeS: elapsed.si, pressurePa: end.si },
  ]
  const widthPa = Math.max(start.plusMinus ?? 0, end.plusMinus ?? 0)
  const { verdict } = judgeLimit(limit, points, widthPa / 2, widthPa)
  return { id: limit.id, rule: limit.rule, verdict }
}
