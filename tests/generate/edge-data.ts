import { readFileSync } from 'node:fs'
import { relative } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Plugin } from 'esbuild'
import { fill, type Json } from '../../worker/edge/parts.ts'

/**
 * The data of the program of the edge: what is read while the program starts stays in it, all else lies
 * in a file beside it. Which is which is found by letting the program start once and looking at what it
 * reads.
 */

const ROOT = fileURLToPath(new URL('../../', import.meta.url))
const DATA = /[/]data[/].*[.]json$/

type Tree = Json[] | { [name: string]: Json }
const isTree = (value: unknown): value is Tree => typeof value === 'object' && value !== null

/** What was looked at in an object or a list: names that were read, and whether anything was at all. */
interface Looked {
  any: boolean
  readonly names: Set<string>
  readonly inside: Map<string, Looked>
}
export const unlooked = (): Looked => ({ any: false, names: new Set(), inside: new Map() })

/** The same tree, which notes what is read of it. */
export function watched<T extends Tree>(tree: T, looked: Looked): T {
  const known = new Map<string, unknown>()
  const look = (name: string | symbol) => {
    looked.any = true
    if (typeof name === 'string' && Object.hasOwn(tree, name)) looked.names.add(name)
  }
  return new Proxy(tree, {
    get(target, name, receiver) {
      look(name)
      const value: unknown = Reflect.get(target, name, receiver)
      if (typeof name !== 'string' || !Object.hasOwn(target, name) || !isTree(value)) return value
      const inside = looked.inside.get(name) ?? unlooked()
      looked.inside.set(name, inside)
      const found = known.get(name) ?? watched(value, inside)
      known.set(name, found)
      return found
    },
    has(target, name) {
      look(name)
      return Reflect.has(target, name)
    },
    ownKeys(target) {
      looked.any = true
      return Reflect.ownKeys(target)
    },
    getOwnPropertyDescriptor(target, name) {
      look(name)
      return Reflect.getOwnPropertyDescriptor(target, name)
    },
  })
}

/** A value in two: what must stand in the program, and what is put into that later. */
export interface Split {
  readonly here: Json
  readonly rest: Json | undefined
}

/** Shorter than this, nothing is gained by leaving a text out. */
const SHORT = 12

/**
 * Splits a value by what was read of it. What nothing was read of leaves an empty object or list, of
 * which others may have got hold; an object that was read keeps all of its names, so in their order.
 */
export function split(value: Json, looked: Looked | undefined): Split {
  if (!isTree(value)) return { here: value, rest: undefined }
  if (!looked?.any) {
    const isEmpty = Object.keys(value).length === 0
    return { here: Array.isArray(value) ? [] : {}, rest: isEmpty ? undefined : value }
  }
  const here: { [name: string]: Json } = {}
  const rest: { [name: string]: Json } = {}
  for (const [name, member] of Object.entries(value)) {
    if (isTree(member)) {
      const parts = split(member, looked.inside.get(name))
      here[name] = parts.here
      if (parts.rest !== undefined) rest[name] = parts.rest
    } else if (looked.names.has(name) || JSON.stringify(member).length < SHORT) {
      here[name] = member
    } else {
      here[name] = 0
      rest[name] = member
    }
  }
  return {
    here: Array.isArray(value) ? Object.values(here) : here,
    rest: Object.keys(rest).length === 0 ? undefined : rest,
  }
}

/** Whether both parts together are the whole, its order included. */
export function isWhole(value: Json, { here, rest }: Split): boolean {
  const again = structuredClone(here)
  if (rest !== undefined) fill(again, structuredClone(rest))
  return JSON.stringify(again) === JSON.stringify(value)
}

const read = (path: string): Tree => JSON.parse(readFileSync(path, 'utf8')) as Tree

/** Each data file comes from a function of this name. */
export const watching = (dataOf: string): Plugin => ({
  name: 'data that is watched',
  setup(bundle) {
    bundle.onLoad({ filter: DATA }, ({ path }) => ({
      contents: `export default ${dataOf}(${JSON.stringify(relative(ROOT, path))})`,
      loader: 'js',
    }))
  },
})

/** Data files in two, by their number in the program. */
export interface SplitFiles {
  readonly numbers: ReadonlyMap<string, number>
  readonly splits: ReadonlyMap<string, Split>
}

/** Splits each file by what a program reads of it while it starts. */
export function splitFiles(start: (data: (file: string) => unknown) => void): SplitFiles {
  const looks = new Map<string, Looked>()
  const trees = new Map<string, Tree>()
  start((file) => {
    const looked = unlooked()
    const tree = read(`${ROOT}${file}`)
    looks.set(file, looked)
    trees.set(file, tree)
    return watched(tree, looked)
  })
  const splits = new Map<string, Split>()
  for (const [file, tree] of [...trees].sort(([a], [b]) => (a < b ? -1 : 1))) {
    const parts = split(tree, looks.get(file))
    if (!isWhole(tree, parts)) throw new Error(`${file} is not what it was once it is put together`)
    splits.set(file, parts)
  }
  return { numbers: new Map([...splits.keys()].map((file, i) => [file, i])), splits }
}

/** The text of the file beside the program: what was left out of each file, by its number. */
export function restOf({ numbers, splits }: SplitFiles): string {
  const rest = [...splits].flatMap(([file, parts]) =>
    parts.rest === undefined ? [] : [[numbers.get(file) ?? -1, parts.rest] as const],
  )
  // ASCII alone: a text with one other letter in it is kept at two bytes a letter.
  return JSON.stringify(Object.fromEntries(rest)).replace(
    /[^\0-\x7f]/g,
    (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`,
  )
}

/** Puts into the program what must stand there of each data file. */
export const withPartOfData = ({ numbers, splits }: SplitFiles): Plugin => ({
  name: 'part of the data',
  setup(bundle) {
    bundle.onLoad({ filter: DATA }, ({ path }) => {
      const file = relative(ROOT, path)
      const parts = splits.get(file)
      // Of what is loaded later than at the start, as pictures are: it stays in the program.
      if (parts === undefined) return undefined
      const here = JSON.stringify(parts.here)
      if (parts.rest === undefined) return { contents: `export default ${here}`, loader: 'js' }
      return {
        contents: `import { part } from ${JSON.stringify(`${ROOT}worker/edge/parts.ts`)}
export default /* @__PURE__ */ part(${numbers.get(file)}, ${here})`,
        loader: 'js',
      }
    })
  },
})

/** The data comes from the file beside the program. */
export const STORED_DATA: Plugin = {
  name: 'stored data',
  setup(bundle) {
    bundle.onResolve({ filter: /edge.data[.]ts$/ }, () => ({
      path: `${ROOT}worker/edge/stored-data.ts`,
    }))
  },
}
