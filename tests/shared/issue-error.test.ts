import { describe, expect, it } from 'vitest'
import * as z from 'zod'
import { parseInput } from '../../shared/operation.ts'
import { refusalOf } from '../support/refusal.ts'

const schema = z.strictObject({
  kind: z.enum(['hose', 'tube']),
  name: z.string().min(1).max(5).optional(),
  count: z.number().min(1).max(9).optional(),
  list: z.array(z.string()).min(1).max(2).optional(),
})
const refusal = (raw: unknown) => refusalOf(() => parseInput(schema, raw)).toJSON()

describe('input that does not fit its schema', () => {
  it('tells a missing choice from a wrong one, and quotes the wrong one', () => {
    expect(refusal({})).toMatchObject({ code: 'missing-input', message: '"kind" is missing.' })
    expect(refusal({ kind: 'pipe' })).toEqual({
      code: 'bad-input',
      message: '"pipe" is not one of the values that "kind" takes.',
      path: ['kind'],
      hint: 'It takes: hose, tube.',
      level: 'check',
      cautions: [],
    })
  })

  it.each([
    [{ name: '' }, 'missing-input', '"name" is empty.', 'at least one character'],
    [{ name: 'too long' }, 'bad-input', '"name" is too long.', 'at most 5 characters'],
    [{ list: [] }, 'missing-input', '"list" is empty.', 'at least one entry'],
    [{ list: ['a', 'b', 'c'] }, 'bad-input', '"list" is too long.', 'at most 2 entries'],
    [{ count: 0 }, 'bad-input', '"count" is out of bounds.', 'at least 1'],
    [{ count: 10 }, 'bad-input', '"count" is out of bounds.', 'at most 9'],
  ])('says of %o what was wrong and what would do', (given, code, message, hint) => {
    const told = refusal({ kind: 'hose', ...given })
    expect(told).toMatchObject({ code, message, path: Object.keys(given) })
    expect(told.hint).toContain(hint)
  })

  it('names an entry of a list by the list, as people count', () => {
    expect(refusal({ kind: 'hose', list: ['a', 5] })).toEqual({
      code: 'bad-input',
      message: 'A text is needed here.',
      path: ['list', 1],
      hint: 'Entry 2 of "list" is a number.',
      level: 'check',
      cautions: [],
    })
    const choices = z.array(z.enum(['a', 'b']))
    expect(refusalOf(() => parseInput(choices, ['a', 'c'])).message).toBe(
      '"c" is not one of the values that entry 2 takes.',
    )
    expect(refusalOf(() => parseInput(z.array(z.array(schema)), [[{}]])).message).toBe(
      '"kind" is missing.',
    )
  })

  it('quotes some unknown names, not a page of them', () => {
    const many = Object.fromEntries(
      Array.from({ length: 5_000 }, (_, index) => [`${'x'.repeat(200)}${index}`, 1]),
    )
    const told = refusal({ kind: 'hose', ...many })
    expect(told.message).toMatch(/^Unknown field "x{60}", .* and 4994 more\.$/u)
    expect(JSON.stringify(told).length).toBeLessThan(1_500)
  })

  it('says what was given where a type is wrong', () => {
    expect(refusal({ kind: 'hose', count: 'five' }).hint).toBe('"count" is a text.')
  })

  it('names the other places that do not fit', () => {
    expect(refusal({ kind: 'hose', name: '', count: 10 }).hint).toContain('Look at count too.')
  })
})
