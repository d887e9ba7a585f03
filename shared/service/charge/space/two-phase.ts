import { CalcError } from '../../../errors.ts'
import { combine, tied } from '../../../quantity/index.ts'
import type { Contents } from '../input/items.ts'
import { type Filling, withProperty } from './filling.ts'
import { absolutePa, type Setting } from './setting.ts'

/**
 * Liquid and vapour together: one density from the quality by mass, a blend's by its flash.
 *
 * @throws {CalcError} `missing-input`, `out-of-range` and `bad-input` for what does not fix the state.
 */
export function twoPhase(setting: Setting, { temperature, pressure, quality }: Contents): Filling {
  if (!quality) {
    throw new CalcError('missing-input', 'A two-phase space needs its quality.', {
      path: ['quality'],
      hint: 'Give quality as vapour in percent of the mass in the space ("25 %"), or phase liquid or vapour if it holds only that.',
    })
  }
  if (quality.si > 1) {
    throw new CalcError('out-of-range', 'A quality lies between 0 and 100 %.', {
      path: ['quality'],
      hint: '0 % is all liquid, 100 % all vapour.',
    })
  }
  if (temperature && pressure) {
    throw new CalcError(
      'bad-input',
      'A two-phase space takes its temperature or its pressure, not both.',
      { path: ['pressure'], hint: 'Keep the one that was measured better.' },
    )
  }
  const { densities } = setting
  const share = tied(quality, 'quality')
  // Vapour fills nearly all of a two-phase space, so its share of the property's ± stands for both.
  if (temperature) {
    const density = combine([tied(temperature, 'temperature'), share], (kelvin = 0, x = 0) =>
      densities.twoPhase({ temperatureK: kelvin }, x),
    )
    return {
      phase: 'two-phase',
      density: withProperty(setting, density, 'vapour', temperature.si),
      how: 'two-phase at its temperature and quality',
    }
  }
  if (!pressure) {
    throw new CalcError(
      'missing-input',
      'The temperature or the pressure of the two-phase space is needed.',
      { path: ['temperature'], hint: 'Give one of them, beside the quality.' },
    )
  }
  const pascal = absolutePa(setting, pressure, 'pressure')
  const density = combine([pascal, share], (value = 0, x = 0) =>
    densities.twoPhase({ pressurePa: value }, x),
  )
  return {
    phase: 'two-phase',
    density: withProperty(setting, density, 'vapour', undefined),
    how: 'two-phase at its pressure and quality',
  }
}
