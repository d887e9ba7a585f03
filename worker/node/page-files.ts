import { existsSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { serveStatic } from '@hono/node-server/serve-static'
import type { MiddlewareHandler } from 'hono'
import { DOCUMENTS } from '../documents/addresses.ts'
import { EVERY_ANSWER } from '../reply.ts'
import { keptFor } from '../static-files.ts'

/** Where the page's files lie: beside the bundled server, or built from the source tree. */
const FOLDERS = ['./page', '../../dist/page'].map((path) =>
  fileURLToPath(new URL(path, import.meta.url)),
)

/** The folder of the built page, or nothing where it was not built. */
export const pageFolder = (): string | undefined =>
  FOLDERS.find((folder) => existsSync(join(folder, 'index.html')))

/**
 * Serves the files of the page, compressed when it was built, with the headers of every answer;
 * whatever is none of them goes on to the app. Without a built page, so does everything.
 */
export function pageFiles(folder: string | undefined = pageFolder()): MiddlewareHandler {
  if (folder === undefined) return (_, next) => next()
  const known = addressesIn(folder)
  const serve = serveStatic({
    root: folder,
    precompressed: true,
    onFound: (_, context) => {
      const headers = { ...EVERY_ANSWER, 'Cache-Control': keptFor(context.req.path) }
      for (const [name, value] of Object.entries(headers)) context.header(name, value)
    },
  })
  return (context, next) => (known.has(context.req.path) ? serve(context, next) : next())
}

/** What there is to ask for: what is for the edge alone, and what is compressed, has no address. */
function addressesIn(folder: string): ReadonlySet<string> {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && !/^[._]|\.(?:br|gz)$/u.test(entry.name))
    .map(({ parentPath, name }) =>
      join(parentPath, name).slice(folder.length).replaceAll('\\', '/'),
    )
  const addresses = files.map((file) => (file.startsWith('/') ? file : `/${file}`))
  return new Set(['/', ...addresses.filter((address) => !address.startsWith(DOCUMENTS))])
}
