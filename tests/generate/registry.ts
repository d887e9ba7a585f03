import { readFileSync } from 'node:fs'

/** `npm run data` writes the registry of refrigerants: what lies in `data/refrigerants` is in it. */

export const REGISTRY = new URL('../../shared/refrigerant/registry.ts', import.meta.url)

/** Designations in their order: by number, then by what follows it. */
export const inOrder = (ids: readonly string[]): readonly string[] =>
  ids.toSorted((a, b) => numberOf(a) - numberOf(b) || (a < b ? -1 : 1))

const numberOf = (id: string) => Number(/\d+/u.exec(id)?.[0] ?? 0)

/** 'R-1234ze(E)' as the name of a constant. */
const wordOf = (id: string) => `r${id.replace(/^R-/u, '').replace(/[^A-Za-z0-9]/gu, '')}`

const LISTED = 'export const ENTRIES: readonly Entry[] = ['

/** The text of the registry with these refrigerants; what stands between imports and list is kept. */
export function registryText(ids: readonly string[], before = readFileSync(REGISTRY, 'utf8')) {
  const sorted = inOrder(ids)
  const from = before.indexOf('import type')
  const to = before.indexOf(LISTED)
  if (from < 0 || to < from) throw new Error('shared/refrigerant/registry.ts has another shape')
  const imported = (suffix: string, folder: string) =>
    sorted.map(
      (id) =>
        `import ${wordOf(id)}${suffix} from '../../data/${folder}/${id}.json' with { type: 'json' }\n`,
    )
  const entries = sorted.map((id) => `  entry(${wordOf(id)}, ${wordOf(id)}Curves),\n`)
  return [
    ...imported('', 'refrigerants'),
    ...imported('Curves', 'saturation'),
    before.slice(from, to),
    `${LISTED}\n`,
    ...entries,
    ']\n',
  ].join('')
}
