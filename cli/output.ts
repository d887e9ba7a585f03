import { Option } from 'commander'

/** How an answer is written; `--units` and `--precise` belong to the operation's own input. */
export interface Output {
  readonly json?: boolean
  readonly csv?: boolean
  readonly steps?: boolean
  readonly sources?: boolean
  /** The whole sheet instead of the screen. */
  readonly full?: boolean
  readonly markdown?: boolean
  /** The customer's copy of an order, without internals. */
  readonly customer?: boolean
  /** Values to write into an order, `name=value`. */
  readonly set?: readonly string[]
  readonly save?: boolean
  /** File of an order to begin. */
  readonly new?: string
  /** False where `--no-settings` leaves the shop's settings out. */
  readonly settings?: boolean
  readonly progress?: boolean
  /** File that the answer is drawn into; `-` for standard output. */
  readonly svg?: string
  /** Which picture, where the step has more than one. */
  readonly diagram?: string
}

export const outputOptions = (): readonly Option[] => [
  new Option('--json', 'Print exactly one JSON value; for rows, one a line'),
  new Option('--csv', 'Print CSV, one line a row').conflicts(['json']),
  new Option('--full', 'Print the whole sheet: cautions in full, steps, assumptions, sources'),
  new Option('--no-settings', "Leave the shop's settings out"),
  new Option('--progress', 'On a terminal, tell how far a run of rows is'),
  new Option('--steps', 'Print how the figures came about'),
  new Option('--sources', 'Print the sources in full: addresses, dates, notes'),
]

export const markdownOption = (): Option =>
  new Option('--markdown', 'Print a sheet in Markdown').conflicts(['json', 'csv'])

/** Options of the picture of an answer. */
export const pictureOptions = (kinds: readonly string[] = []): readonly Option[] => [
  new Option('--svg <file>', 'Draw the answer into a file; "-" draws it instead of the answer'),
  new Option('--diagram <kind>', `Which picture: ${kinds.join(' | ')}; the first if not given`),
]

/** Options of an order's file. */
export const orderOptions = (): readonly Option[] => [
  new Option(
    '--new <file>',
    'Begin an order: asks ten questions at most, never writes over a file',
  ),
  new Option(
    '--set <name=value>',
    'Fill in a value, such as readings.suctionPressure="32 psig"; may be repeated',
  ).argParser((text: string, before: readonly string[] = []) => [...before, text]),
  new Option('--save', 'Write what --set fills in back into the file'),
  new Option('--customer', "Print the customer's copy, without internals").conflicts([
    'json',
    'csv',
  ]),
]
