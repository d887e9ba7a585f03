import { describe, expect, it } from 'vitest'
import { density } from '../../../shared/substance/density.ts'
import {
  type Condition,
  type SaturationPoint,
  saturationPoint,
} from '../../../shared/substance/equilibrium.ts'
import { flash, type Known } from '../../../shared/substance/flash.ts'
import { SUBSTANCES, substanceModel } from '../../../shared/substance/library.ts'
import { criticalPoint } from '../../../shared/substance/mixture-critical.ts'
import { saturation } from '../../../shared/substance/saturation.ts'
import {
  contrastOf,
  followLine,
  pointAt,
  pointOnLine,
  type SaturationLine,
} from '../../../shared/substance/saturation-line.ts'
import { stateAt } from '../../../shared/substance/state.ts'
import { findAtTemperature, findState } from '../../../shared/substance/state-found.ts'
import { searchState } from '../../../shared/substance/state-search.ts'
import { type Hold, splitPhases } from '../../../shared/substance/two-phase.ts'
import { solved } from '../../support/blend.ts'
import { counted, countedModel } from '../../support/counted.ts'

// Newton's method doubles its digits with each step, from 1 % off in four or five, and only where
// every derivative that it is given is right: a wrong one is mended by more steps and shows nowhere else.
// The counts of pure substances are what the searches need today: a regression.
const STEPS = 6

const MIXTURES = ['R-407C', 'R-448A', 'R-513A']

describe.each(MIXTURES)('the split of %s', (id) => {
  const { fluid: plain, z } = solved(id)
  const kelvin = 285
  const { liquid, vapour } = pointAt(plain, z, 'bubble', kelvin)

  /** Of one mole, with this share of the volume liquid. */
  const splitAt = (liquidShare: number) => {
    const volume = 1 / (liquidShare * liquid.density + (1 - liquidShare) * vapour.density)
    const guess = {
      liquid,
      vapour,
      liquidVolume: liquidShare * volume,
      vapourVolume: (1 - liquidShare) * volume,
    }
    return splitPhases(plain, kelvin, z, { liquidShare }, guess)
  }
  const massOf = (x: Float64Array) =>
    x.reduce((sum, xi, i) => sum + xi * (plain.molarMasses[i] ?? Number.NaN), 0)

  it.each([0.05, 0.3, 0.8])('is found in a few steps whatever is held (%d liquid)', (share) => {
    const found = splitAt(share)
    const inVapour = found.vapourVolume * found.vapour.density * massOf(found.vapour.x)
    const holds: readonly Hold[] = [
      { liquidShare: share },
      { volume: found.liquidVolume + found.vapourVolume },
      { pressurePa: found.vapour.pressurePa },
      { quality: inVapour / massOf(z) },
    ]
    const beside = splitAt(share * 1.01)
    for (const hold of holds) {
      const { fluid, count } = counted(plain)
      const again = splitPhases(fluid, kelvin, z, hold, beside)
      expect(again.liquidVolume / found.liquidVolume).toBeCloseTo(1, 7)
      expect(again.vapourVolume / found.vapourVolume).toBeCloseTo(1, 7)
      expect(count.calls, JSON.stringify(hold)).toBeLessThanOrEqual(STEPS * 2 * z.length)
    }
  })
})

describe.each(MIXTURES)('a point of the lines of %s', (id) => {
  const { fluid: plain, z } = solved(id)

  it.each(['bubble', 'dew'] as const)('is found in a few steps by any condition (%s)', (line) => {
    const found = pointAt(plain, z, line, 285)
    const beside = pointAt(plain, z, line, 287)
    const sign = line === 'bubble' ? 1 : -1
    const conditions: readonly Condition[] = [
      { temperatureK: 285 },
      { pressurePa: found.pressurePa },
      { contrast: sign * contrastOf(found) },
    ]
    for (const condition of conditions) {
      const { fluid, count } = counted(plain)
      const again = saturationPoint(fluid, z, line, condition, beside.unknowns)
      expect(again.temperatureK).toBeCloseTo(285, 6)
      expect(count.calls, JSON.stringify(condition)).toBeLessThanOrEqual(STEPS * 2 * z.length)
    }
  })
})

describe.each([...MIXTURES, 'R-404A'])('what is known near by spares steps: %s', (id) => {
  const { fluid: plain, z, fromK } = solved(id)
  const evaluations = 2 * z.length

  it.each(['bubble', 'dew'] as const)('along the whole %s line, by its own slope', (line) => {
    const { fluid, count } = counted(plain)
    const path = followLine(fluid, z, line, fromK)
    expect(path.points.length).toBeLessThanOrEqual(42)
    // three steps a point and one that says it is enough
    expect(count.calls / path.points.length / evaluations).toBeLessThan(4.3)
    count.calls = 0
    expect(pointOnLine(path, 281.3).temperatureK).toBeCloseTo(281.3, 9)
    expect(count.calls / evaluations).toBeLessThanOrEqual(5)
    count.calls = 0
    pointAt(fluid, z, line, 0.9 * (path.points.at(-1)?.temperatureK ?? Number.NaN))
    expect(count.calls / evaluations).toBeLessThanOrEqual(26)
  })

  it('in a flash, between the bubble and the dew point', () => {
    for (const kelvin of [243.15, 273.15, 303.15]) {
      const edges = {
        bubble: pointAt(plain, z, 'bubble', kelvin).liquid.density,
        dew: pointAt(plain, z, 'dew', kelvin).vapour.density,
      }
      const cases: readonly Known[] = [0.1, 0.5, 0.9].flatMap((quality) => [
        { quality },
        { density: 1 / ((1 - quality) / edges.bubble + quality / edges.dew) },
      ])
      for (const known of cases) {
        const { fluid, count } = counted(plain)
        flash(fluid, z, kelvin, known, edges)
        expect(count.calls / evaluations, JSON.stringify(known)).toBeLessThanOrEqual(20)
      }
    }
  })
})

describe.each(SUBSTANCES)('the search for $id', (data) => {
  const plain = substanceModel(data.id)
  const { temperatureK: critical } = data.critical
  const coldest = Math.max(data.triple.temperatureK, 0.6 * critical)

  it('finds both phases in few steps, from cold to nearly critical', () => {
    // two densities and both phases at once; near the critical point a ladder of such searches
    for (const [share, most] of [
      [0.05, 24],
      [0.3, 24],
      [0.6, 24],
      [0.9, 32],
      [0.99, 92],
    ] as const) {
      const kelvin = coldest + share * (critical - coldest)
      const { model, count } = countedModel(plain)
      saturation(model, data, kelvin)
      expect(count.calls, `${kelvin} K`).toBeLessThanOrEqual(most)
    }
  })

  it('finds a density in few steps', () => {
    const { pressurePa } = saturation(plain, data, 0.8 * critical)
    for (const [phase, reduced, over] of [
      ['vapour', 0.8, 0.5],
      ['vapour', 0.8, 0.99],
      ['liquid', 0.8, 1.01],
      ['liquid', 0.8, 3],
      ['vapour', 1.1, 0.5],
      ['liquid', 1.1, 3],
    ] as const) {
      const { model, count } = countedModel(plain)
      density(model, reduced * critical, over * pressurePa, phase)
      expect(count.calls, `${phase} at ${over} of saturation`).toBeLessThanOrEqual(7)
    }
  })
})

describe.each(SUBSTANCES)('a state of $id by pressure and', (data) => {
  const plain = substanceModel(data.id)
  const kelvin = 1.05 * data.critical.temperatureK

  it.each(['enthalpy', 'entropy'] as const)('%s is found in few steps from near by', (held) => {
    const state = stateAt(plain, kelvin, 0.3 * data.critical.densityMolPerM3)
    const { model, count } = countedModel(plain)
    const guess = { temperatureK: 1.03 * kelvin, density: 1.05 * state.density }
    const found = searchState(model, state.pressurePa, held, state[held], guess)
    expect(found.temperatureK / kelvin).toBeCloseTo(1, 9)
    expect(found.density / state.density).toBeCloseTo(1, 9)
    expect(count.calls).toBeLessThanOrEqual(STEPS)
  })

  it.each(['enthalpy', 'entropy'] as const)(
    '%s is the same with its last step taken by slopes, which saves a look',
    (held) => {
      const state = stateAt(plain, kelvin, 0.3 * data.critical.densityMolPerM3)
      // off by enough for three looks, and by so little that one does
      for (const [off, looks] of [
        [1.01, 4],
        [1 + 1e-8, 1],
      ] as const) {
        const { model, count } = countedModel(plain)
        const guess = { temperatureK: off * kelvin, density: state.density }
        const found = findState(model, state.pressurePa, held, state[held], guess)
        expect(count.calls).toBeLessThanOrEqual(looks)
        expect(found.temperatureK / kelvin).toBeCloseTo(1, 11)
        expect(found.density / state.density).toBeCloseTo(1, 11)
        expect(found.pressurePa / state.pressurePa).toBeCloseTo(1, 11)
        const scale = state.cp * kelvin
        expect((found.enthalpy - state.enthalpy) / scale).toBeCloseTo(0, 11)
        expect((found.entropy - state.entropy) / state.cp).toBeCloseTo(0, 11)
      }
    },
  )
})

describe.each(SUBSTANCES)('a state of $id from one that was looked at', (data) => {
  const plain = substanceModel(data.id)
  const kelvin = 1.05 * data.critical.temperatureK
  const known = stateAt(plain, kelvin, 0.3 * data.critical.densityMolPerM3)

  it('is found without a look where it is as near as a difference, by one less elsewhere', () => {
    for (const [off, looks] of [
      [1e-7, 0],
      [1e-3, 2],
    ] as const) {
      const sought = stateAt(plain, kelvin * (1 + off), known.density * (1 + off))
      const { model, count } = countedModel(plain)
      const found = findState(model, sought.pressurePa, 'enthalpy', sought.enthalpy, known, known)
      expect(count.calls).toBeLessThanOrEqual(looks)
      expect(found.temperatureK / sought.temperatureK).toBeCloseTo(1, 11)
      expect(found.density / sought.density).toBeCloseTo(1, 11)
      expect((found.entropy - sought.entropy) / sought.cp).toBeCloseTo(0, 11)
    }
  })

  it('at an even temperature is that of the density there', () => {
    for (const off of [1e-7, 1e-2, 0.5]) {
      const pressurePa = known.pressurePa * (1 - off)
      const found = findAtTemperature(plain, kelvin, pressurePa, 'vapour', known, known)
      const sought = stateAt(plain, kelvin, density(plain, kelvin, pressurePa, 'vapour'))
      expect(found.density / sought.density).toBeCloseTo(1, 11)
      expect((found.enthalpy - sought.enthalpy) / (sought.cp * kelvin)).toBeCloseTo(0, 11)
    }
  })
})

describe('the critical point between two lines', () => {
  /** Points of a line at these contrasts, whose temperature and pressure run as they are told to. */
  const line = (
    name: 'bubble' | 'dew',
    contrasts: readonly number[],
    kelvin: (s: number) => number,
  ): SaturationLine => {
    const sign = name === 'bubble' ? 1 : -1
    const points = contrasts.map((contrast) => ({
      line: name,
      temperatureK: kelvin(sign * contrast),
      pressurePa: 1e4 * kelvin(sign * contrast),
      liquid: { density: Math.exp(contrast) },
      vapour: { density: 1 },
    }))
    return { points: points as unknown as readonly SaturationPoint[], line: name } as SaturationLine
  }

  it('is met exactly by a curve of the fifth degree through three points of each', () => {
    const curve = (s: number) => 350 - 3 * s - 8 * s ** 2 + 2 * s ** 3 + s ** 4 - 4 * s ** 5
    const bubble = line('bubble', [0.9, 0.4, 0.2, 0.1], curve)
    const dew = line('dew', [0.8, 0.5, 0.3, 0.15], curve)
    const found = criticalPoint(bubble, dew)
    expect(found.temperatureK).toBeCloseTo(350, 9)
    expect(found.pressurePa).toBeCloseTo(3.5e6, 5)
    // two points of each are a cubic: it misses what is of higher degree, and says by how much
    const parabola = (s: number) => 350 - 3 * s - 8 * s ** 2
    expect(found.doubtK).toBeGreaterThan(1e-4)
    expect(
      criticalPoint(
        line('bubble', [0.4, 0.2, 0.1], parabola),
        line('dew', [0.5, 0.3, 0.15], parabola),
      ).doubtK,
    ).toBeLessThan(1e-9)
  })
})
