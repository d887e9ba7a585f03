import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import * as z from 'zod'
import data from '../../data/service/card.json' with { type: 'json' }
import customer from '../../data/service/customer.json' with { type: 'json' }
import { ABOUT } from '../../shared/about.ts'
import { LONGEST_HEADLINE } from '../../shared/answer/told.ts'
import { type CautionId, cautions } from '../../shared/cautions.ts'
import { JOBS } from '../../shared/fields/index.ts'

const words = z.record(z.string(), z.string().min(4))

describe('data/service/card.json', () => {
  it('has a source for every task, words for every job, and ways of which one is taken', () => {
    for (const { text, source } of Object.values(data.tasks)) {
      expect(Object.keys(data.sources)).toContain(source)
      expect(text.length).toBeLessThanOrEqual(LONGEST_HEADLINE)
      // A task begins without a capital and ends without a stop: it is a line among others.
      expect(text).toMatch(/^[a-z\d].*[^.]$/u)
    }
    expect(Object.keys(data.jobs).sort()).toEqual([...JOBS].sort())
    for (const ways of Object.values(data.alternatives)) expect(ways.length).toBeGreaterThan(1)
    for (const part of [data.records, data.finished, data.says]) words.parse(part)
  })

  it('never prints a finished step with its ±, which would not fit on a line', () => {
    for (const text of Object.values(data.finished)) {
      expect(text.replace(/\{verdict\}/gu, '')).not.toMatch(/\{\w+\}/u)
    }
  })
})

it('data/service/customer.json speaks in whole sentences of every job', () => {
  expect(Object.keys(customer.jobs).sort()).toEqual([...JOBS].sort())
  const { found, ...parts } = customer
  for (const part of [...Object.values(parts)]) {
    for (const text of Object.values(part)) expect(text).toMatch(/^[A-Z].*\.$/u)
  }
  expect(found.leak).toBe('{leak}')
})

it('the foot of a card names the newest day on which any data was checked', () => {
  const days = ['data/service', 'data/rules'].flatMap((folder) =>
    readdirSync(folder).flatMap((name) =>
      [
        ...readFileSync(`${folder}/${name}`, 'utf8').matchAll(/"checked": "(\d{4}-\d{2}-\d{2})"/gu),
      ].map(([, day]) => day ?? ''),
    ),
  )
  expect(days.length).toBeGreaterThan(50)
  expect(ABOUT.data).toBe(days.sort().at(-1))
})

describe('dangers in few words', () => {
  it.each(Object.entries(data.dangers))('%s: %s', (id, words) => {
    const found = cautions([id as CautionId])[0]
    expect(found).toMatchObject({ id })
    expect(words.length).toBeLessThan(found?.short.length ?? 0)
    expect(words).toMatch(/^[A-Z][^.]*$/u)
  })
})
