import data from '../../../../data/service/charge.json' with { type: 'json' }
import { CalcError } from '../../../errors.ts'
import { combine, type PressureReading, type Quantity, tied } from '../../../quantity/index.ts'
import { type Phase, phaseAt } from '../../../refrigerant/index.ts'
import type { Contents } from '../input/items.ts'
import { type Filling, withProperty } from './filling.ts'
import { absolutePa, type Setting } from './setting.ts'

/**
 * Liquid, vapour or the one fluid beyond the critical point, by temperature and pressure.
 *
 * @throws {CalcError} `two-phase` where the readings lie at saturation and no phase is given.
 */
export function singlePhase(
  setting: Setting,
  temperature: Quantity<'temperature'>,
  pressure: PressureReading,
  asked: Contents['phase'],
): Filling {
  const pascal = absolutePa(setting, pressure, 'pressure')
  const found = asked === 'two-phase' ? undefined : asked
  const state = found ?? phaseByReadings(setting, temperature, pressure)
  // Beyond the critical point there is one fluid; the vapour branch of the density solve reaches it.
  const phase = state === 'supercritical' ? 'vapour' : state
  const density = combine([tied(temperature, 'temperature'), pascal], (kelvin = 0, value = 0) =>
    setting.densities.single(kelvin, value, phase),
  )
  return {
    phase,
    density: withProperty(setting, density, phase, undefined),
    how: `${state === 'supercritical' ? 'fluid beyond its critical point' : phase} at its temperature and pressure`,
  }
}

/** The phase at the readings and at the ends of their uncertainties: it must be one and the same. */
function phaseByReadings(
  { r, place }: Setting,
  temperature: Quantity<'temperature'>,
  pressure: PressureReading,
): Phase | 'supercritical' {
  const { si: pascal, plusMinus: dp = 0 } = place.absolute(pressure)
  const dT = temperature.plusMinus ?? 0
  const corners = [
    [0, 0],
    [dT, -dp],
    [-dT, dp],
  ] as const
  const phases = corners.map(([byK, byPa]) =>
    phaseAt(r, temperature.si + byK, Math.max(pascal + byPa, 1)),
  )
  const [phase] = phases
  if (phase === undefined || phase === 'two-phase' || phases.some((other) => other !== phase)) {
    throw new CalcError('two-phase', data.refusals['at-saturation'], {
      path: ['phase'],
      hint: data.hints['phase-at-saturation'],
    })
  }
  return phase
}
