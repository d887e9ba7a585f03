import { existsSync } from 'node:fs'
import type { Command } from 'commander'
import { CalcError } from '../../shared/errors.ts'
import type { Streams } from '../streams.ts'

/** What the server's entry offers: it reads and checks its settings itself, the environment behind them too. */
interface ServerEntry {
  start(
    given: Readonly<Record<string, string>>,
    write: (text: string) => void,
  ): Promise<{ readonly url: string }>
}

/**
 * Where the server's entry lies: beside the bundled command line, or in the source tree.
 *
 * The command line and the server are two doors that know nothing of each other. So the server is
 * not imported as source: it is a program of its own, found by its path when `serve` asks for it.
 */
const ENTRIES = [
  new URL('./serve.mjs', import.meta.url),
  new URL('../../worker/node/start.ts', import.meta.url),
]

export function serveCommand(program: Command, streams: Streams): Command {
  return program
    .command('serve')
    .summary("Serve the API to a shop's own network")
    .description(
      "Serves the API, its description and its reference by HTTP, without account or internet. Only this machine is served unless a host is given: 0.0.0.0 opens it to the shop's network. Each request is a line on standard error. SIGTERM or Ctrl-C ends it when open requests are answered.",
    )
    .option('--host <address>', 'Address to listen on; else HOST, else 127.0.0.1')
    .option('--port <number>', 'Port to listen on, 0 for any that is free; else PORT, else 8787')
    .option(
      '--cors <origins>',
      'Web pages that may call it from elsewhere: origins with commas, or *; else CORS_ORIGINS',
    )
    .option('--tls-cert <file>', 'Certificate for https, PEM; else TLS_CERT')
    .option('--tls-key <file>', 'Its key, PEM; else TLS_KEY')
    .option(
      '--stop-within <seconds>',
      'How long open requests may take once it is told to end; else STOP_WITHIN, else 10',
    )
    .addHelpText('after', '\nExample:\n  chargewright serve --host 0.0.0.0 --port 8080')
    .action(async (given: Readonly<Record<string, string>>) => {
      const { url } = await started(await entry(), given, streams)
      streams.err(`chargewright serves ${url} (stop with Ctrl-C)\n`)
    })
}

async function started(
  server: ServerEntry,
  given: Readonly<Record<string, string>>,
  streams: Streams,
): ReturnType<ServerEntry['start']> {
  try {
    return await server.start(given, streams.err)
  } catch (error) {
    if (!(error instanceof Error)) throw error
    throw new CalcError('refused', error.message, {
      hint: 'hint' in error ? String(error.hint) : 'Add --help for the settings.',
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
