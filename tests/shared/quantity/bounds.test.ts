import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { TRADE_BOUNDS } from '../../../shared/quantity/bounds.ts'
import {
  KINDS,
  type Kind,
  parseQuantity,
  readQuantity,
  UNITS,
} from '../../../shared/quantity/index.ts'
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

describe('each bound', () => {
  /** Written again, in the SI unit of the kind: both ends are still inside. */
  const ENDS: readonly (readonly [kind: Kind, unit: string, low: number, high: number])[] = [
    ['temperature', 'K', 100, 1_000],
    ['temperatureDifference', 'K', -900, 900],
    ['gaugePressure', 'Pa g', -200_000, 100_000_000],
    ['absolutePressure', 'Pa abs', 0, 100_000_000],
    ['barometricPressure', 'Pa', 0, 200_000],
    ['pressureDifference', 'Pa', -100_000_000, 100_000_000],
    ['mass', 'kg', 0, 100_000],
    ['volume', 'm3', 0, 1_000],
    ['length', 'm', 0, 10_000],
    ['altitude', 'm', -50_000, 50_000],
    ['duration', 's', 0, 10_000_000_000],
    ['density', 'kg/m3', 0, 30_000],
    ['massPerLength', 'kg/m', 0, 1_000],
    ['volumeFlow', 'm3/s', 0, 1_000],
    ['massFlow', 'kg/s', 0, 1_000],
    ['leakRate', 'Pa m3/s', 0, 1_000_000],
    ['specificEnergy', 'J/kg', -100_000_000, 100_000_000],
    ['specificEntropy', 'J/(kg K)', -1_000_000, 1_000_000],
    ['speed', 'm/s', -10_000, 10_000],
    ['power', 'W', 0, 1_000_000_000],
    ['fraction', '%', 0, 10_000],
  ]
  const read = (kind: Kind, value: number, unit: string, plusMinus = 0) =>
    readQuantity({ value, unit, plusMinus }, [kind])

  it('is one of a kind', () => {
    expect(ENDS.map(([kind]) => kind).sort()).toEqual([...KINDS].sort())
  })

  it.each(ENDS)('of %s in %s is itself inside, and a millionth more is not', (...end) => {
    const [kind, unit, low, high] = end
    const beyond = 1 + 1e-6
    expect(read(kind, high, unit).kind).toBe(kind)
    expect(refusalOf(() => read(kind, high * beyond, unit)).code).toBe('bad-quantity')
    if (low !== 0) {
      expect(read(kind, low, unit).kind).toBe(kind)
      expect(refusalOf(() => read(kind, low - 1e-6 * Math.abs(low), unit)).code).toBe(
        'bad-quantity',
      )
    }
    // A ± may be as large as the larger bound, and no larger.
    const widest = Math.max(Math.abs(low), high)
    expect(read(kind, high, unit, widest).plusMinus).toBeGreaterThan(0)
    expect(refusalOf(() => read(kind, high, unit, widest * beyond)).code).toBe('bad-quantity')
  })
})
