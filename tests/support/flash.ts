import { CalcError } from '../../shared/errors.ts'
import type { Phase } from '../../shared/substance/fugacity.ts'
import { mixtureOf } from '../../shared/substance/mixture.ts'
import type { Multifluid } from '../../shared/substance/multifluid.ts'
import { singlePhase, stability } from '../../shared/substance/stability.ts'
import { stateAt } from '../../shared/substance/state.ts'
import { splitPhases, type TwoPhase } from '../../shared/substance/two-phase.ts'

/** What a mixture is at a state: one phase, or two in equilibrium. */
export interface Flash {
  readonly temperatureK: number
  readonly pressurePa: number
  readonly kind: 'liquid' | 'vapour' | 'two-phase'
  /** Moles of vapour per mole of mixture, 0 to 1. */
  readonly vapourFraction: number
  readonly liquid?: Phase
  readonly vapour?: Phase
  /** Molar enthalpy of the whole, J/mol, on the equations' own zero. */
  readonly enthalpy: number
}

const MAXIMUM_STEPS = 300
/** Substitution stops at this |ln f′ − ln f″| or after so many steps, and Newton's method finishes. */
const NEAR = 1e-4
const SUBSTITUTIONS = 60
const ENTHALPY_TOLERANCE = 1e-10

/**
 * Flash at temperature in K and absolute pressure in Pa: a stability test first, then successive
 * substitution with the Rachford–Rice balance, so that neither the trivial root nor an unstable
 * single phase is ever returned.
 *
 * @param z - Mole fractions, each above 0, summing to 1.
 * @throws {CalcError} `no-convergence`.
 */
export function flashTP(
  fluid: Multifluid,
  z: Float64Array,
  temperatureK: number,
  pressurePa: number,
): Flash {
  const test = stability(fluid, z, temperatureK, pressurePa)
  if (test.split === undefined) {
    const whole = { [test.kind]: test.phase } as { liquid: Phase } | { vapour: Phase }
    return {
      temperatureK,
      pressurePa,
      kind: test.kind,
      vapourFraction: test.kind === 'vapour' ? 1 : 0,
      ...whole,
      enthalpy: enthalpyOf(fluid, test.phase),
    }
  }
  const other = test.split
  let k = z.map((zi, i) =>
    test.kind === 'liquid' ? (other[i] as number) / zi : zi / (other[i] as number),
  )
  for (let step = 0; step < SUBSTITUTIONS; step += 1) {
    const beta = rachfordRice(z, k)
    const x = normal(z.map((zi, i) => zi / (1 + beta * ((k[i] as number) - 1))))
    const y = normal(x.map((xi, i) => xi * (k[i] as number)))
    const liquid = singlePhase(fluid, x, temperatureK, pressurePa, 'liquid')
    const vapour = singlePhase(fluid, y, temperatureK, pressurePa, 'vapour')
    if (liquid === undefined || vapour === undefined) break
    let gap = 0
    const next = k.map((ki, i) => {
      const d = (liquid.logFugacity[i] as number) - (vapour.logFugacity[i] as number)
      gap = Math.max(gap, Math.abs(d))
      return ki * Math.exp(d)
    })
    if (gap < NEAR || step === SUBSTITUTIONS - 1) {
      const guess = {
        liquid,
        vapour,
        liquidVolume: (1 - beta) / liquid.density,
        vapourVolume: beta / vapour.density,
      }
      return twoPhase(fluid, splitPhases(fluid, temperatureK, z, { pressurePa }, guess))
    }
    k = next
  }
  throw new CalcError(
    'no-convergence',
    `The mixture splits at ${temperatureK} K and ${pressurePa} Pa, but the two phases were not found.`,
    { hint: 'The state may be at the critical point: move a little away from it.' },
  )
}

/**
 * Flash at absolute pressure in Pa and molar enthalpy in J/mol (on the equations' own zero, as
 * {@link Flash} gives it), between two temperatures in K.
 *
 * Enthalpy rises with temperature at constant pressure, so a bracketed search finds the one answer.
 *
 * @throws {CalcError} `out-of-range` when the enthalpy lies outside the bracket; `no-convergence`.
 */
export function flashPH(
  fluid: Multifluid,
  z: Float64Array,
  pressurePa: number,
  enthalpy: number,
  bracketK: readonly [number, number],
): Flash {
  const at = (temperatureK: number) => flashTP(fluid, z, temperatureK, pressurePa)
  let low = at(bracketK[0])
  let high = at(bracketK[1])
  if (!(low.enthalpy <= enthalpy && enthalpy <= high.enthalpy)) {
    throw new CalcError(
      'out-of-range',
      `An enthalpy of ${enthalpy} J/mol is not met between ${bracketK[0]} and ${bracketK[1]} K at ${pressurePa} Pa.`,
      { hint: `It runs from ${low.enthalpy} to ${high.enthalpy} J/mol there.` },
    )
  }
  const scale = Math.abs(high.enthalpy - low.enthalpy)
  for (let step = 0; step < MAXIMUM_STEPS; step += 1) {
    const share = (enthalpy - low.enthalpy) / (high.enthalpy - low.enthalpy)
    // every other step halves, so that a kink cannot stall the search
    const fraction = step % 2 === 0 ? Math.min(0.999, Math.max(0.001, share)) : 0.5
    const middle = at(low.temperatureK + fraction * (high.temperatureK - low.temperatureK))
    const gap = middle.enthalpy - enthalpy
    if (Math.abs(gap) < ENTHALPY_TOLERANCE * scale) return middle
    if (gap > 0) high = middle
    else low = middle
    if (high.temperatureK - low.temperatureK < 1e-11 * high.temperatureK) return middle
  }
  throw new CalcError('no-convergence', `No temperature was found for ${enthalpy} J/mol.`)
}

function twoPhase(fluid: Multifluid, found: TwoPhase): Flash {
  const { liquid, vapour, liquidVolume, vapourVolume } = found
  const beta = vapourVolume * vapour.density
  const enthalpy =
    liquidVolume * liquid.density * enthalpyOf(fluid, liquid) + beta * enthalpyOf(fluid, vapour)
  const { temperatureK, pressurePa } = vapour
  return {
    temperatureK,
    pressurePa,
    kind: 'two-phase',
    vapourFraction: beta,
    liquid,
    vapour,
    enthalpy,
  }
}

function enthalpyOf(fluid: Multifluid, phase: Phase): number {
  return stateAt(mixtureOf(fluid, [...phase.x]), phase.temperatureK, phase.density).enthalpy
}

/** β with Σ zᵢ(Kᵢ−1)/(1+β(Kᵢ−1)) = 0, bisected and Newtoned within its asymptotes. */
function rachfordRice(z: Float64Array, k: Float64Array): number {
  let low = 1 / (1 - Math.max(...k))
  let high = 1 / (1 - Math.min(...k))
  let beta = Math.min(Math.max(0.5, low + 1e-9), high - 1e-9)
  for (let step = 0; step < 200; step += 1) {
    let [sum, slope] = [0, 0]
    z.forEach((zi, i) => {
      const e = (k[i] as number) - 1
      const term = e / (1 + beta * e)
      sum += zi * term
      slope -= zi * term * term
    })
    if (sum > 0) low = beta
    else high = beta
    const next = beta - sum / slope
    const inside = next > low && next < high ? next : (low + high) / 2
    if (Math.abs(inside - beta) < 1e-15) return inside
    beta = inside
  }
  return beta
}

function normal(x: Float64Array): Float64Array {
  const total = x.reduce((a, b) => a + b, 0)
  return x.map((xi) => xi / total)
}
