import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { TRADE_BOUNDS } from '../../../shared/quantity/bounds.ts'
import { KINDS, parseQuantity, readQuantity, UNITS } from '../../../shared/quantity/index.ts'
import { refusalOf } from '../../support/refusal.ts'

describe('what no trade meets', () => {
  it.each([
    ['99999999 lb', 'mass'],
    ['1e22 psig', 'gaugePressure'],
    ['1e308 oz', 'mass'],
    ['5000 °C', 'temperature'],
    ['100 ±1e9 psig', 'gaugePressure'],
    ['-40 bar g', 'gaugePressure'],
  ] as const)('%s is refused as bad input', (text, kind) => {
    const error = refusalOf(() => parseQuantity(text, [kind]))
    expect(error.code).toBe('bad-quantity')
    expect(error.message).toContain('not one that the trade meets')
  })

  it.each(KINDS)('%s: no figure or ± beyond the bounds gets in, in any unit or form', (kind) => {
    const [low, high] = TRADE_BOUNDS[kind]
    fc.assert(
      fc.property(
        fc.constantFrom(...UNITS[kind]),
        fc.double({ min: 1.01, max: 1e280, noNaN: true }),
        fc.boolean(),
        (unit, times, asPair) => {
          const value = (times * high - unit.offset) / unit.factor
          if (!Number.isFinite(value)) return
          const read = () =>
            asPair
              ? readQuantity({ value, unit: unit.symbol }, [kind])
              : parseQuantity(`${value} ${unit.symbol}`, [kind])
          expect(['bad-quantity', 'ambiguous-quantity']).toContain(refusalOf(read).code)
          const inside = ((low + high) / 2 - unit.offset) / unit.factor
          const wide = () =>
            readQuantity({ value: inside, unit: unit.symbol, plusMinus: Math.abs(value) * 2 }, [
              kind,
            ])
          if (unit.offset === 0 && unit.factor > 0)
            expect(refusalOf(wide).code).toBe('bad-quantity')
        },
      ),
    )
  })

  // Both sides of every bound, a tenth apart at most, in a unit that is written.
  it.each([
    ['temperature', '-170 °C', '-175 °C'],
    ['temperature', '720 °C', '730 °C'],
    ['temperatureDifference', '890 K', '910 K'],
    ['temperatureDifference', '-890 K', '-910 K'],
    ['gaugePressure', '990 bar g', '1010 bar g'],
    ['gaugePressure', '1.95 bar vac', '2.05 bar vac'],
    ['absolutePressure', '990 bar abs', '1010 bar abs'],
    ['barometricPressure', '1990 hPa', '2010 hPa'],
    ['pressureDifference', '990 bar', '1010 bar'],
    ['pressureDifference', '-990 bar', '-1010 bar'],
    ['mass', '220000 lb', '221000 lb'],
    ['volume', '990 m3', '1010 m3'],
    ['length', '9.9 km', '10.1 km'],
    ['altitude', '49 km', '51 km'],
    ['altitude', '-49 km', '-51 km'],
    ['duration', '316 yr', '318 yr'],
    ['density', '29.5 g/mL', '30.5 g/mL'],
    ['massPerLength', '990 kg/m', '1010 kg/m'],
    ['volumeFlow', '990 m3/s', '1010 m3/s'],
    ['massFlow', '990 kg/s', '1010 kg/s'],
    ['leakRate', '990000 Pa m3/s', '1010000 Pa m3/s'],
    ['specificEnergy', '99000 kJ/kg', '101000 kJ/kg'],
    ['specificEnergy', '-99000 kJ/kg', '-101000 kJ/kg'],
    ['specificEntropy', '990 kJ/(kg K)', '1010 kJ/(kg K)'],
    ['specificEntropy', '-990 kJ/(kg K)', '-1010 kJ/(kg K)'],
    ['speed', '9900 m/s', '10100 m/s'],
    ['speed', '-9900 m/s', '-10100 m/s'],
    ['power', '990000 kW', '1010000 kW'],
    ['fraction', '9900 %', '10100 %'],
  ] as const)('%s: %s is read, %s is not', (kind, inside, outside) => {
    expect(parseQuantity(inside, [kind]).kind).toBe(kind)
    expect(refusalOf(() => parseQuantity(outside, [kind])).code).toBe('bad-quantity')
  })

  it('lets what shops write through', () => {
    for (const [text, kind] of [
      ['3000 psig', 'gaugePressure'],
      ['-150 °F', 'temperature'],
      ['500 micron', 'absolutePressure'],
      ['29.9 inHg vac', 'gaugePressure'],
      ['0.05 oz', 'mass'],
      ['12 yr', 'duration'],
      ['100 %', 'fraction'],
    ] as const) {
      expect(parseQuantity(text, [kind]).kind).toBe(kind)
    }
  })
})

describe('how shops write', () => {
  it.each([
    ['9,000 ft', 'altitude', 2743.2],
    ['20in vac', 'gaugePressure', -67_727.8],
    ['15"hg', 'gaugePressure', -50_795.8],
    ['3lb8oz', 'mass', 1.587_573],
    ['1,200 psig', 'gaugePressure', 8_273_709],
  ] as const)('%s', (text, kind, si) => {
    expect(Math.abs(parseQuantity(text, [kind]).si / si - 1)).toBeLessThan(1e-6)
  })

  it('asks where a comma may be a decimal mark', () => {
    expect(refusalOf(() => parseQuantity('1,500 kg', ['mass'])).code).toBe('bad-quantity')
    expect(refusalOf(() => parseQuantity('1,5 bar g', ['gaugePressure'])).code).toBe('bad-quantity')
  })

  it('names the two ways to write a psi', () => {
    const { hint } = refusalOf(() => parseQuantity('32psi', ['gaugePressure', 'absolutePressure']))
    expect(hint).toBe(
      'Write 32 psig as a gauge shows it, 32 psia for an absolute pressure, or 32 psi vac for a vacuum.',
    )
  })
})
