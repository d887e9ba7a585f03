import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { randomFrom } from '../../../shared/random.ts'
import { fitRise, MOST_CONSTANTS } from '../../../shared/service/evacuation/rise-fit.ts'
import { judgeRise } from '../../../shared/service/evacuation/rise-verdict.ts'
import { ABOVE_WATER, accuracy, confusion, THREE } from '../../generate/rise-confusion.ts'
import {
  HARD_AXES,
  HELD_OUT_AXES,
  narrowLeak,
  randomCases,
  riseGrid,
  simulateRise,
} from '../../generate/rise-simulation.ts'

const MICRON = 0.133322387415

const reading = (points: readonly { timeS: number; pressurePa: number }[], scale = 1) => ({
  points: points.map(({ timeS, pressurePa }) => ({ timeS, pressurePa: pressurePa * scale })),
  temperature: { si: 300.15, plusMinus: 3 },
  barometerPa: 101_325,
  proportional: true,
  levelPlusMinusPa: 0.1 * scale * (points.at(-1)?.pressurePa ?? 0),
  negligibleSlope: (10 * MICRON) / 60,
  dryBelowPa: 1000 * MICRON,
})

describe('the verdict on a standing vacuum', () => {
  // Simulated, seeded: leak, water and neither, with gauge error and scatter, on a grid that was held out.
  it('is right in at least 99 % of the held-out grid, and of what it decides', () => {
    const { cases, ofAll, ofDecided } = accuracy(confusion(riseGrid(HELD_OUT_AXES), 20_261_125))
    expect(cases).toBeGreaterThan(3_000)
    expect(ofAll).toBeGreaterThanOrEqual(0.99)
    expect(ofDecided).toBeGreaterThanOrEqual(0.99)
  }, 180_000)

  it('is right in at least 99 % of cases drawn between the held-out values', () => {
    expect(accuracy(confusion(randomCases(THREE, 300, 4242), 5)).ofAll).toBeGreaterThanOrEqual(0.99)
  }, 180_000)

  it('names refrigerant that leaves oil or a pocket, and never calls it a leak or water', () => {
    const { 'levels-off-above-water': row } = confusion(randomCases(ABOVE_WATER, 200, 8), 8)
    expect(row?.['levels-off-above-water']).toBeGreaterThanOrEqual(198)
    expect((row?.leaking ?? 0) + (row?.wet ?? 0) + (row?.['wet-and-leaking'] ?? 0)).toBe(0)
  }, 180_000)

  // The slowing of a leak through a long narrow path is neither water nor refrigerant.
  it.each(
    (['molecular', 'viscous'] as const).flatMap((law) =>
      [0.1, 0.3, 0.6, 0.9].map((end) => [law, end] as const),
    ),
  )('calls a %s leak that reaches %d of the air a leak', (law, end) => {
    const random = randomFrom(11)
    for (const noise of [0.001, 0.004, 0.012]) {
      const judged = judgeRise(reading(narrowLeak(law, end, noise, random)))
      expect(judged.verdict).toBe('leaking')
    }
  })

  it('puts no reading into more shapes than it says, however long the series', () => {
    const points = Array.from({ length: 2_000 }, (_, index) => ({
      timeS: index,
      pressurePa: 60 + 0.05 * index + ((index * 7919) % 13) / 10,
    }))
    const { evaluations } = fitRise(
      points,
      { sigmaOf: () => 1, weight: 2 },
      { highestWaterPa: 3_000, airPa: 101_325, slowestS: 3_600 },
    )
    expect(MOST_CONSTANTS).toBeLessThanOrEqual(280)
    // each constant once for the free shapes and once where a level is held
    expect(evaluations).toBeLessThanOrEqual(MOST_CONSTANTS * points.length)
    expect(evaluations).toBeGreaterThan(points.length)
  })

  it('never calls water with a leak tight or dry', () => {
    const { 'wet-and-leaking': row } = confusion(randomCases(['wet-and-leaking'], 200, 6), 6)
    expect(row?.['tight-and-dry']).toBe(0)
  }, 180_000)

  it('leaves the hard cases open rather than getting them wrong', () => {
    expect(
      accuracy(
        confusion(
          riseGrid(HARD_AXES).filter((_, index) => index % 3 === 0),
          7,
        ),
      ).ofDecided,
    ).toBeGreaterThanOrEqual(0.99)
  }, 180_000)

  const UNDECIDED = new Set(['too-short-to-tell', 'cannot-tell'])

  it('keeps its verdict when gauge and thermometer are known better', () => {
    const cases = [
      ...riseGrid(HELD_OUT_AXES).filter(({ temperatureC }) => temperatureC === 27),
      ...randomCases(ABOVE_WATER, 40, 3),
      ...randomCases(['wet-and-leaking'], 40, 3),
    ]
    const better = fc.double({ min: 0, max: 1, noNaN: true })
    fc.assert(
      fc.property(
        fc.constantFrom(...cases),
        fc.nat(),
        better,
        better,
        (one, seed, gauge, probe) => {
          const given = reading(simulateRise(one, randomFrom(seed)))
          const wide = judgeRise(given).verdict
          const narrow = judgeRise({
            ...given,
            levelPlusMinusPa: given.levelPlusMinusPa * gauge,
            temperature: { ...given.temperature, plusMinus: given.temperature.plusMinus * probe },
          }).verdict
          if (!UNDECIDED.has(wide)) expect(narrow).toBe(wide)
        },
      ),
      { numRuns: 100 },
    )
  })

  it('does not turn into another class when the gauge is off by what it may be off', () => {
    const cases = riseGrid(HELD_OUT_AXES).filter(({ temperatureC }) => temperatureC === 27)
    const entry = fc.constantFrom(...cases)
    fc.assert(
      fc.property(
        entry,
        fc.nat(),
        fc.double({ min: 0.92, max: 1.08, noNaN: true }),
        (one, seed, scale) => {
          const points = simulateRise(one, randomFrom(seed))
          const verdicts = new Set([
            judgeRise(reading(points)).verdict,
            judgeRise(reading(points, scale)).verdict,
          ])
          expect([...verdicts].filter((verdict) => !UNDECIDED.has(verdict)).length).toBeLessThan(2)
        },
      ),
      { numRuns: 120 },
    )
  })

  it('gives finite figures for any rising times and any pressures below the air', () => {
    const points = fc
      .array(
        fc.tuple(
          fc.double({ min: 0.01, max: 1e5, noNaN: true }),
          fc.double({ min: 0.01, max: 1e5, noNaN: true }),
        ),
        {
          minLength: 2,
          maxLength: 30,
        },
      )
      .map((steps) => {
        let timeS = 0
        return steps.map(([step, pressurePa]) => {
          timeS += step
          return { timeS, pressurePa }
        })
      })
    fc.assert(
      fc.property(points, (series) => {
        const judged = judgeRise(reading(series))
        for (const figure of [
          judged.slope,
          judged.slopePlusMinus,
          judged.vapourPa,
          judged.watchForS ?? 0,
        ]) {
          expect(Number.isFinite(figure)).toBe(true)
        }
      }),
      { numRuns: 200 },
    )
  })
})
