import type { Command } from 'commander'
import { diagramsOf } from '../../shared/diagram/index.ts'
import { DRAWING } from '../../shared/diagram/options.ts'
import { CalcError } from '../../shared/errors.ts'
import { gaugesIn, placeIn, scaleIn, thermometersIn } from '../../shared/fields/index.ts'
import { type Field, fieldsOf, kebab } from '../../shared/input/index.ts'
import type { Operation } from '../../shared/operation.ts'
import { visible } from '../../shared/visible.ts'
import { everydayText, exampleText } from '../example.ts'
import { EXIT, type ExitStatus } from '../exit.ts'
import { optionsOf, readOptions } from '../input/options.ts'
import { readInput } from '../input/rows.ts'
import { WORDS } from '../input/shorthand.ts'
import { sortWords } from '../input/words.ts'
import { merged } from '../order/merge.ts'
import { ANSWER_IDS, newOrder } from '../order/new.ts'
import { entriesOf, inputOf, saveInto } from '../order/set.ts'
import {
  markdownOption,
  type Output,
  orderOptions,
  outputOptions,
  pictureOptions,
} from '../output.ts'
import { longChoicesText } from '../render/choices.ts'
import { applied, withApplied } from '../settings/apply.ts'
import { NO_SETTINGS } from '../settings/schema.ts'
import { readSettings } from '../settings/store.ts'
import type { Streams } from '../streams.ts'
import { own, type Play } from './own.ts'
import { pictureOf } from './picture.ts'
import { writer } from './writer.ts'

/** The command of an operation: name and summary now, options when it is called. */
export function calculateCommand(
  program: Command,
  operation: Operation,
  streams: Streams,
  done: (status: ExitStatus) => void,
): Command {
  return program
    .command(operation.name)
    .summary(operation.summary)
    .description(operation.description)
    .helpOption('-h, --help', 'Print this help')
    .allowExcessArguments()
    .action(async (given: Output & Record<string, unknown>, command: Command) => {
      done(await calculate(operation, command.args, given, streams))
    })
}

/** Reading a schema takes a while, so only the command that is called gets its options. */
export function addOptions(command: Command, operation: Operation, width: number): void {
  const groups = WORDS[operation.name] ?? []
  const words = [
    ...(takesRefrigerant(operation) ? ['[refrigerant]'] : []),
    ...(groups.length > 0 ? ['[quantities]'] : []),
    '[file]',
  ]
  command.usage(`${words.join(' ')} [options]`)
  command.description([operation.description, ...everyday(operation, width)].join('\n\n'))
  command.optionsGroup('Input:')
  const fields = fieldsOf(operation)
  const last = fields.filter(({ name }) => name in INSTRUMENTS)
  const first = fields.filter(({ name }) => !(name in INSTRUMENTS) && !OUTPUT.has(name))
  const add = (field: Field) => {
    for (const option of optionsOf(field, operation.example[field.name])) command.addOption(option)
  }
  for (const field of first) add(field)
  command.option(
    '--input <file>',
    'JSON, a JSON object a line, or CSV under a line of field names; "-" reads standard input. Options given beside it hold for every row',
  )
  if (last.length > 0) command.optionsGroup('Place and instruments:')
  for (const field of last) add(field)
  command.optionsGroup('Output:')
  for (const field of fields) if (OUTPUT.has(field.name)) add(field)
  for (const option of outputOptions()) command.addOption(option)
  const pictures = diagramsOf(operation.name).map(({ kind }) => kind)
  if (pictures.length > 0) {
    for (const option of pictureOptions(pictures)) command.addOption(option)
    for (const field of fieldsOf(DRAWING)) add(field)
  }
  if (own[operation.name]?.markdown) {
    for (const option of [markdownOption(), ...orderOptions()]) command.addOption(option)
  }
  command.addHelpText('after', () => {
    const choices = longChoicesText(fields, width)
    return `${choices}\nExample by options:\n  ${exampleText(operation, width - 2)}`
  })
}

/** Fields that a shop's settings can keep, for the end of a help. */
const INSTRUMENTS: object = { ...placeIn, ...gaugesIn, ...thermometersIn, ...scaleIn }
/** Fields that choose how an answer is shown. */
const OUTPUT: ReadonlySet<string> = new Set(['units', 'precise'])

/** The line of a working day, and what words without an option stand for. */
function everyday(operation: Operation, width: number): readonly string[] {
  const line = everydayText(operation, width - 2)
  const groups = (WORDS[operation.name] ?? []).map((group) => group.map(kebab).join('/'))
  return [
    ...(line === undefined ? [] : [`Everyday:\n  ${line}`]),
    ...(groups.length === 0
      ? []
      : [`Quantities need no option; in this order: ${groups.join(', ')}.`]),
  ]
}

async function calculate(
  operation: Operation,
  words: readonly string[],
  given: Output & Record<string, unknown>,
  streams: Streams,
): Promise<ExitStatus> {
  const fields = fieldsOf(operation)
  const refrigerants = await refrigerantsAmong(words)
  const onDisk = words.filter((word) => !refrigerants.has(word) && streams.isThere(word))
  const { file, fields: fromWords } = sortWords(
    operation,
    words,
    given,
    new Set(onDisk),
    refrigerants,
  )
  const options: Record<string, unknown> = {
    ...fromWords,
    ...(await readOptions(fields, given, streams)),
  }
  const { precise, units } = options
  const write = writer(operation, given, { precise: precise === true, units }, streams)
  const settings = given.settings === false ? NO_SETTINGS : await readSettings(streams.settings)
  const entries = given.set ? entriesOf(given.set, fields) : []
  const over = merged(inputOf(entries), options)
  const whole = (value: object) => {
    const input = merged(value, over) as Record<string, unknown>
    const shop = applied(operation, settings, input)
    return { input: { ...shop.fields, ...input }, shop }
  }
  const answer = (value: unknown) => {
    if (!isObject(value)) return operation.run(value)
    const { input, shop } = whole(value)
    return withApplied(operation.run(input), shop)
  }
  const picture = await pictureOf(operation, given, streams)
  const drawn = (value: unknown) =>
    picture ? picture(isObject(value) ? whole(value).input : value) : undefined
  if (given.new !== undefined) {
    await newOrder(given.new, answersOf(options), streams)
    streams.out(`${visible(given.new)} is begun: open it, or fill it in by --set.\n`)
    return EXIT.answered
  }
  if (given.save) checkSave(file, entries.length)
  const one = async (value: unknown, answered = answer(value)) => {
    await drawn(value)
    return given.svg === '-' ? EXIT.answered : write.one(answered)
  }
  if (file === undefined) {
    const played = await playedOn(operation, given, options, streams)
    return played ? played({ answer, write: write.one }) : one({})
  }
  const input = await readInput(file, fields, streams)
  if (input.type === 'one') {
    const answered = answer(input.value)
    if (given.save) await saveInto(file, entries, streams)
    return one(input.value, answered)
  }
  if (picture) {
    throw new CalcError('bad-input', 'A picture is made of one input, not of rows.', {
      hint: 'Leave --svg out, or give one input.',
    })
  }
  return write.rows(input, answer)
}

/** Where somebody sits at a terminal, a calculation may go on from question to question. */
async function playedOn(
  operation: Operation,
  given: Output,
  options: Readonly<Record<string, unknown>>,
  streams: Streams,
) {
  const load = own[operation.name]?.play
  if (!load) return undefined
  const ask = given.json || given.csv ? undefined : streams.ask
  if (!ask) return undefined
  const { isOpen, play } = await load()
  if (!isOpen(options)) return undefined
  return (door: Pick<Play, 'answer' | 'write'>) => play({ ...door, ask, options })
}

/** @throws {CalcError} `bad-input` where there is nothing to write, or no file to write it into. */
function checkSave(file: string | undefined, entries: number): void {
  if (file !== undefined && file !== '-' && /\.(?:ya?ml|json)$/iu.test(file) && entries > 0) return
  throw new CalcError('bad-input', '--save takes the file of an order and something to write.', {
    hint: 'chargewright work-order loader-7.yaml --set "record.charged=2 lb 6 oz" --save',
  })
}

/** What options say of a new order. */
function answersOf(options: Readonly<Record<string, unknown>>) {
  const machine = isObject(options.machine) ? (options.machine as Record<string, unknown>) : {}
  const place = isObject(options.place) ? (options.place as Record<string, unknown>) : {}
  const all = { ...options, ...machine, law: place.law }
  const texts = ANSWER_IDS.flatMap((id) => {
    const value = (all as Record<string, unknown>)[id]
    if (value === undefined) return []
    return [[id, value === true ? 'yes' : String(value)] as const]
  })
  return Object.fromEntries(texts)
}

const isObject = (value: unknown): value is object =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const takesRefrigerant = (operation: Operation) =>
  fieldsOf(operation).some(({ name }) => name === 'refrigerant')

/** Words that are the name of a refrigerant. */
async function refrigerantsAmong(words: readonly string[]): Promise<ReadonlySet<string>> {
  if (words.length === 0) return new Set()
  const { refrigerant } = await import('../../shared/refrigerant/index.ts')
  const isKnown = (word: string) => {
    try {
      return refrigerant(word) !== undefined
    } catch {
      return false
    }
  }
  return new Set(words.filter(isKnown))
}
