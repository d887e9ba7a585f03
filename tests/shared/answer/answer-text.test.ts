import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { answerText } from '../../../shared/answer/answer-text.ts'
import { constantTexts, membersText } from '../../../shared/answer/json-text.ts'
import { Outline } from '../../../shared/answer/outline.ts'
import { sentence } from '../../../shared/answer/sentence.ts'
import { CalcError } from '../../../shared/errors.ts'
import type { Unshown } from '../../../shared/operation.ts'
import { operation as operationOf, operations } from '../../../shared/operations.ts'
import {
  KINDS,
  length,
  mass,
  Quantity,
  showAll,
  temperature,
  UNIT_SYSTEMS,
} from '../../../shared/quantity/index.ts'
import { arbitraryInput } from '../../support/arbitrary-input.ts'

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
          const answer = JSON.stringify(operation.run(input))
          // Of a form that is new, and of one that is known.
          expect(answerText(operation, input)).toBe(answer)
          expect(answerText(operation, input)).toBe(answer)
        }
      }
    },
  )

  it('refuses as the answer does', () => {
    for (const operation of operations) {
      const input = { ...operation.example, nonsense: 1 }
      expect(() => answerText(operation, input)).toThrow(CalcError)
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
    // as an object in between, and as text again
    expect(showAll({ a: cold }, us)).toEqual({ a: { value: 44.3, unit: '°F', plusMinus: 0.9 } })
    expect(membersText({ a: cold }, us)).toBe(`"a":{${twice}}`)
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

  it.each(['saturation', 'readings'])('%s: follows whatever is asked in turn', (name) => {
    const asked = operationOf(name)
    fc.assert(
      fc.property(arbitraryInput(asked), (input) => {
        const answer = answered(() => JSON.stringify(asked.run(input)))
        expect(answered(() => answerText(asked, input))).toBe(answer)
      }),
      { numRuns: 300 },
    )
  })
})

describe('the outline of an answer', () => {
  const presentation = { units: 'both', precise: false } as const
  const unshown = (shown: object, more: Partial<Unshown> = {}): Unshown => ({
    tree: shown,
    presentation: { ...presentation },
    cautions: [],
    sources: [],
    assumptions: [],
    warnings: [],
    ...more,
  })
  const json = ({ tree: shown, presentation: how, ...rest }: Unshown) =>
    JSON.stringify({ ...(showAll(shown, how) as object), ...rest })
  const learned = (answer: Unshown): Outline => {
    const outline = Outline.of(answer)
    if (!outline) throw new Error('the answer is too long')
    return outline
  }

  it('writes an answer of its form, with other figures and other texts', () => {
    const first = unshown({ a: temperature(280, 0.5), b: 'one', c: [{ d: 1, law: undefined }] })
    const outline = learned(first)
    expect(outline.textOf(first)).toBe(json(first))
    const others = [
      unshown({ a: temperature(281), b: 'one', c: [{ d: 2 }] }),
      unshown({ a: mass(1), b: 'an"other', c: [{ d: null }] }),
      unshown({ a: mass(1), b: 'one', c: [{ d: true }] }, { sources: [SOURCE] }),
      unshown({ a: mass(1), b: 'one', c: [{ d: true }] }, { sources: [{ ...SOURCE, id: 'b' }] }),
    ]
    for (const other of others) expect(outline.textOf(other)).toBe(json(other))
  })

  it.each<[what: string, shown: object]>([
    ['a member less', { a: temperature(280), c: [{ d: 1 }] }],
    ['a member more', { a: temperature(280), b: 'one', c: [{ d: 1 }], e: 1 }],
    ['another name', { a: temperature(280), b: 'one', f: [{ d: 1 }] }],
    ['another order', { b: 'one', a: temperature(280), c: [{ d: 1 }] }],
    ['a longer list', { a: temperature(280), b: 'one', c: [{ d: 1 }, { d: 1 }] }],
    ['an empty list', { a: temperature(280), b: 'one', c: [] }],
    ['a text for a figure', { a: '280 K', b: 'one', c: [{ d: 1 }] }],
    ['a figure for a text', { a: temperature(280), b: mass(1), c: [{ d: 1 }] }],
    ['a text for a number', { a: temperature(280), b: 'one', c: [{ d: '1' }] }],
    ['a list for members', { a: temperature(280), b: 'one', c: [[1]] }],
    ['a sentence for members', { a: temperature(280), b: 'one', c: [sentence('d')] }],
  ])('tells nothing of an answer with %s, and its own as before', (_, shown) => {
    const own = unshown({ a: temperature(280), b: 'one', c: [{ d: 1 }] })
    const outline = learned(own)
    expect(outline.textOf(unshown(shown))).toBeUndefined()
    expect(outline.textOf(own)).toBe(json(own))
  })

  it('is that text or none of any two computed trees', () => {
    fc.assert(
      fc.property(tree, tree, (one, two) => {
        const [a, b] = [unshown(one as object), unshown(two as object)]
        const outline = learned(a)
        expect([undefined, json(b)]).toContain(outline.textOf(b))
        expect(outline.textOf(a)).toBe(json(a))
      }),
    )
  })

  it('is not kept of a long answer', () => {
    const list = Array.from({ length: 2_000 }, () => 1)
    expect(Outline.of(unshown({ list }))).toBeUndefined()
  })
})

const SOURCE = { id: 'a', title: 'A table', mark: 'memory' } as const

/** What comes of it, refusals too. */
function answered(work: () => string): string {
  try {
    return work()
  } catch (error) {
    return JSON.stringify(error)
  }
}
