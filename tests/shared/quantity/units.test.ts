import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { TRADE_BOUNDS } from '../../../shared/quantity/bounds.ts'
import {
  KINDS,
  type Kind,
  parseQuantity,
  Quantity,
  readQuantity,
  requireUnit,
  show,
  UNITS,
} from '../../../shared/quantity/index.ts'

const everyUnit = KINDS.flatMap((kind) => UNITS[kind].map((unit) => ({ kind, unit })))

/** Figures of a kind that the trade meets, SI, small and large ones alike; positive so that texts need no sign. */
const figureOf = (kind: Kind) => {
  const [low, high] = TRADE_BOUNDS[kind]
  const least = 1.001 * Math.max(low, high * 1e-9)
  return fc
    .double({ min: 0, max: 0.99, noNaN: true })
    .map((share) => least * (high / least) ** share)
}
/** One figure of a kind inside its bounds that a vacuum unit can show too, SI. */
const plainOf = (kind: Kind) =>
  Math.max(TRADE_BOUNDS[kind][0], 0) * 0.7 + 0.3 * Math.min(TRADE_BOUNDS[kind][1], 1e5)

const relative = (a: number, b: number) =>
  Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b), 1e-300)

describe('every unit of every kind', () => {
  it.each(everyUnit)('$kind: reads what it prints in $unit.symbol', ({ kind, unit }) => {
    fc.assert(
      fc.property(figureOf(kind), (si) => {
        // A vacuum unit counts downward, and not below a perfect vacuum.
        const quantity = new Quantity<Kind>(kind, unit.factor < 0 ? -si * 1e-3 : si)
        const shown = show(quantity.in(unit.symbol), { units: 'si', precise: true })
        expect(shown.unit).toBe(unit.symbol)
        const asText = parseQuantity(`${shown.value} ${shown.unit}`, [kind])
        const asPair = readQuantity(shown, [kind])
        const noise = 1e-12 * (Math.abs(quantity.si) + Math.abs(unit.offset))
        expect(Math.abs(asText.si - quantity.si)).toBeLessThanOrEqual(noise)
        expect(Math.abs(asPair.si - quantity.si)).toBeLessThanOrEqual(noise)
      }),
      { numRuns: 20 },
    )
  })

  it.each(everyUnit)('$kind: reads $unit.symbol in every spelling', ({ kind, unit }) => {
    const si = unit.factor < 0 ? -plainOf(kind) : plainOf(kind)
    const value = Number(((si - unit.offset) / unit.factor).toPrecision(6))
    for (const spelling of unit.spellings) {
      const read = parseQuantity(`${value} ${spelling}`, [kind])
      expect(relative(read.si, value * unit.factor + unit.offset), spelling).toBeLessThan(1e-12)
    }
  })

  it.each(KINDS)('%s: has no spelling for two units', (kind) => {
    const seen = new Map<string, string>()
    for (const unit of UNITS[kind]) {
      for (const name of new Set([unit.symbol.toLowerCase(), ...unit.spellings])) {
        expect(seen.get(name) ?? unit.symbol, name).toBe(unit.symbol)
        seen.set(name, unit.symbol)
      }
    }
  })

  it.each(KINDS)('%s: prints in both systems what reads back to the same figure', (kind) => {
    fc.assert(
      fc.property(figureOf(kind), (si) => {
        const shown = show(new Quantity<Kind>(kind, si), { units: 'both', precise: true })
        for (const side of [shown, ...(shown.also ? [shown.also] : [])]) {
          const back = parseQuantity(`${side.value} ${side.unit}`, [kind])
          // Units with a zero of their own lose digits of a small figure to the offset.
          const offset = Math.abs(requireUnit(kind, side.unit).offset)
          expect(Math.abs(back.si - si)).toBeLessThanOrEqual(1e-12 * (si + offset))
        }
      }),
    )
  })
})

describe('figures that are exact by definition', () => {
  // NIST SP 811 (2008), appendix B: exact unless the digits say otherwise.
  it.each([
    ['14.6959487755 psia', 'absolutePressure', 101_325, 1e-4],
    ['1 lb', 'mass', 0.453_592_37, 0],
    ['16 oz', 'mass', 0.453_592_37, 1e-16],
    ['1 fl oz', 'volume', 29.573_529_562_5e-6, 1e-20],
    ['12 in', 'length', 0.3048, 1e-16],
    ['1 ft3', 'volume', 0.028_316_846_592, 1e-16],
    ['760 mmHg abs', 'absolutePressure', 101_325.014, 1e-3],
    ['1 atm abs', 'absolutePressure', 101_325, 0],
    ['1 Btu/lb', 'specificEnergy', 2_326, 0],
    ['1000 micron', 'absolutePressure', 133.322_387, 1e-6],
    ['32 °F', 'temperature', 273.15, 1e-12],
    ['-40 °F', 'temperature', 233.15, 1e-12],
    ['9 °F', 'temperatureDifference', 5, 1e-15],
  ] as const)('%s', (text, kind, si, tolerance) => {
    expect(Math.abs(parseQuantity(text, [kind]).si - si)).toBeLessThanOrEqual(tolerance)
  })
})
