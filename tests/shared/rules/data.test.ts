import { describe, expect, it } from 'vitest'
import * as z from 'zod'
import families from '../../../data/rules/families.json' with { type: 'json' }
import { COMPRESSOR_DRIVES, LAWS, MACHINES, SECTORS } from '../../../shared/fields/index.ts'
import { refrigerants } from '../../../shared/refrigerant/index.ts'
import { CERTIFICATE_IDS, JURISDICTIONS } from '../../../shared/rules/library.ts'
import { statementOut } from '../../../shared/rules/shown.ts'
import { ACTIONS, TOPICS } from '../../../shared/rules/types.ts'

const limits = z.strictObject({
  atMost: z.number().optional(),
  above: z.number().optional(),
  atLeast: z.number().optional(),
  below: z.number().optional(),
})

const known = new Set(refrigerants().map(({ id }) => id))
const refrigerantIds = z.array(z.string().refine((id) => known.has(id)))
const familyIds = z.array(z.enum([...Object.keys(families.families), 'ods', 'flammable']))

const when = z.strictObject({
  machine: z.array(z.enum(MACHINES)).optional(),
  compressorDrive: z.array(z.enum(COMPRESSOR_DRIVES)).optional(),
  factorySealed: z.boolean().optional(),
  sector: z.array(z.enum(SECTORS)).optional(),
  refrigerant: refrigerantIds.optional(),
  notRefrigerant: refrigerantIds.optional(),
  family: familyIds.optional(),
  notFamily: familyIds.optional(),
  onlyFamily: z.enum(Object.keys(families.families)).optional(),
  chargeLb: limits.optional(),
  action: z.array(z.enum(ACTIONS)).optional(),
  forPay: z.boolean().optional(),
  regime: z.array(z.string()).optional(),
  to: z
    .strictObject({ refrigerant: refrigerantIds.optional(), family: familyIds.optional() })
    .optional(),
})

const row = z.strictObject({
  when,
  answer: z.string().optional(),
  anyOf: z.array(z.enum(CERTIFICATE_IDS)).optional(),
  placeDecides: z.boolean().optional(),
  perhaps: z.array(z.enum(CERTIFICATE_IDS)).min(1).optional(),
  unsettled: z.boolean().optional(),
  statements: z.array(z.string()).min(1),
  cite: z.array(z.string()).min(1).optional(),
})

const file = z.strictObject({
  jurisdiction: z.enum(LAWS),
  name: z.string().min(2),
  sources: z.record(
    z.string(),
    z.strictObject({
      title: z.string().min(8),
      edition: z.string().min(4).optional(),
      url: z.url().optional(),
    }),
  ),
  statements: z.record(
    z.string(),
    z.strictObject({
      text: z.string().min(20),
      section: z.string().min(5),
      mark: statementOut.shape.mark,
      checked: z
        .string()
        .regex(/^2026-11(?:-25|-27)?$/u)
        .optional(),
      source: z.string(),
    }),
  ),
  regimes: z.record(z.string(), z.string()),
  tables: z.strictObject(Object.fromEntries(TOPICS.map((topic) => [topic, z.array(row)]))),
})

describe.each(LAWS)('the rules of %s', (name) => {
  const law = JURISDICTIONS[name]
  const rows = TOPICS.flatMap((topic) => law.tables[topic])

  it('fit the strict schema and name their own file', () => {
    expect(file.parse(law).jurisdiction).toBe(name)
  })

  it('cite only sources and statements that exist, and use all of them', () => {
    const used = new Set(rows.flatMap(({ statements }) => statements))
    expect([...used].sort()).toEqual(Object.keys(law.statements).sort())
    const cited = new Set(Object.values(law.statements).map(({ source }) => source))
    expect([...cited].sort()).toEqual(Object.keys(law.sources).sort())
  })

  it('cite in short only what the row says', () => {
    for (const { cite = [], statements } of rows) {
      for (const id of cite) expect(statements).toContain(id)
    }
  })

  it('say "unverified: look up" exactly where a statement is from memory', () => {
    for (const [id, { text, mark }] of Object.entries(law.statements)) {
      expect(/^unverified: look up /iu.test(text), id).toBe(mark === 'memory')
    }
  })

  it('never call a text of an annual edition current, nor leave out which edition it was', () => {
    for (const [id, { title, edition, url }] of Object.entries(law.sources)) {
      expect(`${title} ${edition ?? ''}`, id).not.toMatch(/current|in force today/iu)
      expect(edition === '2015 edition', id).toBe(url?.includes('18F/allregs') ?? false)
    }
    for (const [id, { text, source }] of Object.entries(law.statements)) {
      if (law.sources[source]?.edition === '2015 edition') {
        expect(text, id).not.toMatch(/\bcurrent(ly)?\b|in force|today(?!\s+was not seen)/u)
      }
    }
  })

  it('name an address for every text that was read', () => {
    for (const [id, { mark, source }] of Object.entries(law.statements)) {
      if (mark !== 'memory') expect(law.sources[source]?.url, id).toBeDefined()
    }
  })

  it('carry the date on which they were read, and none where they were not', () => {
    for (const [id, { checked, mark }] of Object.entries(law.statements)) {
      expect(checked === undefined, id).toBe(mark === 'memory')
    }
  })

  it('name a regime for every answer of the regime table, and only those in conditions', () => {
    const regimes = Object.keys(law.regimes)
    expect(new Set(law.tables.regime.map(({ answer }) => answer))).toEqual(new Set(regimes))
    for (const { when } of rows) {
      for (const id of when.regime ?? []) expect(regimes).toContain(id)
    }
  })

  it('never let an unverified statement alone forbid or allow', () => {
    for (const { answer, statements } of [
      ...law.tables.certificate,
      ...law.tables.venting,
      ...law.tables.retrofit,
    ]) {
      const marks = statements.map((id) => law.statements[id]?.mark)
      if (answer !== 'look-up')
        expect(
          marks.some((mark) => mark !== 'memory'),
          statements.join(),
        ).toBe(true)
    }
  })
})

it('give every substance of every refrigerant a family, each in one family only', () => {
  const listed = Object.values(families.families).flat()
  expect(new Set(listed).size).toBe(listed.length)
  for (const { composition } of refrigerants()) {
    for (const { substance } of composition) expect(listed).toContain(substance)
  }
})
