import { createHash } from 'node:crypto'
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { brotliCompressSync, constants, gzipSync } from 'node:zlib'
import { build, type Metafile, type Plugin } from 'esbuild'
import { ABOUT } from '../../shared/about.ts'
import { diagramStyle } from '../../shared/diagram/scene/theme.ts'
import { ICON } from '../../worker/pages/icon.ts'
import { EVERY_ANSWER } from '../../worker/reply.ts'
import { ASK_EACH_TIME, FINGERPRINTED, FOR_EVER } from '../../worker/static-files.ts'
import { ICON_FILES, ICONS_FOLDER } from './icons.ts'

const ROOT = new URL('../..', import.meta.url).pathname
const SOURCE = join(ROOT, 'worker/page')
const START = join(SOURCE, 'start.ts')
/** What is loaded before the first answer and draws nothing. */
const CORE = join(SOURCE, 'core.ts')

/** One address and what is at it. */
type Files = Map<string, string | Uint8Array>

export interface BuiltPage {
  readonly files: Files
  /** Addresses that a first visit loads before anything can be asked. */
  readonly first: readonly string[]
}

/**
 * zod ties the writing of JSON Schemas to every schema; the page never asks for one (its forms come from
 * shared/input/schema-of.ts), and a phone need not load it.
 */
export const WITHOUT_JSON_SCHEMA: Plugin = {
  name: 'without JSON Schema',
  setup(bundle) {
    bundle.onLoad({ filter: /zod.v4.core.[a-z-]*json-schema[a-z-]*[.]js$/ }, ({ path }) => {
      const names = readFileSync(path, 'utf8').matchAll(/^export (?:const|function|class) (\w+)/gmu)
      const nothing = "() => () => { throw new Error('No JSON Schema is written here.') }"
      return {
        contents: [...names].map(([, name]) => `export const ${name} = ${nothing}`).join('\n'),
      }
    })
  },
}

/**
 * zod ties every form of text that there is, an e-mail address or a credit card, to each schema of text;
 * no field of ours is one of them.
 */
const WITHOUT_FORMS_OF_TEXT: Plugin = {
  name: 'without forms of text',
  setup(bundle) {
    const without = (filter: RegExp, ...parts: readonly (readonly [RegExp, string])[]) =>
      bundle.onLoad({ filter }, ({ path }) => {
        const contents = parts.reduce(
          (text, [unused, instead]) => {
            const left = text.replaceAll(unused, instead)
            if (left === text) throw new Error(`${path} is not as it was: nothing to leave out.`)
            return left
          },
          readFileSync(path, 'utf8'),
        )
        return { contents }
      })
    without(
      /zod.v4.classic.schemas[.]js$/,
      [
        /^ {4}[a-z]+[0-9]*[(]params[)] [{]\n *return this[.]check[(]core[.]_[a-z0-9]+[(]Zod[A-Za-z0-9]+, params[)][)];\n {4}[}],?\n/gmu,
        '',
      ],
      // what a text must hold, and what is made of it
      [
        /^ {4}(?:includes|startsWith|endsWith|lowercase|uppercase|normalize|toLowerCase|toUpperCase|slugify)[(].*[)] [{]\n.*\n {4}[}],?\n/gmu,
        '',
      ],
    )
    without(
      /zod.v4.locales.en[.]js$/,
      [
        /const FormatDictionary = [{][^}]*[}]/gu,
        'const FormatDictionary = { regex: "input", date: "ISO date" }',
      ],
      // sizes of files, sets and maps
      [/^ +(?:file|set|map): [{].*[}],\n/gmu, ''],
    )
  },
}

/**
 * Whatever is loaded on demand is loaded on top of the core of the page (views on top of all that is
 * drawn at first, too), and says so: then the core is
 * one file, and not one for each set of steps that share something of it, which compresses better.
 */
const ON_TOP_OF_THE_FIRST: Plugin = {
  name: 'on top of the first part',
  setup(bundle) {
    bundle.onResolve({ filter: /^[.]/ }, ({ path, kind, resolveDir }) =>
      kind === 'dynamic-import' ? { path: join(resolveDir, path), namespace: 'later' } : undefined,
    )
    bundle.onLoad({ filter: /./, namespace: 'later' }, ({ path }) => ({
      contents: `import ${JSON.stringify(path.startsWith(SOURCE) ? START : CORE)}; export * from ${JSON.stringify(path)}`,
      resolveDir: dirname(path),
    }))
  },
}

/** All files of the page, by their addresses. */
export async function builtPage(): Promise<BuiltPage> {
  const { outputFiles, metafile } = await build({
    entryPoints: {
      start: START,
      compute: join(SOURCE, 'compute/apart.ts'),
      style: join(SOURCE, 'style.css'),
      later: join(SOURCE, 'later.css'),
    },
    absWorkingDir: ROOT,
    bundle: true,
    splitting: true,
    minify: true,
    format: 'esm',
    target: 'es2022',
    metafile: true,
    write: false,
    outdir: 'assets',
    entryNames: '[name]-[hash]',
    chunkNames: 'part-[hash]',
    logLevel: 'warning',
    // Licences stand once beside the files that they belong to.
    legalComments: 'external',
    plugins: [WITHOUT_JSON_SCHEMA, WITHOUT_FORMS_OF_TEXT, ON_TOP_OF_THE_FIRST],
    // Before any schema is made, whichever file makes the first: it would try to compile itself, which
    // the security policy refuses and reports.
    banner: { js: '(globalThis.__zod_globalConfig??={}).jitless=true;' },
  })
  const apart = outputOf(metafile, 'compute/apart.ts')
  const files: Files = new Map(
    outputFiles.map(({ path, contents }) => [FINGERPRINTED + basename(path), contents]),
  )
  const entry = outputOf(metafile, 'start.ts')
  const style = outputOf(metafile, 'style.css')
  const parts = [entry, ...staticParts(metafile, entry)].map(addressOf)
  files.set('/index.html', indexPage(parts, addressOf(style)))
  files.set('/manifest.webmanifest', JSON.stringify(MANIFEST))
  files.set('/favicon.svg', ICON)
  for (const { name } of ICON_FILES) files.set(`/${name}`, readFileSync(ICONS_FOLDER + name))
  // By a name that the page knows: what it leads to has its fingerprint.
  const later = addressOf(outputOf(metafile, 'later.css'))
  const looks = new TextDecoder().decode(bytesOf(files.get(later) ?? ''))
  files.set('/later.css', `${looks}${diagramStyle()}\n`)
  files.delete(later)
  files.set('/compute.js', `import '${addressOf(apart)}'\n`)
  files.set('/sw.js', await serviceWorker(files))
  return { files, first: ['/index.html', addressOf(style), ...parts] }
}

const addressOf = (output: string) => FINGERPRINTED + basename(output)

/** The output that an entry point became. */
function outputOf({ outputs }: Metafile, entry: string): string {
  const found = Object.entries(outputs).find(([, { entryPoint }]) =>
    entryPoint?.endsWith(`page/${entry}`),
  )
  if (!found) throw new Error(`${entry} was not built.`)
  return found[0]
}

/** What a file needs before it runs, and what that needs. */
function staticParts(
  metafile: Metafile,
  output: string,
  seen: ReadonlySet<string> = new Set(),
): readonly string[] {
  const found = new Set(seen)
  const imports = metafile.outputs[output]?.imports ?? []
  for (const { path, kind } of imports) {
    if (kind !== 'import-statement' || found.has(path)) continue
    found.add(path)
    for (const part of staticParts(metafile, path, found)) found.add(part)
  }
  return [...found]
}

const indexPage = (parts: readonly string[], style: string) => `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${ABOUT.name}</title>
<meta name="description" content="${ABOUT.description}">
<meta name="theme-color" content="#fbfaf6" media="(prefers-color-scheme: light)">
<meta name="theme-color" content="#171715" media="(prefers-color-scheme: dark)">
<link rel="icon" href="/favicon.svg" type="image/svg+xml">
<link rel="apple-touch-icon" href="/icon-192.png">
<link rel="manifest" href="/manifest.webmanifest">
<link rel="stylesheet" href="${style}">
${parts.map((part, index) => (index === 0 ? `<script type="module" src="${part}"></script>` : `<link rel="modulepreload" href="${part}">`)).join('\n')}
</head>
<body>
<noscript><p>This page computes in the browser and needs scripts. <a href="/reference">The API</a> does not.</p></noscript>
</body>
</html>
`

const MANIFEST = {
  name: ABOUT.name,
  short_name: ABOUT.name,
  description: ABOUT.description,
  start_url: '/',
  scope: '/',
  display: 'standalone',
  background_color: '#fbfaf6',
  theme_color: '#fbfaf6',
  icons: [
    { src: '/favicon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' },
    ...ICON_FILES.map(({ name, size, purpose }) => ({
      src: `/${name}`,
      sizes: `${size}x${size}`,
      type: 'image/png',
      purpose,
    })),
  ],
}

/** Knows every file by name; another file, another version. */
async function serviceWorker(files: Files): Promise<string> {
  const kept = [...files.keys()]
    .filter((address) => !address.endsWith('.LEGAL.txt'))
    .map((address) => (address === '/index.html' ? '/' : address))
  const hash = createHash('sha256')
  for (const [address, content] of files) hash.update(address).update(content)
  const { outputFiles } = await build({
    entryPoints: [join(SOURCE, 'offline/service-worker.ts')],
    bundle: true,
    minify: true,
    format: 'iife',
    write: false,
    define: {
      FILES: JSON.stringify(kept),
      VERSION: JSON.stringify(hash.digest('hex').slice(0, 16)),
    },
  })
  return outputFiles[0]?.text ?? ''
}

/** What the edge says with each file: the same as with an answer, and how long it may be kept. */
export function edgeHeaders(): string {
  const every = Object.entries(EVERY_ANSWER).map(([name, value]) => `  ${name}: ${value}`)
  return [
    '/*',
    ...every,
    `  Cache-Control: ${ASK_EACH_TIME}`,
    `${FINGERPRINTED}*`,
    '  ! Cache-Control',
    `  Cache-Control: ${FOR_EVER}`,
    '',
  ].join('\n')
}

/** Letters that a compressed file may be asked for with, and how it is made. */
const COMPRESSIONS = {
  br: (content: Uint8Array) =>
    brotliCompressSync(content, { params: { [constants.BROTLI_PARAM_QUALITY]: 11 } }),
  gz: (content: Uint8Array) => gzipSync(content, { level: 9 }),
} as const

/** Writes the page into a folder, each file plain and compressed; the folder is whole or as before. */
export async function writePage(folder: string): Promise<BuiltPage> {
  const page = await builtPage()
  if (isCurrent(folder, page)) return page
  mkdirSync(dirname(folder), { recursive: true })
  const next = mkdtempSync(join(dirname(folder), 'page-'))
  for (const [address, content] of page.files) {
    const path = join(next, address)
    mkdirSync(dirname(path), { recursive: true })
    const bytes = bytesOf(content)
    writeFileSync(path, bytes)
    // Compressed by what it is.
    if (address.endsWith('.png')) continue
    for (const [ending, compress] of Object.entries(COMPRESSIONS)) {
      writeFileSync(`${path}.${ending}`, compress(bytes))
    }
  }
  writeFileSync(join(next, '_headers'), edgeHeaders())
  // The edge compresses by itself.
  writeFileSync(join(next, '.assetsignore'), '*.br\n*.gz\n')
  rmSync(folder, { recursive: true, force: true })
  try {
    renameSync(next, folder)
  } catch {
    // Somebody else built it meanwhile.
    cpSync(next, folder, { recursive: true })
    rmSync(next, { recursive: true, force: true })
  }
  return page
}

/** The service worker knows every file by what is in it; what goes with them is compared by itself. */
const isCurrent = (folder: string, { files }: BuiltPage): boolean =>
  textOf(join(folder, 'sw.js')) === files.get('/sw.js') &&
  textOf(join(folder, '_headers')) === edgeHeaders()

const textOf = (path: string) => (existsSync(path) ? readFileSync(path, 'utf8') : undefined)

const bytesOf = (content: string | Uint8Array) =>
  typeof content === 'string' ? Buffer.from(content) : content

/** Bytes of a first visit, gzipped as they are served. */
export const firstBytes = ({ files, first }: BuiltPage): number =>
  first.reduce((sum, address) => sum + COMPRESSIONS.gz(bytesOf(files.get(address) ?? '')).length, 0)

if (process.argv[1] === import.meta.filename) {
  const page = await writePage(join(ROOT, 'dist/page'))
  const kB = (bytes: number) => `${(bytes / 1000).toFixed(1)} kB`
  const all = [...page.files.values()].reduce((sum, content) => sum + gzipSync(content).length, 0)
  console.error(
    `page: first load ${kB(firstBytes(page))} gzipped, all ${kB(all)}, ${page.files.size} files`,
  )
}
