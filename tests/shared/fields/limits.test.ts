import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type * as z from 'zod'
import data from '../../../data/service/instruments.json' with { type: 'json' }
import {
  burns,
  dateIn,
  existingOilIn,
  gaugesIn,
  isCarbonDioxide,
  newOilIn,
  personIn,
  pickRefrigerant,
  refrigerantIn,
  thermometersIn,
  vacuumHoseIn,
} from '../../../shared/fields/index.ts'
import type { Issue } from '../../../shared/issue-error.ts'
import { operation } from '../../../shared/operations.ts'
import { refrigerant, refrigerants } from '../../../shared/refrigerant/index.ts'
import { everyField, inputWith, type Placed } from '../../support/every-field.ts'
import { refusalOf } from '../../support/refusal.ts'

/** What a schema says of one place of an input, inside the variants of a union too. */
function issuesAt({ operation: name, path }: Placed, value: unknown): readonly Issue[] {
  const { error } = operation(name).input.safeParse(inputWith(path, value))
  const all = (issues: readonly Issue[], above: readonly PropertyKey[]): readonly Issue[] =>
    issues.flatMap((issue) => {
      const at = [...above, ...issue.path]
      const inner = (issue.errors ?? []).flatMap((variant) => all(variant, at))
      return [{ ...issue, path: at }, ...inner]
    })
  return all((error?.issues ?? []) as readonly Issue[], []).filter(
    (issue) => issue.path.join('.') === path.join('.') && issue.code === 'custom',
  )
}

const quantities = everyField().flatMap((placed) => {
  const { shape } = placed.field
  return shape.type === 'quantity' ? [{ placed, examples: shape.examples }] : []
})
const label = ({ operation: name, path }: Placed) => `${name}.${path.join('.')}`

/** Units of a field, of its examples that are one number and one unit. */
const unitsOf = (examples: readonly string[]) =>
  examples.flatMap((example) => /^-?[\d.]+ (\D\S*(?: \D+)?)$/u.exec(example)?.[1] ?? [])

describe('every quantity of every operation', () => {
  it('is found, those below records and lists too', () => {
    expect(quantities.length).toBeGreaterThan(400)
    for (const { placed, examples } of quantities) {
      expect(unitsOf(examples).length, label(placed)).toBeGreaterThan(0)
    }
  })

  it('takes one of its own examples', () => {
    const refused = quantities.filter(({ placed, examples }) =>
      examples.every((example) => issuesAt(placed, example).length > 0),
    )
    expect(refused.map(({ placed }) => label(placed))).toEqual([])
  })

  it('refuses no number, an endless one and one that nobody meets, in any of its units', () => {
    const huge = fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, 1e22, -1e22, 1e300)
    fc.assert(
      fc.property(
        fc.constantFrom(...quantities),
        huge,
        fc.nat(),
        fc.boolean(),
        (one, value, pick, asText) => {
          const units = unitsOf(one.examples)
          const unit = units[pick % units.length] ?? ''
          const given = asText ? `${value} ${unit}` : { value, unit }
          const [issue] = issuesAt(one.placed, given)
          expect(issue, `${label(one.placed)} took ${JSON.stringify(given)}`).toBeDefined()
          expect(['bad-quantity', 'out-of-range', 'ambiguous-quantity']).toContain(
            issue?.params?.calc?.code,
          )
        },
      ),
      { numRuns: 600, seed: 20261127 },
    )
  })

  it('refuses a ± that nobody meets, and a bare number', () => {
    fc.assert(
      fc.property(fc.constantFrom(...quantities), fc.nat(), (one, pick) => {
        const units = unitsOf(one.examples)
        const unit = units[pick % units.length] ?? ''
        for (const given of [{ value: 1, unit, plusMinus: 1e22 }, 5]) {
          expect(issuesAt(one.placed, given).length, label(one.placed)).toBeGreaterThan(0)
        }
      }),
      { numRuns: 300, seed: 20261127 },
    )
  })
})

describe('names and lists', () => {
  const takes = (schema: z.ZodType, value: unknown) => schema.safeParse(value).success

  it.each([
    ['a refrigerant', refrigerantIn],
    ['the oil inside', existingOilIn],
    ['the new oil', newOilIn],
  ])('%s has 1 to 60 letters', (_, schema) => {
    expect(['', 'x', 'x'.repeat(60), 'x'.repeat(61)].map((text) => takes(schema, text))).toEqual([
      ...[false, true, true, false],
    ])
  })

  it('a date is a day', () => {
    for (const day of ['2026-11-27', '1999-01-02']) expect(takes(dateIn, day)).toBe(true)
    for (const other of ['27.11.2026', '2026-11', '2026-11-27T10:00', 'x2026-11-27', 20261127]) {
      expect(takes(dateIn, other), String(other)).toBe(false)
    }
  })

  it('at most twenty hoses stand one after the other, each with both sizes', () => {
    const hose = { length: '60 in', bore: '3/8 in' }
    const hoses = (count: number) => Array.from({ length: count }, () => hose)
    expect([0, 1, 20, 21].map((count) => takes(vacuumHoseIn.vacuumHoses, hoses(count)))).toEqual([
      ...[true, true, true, false],
    ])
    for (const bare of [{ length: '60 in' }, { bore: '3/8 in' }]) {
      expect(takes(vacuumHoseIn.vacuumHoses, [bare])).toBe(false)
    }
  })

  it('each class of gauge and of thermometer may be named', () => {
    for (const { id } of data.gauges) {
      expect(takes(gaugesIn.lowGauge, id), id).toBe(true)
      expect(takes(gaugesIn.highGauge, id), id).toBe(true)
    }
    for (const { id } of data.thermometers) expect(takes(thermometersIn.thermometer, id)).toBe(true)
    expect(takes(gaugesIn.lowGauge, data.thermometers[0]?.id)).toBe(false)
    expect(takes(thermometersIn.thermometer, data.gauges[0]?.id)).toBe(false)
  })

  it('each certificate may be named, and none that there is not', () => {
    const { certificates } = personIn
    const known = certificates.unwrap().element.options
    expect(known.length).toBeGreaterThan(3)
    expect(takes(certificates, known)).toBe(true)
    expect(takes(certificates, [])).toBe(true)
    expect(takes(certificates, [...known, known[0]])).toBe(false)
    expect(takes(certificates, ['driving-licence'])).toBe(false)
  })
})

describe('the refrigerant that an input names', () => {
  it('is found by its other names, and refused with its field and the nearest', () => {
    expect(pickRefrigerant('134a').info.id).toBe('R-134a')
    expect(refusalOf(() => pickRefrigerant('R-134z'))).toMatchObject({
      code: 'unknown-refrigerant',
      path: ['refrigerant'],
      hint: expect.stringContaining('R-134a'),
    })
    expect(refusalOf(() => pickRefrigerant('R-134z', 'newRefrigerant')).path).toEqual([
      'newRefrigerant',
    ])
  })

  it('burns by its ASHRAE 34 class, and one alone is carbon dioxide', () => {
    // ASHRAE 34 flammability: 2L, 2 and 3 burn, 1 does not.
    for (const name of ['R-1234yf', 'R-32', 'R-152a', 'R-290', 'R-600a', 'R-454B']) {
      expect(burns(refrigerant(name)), name).toBe(true)
    }
    for (const name of ['R-134a', 'R-744', 'R-410A', 'R-22', 'R-513A']) {
      expect(burns(refrigerant(name)), name).toBe(false)
    }
    const all = refrigerants().map(({ id }) => id)
    expect(all.filter((id) => isCarbonDioxide(refrigerant(id)))).toEqual(['R-744'])
  })
})
