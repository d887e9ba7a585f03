import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CalcError, type ErrorCode } from '../../../shared/errors.ts'
import {
  type Accepted,
  KINDS,
  type Kind,
  parseQuantity,
  Quantity,
  readQuantity,
} from '../../../shared/quantity/index.ts'
import { refusalOf } from '../../support/refusal.ts'

const PRESSURE: Accepted<Kind> = ['gaugePressure', 'absolutePressure']

describe('text that is no quantity is refused, and the refusal says what would do', () => {
  it.each<[text: string, accepted: Accepted<Kind>, code: ErrorCode]>([
    // No unit.
    ['32', ['temperature'], 'ambiguous-quantity'],
    ['32', PRESSURE, 'ambiguous-quantity'],
    ['3.5', ['mass'], 'ambiguous-quantity'],
    // A unit that could be two things.
    ['32 psi', PRESSURE, 'ambiguous-quantity'],
    ['2.2 bar', PRESSURE, 'ambiguous-quantity'],
    ['10 inHg', PRESSURE, 'ambiguous-quantity'],
    ['8 oz', ['volume'], 'ambiguous-quantity'],
    // A unit of something else.
    ['32 psig', ['temperature'], 'wrong-kind'],
    ['52 °F', PRESSURE, 'wrong-kind'],
    ['8 fl oz', ['mass'], 'wrong-kind'],
    ['12 ft', ['mass'], 'wrong-kind'],
    ['101 kPa g', ['barometricPressure'], 'wrong-kind'],
    // A unit of nothing.
    ['32 florins', ['mass'], 'bad-quantity'],
    ['32 psigg', PRESSURE, 'bad-quantity'],
    // Nothing.
    ['', ['mass'], 'missing-input'],
    ['   ', ['mass'], 'missing-input'],
    // Not a number.
    ['NaN psig', PRESSURE, 'bad-quantity'],
    ['nan °F', ['temperature'], 'bad-quantity'],
    ['Infinity psig', PRESSURE, 'bad-quantity'],
    ['-inf kg', ['mass'], 'bad-quantity'],
    ['1e400 psig', PRESSURE, 'bad-quantity'],
    ['1/0 in', ['length'], 'bad-quantity'],
    ['0x20 psig', PRESSURE, 'bad-quantity'],
    ['--5 °C', ['temperature'], 'bad-quantity'],
    ['1.2.3 kg', ['mass'], 'bad-quantity'],
    ['. kg', ['mass'], 'bad-quantity'],
    ['psig', PRESSURE, 'bad-quantity'],
    ['null', ['mass'], 'bad-quantity'],
    // Digits of another script, full-width digits, superscripts in the amount.
    ['٣٢ psig', PRESSURE, 'bad-quantity'],
    ['３２ psig', PRESSURE, 'bad-quantity'],
    ['१२ kg', ['mass'], 'bad-quantity'],
    ['Ⅻ kg', ['mass'], 'bad-quantity'],
    // A comma could be a decimal mark or a thousands mark.
    ['1,5 bar g', PRESSURE, 'bad-quantity'],
    ['1,200 g', ['mass'], 'bad-quantity'],
    // What cannot exist.
    ['0 K', ['temperature'], 'out-of-range'],
    ['-1 K', ['temperature'], 'out-of-range'],
    ['-460 °F', ['temperature'], 'out-of-range'],
    ['-273.15 °C', ['temperature'], 'out-of-range'],
    ['0 psia', ['absolutePressure'], 'out-of-range'],
    ['-3 kPa abs', ['absolutePressure'], 'out-of-range'],
    ['-3 ft', ['length'], 'out-of-range'],
    ['-1 lb', ['mass'], 'out-of-range'],
    ['−1 lb', ['mass'], 'out-of-range'],
    ['-5 %', ['fraction'], 'out-of-range'],
    ['-10 min', ['duration'], 'out-of-range'],
    // Compounds in the wrong order, in the wrong kind, or unfinished.
    ['6 oz 2 lb', ['mass'], 'bad-quantity'],
    ['2 lb 6', ['mass'], 'ambiguous-quantity'],
    ['2 lb -6 oz', ['mass'], 'bad-quantity'],
    ['30 psig 5 kPa g', PRESSURE, 'bad-quantity'],
    ['1 lb 2 oz 3 g 4 mg 5 mg', ['mass'], 'bad-quantity'],
    // Uncertainties that are none.
    ['30 ± psig', PRESSURE, 'bad-quantity'],
    ['30 psig ± x', PRESSURE, 'bad-quantity'],
    ['30 ±-4 psig', PRESSURE, 'bad-quantity'],
    ['30 psig ±2 kg', PRESSURE, 'bad-quantity'],
    ['±', PRESSURE, 'bad-quantity'],
    ['30 psig ±-4', PRESSURE, 'bad-quantity'],
    ['30 ±1 psig ±2 psig', PRESSURE, 'bad-quantity'],
    ['30 psig ±1 ±2 psig', PRESSURE, 'bad-quantity'],
    ['2 ±1 lb 6 ±1 oz', ['mass'], 'bad-quantity'],
    // A vacuum below nothing: most likely the vacuum itself, by the letter a pressure.
    ['-5 inHg vac', PRESSURE, 'ambiguous-quantity'],
    ['−0.5 bar vac', PRESSURE, 'ambiguous-quantity'],
    // Exponents that make another unit, or none.
    ['5 in2', ['length'], 'bad-quantity'],
    ['5 m3', ['length'], 'wrong-kind'],
    ['10 m/s2', ['speed'], 'bad-quantity'],
    // A millipascal is no megapascal.
    ['500 mPa abs', PRESSURE, 'bad-quantity'],
    // Longer than any quantity.
    [`${'9'.repeat(90)} g`, ['mass'], 'bad-quantity'],
  ])('"%s"', (text, accepted, code) => {
    const error = refusalOf(() => parseQuantity(text, accepted))
    expect(error.code).toBe(code)
    expect(error.message).not.toBe('')
    expect(error.hint).not.toBe('')
  })
})

describe('what a refusal tells the person', () => {
  const said = (text: string, accepted: Accepted<Kind>) => {
    const { message, hint } = refusalOf(() => parseQuantity(text, accepted))
    return `${message} ${hint}`
  }

  it.each<[text: string, accepted: Accepted<Kind>, says: RegExp]>([
    ['32 psi', PRESSURE, /gauge or absolute.*32 psig.*32 psia.*32 psi vac/u],
    ['32 psi', ['gaugePressure'], /gauge or absolute/u],
    ['32 psi', ['absolutePressure'], /gauge or absolute/u],
    ['2.2 bar', PRESSURE, /gauge or absolute/u],
    ['32 psi', ['mass'], /pressure; a mass is needed.*340 g/u],
    ['8 oz', ['volume'], /weight where a volume is needed.*fl oz/u],
    ['8 oz', ['length'], /is a mass; a length is needed/u],
    ['8 g', ['volume'], /is a mass; a volume is needed/u],
    ['52 °F', ['mass'], /is a temperature; a mass is needed/u],
    ['3 parsec', ['length'], /"parsec" in "3 parsec" is not a unit of a length.*12 ft/u],
    ['32', PRESSURE, /has no unit.*32 psig.*320 kPa abs/u],
    ['-3 lb', ['mass'], /below zero, which a mass cannot be/u],
    ['0 K', ['temperature'], /at or below absolute zero, which a temperature cannot be/u],
    ['0 psia', ['absolutePressure'], /at or below zero, which an absolute pressure cannot be/u],
    ['-5 inHg vac', PRESSURE, /counts downward twice/u],
    ['', PRESSURE, /A gauge pressure or an absolute pressure is needed, and the text is empty/u],
  ])('"%s" for %j', (text, accepted, says) => {
    expect(said(text, accepted)).toMatch(says)
  })

  it.each<[kind: Kind, text: string]>([
    ['mass', '-1 g'],
    ['volume', '-1 mL'],
    ['length', '-1 in'],
    ['duration', '-1 s'],
    ['density', '-1 kg/m3'],
    ['massPerLength', '-1 g/m'],
    ['volumeFlow', '-1 cfm'],
    ['massFlow', '-1 g/yr'],
    ['leakRate', '-1 mbar L/s'],
    ['power', '-1 kW'],
    ['fraction', '-1 %'],
    ['barometricPressure', '-1 kPa'],
    ['barometricPressure', '0 kPa'],
    ['absolutePressure', '0 micron'],
    ['temperature', '-1 K'],
  ])('%s: %s cannot exist', (kind, text) => {
    expect(refusalOf(() => parseQuantity(text, [kind])).code).toBe('out-of-range')
  })

  it.each<[kind: Kind, text: string]>([
    ['mass', '0 g'],
    ['volume', '0 mL'],
    ['fraction', '0 %'],
    ['leakRate', '0 Pa m3/s'],
    ['gaugePressure', '0 psig'],
    ['gaugePressure', '0 inHg vac'],
    ['gaugePressure', '-3 psig'],
    ['altitude', '-150 ft'],
    ['temperatureDifference', '-4 K'],
    ['pressureDifference', '-4 kPa'],
    ['specificEnergy', '-4 kJ/kg'],
    ['specificEntropy', '-4 kJ/(kg K)'],
    ['speed', '-4 m/s'],
    ['temperature', '-40 °F'],
  ])('%s: %s can', (kind, text) => {
    expect(parseQuantity(text, [kind]).kind).toBe(kind)
  })
})

describe('values that are neither text nor a pair', () => {
  it.each<[what: string, raw: unknown, code: ErrorCode]>([
    ['a bare number', 32, 'ambiguous-quantity'],
    ['NaN', Number.NaN, 'ambiguous-quantity'],
    ['nothing', undefined, 'missing-input'],
    ['null', null, 'bad-quantity'],
    ['a list', ['32 psig'], 'bad-quantity'],
    ['a flag', true, 'bad-quantity'],
    ['a pair without a unit', { value: 32 }, 'bad-quantity'],
    ['a pair with text for its value', { value: '32', unit: 'psig' }, 'bad-quantity'],
    ['a pair of NaN', { value: Number.NaN, unit: 'psig' }, 'bad-quantity'],
    ['a pair of Infinity', { value: Number.POSITIVE_INFINITY, unit: 'psig' }, 'bad-quantity'],
    ['a pair with an empty unit', { value: 32, unit: '' }, 'ambiguous-quantity'],
    ['a pair with half a unit', { value: 32, unit: 'psi' }, 'ambiguous-quantity'],
    ['a pair with another unit', { value: 32, unit: '°F' }, 'wrong-kind'],
    [
      'a pair with a negative uncertainty',
      { value: 3, unit: 'psig', plusMinus: -1 },
      'bad-quantity',
    ],
    ['a vacuum below nothing', { value: -5, unit: 'inHg vac' }, 'ambiguous-quantity'],
    ['a pair with a field too many', { value: 3, unit: 'psig', extra: 1 }, 'bad-quantity'],
  ])('%s', (_, raw, code) => {
    const error = refusalOf(() => readQuantity(raw, PRESSURE))
    expect(error.code).toBe(code)
    expect(error.hint).not.toBe('')
  })
})

describe('whatever is typed', () => {
  const kind = fc.constantFrom(...KINDS)
  const scrap = fc.constantFrom(
    ' ', '.', '-', '−', '/', '±', '+/-', '%', '°', 'F', 'C', 'K', 'psig', 'psi', 'abs', 'vac', 'in', 'Hg', 'm3',
    'lb', 'oz', 'fl', 'e', 'E9', '3', '0', '12', '1/2', '٣', 'NaN', '²', '"', '\n', '\u0000', '😀',
  ) // biome-ignore format: a bag of scraps reads better in rows

  it('gives a finite quantity or a named error, never anything else', () => {
    fc.assert(
      fc.property(
        kind,
        fc.oneof(
          fc.string({ maxLength: 90 }),
          fc.string({ unit: 'grapheme', maxLength: 40 }),
          fc.array(scrap, { maxLength: 9 }).map((parts) => parts.join('')),
        ),
        (wanted, text) => {
          try {
            const read = parseQuantity(text, [wanted])
            expect(Number.isFinite(read.si)).toBe(true)
            expect(read.plusMinus === undefined || read.plusMinus >= 0).toBe(true)
            expect(Number.isFinite(read.plusMinus ?? 0)).toBe(true)
          } catch (error) {
            expect(error).toBeInstanceOf(CalcError)
          }
        },
      ),
      { numRuns: 3_000 },
    )
  })

  it('takes any pair of a value and a unit the same way', () => {
    fc.assert(
      fc.property(
        kind,
        fc.double(),
        fc.string({ maxLength: 12 }),
        fc.double(),
        (wanted, value, unit, plusMinus) => {
          try {
            const read = readQuantity({ value, unit, plusMinus }, [wanted])
            expect(Number.isFinite(read.si)).toBe(true)
            expect(Number.isFinite(read.plusMinus ?? 0)).toBe(true)
          } catch (error) {
            expect(error).toBeInstanceOf(CalcError)
          }
        },
      ),
    )
  })

  it('answers a hostile text, by a quantity or by a refusal', () => {
    const hostile = [
      `${'1 '.repeat(40)}`,
      `${'-'.repeat(79)}g`,
      `${'1/'.repeat(39)}1`,
      `1 ${' '.repeat(70)}g`,
      `${'1e'.repeat(39)} g`,
      `1 ${'m3'.repeat(38)}`,
    ]
    for (const text of hostile) {
      const answer = refusalOrValue(text)
      expect(answer instanceof CalcError || answer instanceof Quantity).toBe(true)
    }
  })

  const refusalOrValue = (text: string) => {
    try {
      return parseQuantity(text, ['mass'])
    } catch (error) {
      return error
    }
  }
})
