import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import * as z from 'zod'
import { refrigerants } from '../../shared/refrigerant/index.ts'
import type { RefrigerantInfo } from '../../shared/refrigerant/info.ts'
import { MARKS } from '../../shared/sources.ts'
import { substanceData } from '../../shared/substance/library.ts'

const folder = new URL('../../data/refrigerants/', import.meta.url)
const text = z.string().min(2)
const source = z.string()

const schema = z.strictObject({
  id: z.string().regex(/^R-\d+[A-Za-z]*(\([EZ]\))?$/u),
  name: text,
  aliases: z.array(text),
  kind: z.enum(['pure', 'zeotrope', 'near-azeotrope', 'azeotrope']),
  composition: z
    .array(z.strictObject({ substance: z.string(), massFraction: z.number().positive().max(1) }))
    .min(1),
  safetyClass: z.strictObject({ value: z.enum(['A1', 'A2L', 'A2', 'A3']), source }),
  odp: z.strictObject({ value: z.number().min(0).max(1), source }),
  gwp: z
    .array(
      z.strictObject({
        value: z.number().min(0).max(20_000),
        report: z.enum(['AR4', 'AR5', 'AR6']),
        below: z.literal(true).optional(),
        source,
      }),
    )
    .min(1),
  oils: z.array(z.strictObject({ oil: text, use: text, source })).min(1),
  flammability: z.array(
    z.strictObject({ quantity: text, value: z.number().positive(), unit: z.string(), source }),
  ),
  notes: z.array(text),
  sources: z.record(
    z.string().regex(/^[a-z0-9-]+$/u),
    z.strictObject({
      title: text,
      mark: z.enum(Object.keys(MARKS) as [string, ...string[]]),
      url: z.url().optional(),
      note: text.optional(),
    }),
  ),
})

const files = readdirSync(folder).filter((name) => name.endsWith('.json'))
const read = (name: string) =>
  JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as RefrigerantInfo

describe.each(files)('data/refrigerants/%s', (name) => {
  const info = read(name)

  it('fits the schema and is named for its designation', () => {
    schema.parse(info)
    expect(`${info.id}.json`).toBe(name)
  })

  it('names a source of its own for each figure, and no source in vain', () => {
    const used = new Set(
      [info.safetyClass, info.odp, ...info.gwp, ...info.oils, ...info.flammability].map(
        (figure) => figure.source,
      ),
    )
    for (const key of used) expect(Object.keys(info.sources)).toContain(key)
    const rest = Object.keys(info.sources).filter((key) => !used.has(key))
    // A blend's composition is one figure in many rows, with one source.
    expect(rest.length).toBe(info.composition.length > 1 ? 1 : 0)
  })

  it('is made of known substances that add up to one', () => {
    const total = info.composition.reduce((sum, part) => {
      expect(substanceData(part.substance).id).toBe(part.substance)
      return sum + part.massFraction
    }, 0)
    expect(total).toBeCloseTo(1, 9)
    expect(info.kind === 'pure').toBe(info.composition.length === 1)
  })

  it('gives each warming potential once a report, and burning limits only if it burns', () => {
    const reports = info.gwp.map(({ report }) => report)
    expect(new Set(reports).size).toBe(reports.length)
    if (info.safetyClass.value === 'A1') {
      expect(info.flammability, 'class A1 does not burn: no row of flammability').toEqual([])
    }
    if (info.composition.length === 1 && info.safetyClass.value !== 'A1') {
      expect(info.flammability.length).toBeGreaterThan(0)
    }
  })
})

describe('all together', () => {
  it('share no alias', () => {
    const seen = new Map<string, string>()
    for (const name of files) {
      const info = read(name)
      for (const alias of [info.id, ...info.aliases]) {
        const key = alias.toLowerCase().replace(/[^a-z0-9]/gu, '')
        expect(seen.get(key) ?? info.id, `${alias} means two things`).toBe(info.id)
        seen.set(key, info.id)
      }
    }
  })
})

it('every file is in the registry, and nothing else', () => {
  const inFiles = files.map((name) => read(name).id).sort()
  expect(
    refrigerants()
      .map(({ id }) => id)
      .sort(),
  ).toEqual(inFiles)
})
