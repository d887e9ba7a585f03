import { CalcError } from '../errors.ts'
import type { Notes } from '../notes.ts'
import { LEAK_RATE_SOURCES, massOfLeak, refrigerantLoss } from '../physics/leak-rate.ts'
import { absolutePressure, leakRate, massFlow, type Quantity, widthOf } from '../quantity/index.ts'
import { type Line, type Refrigerant, saturationPressure } from '../refrigerant/index.ts'
import { propertySources } from './property-sources.ts'

/** How a leak was measured: what gas went through the hole, and what drove it. */
export interface MeasuredLeak {
  /** pV flow, Pa·m³/s. */
  readonly flow: Quantity<'leakRate'>
  /** kg/mol */
  readonly molarMass: number
  /** Pressures on both sides, Pa absolute. */
  readonly highPa: number
  readonly lowPa: number
  readonly temperatureK: number
}

/** What the hole means as refrigerant: at the same flow, and the range of what it loses at rest. */
interface HoleLoss {
  readonly refrigerantAtSameFlow: Quantity<'massFlow'>
  readonly refrigerantAtRestFrom?: Quantity<'massFlow'>
  readonly refrigerantAtRestTo?: Quantity<'massFlow'>
}

/**
 * Refrigerant through a hole that another gas was measured through.
 *
 * The range holds both ways in which gas can pass a hole, the ± of the measured flow, and of a blend
 * both lines: liquid and vapour at rest lie between them. Without a saturation pressure at the
 * temperature (R-744 on a warm day) there is no range.
 */
export function holeLoss(
  { flow, molarMass, highPa, lowPa, temperatureK }: MeasuredLeak,
  r: Refrigerant,
  barometerPa: number,
  notes: Notes,
): HoleLoss {
  const same = massFlow(massOfLeak(flow.si, r.molarMass, temperatureK))
  notes.sources.push(...LEAK_RATE_SOURCES, ...propertySources(r))
  const [dewPa, bubblePa] = [
    restPressure(r, temperatureK, 'dew'),
    restPressure(r, temperatureK, 'bubble'),
  ]
  if (dewPa === undefined || bubblePa === undefined) {
    notes.warnings.push({
      code: 'no-rest-pressure',
      message: `${r.info.id} has no saturation pressure at this temperature, so what the hole loses at rest is left open.`,
    })
    return { refrigerantAtSameFlow: same }
  }
  const lossAt = (measured: number, restHighPa: number) =>
    refrigerantLoss(
      Math.max(measured, 0),
      {
        measuredMolarMass: molarMass,
        measuredHighPa: highPa,
        measuredLowPa: lowPa,
        restHighPa,
        restLowPa: barometerPa,
      },
      r,
      temperatureK,
    )
  const from = lossAt(flow.si - widthOf(flow), dewPa).fromKgPerS
  const to = lossAt(flow.si + widthOf(flow), bubblePa).toKgPerS
  // one range, one unit: that of its lower end, so that a slow leak is never ounces a minute
  const refrigerantAtRestFrom = massFlow(from)
  const refrigerantAtRestTo = massFlow(to).sized(from)
  notes.steps.push({
    what: 'Refrigerant through the same hole',
    formula:
      'pV flow × molar mass ÷ (gas constant × temperature), × the ratio of pressure differences and √(molar mass of the test gas ÷ that of the refrigerant), up to × the ratio of differences of squared pressures and 1.2 to 2.5 for the thinner vapour',
    values: {
      leakRate: leakRate(flow.si, flow.plusMinus),
      restPressure: absolutePressure(bubblePa),
      molarMass: r.molarMass,
      atSameFlow: same,
    },
    gives: refrigerantAtRestTo,
  })
  return { refrigerantAtSameFlow: same, refrigerantAtRestFrom, refrigerantAtRestTo }
}

function restPressure(r: Refrigerant, temperatureK: number, line: Line): number | undefined {
  try {
    return saturationPressure(r, temperatureK, line)
  } catch (error) {
    if (error instanceof CalcError) return undefined
    throw error
  }
}
