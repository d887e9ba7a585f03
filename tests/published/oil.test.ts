import { describe, expect, it } from 'vitest'
import data from '../../data/service/oil.json' with { type: 'json' }
import { oil } from '../../shared/service/oil.ts'
import { refusalOf } from '../support/refusal.ts'

const si = { units: 'si', precise: true, refrigerant: 'R-134a' } as const
const OUNCE_G = 28.349523125
const FL_OZ_ML = 29.5735295625

const total = (longHose: string, grams: number) =>
  oil.run({ ...si, longHose, labelCharge: { value: grams, unit: 'g' } }).result.oilTotal?.value ??
  Number.NaN

describe('oil of long-hose systems', () => {
  // Sanden SD service manual, section 13.4 (cld.bz/bookdata/bq8uYh page 986), prints each formula
  // twice. Its ounce form is rounded: it asks for 2 to 8 % more than its gram form, which is ours.
  it.each([8, 16, 24, 32, 40, 48, 56])(
    'agrees with the ounce form of the same page at %s oz',
    (ounces) => {
      const five = (ounces * 0.125 + 1.35) * FL_OZ_ML
      const seven = ((ounces * 0.06 + 2.2) / 0.9) * FL_OZ_ML
      for (const ratio of [
        total('total-by-charge-five-cylinder', ounces * OUNCE_G) / five,
        total('total-by-charge-seven-cylinder', ounces * OUNCE_G) / seven,
      ]) {
        expect(ratio).toBeGreaterThan(0.92)
        expect(ratio).toBeLessThan(0.99)
      }
    },
  )

  // New Holland tractor service manual: 186 to 228 mL of oil for 1.1 kg of R-134a. Another maker's
  // compressor: the formula lies below that by 5 to 25 %, which is why the maker goes first.
  it('is of the size that a tractor manual prints for its own compressor', () => {
    for (const rule of ['total-by-charge-five-cylinder', 'total-by-charge-seven-cylinder']) {
      expect(total(rule, 1100)).toBeGreaterThan(186 * 0.75)
      expect(total(rule, 1100)).toBeLessThan(228)
    }
  })
})

describe('oil per part', () => {
  // Each row as its service manual prints it; the spread of the answer must hold all of them.
  it.each([
    ['condenser', 1, 'GM Pontiac Grand Am 1995'],
    ['condenser', 40 / FL_OZ_ML, 'Land Rover Freelander 2002'],
    ['condenser', 0, 'Subaru Legacy 1997'],
    ['evaporator', 3, 'GM Chevrolet Corvette 1997'],
    ['evaporator', 1, 'GMC C2500 1994, with one of the compressors'],
    ['evaporator', 70 / FL_OZ_ML, 'Subaru Legacy 1997'],
    ['evaporator', 20 / FL_OZ_ML, 'Mahindra, rear'],
    ['drier', 3.5, 'GM Pontiac Grand Am 1995'],
    ['drier', 15 / FL_OZ_ML, 'Land Rover Freelander 2002'],
    ['drier', 1, 'Terex TA40'],
    ['hose', 5 / FL_OZ_ML, 'Land Rover Freelander 2002'],
    ['hose', 10 / FL_OZ_ML, 'Mahindra'],
  ])('%s: %f fl oz lies in the spread', (part, printed) => {
    const { result } = oil.run({
      refrigerant: 'R-134a',
      replaced: [part],
      volumeUnit: 'fl-oz',
      precise: true,
    })
    expect(printed).toBeGreaterThanOrEqual(result.addFrom.value - 1e-9)
    expect(printed).toBeLessThanOrEqual(result.addTo.value + 1e-9)
  })
})

describe('every figure of the oil that goes with a part', () => {
  // Keyed again from the manual that each source entry names; a figure with "+" is beyond what was
  // drained. Whole printed figures: the tolerance is nothing.
  const PRINTED: Readonly<Record<string, string>> = {
    'car-1995': 'condenser 1 fl oz, evaporator 3 fl oz, drier 3.5 fl oz, sudden-leak 3 fl oz',
    'car-1997': 'condenser 1 fl oz, evaporator 3 fl oz, accumulator 3.5 fl oz, sudden-leak 3 fl oz',
    'pickup-1994':
      'condenser 1 fl oz, evaporator 3 fl oz, evaporator 1 fl oz, drier 1 fl oz, accumulator +2 fl oz',
    'car-1986-1993':
      'condenser 1 fl oz, evaporator 3 fl oz, accumulator +1 fl oz, accumulator +2 fl oz, sudden-leak 3 fl oz',
    'small-car-1997': 'condenser 1 fl oz, evaporator 3 fl oz, accumulator +1 fl oz, hose 0 fl oz',
    'large-car-1995':
      'condenser 1 fl oz, evaporator 3 fl oz, accumulator +2 fl oz, hose 0 fl oz, sudden-leak 2 fl oz',
    'pickup-2002': 'sudden-leak 1 fl oz',
    'off-road-car-2002': 'condenser 40 mL, evaporator 30 mL, drier 15 mL, hose 5 mL',
    'utility-sp10':
      'condenser 40 mL, evaporator 25 mL, evaporator 20 mL, hose 10 mL, sudden-leak 30 mL',
    'car-1997-vane': 'condenser 0 mL, evaporator 70 mL, drier 0 mL, hose 0 mL, sudden-leak 50 mL',
    'dump-truck': 'condenser 1 fl oz, evaporator 3 fl oz, drier 1 fl oz',
  }

  it.each(Object.entries(PRINTED))('%s: %s', (id, printed) => {
    const rows = data.parts
      .filter(({ source }) => source === id)
      .map(({ part, amount, beyondDrained, unit }) =>
        amount === undefined ? `${part} +${beyondDrained} ${unit}` : `${part} ${amount} ${unit}`,
      )
    expect(rows.join(', ')).toBe(printed)
    // And the answer for that part names the manual.
    for (const part of printed.match(/(?<=^|, )[a-z-]+/gu) ?? []) {
      const asked =
        part === 'sudden-leak'
          ? { leak: 'sudden' }
          : { replaced: [part], ...(part === 'accumulator' && { accumulatorDrained: '1 fl oz' }) }
      expect(oil.run({ ...si, ...asked }).result.lines[0]?.sources).toContain(id)
    }
  })

  it('has no other source', () => {
    expect([...new Set(data.parts.map(({ source }) => source))].sort()).toEqual(
      Object.keys(PRINTED).sort(),
    )
  })
})

describe('oil for a new compressor, by the manual of each rule', () => {
  // GM 1995; Dodge Dakota 2002; Cadillac 1986 and 1993; Lincoln 1995; Land Rover Freelander 2002;
  // Subaru Legacy 1997 (two compressors); Mahindra (two rules); Terex TA40; Komatsu 830E-AC.
  const RULES: Readonly<Record<string, string>> = {
    'drained-or-2-fl-oz-below-1': 'car-1995 fl oz: under 1 set 2, plus 0',
    'equal-to-drained': 'pickup-2002 fl oz: plus 0',
    'drained-plus-1-fl-oz': 'car-1986-1993 fl oz: plus 1',
    'drained-in-bands-of-3-and-5-fl-oz':
      'large-car-1995 fl oz: under 3 set 3, upTo 5 plus 1, plus 0',
    'drained-plus-20-ml': 'off-road-car-2002 mL: plus 20',
    'drained-at-least-20-ml': 'car-1997-vane mL: under 20 set 20, plus 0',
    'new-less-difference': 'utility-sp10 mL: plus 0',
    'fixed-70-ml': 'car-1997-vane mL: set 70',
    'fixed-4-4-fl-oz': 'dump-truck fl oz: set 4.4',
    'fixed-207-ml': 'mine-truck mL: set 207',
    'new-less-70-ml': 'utility-sp10 mL: fromNew -70 plusMinus 10',
  }

  it('is what the table has, and no rule more', () => {
    const found = data.compressorRules.map(({ id, source, unit, bands }) => {
      const words = bands.map((band) => Object.entries(band).flat().join(' '))
      return [id, `${source} ${unit}: ${words.join(', ')}`]
    })
    expect(Object.fromEntries(found)).toEqual(RULES)
  })

  it('takes 70 ±10 mL from a new compressor, and carries the ±', () => {
    const { add, addFrom, addTo } = oil.run({
      ...si,
      replaced: ['compressor'],
      compressorRule: 'new-less-70-ml',
      compressorHolds: '140 mL',
    }).result
    expect([addFrom, add, addTo].map(({ value }) => Math.round(value * 1e6) / 1e6)).toEqual([
      60, 70, 80,
    ])
  })
})

describe('totals that go with it', () => {
  // GM Corvette 1997: 9 fl oz; Cadillac 1986, 1993: 8 fl oz; New Holland: 186 to 228 cc for 1.1 kg.
  // Sanden, drop-in sheet: extra oil only above about 4 lb; service manual: valve systems under 1600 g.
  it('are named with their manuals', () => {
    expect(data.totals).toEqual([
      { text: expect.stringMatching(/^9 fl oz .* 1997$/u), source: 'car-1997' },
      { text: expect.stringMatching(/^8 fl oz .* 1986 and 1993$/u), source: 'car-1986-1993' },
      { text: expect.stringMatching(/^186 to 228 mL .* 1\.1 kg$/u), source: 'tractor-oil' },
    ])
    expect(data.longHoseNotes).toEqual([
      { text: expect.stringContaining('4 lb (1.8 kg)'), source: 'drop-in-sheet' },
      { text: expect.stringContaining('expansion valve'), source: 'long-hose' },
    ])
  })

  it('have their formulas from the pages named, up to 1600 g of R-134a', () => {
    expect(data.longHoseRules.map(({ source }) => source)).toEqual([
      'long-hose',
      'long-hose',
      'dump-truck',
    ])
    const extra = oil.run({ ...si, longHose: 'extra-by-hose-length', longHoseLength: '10 m' })
    expect(extra.result.add.value / FL_OZ_ML).toBeCloseTo(0.47 * 10 - 2.15, 9)
    expect(total('total-by-charge-five-cylinder', 1600)).toBeCloseTo(1600 * 0.125 + 40, 9)
    expect(total('total-by-charge-seven-cylinder', 1600)).toBeCloseTo((1600 * 0.06 + 60) / 0.9, 9)
    expect(refusalOf(() => total('total-by-charge-five-cylinder', 1601)).code).toBe('refused')
  })
})
