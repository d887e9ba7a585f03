import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { MARKS } from '../../shared/sources.ts'

interface Row {
  readonly title: string
  readonly mark: string
  readonly url?: string
  readonly checked?: string
  readonly note?: string
}

interface File {
  readonly sources?: Readonly<Record<string, Row>>
  readonly statements?: Readonly<Record<string, { readonly source: string }>>
}

const folder = new URL('../../data/service/', import.meta.url)
const files = readdirSync(folder)
  .map((name) => ({
    name,
    ...(JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as File),
  }))
  // Warming potentials are what the registry was checked against; no answer cites them.
  .filter(({ name, sources }) => sources !== undefined && name !== 'warming-potentials.json')

describe.each(files)('sources of data/service/$name', ({ sources = {}, statements = {} }) => {
  it('every statement names a source that is there', () => {
    for (const { source } of Object.values(statements)) {
      if (source !== undefined) expect(Object.keys(sources)).toContain(source)
    }
  })

  it('every source has a mark, and what was read has the date on which it was', () => {
    for (const source of Object.values(sources)) {
      expect(Object.keys(MARKS)).toContain(source.mark)
      if (source.mark === 'verified' || source.mark === 'secondary') {
        expect(source.checked, source.title).toMatch(/^2026-11(?:-25|-27)?$/u)
      }
    }
  })

  it('what is only remembered says so and shows no address as if it had been read', () => {
    for (const source of Object.values(sources).filter(({ mark }) => mark === 'memory')) {
      const said = `${source.title} ${source.note ?? ''}`
      expect(said).toMatch(/from memory|not read|look (it )?up|cut off|was not|were not/iu)
      expect(source.url).toBeUndefined()
      expect(source.checked).toBeUndefined()
    }
  })
})

it('every source stands behind something: a row, a statement, or a step of the code', () => {
  const shared = new URL('../../shared/', import.meta.url)
  const code = readdirSync(shared, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => readFileSync(new URL(name, shared), 'utf8'))
    .join('\n')
  const rows = readdirSync(folder)
    .map((name) => readFileSync(new URL(name, folder), 'utf8'))
    .join('\n')
  for (const { name, sources = {} } of files) {
    for (const id of Object.keys(sources)) {
      // As a value, not as the key that it is listed under.
      const cited = rows.replaceAll(`"${id}":`, '').includes(`"${id}"`) || code.includes(`'${id}'`)
      expect(cited, `${id} in ${name}`).toBe(true)
    }
  }
})

it('one id means one source: an answer that joins several steps lists each id once', () => {
  const titles = new Map<string, string>()
  for (const { name, sources = {} } of files) {
    for (const [id, { title, url }] of Object.entries(sources)) {
      const meant = `${title} ${url ?? ''}`
      expect(titles.get(id) ?? meant, `${id} in ${name}`).toBe(meant)
      titles.set(id, meant)
    }
  }
})

/** Every `source`, `…Source` and `sources` of a row, wherever it stands in the file. */
function cited(value: unknown, key = ''): readonly string[] {
  if (typeof value === 'string') return /^(?:source|\w+Source)$/u.test(key) ? [value] : []
  if (Array.isArray(value)) {
    return value.flatMap((entry) => cited(entry, key === 'sources' ? 'source' : ''))
  }
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([name, entry]) => cited(entry, name))
}

it('every row names a source that is there', () => {
  const everywhere = new Set(files.flatMap(({ sources = {} }) => Object.keys(sources)))
  let rows = 0
  for (const { name, sources: _, ...rest } of files) {
    for (const id of cited(rest)) {
      expect(everywhere.has(id), `${id} in ${name}`).toBe(true)
      rows += 1
    }
  }
  expect(rows).toBeGreaterThan(300)
})
