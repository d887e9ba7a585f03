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

function isAllowed(file: string, target: string): boolean {
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
    expect(importsOf('cli/main.ts')).toEqual(
      expect.arrayContaining(['node:module', './program.ts']),
    )
    expect(importsOf('shared/cautions.ts')).toContain('../data/service/cautions.json')
    expect(isAllowed('shared/x.ts', 'node')).toBe(false)
    expect(isAllowed('shared/x.ts', 'commander')).toBe(false)
    expect(isAllowed('cli/x.ts', 'worker')).toBe(false)
    expect(isAllowed('worker/x.ts', 'node')).toBe(false)
    expect(isAllowed('worker/x.ts', 'cli')).toBe(false)
    expect(isAllowed('cli/x.ts', 'tests')).toBe(false)
    expect(targetOf('cli/commands/x.ts', '../../worker/app.ts')).toBe('worker')
  })

  it('let zod in by shared/schema.ts only: its own builders bring along all that it can do', () => {
    const others = ['shared', 'cli', 'worker']
      .flatMap(filesOf)
      .filter((file) => file !== 'shared/schema.ts' && file !== 'worker/openapi/schemas.ts')
      .filter((file) => importsOf(file).some((name) => name === 'zod' || name.startsWith('zod/')))
    expect(others).toEqual([])
    // It makes no schema: of zod it takes the writer of JSON Schemas alone.
    const text = readFileSync(join(root, 'worker/openapi/schemas.ts'), 'utf8')
    expect(new Set(text.match(/\bz\.\w+/gu))).toEqual(new Set(['z.ZodType', 'z.toJSONSchema']))
  })

  it('keep the clock, chance and the world out of shared', () => {
    const impure = filesOf('shared').filter((file) =>
      /\bDate\.now\b|\bnew Date\(\s*\)|\bMath\.random\b|\bprocess\.|\bfetch\(|\bperformance\./u.test(
        readFileSync(join(root, file), 'utf8'),
      ),
    )
    expect(impure).toEqual([])
  })
})
