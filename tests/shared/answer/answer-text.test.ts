import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { constantTexts, membersText } from '../../../shared/answer/answer-text.ts'
import { sentence } from '../../../shared/answer/sentence.ts'
import { CalcError } from '../../../shared/errors.ts'
import { operations } from '../../../shared/operations.ts'
import {
  KINDS,
  length,
  mass,
  Quantity,
  showAll,
  temperature,
  UNIT_SYSTEMS,
} from '../../../shared/quantity/index.ts'

const PRESENTATIONS = UNIT_SYSTEMS.flatMap((units) =>
  (['us', 'si'] as const).flatMap((lead) =>
    [false, true].map((precise) => ({ units, lead, precise })),
  ),
)

const figure = fc
  .record({
    kind: fc.constantFrom(...KINDS),
    si: fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
    plusMinus: fc.option(fc.double({ min: 0, max: 1e4, noNaN: true }), { nil: undefined }),
  })
  .map(({ kind, si, plusMinus }) => new Quantity(kind, si, plusMinus))
const leaf = fc.oneof(
  figure,
  fc.string({ unit: 'binary' }),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.boolean(),
  fc.constantFrom(null, undefined, sentence('{a|both} at "most"', { a: mass(1.2) })),
)
// No schema has a field of that name, and no object takes it as one.
const name = fc.string().filter((text) => text !== '__proto__')
const { tree } = fc.letrec((tie) => ({
  part: fc.oneof({ depthSize: 'small' }, leaf, tie('list'), tie('tree')),
  list: fc.array(tie('part'), { maxLength: 4 }),
  tree: fc.dictionary(name, tie('part'), { maxKeys: 5 }),
}))

describe('an answer as JSON', () => {
  it.each(operations.map((operation) => [operation.name, operation] as const))(
    '%s: is byte for byte that of the answer, in all units',
    (_, operation) => {
      for (const units of UNIT_SYSTEMS) {
        for (const precise of [false, true]) {
          const input = { ...operation.example, units, precise }
          expect(operation.text(input)).toBe(JSON.stringify(operation.run(input)))
        }
      }
    },
  )

  it('refuses as the answer does', () => {
    for (const operation of operations) {
      const input = { ...operation.example, nonsense: 1 }
      expect(() => operation.text(input)).toThrow(CalcError)
    }
  })

  it('is that of any computed tree, whatever is in it', () => {
    fc.assert(
      fc.property(tree, fc.constantFrom(...PRESENTATIONS), (computed, presentation) => {
        const shown = JSON.stringify(showAll(computed, presentation))
        expect(`{${membersText(computed as object, { ...presentation })}}`).toBe(shown)
      }),
    )
  })

  it('shows one figure in one answer once, and in the next by its own units', () => {
    const cold = temperature(280, 0.5)
    const us = { units: 'us', precise: false } as const
    const si = { units: 'si', precise: false } as const
    const twice = '"value":44.3,"unit":"°F","plusMinus":0.9'
    expect(membersText({ a: cold, b: cold }, us)).toBe(`"a":{${twice}},"b":{${twice}}`)
    expect(membersText({ a: cold }, si)).toBe('"a":{"value":6.9,"unit":"°C","plusMinus":0.5}')
    expect(showAll({ a: cold }, { ...si })).toEqual({
      a: { value: 6.9, unit: '°C', plusMinus: 0.5 },
    })
  })

  it('writes units as JSON writes them, and lists of constants', () => {
    const given = length(0.0254).in('in')
    expect(JSON.parse(`{${membersText({ given }, PRESENTATIONS[0] as never)}}`)).toEqual({
      given: { value: 1, unit: 'in' },
    })
    const list = [{ id: 'a' }, { id: 'b"' }]
    expect(constantTexts(list)).toBe(JSON.stringify(list))
    expect(constantTexts(list)).toBe(JSON.stringify(list))
  })
})
