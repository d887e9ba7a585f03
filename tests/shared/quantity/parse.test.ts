import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CalcError } from '../../../shared/errors.ts'
import {
  type Accepted,
  KINDS,
  type Kind,
  parseQuantity,
  readQuantity,
  UNITS,
} from '../../../shared/quantity/index.ts'

const PSI = 6_894.757_293_168_361
const IN_HG = 3_386.388_640_341
const OZ = 0.028_349_523_125
const PRESSURE: Accepted<Kind> = ['gaugePressure', 'absolutePressure']

describe('a quantity as people write it', () => {
  it.each<[text: string, accepted: Accepted<Kind>, kind: Kind, si: number]>([
    ['32 psig', PRESSURE, 'gaugePressure', 32 * PSI],
    ['32psig', PRESSURE, 'gaugePressure', 32 * PSI],
    ['32 PSIG', PRESSURE, 'gaugePressure', 32 * PSI],
    ['2.2 bar g', PRESSURE, 'gaugePressure', 2.2e5],
    ['2.2 bar(g)', PRESSURE, 'gaugePressure', 2.2e5],
    ['2.2barg', PRESSURE, 'gaugePressure', 2.2e5],
    ['220 kPa abs', PRESSURE, 'absolutePressure', 2.2e5],
    ['15 inHg vac', PRESSURE, 'gaugePressure', -15 * IN_HG],
    ['15 in Hg vacuum', PRESSURE, 'gaugePressure', -15 * IN_HG],
    ['500 micron', PRESSURE, 'absolutePressure', 66.661_193_707_5],
    ['500 microns', PRESSURE, 'absolutePressure', 66.661_193_707_5],
    ['-3 psig', PRESSURE, 'gaugePressure', -3 * PSI],
    ['52 °F', ['temperature'], 'temperature', 284.261_111_111_111],
    ['52F', ['temperature'], 'temperature', 284.261_111_111_111],
    ['52 deg F', ['temperature'], 'temperature', 284.261_111_111_111],
    ['11C', ['temperature'], 'temperature', 284.15],
    ['11 º C', ['temperature'], 'temperature', 284.15],
    ['-5 °C', ['temperature'], 'temperature', 268.15],
    ['−5 °C', ['temperature'], 'temperature', 268.15],
    ['–5 °C', ['temperature'], 'temperature', 268.15],
    ['9 °F', ['temperatureDifference'], 'temperatureDifference', 5],
    ['-4 K', ['temperatureDifference'], 'temperatureDifference', -4],
    ['2 lb 6 oz', ['mass'], 'mass', 38 * OZ],
    ['2lb 6oz', ['mass'], 'mass', 38 * OZ],
    ['340 g', ['mass'], 'mass', 0.34],
    ['1.1 kg', ['mass'], 'mass', 1.1],
    ['.5 kg', ['mass'], 'mass', 0.5],
    ['5. kg', ['mass'], 'mass', 5],
    ['1e3 g', ['mass'], 'mass', 1],
    ['8 fl oz', ['volume'], 'volume', 236.588_236_5e-6],
    ['240 mL', ['volume'], 'volume', 240e-6],
    ['240 cc', ['volume'], 'volume', 240e-6],
    ['10 cm³', ['volume'], 'volume', 10e-6],
    ['3/8 in', ['length'], 'length', 0.009_525],
    ['1 1/8 in', ['length'], 'length', 0.028_575],
    ['1-1/8"', ['length'], 'length', 0.028_575],
    ['5 ft 3 in', ['length'], 'length', 1.6002],
    ['12\'6"', ['length'], 'length', 3.81],
    ['12ft3in', ['length'], 'length', 3.7338],
    ['2lb6oz', ['mass'], 'mass', 38 * OZ],
    ['1h30min', ['duration'], 'duration', 5_400],
    ['1 1/2 lb', ['mass'], 'mass', 24 * OZ],
    ['1e5 Pa abs', PRESSURE, 'absolutePressure', 1e5],
    ['-0 psig', PRESSURE, 'gaugePressure', 0],
    ['29 " Hg vac', PRESSURE, 'gaugePressure', -29 * IN_HG],
    ['75 lb/ft^3', ['density'], 'density', (75 * 16 * OZ) / 0.3048 ** 3],
    ['52 ℉', ['temperature'], 'temperature', 284.261_111_111_111],
    ['1 h 30 min', ['duration'], 'duration', 5_400],
    ['29.92 inHg', ['barometricPressure'], 'barometricPressure', 29.92 * IN_HG],
    ['1013 hPa', ['barometricPressure'], 'barometricPressure', 101_300],
    ['55 %', ['fraction'], 'fraction', 0.55],
    ['0.6 oz/ft', ['massPerLength'], 'massPerLength', (0.6 * OZ) / 0.3048],
  ])('"%s"', (text, accepted, kind, si) => {
    const read = parseQuantity(text, accepted)
    expect(read.kind).toBe(kind)
    expect(Math.abs(read.si - si)).toBeLessThanOrEqual(1e-9 * Math.abs(si))
    expect(read.plusMinus).toBeUndefined()
  })
})

describe('a reading with its uncertainty', () => {
  it.each<[text: string, accepted: Accepted<Kind>, si: number, plusMinus: number]>([
    ['210 ±4 psig', PRESSURE, 210 * PSI, 4 * PSI],
    ['210 psig ±4 psi', PRESSURE, 210 * PSI, 4 * PSI],
    ['210 psig ± 20 kPa', PRESSURE, 210 * PSI, 20e3],
    ['210 +/- 4 psig', PRESSURE, 210 * PSI, 4 * PSI],
    ['210 psig ±2 %', PRESSURE, 210 * PSI, 4.2 * PSI],
    ['52 ±2 °F', ['temperature'], 284.261_111_111_111, 10 / 9],
    ['52 °F ±1 K', ['temperature'], 284.261_111_111_111, 1],
    ['10 ±0.5 inHg vac', PRESSURE, -10 * IN_HG, 0.5 * IN_HG],
    ['50 ±2 %', ['fraction'], 0.5, 0.02],
    // Percent of what is written, not of the distance from absolute zero.
    ['50 °F ±10 %', ['temperature'], 283.15, 25 / 9],
    ['-20 °C ±5 %', ['temperature'], 253.15, 1],
    ['300 K ±1 %', ['temperature'], 300, 3],
    ['52 °F ±1.8 °R', ['temperature'], 284.261_111_111_111, 1],
    ['47 psia ±7 kPa', PRESSURE, 47 * PSI, 7e3],
    ['500 micron ±10 Pa', PRESSURE, 66.661_193_707_5, 10],
    ['210 ±2% psig', PRESSURE, 210 * PSI, 4.2 * PSI],
    ['210 ±0 psig', PRESSURE, 210 * PSI, 0],
    ['10 inHg vac ±5 %', PRESSURE, -10 * IN_HG, 0.5 * IN_HG],
    ['2 lb 6 oz ±1 oz', ['mass'], 38 * OZ, OZ],
    ['2 lb 6 oz ±10 %', ['mass'], 38 * OZ, 3.8 * OZ],
    ['3/8 ±1/64 in', ['length'], 0.009_525, 0.0254 / 64],
    ['-3 ±1 psig', PRESSURE, -3 * PSI, PSI],
    ['50 % ±2', ['fraction'], 0.5, 0.02],
    ['1.1 ±0.05 kg', ['mass'], 1.1, 0.05],
    ['10 ±1 cm3', ['volume'], 10e-6, 1e-6],
    ['1013 ±2 hPa', ['barometricPressure'], 101_300, 200],
  ])('"%s"', (text, accepted, si, plusMinus) => {
    const read = parseQuantity(text, accepted)
    expect(Math.abs(read.si - si)).toBeLessThanOrEqual(1e-9 * Math.abs(si))
    expect(Math.abs((read.plusMinus ?? 0) - plusMinus)).toBeLessThanOrEqual(1e-9 * plusMinus)
  })

  it('remembers the unit that it was written in, of the first part', () => {
    expect(parseQuantity('2lb 6 ounces', ['mass']).written).toBe('lb')
    expect(parseQuantity('210 ±4 PSI gauge', PRESSURE).written).toBe('psig')
    expect(readQuantity({ value: 3, unit: 'inches' }, ['length']).written).toBe('in')
  })

  it('takes the pair of value and unit for the same reading', () => {
    const text = parseQuantity('210 ±4 psig', PRESSURE)
    const pair = readQuantity({ value: 210, unit: 'psig', plusMinus: 4 }, PRESSURE)
    expect(pair).toEqual(text)
  })
})

describe('a plain quantity', () => {
  it('is read at once as it is read with care', () => {
    // With a sign or a second space it is no plain one.
    const amount = fc
      .double({ min: 0, max: 1e5, noNaN: true })
      .map((value) => value.toFixed(3).replace(/\.?0+$/u, ''))
    const units = KINDS.flatMap((kind) =>
      UNITS[kind].flatMap(({ symbol, spellings }) =>
        [symbol, ...spellings].map((spelled) => [kind, spelled] as const),
      ),
    )
    const read = (text: string, kind: Kind) => {
      try {
        return { ...parseQuantity(text, [kind]) }
      } catch (error) {
        return error instanceof CalcError ? error.code : error
      }
    }
    fc.assert(
      fc.property(
        fc.constantFrom(...units),
        amount,
        fc.option(amount),
        ([kind, unit], value, width) => {
          const plusMinus = width === null ? '' : ` ±${width}`
          const plain = `${value}${plusMinus} ${unit}`
          expect(read(plain, kind)).toEqual(read(`  +${value}${plusMinus}  ${unit} `, kind))
        },
      ),
      { numRuns: 500 },
    )
  })
})
