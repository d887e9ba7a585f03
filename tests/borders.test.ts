import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative } from 'node:path'
import { describe, expect, it } from 'vitest'

const root = new URL('..', import.meta.url).pathname

/** Which rooms and packages each room may import; `npm` is any package, `node` what Node itself has. */
const ALLOWED: Readonly<Record<string, readonly string[]>> = {
  data: [],
  shared: ['shared', 'data', 'zod', 'psychrolib'],
  cli: ['cli', 'shared', 'npm', 'node'],
  worker: ['worker', 'shared', 'npm'],
}
/** What runs the app on Node's own server. */
const isForNode = (file: string) => file.startsWith('worker/node/')

const filesOf = (room: string): readonly string[] =>
  readdirSync(join(root, room), { recursive: true, encoding: 'utf8' })
    .filter(
      (name) => /\.(?:ts|mts|js|mjs|tsx)$/u.test(name) && !/^(?:dist|\.wrangler)\//u.test(name),
    )
    .map((name) => join(room, name))

/** Every module that a file names, statically, by `import()` or by re-export. */
function importsOf(file: string): readonly string[] {
  const text = readFileSync(join(root, file), 'utf8').replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gmu, '')
  const patterns = [
    /\b(?:import|export)\s[^'"`;]*?from\s*['"]([^'"]+)['"]/gu,
    /\bimport\s*['"]([^'"]+)['"]/gu,
    /\b(?:import|require)\(\s*['"]([^'"]+)['"]/gu,
  ]
  return patterns.flatMap((pattern) =>
    [...text.matchAll(pattern)].flatMap(([, name]) => name ?? []),
  )
}

/** The room, package or `node` that an import leads to. */
function targetOf(file: string, name: string): string {
  if (name.startsWith('node:')) return 'node'
  if (!name.startsWith('.'))
    return name.startsWith('@')
      ? name.split('/').slice(0, 2).join('/')
      : (name.split('/')[0] ?? name)
  const path = relative(root, join(root, dirname(file), name))
  return path.split('/')[0] ?? path
}

/** Packages that a part of a room may import beside what its room may. */
const ALLOWED_IN: readonly (readonly [folder: string, packages: readonly string[]])[] = [
  ['shared/diagram/', ['d3-array']],
]

function isAllowed(file: string, target: string): boolean {
  if (ALLOWED_IN.some(([folder, also]) => file.startsWith(folder) && also.includes(target))) {
    return true
  }
  const room = file.split('/')[0] ?? ''
  const allowed = ALLOWED[room] ?? []
  if (target === 'node') return allowed.includes('node') || isForNode(file)
  if (target in ALLOWED || target === 'tests' || target === 'package.json')
    return allowed.includes(target)
  return allowed.includes(target) || allowed.includes('npm')
}

describe('borders between the rooms', () => {
  it.each(Object.keys(ALLOWED))('%s imports only what it may', (room) => {
    const crossings = filesOf(room).flatMap((file) =>
      importsOf(file)
        .filter((name) => !isAllowed(file, targetOf(file, name)))
        .map((name) => `${file} imports ${name}`),
    )
    expect(crossings).toEqual([])
  })

  it('are seen by this test: it finds imports of every form', () => {
    expect(importsOf('cli/main.ts')).toEqual(expect.arrayContaining(['node:module', './start.ts']))
    expect(importsOf('shared/cautions.ts')).toContain('../data/service/cautions.json')
    expect(isAllowed('shared/x.ts', 'node')).toBe(false)
    expect(isAllowed('shared/x.ts', 'commander')).toBe(false)
    expect(isAllowed('shared/diagram/x.ts', 'd3-array')).toBe(true)
    expect(isAllowed('shared/diagram/x.ts', 'd3-scale')).toBe(false)
    expect(isAllowed('shared/service/x.ts', 'd3-array')).toBe(false)
    expect(isAllowed('cli/x.ts', 'worker')).toBe(false)
    expect(isAllowed('worker/x.ts', 'node')).toBe(false)
    expect(isAllowed('worker/x.ts', 'cli')).toBe(false)
    expect(isAllowed('cli/x.ts', 'tests')).toBe(false)
    expect(targetOf('cli/commands/x.ts', '../../worker/app.ts')).toBe('worker')
  })

  it('keep the steps, the frame and their wording out of what they compute with', () => {
    const below = ['substance', 'refrigerant', 'physics']
    const may: Readonly<Record<string, readonly string[]>> = {
      substance: ['substance', 'errors.ts', 'gas-constants.ts'],
      refrigerant: [
        'refrigerant',
        'substance',
        'quantity',
        'errors.ts',
        'kept.ts',
        'nearest.ts',
        'sources.ts',
        'source-table.ts',
      ],
      physics: [...below, 'quantity', 'errors.ts', 'gas-constants.ts', 'sources.ts', 'psychrolib'],
    }
    const crossings = below.flatMap((room) =>
      filesOf(`shared/${room}`).flatMap((file) =>
        importsOf(file)
          .map((name) =>
            name.startsWith('.') ? relative(root, join(root, dirname(file), name)) : name,
          )
          .filter((path) => !path.startsWith('data/'))
          .map((path) => path.split('/').at(path.startsWith('shared/') ? 1 : 0) ?? path)
          .filter((target) => !may[room]?.includes(target))
          .map((target) => `${file} imports ${target}`),
      ),
    )
    expect(crossings).toEqual([])
  })

  it.each(['shared/substance', 'shared/refrigerant', 'shared/physics', 'shared/work-order'])(
    'leave no circle in %s, type-only imports included',
    (room) => {
      const files = new Map(
        filesOf(room).map((file) => [
          file,
          importsOf(file)
            .filter((name) => name.startsWith('.'))
            .map((name) => relative(root, join(root, dirname(file), name))),
        ]),
      )
      const circle = (file: string, path: readonly string[]): readonly string[] | undefined => {
        if (path.includes(file)) return [...path, file]
        for (const next of files.get(file) ?? []) {
          const found = circle(next, [...path, file])
          if (found) return found
        }
        return undefined
      }
      expect([...files.keys()].flatMap((file) => circle(file, []) ?? [])).toEqual([])
    },
  )

  it('keep the clock, chance and the world out of shared', () => {
    const impure = filesOf('shared').filter((file) =>
      /\bDate\.now\b|\bnew Date\(\s*\)|\bMath\.random\b|\bprocess\.|\bfetch\(|\bperformance\./u.test(
        readFileSync(join(root, file), 'utf8'),
      ),
    )
    expect(impure).toEqual([])
  })
})
