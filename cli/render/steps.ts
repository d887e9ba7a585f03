import { scalarText } from '../../shared/answer/scalar.ts'
import { labelOf } from '../../shared/answer/words.ts'
import type { Answer } from '../../shared/operation.ts'
import type { Page } from './pairs.ts'
import { paragraph } from './wrap.ts'

const INDENT = 5

/** How the figures came about: what, the formula in words, its numbers, what it gives. */
export function stepLines(steps: Answer['steps'], page: Page): readonly string[] {
  if (steps.length === 0) return []
  const text = (value: (typeof steps)[number]['gives']) => scalarText(value, page.precise)
  const lines = steps.flatMap(({ what, formula, values, gives }, index) => {
    const numbers = Object.entries(values).map(
      ([name, value]) => `${labelOf(name).toLowerCase()} = ${text(value)}`,
    )
    return [
      `${`${index + 1}.`.padStart(INDENT - 1)} ${what}`,
      ...paragraph(page.ink.quiet(formula), INDENT, page.width),
      ...numbers.flatMap((line) => paragraph(line, INDENT + 2, page.width)),
      ...paragraph(`→ ${page.ink.figure(text(gives))}`, INDENT, page.width),
    ]
  })
  return [page.ink.heading('How the figures came about'), ...lines]
}
