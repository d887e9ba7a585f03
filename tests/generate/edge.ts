import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type BuildOptions, build, type Metafile } from 'esbuild'
import { minify } from 'rolldown/experimental'
import { GUIDES } from '../../shared/guides.ts'
import { operations } from '../../shared/operations.ts'
import { addressOf, DOCUMENTS } from '../../worker/documents/addresses.ts'
import { documents } from '../../worker/documents/made.ts'
import { PROBLEM_CODES } from '../../worker/pages/problems.ts'
import {
  restOf,
  type SplitFiles,
  STORED_DATA,
  splitFiles,
  watching,
  withPartOfData,
} from './edge-data.ts'
import { STORED_DOCUMENTS, WITHOUT_DESCRIPTIONS } from './edge-plugins.ts'
import { WITHOUT_JSON_SCHEMA, writePage } from './page.ts'

/**
 * `npm run build:edge`: the program of the edge, `dist/edge/index.js`, and among its files in `dist/page`
 * the documents that a server of one's own makes by itself. wrangler runs it before it serves or deploys.
 */

const ROOT = fileURLToPath(new URL('../../', import.meta.url))

export interface BuiltEdge {
  readonly program: Uint8Array
  /** The data beside it, and its address among the files. */
  readonly data: { readonly address: string; readonly text: string }
  readonly metafile: Metafile
}

const PLUGINS = [STORED_DOCUMENTS, STORED_DATA, WITHOUT_DESCRIPTIONS, WITHOUT_JSON_SCHEMA]

async function bundled(more: BuildOptions): Promise<{ text: string; metafile: Metafile }> {
  const { outputFiles, metafile } = await build({
    entryPoints: ['worker/index.ts'],
    absWorkingDir: ROOT,
    bundle: true,
    format: 'esm',
    target: 'es2022',
    conditions: ['workerd', 'worker', 'browser'],
    outdir: 'dist/edge',
    logLevel: 'warning',
    ...more,
    metafile: true,
    write: false,
  })
  const [program, ...others] = outputFiles ?? []
  if (program === undefined || others.length > 0) throw new Error('The edge takes one file.')
  return { text: program.text, metafile }
}

/** What the program reads of its data while it starts, by letting it start here. */
async function dataAtStart(): Promise<SplitFiles> {
  const { text } = await bundled({
    format: 'iife',
    plugins: [watching('dataOf'), ...PLUGINS],
    define: { DATA_NAME: '""' },
  })
  return splitFiles((dataOf) => {
    new Function('dataOf', text)(dataOf)
  })
}

export async function builtEdge(): Promise<BuiltEdge> {
  const files = await dataAtStart()
  const rest = restOf(files)
  const name = `data-${createHash('sha256').update(rest).digest('hex').slice(0, 12)}`
  const { text, metafile } = await bundled({
    minify: true,
    plugins: [withPartOfData(files), ...PLUGINS],
    define: { DATA_NAME: JSON.stringify(name) },
  })
  // A second minifier finds a fiftieth more.
  const { code, errors } = await minify('index.js', text, { module: true })
  if (errors.length > 0) throw new Error(errors.map(({ message }) => message).join('; '))
  return { program: Buffer.from(code), data: { address: addressOf(name), text: rest }, metafile }
}

/** Every document by its address. */
export async function storedDocuments(): Promise<ReadonlyMap<string, string>> {
  const { openapi, reference, problem, guide, front } = documents(operations)
  const names: readonly (readonly [name: string, text: Promise<string | undefined>])[] = [
    ['openapi', openapi({})],
    ['reference', reference({})],
    ['front', front({})],
    ...PROBLEM_CODES.map((code) => [`problem-${code}`, problem(code, {})] as const),
    ...GUIDES.map(({ name }) => [`guide-${name}`, guide(name, {})] as const),
  ]
  const found = new Map<string, string>()
  for (const [name, text] of names) found.set(addressOf(name), (await text) ?? '')
  return found
}

/** Writes what is not there as it is: whoever watches the folder is not called for nothing. */
function put(path: string, content: string | Uint8Array): void {
  const bytes = Buffer.from(content)
  if (existsSync(path) && readFileSync(path).equals(bytes)) return
  mkdirSync(dirname(path), { recursive: true })
  writeFileSync(path, bytes)
}

if (process.argv[1] === import.meta.filename) {
  const page = join(ROOT, 'dist/page')
  await writePage(page)
  for (const [address, text] of await storedDocuments()) put(join(page, address), text)
  const { program, data } = await builtEdge()
  put(join(page, data.address), data.text)
  put(join(ROOT, 'dist/edge/index.js'), program)
  // Of programs before this one.
  for (const name of readdirSync(join(page, DOCUMENTS))) {
    const isOld = /^data-.*[.]txt$/u.test(name) && !data.address.endsWith(name)
    if (isOld) rmSync(join(page, DOCUMENTS, name))
  }
}
