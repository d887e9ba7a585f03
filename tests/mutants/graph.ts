import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseSync } from 'oxc-parser'
import type { Project } from './project.ts'

/** The files of its own tree that a file imports, statically or by `import()`. */
function importsOf(root: string, file: string): readonly string[] {
  if (!file.endsWith('.ts')) return []
  const text = readFileSync(join(root, file), 'utf8')
  const { module } = parseSync(file, text)
  const named = [
    ...module.staticImports.map(({ moduleRequest }) => moduleRequest.value),
    ...module.staticExports.flatMap(({ entries }) =>
      entries.flatMap(({ moduleRequest }) => moduleRequest?.value ?? []),
    ),
    ...module.dynamicImports.map(({ moduleRequest: { start, end } }) =>
      text.slice(start + 1, end - 1),
    ),
  ]
  return named.filter((name) => name.startsWith('.')).map((name) => join(file, '..', name))
}

/** Whether a test reads files of the tree by name, so that it may see any of the data. */
const readsFiles = (root: string, file: string): boolean =>
  readFileSync(join(root, file), 'utf8').includes('node:fs')

export type Reach = (file: string) => readonly string[]

/** For each file, the tests that could see a fault in it. */
export function reachOf({ root, looks }: Project, files: readonly string[]): Reach {
  const known = new Set(files)
  const imports = new Map<string, readonly string[]>()
  const tests = files.filter(looks).map((test) => {
    const reached = new Set([test])
    for (const file of reached) {
      if (!imports.has(file))
        imports.set(
          file,
          importsOf(root, file).filter((name) => known.has(name)),
        )
      for (const next of imports.get(file) ?? []) reached.add(next)
    }
    const opens = [...reached].some((file) => file.startsWith('tests/') && readsFiles(root, file))
    return { test, reached, opens }
  })
  return (file) =>
    tests
      .filter(({ reached, opens }) => reached.has(file) || (opens && file.endsWith('.json')))
      .map(({ test }) => test)
}
