import { under } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import { AIR } from '../../physics/hose-flow.ts'
import { LEAK_RATE_SOURCES, massOfLeak, refrigerantLoss } from '../../physics/leak-rate.ts'
import { absolutePressure, leakRate, massFlow, pressureDifference } from '../../quantity/index.ts'
import { type Refrigerant, saturationPressure } from '../../refrigerant/index.ts'
import { plausible } from '../plausible.ts'
import { propertySources } from '../property-sources.ts'
import type { RiseInput } from './rise-input.ts'
import type { RiseJudgement } from './rise-view.ts'

/** Size of the leak that the rise shows, and what it means as refrigerant. */
export function leakPart(
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
