import { describe, expect, it } from 'vitest'
import * as z from 'zod'
import { type DefinedOperation, presentationIn, readPlainly } from '../../shared/operation.ts'
import { operation, operations } from '../../shared/operations.ts'
import { plainInput } from '../../shared/plain-input.ts'
import { Quantity, quantityIn } from '../../shared/quantity/index.ts'

type Any = DefinedOperation<Record<string, z.ZodType>, z.ZodType>

const fields = {
  name: z.string().min(1).max(4),
  pressure: quantityIn.pressure.optional().describe('A pressure'),
  mass: quantityIn.mass.optional(),
  count: z.number().default(3),
  list: z.array(z.string()).default(() => []),
}
const read = plainInput(fields, presentationIn)
const whole = z.strictObject({ ...fields, ...presentationIn })
const GIVEN = { name: 'a', list: [] }

describe('a plain input', () => {
  it('is read as its schema reads it, in the order of the fields', () => {
    const given = { units: 'si', mass: '2 lb', list: ['x'], pressure: '32 ±1 psig', name: 'a' }
    const { units, precise, ...own } = whole.parse(given)
    const found = read(given)
    expect(found).toEqual({ own, beside: { units, precise } })
    expect(Object.keys(found?.own ?? {})).toEqual(Object.keys(own))
    expect(found?.own.pressure).toBeInstanceOf(Quantity)
    expect(found?.own.count).toBe(3)
  })

  it('leaves to the schema whatever it does not surely take', () => {
    expect(read(GIVEN)).toBeDefined()
    // its default is another list each time
    expect(read({ name: 'a' })).toBeUndefined()
    for (const other of [
      { list: [] },
      { ...GIVEN, name: '' },
      { ...GIVEN, name: 'abcde' },
      { ...GIVEN, other: 1 },
      { ...GIVEN, toString: 1 },
      { ...GIVEN, mass: undefined },
      { ...GIVEN, mass: null },
      { ...GIVEN, mass: 2 },
      { ...GIVEN, mass: '2 psig' },
      { ...GIVEN, mass: '99999999 lb' },
      { ...GIVEN, mass: '2 lb 6 oz' },
      { ...GIVEN, mass: { value: 2, unit: 'lb' } },
      { ...GIVEN, pressure: '0 psia' },
      { ...GIVEN, units: 'metric' },
      { ...GIVEN, precise: 'yes' },
      JSON.parse('{"name":"a","list":[],"__proto__":{"mass":"2 lb"}}'),
      [GIVEN],
      'a',
      null,
      undefined,
    ]) {
      expect(read(other)).toBeUndefined()
    }
  })

  it('keeps the further rules of a quantity', () => {
    const light = (schema: typeof quantityIn.mass) => schema.refine(({ si }) => si < 1, 'too heavy')
    for (const mass of [light(quantityIn.mass), light(quantityIn.mass).optional()]) {
      const rated = plainInput({ mass }, {})
      expect(rated({ mass: '1 lb' })).toBeDefined()
      expect(rated({ mass: '9 lb' })).toBeUndefined()
    }
    const optional = quantityIn.mass.optional().refine((mass) => (mass?.si ?? 0) < 1, 'too heavy')
    expect(plainInput({ mass: optional }, {})({ mass: '9 lb' })).toBeUndefined()
    const doubled = quantityIn.mass.transform(({ si }) => 2 * si)
    expect(plainInput({ mass: doubled }, {})({ mass: '1 kg' })?.own).toEqual({ mass: 2 })
  })

  it('has the answer of every operation that its schema gives', () => {
    const answers = () =>
      operations
        .filter(({ unshownInPieces }) => unshownInPieces === undefined)
        .map((each) => ({
          name: each.name,
          own: (each as Any).parse(each.example),
          si: JSON.stringify(each.run({ ...each.example, units: 'si', precise: true })),
        }))
    const bySchema = answers()
    readPlainly(plainInput)
    try {
      expect(answers()).toEqual(bySchema)
      const { own, beside } = plainInput(
        (operation('readings') as unknown as Any).fields,
        presentationIn,
      )(operation('readings').example) ?? { own: {}, beside: {} }
      expect(Object.keys(own)).toHaveLength(Object.keys(operation('readings').example).length)
      expect(beside).toEqual({ precise: false })
    } finally {
      readPlainly(undefined)
    }
  })

  it('is refused as its schema refuses it', () => {
    const refusal = (input: object) => {
      try {
        operation('saturation').run(input)
        return undefined
      } catch (error) {
        return JSON.stringify(error)
      }
    }
    const wrong = [
      { refrigerant: 'R-134a', pressure: '32 lb' },
      { refrigerant: 'R-134a', pressure: '-5 inHg vac' },
      { refrigerant: 'R-134a', presure: '32 psig' },
      { pressure: '32 psig' },
      { refrigerant: 'R-134a', pressure: '32 psig', units: 'both', precise: 1 },
    ]
    const bySchema = wrong.map(refusal)
    expect(bySchema).not.toContain(undefined)
    readPlainly(plainInput)
    try {
      expect(wrong.map(refusal)).toEqual(bySchema)
    } finally {
      readPlainly(undefined)
    }
  })
})
