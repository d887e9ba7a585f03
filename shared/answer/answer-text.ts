import { keptWith } from '../kept.ts'
import type { Operation, Unshown } from '../operation.ts'
import { constantTexts, membersText } from './json-text.ts'
import { Outline } from './outline.ts'

/** Forms that the answers of one operation come in: by what was read, by refrigerant, by verdict. */
const MOST_OUTLINES = 6

const outlinesOf = keptWith((_: Operation): Outline[] => [])

/**
 * The answer of an operation as JSON, byte for byte `JSON.stringify(operation.run(input))`, at a
 * fifth of the cost.
 *
 * Most of an answer is the same in the next one of its form: {@link Outline} keeps that text in long
 * pieces. An answer of a form that was not met lately is written piece by piece, and remembered.
 *
 * @throws {CalcError} for anything wrong with the input or refused by the calculation.
 */
export const answerText = (operation: Operation, input: unknown): string =>
  textOf(operation, operation.unshown(input))

/** The same of an answer that was computed before. */
export function textOf(operation: Operation, answer: Unshown): string {
  const outlines = outlinesOf(operation)
  for (const [place, outline] of outlines.entries()) {
    const text = outline.textOf(answer)
    if (text === undefined) continue
    if (place > 0) toFront(outlines, place)
    return text
  }
  const learned = Outline.of(answer)
  if (learned && outlines.unshift(learned) > MOST_OUTLINES) outlines.pop()
  const { tree, presentation, cautions, sources, assumptions, warnings } = answer
  const lists = `"cautions":${constantTexts(cautions)},"sources":${constantTexts(sources)}`
  const notes = membersText({ assumptions, warnings }, presentation)
  return `{${membersText(tree, presentation)},${lists},${notes}}`
}

function toFront<T>(list: T[], place: number): void {
  list.unshift(...list.splice(place, 1))
}
