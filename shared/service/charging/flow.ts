import { under } from '../../errors.ts'
import type { Place } from '../../instrument/index.ts'
import type { Notes } from '../../notes.ts'
import {
  combine,
  propagate,
  type Quantity,
  say,
  settle,
  surelyAbove,
  surelyBelow,
  tied,
  toAbsolute,
} from '../../quantity/index.ts'
import {
  propertyUncertainty,
  type Refrigerant,
  saturationPressure,
} from '../../refrigerant/index.ts'
import type { ChargingInput } from './fields.ts'

/** Which way the pressures drive the refrigerant. */
export type Flow = 'into-system' | 'back-into-source' | 'cannot-tell'

interface Pressures {
  readonly sourcePressure?: Quantity<'gaugePressure'>
  readonly flow?: Flow
}

/**
 * Pressure in the source, and which way it drives the refrigerant: with the ± of thermometer, gauge,
 * barometer and of the saturation data. Only a pressure clear of the other decides.
 */
export function pressures(
  r: Refrigerant,
  { sourceTemperature, systemPressure }: ChargingInput,
  place: Place,
  notes: Notes,
): Pressures {
  if (!sourceTemperature) return {}
  const source = under('sourceTemperature', () => {
    const share = propertyUncertainty(r, sourceTemperature.si, 'bubble').pressure
    return combine(
      [
        tied(sourceTemperature, 'source temperature'),
        tied({ si: 0, plusMinus: share }, 'saturation data'),
      ],
      (kelvin = 0, off = 0) => saturationPressure(r, kelvin, 'bubble') * (1 + off),
    )
  })
  const settled = settle(source)
  const sourcePressure = place.gauge(settled.si, settled.plusMinus)
  if (!systemPressure) return { sourcePressure }
  const system = under('systemPressure', () => toAbsolute(systemPressure, place.barometerPa))
  const air =
    systemPressure.kind === 'gaugePressure'
      ? place.barometer
      : { si: place.barometerPa, plusMinus: 0 }
  const drive = propagate(
    [settled, { si: system.si - air.si, plusMinus: systemPressure.plusMinus }, air],
    (from = 0, gauge = 0, barometer = 0) => from - (gauge + barometer),
  )
  if (surelyAbove(drive, 0)) return { sourcePressure, flow: 'into-system' }
  const back = surelyBelow(drive, 0)
  notes.warnings.push({
    code: back ? 'flows-back' : 'no-drive',
    message: back
      ? `The side charged into stands at ${say(systemPressure)}, above the ${say(sourcePressure)} in the source: open the valve and refrigerant flows back into it.`
      : 'Within their ± source and system stand at the same pressure: nothing may flow. Warm the source with water within its limit, or charge into the low side with the engine running.',
  })
  return { sourcePressure, flow: back ? 'back-into-source' : 'cannot-tell' }
}
