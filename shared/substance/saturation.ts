import { CalcError } from '../errors.ts'
import { density } from './density.ts'
import type { HelmholtzModel } from './model.ts'
import { pressure } from './state.ts'
import type { SubstanceData } from './types.ts'

const MAX_STEPS = 60
const TOLERANCE = 1e-13
/** Near the critical point rounding keeps the steps from shrinking further: below this, stop there. */
const ROUNDING = 1e-8
/** Newton's steps in ln ρ are cut to these, so that neither phase crosses to the other. */
const LONGEST_LIQUID_STEP = 0.1
const LONGEST_VAPOUR_STEP = 1
/** From this fraction of the critical temperature on, guesses come from a lower temperature. */
const NEAR_CRITICAL = 0.97
const LADDER = 0.75

/** The highest temperature solved for, as a fraction of the critical temperature. */
export const HIGHEST_FRACTION = 0.9999

/** Coexisting liquid and vapour of a pure substance. Densities in mol/m³. */
export interface Saturation {
  readonly temperatureK: number
  readonly pressurePa: number
  readonly liquid: number
  readonly vapour: number
}

/**
 * Saturation of a pure substance at a temperature in K, from its triple point to 0.9999 Tc:
 * the pair of densities at which pressure and Gibbs energy are equal in both phases.
 *
 * Newton on ln ρ′ and ln ρ″ (after Akasaka, J. Therm. Sci. Technol. 3(3), 442, 2008), from a guess
 * by corresponding states; near the critical point from a ladder of lower temperatures, along
 * which densities run straight against √(1 − T/Tc).
 */
export function saturation(
  model: HelmholtzModel,
  data: SubstanceData,
  temperatureK: number,
): Saturation {
  const critical = data.critical.temperatureK
  if (!(temperatureK >= data.triple.temperatureK)) {
    throw new CalcError(
      'below-triple',
      `${data.id} is solid below ${data.triple.temperatureK} K; ${temperatureK} K was asked.`,
      { hint: 'Give a temperature above the triple point.' },
    )
  }
  if (!(temperatureK <= HIGHEST_FRACTION * critical * (1 + 1e-12))) {
    throw new CalcError(
      'above-critical',
      `${data.id} does not condense above ${critical} K (its critical point); ${temperatureK} K was asked.`,
      { hint: 'Give a temperature below the critical point.' },
    )
  }
  if (temperatureK <= NEAR_CRITICAL * critical) {
    return fromGuess(model, temperatureK, guess(model, data, temperatureK))
  }
  const target = Math.sqrt(1 - temperatureK / critical)
  let s = Math.sqrt(1 - NEAR_CRITICAL)
  let here = fromGuess(
    model,
    NEAR_CRITICAL * critical,
    guess(model, data, NEAR_CRITICAL * critical),
  )
  let middle = (here.liquid + here.vapour) / 2
  let halfWidth = (here.liquid - here.vapour) / 2
  for (let rung = 0; rung < MAX_STEPS; rung += 1) {
    const next = Math.max(target, LADDER * s)
    const width = (halfWidth * next) / s
    const t = next === target ? temperatureK : critical * (1 - next * next)
    here = fromGuess(model, t, { liquid: middle + width, vapour: middle - width })
    if (next === target) return here
    s = next
    middle = (here.liquid + here.vapour) / 2
    halfWidth = (here.liquid - here.vapour) / 2
  }
  throw noConvergence(model, temperatureK)
}

interface Pair {
  readonly liquid: number
  readonly vapour: number
}

/**
 * Pressure by Lee and Kesler's corresponding states (1975, coefficients from memory: they only
 * place the start, and no digit of the answer depends on them), then each phase's density at it.
 */
function guess(model: HelmholtzModel, data: SubstanceData, temperatureK: number): Pair {
  const tr = temperatureK / data.critical.temperatureK
  const f0 = 5.92714 - 6.09648 / tr - 1.28862 * Math.log(tr) + 0.169347 * tr ** 6
  const f1 = 15.2518 - 15.6875 / tr - 13.4721 * Math.log(tr) + 0.43577 * tr ** 6
  const p = data.critical.pressurePa * Math.exp(f0 + data.acentricFactor * f1)
  return {
    liquid: density(model, temperatureK, p, 'liquid'),
    vapour: density(model, temperatureK, p, 'vapour'),
  }
}

function fromGuess(model: HelmholtzModel, temperatureK: number, pair: Pair): Saturation {
  const tau = model.reducingTemperature / temperatureK
  let liquid = pair.liquid / model.reducingDensity
  let vapour = pair.vapour / model.reducingDensity
  let previous = Infinity
  for (let turn = 0; turn < MAX_STEPS; turn += 1) {
    const l = model.residual(tau, liquid)
    const v = model.residual(tau, vapour)
    // J = δ + δ²αʳ_δ is p/(ρ_r RT); K = δαʳ_δ + αʳ + ln δ is the Gibbs energy over RT.
    const pressureGap = vapour + vapour * vapour * v.a_d - liquid - liquid * liquid * l.a_d
    const gibbsGap =
      vapour * v.a_d + v.a + Math.log(vapour) - liquid * l.a_d - l.a - Math.log(liquid)
    const slopeL = 1 + 2 * liquid * l.a_d + liquid * liquid * l.a_dd
    const slopeV = 1 + 2 * vapour * v.a_d + vapour * vapour * v.a_dd
    if (!(slopeL > 0 && slopeV > 0)) {
      // Between the spinodals: move apart.
      if (!(slopeL > 0)) liquid *= 1.02
      if (!(slopeV > 0)) vapour *= 0.97
      continue
    }
    const scale = 1 / (vapour - liquid)
    const stepL = (scale * (pressureGap - vapour * gibbsGap)) / slopeL
    const stepV = (scale * (pressureGap - liquid * gibbsGap)) / slopeV
    const cut = Math.max(
      1,
      Math.abs(stepL) / LONGEST_LIQUID_STEP,
      Math.abs(stepV) / LONGEST_VAPOUR_STEP,
    )
    liquid *= Math.exp(-stepL / cut)
    vapour *= Math.exp(-stepV / cut)
    if (!(vapour < liquid)) break
    const step = Math.abs(stepL) + Math.abs(stepV)
    if (step <= TOLERANCE || (step <= ROUNDING && step >= previous)) {
      const rho = { liquid: liquid * model.reducingDensity, vapour: vapour * model.reducingDensity }
      return { temperatureK, pressurePa: pressure(model, temperatureK, rho.vapour), ...rho }
    }
    previous = step
  }
  throw noConvergence(model, temperatureK)
}

function noConvergence(model: HelmholtzModel, temperatureK: number): CalcError {
  return new CalcError(
    'no-convergence',
    `No coexisting liquid and vapour of ${model.name} were found at ${temperatureK} K.`,
    { hint: 'This is a fault of the solver, not of the input: please report it.' },
  )
}
