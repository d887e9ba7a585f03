import { describe, expect, it } from 'vitest'
import { oil } from '../../shared/service/oil.ts'

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
