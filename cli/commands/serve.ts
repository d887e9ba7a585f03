import { existsSync } from 'node:fs'
import { type Command, InvalidArgumentError } from 'commander'
import { CalcError } from '../../shared/errors.ts'
import type { Streams } from '../streams.ts'

/** What the server's entry offers. */
interface ServerEntry {
  start(options: {
    readonly host: string
    readonly port: number
    readonly cors?: string
  }): Promise<{ readonly url: string }>
}

/**
 * Where the server's entry lies: beside the bundled command line, or in the source tree.
 *
 * The command line and the server are two doors that know nothing of each other. So the server is
 * not imported as source: it is a program of its own, found by its path when `serve` asks for it.
 */
const ENTRIES = [
  new URL('./serve.mjs', import.meta.url),
  new URL('../../worker/node.ts', import.meta.url),
]

export function serveCommand(program: Command, streams: Streams): Command {
  return program
    .command('serve')
    .summary("Serve the API to a shop's own network")
    .description(
      "Serves the API, its description and its reference by HTTP, without account or internet. Only this machine is served unless a host is given: 0.0.0.0 opens it to the shop's network.",
    )
    .option('--host <address>', 'Address to listen on', '127.0.0.1')
    .option('--port <number>', 'Port to listen on, 0 for any that is free', port, 8787)
    .option(
      '--cors <origins>',
      'Web pages that may call it from elsewhere: origins with commas, or *',
    )
    .addHelpText('after', '\nExample:\n  chargewright serve --host 0.0.0.0 --port 8080')
    .action(async (options: { host: string; port: number; cors?: string }) => {
      const server = await started(await entry(), options)
      streams.err(`chargewright serves ${server.url} (stop with Ctrl-C)\n`)
    })
}

async function started(
  server: ServerEntry,
  options: { host: string; port: number; cors?: string },
): ReturnType<ServerEntry['start']> {
  try {
    return await server.start(options)
  } catch (error) {
    throw new CalcError('refused', error instanceof Error ? error.message : String(error), {
      hint: 'Give another --port (0 takes any that is free) or an address of this machine as --host.',
    })
  }
}

async function entry(): Promise<ServerEntry> {
  const found = ENTRIES.find((url) => existsSync(url))
  if (!found) {
    throw new CalcError('refused', 'The server is not beside this command line.', {
      hint: 'Build it with "npm run build", or start it with "npm start".',
    })
  }
  return (await import(found.href)) as ServerEntry
}

function port(text: string): number {
  const value = /^\d{1,5}$/u.test(text) ? Number(text) : Number.NaN
  if (!(value <= 65535)) throw new InvalidArgumentError('A port is a number from 0 to 65535.')
  return value
}
