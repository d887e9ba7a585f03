import type { Notes } from '../../notes.ts'
import { AIR } from '../../physics/hose-flow.ts'
import { massOfLeak } from '../../physics/leak-rate.ts'
import {
  leakRate,
  massFlow,
  propagate,
  type Quantity,
  quantity,
  readQuantity,
  say,
  volumeFlow,
} from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { fillIn } from '../../sentence.ts'
import { holeLoss } from '../hole-loss.ts'
import { plausible } from '../plausible.ts'
import { propertySources } from '../property-sources.ts'
import { leakFacts, leakSource } from './facts.ts'
import type { LeakTestInput, TestGas } from './fields.ts'
import type { Standing } from './standing-readings.ts'
import type { StandingVerdict } from './standing-sentence.ts'

const DAY = quantity('duration', 1, 'd')

/** What went through the hole: the air into a vacuum, the test gas out of a pressure. */
const molarMassOf = (kind: Standing['kind'], gas: TestGas = 'nitrogen'): number => {
  const known: Readonly<Record<string, number>> = leakFacts.testGasMolarMass
  return kind === 'vacuum' ? AIR.molarMass : (known[gas] ?? leakFacts.testGasMolarMass.nitrogen)
}

/** Size of the leak, or the smallest that could have shown, with volume and time. */
export function sizePart(
  { elapsed, volume, testGas }: LeakTestInput,
  { kind, toK, startPa: start, endPa: end }: Standing,
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
        message: leakFacts.told.warnings['no-volume-or-time'],
      })
    }
    return {}
  }
  const seconds = plausible(elapsed, 1, 400 * DAY.si, 'A time', ['elapsed']).si
  const litres = plausible(volume, 1e-6, 1_000, 'An inner volume', ['volume'])
  const smallest = ((unexplained.plusMinus ?? 0) * litres.si) / seconds
  const temperatureK = toK.si
  const asRefrigerant = (flow: number, model: Refrigerant) =>
    massFlow(massOfLeak(flow, model.molarMass, temperatureK))
  const shown = {
    smallestLeak: leakRate(smallest),
    ...(r ? { smallestAsRefrigerant: asRefrigerant(smallest, r) } : {}),
  }
  if (r) notes.sources.push(...propertySources(r))
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
    formula: 'inner volume × unexplained change ÷ time',
    values: { volume: litres, unexplained, elapsed },
    gives: rate,
  })
  const asVolume = volumeFlow(
    flow.si / barometerPa,
    flow.plusMinus === undefined ? undefined : flow.plusMinus / barometerPa,
  ).in('mL/min')
  if (!r) return { ...shown, leakRate: rate, testGasFlow: asVolume }
  if (kind === 'pressure') notes.sources.push(leakSource('test-gas-molar-mass'))
  const middlePa = (start.si + end.si) / 2
  const measured = {
    flow: rate,
    molarMass: molarMassOf(kind, testGas),
    highPa: Math.max(middlePa, barometerPa),
    lowPa: Math.min(middlePa, barometerPa),
    temperatureK,
  }
  return {
    ...shown,
    leakRate: rate,
    testGasFlow: asVolume,
    ...holeLoss(measured, r, barometerPa, notes),
  }
}

/** A passed test says little when it could not have shown what a year of normal loss is. */
function warnIfCoarse(smallest: Quantity<'massFlow'> | undefined, notes: Notes): void {
  const normal = readQuantity(leakFacts.normalLoss.perYear, ['massFlow'])
  if (!smallest || smallest.si <= normal.si) return
  notes.warnings.push({
    code: 'standing-test-is-coarse',
    message: fillIn(leakFacts.told.warnings['standing-test-is-coarse'], { least: say(smallest) }),
  })
}
