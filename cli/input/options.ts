import { Option } from 'commander'
import { CalcError } from '../../shared/errors.ts'
import {
  type Field,
  kebab,
  parseJson,
  readItems,
  readText,
  type Shape,
} from '../../shared/input/index.ts'
import { choicesOf, isLong } from '../render/choices.ts'
import type { Streams } from '../streams.ts'
import { readTextFile } from './read-file.ts'
import { LETTERS } from './shorthand.ts'

/** The option of a field, `--suction-pressure <quantity>`; for a yes or no that may stay open, both answers. */
export function optionsOf(field: Field, example?: unknown): readonly Option[] {
  const name = kebab(field.name)
  const help = helpOf(field, example)
  const { shape } = field
  if (shape.type === 'flag') {
    const yes = new Option(`--${name}`, help)
    const no = new Option(`--no-${name}`, field.preset === true ? help : 'The opposite')
    if (field.preset === undefined) return [yes, no]
    return [field.preset === true ? no : yes]
  }
  const letter = LETTERS[field.name]
  const flags = `${letter === undefined ? '' : `${letter}, `}--${name} <${placeholder(shape)}>`
  const option = new Option(flags, help)
  if (shape.type !== 'list') return [option.argParser(once(name))]
  return [option.argParser((text, before: readonly string[] = []) => [...before, text])]
}

/** A value that was typed twice is more often a slip than meant, so neither is taken. */
const once = (name: string) => (text: string, before: unknown) => {
  if (before === undefined) return text
  throw new CalcError('bad-input', `--${name} is given twice: "${String(before)}" and "${text}".`, {
    hint: 'Give it once.',
  })
}

/** What a value looks like, in one word. */
export function placeholder(shape: Shape): string {
  switch (shape.type) {
    case 'quantity':
    case 'text':
    case 'number':
    case 'choice':
      return shape.type
    case 'list':
      return shape.item.type === 'record' ? 'name=value,…' : placeholder(shape.item)
    case 'record':
      return 'name=value,…'
    case 'flag':
      return 'yes|no'
    case 'any':
      return 'value'
  }
}

function helpOf(field: Field, example: unknown): string {
  const choices = choicesOf(field.shape)
  const told = choices.length > 0 && choices.every((choice) => mentions(field.description, choice))
  const parts = told ? [] : [...shapeHelp(field.shape, example)]
  if (field.required) parts.push('needed')
  else if (typeof field.preset === 'string') parts.push(`${field.preset} if not given`)
  return [field.description, ...parts].filter((part) => part !== '').join('; ')
}

/** Whether a text has `word` as a word of its own: then it need not be listed again. */
const mentions = (text: string, word: string) =>
  text.split(/[\s,;:()]+/u).some((part) => part.replace(/\.$/u, '') === word)

function shapeHelp(shape: Shape, example: unknown): readonly string[] {
  switch (shape.type) {
    case 'choice':
      return isLong(shape.choices)
        ? [`one of ${shape.choices.length}, listed below`]
        : [shape.choices.join(' | ')]
    case 'text':
    case 'number':
      return example === undefined ? [] : [`e.g. ${String(example)}`]
    case 'quantity':
    case 'any': {
      const shown = typeof example === 'string' ? [example] : shape.examples.slice(0, 2)
      return shown.length > 0 ? [`e.g. ${shown.join(', ')}`] : []
    }
    case 'list': {
      const first = Array.isArray(example) ? example[0] : undefined
      return [...shapeHelp(shape.item, first), 'may be repeated']
    }
    case 'record':
      return [shape.fields.map((field) => kebab(field.name)).join(', ')]
    case 'flag':
      return []
  }
}

/** What commander collected for the fields, as the operation's input takes it. */
export async function readOptions(
  fields: readonly Field[],
  given: Readonly<Record<string, unknown>>,
  streams: Streams,
): Promise<Record<string, unknown>> {
  const input: Record<string, unknown> = {}
  for (const field of fields) {
    const raw = given[attributeOf(field)]
    if (raw === undefined) continue
    if (field.shape.type === 'flag') {
      // commander presets a `--no-` option to true: only its use says anything.
      if (raw !== field.preset) input[field.name] = raw
    } else if (Array.isArray(raw)) {
      const lists = await Promise.all(raw.map((text) => readOne(field, String(text), streams)))
      input[field.name] = flattened(lists)
    } else {
      input[field.name] = await readOne(field, String(raw), streams)
    }
  }
  return input
}

/** The name under which commander keeps the option of a field. */
const attributeOf = (field: Field) => new Option(`--${kebab(field.name)}`).attributeName()

const flattened = (lists: readonly unknown[]) =>
  lists.flatMap((value) => (Array.isArray(value) ? value : [value]))

async function readOne(field: Field, text: string, streams: Streams): Promise<unknown> {
  if (/^--[a-z]/u.test(text)) {
    throw new CalcError('missing-input', `--${kebab(field.name)} has no value.`, {
      path: [field.name],
      hint: field.description,
    })
  }
  const structured = ['list', 'record', 'any'].includes(field.shape.type)
  if (structured && text.startsWith('@')) {
    return parseJson(await readTextFile(text.slice(1), streams))
  }
  return field.shape.type === 'list' ? readItems(field, text) : readText(field, text)
}
