import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { density, densityStates, refrigerant } from '../../../shared/refrigerant/index.ts'
import { refusalOf } from '../../support/refusal.ts'

describe('densities of one computation', () => {
  it('are solved once a state, whatever asks', () => {
    const states = densityStates(refrigerant('R-407C'))
    expect(states.solves).toBe(0)
    for (let n = 0; n < 50; n += 1) {
      expect(states.density(300, 3e5, 'vapour')).toBe(
        density(refrigerant('R-407C'), 300, 3e5, 'vapour'),
      )
      states.slopes(300, 3e5, 'vapour')
    }
    expect(states.solves).toBe(1)
    states.density(300, 3.1e5, 'vapour')
    states.density(301, 3e5, 'vapour')
    states.density(290, 3e6, 'liquid')
    expect(states.solves).toBe(4)
    expect(densityStates(refrigerant('R-407C')).solves).toBe(0)
  })

  it('are refused as ever, each time anew', () => {
    const states = densityStates(refrigerant('R-134a'))
    for (let n = 0; n < 2; n += 1) {
      expect(refusalOf(() => states.density(300, 3e5, 'liquid')).code).toBe('two-phase')
    }
    expect(states.solves).toBe(0)
  })

  it('have slopes that agree with solving beside the state', () => {
    const id = fc.constantFrom('R-134a', 'R-407C', 'R-744', 'R-410A')
    const kelvin = fc.double({ min: 240, max: 300, noNaN: true })
    const factor = fc.double({ min: 0.1, max: 0.9, noNaN: true })
    fc.assert(
      fc.property(id, kelvin, factor, fc.boolean(), (name, t, f, liquid) => {
        const r = refrigerant(name)
        const phase = liquid ? 'liquid' : 'vapour'
        const p = liquid ? r.bubble.pressure(t) / f : f * r.dew.pressure(t)
        const states = densityStates(r)
        const found = states.slopes(t, p, phase)
        expect(states.solves).toBe(1)
        const [dp, dt] = [1e-4 * p, 1e-3]
        const byPressure = (density(r, t, p + dp, phase) - density(r, t, p - dp, phase)) / (2 * dp)
        const byTemperature =
          (density(r, t + dt, p, phase) - density(r, t - dt, p, phase)) / (2 * dt)
        expect(found.byPressure / byPressure).toBeCloseTo(1, 4)
        expect(found.byTemperature / byTemperature).toBeCloseTo(1, 4)
        expect(found.byTemperature).toBeLessThan(0)
      }),
      { numRuns: 100 },
    )
  })
})
