import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { ErrorCode } from '../../../shared/errors.ts'
import { quantity, standardAtmosphere } from '../../../shared/quantity/index.ts'
import {
  propertyUncertainty,
  refrigerant,
  saturationPressure,
  saturationTemperature,
} from '../../../shared/refrigerant/index.ts'
import { readings } from '../../../shared/service/readings.ts'
import { refusalOf } from '../../support/refusal.ts'

const run = (input: Record<string, unknown>) =>
  readings.run({ refrigerant: 'R-134a', units: 'us', ...input })

const refusal = (input: Record<string, unknown>) => refusalOf(() => run(input))

const LOW = { suctionPressure: '35 psig', suctionTemperature: '52 °F' }
const HIGH = { liquidPressure: '185 psig', liquidTemperature: '112 °F' }

describe('figures', () => {
  it('superheat is the suction line over the dew point', () => {
    // AGCO TerraGator 3244 printed table: R-134a at 34.9 psig is 40 °F, so 52 °F is 12 °F of superheat.
    const { result } = run({ suctionPressure: '34.9 psig', suctionTemperature: '52 °F' })
    expect(result.superheat?.value).toBeCloseTo(12, 0)
    expect(result.subcooling).toBeUndefined()
    expect(result.highSide).toBeUndefined()
  })

  it('subcooling is the bubble point over the liquid line', () => {
    // US vehicle table for R-134a (1998): 171 psig is 120 °F, so 110 °F is 10 °F of subcooling.
    const { result } = run({ liquidPressure: '171 psig', liquidTemperature: '110 °F' })
    expect(result.subcooling?.value).toBeCloseTo(10, 0)
    expect(result.superheat).toBeUndefined()
  })

  it('compression ratio is of absolute pressures, and falls back on the liquid pressure', () => {
    const { result } = run({ ...LOW, ...HIGH })
    expect(result.compressionRatio?.value).toBeCloseTo((185 + 14.696) / (35 + 14.696), 2)
    const discharge = run({ ...LOW, ...HIGH, dischargePressure: '195 psig' }).result
    expect(discharge.compressionRatio?.value).toBeCloseTo((195 + 14.696) / (35 + 14.696), 2)
  })

  it('condensing over ambient and discharge superheat', () => {
    const { result } = run({ ...HIGH, ambient: '90 °F', dischargeTemperature: '165 °F' })
    const condensing = result.highSide?.condensingTemperature?.value ?? 0
    expect(result.condensingOverAmbient?.value).toBeCloseTo(condensing - 90, 0)
    expect(result.dischargeSuperheat?.value).toBeCloseTo(165 - condensing, 0)
  })

  it('an altitude makes the same gauge reading colder, and so the superheat larger', () => {
    const low = run(LOW).result.superheat?.value ?? 0
    const high = run({ ...LOW, altitude: '9000 ft' }).result.superheat?.value ?? 0
    // 9000 ft takes 4.2 psi from the air, which is about 4 °F of R-134a at 40 °F.
    expect(high - low).toBeGreaterThan(3.5)
    expect(high - low).toBeLessThan(6)
  })

  it('shows each step', () => {
    const { steps } = run({ ...LOW, ...HIGH, ambient: '90 °F' })
    expect(steps.map((step) => step.what)).toEqual([
      'Absolute pressure of the low side',
      'Saturation temperature of the low side',
      'Superheat',
      'Absolute pressure of the high side',
      'Saturation temperature of the high side',
      'Subcooling',
      'Condensing over ambient',
      'Compression ratio',
    ])
  })
})

describe('uncertainty', () => {
  it('adds pressure and thermometer in quadrature', () => {
    const r = refrigerant('R-134a')
    const psi = 6_894.757_293
    const at = (psig: number) => saturationTemperature(r, psig * psi + 101_325, 'dew')
    const byPressure = (at(36) - at(34)) / 2
    const expected = Math.hypot(byPressure, 2 / 1.8)
    const { result } = run({
      suctionPressure: '35 ±1 psig',
      suctionTemperature: '52 ±2 °F',
      barometer: '101325 ±0 Pa',
      units: 'si',
      precise: true,
    })
    const data = propertyUncertainty(r, at(35), 'dew').temperatureK
    expect(result.superheat?.plusMinus).toBeCloseTo(Math.hypot(expected, data), 9)
  })

  it('has the barometer in it: weather by default, a stated ± otherwise', () => {
    const at = (place: Record<string, unknown>) =>
      run({
        suctionPressure: '35 ±0 psig',
        suctionTemperature: '52 ±0 °F',
        ...place,
        units: 'si',
        precise: true,
      }).result.superheat?.plusMinus ?? 0
    const r = refrigerant('R-134a')
    const pa = 35 * 6_894.757_293 + 101_325
    const by = (width: number) =>
      (saturationTemperature(r, pa + width, 'dew') - saturationTemperature(r, pa - width, 'dew')) /
      2
    const data = propertyUncertainty(r, saturationTemperature(r, pa, 'dew'), 'dew').temperatureK
    expect(at({})).toBeCloseTo(Math.hypot(by(3_000), data), 6)
    expect(at({ barometer: '101325 ±1000 Pa' })).toBeCloseTo(Math.hypot(by(1_000), data), 6)
  })

  it('is that of the shop’s instruments where none was given, and is told as assumed', () => {
    const { result, assumptions } = run({ ...LOW, ...HIGH, ambient: '90 °F' })
    expect(result.lowSide?.gaugePressure.plusMinus).toBe(1)
    expect(result.highSide?.gaugePressure.plusMinus).toBe(4)
    expect(assumptions.map(({ field, taken }) => [field, taken.split(' (')[0]])).toEqual(
      expect.arrayContaining([
        ['suctionPressure', 'low-side gauge ±1 psi'],
        ['liquidPressure', 'high-side gauge ±4 psi'],
        ['suctionTemperature', 'pipe probe ±2 °F'],
        ['liquidTemperature', 'pipe probe ±2 °F'],
        ['ambient', 'thermometer ±1 °F'],
      ]),
    )
  })

  it('of the low side is that of a high-side gauge where no low-side gauge reaches', () => {
    const { result } = run({ refrigerant: 'R-744', suctionPressure: '500 psig' })
    expect(result.lowSide?.gaugePressure.plusMinus).toBe(4)
  })

  it('comes from the class of a gauge in percent of its span', () => {
    // EN 837-1 class 1.6 on 500 psi: ±8 psi; as expanded uncertainty of a rectangle 2 · 8 / √3 = 9.24 psi.
    const { result, sources } = run({
      ...HIGH,
      highGauge: 'en-837-1-class-1.6',
      highGaugeSpan: '500 psi',
      precise: true,
    })
    expect(result.highSide?.gaugePressure.plusMinus).toBeCloseTo(9.2376, 3)
    expect(sources.map((source) => source.id)).toContain('en-837-1')
  })

  it('is wider in the outer quarters of a grade that says so', () => {
    const at = (suctionPressure: string) =>
      run({
        suctionPressure,
        lowGauge: 'asme-b40.100-grade-a',
        lowGaugeSpan: '120 psi',
        precise: true,
      }).result.lowSide?.gaugePressure.plusMinus ?? 0
    expect(at('20 psig') / at('60 psig')).toBeCloseTo(2, 9)
    expect(at('100 psig') / at('60 psig')).toBeCloseTo(2, 9)
  })

  it('comes from a sensor and its contact with the pipe', () => {
    // IEC 60584-1 type T class 1 at 52 °F: ±0.5 °C, and 1 K of contact: 2/√3 · hypot(0.5, 1).
    const { result, warnings } = run({
      suctionTemperature: '52 °F',
      suctionPressure: '35 ±0 psig',
      thermometer: 'iec-60584-type-t-class-1',
      contactError: '1 K',
      barometer: '101325 ±0 Pa',
      units: 'si',
      precise: true,
    })
    const r = refrigerant('R-134a')
    const dewK = saturationTemperature(r, 35 * 6_894.757_293 + 101_325, 'dew')
    const data = propertyUncertainty(r, dewK, 'dew').temperatureK
    const probe = (2 / Math.sqrt(3)) * Math.hypot(0.5, 1)
    expect(result.superheat?.plusMinus).toBeCloseTo(Math.hypot(probe, data), 6)
    expect(warnings).toEqual([])
  })

  it('of a platinum sensor grows with the temperature', () => {
    // IEC 60751 class B: ±(0.3 + 0.005·|t|): 0.3 at 0 °C and 0.55 at 50 °C.
    const at = (liquidTemperature: string) => {
      const width =
        run({
          barometer: '101325 ±0 Pa',
          liquidPressure: '250 ±0 psig',
          liquidTemperature,
          thermometer: 'iec-60751-class-b',
          contactError: '0 K',
          units: 'si',
          precise: true,
        }).result.subcooling?.plusMinus ?? 0
      const r = refrigerant('R-134a')
      const bubbleK = saturationTemperature(r, 250 * 6_894.757_293 + 101_325, 'bubble')
      return Math.sqrt(width ** 2 - propertyUncertainty(r, bubbleK, 'bubble').temperatureK ** 2)
    }
    expect(at('50 °C') / at('0 °C')).toBeCloseTo(0.55 / 0.3, 6)
  })

  it('warns that the class of a sensor does not count its contact', () => {
    const { warnings } = run({ ...LOW, thermometer: 'iec-60584-type-k-class-1' })
    expect(warnings.map((warning) => warning.code)).toEqual(['contact-not-counted'])
  })

  it('of the reading itself overrides its class', () => {
    const { result } = run({
      suctionPressure: '35 ±0.2 psig',
      lowGauge: 'en-837-1-class-4',
      lowGaugeSpan: '500 psi',
    })
    expect(result.lowSide?.gaugePressure.plusMinus).toBe(0.2)
  })

  it('of the barometer moves both sides together', () => {
    const { result } = run({
      suctionPressure: '35 ±0 psig',
      liquidPressure: '185 ±0 psig',
      barometer: { value: 29.92, unit: 'inHg', plusMinus: 0.3 },
      precise: true,
    })
    const [high, low, air] = [199.7, 49.7, 0.1473]
    const together = Math.abs(((high + air) / (low + air) - (high - air) / (low - air)) / 2)
    expect(result.compressionRatio?.plusMinus).toBeCloseTo(Math.max(0.01, together), 2)
  })
})

describe('what is always said', () => {
  it('the weighed charge decides, and on a vehicle pressures follow engine and heat load', () => {
    const said = (input: Record<string, unknown>) => {
      const { result, cautions } = run(input)
      return { text: result.statements[0], ids: cautions.map(({ id }) => id as string) }
    }
    for (const input of [LOW, HIGH, { ...LOW, machine: 'bus' }]) {
      const { text, ids } = said(input)
      expect(text).toMatch(/On a vehicle system the weighed charge decides.*engine speed/u)
      expect(ids).toEqual(expect.arrayContaining(['weigh-the-charge', 'rotating-parts']))
    }
    const { text, ids } = said({ ...LOW, machine: 'stationary', meteringDevice: 'fixed-orifice' })
    expect(text).toMatch(/weighed charge decides/u)
    expect(text).not.toMatch(/vehicle|engine/u)
    expect(ids).not.toContain('rotating-parts')
    expect(ids).not.toContain('weigh-the-charge')
  })

  it('normal superheat on a valve proves nothing about the charge', () => {
    const { result, sources } = run({
      ...LOW,
      meteringDevice: 'expansion-valve',
      machine: 'off-road',
    })
    expect(result.statements.join(' ')).toContain('does not prove the charge')
    expect(sources.map((source) => source.id)).toContain('rp-1173')
  })
})

describe('readings that go into nothing', () => {
  it.each([
    ['suctionTemperature', { ...HIGH, suctionTemperature: '52 °F' }],
    ['liquidTemperature', { ...LOW, liquidTemperature: '110 °F' }],
    ['dischargeTemperature', { ...LOW, dischargeTemperature: '160 °F' }],
    ['returnWetBulb', { ...LOW, returnWetBulb: '68 °F' }],
    ['superheatTarget', { ...LOW, superheatTarget: '9 °F', meteringDevice: 'expansion-valve' }],
    ['subcoolingTarget', { ...HIGH, subcoolingTarget: '9 °F', meteringDevice: 'orifice-tube' }],
  ])('%s is named', (field, input) => {
    const { warnings } = run(input)
    expect(warnings.map((warning) => warning.code)).toEqual(['reading-not-used'])
    expect(warnings[0]?.message).toContain(field)
  })
})

describe('bad input', () => {
  it.each<
    [what: string, input: Record<string, unknown>, code: ErrorCode, path: string | undefined]
  >([
    ['no pressure', { suctionTemperature: '52 °F' }, 'missing-input', 'suctionPressure'],
    ['no refrigerant', { refrigerant: undefined, ...LOW }, 'missing-input', 'refrigerant'],
    [
      'an unknown refrigerant',
      { refrigerant: 'R-134z', ...LOW },
      'unknown-refrigerant',
      'refrigerant',
    ],
    [
      'a pressure without gauge or absolute',
      { suctionPressure: '35 psi' },
      'ambiguous-quantity',
      'suctionPressure',
    ],
    ['a bare number', { suctionPressure: 35 }, 'ambiguous-quantity', 'suctionPressure'],
    ['0 K', { ...LOW, suctionTemperature: '0 K' }, 'out-of-range', 'suctionTemperature'],
    [
      'more vacuum than there is',
      { suctionPressure: '32 inHg vac' },
      'out-of-range',
      'suctionPressure',
    ],
    [
      'more vacuum than the altitude leaves',
      { suctionPressure: '28 inHg vac', altitude: '9000 ft' },
      'out-of-range',
      'suctionPressure',
    ],
    [
      'below the triple point',
      { refrigerant: 'CO2', suctionPressure: '10 psig' },
      'below-triple',
      'suctionPressure',
    ],
    [
      'a class in percent without its span',
      { ...LOW, lowGauge: 'en-837-1-class-1.6' },
      'missing-input',
      'lowGaugeSpan',
    ],
    [
      'a reading beyond its scale',
      { ...LOW, lowGauge: 'en-837-1-class-1.6', lowGaugeSpan: '30 psi' },
      'out-of-range',
      'lowGaugeSpan',
    ],
    ['an unknown class', { ...LOW, lowGauge: 'class-9' }, 'bad-input', 'lowGauge'],
    [
      'a temperature outside the class',
      { ...LOW, suctionTemperature: '-45 °C', thermometer: 'iec-60584-type-k-class-1' },
      'out-of-range',
      'thermometer',
    ],
    ['a negative contact error', { ...LOW, contactError: '-2 K' }, 'out-of-range', 'contactError'],
    ['half a range', { ...HIGH, subcoolingLow: '4 K' }, 'missing-input', 'subcoolingHigh'],
    [
      'a range that runs backwards',
      { ...HIGH, subcoolingLow: '8 K', subcoolingHigh: '4 K' },
      'bad-input',
      'subcoolingLow',
    ],
    [
      'a target below zero',
      { ...HIGH, subcoolingTarget: '-4 K' },
      'out-of-range',
      'subcoolingTarget',
    ],
    ['an unknown device', { ...LOW, meteringDevice: 'needle' }, 'bad-input', 'meteringDevice'],
    ['a field that is none', { ...LOW, superheat: '5 K' }, 'bad-input', 'superheat'],
  ])('%s is refused', (_, input, code, path) => {
    const error = refusal(input)
    expect(error.code).toBe(code)
    expect(error.path[0]).toBe(path)
  })
})

describe('readings as laws', () => {
  const psig = fc.double({ min: 5, max: 120, noNaN: true })
  const over = fc.double({ min: 0.1, max: 40, noNaN: true })

  it('superheat knows no unit system', () => {
    fc.assert(
      fc.property(psig, over, (value, superheatK) => {
        const r = refrigerant('R-134a')
        const pressurePa = value * 6_894.757_293_168_361 + 101_325
        const temperatureK = saturationTemperature(r, pressurePa, 'dew') + superheatK
        const us = run({
          suctionPressure: { value, unit: 'psig' },
          suctionTemperature: { value: temperatureK * 1.8 - 459.67, unit: '°F' },
          units: 'si',
          precise: true,
        }).result.superheat?.value
        const si = run({
          suctionPressure: { value: (pressurePa - 101_325) / 1e5, unit: 'bar g' },
          suctionTemperature: { value: temperatureK - 273.15, unit: '°C' },
          units: 'si',
          precise: true,
        }).result.superheat?.value
        expect(us).toBeCloseTo(superheatK, 6)
        expect(si).toBeCloseTo(superheatK, 6)
      }),
    )
  })

  it('superheat knows no altitude, only the absolute pressure', () => {
    const altitudeM = fc.double({ min: 0, max: 4_000, noNaN: true })
    fc.assert(
      fc.property(psig, over, altitudeM, (value, superheatK, metres) => {
        const r = refrigerant('R-134a')
        const pressurePa = quantity('gaugePressure', value, 'psig').si + 101_325
        const temperatureK = saturationTemperature(r, pressurePa, 'dew') + superheatK
        const gaugePa = pressurePa - standardAtmosphere(metres)
        const up = run({
          suctionPressure: { value: gaugePa, unit: 'Pa g' },
          suctionTemperature: { value: temperatureK, unit: 'K' },
          altitude: { value: metres, unit: 'm' },
          units: 'si',
          precise: true,
        }).result.superheat?.value
        expect(up).toBeCloseTo(superheatK, 6)
      }),
    )
  })

  it('subcooling and superheat never stand below zero without a finding', () => {
    const degrees = fc.double({ min: -40, max: 160, noNaN: true })
    const high = fc.double({ min: 60, max: 400, noNaN: true })
    const width = fc.option(fc.double({ min: 0, max: 8, noNaN: true }), { nil: undefined })
    fc.assert(
      fc.property(psig, degrees, high, degrees, width, (low, suction, liquid, line, plusMinus) => {
        const { result } = run({
          suctionPressure: { value: low, unit: 'psig' },
          suctionTemperature: {
            value: suction,
            unit: '°F',
            ...(plusMinus === undefined ? {} : { plusMinus }),
          },
          liquidPressure: { value: liquid, unit: 'psig' },
          liquidTemperature: {
            value: line,
            unit: '°F',
            ...(plusMinus === undefined ? {} : { plusMinus }),
          },
          machine: 'off-road',
          meteringDevice: 'expansion-valve',
          precise: true,
        })
        const ids = result.findings.map((finding) => finding.id)
        // A machine that does not pump, or swapped hoses: that is said instead.
        if (ids.includes('no-pressure-difference') || ids.includes('suction-above-discharge')) {
          return
        }
        if ((result.superheat?.value ?? 0) < 0) {
          expect(ids.some((id) => id === 'suction-colder-than-dew' || id === 'no-superheat')).toBe(
            true,
          )
        }
        if ((result.subcooling?.value ?? 0) < 0) {
          expect(
            ids.some((id) => id === 'liquid-hotter-than-bubble' || id === 'no-subcooling'),
          ).toBe(true)
        }
      }),
    )
  })

  it('a machine built to a superheat and a subcooling shows them', () => {
    const r = refrigerant('R-1234yf')
    const celsius = fc.double({ min: -10, max: 15, noNaN: true })
    const condensing = fc.double({ min: 30, max: 75, noNaN: true })
    const spread = fc.double({ min: 0.5, max: 20, noNaN: true })
    fc.assert(
      fc.property(celsius, condensing, spread, spread, (low, high, superheatK, subcoolingK) => {
        const at = (temperature: number, line: 'bubble' | 'dew') =>
          saturationPressure(r, temperature + 273.15, line)
        const { result } = run({
          refrigerant: 'R-1234yf',
          suctionPressure: { value: at(low, 'dew'), unit: 'Pa abs' },
          suctionTemperature: { value: low + superheatK, unit: '°C' },
          liquidPressure: { value: at(high, 'bubble'), unit: 'Pa abs' },
          liquidTemperature: { value: high - subcoolingK, unit: '°C' },
          units: 'si',
          precise: true,
        })
        // The curves hold 1 mK.
        expect(result.superheat?.value).toBeCloseTo(superheatK, 2)
        expect(result.subcooling?.value).toBeCloseTo(subcoolingK, 2)
      }),
    )
  })
})
