import { Command, CommanderError } from 'commander'
import { ABOUT } from '../shared/about.ts'
import { drawingIn } from '../shared/diagram/options.ts'
import { CalcError } from '../shared/errors.ts'
import { kebab } from '../shared/input/index.ts'
import type { Operation } from '../shared/operation.ts'
import { jsonText } from '../shared/visible.ts'
import { operationsFor } from './catalogue.ts'
import { addOptions, calculateCommand } from './commands/calculate.ts'
import { completionCommand } from './commands/completion.ts'
import { refrigerantsCommand } from './commands/refrigerants.ts'
import { serveCommand } from './commands/serve.ts'
import { settingsCommand } from './commands/settings.ts'
import { EXIT, type ExitStatus, exitStatusOf } from './exit.ts'
import { joinQuantities } from './input/join-quantities.ts'
import { fullOptions } from './input/option-names.ts'
import { EVERYDAY } from './input/shorthand.ts'
import { markdownOption, orderOptions, outputOptions, pictureOptions } from './output.ts'
import { errorText } from './render/error.ts'
import { inkOf } from './render/ink.ts'
import { hanging } from './render/wrap.ts'
import type { Streams } from './streams.ts'

const epilogue = (width: number) =>
  [
    '',
    'Quantities:',
    ...hanging(
      '',
      '32psig, 2.2barg, 15inHg vac, 47psia, 500micron; 48F, 9C; 3lb8oz, 340g; 8floz, 240mL; 3/8in, 18mm; 12h. With what the instrument is worth: "210 ±4 psig". Pressure and temperature of one place in one word: 32psig/48F. A bare number is refused.',
      2,
      width,
    ),
    'Answers:',
    ...hanging(
      '',
      'One screen; --full for the whole sheet, --steps, --sources, --json, --csv. -u us or -u si for one unit system.',
      2,
      width,
    ),
    'Settings:',
    ...hanging(
      '',
      'chargewright settings keeps altitude, law, units, instruments and people; an option overrides them, --no-settings leaves them out.',
      2,
      width,
    ),
    'Exit status:',
    ...hanging(
      '',
      '0 answered, a stop included; 1 the calculation refuses; 2 the input is not understood.',
      2,
      width,
    ),
    'Example:',
    `  chargewright ${EVERYDAY.saturation}`,
    ...hanging(
      '',
      'chargewright readings -h shows the line of a working day, so does each.',
      2,
      width,
    ),
  ].join('\n')

/** A command line, set off by blanks, is broken already. */
const boxed = (line: string, width: number) =>
  line.startsWith('  ') ? line : hanging('', line, 0, width).join('\n')

/** Room that a description needs beside its option; with less it stands under it. */
const LEAST_ROOM = 30
const UNDER = 6

/** An option or command with its description beside it, or under it where the terminal is narrow. */
function helpItem(term: string, termWidth: number, text: string, width: number): string {
  const start = 2 + termWidth + 2
  if (text === '') return `  ${term}`
  return width - start >= LEAST_ROOM
    ? hanging(`  ${term}`, text, start, width).join('\n')
    : [`  ${term}`, ...hanging('', text, UNDER, width)].join('\n')
}

/** The command line: one command an operation, and the few that are not calculations. */
export function createProgram(
  operations: readonly Operation[],
  streams: Streams,
  done: (status: ExitStatus) => void,
): Command {
  const ink = inkOf(streams.color.out)
  const program = new Command('chargewright')
    .description(ABOUT.description)
    .version(ABOUT.version, '-V, --version', 'Print the version')
    .helpOption('-h, --help', 'Print help: of a command, after its name')
    .exitOverride()
    .configureOutput({
      writeOut: streams.out,
      // Errors are printed once, by `run`, in the form that was asked for.
      writeErr: () => {},
      getOutHelpWidth: () => streams.width,
      getOutHasColors: () => streams.color.out,
    })
    .configureHelp({
      styleTitle: ink.title,
      subcommandTerm: (command) => command.name(),
      boxWrap: (text, width) =>
        text
          .split('\n')
          .map((line) => boxed(line, width))
          .join('\n'),
      formatItem: (term, termWidth, text) => helpItem(term, termWidth, text, streams.width),
    })
    .addHelpText('after', () => epilogue(streams.width))
  program.commandsGroup('Calculations, in the order of a visit:')
  const calculations = new Map(
    operations.map((operation) => [calculateCommand(program, operation, streams, done), operation]),
  )
  if (operations.length > 1) addOthers(program, operations, streams, done)
  program.hook('preSubcommand', (_, command) => {
    const operation = calculations.get(command)
    if (operation) addOptions(command, operation, streams.width)
  })
  return program
}

/** What is no calculation; where the one that is asked for is known, nobody asks for these. */
function addOthers(
  program: Command,
  operations: readonly Operation[],
  streams: Streams,
  done: (status: ExitStatus) => void,
): void {
  program.commandsGroup('Besides:')
  refrigerantsCommand(program, streams, done)
  settingsCommand(program, streams, done)
  serveCommand(program, streams)
  completionCommand(program, operations, streams)
  program.addHelpCommand(
    new Command('help').argument('[command]').summary('Print help').helpGroup('Besides:'),
  )
}

/**
 * Runs one command line.
 *
 * Prints nothing but the answer to `streams.out`; errors go to `streams.err`, as JSON where `--json` asks for it.
 *
 * @returns The exit status; see {@link EXIT}.
 */
export async function run(argv: readonly string[], streams: Streams): Promise<ExitStatus> {
  let status: ExitStatus = EXIT.answered
  const words = [...helpLast(joinQuantities(argv))]
  const operations = await operationsFor(words)
  const operation = operations.find(({ name }) => name === words[0])
  const program = createProgram(operations, streams, (reached) => {
    status = reached
  })
  const known = program.commands.some((command) => command.name() === words[0])
  if (!known && words[0] !== undefined && !words[0].startsWith('-')) words.splice(1)
  if (argv.length === 0) {
    program.outputHelp()
    return status
  }
  try {
    refuseContradiction(words)
    const full = operation ? fullOptions(words, operation, otherOptions) : words
    await program.parseAsync(full, { from: 'user' })
    return status
  } catch (error) {
    if (error instanceof CommanderError && error.exitCode === 0) return EXIT.answered
    const known = error instanceof CommanderError ? misuse(error) : error
    if (!(known instanceof CalcError)) throw error
    streams.err(
      argv.includes('--json') ? `${jsonText(known)}\n` : errorText(known, streams, operation),
    )
    return exitStatusOf[known.code]
  }
}

/** Options that every calculation has beside its fields. */
const otherOptions = () => [
  ...[...outputOptions(), markdownOption(), ...orderOptions(), ...pictureOptions()].map(
    ({ long }) => (long ?? '').replace(/^--/u, ''),
  ),
  'input',
  'help',
  'settings',
  ...Object.keys(drawingIn).map(kebab),
]

/** `help table` as `table --help`, so that the options are there to be explained. */
const helpLast = (argv: readonly string[]) => {
  const [first, second] = argv
  return first === 'help' && second !== undefined ? [second, '--help'] : argv
}

/** `--sealed --no-sealed`: of two answers to one question the last would win unseen. */
function refuseContradiction(words: readonly string[]): void {
  const yes = words.find((word) => word.startsWith('--') && words.includes(`--no-${word.slice(2)}`))
  if (yes === undefined) return
  throw new CalcError('bad-input', `Both ${yes} and --no-${yes.slice(2)} are given.`, {
    hint: 'Give one of them.',
  })
}

/** "error: unknown option '--presure'\n(Did you mean --pressure?)" as the project's own error. */
function misuse(error: CommanderError): CalcError {
  const [message = '', suggestion = ''] = error.message.replace(/^error: /u, '').split('\n')
  const sentence = `${message.charAt(0).toUpperCase()}${message.slice(1)}`.replace(/\.?$/u, '.')
  return new CalcError('bad-input', sentence, {
    hint: suggestion.replace(/^\((.*)\)$/u, '$1') || 'Add --help for what there is.',
  })
}
