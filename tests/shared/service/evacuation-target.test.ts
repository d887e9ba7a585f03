import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { standardAtmosphere } from '../../../shared/quantity/index.ts'
import { judgeLimit } from '../../../shared/service/evacuation/hold-limit.ts'
import { evacuation } from '../../../shared/service/evacuation.ts'
import { refusalOf } from '../../support/refusal.ts'

const run = (input: Record<string, unknown>) => evacuation.run({ units: 'us', ...input })
const refusal = (input: Record<string, unknown>) => refusalOf(() => run(input))
const series = (microns: readonly number[], every = 2) =>
  microns.map((value, index) => ({ time: `${index * every} min`, pressure: `${value} micron` }))
const figure = (answer: ReturnType<typeof run>, id: string) =>
  answer.figures?.find((entry) => entry.id === id)?.text

describe('the target of an evacuation', () => {
  it('is there before anything is read, and says that it is common practice', () => {
    const answer = run({ temperature: '70 °F' })
    expect(answer.headline).toBe(
      'Pull to 500 micron or lower, close the valve, watch 10 min: it must stay below 1000 micron.',
    )
    expect(answer.level).toBe('check')
    expect(answer.figures?.[0]).toMatchObject({ id: 'target', basis: 'common practice' })
    expect(answer.assumptions.find(({ field }) => field === 'target')?.taken).toBe(
      '500 micron, then below 1000 micron for 10 min',
    )
    const some = run({ temperature: '70 °F', target: '300 micron' })
    expect(some.assumptions.map(({ taken }) => taken)).toEqual(
      expect.arrayContaining(['watched for 10 min', 'stays below 1000 micron (133 Pa abs)']),
    )
  })

  it('is the maker’s where it is given', () => {
    const answer = run({ target: '225 micron', holdFor: '30 min', holdBelow: '600 micron' })
    expect(answer.headline).toBe(
      'Pull to 225 micron or lower, close the valve, watch 30 min: it must stay below 600 micron.',
    )
    expect(answer.figures?.some(({ basis }) => basis !== undefined)).toBe(false)
    expect(answer.assumptions).toEqual([])
  })

  // ±10 % and never better than 10 micron, the default of an electronic gauge
  it.each([
    [
      '800 micron',
      'no',
      /^Not yet: pull to 500 micron or lower, close the valve, watch 10 min\.$/u,
    ],
    ['460 micron', 'cannot-tell', /^Cannot tell whether 500 micron is reached: pull on until/u],
    ['450 micron', 'yes', /^Deep enough: close the valve and watch 10 min/u],
    ['540 micron', 'cannot-tell', /^Cannot tell/u],
    ['560 micron', 'no', /^Not yet/u],
    ['500 ±0 micron', 'yes', /^Deep enough/u],
    ['501 ±0 micron', 'no', /^Not yet/u],
    // a dial: ±1 psi, and 3 kPa of weather
    ['29.9 inHg vac', 'cannot-tell', /electronic micron gauge/u],
    ['26 inHg vac', 'no', /^Not yet/u],
  ])('a vacuum of %s: %s', (vacuum, reached, says) => {
    const answer = run({ vacuum })
    expect(answer.result.target.reached).toBe(reached)
    expect(answer.headline).toMatch(says)
  })

  it('shares the barometer between a dial and a target that is given on a dial', () => {
    const dial = { vacuum: '28.4 ±0.2 inHg vac', holdBelow: '12 kPa abs' }
    expect(run({ ...dial, target: '28 inHg vac' }).result.target.reached).toBe('yes')
    expect(run({ ...dial, target: '28.3 inHg vac' }).result.target.reached).toBe('cannot-tell')
  })

  it('hangs on the thermometer as on the gauge', () => {
    const boils = (temperature: string) =>
      run({ vacuum: '18500 ±1 micron', temperature }).result.water?.boils
    // 18 787 micron at 70 °F; 2 °F is 7 % of it
    expect([boils('70 ±0.1 °F'), boils('70 °F'), boils('66 ±0.1 °F')]).toEqual([
      'yes',
      'cannot-tell',
      'no',
    ])
  })

  it('says what the gauge must show so that the target is surely reached', () => {
    expect(figure(run({ vacuum: '800 micron' }), 'sure')).toBe('454 micron')
  })

  it('refuses a target that leaves no room for the hold, and the old name of the limit', () => {
    expect(refusal({ target: '2000 micron' })).toMatchObject({
      code: 'bad-input',
      path: ['target'],
    })
    expect(refusal({ temperature: '70 °F', dryBelow: '900 micron' }).message).toContain('holdBelow')
    expect(
      refusal({ temperature: '70 °F', rise: series([1, 2]), riseScatter: '-5 micron' }),
    ).toMatchObject({ code: 'out-of-range', path: ['riseScatter'] })
    expect(refusal({ temperature: '70 °F', riseScatter: '-5 micron' })).toMatchObject({
      code: 'out-of-range',
      path: ['riseScatter'],
    })
  })

  it('warns where the cold lets no water show', () => {
    const codes = (temperature: string) => run({ temperature }).warnings.map(({ code }) => code)
    expect(codes('0 °F')).toContain('target-shows-no-dryness')
    expect(codes('50 °F')).not.toContain('target-shows-no-dryness')
  })
})

describe('pass or fail of the hold', () => {
  const flat = (level: number, minutes: number) =>
    series(
      Array.from({ length: minutes + 1 }, (_, index) => level + (index % 3)),
      1,
    )
  const common = { temperature: '70 °F', vacuum: '400 micron' }

  it('passes a flat deep vacuum that was watched for the time', () => {
    const answer = run({ ...common, rise: flat(400, 12) })
    expect(answer.result.target.held).toBe('pass')
    expect(answer.level).toBe('fine')
    expect(answer.headline).toMatch(/^Pass: tight and dry/u)
  })

  it('does not pass it before the time, nor where the target was not reached', () => {
    const early = run({ ...common, rise: flat(400, 8), holdFor: '20 min' })
    expect(early.result.target.held).toBe('not-yet')
    expect(early.headline).toMatch(/^So far tight and dry .* watch the full 20 min/u)
    const shallow = run({ ...common, vacuum: '700 micron', rise: flat(700, 12) })
    expect(shallow.headline).toMatch(/never was at 500 micron/u)
    for (const answer of [early, shallow]) expect(answer.level).toBe('check')
  })

  it('fails what passes the limit, at once, and cannot tell at its edge', () => {
    const held = (level: number) => run({ ...common, rise: flat(level, 12) }).result.target.held
    expect([held(880), held(950), held(1200)]).toEqual(['pass', 'cannot-tell', 'fail'])
    expect(run({ ...common, rise: flat(1500, 6) }).result.target.held).toBe('fail')
  })
})

describe('a published rule', () => {
  it('cannot be told kept where the scatter of two readings reaches over it', () => {
    const limit = { risePa: 500, staysPa: undefined, withinS: 600 }
    const points = [
      { timeS: 0, pressurePa: 100 },
      { timeS: 600, pressurePa: 590 },
    ]
    const verdict = (scatterPa: number) => judgeLimit(limit, points, scatterPa, 0).verdict
    // 490 of 500 Pa; two readings of σ 5 Pa leave 2 √2 × 5 = 14 Pa open, of σ 3 Pa 8.5
    expect([verdict(3), verdict(5)]).toEqual(['kept', 'cannot-tell'])
  })
})

describe('the scatter of a gauge that is known', () => {
  it('is a ± of coverage factor 2, and widens the rise by least squares', () => {
    const line = series(
      Array.from({ length: 11 }, (_, minute) => 400 + 50 * minute),
      1,
    )
    const rise = (riseScatter: string) =>
      run({ temperature: '70 °F', rise: line, riseScatter }).result.rise?.risePerMinute.plusMinus
    // σ 10 micron counts as 20 readings: 10 × √(20 ÷ (9 + 20)) ÷ √110 min² = 0.79, twice that
    expect(rise('20 micron')).toBeCloseTo(1.58, 1)
    expect(rise('40 micron')).toBeCloseTo(3.17, 0)
  })
})

describe('a standing vacuum on a dial', () => {
  const dial = (plusMinus: string) =>
    Array.from({ length: 8 }, (_, index) => ({
      time: `${2 * index} min`,
      pressure: `29.42${plusMinus} inHg vac`,
    }))
  const verdict = (input: Record<string, unknown>) =>
    run({ temperature: '90 ±1 °F', ...input }).result.rise?.verdict

  it('is as good as its barometer: the level of a gauge hangs on the air', () => {
    const fine = dial(' ±0.02')
    // 0.5 inHg (1693 Pa) is below half of the 4.82 kPa of water; 3 kPa of weather reach over it
    expect(verdict({ rise: fine, barometer: '29.92 ±0.01 inHg' })).toBe('tight-and-dry')
    expect(verdict({ rise: fine })).toBe('cannot-tell')
    expect(verdict({ rise: dial(''), barometer: '29.92 ±0.01 inHg' })).toBe('cannot-tell')
  })
})

describe('a rise that levels off above what water can do', () => {
  const pocket = {
    temperature: '77 °F',
    volume: '5 L',
    refrigerant: 'R-134a',
    rise: [
      [0, 500],
      [5, 19_000],
      [10, 29_000],
      [20, 37_000],
      [30, 39_500],
      [45, 40_400],
      [60, 40_500],
      [90, 40_500],
    ].map(([minutes, micron]) => ({ time: `${minutes} min`, pressure: `${micron} micron` })),
  }

  it('is a class of its own, with what settles it', () => {
    const answer = run(pocket)
    const { rise } = answer.result
    expect(rise?.verdict).toBe('levels-off-above-water')
    expect(rise?.because).toMatch(/neither water nor a leak from outside stops there/u)
    expect(rise?.because).not.toMatch(/only air/u)
    expect(rise?.leakRate).toBeUndefined()
    expect(rise?.plateau?.unit).toBe('micron')
    expect(Math.abs((rise?.plateau?.value ?? 0) / 40_500 - 1)).toBeLessThan(0.01)
    // 5 L of 40 000 micron (5333 Pa) of R-134a at 25 °C, by hand: 0.005 × 5333 × 0.102032 ÷ (8.3145 × 298.15) kg
    expect(rise?.refrigerantInside?.unit).toBe('oz')
    const grams = evacuation.run({ ...pocket, units: 'us', precise: true }).result.rise
    expect(Math.abs((grams?.refrigerantInside?.value ?? 0) / 0.03871 - 1)).toBeLessThan(0.006)
    expect(answer.headline).toMatch(
      /^Fail: it levels off above water, at 40500 micron: refrigerant/u,
    )
    expect(answer.next?.[0]).toMatch(/dry nitrogen, evacuate and watch again/u)
    expect(answer.warnings.map(({ code }) => code)).toContain('above-water-settled-by')
  })

  it('stays so past half of the air, and is a leak where it goes on to the air', () => {
    const up = (factor: number) =>
      pocket.rise.map(({ time, pressure }) => ({
        time,
        pressure: `${Math.round(Number.parseFloat(pressure) * factor)} micron`,
      }))
    expect(run({ ...pocket, rise: up(12) }).result.rise?.verdict).toBe('levels-off-above-water')
    expect(run({ ...pocket, rise: up(18.7) }).result.rise?.verdict).toBe('leaking')
  })
})

describe('what holds for any evacuation', () => {
  const micron = fc.integer({ min: 50, max: 30_000 })
  const celsius = fc.integer({ min: -15, max: 45 })
  const UNDECIDED = ['cannot-tell', undefined]

  it('gives an altitude and the barometer that belongs to it the same central values', () => {
    const metres = fc.integer({ min: -300, max: 4_000 })
    fc.assert(
      fc.property(metres, celsius, (altitude, degrees) => {
        const common = { temperature: `${degrees} ±1 °C`, units: 'si', precise: true }
        const byAltitude = evacuation.run({ ...common, altitude: `${altitude} m` }).result
        const byBarometer = evacuation.run({
          ...common,
          barometer: { value: standardAtmosphere(altitude), unit: 'Pa' },
        }).result
        const values = ({ water, gauge }: typeof byAltitude) =>
          [water?.gaugeNeeded, water?.vapourPressure, gauge?.barometer, gauge?.perfectVacuum].map(
            (entry) => entry?.value ?? Number.NaN,
          )
        values(byAltitude).forEach((value, index) => {
          expect(value).toBeCloseTo(values(byBarometer)[index] ?? 0, 6)
        })
      }),
      { numRuns: 40 },
    )
  })

  it('never turns a verdict into another or into cannot tell by a smaller ±', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true })
    fc.assert(
      fc.property(micron, celsius, share, share, (pressure, degrees, gauge, probe) => {
        const verdicts = (g: number, t: number) => {
          const { water, target } = evacuation.run({
            vacuum: { value: pressure, unit: 'micron', plusMinus: 0.1 * pressure * g },
            temperature: { value: degrees, unit: '°C', plusMinus: 2 * t },
          }).result
          return [water?.boils, target.reached]
        }
        const [wide, narrow] = [verdicts(1, 1), verdicts(gauge, probe)]
        wide.forEach((verdict, index) => {
          if (!UNDECIDED.includes(verdict)) expect(narrow[index]).toBe(verdict)
        })
      }),
      { numRuns: 150 },
    )
  })

  it('the same of a dial under a barometer and an altitude', () => {
    const inHg = fc.double({ min: 20, max: 24.6, noNaN: true })
    const share = fc.double({ min: 0, max: 1, noNaN: true })
    fc.assert(
      fc.property(inHg, celsius, share, (vacuum, degrees, better) => {
        const boils = (part: number) =>
          evacuation.run({
            vacuum: { value: vacuum, unit: 'inHg vac', plusMinus: 0.3 },
            temperature: `${degrees} ±1 °C`,
            altitude: { value: 5_000, unit: 'ft', plusMinus: 300 * part },
          }).result.water?.boils
        const wide = boils(1)
        if (!UNDECIDED.includes(wide)) expect(boils(better)).toBe(wide)
      }),
      { numRuns: 80 },
    )
  })

  const ALWAYS = ['pressure', 'compressor-in-vacuum', 'maker-first', 'local-rules']

  it('carries what is always dangerous in every answer', () => {
    fc.assert(
      fc.property(micron, celsius, (pressure, degrees) => {
        const ids = run({
          vacuum: `${pressure} micron`,
          temperature: `${degrees} °C`,
        }).cautions.map(({ id }) => id)
        for (const id of ALWAYS) expect(ids).toContain(id)
      }),
      { numRuns: 30 },
    )
  })

  it.each([
    ['R-290', ['flammable', 'pump-exhaust-outdoors', 'no-venting'], ['carbon-dioxide']],
    ['R-1234yf', ['flammable', 'pump-exhaust-outdoors', 'no-venting'], []],
    ['R-134a', ['no-venting'], ['flammable', 'pump-exhaust-outdoors']],
    ['R-744', ['carbon-dioxide'], ['no-venting', 'flammable']],
  ])('%s carries its own dangers before anything is read', (refrigerant, there, absent) => {
    const ids = run({ refrigerant, temperature: '70 °F' }).cautions.map(({ id }) => id as string)
    for (const id of there) expect(ids).toContain(id)
    for (const id of absent) expect(ids).not.toContain(id)
  })

  it('says how nitrogen is handled where the next step takes it', () => {
    const ids = (microns: readonly number[]) =>
      run({ temperature: '70 °F', rise: series(microns) }).cautions.map(({ id }) => id)
    const leak = ids(Array.from({ length: 10 }, (_, index) => 400 + 500 * index))
    for (const id of ['no-oxygen', 'no-air', 'nitrogen-regulator'] as const) {
      expect(leak).toContain(id)
    }
    expect(ids([402, 401, 404, 403, 405, 404])).not.toContain('nitrogen-regulator')
  })

  it('tells of every answer in one sentence, at most six figures and three steps', () => {
    const levels = fc.constantFrom('leak', 'water', 'flat', 'none')
    fc.assert(
      fc.property(levels, micron, celsius, (kind, pressure, degrees) => {
        const rise = {
          leak: series(Array.from({ length: 12 }, (_, index) => pressure + 90 * index)),
          water: series(
            Array.from({ length: 12 }, (_, n) =>
              Math.round(pressure + 8000 * (1 - Math.exp(-n / 3))),
            ),
          ),
          flat: series(Array.from({ length: 12 }, (_, index) => pressure + (index % 2))),
          none: undefined,
        }[kind]
        const answer = run({ temperature: `${degrees} °C`, vacuum: `${pressure} micron`, rise })
        expect(answer.headline?.length).toBeLessThanOrEqual(160)
        expect(answer.figures?.length).toBeLessThanOrEqual(6)
        expect(answer.next?.length).toBeLessThanOrEqual(3)
        for (const { label } of answer.figures ?? []) expect(label.length).toBeLessThanOrEqual(14)
      }),
      { numRuns: 60 },
    )
  })
})
