import type { Command } from 'commander'
import { EXIT, type ExitStatus } from '../exit.ts'
import { inkOf } from '../render/ink.ts'
import type { Page } from '../render/pairs.ts'
import type { Streams } from '../streams.ts'

/** `refrigerants`: what can be named in a calculation; `refrigerants R-134a`: what is known of one. */
export function refrigerantsCommand(
  program: Command,
  streams: Streams,
  done: (status: ExitStatus) => void,
): Command {
  return program
    .command('refrigerants')
    .summary('List the refrigerants, or show one')
    .description(
      'Lists the refrigerants that the calculations know, or shows what is known of one: composition, safety class, warming and ozone potential, usual oils, sources.',
    )
    .argument('[name]', 'Designation or another name: R-134a, 134a, propane')
    .option('--json', 'Print exactly one JSON value')
    .addHelpText('after', '\nExample:\n  chargewright refrigerants R-1234yf')
    .action(async (name: string | undefined, options: { json?: boolean }) => {
      const { refrigerant, refrigerants } = await import('../../shared/refrigerant/index.ts')
      const { detailText, listText } = await import('../render/refrigerants.ts')
      const page: Page = { ink: inkOf(streams.color.out), width: streams.width, precise: false }
      if (name === undefined) {
        streams.out(options.json ? json(refrigerants()) : listText(refrigerants(), page))
      } else {
        const { info } = refrigerant(name)
        streams.out(options.json ? json(info) : detailText(info, page))
      }
      done(EXIT.answered)
    })
}

const json = (value: unknown) => `${JSON.stringify(value)}\n`
