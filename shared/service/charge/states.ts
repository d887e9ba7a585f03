import { CalcError, under } from '../../errors.ts'
import { type PressureReading, type Quantity, toAbsolute } from '../../quantity/index.ts'
import {
  density,
  type Phase,
  phaseAt,
  type Refrigerant,
  saturatedDensity,
  saturationTemperature,
} from '../../refrigerant/index.ts'
import { combine, reading, settle } from './estimate.ts'
import type { Contents } from './fields.ts'
import { absolute, type Filling } from './filling.ts'
import { twoPhase } from './two-phase.ts'

type Path = readonly (string | number)[]

/**
 * Density of what fills a space.
 *
 * Temperature and pressure give the phase by themselves; a phase with one of them means saturated
 * (liquid on the bubble line, vapour on the dew line); two-phase needs the quality by mass, and
 * its density is that of both volumes together: 1 / (x/ρ″ + (1−x)/ρ′).
 *
 * @throws {CalcError} `two-phase` when temperature and pressure cannot tell how much is liquid,
 *   `missing-input` when they do not fix the state, and what the properties refuse.
 */
export function fillingOf(
  r: Refrigerant,
  contents: Contents,
  barometerPa: number,
  path: Path,
): Filling {
  return under(path, () =>
    stateNamed(contents, () => {
      const filling = stateOf(r, contents, barometerPa)
      // Worked out here once, so that what the properties refuse is named before any sum.
      settle(filling.density)
      return filling
    }),
  )
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

function stateOf(r: Refrigerant, contents: Contents, barometerPa: number): Filling {
  const { phase, temperature, pressure, quality } = contents
  if (phase === 'two-phase' || (phase === undefined && quality)) {
    return twoPhase(r, contents, barometerPa)
  }
  if (quality) {
    throw new CalcError('bad-input', `A quality belongs to two-phase, not to ${phase}.`, {
      path: ['quality'],
      hint: 'Leave quality out, or give phase two-phase.',
    })
  }
  if (temperature && pressure) return singlePhase(r, temperature, pressure, phase, barometerPa)
  if (phase === undefined) throw phaseMissing(temperature !== undefined || pressure !== undefined)
  if (temperature) {
    return {
      phase,
      density: combine([reading(temperature)], ([kelvin = 0]) =>
        saturatedDensity(r, kelvin, phase),
      ),
      how: `saturated ${phase} at its temperature`,
      assumptions: [],
      warnings: [],
    }
  }
  if (pressure) {
    return {
      phase,
      density: combine([absolute(pressure, barometerPa)], ([pascal = 0]) =>
        saturatedDensity(r, saturationTemperature(r, pascal, lineOf(phase)), phase),
      ),
      how: `saturated ${phase} at its pressure`,
      assumptions: [],
      warnings: [],
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

const lineOf = (phase: Phase) => (phase === 'liquid' ? 'bubble' : 'dew')

function singlePhase(
  r: Refrigerant,
  temperature: Quantity<'temperature'>,
  pressure: PressureReading,
  asked: Phase | undefined,
  barometerPa: number,
): Filling {
  const pascal = absolute(pressure, barometerPa)
  const found = asked ?? phaseByReadings(r, temperature, pressure, barometerPa)
  // Beyond the critical point there is one fluid; the vapour branch of the density solve reaches it.
  const phase = found === 'supercritical' ? 'vapour' : found
  return {
    phase,
    density: combine([reading(temperature), pascal], ([kelvin = 0, value = 0]) =>
      density(r, kelvin, value, phase),
    ),
    how: `${found === 'supercritical' ? 'fluid beyond its critical point' : phase} at its temperature and pressure`,
    assumptions: [],
    warnings: [],
  }
}

/** The phase at the readings and at the ends of their uncertainties: it must be one and the same. */
function phaseByReadings(
  r: Refrigerant,
  temperature: Quantity<'temperature'>,
  pressure: PressureReading,
  barometerPa: number,
): Phase | 'supercritical' {
  const pascal = toAbsolute(pressure, barometerPa).si
  const [dT, dp] = [temperature.plusMinus ?? 0, pressure.plusMinus ?? 0]
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
