import type { HelmholtzDerivatives } from './model.ts'
import type { IdealTerms } from './types.ts'

interface CompiledIdeal {
  readonly a1: number
  readonly a2: number
  readonly logTau: number
  readonly powerN: Float64Array
  readonly powerT: Float64Array
  readonly einsteinN: Float64Array
  readonly einsteinT: Float64Array
}

/**
 * Heat-capacity polynomials become powers of τ: twice integrating c⁰p/R = c T^t from T₀ gives
 * −c T_r^t τ^−t / (t(t+1)) and a straight line in τ; t = 0 gives c ln τ and a straight line.
 */
function compile(terms: IdealTerms, reducingTemperatureK: number): CompiledIdeal {
  let { a1, a2, logTau } = terms
  const powerN = [...(terms.power?.n ?? [])]
  const powerT = [...(terms.power?.t ?? [])]
  const { c = [], t = [], fromK = 1 } = terms.heatCapacity ?? {}
  const tauFrom = reducingTemperatureK / fromK
  c.forEach((ci, i) => {
    const ti = t[i] ?? 0
    if (ti === 0) {
      a1 += ci * (1 - Math.log(tauFrom))
      a2 -= ci / tauFrom
      logTau += ci
      return
    }
    powerN.push((-ci * reducingTemperatureK ** ti) / (ti * (ti + 1)))
    powerT.push(-ti)
    a1 += (ci * fromK ** ti) / ti
    a2 -= (ci * fromK ** (ti + 1)) / (reducingTemperatureK * (ti + 1))
  })
  return {
    a1,
    a2,
    logTau,
    powerN: Float64Array.from(powerN),
    powerT: Float64Array.from(powerT),
    einsteinN: Float64Array.from(terms.planckEinstein?.n ?? []),
    einsteinT: Float64Array.from(terms.planckEinstein?.t ?? []),
  }
}

/** The ideal-gas part α⁰(τ, δ) of one substance, ready to evaluate. */
export function idealPart(
  terms: IdealTerms,
  reducingTemperatureK: number,
): (tau: number, delta: number) => HelmholtzDerivatives {
  const c = compile(terms, reducingTemperatureK)
  const powers = c.powerN.length
  const einsteins = c.einsteinN.length
  return (tau, delta) => {
    const logTau = Math.log(tau)
    let a = Math.log(delta) + c.a1 + c.a2 * tau + c.logTau * logTau
    let t1 = c.logTau
    let t2 = -c.logTau
    for (let i = 0; i < powers; i += 1) {
      const t = c.powerT[i] as number
      const term = (c.powerN[i] as number) * Math.exp(t * logTau)
      a += term
      t1 += t * term
      t2 += t * (t - 1) * term
    }
    let a_t = c.a2 + t1 / tau
    let a_tt = t2 / (tau * tau)
    for (let i = 0; i < einsteins; i += 1) {
      const n = c.einsteinN[i] as number
      const t = c.einsteinT[i] as number
      const e = Math.exp(-t * tau)
      const r = e / (1 - e)
      a += n * Math.log1p(-e)
      a_t += n * t * r
      a_tt -= n * t * t * r * (1 + r)
    }
    return {
      a,
      a_d: 1 / delta,
      a_t,
      a_dd: -1 / (delta * delta),
      a_dt: 0,
      a_tt,
    }
  }
}
