import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { GAS_CONSTANT } from '../../../shared/gas-constants.ts'
import {
  AIR,
  FLOW_SOURCES,
  inletPressure,
  laminarFactor,
  molecularConductance,
  WATER_VAPOUR,
} from '../../../shared/physics/hose-flow.ts'

const K = 294.15
const hose = { boreM: 0.008, lengthM: 1 }

describe('laminar and molecular flow', () => {
  it('run with the fourth and the third power of the bore, against the length', () => {
    const wide = { ...hose, boreM: 2 * hose.boreM }
    const long = { ...hose, lengthM: 2 }
    expect(laminarFactor(wide, AIR) / laminarFactor(hose, AIR)).toBeCloseTo(16, 9)
    expect(laminarFactor(long, AIR) / laminarFactor(hose, AIR)).toBeCloseTo(0.5, 9)
    expect(molecularConductance(wide, AIR, K) / molecularConductance(hose, AIR, K)).toBeCloseTo(
      8,
      9,
    )
    expect(molecularConductance(long, AIR, K) / molecularConductance(hose, AIR, K)).toBeCloseTo(
      0.5,
      9,
    )
  })

  it('let water vapour through faster than air: by 1/viscosity, and by 1/√(molar mass)', () => {
    expect(laminarFactor(hose, WATER_VAPOUR) / laminarFactor(hose, AIR)).toBeCloseTo(18.2 / 9.57, 6)
    const ratio = molecularConductance(hose, WATER_VAPOUR, K) / molecularConductance(hose, AIR, K)
    expect(ratio).toBeCloseTo(Math.sqrt(28.9644 / 18.015268), 6)
    expect(molecularConductance(hose, AIR, 4 * K) / molecularConductance(hose, AIR, K)).toBeCloseTo(
      2,
      9,
    )
  })

  it('share the pressure drop: what goes in comes out', () => {
    const flow = fc.double({ min: 1e-8, max: 1e-2, noNaN: true })
    const outlet = fc.double({ min: 0, max: 500, noNaN: true })
    fc.assert(
      fc.property(flow, outlet, (throughput, outletPa) => {
        const p = inletPressure(hose, AIR, K, throughput, outletPa)
        const laminar = (laminarFactor(hose, AIR) * (p ** 2 - outletPa ** 2)) / 2
        const molecular = molecularConductance(hose, AIR, K) * (p - outletPa)
        expect((laminar + molecular) / throughput).toBeCloseTo(1, 6)
      }),
    )
  })
})

describe('turbulent flow', () => {
  /** Darcy's friction factor that a pressure drop amounts to, at a Reynolds number. */
  const friction = (reynolds: number) => {
    const area = (Math.PI * hose.boreM ** 2) / 4
    const flux = (reynolds * AIR.viscosity) / hose.boreM
    const specific = (GAS_CONSTANT * K) / AIR.molarMass
    const outletPa = 101_325
    const p = inletPressure(hose, AIR, K, flux * area * specific, outletPa)
    return ((p ** 2 - outletPa ** 2) * hose.boreM) / (hose.lengthM * flux ** 2 * specific)
  }

  it.each([
    [1e4, 0.0316],
    [1e5, 0.0178],
  ])('at Re %d has the friction factor of Blasius, %d', (reynolds, factor) => {
    expect(friction(reynolds)).toBeCloseTo(factor, 4)
  })

  // L. Prandtl's law of smooth pipes, 1/√f = 2 log10(Re √f) − 0.8: another law than the one used.
  it.each([1e4, 3e4, 1e5])('at Re %d agrees with the law of smooth pipes to 3 %%', (reynolds) => {
    const f = friction(reynolds)
    expect((2 * Math.log10(reynolds * Math.sqrt(f)) - 0.8) * Math.sqrt(f)).toBeCloseTo(1, 1)
    expect(
      Math.abs(Math.sqrt(f) * (2 * Math.log10(reynolds * Math.sqrt(f)) - 0.8) - 1),
    ).toBeLessThan(0.02)
  })

  it('gives way to laminar flow below Re 1000', () => {
    // Hagen and Poiseuille: f = 64/Re
    expect(friction(500) / (64 / 500)).toBeCloseTo(1, 1)
  })

  it('never leaves less at the inlet than at the outlet, and more for more flow', () => {
    const flow = fc.double({ min: 0, max: 50, noNaN: true })
    fc.assert(
      fc.property(flow, fc.double({ min: 1, max: 1e5, noNaN: true }), (throughput, outletPa) => {
        const p = inletPressure(hose, AIR, K, throughput, outletPa)
        expect(p).toBeGreaterThanOrEqual(outletPa)
        expect(inletPressure(hose, AIR, K, 1.1 * throughput + 1e-6, outletPa)).toBeGreaterThan(p)
      }),
    )
  })
})

it('rests on a text for each of its regimes, and for the step between them', () => {
  expect(FLOW_SOURCES.map(({ id, mark }) => `${id} ${mark}`)).toEqual([
    'tube-conductance verified',
    'transition-flow-sum secondary',
    'blasius-friction secondary',
  ])
})
