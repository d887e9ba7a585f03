import { describe, expect, it } from 'vitest'
import { SUBSTANCES, substanceModel } from '../../../shared/substance/library.ts'
import { saturation } from '../../../shared/substance/saturation.ts'
import {
  logFugacityCoefficient,
  pressure,
  pressureAndSlope,
  stateAt,
} from '../../../shared/substance/state.ts'

/** Central differences of fourth order: their own error stays below the tolerances here. */
function slope(f: (x: number) => number, x: number, step: number): number {
  return (8 * (f(x + step) - f(x - step)) - (f(x + 2 * step) - f(x - 2 * step))) / (12 * step)
}

const near = (a: number, b: number, relative: number, floor = 0) =>
  expect(Math.abs(a - b), `${a} against ${b}`).toBeLessThanOrEqual(
    relative * Math.max(Math.abs(a), Math.abs(b)) + floor,
  )

describe.each(SUBSTANCES)('$id', (data) => {
  const model = substanceModel(data.id)
  const { temperatureK: tc, densityMolPerM3: rhoc } = data.critical
  const saturated = saturation(model, data, 0.8 * tc)
  const states: readonly (readonly [string, number, number])[] = [
    ['vapour', 0.8 * tc, 0.7 * saturated.vapour],
    ['liquid', 0.8 * tc, 1.03 * saturated.liquid],
    ['dense gas', 1.08 * tc, 0.8 * rhoc],
    ['dense fluid', 1.05 * tc, 1.9 * rhoc],
  ]

  it.each(states)('derivatives of the residual part match differences (%s)', (_, t, rho) => {
    const tau = model.reducingTemperature / t
    const delta = rho / model.reducingDensity
    const r = model.residual(tau, delta)
    const [dt, dd] = [1e-4 * tau, 1e-4 * delta]
    near(
      r.a_d,
      slope((x) => model.residual(tau, x).a, delta, dd),
      1e-7,
      1e-8,
    )
    near(
      r.a_t,
      slope((x) => model.residual(x, delta).a, tau, dt),
      1e-7,
      1e-8,
    )
    near(
      r.a_dd,
      slope((x) => model.residual(tau, x).a_d, delta, dd),
      1e-7,
      1e-7,
    )
    near(
      r.a_tt,
      slope((x) => model.residual(x, delta).a_t, tau, dt),
      1e-7,
      1e-7,
    )
    near(
      r.a_dt,
      slope((x) => model.residual(x, delta).a_d, tau, dt),
      1e-7,
      1e-7,
    )
    near(
      r.a_dt,
      slope((x) => model.residual(tau, x).a_t, delta, dd),
      1e-7,
      1e-7,
    )
  })

  it.each(states)('derivatives of the ideal part match differences (%s)', (_, t, rho) => {
    const tau = model.reducingTemperature / t
    const delta = rho / model.reducingDensity
    const o = model.ideal(tau, delta)
    near(
      o.a_d,
      slope((x) => model.ideal(tau, x).a, delta, 1e-4 * delta),
      1e-8,
    )
    near(
      o.a_dd,
      slope((x) => model.ideal(tau, x).a_d, delta, 1e-4 * delta),
      1e-8,
    )
    near(
      o.a_t,
      slope((x) => model.ideal(x, delta).a, tau, 1e-4 * tau),
      1e-7,
      1e-8,
    )
    near(
      o.a_tt,
      slope((x) => model.ideal(x, delta).a_t, tau, 1e-4 * tau),
      1e-7,
      1e-8,
    )
  })

  it.each(states)('laws between properties hold (%s)', (_, t, rho) => {
    const s = stateAt(model, t, rho)
    const at = (temperature: number, density: number) => stateAt(model, temperature, density)
    const dT = 1e-4 * t
    const dRho = 1e-4 * rho
    // cv = (∂u/∂T)ρ, and T(∂s/∂T)ρ
    near(
      s.cv,
      slope((x) => at(x, rho).internalEnergy, t, dT),
      1e-6,
    )
    near(s.cv, t * slope((x) => at(x, rho).entropy, t, dT), 1e-6)
    // Maxwell: (∂s/∂v)T = (∂p/∂T)v, that is −ρ²(∂s/∂ρ)T
    near(s.dpdT, -rho * rho * slope((x) => at(t, x).entropy, rho, dRho), 1e-6)
    near(
      s.dpdT,
      slope((x) => pressure(model, x, rho), t, dT),
      1e-6,
    )
    near(
      s.dpdRho,
      slope((x) => pressure(model, t, x), rho, dRho),
      1e-6,
    )
    near(s.dpdRho, pressureAndSlope(model, t, rho).dpdRho, 1e-14)
    // h = u + p/ρ
    near(s.enthalpy, s.internalEnergy + s.pressurePa / rho, 1e-12, 1e-9)
    // (∂u/∂v)T = T(∂p/∂T)v − p
    near(
      t * s.dpdT - s.pressurePa,
      -rho * rho * slope((x) => at(t, x).internalEnergy, rho, dRho),
      1e-6,
    )
    // cp − cv = T(∂p/∂T)²/(ρ²∂p/∂ρ), and w² = (cp/cv)∂p/∂ρ/M
    near(s.cp - s.cv, (t * s.dpdT ** 2) / (rho * rho * s.dpdRho), 1e-10)
    near(s.speedOfSound ** 2, ((s.cp / s.cv) * s.dpdRho) / model.molarMass, 1e-12)
    // d ln f = v dp/(RT) along an isotherm
    const logF = (x: number) =>
      logFugacityCoefficient(model, t, x) + Math.log(pressure(model, t, x))
    near(slope(logF, rho, dRho), s.dpdRho / (rho * model.gasConstant * t), 1e-6)
  })

  it.each([0.6, 0.75, 0.9, 0.98, 0.999])(
    'coexisting phases share pressure and fugacity, and Clapeyron holds, at %d of the critical',
    (fraction) => {
      const t = Math.max(fraction * tc, data.triple.temperatureK + 1)
      const { pressurePa, liquid, vapour } = saturation(model, data, t)
      near(pressure(model, t, liquid), pressurePa, 1e-7, 1e-3)
      near(
        logFugacityCoefficient(model, t, liquid),
        logFugacityCoefficient(model, t, vapour),
        1e-7,
        1e-7,
      )
      const steps = 1e-5 * t
      const measured = slope((x) => saturation(model, data, x).pressurePa, t, steps)
      const entropy = stateAt(model, t, vapour).entropy - stateAt(model, t, liquid).entropy
      near(measured, entropy / (1 / vapour - 1 / liquid), 1e-5)
    },
  )
})

describe('a pure equation', () => {
  it.each(SUBSTANCES)('$id becomes an ideal gas as density vanishes', (data) => {
    const model = substanceModel(data.id)
    const t = data.critical.temperatureK
    const z = stateAt(model, t, 1e-6).compressibility
    expect(Math.abs(z - 1)).toBeLessThan(1e-8)
  })
})
