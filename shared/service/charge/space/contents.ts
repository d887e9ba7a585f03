import { CalcError, under } from '../../../errors.ts'
import {
  combine,
  type PressureReading,
  type Quantity,
  type Tied,
  tied,
} from '../../../quantity/index.ts'
import { type Phase, phaseAt } from '../../../refrigerant/index.ts'
import type { Path } from '../input/gather.ts'
import type { Contents, PHASES } from '../input/items.ts'
import { absolutePa, type Setting } from './setting.ts'

/** What fills a space, with its density. */
export interface Filling {
  readonly phase: (typeof PHASES)[number]
  /** kg/m³ */
  readonly density: Tied
  /** In words: "saturated liquid at its temperature". */
  readonly how: string
}

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
      density: known(
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
      density: known(
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

/** The density with the property's own uncertainty in it. */
function known(
  { densities }: Setting,
  density: Tied,
  phase: Phase,
  saturatedAtK: number | undefined,
): Tied {
  const share = densities.share(phase, saturatedAtK)
  const property = tied(densities.property[phase], `${phase} density data`)
  return combine([density, property], (value = 0, off = 0) => value * (1 + share * off))
}

function twoPhase(setting: Setting, { temperature, pressure, quality }: Contents): Filling {
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
      density: known(setting, density, 'vapour', temperature.si),
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
    density: known(setting, density, 'vapour', undefined),
    how: 'two-phase at its pressure and quality',
  }
}

function singlePhase(
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
    density: known(setting, density, phase, undefined),
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
    throw new CalcError(
      'two-phase',
      'These readings lie at saturation, where temperature and pressure do not tell how much is liquid.',
      {
        path: ['phase'],
        hint: 'Give phase liquid or vapour if the space is known to hold only that, or phase two-phase with a quality in percent by mass.',
      },
    )
  }
  return phase
}

function phaseMissing(oneReading: boolean): CalcError {
  return new CalcError(
    'missing-input',
    oneReading
      ? 'One reading does not tell whether the space holds liquid or vapour.'
      : 'What fills the space is not said.',
    {
      path: ['phase'],
      hint: 'Give phase liquid, vapour or two-phase with a temperature or a pressure, or both readings without a phase.',
    },
  )
}
