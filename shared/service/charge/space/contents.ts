import data from '../../../../data/service/charge.json' with { type: 'json' }
import { CalcError, under } from '../../../errors.ts'
import { combine, tied } from '../../../quantity/index.ts'
import type { Path } from '../input/gather.ts'
import type { Contents } from '../input/items.ts'
import { type Filling, withProperty } from './filling.ts'
import { absolutePa, type Setting } from './setting.ts'
import { singlePhase } from './single-phase.ts'
import { twoPhase } from './two-phase.ts'

/**
 * Density of what fills a space, with the ± of the readings, of the barometer and of the properties.
 *
 * Temperature and pressure give the phase by themselves; a phase with one of them means saturated
 * (liquid on the bubble line, vapour on the dew line); two-phase needs the quality by mass.
 *
 * @throws {CalcError} `two-phase` when temperature and pressure cannot tell how much is liquid,
 *   `missing-input` when they do not fix the state, and what the properties refuse.
 */
export function fillingOf(setting: Setting, contents: Contents, path: Path): Filling {
  return under(path, () => stateNamed(contents, () => stateOf(setting, contents)))
}

/** What the properties refuse names no field: it is the phase asked for, or the reading given. */
function stateNamed<T>({ phase, temperature }: Contents, work: () => T): T {
  try {
    return work()
  } catch (error) {
    if (!(error instanceof CalcError) || error.path.length > 0) throw error
    const wrongPhase = error.code === 'two-phase' && phase !== undefined
    throw error.under(wrongPhase ? 'phase' : temperature ? 'temperature' : 'pressure')
  }
}

function stateOf(setting: Setting, contents: Contents): Filling {
  const { phase, temperature, pressure, quality } = contents
  if (phase === 'two-phase' || (phase === undefined && quality)) return twoPhase(setting, contents)
  if (quality) {
    throw new CalcError('bad-input', `A quality belongs to two-phase, not to ${phase}.`, {
      path: ['quality'],
      hint: 'Leave quality out, or give phase two-phase.',
    })
  }
  if (temperature && pressure) return singlePhase(setting, temperature, pressure, phase)
  if (phase === undefined) throw phaseMissing(temperature !== undefined || pressure !== undefined)
  const { densities } = setting
  if (temperature) {
    return {
      phase,
      density: withProperty(
        setting,
        combine([tied(temperature, 'temperature')], (kelvin = 0) =>
          densities.saturated(kelvin, phase),
        ),
        phase,
        temperature.si,
      ),
      how: `saturated ${phase} at its temperature`,
    }
  }
  if (pressure) {
    const pascal = absolutePa(setting, pressure, 'pressure')
    return {
      phase,
      density: withProperty(
        setting,
        combine([pascal], (value = 0) => densities.saturatedAt(value, phase)),
        phase,
        undefined,
      ),
      how: `saturated ${phase} at its pressure`,
    }
  }
  throw new CalcError(
    'missing-input',
    `The temperature or the pressure of the ${phase} is needed.`,
    {
      path: ['temperature'],
      hint: 'Give the temperature ("110 °F" means saturated), the pressure, or both.',
    },
  )
}

function phaseMissing(oneReading: boolean): CalcError {
  return new CalcError(
    'missing-input',
    oneReading
      ? 'One reading does not tell whether the space holds liquid or vapour.'
      : 'What fills the space is not said.',
    {
      path: ['phase'],
      hint: data.hints['phase-of-space'],
    },
  )
}
