import { describe, expect, it } from 'vitest'
import { saturationPoint } from '../../../shared/substance/equilibrium.ts'
import { firstGuess, wilsonPressure } from '../../../shared/substance/first-guess.ts'
import { flash, type Known } from '../../../shared/substance/flash.ts'
import { idealPart } from '../../../shared/substance/ideal.ts'
import { SUBSTANCES } from '../../../shared/substance/library.ts'
import { pointAt } from '../../../shared/substance/saturation-line.ts'
import { solved } from '../../support/blend.ts'
import { counted } from '../../support/counted.ts'

// A poor start is mended by the search that follows, at the cost of its steps: what it starts from,
// and how many steps it takes, is told apart here.

describe('a first guess', () => {
  it.each(SUBSTANCES)('of $id has the pressures that the acentric factor is made of', (data) => {
    const { temperatureK, pressurePa } = data.critical
    expect(wilsonPressure(data, temperatureK)).toBeCloseTo(pressurePa, 3)
    // Pitzer's definition: ω = −log10(p / pc) − 1 at 0.7 Tc
    const reduced = wilsonPressure(data, 0.7 * temperatureK) / pressurePa
    expect(-Math.log10(reduced) - 1).toBeCloseTo(data.acentricFactor, 3)
  })

  it.each(['R-407C', 'R-448A', 'R-513A', 'R-404A'])('of %s lies near the point', (id) => {
    const { fluid, z } = solved(id)
    for (const kelvin of [233.15, 263.15, 293.15]) {
      for (const line of ['bubble', 'dew'] as const) {
        const guess = firstGuess(fluid, z, line, kelvin)
        const point = pointAt(fluid, z, line, kelvin)
        const off = (which: number, density: number) =>
          Math.abs((guess[which] ?? 0) - Math.log(density))
        const { liquid, vapour } = point
        const [given, other] = line === 'bubble' ? [liquid, vapour] : [vapour, liquid]
        // Rackett's volumes are good to a few per cent; a vapour is not ideal by its compressibility
        expect(guess[0]).toBeCloseTo(Math.log(kelvin), 12)
        expect(off(1, given.density)).toBeLessThan(line === 'bubble' ? 0.08 : 0.3)
        other.x.forEach((xi: number, i: number) => {
          expect(off(i + 2, xi * other.density)).toBeLessThan(0.6)
        })
      }
    }
  })
})

describe('the search for a bubble or dew point', () => {
  it.each(['R-407C', 'R-513A'])('of %s is at its end where it starts there', (id) => {
    const { fluid: plain, z } = solved(id)
    const { fluid, count } = counted(plain)
    const found = pointAt(plain, z, 'bubble', 280)
    const exact = [
      Math.log(280),
      Math.log(found.liquid.density),
      ...found.vapour.x.map((yi: number) => Math.log(yi * found.vapour.density)),
    ]
    const calls = (shift: number) => {
      count.calls = 0
      const guess = Float64Array.from(exact, (u, i) => (i === 0 ? u : u + shift))
      const point = saturationPoint(fluid, z, 'bubble', { temperatureK: 280 }, guess)
      expect(point.liquid.density / found.liquid.density).toBeCloseTo(1, 9)
      return count.calls
    }
    // both phases, each of their components once; a second look only where rounding asks for it
    expect(calls(0)).toBeLessThanOrEqual(2 * 2 * z.length)
    // Newton's method doubles its digits with each step: 1 % off takes four steps or five
    expect(calls(0.01)).toBeLessThanOrEqual(6 * 2 * z.length)
  })
})

describe('the split of a mixture', () => {
  it.each(['R-407C', 'R-448A'])('of %s starts so near that its first trial is enough', (id) => {
    const { fluid, z } = solved(id)
    for (const kelvin of [243.15, 273.15, 303.15]) {
      const edges = {
        bubble: pointAt(fluid, z, 'bubble', kelvin).liquid.density,
        dew: pointAt(fluid, z, 'dew', kelvin).vapour.density,
      }
      const between = (share: number) => 1 / ((1 - share) / edges.bubble + share / edges.dew)
      const cases: readonly Known[] = [0.1, 0.5, 0.9].flatMap((share) => [
        { quality: share },
        { density: between(share) },
      ])
      for (const known of cases) {
        const work = { solves: 0 }
        const { liquid, vapour } = flash(fluid, z, kelvin, known, edges, undefined, work)
        expect(work.solves).toBe(3)
        expect(liquid.density).toBeGreaterThan(vapour.density)
      }
    }
  })
})

describe.each(SUBSTANCES)('the ideal part of $id', (data) => {
  it('has the derivatives of itself', () => {
    const part = idealPart(data.ideal, data.reducing.temperatureK)
    const [tau, delta, h] = [1.3, 0.7, 1e-4]
    const found = part(tau, delta)
    const slope = (f: (x: number) => number, x: number) => (f(x + h) - f(x - h)) / (2 * h)
    expect(found.a_d).toBeCloseTo(
      slope((d) => part(tau, d).a, delta),
      6,
    )
    expect(found.a_dd).toBeCloseTo(
      slope((d) => part(tau, d).a_d, delta),
      6,
    )
    expect(found.a_t / slope((t) => part(t, delta).a, tau)).toBeCloseTo(1, 6)
    expect(found.a_tt / slope((t) => part(t, delta).a_t, tau)).toBeCloseTo(1, 6)
    // temperature and density do not mix in an ideal gas
    expect(found.a_dt).toBe(0)
  })
})
