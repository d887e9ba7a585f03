import { CalcError } from '../../errors.ts'
import { type Refrigerant, twoPhaseDensity } from '../../refrigerant/index.ts'
import { combine, reading } from './estimate.ts'
import type { Contents } from './fields.ts'
import { absolute, type Filling } from './filling.ts'

/** Liquid and vapour together: one density from the quality by mass, a blend's by its flash. */
export function twoPhase(r: Refrigerant, contents: Contents, barometerPa: number): Filling {
  const { temperature, pressure, quality } = contents
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
  const frame = { phase: 'two-phase' as const, assumptions: [], warnings: [] }
  if (temperature) {
    return {
      density: combine([reading(temperature), reading(quality)], ([kelvin = 0, x = 0]) =>
        twoPhaseDensity(r, { temperatureK: kelvin }, x),
      ),
      how: 'two-phase at its temperature and quality',
      ...frame,
    }
  }
  if (!pressure) {
    throw new CalcError(
      'missing-input',
      'The temperature or the pressure of the two-phase space is needed.',
      {
        path: ['temperature'],
        hint: 'Give one of them, beside the quality.',
      },
    )
  }
  return {
    density: combine([absolute(pressure, barometerPa), reading(quality)], ([pascal = 0, x = 0]) =>
      twoPhaseDensity(r, { pressurePa: pascal }, x),
    ),
    how: 'two-phase at its pressure and quality',
    ...frame,
  }
}
