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

  it('names the other places that do not fit', () => {
    expect(refusal({ kind: 'hose', name: '', count: 10 }).hint).toContain('Look at count too.')
  })
})
