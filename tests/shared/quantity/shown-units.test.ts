import { describe, expect, it } from 'vitest'
import { type Kind, Quantity, quantity, show } from '../../../shared/quantity/index.ts'

/** Value and unit by the unit system, of a figure without a ±. */
const shown = (kind: Kind, si: number) => {
  const text = (units: 'us' | 'si') => {
    const { value, unit } = show(new Quantity<Kind>(kind, si), { units, precise: false })
    return `${value} ${unit}`
  }
  return [text('us'), text('si')]
}

describe('what a figure without a ± is shown as, in either unit system', () => {
  // On both sides of each size at which the unit changes; the digits are those a shop can read.
  it.each<[kind: Kind, si: number, us: string, si: string]>([
    ['temperature', 294.32, '70.1 °F', '21.2 °C'],
    ['temperatureDifference', 5.06, '9.11 °F', '5.06 K'],
    ['gaugePressure', 220_632, '32 psig', '220.6 kPa g'],
    ['gaugePressure', -33_864, '10 inHg vac', '-33.9 kPa g'],
    ['absolutePressure', 2_999, '22494 micron', '2999 Pa abs'],
    ['absolutePressure', 3_001, '0.435 psia', '3 kPa abs'],
    ['absolutePressure', 66.66, '500 micron', '66.7 Pa abs'],
    ['absolutePressure', 500_000, '72.5 psia', '500 kPa abs'],
    ['barometricPressure', 101_325, '29.92 inHg', '101.33 kPa'],
    ['pressureDifference', 499, '3743 micron', '499 Pa'],
    ['pressureDifference', -499, '-3743 micron', '-499 Pa'],
    ['pressureDifference', 501, '0.0727 psi', '0.501 kPa'],
    ['mass', 0.9, '31.75 oz', '900 g'],
    ['mass', 0.908, '2.002 lb', '908 g'],
    ['mass', 1.99, '4.387 lb', '1990 g'],
    ['mass', 2.01, '4.431 lb', '2.01 kg'],
    ['volume', 0.0019, '64.25 fl oz', '1900 mL'],
    ['volume', 0.0021, '71.01 fl oz', '2.1 L'],
    ['volume', 0.0039, '131.87 fl oz', '3.9 L'],
    ['volume', 0.0041, '1.08 gal', '4.1 L'],
    ['length', 0.49, '19.291 in', '490 mm'],
    ['length', 0.51, '20.079 in', '0.51 m'],
    ['length', 0.59, '23.228 in', '0.59 m'],
    ['length', 0.61, '2 ft', '0.61 m'],
    ['altitude', 1524.3, '5001 ft', '1524 m'],
    ['duration', 119, '119 s', '119 s'],
    ['duration', 121, '2.02 min', '2.02 min'],
    ['duration', 7_190, '119.8 min', '119.8 min'],
    ['duration', 7_300, '2.03 h', '2.03 h'],
    ['duration', 172_000, '47.8 h', '47.8 h'],
    ['duration', 180_000, '2.08 d', '2.08 d'],
    ['density', 1206.71, '75.332 lb/ft3', '1206.7 kg/m3'],
    ['massPerLength', 0.05601, '0.602 oz/ft', '56 g/m'],
    ['volumeFlow', 0.00283168, '6 cfm', '170 L/min'],
    ['massFlow', 0.9e-6, '1002 oz/yr', '28402 g/yr'],
    ['massFlow', 1.1e-6, '0.00233 oz/min', '0.066 g/min'],
    ['leakRate', 1.2345e-6, '0.00000123 Pa m3/s', '0.00000123 Pa m3/s'],
    ['specificEnergy', 177_790, '76.44 Btu/lb', '177.79 kJ/kg'],
    ['specificEntropy', 1_000, '0.2388 Btu/(lb °F)', '1 kJ/(kg K)'],
    ['speed', 3.048, '10 ft/s', '3.05 m/s'],
    ['power', 5_000, '17061 Btu/h', '5 kW'],
    ['fraction', 0.5512, '55.1 %', '55.1 %'],
    ['fraction', 0.00101, '0.101 %', '0.101 %'],
    ['fraction', 0.00099, '990 ppm', '990 ppm'],
    ['fraction', 0, '0 %', '0 %'],
    ['density', 0, '0 lb/ft3', '0 kg/m3'],
    // Large ones: how many decimals are kept where three figures are long past.
    ['temperature', 423.456, '302.6 °F', '150.3 °C'],
    ['temperatureDifference', 123.456, '222.2 °F', '123.5 K'],
    ['gaugePressure', 2_206_321, '320 psig', '2206.3 kPa g'],
    ['gaugePressure', -99_999, '29.53 inHg vac', '-100 kPa g'],
    ['absolutePressure', 2_206_321, '320 psia', '2206.3 kPa abs'],
    ['pressureDifference', 1_234_567, '179.06 psi', '1234.57 kPa'],
    ['pressureDifference', 123.456, '926 micron', '123.5 Pa'],
    ['mass', 123.456, '272.174 lb', '123.456 kg'],
    ['mass', 0.123456, '4.35 oz', '123.5 g'],
    ['volume', 1.23456, '326.14 gal', '1234.56 L'],
    ['volume', 0.00123456, '41.75 fl oz', '1234.6 mL'],
    ['length', 123.456, '405.04 ft', '123.46 m'],
    ['length', 0.123456, '4.86 in', '123.46 mm'],
    ['duration', 123_456.7, '34.3 h', '34.3 h'],
    ['duration', 1_234_567, '14.3 d', '14.3 d'],
    ['specificEnergy', 1_234_567, '530.77 Btu/lb', '1234.57 kJ/kg'],
    ['specificEntropy', 12_345, '2.9486 Btu/(lb °F)', '12.345 kJ/(kg K)'],
    ['speed', 123.456, '405.04 ft/s', '123.46 m/s'],
    ['fraction', 1.23456, '123.5 %', '123.5 %'],
  ])('%s of %d', (kind, si, us, metric) => {
    expect(shown(kind, si)).toEqual([us, metric])
  })

  // At the size itself the larger unit begins, on either side of zero.
  it.each<[kind: Kind, si: number, us: string, si: string]>([
    ['absolutePressure', 3_000, 'psia', 'kPa abs'],
    ['pressureDifference', 500, 'psi', 'kPa'],
    ['mass', 2, 'lb', 'kg'],
    ['mass', 0.907_184_74, 'lb', 'g'],
    ['volume', 0.002, 'fl oz', 'L'],
    ['volume', 0.004, 'gal', 'L'],
    ['length', 0.5, 'in', 'm'],
    ['length', 0.6, 'ft', 'm'],
    ['duration', 120, 'min', 'min'],
    ['duration', 7_200, 'h', 'h'],
    ['duration', 172_800, 'd', 'd'],
    ['fraction', 0.001, '%', '%'],
    ['gaugePressure', 0, 'psig', 'kPa g'],
  ])('%s of exactly %d', (kind, size, us, metric) => {
    for (const si of new Set(kind === 'pressureDifference' ? [size, -size] : [size])) {
      const units = shown(kind, si).map((text) => text.replace(/^\S+ /u, ''))
      expect(units).toEqual([us, metric])
    }
  })

  it('sizes a range by its largest figure, whichever side of the change the others are on', () => {
    const small = quantity('mass', 3, 'oz').sized(quantity('mass', 50, 'lb').si)
    expect(show(small, { units: 'us', precise: false })).toEqual({ value: 0.188, unit: 'lb' })
  })
})
