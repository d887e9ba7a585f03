import { describe, expect, it } from 'vitest'
import {
  enthalpy,
  entropy,
  type Refrigerant,
  refrigerant,
  refrigerants,
  saturatedEnthalpy,
  saturationPressure,
  saturationTemperature,
  stateAtPressure,
  stateWithEnthalpy,
} from '../../../shared/refrigerant/index.ts'
import {
  compressed,
  dome,
  isentrope,
  isotherm,
  qualityLine,
} from '../../../shared/refrigerant/isolines.ts'

const windowOf = (r: Refrigerant) => ({
  fromPa: Math.max(r.bubble.fromPa, r.dew.fromPa, 3e4),
  toPa: 1.3 * r.criticalPressurePa,
})

describe.each(refrigerants().map(({ id }) => id))('lines of %s', (id) => {
  const r = refrigerant(id)
  const window = windowOf(r)

  it('have a dome that closes at the critical point', () => {
    const { bubble, dew, top, critical } = dome(r, 40)
    expect(top[0]).toEqual(bubble.at(-1))
    expect(top.at(-1)).toEqual(dew.at(-1))
    expect(critical.pressurePa).toBe(r.criticalPressurePa)
    expect(top).toContainEqual(critical)
    // Between the lines, or the top would lean out of the dome.
    expect(critical.enthalpy).toBeGreaterThan(bubble.at(-1)?.enthalpy ?? Number.POSITIVE_INFINITY)
    expect(critical.enthalpy).toBeLessThan(dew.at(-1)?.enthalpy ?? 0)
    for (const { pressurePa, enthalpy: read } of bubble.slice(0, -1)) {
      const kelvin = saturationTemperature(r, pressurePa, 'bubble')
      expect(Math.abs(read - saturatedEnthalpy(r, kelvin, 'liquid'))).toBeLessThan(60)
    }
    for (const { pressurePa, enthalpy: read } of dew.slice(0, -1)) {
      const kelvin = saturationTemperature(r, pressurePa, 'dew')
      expect(Math.abs(read - saturatedEnthalpy(r, kelvin, 'vapour'))).toBeLessThan(60)
    }
  })

  it('keep their temperature, through liquid, boiling and vapour', () => {
    const kelvin = (r.minimumTemperatureK + 4 * r.maximumTemperatureK) / 5
    const { liquid, boiling, vapour } = isotherm(r, kelvin, window)
    const tolerance = { liquid: 5, vapour: 5 }
    for (const phase of ['liquid', 'vapour'] as const) {
      const inner = { liquid, vapour }[phase].slice(1, -1)
      expect(inner.length).toBeGreaterThan(5)
      for (const point of inner) {
        if (point.pressurePa > r.equationMaximumPa) continue
        const found = enthalpy(r, kelvin, point.pressurePa, phase)
        expect(Math.abs(point.enthalpy - found)).toBeLessThan(tolerance[phase])
      }
    }
    expect(boiling[0]?.pressurePa).toBeCloseTo(saturationPressure(r, kelvin, 'bubble'), 0)
    expect(boiling.at(-1)?.pressurePa).toBeCloseTo(saturationPressure(r, kelvin, 'dew'), 0)
    // From liquid to vapour, and never upwards.
    for (const [index, point] of boiling.slice(1).entries()) {
      expect(point.enthalpy).toBeGreaterThan(boiling[index]?.enthalpy ?? Number.POSITIVE_INFINITY)
      expect(point.pressurePa).toBeLessThanOrEqual((boiling[index]?.pressurePa ?? 0) * 1.0001)
    }
    expect(liquid[0]?.pressurePa).toBeGreaterThan(liquid.at(-1)?.pressurePa ?? 0)
    expect(vapour.at(-1)?.pressurePa).toBeLessThan(window.fromPa)
    // Below the window, but by no more than a vapour is denser than an ideal gas.
    expect(vapour.at(-1)?.pressurePa).toBeGreaterThan(0.8 * window.fromPa)
  })

  it('go from one side of the plane to the other above the critical temperature', () => {
    const { liquid, boiling, vapour } = isotherm(r, r.criticalTemperatureK + 15, window)
    expect([...liquid, ...boiling]).toEqual([])
    expect(vapour[0]?.pressurePa).toBeGreaterThan(0.9 * window.toPa)
    for (const [index, point] of vapour.slice(1).entries()) {
      expect(point.enthalpy).toBeGreaterThan(vapour[index]?.enthalpy ?? Number.POSITIVE_INFINITY)
    }
  })

  it('keep their entropy when vapour is compressed', () => {
    const fromPa = Math.max(1.2 * window.fromPa, 0.05 * r.criticalPressurePa)
    const warm = saturationTemperature(r, fromPa, 'dew') + 25
    const start = stateAtPressure(r, warm, fromPa, 'vapour')
    const toPa = Math.min(5 * fromPa, 0.6 * r.criticalPressurePa)
    const line = compressed(r, start, toPa)
    expect(line.at(-1)?.pressurePa).toBeCloseTo(toPa, 0)
    for (const { temperatureK, pressurePa } of line) {
      expect(entropy(r, temperatureK, pressurePa, 'vapour')).toBeCloseTo(start.entropy, 3)
    }
    // dh = v·dp along it: work without losses, by the trapezium of the points.
    const [first, last] = [line[0], line.at(-1)]
    const work = line.slice(1).reduce((sum, state, index) => {
      const before = line[index] as typeof state
      return (
        sum + (0.5 / state.density + 0.5 / before.density) * (state.pressurePa - before.pressurePa)
      )
    }, 0)
    const gained = (last?.enthalpy ?? 0) - (first?.enthalpy ?? 0)
    expect(gained).toBeGreaterThan(0)
    expect(work / gained).toBeCloseTo(1, 2)
  })

  it('share the latent heat', () => {
    for (const quality of [0, 0.4, 1]) {
      for (const { pressurePa, enthalpy: read } of qualityLine(r, quality, window, 6)) {
        const boils = saturatedEnthalpy(r, saturationTemperature(r, pressurePa, 'bubble'), 'liquid')
        const dry = saturatedEnthalpy(r, saturationTemperature(r, pressurePa, 'dew'), 'vapour')
        expect(Math.abs(read - (boils + quality * (dry - boils)))).toBeLessThan(60)
      }
    }
  })
})

describe.each(refrigerants().map(({ id }) => id))('a line of one quality of %s', (id) => {
  const r = refrigerant(id)
  const [low, high] = [Math.max(r.bubble.fromPa, r.dew.fromPa), Math.min(r.bubble.toPa, r.dew.toPa)]

  it('runs over what both lines and the window have in common', () => {
    const whole = qualityLine(r, 0.5, { fromPa: 1, toPa: 2 * r.criticalPressurePa }, 9)
    expect(whole).toHaveLength(9)
    expect((whole[0]?.pressurePa ?? 0) / low).toBeCloseTo(1, 9)
    expect((whole.at(-1)?.pressurePa ?? 0) / high).toBeCloseTo(1, 9)
    const [from, to] = [low * 1.5, high * 0.5]
    const part = qualityLine(r, 0.5, { fromPa: from, toPa: to }, 5)
    expect((part[0]?.pressurePa ?? 0) / from).toBeCloseTo(1, 9)
    expect((part.at(-1)?.pressurePa ?? 0) / to).toBeCloseTo(1, 9)
    for (const [index, { pressurePa }] of whole.slice(1).entries()) {
      expect(pressurePa).toBeGreaterThan(whole[index]?.pressurePa ?? Number.POSITIVE_INFINITY)
    }
  })

  it('has no points where the window lies above or below the lines', () => {
    const above = { fromPa: 1.001 * high, toPa: 2 * high }
    const below = { fromPa: 0.1 * low, toPa: 0.999 * low }
    for (const window of [above, below]) expect(qualityLine(r, 0.5, window, 5)).toEqual([])
  })
})

describe('an isentrope of the background', () => {
  it.each(['R-134a', 'R-744', 'R-407C'])('stays in the vapour of %s', (id) => {
    const r = refrigerant(id)
    const window = windowOf(r)
    const kelvin = saturationTemperature(r, 0.1 * r.criticalPressurePa, 'dew') + 10
    const held = entropy(r, kelvin, 0.1 * r.criticalPressurePa, 'vapour')
    const line = isentrope(r, held, window)
    expect(line.length).toBeGreaterThan(10)
    for (const { pressurePa, enthalpy: read } of line) {
      if (pressurePa > 0.8 * r.criticalPressurePa) continue
      expect(stateWithEnthalpy(r, pressurePa, read).entropy).toBeCloseTo(held, 2)
    }
  })

  it.each(['R-134a', 'R-744', 'R-407C'])(
    'of %s is drawn finely, each state above the last',
    (id) => {
      const r = refrigerant(id)
      const window = windowOf(r)
      const kelvin = saturationTemperature(r, 0.1 * r.criticalPressurePa, 'dew') + 10
      const held = entropy(r, kelvin, 0.1 * r.criticalPressurePa, 'vapour')
      const line = isentrope(r, held, window)
      expect(line[0]?.pressurePa).toBeGreaterThanOrEqual(window.fromPa * (1 - 1e-9))
      expect(line.at(-1)?.pressurePa).toBeCloseTo(window.toPa, -1)
      for (const [index, { pressurePa, enthalpy: read }] of line.slice(1).entries()) {
        const before = line[index] ?? { pressurePa: 0, enthalpy: 0 }
        const ratio = pressurePa / before.pressurePa
        expect(ratio).toBeGreaterThan(1)
        // thirty points a decade
        expect(ratio).toBeLessThan(1.08)
        expect(read).toBeGreaterThan(before.enthalpy)
      }
    },
  )

  it('is left out where it would begin above the top of the picture', () => {
    const r = refrigerant('R-134a')
    const kelvin = saturationTemperature(r, 5e5, 'dew')
    const held = entropy(r, kelvin + 0.5, 5e5, 'vapour')
    expect(isentrope(r, held, { fromPa: 5e5, toPa: 6e5 }).length).toBeGreaterThan(1)
    expect(isentrope(r, held, { fromPa: 6e5, toPa: 6e5 })).toEqual([])
  })

  it('is left out where there is no such vapour', () => {
    expect(isentrope(refrigerant('R-134a'), 1200, windowOf(refrigerant('R-134a')))).toEqual([])
  })
})
