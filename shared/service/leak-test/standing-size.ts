import { under } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import { LEAK_RATE_SOURCES, massOfLeak, refrigerantLoss } from '../../physics/leak-rate.ts'
import {
  absolutePressure,
  leakRate,
  massFlow,
  propagate,
  type Quantity,
  readQuantity,
  say,
  volumeFlow,
} from '../../quantity/index.ts'
import { type Refrigerant, saturationPressure } from '../../refrigerant/index.ts'
import { plausible } from '../plausible.ts'
import { propertySources } from '../property-sources.ts'
import { leakFacts } from './facts.ts'
import type { Standing, StandingInput } from './standing-readings.ts'
import type { StandingVerdict } from './standing-sentence.ts'

const NITROGEN_MOLAR_MASS = 0.0280134

/** Size of the leak, or the smallest that could have shown, with volume and time. */
export function sizePart(
  { elapsed, volume }: StandingInput,
  { toK, start, end }: Standing,
  unexplained: Quantity<'pressureDifference'>,
  verdict: StandingVerdict,
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
  if (verdict !== 'leak' && verdict !== 'rises') {
    warnIfCoarse(shown.smallestAsRefrigerant, notes)
    return shown
  }
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

/** A passed test says little when it could not have shown what a year of normal loss is. */
function warnIfCoarse(smallest: Quantity<'massFlow'> | undefined, notes: Notes): void {
  const normal = readQuantity(leakFacts.normalLoss.perYear, ['massFlow'])
  if (!smallest || smallest.si <= normal.si) return
  notes.warnings.push({
    code: 'standing-test-is-coarse',
    message: `Passing it rules out only leaks above ${say(smallest)}. Let it stand longer, read pressure and temperature with finer instruments, or search with a detector.`,
  })
}
