import { chmodSync, rmSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { type Plugin, rolldown } from 'rolldown'
import {
  asciiOnly,
  builtinsByRequire,
  colorsUnasked,
  dataWhenUsed,
  fieldsAtHand,
  schemasWhenUsed,
  withoutSubprocess,
  writeZod,
} from './bundle-plugins.ts'

/**
 * `npm run build`: the command line and the server as they are installed, in `dist/`.
 *
 * What every command needs lies in one file: a file costs a third of a millisecond to find and link,
 * and there were thirty of them. Each calculation has its own files beside it.
 */

const at = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url))

/** What is needed whatever is asked. */
const ALWAYS = ['cli/start.ts', 'shared/refrigerant/index.ts'].map(at)

/** Modules that are loaded with {@link ALWAYS}, found while all of them are read. */
function alwaysLoaded(): { readonly plugin: Plugin; has(id: string): boolean } {
  const imports = new Map<string, readonly string[]>()
  let found: Set<string> | undefined
  const reach = (id: string, seen: Set<string>): Set<string> => {
    if (seen.has(id)) return seen
    seen.add(id)
    for (const next of imports.get(id) ?? []) reach(next, seen)
    return seen
  }
  return {
    plugin: {
      name: 'always-loaded',
      moduleParsed: ({ id, importedIds }) => void imports.set(id, importedIds),
    },
    has(id) {
      found ??= ALWAYS.reduce((seen, root) => reach(root, seen), new Set<string>())
      return found.has(id)
    },
  }
}

/** Writes the bundle into a folder; returns nothing, and throws where something cannot be found. */
export async function writeBundle(folder: string): Promise<void> {
  const always = alwaysLoaded()
  const bundle = await rolldown({
    input: { chargewright: at('cli/main.ts'), serve: at('worker/node/start.ts') },
    platform: 'node',
    transform: { target: 'node20', define: { __filename: 'import.meta.filename' } },
    plugins: [
      schemasWhenUsed,
      fieldsAtHand(),
      dataWhenUsed,
      withoutSubprocess,
      builtinsByRequire,
      colorsUnasked,
      always.plugin,
      asciiOnly,
    ],
    checks: { ineffectiveDynamicImport: false },
    onLog(_, { code, message }) {
      // What stands for a library must have all that is used of it.
      throw new Error(`${code}: ${message}`)
    },
  })
  await bundle.write({
    dir: folder,
    format: 'esm',
    minify: true,
    entryFileNames: '[name].mjs',
    chunkFileNames: 'part-[hash].mjs',
    codeSplitting: {
      groups: [{ name: 'always', test: (id) => always.has(id) || id.startsWith('\0rolldown') }],
    },
  })
  await bundle.close()
  await writeZod(folder)
}

if (import.meta.main) {
  rmSync(at('dist'), { recursive: true, force: true })
  await writeBundle(at('dist'))
  chmodSync(at('dist/chargewright.mjs'), 0o755)
}
