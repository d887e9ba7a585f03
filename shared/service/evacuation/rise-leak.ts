import type { Place } from '../../instrument/index.ts'
import type { Notes } from '../../notes.ts'
import { AIR } from '../../physics/hose-flow.ts'
import { massOfLeak } from '../../physics/leak-rate.ts'
import { leakRate, mass, pressureDifference, propagate } from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { holeLoss } from '../hole-loss.ts'
import { plausible } from '../plausible.ts'
import type { EvacuationInput } from './fields.ts'
import type { RiseJudgement } from './rise-view.ts'
import { sentences } from './sentences.ts'

/** Size of the leak that the rise shows, and what it means as refrigerant. */
export function leakPart(
  { volume, temperature }: EvacuationInput,
  judged: RiseJudgement,
  r: Refrigerant | undefined,
  place: () => Place,
  notes: Notes,
) {
  const leaks = judged.verdict === 'leaking' || judged.verdict === 'wet-and-leaking'
  if (!volume || !temperature) {
    if (leaks) {
      notes.warnings.push({ code: 'no-volume', message: sentences.warnings['no-volume'] })
    }
    return {}
  }
  plausible(volume, 1e-6, 1_000, 'An inner volume', ['volume'])
  const smallestLeak = leakRate(volume.si * 2 * judged.fits.steady.slopeUncertainty)
  if (judged.verdict === 'levels-off-above-water' && judged.plateau && r) {
    const risenPa = judged.plateau.pa - judged.fits.free.startPa
    return {
      refrigerantInside: mass(massOfLeak(volume.si * risenPa, r.molarMass, temperature.si)),
      smallestLeak,
    }
  }
  if (!leaks) return { smallestLeak }
  const flow = propagate(
    [volume, { si: judged.slope, plusMinus: judged.slopePlusMinus }],
    (cubic, slope) => cubic * slope,
  )
  const rate = leakRate(flow.si, flow.plusMinus)
  notes.steps.push({
    what: 'Inflow of air',
    formula: 'inner volume × steady rise, while the inside is below half of the barometer',
    values: { volume, risePerMinute: pressureDifference(judged.slope * 60) },
    gives: rate,
  })
  if (!r) return { leakRate: rate, smallestLeak }
  const { barometerPa } = place()
  const measured = {
    flow: rate,
    molarMass: AIR.molarMass,
    highPa: barometerPa,
    lowPa: 0,
    temperatureK: temperature.si,
  }
  return { leakRate: rate, ...holeLoss(measured, r, barometerPa, notes), smallestLeak }
}
