import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { logFugacityCoefficients, phaseAt } from '../../../shared/substance/fugacity.ts'
import { substanceData, substanceModel } from '../../../shared/substance/library.ts'
import { mixingRule } from '../../../shared/substance/mixing-rules.ts'
import { massFractions, mixtureOf, moleFractions } from '../../../shared/substance/mixture.ts'
import { multifluid } from '../../../shared/substance/multifluid.ts'
import { logFugacityCoefficient, pressure, stateAt } from '../../../shared/substance/state.ts'

const fluid = multifluid(['R-32', 'R-125', 'R-1234yf', 'R-134a', 'R-1234ze(E)'].map(substanceData))

const temperature = fc.double({ min: 230, max: 420, noNaN: true })
const density = fc.double({ min: 5, max: 14_000, noNaN: true })
const composition = fc
  .array(fc.double({ min: 0.02, max: 1, noNaN: true }), { minLength: 5, maxLength: 5 })
  .map((list) => {
    const total = list.reduce((a, b) => a + b, 0)
    return Float64Array.from(list, (v) => v / total)
  })

/** A phase from ln T and the logs of the component densities. */
function fromLogs(logT: number, logs: readonly number[]) {
  const rho = logs.map(Math.exp)
  const total = rho.reduce((a, b) => a + b, 0)
  return phaseAt(
    fluid,
    Math.exp(logT),
    total,
    Float64Array.from(rho, (r) => r / total),
  )
}

describe('composition derivatives in closed form', () => {
  it('equal central differences', () => {
    fc.assert(
      fc.property(temperature, density, composition, (t, rho, x) => {
        const logs = [...x].map((xi) => Math.log(xi * rho))
        const here = fromLogs(Math.log(t), logs)
        const step = 1e-5
        for (let j = -1; j < 5; j += 1) {
          const move = (sign: number) =>
            fromLogs(
              Math.log(t) + (j < 0 ? sign * step : 0),
              logs.map((l, k) => l + (k === j ? sign * step : 0)),
            )
          const [up, down] = [move(1), move(-1)]
          for (let i = 0; i < 5; i += 1) {
            const numeric = ((up.logFugacity[i] ?? 0) - (down.logFugacity[i] ?? 0)) / (2 * step)
            const closed = j < 0 ? (here.slopeT[i] ?? 0) : (here.slope[i * 5 + j] ?? 0)
            expect(Math.abs(numeric - closed)).toBeLessThan(1e-6 * (1 + Math.abs(closed)) * 50)
          }
          const dp = (up.pressurePa - down.pressurePa) / (2 * step)
          const closed = j < 0 ? here.pressureSlopeT : (here.pressureSlope[j] ?? 0)
          const scale = rho * 8.314 * t * 20
          expect(Math.abs(dp - closed)).toBeLessThan(1e-5 * (scale + Math.abs(closed)))
        }
      }),
      { numRuns: 60 },
    )
  })

  it('obey Gibbs–Duhem: Σ ρᵢRT dln fᵢ = dp at constant temperature, by finite difference', () => {
    fc.assert(
      fc.property(temperature, density, composition, composition, (t, rho, x, direction) => {
        const logs = [...x].map((xi) => Math.log(xi * rho))
        const step = 1e-6
        const shift = (sign: number) =>
          fromLogs(
            Math.log(t),
            logs.map((l, k) => l + sign * step * (direction[k] ?? 0)),
          )
        const [up, down] = [shift(1), shift(-1)]
        const here = fromLogs(Math.log(t), logs)
        const sum = [...here.x].reduce(
          (s, xi, i) =>
            s +
            xi *
              rho *
              8.31446261815324 *
              t *
              ((up.logFugacity[i] ?? 0) - (down.logFugacity[i] ?? 0)),
          0,
        )
        const dp = up.pressurePa - down.pressurePa
        const scale = rho * 8.314 * t * step
        expect(Math.abs(sum - dp)).toBeLessThan(1e-5 * (20 * scale + Math.abs(dp)))
      }),
      { numRuns: 100 },
    )
  })
})

describe('a mixture', () => {
  it('does not depend on the order of its components', () => {
    const turned = multifluid([...fluid.components].reverse())
    fc.assert(
      fc.property(temperature, density, composition, (t, rho, x) => {
        const a = phaseAt(fluid, t, rho, x)
        const b = phaseAt(turned, t, rho, Float64Array.from([...x].reverse()))
        expect(b.pressurePa / a.pressurePa).toBeCloseTo(1, 9)
        for (let i = 0; i < 5; i += 1) {
          const own = a.logFugacity[i] ?? Number.NaN
          expect(Math.abs((b.logFugacity[4 - i] ?? 0) - own)).toBeLessThan(
            1e-11 * (1 + Math.abs(own)),
          )
        }
      }),
      { numRuns: 50 },
    )
  })

  it('is a pure substance as one component goes to 100 %', () => {
    const trace = 1e-9
    for (let k = 0; k < 5; k += 1) {
      const x = Float64Array.from({ length: 5 }, (_, i) => (i === k ? 1 - 4 * trace : trace))
      const pure = substanceModel(fluid.components[k]?.id ?? '')
      const mixed = mixtureOf(fluid, [...x])
      for (const [t, rho] of [
        [260, 40],
        [420, 8000],
        [400, 5000],
      ] as const) {
        // the gas constants differ by up to 6e-6, see MIXTURE_GAS_CONSTANT
        expect(pressure(mixed, t, rho) / pressure(pure, t, rho)).toBeCloseTo(1, 4)
        const phase = phaseAt(fluid, t, rho, x)
        expect(logFugacityCoefficients(phase)[k] ?? 0).toBeCloseTo(
          logFugacityCoefficient(pure, t, rho),
          4,
        )
      }
    }
  })

  it('has the same pressure seen as one model and phase by phase', () => {
    fc.assert(
      fc.property(temperature, density, composition, (t, rho, x) => {
        const whole = stateAt(mixtureOf(fluid, [...x]), t, rho)
        expect(phaseAt(fluid, t, rho, x).pressurePa / whole.pressurePa).toBeCloseTo(1, 9)
      }),
      { numRuns: 30 },
    )
  })

  it('keeps Maxwell and heat capacities: dh/dT at constant ρ equals cv + (∂p/∂T)/ρ', () => {
    const model = mixtureOf(fluid, [0.3, 0.2, 0.2, 0.2, 0.1])
    for (const [t, rho] of [
      [270, 60],
      [300, 10_500],
      [390, 5200],
    ] as const) {
      const step = 1e-3
      const slope =
        (stateAt(model, t + step, rho).enthalpy - stateAt(model, t - step, rho).enthalpy) /
        (2 * step)
      const here = stateAt(model, t, rho)
      expect(slope / (here.cv + here.dpdT / rho)).toBeCloseTo(1, 7)
    }
  })
})

describe('mixing rules', () => {
  it('turn with the order in which a pair is asked for', () => {
    const [a, b] = [substanceData('R-32'), substanceData('R-1234yf')]
    expect(mixingRule(a, b).betaT * mixingRule(b, a).betaT).toBeCloseTo(1, 14)
    expect(mixingRule(a, b).gammaT).toBe(mixingRule(b, a).gammaT)
    expect(mixingRule(a, b).basis).toBe('published')
  })
  it('say when a pair is only estimated', () => {
    const rule = mixingRule(substanceData('R-218'), substanceData('R-12'))
    expect(rule).toMatchObject({ betaT: 1, gammaT: 1, basis: 'estimated' })
  })
})

describe('mole and mass fractions', () => {
  it('undo each other', () => {
    fc.assert(
      fc.property(composition, (x) => {
        const back = moleFractions(massFractions([...x], fluid.molarMasses), fluid.molarMasses)
        back.forEach((v, i) => {
          expect(v).toBeCloseTo(x[i] ?? Number.NaN, 12)
        })
      }),
    )
  })
})
