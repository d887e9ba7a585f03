import { type Field, fieldsOf, kebab } from '../shared/input/index.ts'
import type { Operation } from '../shared/operation.ts'
import { shellQuoted } from './completion/model.ts'
import { EVERYDAY } from './input/shorthand.ts'

/** The example of an operation as the words of a command line. */
export function exampleArgv(operation: Operation): readonly string[] {
  const words = Object.entries(operation.example).flatMap(([name, value]) => {
    const field = fieldsOf(operation).find((entry) => entry.name === name)
    return field ? fieldWords(field, value) : []
  })
  return [operation.name, ...words]
}

/** The same as a person types it, quoted for the shell, an option a line where one line does not take it. */
export function exampleText(operation: Operation, width: number): string {
  const [name = '', ...words] = exampleArgv(operation)
  const options: string[][] = []
  for (const word of words) {
    if (word.startsWith('--')) options.push([word])
    else options.at(-1)?.push(quoted(word))
  }
  const parts = options.map((option) => option.join(' '))
  const line = ['chargewright', name, ...parts].join(' ')
  if (line.length <= width) return line
  return [`chargewright ${name}`, ...parts].join(' \\\n    ')
}

/** The everyday line of an operation, broken between its words where it is wider than `width`. */
export function everydayText({ name }: Operation, width: number): string | undefined {
  const line = EVERYDAY[name]
  if (line === undefined) return undefined
  const whole = `chargewright ${line}`
  if (whole.length <= width) return whole
  // An option stays with its value.
  const parts = whole.split(/(?<! -{1,2}[\w-]+) /u)
  const rows = [parts.slice(0, 2).join(' ')]
  for (const part of parts.slice(2)) {
    const longer = `${rows.at(-1)} ${part}`
    // Room for the stroke that says the line goes on.
    if (longer.length <= width - 2) rows[rows.length - 1] = longer
    else rows.push(`    ${part}`)
  }
  return rows.join(' \\\n  ')
}

function fieldWords(field: Field, value: unknown): readonly string[] {
  const flag = `--${kebab(field.name)}`
  if (typeof value === 'boolean') return booleanWords(field, value)
  if (field.shape.type === 'list' && Array.isArray(value)) {
    const { item } = field.shape
    return value.flatMap((entry) => [
      flag,
      item.type === 'record' ? recordText(item.fields, entry) : plainText(entry),
    ])
  }
  if (field.shape.type === 'record') return [flag, recordText(field.shape.fields, value)]
  return [flag, plainText(value)]
}

function booleanWords(field: Field, value: boolean): readonly string[] {
  if (value === field.preset) return []
  return [value ? `--${kebab(field.name)}` : `--no-${kebab(field.name)}`]
}

/** `name=value,name=value` where every value reads back from it, else JSON. */
function recordText(fields: readonly Field[], value: unknown): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value)
  const entries = Object.entries(value)
  const flat = entries.every(([name, part]) => {
    const known = fields.some((field) => field.name === name)
    return known && typeof part !== 'object' && !/[,;=]|^[[{]/u.test(String(part))
  })
  return flat
    ? entries.map(([name, part]) => `${kebab(name)}=${String(part)}`).join(',')
    : JSON.stringify(value)
}

const plainText = (value: unknown) =>
  typeof value === 'object' ? JSON.stringify(value) : String(value)

const quoted = (word: string) => (/^[\w./:=-]+$/u.test(word) ? word : shellQuoted(word))
