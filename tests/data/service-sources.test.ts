import { describe, expect, it } from 'vitest'
import airCheck from '../../data/service/air-check.json' with { type: 'json' }
import charging from '../../data/service/charging.json' with { type: 'json' }
import recovery from '../../data/service/recovery.json' with { type: 'json' }
import retrofit from '../../data/service/retrofit.json' with { type: 'json' }
import { MARKS } from '../../shared/sources.ts'

const files = { 'air-check': airCheck, charging, recovery, retrofit }

interface Row {
  readonly title: string
  readonly mark: string
  readonly url?: string
  readonly checked?: string
  readonly note?: string
}

describe.each(Object.entries(files))('sources of data/service/%s.json', (_, file) => {
  const sources = Object.entries(file.sources as Readonly<Record<string, Row>>)
  const statements = Object.values(file.statements as Readonly<Record<string, { source: string }>>)

  it('every statement names a source that is there', () => {
    const names = sources.map(([id]) => id)
    for (const { source } of statements) expect(names).toContain(source)
  })

  it('every source has a mark, and what was read has the date on which it was', () => {
    for (const [, source] of sources) {
      expect(Object.keys(MARKS)).toContain(source.mark)
      if (source.mark === 'verified' || source.mark === 'secondary') {
        expect(source.checked).toMatch(/^2026-11(-25)?$/u)
      }
    }
  })

  it('what is only remembered says so and shows no address as if it had been read', () => {
    for (const [, source] of sources.filter(([, entry]) => entry.mark === 'memory')) {
      expect(source.note).toMatch(/not read|look it up|cut off|was not|were not/iu)
      expect(source.url).toBeUndefined()
    }
  })
})
