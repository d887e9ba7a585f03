import { under } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import { say, toAbsolute, toGauge } from '../../quantity/index.ts'
import { type Refrigerant, saturationPressure } from '../../refrigerant/index.ts'
import type { ChargingInput } from './fields.ts'

/** One psi, a small division of a service gauge, where no uncertainty is stated, Pa. */
const GAUGE_PA = 7_000

/** Pressure in the source, and which way it drives the refrigerant. */
export function pressures(r: Refrigerant, input: ChargingInput, barometerPa: number, notes: Notes) {
  const { sourceTemperature, systemPressure } = input
  if (!sourceTemperature) return {}
  const sourcePa = under('sourceTemperature', () =>
    saturationPressure(r, sourceTemperature.si, 'bubble'),
  )
  const sourcePressure = toGauge(sourcePa, barometerPa)
  if (!systemPressure) return { sourcePressure }
  const system = under('systemPressure', () => toAbsolute(systemPressure, barometerPa))
  const width = system.plusMinus ?? GAUGE_PA
  const drive = sourcePa - system.si
  if (drive > width) return { sourcePressure, flow: 'into-system' as const }
  const back = drive < -width
  notes.warnings.push({
    code: back ? 'flows-back' : 'no-drive',
    message: back
      ? `The side charged into stands at ${say(toGauge(system.si, barometerPa))}, above the ${say(sourcePressure)} in the source: open the valve and refrigerant flows back into it.`
      : 'Source and system stand at the same pressure: nothing will flow. Warm the source with water within its limit, or charge into the low side with the engine running.',
  })
  return { sourcePressure, flow: back ? ('back-into-source' as const) : ('cannot-tell' as const) }
}
