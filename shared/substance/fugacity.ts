import type { HelmholtzDerivatives } from './model.ts'
import { MIXTURE_GAS_CONSTANT, type Multifluid } from './multifluid.ts'
import { type QuadraticForm, reducingAt } from './reducing.ts'
import { addWeighted } from './term-group.ts'

/**
 * One phase of a mixture with what phase equilibrium asks of it.
 *
 * Everything is derived from F(T, ρ₁…ρ_N) = ρ αʳ, whose gradient over the component densities is
 * ln(fᵢ/ρᵢRT) and whose Hessian gives every composition derivative in closed form.
 */
export interface Phase {
  readonly temperatureK: number
  /** mol/m³. */
  readonly density: number
  readonly x: Float64Array
  readonly pressurePa: number
  /** ln(fᵢ/Pa). */
  readonly logFugacity: Float64Array
  /** ∂ln fᵢ/∂ln ρⱼ at constant T and other ρ, row by row. */
  readonly slope: Float64Array
  /** ∂ln fᵢ/∂ln T at constant densities. */
  readonly slopeT: Float64Array
  /** ∂p/∂ln ρⱼ in Pa. */
  readonly pressureSlope: Float64Array
  /** ∂p/∂ln T in Pa. */
  readonly pressureSlopeT: number
}

/** Sums of a component list weighted by mole fractions, and the departure parts of one component. */
interface Excess {
  /** Per component: αᵢ + dᵢ − s, and the same of its δ and τ derivatives. */
  readonly a: Float64Array
  readonly a_d: Float64Array
  readonly a_t: Float64Array
  /** Per component: dᵢ. */
  readonly d: Float64Array
  readonly s: number
  /** Fᵢⱼαᵢⱼ, row by row. */
  readonly pair: Float64Array
  /** The whole mixture's αʳ. */
  readonly total: HelmholtzDerivatives
}

/** Reducing temperature and volume of a composition, for whoever evaluates it again and again. */
export interface Reducing {
  readonly t: QuadraticForm
  readonly v: QuadraticForm
}

export const reducingOf = (fluid: Multifluid, x: Float64Array): Reducing => ({
  t: reducingAt(fluid.temperature, x),
  v: reducingAt(fluid.volume, x),
})

/**
 * Evaluate one phase at K, mol/m³ and mole fractions (each above 0, summing to 1).
 *
 * @param reducing - That of `x`, where it is known.
 */
export function phaseAt(
  fluid: Multifluid,
  temperatureK: number,
  density: number,
  x: Float64Array,
  { t, v }: Reducing = reducingOf(fluid, x),
): Phase {
  const n = x.length
  const tau = t.value / temperatureK
  const delta = density * v.value
  const e = excess(fluid, tau, delta, x)
  const { a_d, a_t, a_dd, a_dt, a_tt } = e.total
  // ρ∂τ/∂ρᵢ and ρ∂δ/∂ρᵢ
  const ti = t.first.map((d) => (d - 2 * t.value) / temperatureK)
  const di = v.first.map((d) => density * (d - v.value))
  const rt = MIXTURE_GAS_CONSTANT * temperatureK
  const logRt = Math.log(rt)
  const logFugacity = new Float64Array(n)
  const slopeT = new Float64Array(n)
  const slope = new Float64Array(n * n)
  for (let i = 0; i < n; i += 1) {
    const [tauI, deltaI] = [at(ti, i), at(di, i)]
    logFugacity[i] = Math.log(at(x, i) * density) + logRt + at(e.a, i) + a_t * tauI + a_d * deltaI
    slopeT[i] = 1 - tau * (at(e.a_t, i) + a_tt * tauI + a_dt * deltaI) - a_t * tauI
    for (let j = i; j < n; j += 1) {
      const [tauJ, deltaJ] = [at(ti, j), at(di, j)]
      const tauIJ =
        (at(t.second, i * n + j) - 2 * (at(t.first, i) + at(t.first, j)) + 6 * t.value) /
        temperatureK
      const deltaIJ =
        density * (at(v.second, i * n + j) - at(v.first, i) - at(v.first, j) + 2 * v.value)
      const h =
        at(e.pair, i * n + j) -
        at(e.d, i) -
        at(e.d, j) +
        2 * e.s +
        at(e.a_t, i) * tauJ +
        at(e.a_d, i) * deltaJ +
        at(e.a_t, j) * tauI +
        at(e.a_d, j) * deltaI +
        a_tt * tauI * tauJ +
        a_dt * (tauI * deltaJ + tauJ * deltaI) +
        a_dd * deltaI * deltaJ +
        a_t * tauIJ +
        a_d * deltaIJ
      slope[i * n + j] = at(x, j) * h + (i === j ? 1 : 0)
      if (i !== j) slope[j * n + i] = at(x, i) * h
    }
  }
  // Gibbs–Duhem: dp = Σ ρᵢRT dln fᵢ at constant T
  const pressureSlope = new Float64Array(n)
  for (let j = 0; j < n; j += 1) {
    let sum = 0
    for (let i = 0; i < n; i += 1) sum += at(x, i) * at(slope, i * n + j)
    pressureSlope[j] = density * rt * sum
  }
  return {
    temperatureK,
    density,
    x,
    pressurePa: density * rt * (1 + delta * a_d),
    logFugacity,
    slope,
    slopeT,
    pressureSlope,
    pressureSlopeT: density * rt * (1 + delta * a_d - tau * delta * a_dt),
  }
}

/** The phase at K with these ln of component densities in mol/m³: the unknowns of equilibrium. */
export function phaseOfDensities(
  fluid: Multifluid,
  temperatureK: number,
  logDensities: Float64Array,
): Phase {
  const densities = logDensities.map(Math.exp)
  const density = densities.reduce((a, b) => a + b, 0)
  return phaseAt(
    fluid,
    temperatureK,
    density,
    densities.map((d) => d / density),
  )
}

/** ln φᵢ = ln(fᵢ/xᵢp). */
export function logFugacityCoefficients(phase: Phase): Float64Array {
  const logP = Math.log(phase.pressurePa)
  return Float64Array.from(phase.logFugacity, (f, i) => f - logP - Math.log(at(phase.x, i)))
}

function excess(fluid: Multifluid, tau: number, delta: number, x: Float64Array): Excess {
  const n = x.length
  const [a, a_d, a_t] = [new Float64Array(n), new Float64Array(n), new Float64Array(n)]
  const [d, d_d, d_t] = [new Float64Array(n), new Float64Array(n), new Float64Array(n)]
  const pair = new Float64Array(n * n)
  const sum = { a: 0, a_d: 0, a_t: 0, a_dd: 0, a_dt: 0, a_tt: 0 }
  let [s, s_d, s_t] = [0, 0, 0]
  let index = 0
  for (let i = 0; i < n; i += 1) {
    const xi = at(x, i)
    const own = (fluid.residuals[i] as Multifluid['residuals'][number])(tau, delta)
    a[i] = own.a
    a_d[i] = own.a_d
    a_t[i] = own.a_t
    addWeighted(sum, xi, own)
    for (let j = i + 1; j < n; j += 1) {
      const departure = fluid.departures[index++]
      if (departure === undefined) continue
      const xj = at(x, j)
      const both = departure(tau, delta)
      pair[i * n + j] = both.a
      d[i] = at(d, i) + xj * both.a
      d[j] = at(d, j) + xi * both.a
      d_d[i] = at(d_d, i) + xj * both.a_d
      d_d[j] = at(d_d, j) + xi * both.a_d
      d_t[i] = at(d_t, i) + xj * both.a_t
      d_t[j] = at(d_t, j) + xi * both.a_t
      s += xi * xj * both.a
      s_d += xi * xj * both.a_d
      s_t += xi * xj * both.a_t
      addWeighted(sum, xi * xj, both)
    }
  }
  for (let i = 0; i < n; i += 1) {
    a[i] = at(a, i) + at(d, i) - s
    a_d[i] = at(a_d, i) + at(d_d, i) - s_d
    a_t[i] = at(a_t, i) + at(d_t, i) - s_t
  }
  return { a, a_d, a_t, d, s, pair, total: sum }
}

function at(values: ArrayLike<number>, index: number): number {
  return values[index] as number
}
