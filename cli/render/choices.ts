import { type Field, kebab, type Shape } from '../../shared/input/index.ts'
import { padEnd, widest } from './wrap.ts'

/** Longer lists of choices than this many letters stand below the options instead of among them. */
const LONGEST = 90
const GAP = 3

/** The choices of a field or of the items of a list; none where it is no choice. */
export function choicesOf(shape: Shape): readonly string[] {
  if (shape.type === 'choice') return shape.choices
  return shape.type === 'list' ? choicesOf(shape.item) : []
}

export const isLong = (choices: readonly string[]): boolean => choices.join(' | ').length > LONGEST

/** Every long list of choices once, in columns, headed by the options that take it; '' where there is none. */
export function longChoicesText(fields: readonly Field[], width: number): string {
  const takers = new Map<string, { choices: readonly string[]; flags: string[] }>()
  for (const field of fields) {
    const choices = choicesOf(field.shape)
    if (!isLong(choices)) continue
    const key = choices.join('|')
    const known = takers.get(key) ?? { choices, flags: [] }
    known.flags.push(`--${kebab(field.name)}`)
    takers.set(key, known)
  }
  return [...takers.values()]
    .map(({ choices, flags }) => `\n${flags.join(' and ')}:\n${inColumns(choices, width)}\n`)
    .join('')
}

function inColumns(texts: readonly string[], width: number): string {
  const column = widest(texts) + GAP
  const count = Math.max(Math.floor((width - 2 + GAP) / column), 1)
  const height = Math.ceil(texts.length / count)
  return Array.from({ length: height }, (_, row) =>
    `  ${texts
      .filter((_text, index) => index % height === row)
      .map((text) => padEnd(text, column))
      .join('')}`.trimEnd(),
  ).join('\n')
}
