import { CalcError } from '../errors.ts'
import { density as molarDensity, type Phase } from '../substance/density.ts'
import { stateAt } from '../substance/state.ts'
import type { Refrigerant } from './refrigerant.ts'
import { showK, showPa } from './refusal.ts'

/** The saturation curves are this exact; a state that close to a line counts as on it. */
const ON_THE_LINE = 1e-6

export type PhaseName = Phase | 'two-phase' | 'supercritical'

/**
 * The phase at a temperature in K and an absolute pressure in Pa.
 *
 * 'two-phase' within a blend's glide, and for a pure substance only on its line. 'supercritical'
 * above both critical temperature and critical pressure; above one of them alone it is vapour
 * (hot) or liquid (dense). Throws 'out-of-range' where the equations do not reach, and in the
 * narrow band below the critical point that the curves leave out.
 */
export function phaseAt(r: Refrigerant, temperatureK: number, pressurePa: number): PhaseName {
  checkRange(r, temperatureK, pressurePa)
  const { bubble, dew } = r
  if (
    temperatureK <= bubble.toK &&
    pressurePa > bubble.pressure(temperatureK) * (1 + ON_THE_LINE)
  ) {
    return 'liquid'
  }
  if (temperatureK <= dew.toK && pressurePa < dew.pressure(temperatureK) * (1 - ON_THE_LINE)) {
    return 'vapour'
  }
  if (temperatureK <= bubble.toK && temperatureK <= dew.toK) return 'two-phase'
  const hot = temperatureK >= r.criticalTemperatureK
  const dense = pressurePa >= r.criticalPressurePa
  if (hot && dense) return 'supercritical'
  if (temperatureK > dew.toK && pressurePa < dew.toPa) return 'vapour'
  if (hot && !isBlend(r)) return 'vapour'
  if (dense && !isBlend(r)) return 'liquid'
  throw new CalcError(
    'out-of-range',
    `${showK(temperatureK)} and ${showPa(pressurePa)} is too near ${r.info.id}'s critical point to tell liquid from vapour.`,
    { hint: 'Move away from the critical point.' },
  )
}

/**
 * Density in kg/m³ of a single phase at K and Pa absolute; a state on the line is allowed from
 * either side. Throws 'two-phase' where that phase does not exist.
 */
export function density(
  r: Refrigerant,
  temperatureK: number,
  pressurePa: number,
  phase: Phase,
): number {
  return molar(r, temperatureK, pressurePa, phase) * r.molarMass
}

/** Enthalpy in J/kg (IIR reference) of a single phase at K and Pa absolute. */
export function enthalpy(
  r: Refrigerant,
  temperatureK: number,
  pressurePa: number,
  phase: Phase,
): number {
  return state(r, temperatureK, pressurePa, phase).enthalpy / r.molarMass + r.raise.enthalpy
}

/** Entropy in J/(kg·K) (IIR reference) of a single phase at K and Pa absolute. */
export function entropy(
  r: Refrigerant,
  temperatureK: number,
  pressurePa: number,
  phase: Phase,
): number {
  return state(r, temperatureK, pressurePa, phase).entropy / r.molarMass + r.raise.entropy
}

/** The equation's own state: its zero is not the IIR's. */
const state = (r: Refrigerant, temperatureK: number, pressurePa: number, phase: Phase) =>
  stateAt(r.model(), temperatureK, molar(r, temperatureK, pressurePa, phase))

function molar(r: Refrigerant, temperatureK: number, pressurePa: number, phase: Phase): number {
  const there = phaseAt(r, temperatureK, pressurePa)
  const line = phase === 'liquid' ? r.bubble : r.dew
  const onLine =
    there === 'two-phase' &&
    Math.abs(pressurePa / line.pressure(temperatureK) - 1) <= 2 * ON_THE_LINE
  if (!(there === phase || there === 'supercritical' || onLine)) {
    throw new CalcError(
      'two-phase',
      `${r.info.id} is ${there === 'two-phase' ? 'boiling' : there}, not ${phase}, at ${showK(temperatureK)} and ${showPa(pressurePa)}.`,
      {
        hint:
          there === 'two-phase'
            ? 'Say how much of it is vapour, or give a temperature or pressure off the line.'
            : `Check the readings, or ask for ${there}.`,
      },
    )
  }
  const near =
    phase === 'liquid' && temperatureK <= line.toK
      ? line.density(temperatureK) / r.molarMass
      : undefined
  const branch = there === 'supercritical' ? 'only' : phase
  return molarDensity(r.model(), temperatureK, pressurePa, branch, near)
}

const isBlend = (r: Refrigerant) => r.info.composition.length > 1

function checkRange(r: Refrigerant, temperatureK: number, pressurePa: number): void {
  const { minimumTemperatureK, equationMaximumK, equationMaximumPa } = r
  if (
    temperatureK >= minimumTemperatureK &&
    temperatureK <= equationMaximumK &&
    pressurePa > 0 &&
    pressurePa <= equationMaximumPa
  ) {
    return
  }
  if (!(temperatureK > 0 && pressurePa > 0)) {
    throw new CalcError('out-of-range', `${temperatureK} K and ${pressurePa} Pa is no state.`, {
      hint: 'Temperature and absolute pressure must be above zero.',
    })
  }
  throw new CalcError(
    'out-of-range',
    `${showK(temperatureK)} and ${showPa(pressurePa)} is outside the equation of state of ${r.info.id}.`,
    {
      hint: `It covers ${showK(minimumTemperatureK)} to ${showK(equationMaximumK)}, up to ${showPa(equationMaximumPa)}.`,
    },
  )
}
