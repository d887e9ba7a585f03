import { expect, it } from 'vitest'
import * as z from 'zod'
import data from '../../data/service/visit.json' with { type: 'json' }
import { MARKS } from '../../shared/sources.ts'

const file = z.strictObject({
  sources: z.record(
    z.string(),
    z.strictObject({
      title: z.string().min(10),
      mark: z.enum(Object.keys(MARKS)),
      url: z.url().optional(),
      where: z.string().optional(),
      checked: z.string().optional(),
      note: z.string().optional(),
    }),
  ),
  statements: z.record(
    z.string(),
    z.strictObject({ text: z.string().min(20), source: z.string() }),
  ),
})

it('fits its schema, and cites every source that it lists and no other', () => {
  const { sources, statements } = file.parse(data)
  const cited = new Set(Object.values(statements).map(({ source }) => source))
  expect([...cited].sort()).toEqual(Object.keys(sources).sort())
})
