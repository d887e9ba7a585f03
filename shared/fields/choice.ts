import * as z from 'zod'

/** Case, spaces and hyphens do not count; a sign alone, such as "+" or "-", is what it is. */
const fold = (text: string) => text.toLowerCase().replace(/[^a-z0-9]/gu, '') || text.trim()

/**
 * Schema of one of a few words, which also takes the words that people say for them.
 *
 * @param values - The names, as answers show them.
 * @param spoken - Other words for them: trade words, and names of earlier versions.
 */
export function choiceIn<const T extends readonly [string, ...string[]]>(
  values: T,
  spoken: Readonly<Record<string, T[number]>> = {},
) {
  let words: ReadonlyMap<string, T[number]> | undefined
  // Made when one is read: there are many choices, and an input has few of them.
  const known = () => {
    words ??= new Map<string, T[number]>([
      ...Object.entries(spoken).map(([word, value]) => [fold(word), value] as const),
      ...values.map((value) => [fold(value), value] as const),
    ])
    return words
  }
  return z
    .unknown()
    .meta({ type: 'string', enum: [...values] })
    .transform((raw, context): T[number] => {
      const value = typeof raw === 'string' ? known().get(fold(raw)) : undefined
      if (value !== undefined) return value
      context.addIssue({ code: 'invalid_value', values: [...values], input: raw })
      return z.NEVER
    })
}
