import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { quantity } from '../../../shared/quantity/index.ts'
import { pullDownTime, throughputAt } from '../../../shared/service/evacuation/pull-down.ts'
import { evacuation } from '../../../shared/service/evacuation.ts'
import { refusalOf } from '../../support/refusal.ts'

const run = (input: Record<string, unknown>) => evacuation.run({ units: 'us', ...input })

const refusal = (input: Record<string, unknown>) => refusalOf(() => run(input))

/** Readings every `every` minutes in micron. */
const series = (microns: readonly number[], every = 2) =>
  microns.map((value, index) => ({ time: `${index * every} min`, pressure: `${value} micron` }))

describe('water under vacuum', () => {
  it('names the gauge reading at the place and at sea level', () => {
    const { water, gauge } = run({ temperature: '70 °F', altitude: '5000 ft' }).result
    expect(water?.gaugeAtSeaLevel).toMatchObject({ value: 29.18, unit: 'inHg vac' })
    expect(water?.gaugeNeeded).toMatchObject({ value: 24.2, plusMinus: 0.9, unit: 'inHg vac' })
    expect(gauge?.lessThanAtSeaLevel.value).toBeCloseTo(5.02, 1)
  })

  const known = { barometer: '29.92 ±0.03 inHg' }
  it.each([
    ['29.5 ±0.1 inHg vac', known, 'yes'],
    ['28.5 ±0.1 inHg vac', known, 'no'],
    ['29.2 ±0.1 inHg vac', known, 'cannot-tell'],
    // A dial that is known to ±1 psi, and weather, never show what boils water.
    ['29.5 inHg vac', known, 'cannot-tell'],
    ['29.5 ±0.1 inHg vac', {}, 'cannot-tell'],
    ['25 ±0.1 inHg vac', {}, 'no'],
    ['15000 micron', {}, 'yes'],
    ['18000 micron', {}, 'cannot-tell'],
    ['25000 micron', {}, 'no'],
  ])('says whether water at 70 °F boils at %s, %j: %s', (vacuum, place, boils) => {
    expect(run({ temperature: '70 °F', vacuum, ...place }).result.water?.boils).toBe(boils)
  })

  it('carries the ± of altitude and weather to the verdict', () => {
    const mountain = { temperature: '50 ±0.1 °F', vacuum: '24.5 ±0.01 inHg vac' }
    const answer = run({ ...mountain, altitude: '5000 ±300 ft' })
    expect(answer.result.water?.boils).toBe('cannot-tell')
    expect(answer.warnings.find(({ code }) => code === 'vacuum-too-near-to-tell')?.message).toMatch(
      /most of all that of the barometer/u,
    )
    const measured = { ...mountain, barometer: '24.9 ±0.01 inHg' }
    expect(run(measured).result.water?.boils).toBe('no')
    expect(run({ ...measured, vacuum: '24.7 ±0.01 inHg vac' }).result.water?.boils).toBe('yes')
  })

  it('keeps three figures of the pressure at which water boils, and rounds the limit down', () => {
    // IAPWS: 3169.93 Pa at 25 °C, 0.45976 psia
    const answer = run({ temperature: '77 °F' })
    expect(answer.result.water?.vapourPressure?.value).toBeCloseTo(0.46, 3)
    const told = answer.figures?.find(({ id }) => id === 'water')
    expect(told?.text).toBe('23700 micron')
  })

  // By hand: water boils at 2339 Pa at 20 °C and at 2488 Pa at 21 °C (steam tables).
  it('carries the ± of the temperature to the pressure at which water boils', () => {
    const { water } = evacuation.run({ temperature: '20 ±1 °C', units: 'si' }).result
    expect(water?.vapourPressure?.plusMinus).toBeGreaterThanOrEqual(140)
    expect(water?.vapourPressure?.plusMinus).toBeLessThanOrEqual(150)
  })

  it('warns that water below freezing is ice', () => {
    const answer = run({ temperature: '20 °F' })
    expect(answer.result.water?.form).toBe('ice')
    expect(answer.warnings.map(({ code }) => code)).toContain('water-is-ice')
  })

  it('refuses a vacuum that the barometer does not allow', () => {
    const error = refusal({ vacuum: '29.2 inHg vac', altitude: '5000 ft' })
    expect(error.code).toBe('out-of-range')
    expect(error.path).toEqual(['vacuum'])
  })

  it('asks for something to work on', () => {
    expect(refusal({}).code).toBe('missing-input')
  })
})

describe('pump-down', () => {
  const system = { temperature: '70 °F', volume: '5 L', pumpDisplacement: '6 cfm' }

  it('takes several times longer through a narrow hose, and says where the hose rules', () => {
    const bare = run({ ...system, target: '500 micron' }).result.pullDown
    const through = run({
      ...system,
      target: '500 micron',
      vacuumHoseLength: '6 ft',
      vacuumHoseBore: '1/4 in',
    }).result.pullDown
    expect(through?.time.value).toBeGreaterThan(5 * (bare?.time.value ?? Infinity))
    expect(through?.hosesRuleBelow).toMatchObject({ value: 0.454, unit: 'psia' })
    expect(bare?.hosesRuleBelow).toBeUndefined()
  })

  it('is the logarithm of the pressures with the pump straight on the system', () => {
    const { pullDown } = evacuation.run({
      ...system,
      target: '1 kPa abs',
      holdBelow: '2 kPa abs',
      precise: true,
    }).result
    const exact = (0.005 / quantity('volumeFlow', 6, 'cfm').si) * Math.log(101.325)
    expect(pullDown?.time.value).toBeCloseTo(exact, 6)
  })

  it('reckons with air of 70 °F where no temperature is given', () => {
    const hose = {
      volume: '5 L',
      pumpDisplacement: '6 cfm',
      vacuumHoseLength: '6 ft',
      vacuumHoseBore: '1/8 in',
    }
    const time = (input: Record<string, unknown>) =>
      evacuation.run({ ...hose, ...input, precise: true }).result.pullDown?.time.value
    expect(time({})).toBe(time({ temperature: '70 °F' }))
    expect(time({})).not.toBe(time({ temperature: '100 °F' }))
  })

  it('says where the estimate stops holding', () => {
    const answer = run(system)
    expect(answer.warnings.map(({ code }) => code)).toContain('pump-down-is-a-least-time')
    expect(answer.result.pullDown?.holdsDownTo).toMatchObject({ value: 18790, unit: 'micron' })
  })

  it('gives the least time to carry water off, which grows with the mass', () => {
    const hose = { vacuumHoseLength: '6 ft', vacuumHoseBore: '1/4 in' }
    const one = run({ ...system, ...hose, waterMass: '10 g' }).result.pullDown?.dryingTime
    const two = run({ ...system, ...hose, waterMass: '20 g' }).result.pullDown?.dryingTime
    expect(two?.value).toBeCloseTo(2 * (one?.value ?? 0), 0)
  })

  it.each([
    [{ volume: undefined }, 'missing-input', ['volume']],
    [{ vacuumHoseLength: '6 ft' }, 'missing-input', ['vacuumHoseBore']],
    [{ vacuumHoseLength: '6 ft', vacuumHoseBore: '0 in' }, 'out-of-range', ['vacuumHoseBore']],
    [{ target: '10 micron', pumpUltimate: '20 micron' }, 'out-of-range', ['target']],
    [{ target: '20 psig' }, 'out-of-range', ['target']],
  ])('refuses %j', (change, code, path) => {
    const error = refusal({ ...system, ...change })
    expect(error.code).toBe(code)
    expect(error.path).toEqual(path)
  })

  it('never gets quicker with another hose, a longer hose, or a deeper target', () => {
    const line = (lengthM: number, boreM: number, count: number) => ({
      displacement: 2.8e-3,
      ultimatePa: 1,
      temperatureK: 294,
      hoses: Array.from({ length: count }, () => ({ lengthM, boreM })),
    })
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        fc.double({ min: 0.003, max: 0.03, noNaN: true }),
        fc.integer({ min: 0, max: 3 }),
        fc.double({ min: 5, max: 50_000, noNaN: true }),
        (length, bore, count, target) => {
          const time = pullDownTime(line(length, bore, count), 0.005, 101_325, target)
          expect(time).toBeGreaterThan(0)
          const slack = 1 + 1e-6
          const more = pullDownTime(line(length, bore, count + 1), 0.005, 101_325, target)
          const longer = pullDownTime(line(length * 1.3, bore, count), 0.005, 101_325, target)
          const deeper = pullDownTime(line(length, bore, count), 0.005, 101_325, target * 0.8)
          expect(more * slack).toBeGreaterThanOrEqual(time)
          expect(longer * slack).toBeGreaterThanOrEqual(time)
          expect(deeper).toBeGreaterThan(time)
        },
      ),
      { numRuns: 60 },
    )
  })

  it('passes more gas at a higher pressure', () => {
    const line = {
      displacement: 2.8e-3,
      ultimatePa: 1,
      temperatureK: 294,
      hoses: [{ lengthM: 1.8, boreM: 0.006 }],
    }
    const pressure = fc.double({ min: 2, max: 1e5, noNaN: true })
    fc.assert(
      fc.property(pressure, (pascal) => {
        expect(throughputAt(line, pascal * 1.01)).toBeGreaterThan(throughputAt(line, pascal))
      }),
    )
  })
})

describe('standing vacuum', () => {
  const common = { temperature: '72 °F', volume: '5 L', refrigerant: 'R-134a' }

  it('calls a steady rise a leak and sizes it', () => {
    const rise = series([400, 880, 1350, 1840, 2320, 2790, 3280, 3760, 4230])
    const answer = evacuation.run({ ...common, rise, precise: true, units: 'si' })
    expect(answer.result.rise?.verdict).toBe('leaking')
    // 240 micron a minute in 5 L, by hand: 0.005 m³ × 240 × 0.1333 Pa ÷ 60 s
    const rate = answer.result.rise?.leakRate
    expect(Math.abs((rate?.value ?? 0) / 2.667e-3 - 1)).toBeLessThan(0.01)
    const loose = evacuation.run({
      ...common,
      volume: '5 ±0.5 L',
      rise,
      precise: true,
      units: 'si',
    })
    const width = (answer: typeof loose) => answer.result.rise?.leakRate?.plusMinus ?? 0
    // a tenth of the volume beside what the readings leave open
    expect(Math.sqrt(width(loose) ** 2 - width(answer) ** 2)).toBeCloseTo(2.667e-4, 5)
  })

  it('calls a rise that levels off at the vapour pressure wet', () => {
    const rise = series(
      Array.from({ length: 16 }, (_, index) =>
        Math.round(500 + 19_000 * (1 - Math.exp((-2 * index) / 5))),
      ),
    )
    const { result, warnings } = run({ ...common, rise })
    expect(result.rise?.verdict).toBe('wet')
    expect(result.rise?.moisture).toBe('liquid-water')
    expect(warnings.map(({ code }) => code)).toContain('dry-and-test-again')
  })

  it('calls a rise past the vapour pressure after a fast start wet and leaking', () => {
    const rise = series(
      Array.from({ length: 20 }, (_, index) =>
        Math.round(500 + 18_000 * (1 - Math.exp((-2 * index) / 4)) + 800 * index),
      ),
    )
    expect(run({ ...common, rise }).result.rise?.verdict).toBe('wet-and-leaking')
  })

  it('calls a flat deep vacuum tight and dry, and warns that small leaks pass it', () => {
    const { result, warnings } = run({
      ...common,
      rise: series([402, 401, 404, 403, 405, 404, 406, 405]),
    })
    expect(result.rise?.verdict).toBe('tight-and-dry')
    expect(warnings.map(({ code }) => code)).toContain('vacuum-finds-only-large-leaks')
  })

  it('does not call a flat vacuum dry where water would be flat as well', () => {
    const steady = [29.1, 29.1, 29.1, 29.1, 29.1, 29.1].map((value, index) => ({
      time: `${index * 5} min`,
      pressure: `${value} inHg vac`,
    }))
    expect(run({ ...common, rise: steady }).result.rise?.verdict).not.toBe('tight-and-dry')
    const above = series([30_000, 30_010, 30_000, 30_020, 30_010, 30_010, 30_000, 30_010], 15)
    expect(run({ ...common, rise: above }).result.rise?.verdict).toBe('cannot-tell')
  })

  it('says too short for three readings and for a beginning', () => {
    expect(run({ ...common, rise: series([400, 900, 1400]) }).result.rise?.verdict).toBe(
      'too-short-to-tell',
    )
    const beginning = run({ ...common, rise: series([400, 520, 630, 750, 860, 980], 0.5) })
    expect(beginning.result.rise?.verdict).toBe('too-short-to-tell')
    expect(beginning.result.rise?.watchFor?.value).toBeGreaterThan(2.5)
  })

  it('says cannot tell when a coarse gauge hides what matters', () => {
    const rise = [20, 20, 21, 20, 20, 21].map((value, index) => ({
      time: `${index} min`,
      pressure: `${value / 10 + 26} inHg vac`,
    }))
    expect(run({ ...common, rise, riseScatter: '0.2 inHg' }).result.rise?.verdict).toBe(
      'cannot-tell',
    )
  })

  it('judges a chosen rule apart from the shape, and says when they disagree', () => {
    const rise = series([420, 455, 490, 520, 560, 590, 625, 660, 690, 730, 765])
    const answer = run({ ...common, rise, limit: 'rise-500-micron-in-10-min' })
    expect(answer.result.rise?.limit?.verdict).toBe('kept')
    expect(answer.result.rise?.verdict).toBe('leaking')
    expect(answer.warnings.map(({ code }) => code)).toContain('limit-kept-yet-leaking')
  })

  it('never calls a rule kept whose source prints no time, and still breaks it', () => {
    const settled = series([7000, 7010, 7020, 7010, 7020, 7020])
    const answer = run({ ...common, rise: settled, limit: 'settles-at-10-mbar' })
    expect(answer.result.rise?.limit?.verdict).toBe('cannot-tell')
    expect(answer.warnings.map(({ code }) => code)).toContain('limit-has-no-time')
    const rising = series([7000, 7300, 7600, 7900, 8200, 8500])
    const broken = run({ ...common, rise: rising, limit: 'settles-at-10-mbar' })
    expect(broken.result.rise?.limit?.verdict).toBe('broken')
    expect(broken.warnings.map(({ code }) => code)).not.toContain('limit-has-no-time')
  })

  it('warns that a coarse rule cannot show dryness', () => {
    const answer = run({
      ...common,
      rise: series([400, 401, 402, 403, 402, 403]),
      limit: 'rise-1-inhg-in-5-min',
    })
    expect(answer.result.rise?.limit?.verdict).toBe('kept')
    expect(answer.warnings.map(({ code }) => code)).toContain('limit-does-not-show-dryness')
  })

  it.each([
    [{ rise: series([400, 500]), temperature: undefined }, 'missing-input', ['temperature']],
    [{ rise: series([400]) }, 'bad-input', ['rise']],
    [{ rise: series([400, 420, 430, 450, 460], 0) }, 'bad-input', ['rise', 1, 'time']],
    [
      { rise: [...series([400, 410]), { time: '9 min', pressure: '30 psig' }] },
      'out-of-range',
      ['rise', 2, 'pressure'],
    ],
    [{ rise: series([400, 500]), refrigerant: 'R-9999' }, 'unknown-refrigerant', ['refrigerant']],
  ])('refuses bad readings (%#)', (change, code, path) => {
    const error = refusal({ ...common, ...change })
    expect(error.code).toBe(code)
    expect(error.path).toEqual(path)
  })
})

describe('readings that no evacuation has', () => {
  it.each([
    ['a temperature', { temperature: '500 °F' }, 'temperature'],
    ['a vacuum above the air', { vacuum: '10 psig' }, 'vacuum'],
  ])('refuses %s', (_, input, field) => {
    expect(refusal(input)).toMatchObject({ code: 'out-of-range', path: [field] })
  })

  it('draws nothing from a pressure that falls with the pump shut off', () => {
    const falling = Array.from({ length: 11 }, (_, minute) => 400 - 10 * minute)
    const { rise } = run({ temperature: '70 °F', rise: series(falling, 1) }).result
    expect(rise?.verdict).toBe('cannot-tell')
    expect(rise?.because).toMatch(/^The pressure falls/)
  })

  it('calls it ice where it is ice', () => {
    const levelling = Array.from({ length: 11 }, (_, n) => 400 + 1000 * (1 - Math.exp(-n / 2)))
    const { rise } = run({ temperature: '14 °F', rise: series(levelling.map(Math.round)) }).result
    expect(rise?.verdict).toBe('wet')
    expect(rise?.because).toMatch(/: ice\.$/)
  })
})
