import type { Answer, Operation } from '../../shared/operation.ts'
import { assumptionLines, bulletLines, cautionLines, sourceLines, warningLines } from './notes.ts'
import type { Page } from './pairs.ts'
import { isTold, screenLines } from './screen.ts'
import { stepLines } from './steps.ts'
import { treeLines } from './tree.ts'
import { verdictsOf } from './verdicts.ts'
import { paragraph } from './wrap.ts'

/** What a step may bring of its own: the lines of its result. */
export type ResultLines = (answer: Answer, page: AnswerPage) => readonly string[]

export interface AnswerPage extends Page {
  readonly steps: boolean
  /** Sources in full. */
  readonly sources: boolean
  /** The whole sheet instead of the screen. */
  readonly full: boolean
  /** The customer's copy of an order. */
  readonly customer?: boolean | undefined
  readonly resultLines?: ResultLines | undefined
  /** Rows that belong on the screen, such as those of a table. */
  readonly rowLines?: ResultLines | undefined
  /** The whole answer in a form of its own, steps excepted. */
  readonly answerLines?: ResultLines | undefined
}

/** Lines of a result that a person takes in at one look. */
const SHORT = 16

/** An answer as a person at the machine reads it: one screen, or with `--full` the whole sheet. */
export function answerText(operation: Operation, answer: Answer, page: AnswerPage): string {
  if (page.answerLines) {
    return joined([page.answerLines(answer, page), page.steps ? stepLines(answer.steps, page) : []])
  }
  if (isTold(answer) && !page.full) {
    return joined([
      [...screenLines(answer, page), ...rowsOf(answer, page)],
      page.steps ? stepLines(answer.steps, page) : [],
      page.sources ? sourceLines(answer, page, true) : [],
    ])
  }
  return sheetText(operation, answer, page)
}

/** What an operation shows in rows, such as a table, stands on the screen too. */
const rowsOf = (answer: Answer, page: AnswerPage): readonly string[] =>
  page.rowLines ? ['', ...page.rowLines(answer, page)] : []

/** The sheet for the file, the inspector, the class: everything that the answer holds. */
function sheetText(operation: Operation, answer: Answer, page: AnswerPage): string {
  const dangers = answer.cautions.filter(({ level }) => level === 'danger')
  const others = answer.cautions.filter(({ level }) => level !== 'danger')
  const whole = page.resultLines?.(answer, page) ?? treeLines(answer.result, 2, page)
  const verdicts = page.resultLines ? [] : verdictsOf(answer.result)
  const look = warningLines(answer.warnings, page)
  // What a long answer comes to shall not have to be looked for on its third screen.
  const long = verdicts.length > 0 && whole.length > SHORT
  const result = long ? treeLines(withoutConclusion(answer.result), 2, page) : whole
  return joined([
    paragraph(page.ink.title(operation.summary), 0, page.width),
    isTold(answer) ? screenLines(answer, page) : [],
    cautionLines(dangers, page),
    ...(long ? [bulletLines('In short', verdicts, page), look] : []),
    result,
    ...(long ? [] : [look]),
    cautionLines(others, page),
    page.steps || page.full ? stepLines(answer.steps, page) : [],
    assumptionLines(answer.assumptions, page),
    sourceLines(answer, page, page.sources),
  ])
}

/** Said in short already, a conclusion is not said again. */
function withoutConclusion(result: unknown): unknown {
  if (typeof result !== 'object' || result === null) return result
  return Object.fromEntries(Object.entries(result).filter(([name]) => name !== 'conclusion'))
}

function joined(blocks: readonly (readonly string[])[]): string {
  const filled = blocks.filter((lines) => lines.length > 0)
  return `${filled.map((lines) => lines.join('\n')).join('\n\n')}\n`
}
