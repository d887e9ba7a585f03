import type { Command } from 'commander'
import { CalcError } from '../../shared/errors.ts'
import { fieldsOf } from '../../shared/input/index.ts'
import type { Operation } from '../../shared/operation.ts'
import { exampleText } from '../example.ts'
import type { ExitStatus } from '../exit.ts'
import { optionsOf, readOptions } from '../input/options.ts'
import { readInput } from '../input/rows.ts'
import { markdownOption, type Output, outputOptions } from '../output.ts'
import { longChoicesText } from '../render/choices.ts'
import type { Streams } from '../streams.ts'
import { own } from './own.ts'
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
  const words = takesRefrigerant(operation) ? '[refrigerant] [input-file]' : '[input-file]'
  command.usage(`${words} [options]`)
  command.optionsGroup('Input:')
  for (const field of fieldsOf(operation)) {
    if (field.name !== 'units' && field.name !== 'precise') {
      for (const option of optionsOf(field, operation.example[field.name]))
        command.addOption(option)
    }
  }
  command.option(
    '--input <file>',
    'JSON, a JSON object a line, or CSV under a line of field names; "-" reads standard input. Options given beside it hold for every row',
  )
  command.optionsGroup('Output:')
  for (const field of fieldsOf(operation)) {
    if (field.name === 'units' || field.name === 'precise') {
      for (const option of optionsOf(field)) command.addOption(option)
    }
  }
  for (const option of outputOptions()) command.addOption(option)
  if (own[operation.name]?.markdown) command.addOption(markdownOption())
  const choices = longChoicesText(fieldsOf(operation), width)
  command.addHelpText('after', `${choices}\nExample:\n  ${exampleText(operation, width - 2)}`)
}

async function calculate(
  operation: Operation,
  words: readonly string[],
  given: Output & Record<string, unknown>,
  streams: Streams,
): Promise<ExitStatus> {
  const fields = fieldsOf(operation)
  const { file, refrigerant } = sortWords(
    operation,
    words,
    given,
    await namesOnDisk(words, streams),
  )
  const options: Record<string, unknown> = {
    ...refrigerant,
    ...(await readOptions(fields, given, streams)),
  }
  const { precise, units } = options
  const write = writer(operation, given, { precise: precise === true, units }, streams)
  if (file === undefined) return write.one(operation.run(options))
  const input = await readInput(file, fields, streams)
  const withOptions = (value: unknown) => (isObject(value) ? { ...value, ...options } : value)
  if (input.type === 'one') return write.one(operation.run(withOptions(input.value)))
  return write.rows(input, (value) => operation.run(withOptions(value)))
}

const isObject = (value: unknown): value is object =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const takesRefrigerant = (operation: Operation) =>
  fieldsOf(operation).some(({ name }) => name === 'refrigerant')

/** Words that name something on the disk and no refrigerant. */
async function namesOnDisk(
  words: readonly string[],
  streams: Streams,
): Promise<ReadonlySet<string>> {
  const there = words.filter(streams.isThere)
  if (there.length === 0) return new Set()
  const { refrigerant } = await import('../../shared/refrigerant/index.ts')
  const isKnown = (word: string) => {
    try {
      return refrigerant(word) !== undefined
    } catch {
      return false
    }
  }
  return new Set(there.filter((word) => !isKnown(word)))
}

interface Words {
  readonly file: string | undefined
  readonly refrigerant: { readonly refrigerant?: string }
}

/** Bare words: an input file (or `-`), and the refrigerant where the operation takes one. */
function sortWords(
  operation: Operation,
  words: readonly string[],
  given: Readonly<Record<string, unknown>>,
  onDisk: ReadonlySet<string>,
): Words {
  const looksLikeFile = (word: string) =>
    word === '-' || /[/\\]|\.(?:json|ndjson|jsonl|csv)$/iu.test(word) || onDisk.has(word)
  const isRefrigerant = (word: string) => takesRefrigerant(operation) && !looksLikeFile(word)
  const names = words.filter(isRefrigerant)
  const files = words.filter((word) => !isRefrigerant(word))
  if (typeof given.input === 'string') files.unshift(given.input)
  if (typeof given.refrigerant === 'string') names.unshift(given.refrigerant)
  const extra = names[1] ?? files[1]
  if (extra !== undefined) {
    throw new CalcError('bad-input', `"${extra}" is one word too many.`, {
      hint: looksLikeFile(extra)
        ? 'Give one input; many go into one file, a JSON object a line.'
        : 'Put a value that has a space in it in quotation marks: --pressure "32 psig".',
    })
  }
  const [name] = names
  return { file: files[0], refrigerant: name === undefined ? {} : { refrigerant: name } }
}
