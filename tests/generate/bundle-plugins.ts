import { readFileSync } from 'node:fs'
import { createRequire, isBuiltin } from 'node:module'
import { relative } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type Plugin, rolldown } from 'rolldown'
import * as schemas from '../../cli/schemas/index.ts'
import { DRAWING } from '../../shared/diagram/options.ts'
import { fieldsOf } from '../../shared/input/index.ts'
import { operations } from '../../shared/operations.ts'

/** What makes the bundled command line start sooner; none of it changes what a program does. */

const ROOT = fileURLToPath(new URL('../../', import.meta.url))
const SCHEMAS = `${ROOT}cli/schemas/`

/** Name of the file beside the bundle that zod lies in. */
const ZOD = 'zod.cjs'

/** `cli/schemas` stands for zod, which is loaded from a file of its own where that is not enough. */
export const schemasWhenUsed: Plugin = {
  name: 'schemas-when-used',
  resolveId: (id, importer) =>
    id === 'zod' && !importer?.includes('/node_modules/') ? `${SCHEMAS}index.ts` : undefined,
  transform(code, id) {
    return id === `${SCHEMAS}zod.ts` ? code.replace(`'zod')`, `'./${ZOD}')`) : undefined
  },
}

/** Writes what is used of zod, in the form that can be loaded in the middle of a calculation. */
export async function writeZod(folder: string): Promise<void> {
  const names = Object.keys(schemas).filter((name) => name !== 'NEVER')
  const entry = '\0zod-used'
  const bundle = await rolldown({
    input: { zod: entry },
    platform: 'node',
    transform: { target: 'node20' },
    plugins: [
      {
        name: 'zod-used',
        resolveId: (id) => (id === entry ? id : undefined),
        load: (id) => (id === entry ? `export { ${names.join(', ')} } from 'zod'` : undefined),
      },
      asciiOnly,
    ],
  })
  await bundle.write({ dir: folder, format: 'cjs', minify: true, entryFileNames: ZOD })
  await bundle.close()
}

/** What an operation or the drawing of a picture is called in its module, and its fields. */
function keepings(): ReadonlyMap<string, string> {
  const listed = readFileSync(`${ROOT}shared/operations.ts`, 'utf8')
  const modules = [...listed.matchAll(/^import \{ (\w+) \} from '\.\/(.*)'$/gmu)]
  const order = /const operations[^[]*\[\]? = \[([^\]]*)\]/su.exec(listed)?.[1] ?? ''
  const names = order.split(/[\s,]+/u).filter((name) => name !== '')
  const found = operations.map((operation, index) => {
    const name = names[index] ?? ''
    const file = modules.find(([, imported]) => imported === name)?.[2]
    if (file === undefined) throw new Error(`shared/operations.ts: no module of ${operation.name}`)
    return [`${ROOT}shared/${file}`, keeping(name, operation)] as const
  })
  return new Map([...found, [`${ROOT}shared/diagram/options.ts`, keeping('DRAWING', DRAWING)]])
}

const keeping = (name: string, from: Parameters<typeof fieldsOf>[0]) =>
  `;keepFields(${name}, () => ${parsed(fieldsOf(from))});`

/** A value as the text that it is read from: quicker to load than an object that is written out. */
const parsed = (value: unknown) => `JSON.parse(${JSON.stringify(JSON.stringify(value))})`

/** The fields of each input as plain data beside it, so that options need no schema. */
export function fieldsAtHand(): Plugin {
  const kept = keepings()
  return {
    name: 'fields-at-hand',
    transform(code, id) {
      const keep = kept.get(id)
      return keep === undefined
        ? undefined
        : `import { keepFields } from '${ROOT}shared/input/fields-of.ts'\n${code}\n${keep}`
    },
  }
}

/** Parts that are shorter are written out: they cost nothing, and names and designations are among them. */
const LONG_PART = 160

/** Each long part stands for all of them, until one is asked for. */
const READ_WHEN_USED = `
const put = (object, name, value) =>
  Object.defineProperty(object, name, { value, writable: true, enumerable: true, configurable: true })
export const whenUsed = (object, parse) => {
  const names = Object.keys(object).filter((name) => object[name] === undefined)
  const read = () => {
    const parts = parse()
    for (const name of names) put(object, name, parts[name])
  }
  for (const name of names) {
    Object.defineProperty(object, name, {
      get: () => (read(), object[name]),
      set: (value) => put(object, name, value),
      enumerable: true,
      configurable: true,
    })
  }
  return object
}
`
const WHEN_USED = '\0data-when-used'

/** Data is read from its text where it is first asked for: of forty refrigerants a run uses one. */
export const dataWhenUsed: Plugin = {
  name: 'data-when-used',
  resolveId: (id) => (id === WHEN_USED ? id : undefined),
  load: (id) => (id === WHEN_USED ? READ_WHEN_USED : undefined),
  transform: {
    filter: { id: /\/data\/[^\0]*\.json$/u },
    handler(text, id) {
      if (!relative(ROOT, id).startsWith('data/')) return undefined
      const data: unknown = JSON.parse(text)
      if (typeof data !== 'object' || data === null) return undefined
      const code = Array.isArray(data)
        ? `export default ${parsed(data)}`
        : `import { whenUsed } from '${WHEN_USED}'\n${whenUsed(data)}`
      return { code, moduleType: 'js' }
    },
  },
}

function whenUsed(data: object): string {
  const entries = Object.entries(data).map(([name, part]) => [name, JSON.stringify(part)] as const)
  const isLong = (part: string) => part.length > LONG_PART
  const long = entries.filter(([, part]) => isLong(part))
  const now = entries.map(
    ([name, part]) => `${JSON.stringify(name)}: ${isLong(part) ? 'undefined' : part}`,
  )
  const object = `{ ${now.join(', ')} }`
  if (long.length === 0) return `export default ${object}`
  const later = Object.fromEntries(long.map(([name, part]) => [name, JSON.parse(part)]))
  // Inside a function, so that its text is no part of what is kept of compiled code until it is read.
  return `export default /*@__PURE__*/ whenUsed(${object}, () => ${parsed(later)})`
}

/**
 * Modules of Node by `require`, each name by itself: an `import` of one reads all that it exports, and so
 * loads the streams and promises behind `node:fs` that nobody asks for.
 */
const BY_REQUIRE = '\0by-require:'
const REQUIRE = '\0require'
const require = createRequire(import.meta.url)
export const builtinsByRequire: Plugin = {
  name: 'builtins-by-require',
  resolveId(id, _, { kind }) {
    if (id === REQUIRE) return id
    if (!isBuiltin(id) || id === 'node:module') return undefined
    return kind === 'require-call' ? { id, external: true } : BY_REQUIRE + id
  },
  load(id) {
    if (id === REQUIRE) {
      return "import { createRequire } from 'node:module'\nexport const require = createRequire(import.meta.url)"
    }
    if (!id.startsWith(BY_REQUIRE)) return undefined
    const name = id.slice(BY_REQUIRE.length)
    const names = Object.keys(require(name)).filter(
      (each) => /^\w+$/u.test(each) && each !== 'default',
    )
    const exported = names.map((each) => `const $${each} = /*@__PURE__*/ part('${each}')`)
    return [
      `import { require } from '${REQUIRE}'`,
      `const all = /*@__PURE__*/ require(${JSON.stringify(name)})`,
      'const part = (name) => all[name]',
      ...exported,
      `export { all as default, ${names.map((each) => `$${each} as ${each}`).join(', ')} }`,
    ].join('\n')
  },
}

const STUB = '\0no-subprocess'

/** Subcommands that are programs of their own are not used here, and what would start them takes 5 ms to load. */
export const withoutSubprocess: Plugin = {
  name: 'without-subprocess',
  resolveId: (id, importer) =>
    id === 'node:child_process' && importer?.includes('/commander/') ? STUB : undefined,
  load: (id) => (id === STUB ? 'export default {}' : undefined),
}

/** Whether there is colour is ours to say: it need not look at the terminal, which would load its streams. */
export const colorsUnasked: Plugin = {
  name: 'colors-unasked',
  transform(code, id) {
    if (!id.endsWith('/picocolors/picocolors.js')) return undefined
    const unasked = code.replace('process || {}', '{}')
    if (unasked === code) throw new Error('picocolors asks the process in another way now')
    return unasked
  },
}

/** Letters beyond ASCII as escapes: with one of them in it, Node keeps a file at two bytes a letter. */
export const asciiOnly: Plugin = {
  name: 'ascii-only',
  generateBundle(_, files) {
    for (const file of Object.values(files)) {
      if (file.type !== 'chunk') continue
      file.code = file.code.replace(
        /[^\0-\x7f]/g,
        (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`,
      )
    }
  },
}
