import type { Answer, Operation } from '../../shared/operation.ts'
import { assumptionLines, cautionLines, sourceLines, warningLines } from './notes.ts'
import { optionNamer } from './option-namer.ts'
import type { Page } from './pairs.ts'
import { isTold, screenLines } from './screen.ts'
import { stepLines } from './steps.ts'
import { treeLines } from './tree.ts'
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

/** An answer as a person at the machine reads it: one screen, or with `--full` the whole sheet. */
export function answerText(operation: Operation, given: Answer, page: AnswerPage): string {
  const answer = inOptions(operation, given)
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

/** The sentences of an answer with its fields named as this door names them. */
function inOptions(operation: Operation, answer: Answer): Answer {
  const named = optionNamer(operation)
  const { headline, figures, next, law, warnings, assumptions } = answer
  return {
    ...answer,
    ...(headline === undefined ? {} : { headline: named(headline) }),
    ...(next === undefined ? {} : { next: next.map(named) }),
    ...(law === undefined ? {} : { law: named(law) }),
    ...(figures === undefined
      ? {}
      : {
          figures: figures.map((figure) =>
            figure.says === undefined ? figure : { ...figure, says: named(figure.says) },
          ),
        }),
    warnings: warnings.map((warning) => ({ ...warning, message: named(warning.message) })),
    assumptions: assumptions.map((assumption) => ({
      ...assumption,
      field: named(assumption.field),
      taken: named(assumption.taken),
      because: named(assumption.because),
    })),
  }
}

/** What an operation shows in rows, such as a table, stands on the screen too. */
function rowsOf(answer: Answer, page: AnswerPage): readonly string[] {
  const rows = page.rowLines?.(answer, page) ?? []
  return rows.length > 0 ? ['', ...rows] : []
}

/** The sheet for the file, the inspector, the class: everything that the answer holds. */
function sheetText(operation: Operation, answer: Answer, page: AnswerPage): string {
  return joined([
    paragraph(page.ink.title(operation.summary), 0, page.width),
    isTold(answer) ? screenLines(answer, page, true) : [],
    cautionLines(answer.cautions, page),
    page.resultLines?.(answer, page) ?? treeLines(answer.result, 2, page),
    warningLines(answer.warnings, page),
    page.steps || page.full ? stepLines(answer.steps, page) : [],
    assumptionLines(answer.assumptions, page),
    sourceLines(answer, page, page.sources),
  ])
}

function joined(blocks: readonly (readonly string[])[]): string {
  const filled = blocks.filter((lines) => lines.length > 0)
  return `${filled.map((lines) => lines.join('\n')).join('\n\n')}\n`
}
