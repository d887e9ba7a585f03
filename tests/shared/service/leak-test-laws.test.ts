import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { quantity, standardAtmosphere } from '../../../shared/quantity/index.ts'
import { refrigerant, saturationPressure } from '../../../shared/refrigerant/index.ts'
import { leakTest } from '../../../shared/service/leak-test.ts'
import { refusalOf } from '../../support/refusal.ts'

const run = (input: Record<string, unknown>) => leakTest.run({ units: 'us', ...input })
const exact = (input: Record<string, unknown>) =>
  leakTest.run({ units: 'si', precise: true, ...input }).result.standing

const standing = {
  startPressure: '150 ±0.5 psig',
  endPressure: '146.9 ±0.5 psig',
  startTemperature: '80 ±1 °F',
  endTemperature: '70 ±1 °F',
}
const PSI = 6894.757293168

describe('the barometer of a standing test', () => {
  it('is one ingredient under both gauges: it moves the correction, and falls out of the difference', () => {
    const still = { ...standing, elapsed: '1 s' }
    const known = exact({ ...still, barometer: '29.92 ±0 inHg' })?.unexplained
    const unknown = exact({ ...still, barometer: '29.92 ±1 inHg' })?.unexplained
    // 1 inHg (3386 Pa) × (1 − 529.67/539.67) = 63 Pa beside more than 5 kPa: nothing to speak of
    const part = Math.sqrt((unknown?.plusMinus ?? 0) ** 2 - (known?.plusMinus ?? 0) ** 2)
    expect(Math.abs(part / 0.06275 - 1)).toBeLessThan(0.02)
  })

  it('may have moved in the time between: 1 hPa an hour, and no more than weather does', () => {
    const width = (elapsed: string | undefined) =>
      exact({ ...standing, barometer: '29.92 ±0 inHg', elapsed })?.unexplained.plusMinus ?? 0
    const base = width('1 s')
    const moved = (elapsed: string | undefined) => Math.sqrt(width(elapsed) ** 2 - base ** 2)
    expect(moved('10 h')).toBeCloseTo(1, 2)
    expect(moved('20 h')).toBeCloseTo(2, 2)
    expect(moved('100 h')).toBeCloseTo(3, 2)
    expect(moved(undefined)).toBeCloseTo(3, 2)
  })

  it('is corrected where both are read', () => {
    const both = { ...standing, barometer: '1013 ±0 hPa', elapsed: '24 h' }
    const same = exact({ ...both, endBarometer: '1013 ±0 hPa' })?.unexplained
    const risen = exact({ ...both, endBarometer: '1033 ±0 hPa' })?.unexplained
    expect((risen?.value ?? 0) - (same?.value ?? 0)).toBeCloseTo(2, 6)
    expect(refusalOf(() => run({ ...standing, endBarometer: '1013 hPa' })).path).toEqual([
      'barometer',
    ])
  })

  it('says nothing of readings that are absolute', () => {
    const answer = run({
      startPressure: '500 micron',
      endPressure: '600 micron',
      startTemperature: '75 °F',
      endTemperature: '75 °F',
    })
    expect(answer.assumptions.map(({ field }) => field)).not.toContain('endBarometer')
  })
})

describe('the least pressure of a standing test', () => {
  it('is 5 psi above the air, or what the gauge may be off by', () => {
    const at = (psig: number, plusMinus: number) => ({
      ...standing,
      startPressure: `${psig} ±${plusMinus} psig`,
      endPressure: `${psig} ±${plusMinus} psig`,
    })
    expect(() => run(at(6, 0.1))).not.toThrow()
    for (const low of [at(4.5, 0.1), at(6, 7)]) {
      expect(refusalOf(() => run(low))).toMatchObject({
        code: 'bad-input',
        path: ['startPressure'],
      })
    }
  })
})

describe('a shallow vacuum', () => {
  it('is a vacuum from 2 % below the air on', () => {
    const kind = (startPressure: string) =>
      run({ ...standing, startPressure, endPressure: startPressure, barometer: '29.92 inHg' })
        .result.standing?.kind
    expect(kind('10 ±0.1 inHg vac')).toBe('vacuum')
    expect(kind('1 ±0.1 inHg vac')).toBe('vacuum')
    expect(() => kind('0.4 ±0.1 inHg vac')).toThrow(/pressure of the air/u)
  })
})

describe('instruments of a standing test', () => {
  it('weigh in by the scale, and out as recovery machines do', () => {
    const lost = leakTest.run({
      chargeThen: '1000 g',
      chargeNow: '700 g',
      between: '1 yr',
      units: 'si',
      precise: true,
    })
    // scale 15 g, recovered mass 30 g
    expect(lost.result.yearly?.lost.plusMinus).toBeCloseTo(Math.hypot(15, 30), 6)
    expect(lost.assumptions.map(({ field }) => field)).toEqual(['chargeThen', 'chargeNow'])
  })

  it('are the shop’s where no ± is given, and listed', () => {
    const answer = run({
      startPressure: '150 psig',
      endPressure: '147 psig',
      startTemperature: '80 °F',
      endTemperature: '70 °F',
      elapsed: '1 h',
    })
    expect(answer.assumptions.map(({ field, taken }) => `${field}: ${taken}`)).toEqual(
      expect.arrayContaining([
        'startPressure: low-side gauge ±1 psi',
        'endPressure: low-side gauge ±1 psi',
        'startTemperature: thermometer ±1 °F',
      ]),
    )
    // two gauges of 1 psi, two thermometers of 1 °F at 164.7 psia, 0.1 kPa of barometer, by hand
    const thermal = (164.7 * PSI * 1) / 539.67
    const byHand = Math.hypot(PSI, PSI, thermal, thermal, 100) / PSI
    expect(answer.result.standing?.unexplained.plusMinus).toBeCloseTo(byHand, 1)
  })
})

describe('what holds for any standing test', () => {
  const kelvin = fc.double({ min: 270, max: 315, noNaN: true })
  const pressure = fc.double({ min: 4e5, max: 2e6, noNaN: true })
  const share = fc.double({ min: 0, max: 1, noNaN: true })

  it('gives an altitude and its barometer the same central values', () => {
    const metres = fc.integer({ min: -300, max: 4_000 })
    fc.assert(
      fc.property(metres, (altitude) => {
        const byAltitude = exact({ ...standing, altitude: `${altitude} m` })
        const byBarometer = exact({
          ...standing,
          barometer: { value: standardAtmosphere(altitude), unit: 'Pa' },
        })
        for (const field of ['byTemperature', 'unexplained', 'measuredChange'] as const) {
          expect(byAltitude?.[field].value).toBeCloseTo(byBarometer?.[field].value ?? 0, 6)
        }
      }),
      { numRuns: 40 },
    )
  })

  it('never turns a verdict into another or into cannot tell by a smaller ±', () => {
    fc.assert(
      fc.property(
        kelvin,
        kelvin,
        pressure,
        share,
        share,
        fc.double({ min: 0.97, max: 1.03, noNaN: true }),
        (from, to, pa, gauge, probe, left) => {
          const verdict = (g: number, t: number) =>
            run({
              startPressure: { value: pa, unit: 'Pa g', plusMinus: 7_000 * g },
              endPressure: {
                value: ((pa + 101_325) * to * left) / from - 101_325,
                unit: 'Pa g',
                plusMinus: 7_000 * g,
              },
              startTemperature: { value: from, unit: 'K', plusMinus: t },
              endTemperature: { value: to, unit: 'K', plusMinus: t },
              elapsed: '12 h',
            }).result.standing?.verdict
          const wide = verdict(1, 1)
          // a test that shows no leak is the one that a better gauge may still find something in
          if (wide !== 'no-leak-shown') expect(verdict(gauge, probe)).toBe(wide)
        },
      ),
      { numRuns: 100 },
    )
  })

  it('carries what is always dangerous in every answer and every stop', () => {
    const always = [
      'pressure',
      'no-oxygen',
      'no-air',
      'nitrogen-regulator',
      'whipping-line',
      'asphyxiation',
      'maker-first',
      'local-rules',
    ]
    const inputs = [
      standing,
      { ambient: '70 °F' },
      { chargeThen: '2 lb', chargeNow: '1 lb', between: '1 yr' },
      { refrigerant: 'R-22', labelCharge: '60 lb', addedInYear: '7 lb' },
      { testPressure: '100 psig', lowSideRating: '200 psig' },
      {
        startPressure: '500 micron',
        endPressure: '600 micron',
        startTemperature: '75 °F',
        endTemperature: '75 °F',
      },
    ]
    for (const input of inputs) {
      expect(run(input).cautions.map(({ id }) => id)).toEqual(expect.arrayContaining(always))
    }
    for (const input of [
      { testPressure: '100 psig' },
      { testGas: 'oxygen' },
      { testPressure: '300 psig', lowSideRating: '200 psig' },
    ]) {
      const error = refusalOf(() => run(input))
      expect(error.level).toBe('stop')
      expect(error.cautions).toEqual(expect.arrayContaining(always))
    }
  })

  it('tells of every answer in one sentence without numbers of its own', () => {
    const inputs = [
      standing,
      { ...standing, endPressure: '140 ±0.5 psig' },
      { ...standing, endPressure: '160 ±0.5 psig' },
      { testPressure: '100 psig', lowSideRating: '200 psig' },
      { lowSideRating: '200 psig' },
      { testGas: 'helium' },
      { ambient: '70 °F' },
      { ambient: '40 °F', systemPressure: '20 psig' },
      { ambient: '75 °F', systemPressure: '90 psig' },
      ...['1 lb', '1 lb 15.5 oz', '1 lb 9 oz'].map((chargeNow) => ({
        chargeThen: '2 lb',
        chargeNow,
        between: '1 yr',
      })),
      ...['1 lb', '5 lb', '9 lb', '6 ±0.5 lb'].map((addedInYear) => ({
        refrigerant: 'R-22',
        labelCharge: '60 lb',
        addedInYear,
      })),
      { refrigerant: 'R-134a', labelCharge: '20 lb' },
      { refrigerant: 'R-134a', labelCharge: '2 lb' },
    ]
    const heads = inputs.map((input) => run(input))
    for (const { headline = '', figures = [], next = [] } of heads) {
      expect(headline.length).toBeLessThanOrEqual(160)
      expect(figures.length).toBeLessThanOrEqual(6)
      expect(next.length).toBeGreaterThan(0)
      expect(next.length).toBeLessThanOrEqual(3)
      for (const { label } of figures) expect(label.length).toBeLessThanOrEqual(14)
      for (const number of headline.match(/-?\d+(?:\.\d+)?/gu) ?? []) {
        expect(figures.map(({ text }) => text).join(' ')).toContain(number)
      }
    }
    expect(new Set(heads.map(({ headline }) => headline)).size).toBe(inputs.length)
  })
})

describe('the smallest leak that a passed test could have shown', () => {
  it('is the ± of what is not explained, in the volume and the time', () => {
    const passed = exact({ ...standing, elapsed: '10 h', volume: '5 L' })
    const byHand = ((passed?.unexplained.plusMinus ?? 0) * 1e3 * 0.005) / 36_000
    expect(Math.abs((passed?.smallestLeak?.value ?? 0) / byHand - 1)).toBeLessThan(1e-6)
  })
})

describe('what a leak means as refrigerant', () => {
  const leak = { ...standing, endPressure: '140 ±0.5 psig', elapsed: '10 h', volume: '5 L' }

  it('is a range in one unit, with the ± of the flow at both ends', () => {
    const { standing: found } = run({ ...leak, refrigerant: 'R-134a' }).result
    expect(found?.refrigerantAtRestFrom?.unit).toBe(found?.refrigerantAtRestTo?.unit)
    const wide = run({ ...leak, endPressure: '140 ±2 psig', refrigerant: 'R-134a' }).result.standing
    const value = (entry?: { value: number }) => entry?.value ?? Number.NaN
    expect(value(wide?.refrigerantAtRestTo)).toBeGreaterThan(value(found?.refrigerantAtRestTo))
    expect(value(wide?.refrigerantAtRestFrom)).toBeLessThan(value(found?.refrigerantAtRestFrom))
  })

  it('keeps one unit where the two ends would have chosen two', () => {
    const slow = leakTest.run({ ...leak, refrigerant: 'R-410A', units: 'us' }).result.standing
    const from = slow?.refrigerantAtRestFrom
    const to = slow?.refrigerantAtRestTo
    expect(from?.unit).toBe('oz/yr')
    expect(to?.unit).toBe('oz/yr')
    // alone it would be shown by the minute: more than 1e-6 kg/s
    expect(quantity('massFlow', to?.value ?? 0, 'oz/yr').si).toBeGreaterThan(1e-6)
  })

  it('takes a blend from its dew line to its bubble line', () => {
    const blend = refrigerant('R-407C')
    const kelvin = ((70 + 459.67) * 5) / 9
    const [dew, bubble] = (['dew', 'bubble'] as const).map((line) =>
      saturationPressure(blend, kelvin, line),
    )
    const answer = leakTest.run({ ...leak, refrigerant: 'R-407C', units: 'si', precise: true })
    const step = answer.steps.find(({ what }) => what.startsWith('Refrigerant through'))
    const rest = step?.values.restPressure as { value: number } | undefined
    expect(rest?.value).toBeCloseTo((bubble ?? 0) / 1e3, 6)
    // the lower end by molecular flow at the dew line: flow × (p_dew − air)/(p̄ − air) × √(28.0134/M) × M/RT
    const { standing: found } = answer.result
    const molar = blend.molarMass
    const flow = (found?.leakRate?.value ?? 0) - (found?.leakRate?.plusMinus ?? 0)
    const middle = ((150 + 140) / 2) * PSI
    const byHand =
      ((flow * molar) / (8.314462618 * kelvin)) *
      (((dew ?? 0) - 101_325) / middle) *
      Math.sqrt(0.0280134 / molar)
    const shown = found?.refrigerantAtRestFrom
    const perSecond =
      { 'g/min': 1 / 60_000, 'g/yr': 1 / 1000 / 31_557_600 }[shown?.unit ?? ''] ?? Number.NaN
    expect(Math.abs(((shown?.value ?? 0) * perSecond) / byHand - 1)).toBeLessThan(1e-6)
    // the upper end by viscous flow at the bubble line, its vapour 2.5 times thinner than nitrogen
    const most = (found?.leakRate?.value ?? 0) + (found?.leakRate?.plusMinus ?? 0)
    const upper =
      (((most * molar) / (8.314462618 * kelvin)) * 2.5 * ((bubble ?? 0) ** 2 - 101_325 ** 2)) /
      ((middle + 101_325) ** 2 - 101_325 ** 2)
    const to = (found?.refrigerantAtRestTo?.value ?? 0) * perSecond
    expect(found?.refrigerantAtRestTo?.unit).toBe(shown?.unit)
    expect(Math.abs(to / upper - 1)).toBeLessThan(1e-6)
  })

  it('leaves the range open for R-744 above its critical point, and answers the rest', () => {
    const warm = {
      ...leak,
      refrigerant: 'R-744',
      startTemperature: '100 °F',
      endTemperature: '95 °F',
    }
    const answer = run(warm)
    expect(answer.result.standing?.refrigerantAtSameFlow).toBeDefined()
    expect(answer.result.standing?.refrigerantAtRestTo).toBeUndefined()
    expect(answer.warnings.map(({ code }) => code)).toContain('no-rest-pressure')
  })

  it('reckons with the air that comes into a vacuum, and with the gas that was in the test', () => {
    const vacuum = {
      startPressure: '500 ±10 micron',
      endPressure: '2500 ±50 micron',
      startTemperature: '72 °F',
      endTemperature: '72 °F',
      elapsed: '10 min',
      volume: '5 L',
      refrigerant: 'R-134a',
    }
    const at = (input: Record<string, unknown>) =>
      leakTest.run({ ...input, units: 'si', precise: true }).result.standing?.refrigerantAtRestFrom
        ?.value ?? Number.NaN
    expect(at({ ...vacuum, testGas: 'helium' })).toBeCloseTo(at(vacuum), 9)
    const helium = at({ ...leak, refrigerant: 'R-134a', testGas: 'helium' })
    const nitrogen = at({ ...leak, refrigerant: 'R-134a' })
    expect(helium / nitrogen).toBeCloseTo(Math.sqrt(0.004002602 / 0.0280134), 6)
  })
})
