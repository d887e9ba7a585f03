import { expect, it } from 'vitest'
import { operation } from '../../shared/operations.ts'
import { brief } from './notes.ts'

const isFigure = (value: object): boolean => 'value' in value && 'unit' in value

function linesOf(value: unknown, path: string): readonly string[] {
  if (value === undefined) return []
  if (Array.isArray(value)) {
    const isPlain = value.every((item) => typeof item !== 'object')
    if (isPlain) return [`${path} ${value.map(brief).join(', ')}`]
    return value.flatMap((item, index) => linesOf(item, `${path}.${index}`))
  }
  if (typeof value !== 'object' || value === null || isFigure(value)) {
    return [`${path} ${brief(value)}`]
  }
  const rows = Object.entries(value)
  const isRow = rows.every(([, item]) => typeof item !== 'object' || (item && isFigure(item)))
  if (isRow) {
    const given = rows.filter(([, item]) => item !== undefined)
    return [`${path}: ${given.map(([key, item]) => `${key} ${brief(item)}`).join(', ')}`]
  }
  return rows.flatMap(([key, item]) => linesOf(item, `${path}.${key}`))
}

/** `reveal.others` of a result. */
const at = (result: unknown, path: string): unknown =>
  path
    .split('.')
    .reduce((value: unknown, key) => (value as Record<string, unknown> | undefined)?.[key], result)

/** The named parts of a result, a line for each row, figures to three digits with their unit and ±. */
export function shownOf(
  name: string,
  input: Readonly<Record<string, unknown>>,
  parts: readonly string[],
): readonly string[] {
  const { result } = operation(name).run({ units: 'us', ...input })
  return parts.flatMap((part) => linesOf(at(result, part), part))
}

export interface Shown {
  readonly input: Readonly<Record<string, unknown>>
  readonly shows: readonly string[]
}

/** Runs each input, and compares these parts of its result. */
export function showsOf(name: string, parts: readonly string[], cases: readonly Shown[]): void {
  it.each(cases)(`the result of ${name} for $input`, ({ input, shows }) => {
    expect(shownOf(name, input, parts)).toEqual(shows)
  })
}

/** The lines of a calculation: what, from what values, and what it gives. */
export const workingOf = (
  name: string,
  input: Readonly<Record<string, unknown>>,
): readonly string[] =>
  operation(name)
    .run({ units: 'us', ...input })
    .steps.map(({ what, values, gives }) => {
      const from = Object.entries(values).map(([key, value]) => `${key} ${brief(value)}`)
      return `${what}: ${from.join(', ')} → ${brief(gives)}`
    })
