import { describe, expect, it } from 'vitest'
import { codeSpots } from './code.ts'
import { draw, faulty } from './draw.ts'
import { figureSpots } from './figures.ts'
import { swapped } from './operators/name.ts'
import { wrongNumbers } from './operators/number.ts'
import { readOptions } from './options.ts'
import { filesOf, type Project } from './project.ts'
import { report } from './report.ts'
import type { Mutant, Spot, Verdict } from './types.ts'

const apply = (text: string, spots: readonly Spot[]): readonly string[] =>
  spots.flatMap(({ start, end, variants }) =>
    variants.map((variant) => text.slice(0, start) + variant + text.slice(end)),
  )
const spoil = (text: string, known: readonly string[] = []): readonly string[] =>
  apply(text, codeSpots('a.ts', text, new Set(known)))

describe('the faults that a line of code can take', () => {
  it.each([
    ['f(a * b)', ['f(a / b)']],
    ['x += y', ['x -= y']],
    ['f(-a)', ['f( a)']],
    ['f(a < b)', ['f(a >= b)', 'f(a <= b)']],
    ['f(a === b)', ['f(a !== b)']],
    ['f(a && !b)', ['f(a || !b)', 'f(a &&  b)']],
    ['f(true)', ['f(false)']],
    ['f(a ?? b)', ['f((b))', 'f((a))']],
    ['f(a ? b : c)', ['f(!(a) ? b : c)']],
    ['f(p, plusMinus)', ['f(p, undefined)']],
    ['f({ plusMinus })', ['f({ plusMinus: undefined })']],
    ['f({ uncertainty: u })', ['f({ uncertainty: undefined })']],
    ['f([...a, b])', ['f([b])', 'f([...a])']],
    ['list.push(a)\n', [';\n']],
  ])('%s', (text, expected) => {
    // A call that stands alone can be lost as well; only the last case is about that.
    const lost = text.startsWith('list') ? [] : [';']
    expect(spoil(text).filter((other) => !lost.includes(other))).toEqual(expected)
  })

  it('swaps a name for its counterpart where that exists', () => {
    expect(spoil('const x = r.dew', ['bubble'])).toEqual(['const x = r.bubble'])
    expect(spoil('const x = r.dew', [])).toEqual([])
    expect(spoil("const x = 'low-side'", ['high-side'])).toEqual(["const x = 'high-side'"])
    expect(spoil('const x = Math.max(a, b)')).toEqual(['const x = Math.min(a, b)'])
    expect(swapped('atDewOrLiquid')).toEqual(['atBubbleOrLiquid', 'atDewOrVapour'])
  })

  it('takes the smaller part for the root of the squares', () => {
    expect(spoil('const x = Math.hypot(a, b)')).toEqual(['const x = Math.min(a, b)'])
  })

  it('drops a way out, and turns it round', () => {
    const found = spoil('function f() { if (a) return b; return c }')
    expect(found).toEqual(
      expect.arrayContaining([
        'function f() { ; return c }',
        'function f() { if (!(a)) return b; return c }',
      ]),
    )
  })

  it('changes a figure by a tenth, by half, by one, never to itself or below nothing', () => {
    expect(wrongNumbers(10)).toEqual(['11', '20', '5', '9'])
    expect(wrongNumbers(0)).toEqual(['1'])
    expect(wrongNumbers(1)).toEqual(['1.1', '2', '0.5', '0'])
  })

  it.each([
    "import { a } from './b.ts'",
    'type A = 1 | 2',
    "const a: Record<'dew', 5> = b",
    "throw new CalcError('x', `#{a + 1}`)",
    'const a = `#{b + 1} °F`',
    "const a = { message: b + 'c', hint: [1] }",
    "const a = 'x' + b",
    "const a = z.string().describe('low')",
    'const a = b < 1e-12',
    'const MAXIMUM_STEPS = 60',
    'const RUNGS = 8',
    'const MOST_KEPT = 200',
    'const REFINEMENTS = 4',
  ])('leaves alone what no figure hangs on: %s', (text) => {
    const code = text.replaceAll('#{', '$'.concat('{'))
    expect(spoil(code, ['high', 'bubble'])).toEqual([])
  })
})

describe('the faults that a table can take', () => {
  const spoilTable = (text: string) => apply(text, figureSpots('a.json', text))

  it('changes a figure, also one that is written with its unit', () => {
    expect(spoilTable('{"a":10}')).toEqual(['{"a":11}', '{"a":20}', '{"a":5}', '{"a":9}'])
    expect(spoilTable('{"a":"10 psig"}')).toContain('{"a":"20 psig"}')
    expect(spoilTable('{"a":"10 of them are lost"}')).toEqual([])
  })

  it('drops a row of a list or of a table, and leaves prose alone', () => {
    expect(spoilTable('["a","b"]')).toEqual(['["b"]', '["a"]'])
    expect(spoilTable('{"a":{},"b":{}}')).toEqual(['{"b":{}}', '{"a":{}}'])
    expect(spoilTable('["a b c","d"]')).toEqual([])
  })

  it('turns a fact round, and moves a date', () => {
    expect(spoilTable('{"paid":true}')).toEqual(['{"paid":false}'])
    expect(spoilTable('{"from":"2026-11"}')).toEqual(['{"from":"2025-11"}', '{"from":"2027-11"}'])
  })

  it('changes what a rule of law says', () => {
    const spoilRule = (text: string) => apply(text, figureSpots('data/rules/a.json', text))
    const rule = '{"text": "R-134a, \\"20 lb\\", 2.5 kg", "section": "82.34(a)(1)"}'
    const spoilt = spoilRule(rule)
    expect(spoilt).toContain(rule.replace('20 lb', '40 lb'))
    expect(spoilt).toContain(rule.replace('2.5', '5'))
    expect(spoilt).toContain(rule.replace('(1)', '(2)'))
    expect(spoilt.join()).not.toMatch(/R-(?!134a)/u)
    expect(spoilTable(rule)).toEqual([])
    const rows = '[{"answer": "yes", "a": 0}, {"answer": "no"}]'
    expect(spoilRule(rows)).toContain(rows.replace('"yes"', '"no"'))
  })
})

describe('the draw', () => {
  const fixture: Project = {
    root: new URL('fixture/', import.meta.url).pathname,
    rooms: { room: 'shared/room', figures: 'data/service' },
    looks: () => true,
  }
  const files = filesOf(fixture.root)
  const drawn = (seed: number, count: number) => draw(fixture, files, 'room', seed, count)

  it('is the same for the same seed, and a larger count only adds to it', () => {
    expect(drawn(7, 3)).toEqual(drawn(7, 3))
    expect(drawn(7, 3)).toEqual(drawn(7, 4).slice(0, 3))
  })

  it('takes each line once, and other seeds take them otherwise', () => {
    const lines = drawn(1, 99).map(({ line }) => line)
    expect(new Set(lines).size).toBe(lines.length)
    expect(lines.length).toBe(4)
    const orders = [1, 2, 3, 4, 5, 6].map((seed) =>
      drawn(seed, 99)
        .map(({ line }) => line)
        .join(),
    )
    expect(new Set(orders).size).toBeGreaterThan(1)
  })

  it('draws from the figures of a room of data', () => {
    const found = draw(fixture, files, 'figures', 1, 99)
    expect(found.map(({ file }) => file)).toEqual(Array(2).fill('data/service/limits.json'))
  })
})

describe('what is printed', () => {
  const mutant: Mutant = {
    ...{ room: 'room', file: 'a.ts', line: 3, operator: 'number' },
    ...{ start: 0, end: 1, was: '1', becomes: '2' },
  }
  const verdict = (fate: Verdict['fate']): Verdict => ({ mutant, fate, seconds: 1, looked: 2 })

  it('counts by room and lists the survivors', () => {
    const text = report([verdict('killed'), verdict('late'), verdict('survived')], 5)
    expect(text).toMatch(/seed 5/u)
    expect(text).toMatch(/room +2 of +3 +67 %/u)
    expect(text).toMatch(/Survivors:\n {2}a\.ts:3 number: 1 → 2$/u)
  })

  it('puts a fault in at its place', () => {
    expect(faulty('1 + 1', mutant)).toBe('2 + 1')
  })
})

describe('the options', () => {
  it('have defaults, and take the seed from the time', () => {
    expect(readOptions([], 1_234_567)).toEqual({
      ...{ seed: 234_567, rooms: [], count: 30, only: [], list: false, own: false, jobs: 1 },
    })
    expect(readOptions(['--help'], 0)).toBeUndefined()
  })

  it.each([
    ['--seed', 'x'],
    ['--count', '0'],
    ['--jobs', '3'],
  ])('%s %s is refused', (name, value) => {
    expect(() => readOptions([name, value], 0)).toThrow(name)
  })
})
