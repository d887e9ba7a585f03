import { CalcError } from '../errors.ts'
import type { Phase } from '../substance/density.ts'
import { type MolarState, stateAt } from '../substance/state.ts'
import { type StateGuess, searchState } from '../substance/state-search.ts'
import type { Refrigerant } from './refrigerant.ts'
import { showPa } from './refusal.ts'
import { saturatedCurves } from './saturated-curves.ts'
import { glide, saturationTemperature } from './saturation.ts'
import { density } from './single-phase.ts'

/** One state of a refrigerant with all that a cycle asks of it. SI; IIR reference. */
export interface State {
  readonly temperatureK: number
  readonly pressurePa: number
  /** kg/m³ */
  readonly density: number
  /** J/kg */
  readonly enthalpy: number
  /** J/(kg·K) */
  readonly entropy: number
  /** J/(kg·K); of boiling refrigerant there is none. */
  readonly heatCapacity?: number
  /** Vapour by mass, 0 to 1, where liquid and vapour are there together. */
  readonly quality?: number
}

/** Widest glide, K, up to which a mean temperature stands for a boiling blend's own. */
const NEGLIGIBLE_GLIDE_K = 0.5

/** State of a single phase at K and kg/m³; the caller vouches that one phase exists there. */
export function stateAtDensity(r: Refrigerant, temperatureK: number, density: number): State {
  return fromMolar(r, stateAt(r.model(), temperatureK, density / r.molarMass))
}

/** State of a single phase at K and Pa absolute. Throws 'two-phase' where that phase does not exist. */
export function stateAtPressure(
  r: Refrigerant,
  temperatureK: number,
  pressurePa: number,
  phase: Phase,
): State {
  return stateAtDensity(r, temperatureK, density(r, temperatureK, pressurePa, phase))
}

/** State at an absolute pressure in Pa, below the critical, with an enthalpy in J/kg: of one phase or of two. */
export function stateWithEnthalpy(r: Refrigerant, pressurePa: number, enthalpy: number): State {
  return stateWith(r, pressurePa, 'enthalpy', enthalpy)
}

/** State at an absolute pressure in Pa, below the critical, with an entropy in J/(kg·K): of one phase or of two. */
export function stateWithEntropy(r: Refrigerant, pressurePa: number, entropy: number): State {
  return stateWith(r, pressurePa, 'entropy', entropy)
}

function stateWith(
  r: Refrigerant,
  pressurePa: number,
  held: 'enthalpy' | 'entropy',
  value: number,
): State {
  const bubbleK = saturationTemperature(r, pressurePa, 'bubble')
  const dewK = saturationTemperature(r, pressurePa, 'dew')
  const curves = saturatedCurves(r)
  const liquid = curves.liquid[held](bubbleK)
  const vapour = curves.vapour[held](dewK)
  const molarValue = (value - r.raise[held]) * r.molarMass
  if (value < liquid || value > vapour) {
    const phase = value < liquid ? 'liquid' : 'vapour'
    const guess = startAt(r, value - (phase === 'liquid' ? liquid : vapour), held, {
      phase,
      lineK: phase === 'liquid' ? bubbleK : dewK,
    })
    return fromMolar(r, searchState(r.model(), pressurePa, held, molarValue, guess))
  }
  if (glide(r, pressurePa) > NEGLIGIBLE_GLIDE_K) {
    throw new CalcError(
      'two-phase',
      `${r.info.id} boils over a glide at ${showPa(pressurePa)}: its state between the lines is not given by one temperature.`,
      { hint: 'Give a state outside the two-phase region, or a refrigerant without glide.' },
    )
  }
  const quality = (value - liquid) / (vapour - liquid)
  const between = (l: number, v: number) => l + quality * (v - l)
  return {
    temperatureK: between(bubbleK, dewK),
    pressurePa,
    density: 1 / between(1 / r.bubble.density(bubbleK), 1 / r.dew.density(dewK)),
    enthalpy: between(curves.liquid.enthalpy(bubbleK), curves.vapour.enthalpy(dewK)),
    entropy: between(curves.liquid.entropy(bubbleK), curves.vapour.entropy(dewK)),
    quality,
  }
}

/** As far from the line as its heat capacity says; vapour thins out in proportion. */
function startAt(
  r: Refrigerant,
  beyond: number,
  held: 'enthalpy' | 'entropy',
  { phase, lineK }: { readonly phase: Phase; readonly lineK: number },
): StateGuess {
  const line = phase === 'liquid' ? r.bubble : r.dew
  const heatCapacity = saturatedCurves(r)[phase].heatCapacity(lineK)
  const shift = held === 'enthalpy' ? beyond / heatCapacity : (beyond * lineK) / heatCapacity
  const temperatureK = Math.min(Math.max(lineK + shift, 0.7 * lineK), 1.6 * lineK)
  const onLine = line.density(lineK) / r.molarMass
  const density = phase === 'liquid' ? onLine : (onLine * lineK) / temperatureK
  return { temperatureK, density }
}

function fromMolar(r: Refrigerant, state: MolarState): State {
  return {
    temperatureK: state.temperatureK,
    pressurePa: state.pressurePa,
    density: state.density * r.molarMass,
    enthalpy: state.enthalpy / r.molarMass + r.raise.enthalpy,
    entropy: state.entropy / r.molarMass + r.raise.entropy,
    heatCapacity: state.cp / r.molarMass,
  }
}
