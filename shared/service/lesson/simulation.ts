import { NO_DEVIATIONS } from '../../cycle/index.ts'
import { barometricPressure, fraction, type Quantity, temperature } from '../../quantity/index.ts'
import type { Present } from '../simulate/faults.ts'
import type { LessonCase } from './draw.ts'

/** Digits that make no difference which an instrument shows. */
const DIGITS = 6

const text = (value: Quantity, unit: string) =>
  `${Number(value.to(unit).toPrecision(DIGITS))} ${unit}`
const share = (si: number) => text(fraction(si), '%')

/**
 * The case as `simulate` takes it: the same machine in the same weather with the same fault. In US units,
 * in which a lesson is told where nobody asks for others.
 */
export function simulationOf(
  { modelMachine, machine, conditions, asked }: LessonCase,
  size: Present | undefined,
) {
  const { device, ...others } = asked.deviations
  const own = Object.entries({ ...others, deviceSize: device })
  return {
    modelMachine,
    refrigerant: machine.refrigerant,
    ambient: text(temperature(conditions.ambientK), '°F'),
    returnAir: text(temperature(conditions.returnAirK), '°F'),
    relativeHumidity: share(conditions.returnHumidity),
    compressorRpm: Number((conditions.speed * 60).toPrecision(DIGITS)),
    condenserFan: share(conditions.condenserFan),
    blower: share(conditions.blower),
    barometer: text(barometricPressure(conditions.barometerPa), 'inHg'),
    ...(asked.deviations === NO_DEVIATIONS
      ? {}
      : { deviations: Object.fromEntries(own.map(([name, value]) => [name, share(value)])) }),
    ...(size
      ? { [size.setting]: text(size.size, size.size.kind === 'fraction' ? '%' : 'psi') }
      : {}),
  }
}
