import { CalcError } from '../errors.ts'
import type { HelmholtzModel } from './model.ts'
import { pressureAndSlope } from './state.ts'

const MAX_STEPS = 100
const TOLERANCE = 1e-13
/** Above this multiple of the reducing density no fluid here is still a fluid. */
const DENSEST = 5
const WIDEN = 1.15

export type Phase = 'liquid' | 'vapour'

/**
 * Density in mol/m³ of one phase at temperature in K and absolute pressure in Pa.
 *
 * A Newton search held in a bracket. Below the critical temperature it keeps to its own side:
 * vapour rises from zero density, liquid falls from a dense start, and both pressure curves bend
 * so that Newton's steps approach from one side. Above it there is one curve and one root.
 *
 * @param phase - `only` where the caller knows that there is one root: above its critical point a
 *   mixture may still be below the temperature that its equation is reduced by.
 * @param guess - mol/m³, where one is known.
 * @throws {CalcError} `two-phase` when that phase cannot exist there, not even metastable;
 *   `out-of-range` for what is no temperature or no absolute pressure.
 */
export function density(
  model: HelmholtzModel,
  temperatureK: number,
  pressurePa: number,
  phase: Phase | 'only',
  guess?: number,
): number {
  if (!(temperatureK > 0 && pressurePa > 0 && pressurePa < Infinity)) {
    throw new CalcError(
      'out-of-range',
      `There is no density at ${temperatureK} K and ${pressurePa} Pa.`,
      { hint: 'Temperature and absolute pressure must be above zero.' },
    )
  }
  const alone = phase === 'only' || temperatureK >= model.reducingTemperature
  let low = phase === 'vapour' || alone ? 0 : 0.9 * model.reducingDensity
  let high = phase === 'vapour' && !alone ? 1.1 * model.reducingDensity : Infinity
  let rho = guess ?? start(model, temperatureK, pressurePa, phase)
  if (!(rho > low && rho < high)) rho = high < Infinity ? (low + high) / 2 : 2 * low
  for (let step = 0; step < MAX_STEPS; step += 1) {
    const { pressurePa: p, dpdRho } = pressureAndSlope(model, temperatureK, rho)
    const stable = dpdRho > 0
    // An unstable state lies between the phases: too dense for vapour, too thin for liquid.
    const tooDense = stable ? p > pressurePa : phase === 'vapour'
    if (tooDense) high = rho
    else low = rho
    let next = stable ? rho + (pressurePa - p) / dpdRho : Number.NaN
    if (Math.abs(next - rho) <= TOLERANCE * rho) return next
    // Near the critical point Newton overshoots far into densities no fluid has: widen by bits.
    if (high === Infinity && !(next > low && next <= WIDEN * rho)) next = WIDEN * rho
    else if (!(next > low && next < high)) next = (low + high) / 2
    if (next > DENSEST * model.reducingDensity) break
    if (high - low <= TOLERANCE * low) break
    rho = next
  }
  // A root may be met to the last digit without Newton's step becoming small beside it.
  const last = pressureAndSlope(model, temperatureK, rho)
  if (last.dpdRho > 0 && Math.abs(last.pressurePa / pressurePa - 1) < 1e-9) return rho
  throw new CalcError(
    'two-phase',
    `${model.name} cannot be ${phase === 'only' ? 'one phase' : phase} at ${temperatureK} K and ${pressurePa} Pa.`,
    { hint: 'Check the pressure and temperature, or ask for the other phase.' },
  )
}

/** Ideal gas for vapour; for liquid a coexistence curve of corresponding states, a little dense. */
function start(
  model: HelmholtzModel,
  temperatureK: number,
  pressurePa: number,
  phase: Phase | 'only',
): number {
  const ideal = pressurePa / (model.gasConstant * temperatureK)
  const theta = 1 - temperatureK / model.reducingTemperature
  if (phase === 'only' || theta <= 0) return Math.min(ideal, 2 * model.reducingDensity)
  if (phase === 'vapour') return Math.min(ideal, model.reducingDensity)
  return model.reducingDensity * (1 + 1.85 * Math.cbrt(theta) + 0.9 * theta)
}
