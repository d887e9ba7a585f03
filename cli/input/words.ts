import * as z from 'zod'
import { CalcError } from '../../shared/errors.ts'
import { type Field, fieldsOf, kebab } from '../../shared/input/index.ts'
import { type Operation, parseInput } from '../../shared/operation.ts'
import { joinWords } from './join-quantities.ts'
import { type Group, SECOND_NAME, WORDS } from './shorthand.ts'

/** What the bare words of a command line give. */
export interface Words {
  readonly file: string | undefined
  readonly fields: Readonly<Record<string, string>>
}

/** "3/8 in" and "32psig/48F" hold a stroke and are no files. */
const looksLikeFile = (word: string) =>
  word === '-' || /^[^\d].*[/\\]|\.(?:json|ndjson|jsonl|csv|ya?ml)$/iu.test(word)

/**
 * Sorts the words that stand without an option: an input file (or `-`), quantities by their unit, and
 * the refrigerant where the operation takes one.
 *
 * @param given - What options gave already; a word for the same is refused.
 * @param onDisk - Words that name a file or a directory and no refrigerant.
 * @param refrigerants - Words that are the name of one: "407C" is no temperature.
 * @throws {CalcError} `bad-input` for a word that is none of these.
 */
export function sortWords(
  operation: Operation,
  words: readonly string[],
  given: Readonly<Record<string, unknown>>,
  onDisk: ReadonlySet<string> = new Set(),
  refrigerants: ReadonlySet<string> = new Set(),
): Words {
  const names = fieldsOf(operation).map(({ name }) => name)
  const free = (field: string) => names.includes(field) && given[field] === undefined
  const places = ['refrigerant', SECOND_NAME[operation.name] ?? ''].filter(free)
  const groups = (WORDS[operation.name] ?? []).filter((group) => group.every(free))
  const fields: Record<string, string> = {}
  const files: string[] = typeof given.input === 'string' ? [given.input] : []
  for (const word of joinWords(words)) {
    if (looksLikeFile(word) || onDisk.has(word)) {
      files.push(word)
      continue
    }
    if (refrigerants.has(word) && places.length > 0) {
      fields[places.shift() ?? ''] = word
      continue
    }
    const open = groups.filter((group) => group.every((field) => fields[field] === undefined))
    const filled = open.map((group) => fill(operation, group, word)).find((found) => found)
    if (filled) {
      Object.assign(fields, filled)
      continue
    }
    const place = /^[+-]?\d+(?:\.\d+)?\s*(?:psi|bar|kpa)/iu.test(word) ? undefined : places.shift()
    if (place !== undefined) fields[place] = word
    else if (names.includes('refrigerant')) throw leftOver(operation, open, word)
    else files.push(word)
  }
  const [file, extra] = files
  if (extra !== undefined) {
    throw new CalcError('bad-input', `"${extra}" is one word too many.`, {
      hint: 'Give one input; many go into one file, a JSON object a line.',
    })
  }
  return { file, fields }
}

const takes = (operation: Operation, field: string, text: string): boolean =>
  schemaOf(operation, field)?.safeParse(text).success ?? false

const schemaOf = ({ input }: Operation, field: string): z.ZodType | undefined =>
  input instanceof z.ZodObject ? (input.shape[field] as z.ZodType | undefined) : undefined

/** The fields that a word fills: the first of the group alone, or each with a part of it. */
function fill(
  operation: Operation,
  group: Group,
  word: string,
): Readonly<Record<string, string>> | undefined {
  if (takes(operation, group[0], word)) return { [group[0]]: word }
  const parts = word.split('/').map((part) => part.trim())
  if (parts.length !== group.length || group.length === 1) return undefined
  const pairs = group.map((field, index) => [field, parts[index] ?? ''] as const)
  return pairs.every(([field, part]) => takes(operation, field, part))
    ? Object.fromEntries(pairs)
    : undefined
}

/** Says what is wrong with a quantity that no field takes, in the words of the field it is for. */
function leftOver(operation: Operation, open: readonly Group[], word: string): CalcError {
  const [group] = open
  if (/^[+-]?[\d.]/u.test(word) && group) {
    const part = word.split('/')[0] ?? word
    const schema = schemaOf(operation, group[0])
    try {
      if (schema) parseInput(schema, part)
    } catch (error) {
      if (error instanceof CalcError) return error
    }
  }
  return new CalcError('bad-input', `"${word}" is one word too many.`, {
    hint: hintOf(fieldsOf(operation), WORDS[operation.name]),
  })
}

function hintOf(fields: readonly Field[], groups: readonly Group[] | undefined): string {
  const [first] = groups ?? []
  const field = fields.find(({ name }) => name === first?.[0])
  const example = field?.shape.type === 'quantity' ? field.shape.examples[0] : undefined
  return field && example !== undefined
    ? `Give it by its option, such as --${kebab(field.name)} "${example}".`
    : 'Give it by its option: --help lists them.'
}
