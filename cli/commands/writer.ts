import { CalcError } from '../../shared/errors.ts'
import type { Answer, Operation } from '../../shared/operation.ts'
import { EXIT, type ExitStatus, exitStatusOf } from '../exit.ts'
import type { Row } from '../input/rows.ts'
import type { Output } from '../output.ts'
import type { Outcome } from '../render/csv.ts'
import { inkOf } from '../render/ink.ts'
import type { Streams } from '../streams.ts'
import { own } from './own.ts'

/** Writes answers in the asked form and says with which status the run ends. */
export interface Writer {
  one(answer: Answer): Promise<ExitStatus>
  rows(rows: AsyncIterable<Row>, answer: (value: unknown) => Answer): Promise<ExitStatus>
}

export function writer(
  operation: Operation,
  output: Output,
  precise: boolean,
  streams: Streams,
): Writer {
  const extra = own[operation.name]
  return {
    async one(answer) {
      if (output.json) streams.out(`${JSON.stringify(answer)}\n`)
      else if (output.csv) streams.out(await singleCsv(extra?.csv, answer))
      else if (output.markdown && extra?.markdown) streams.out((await extra.markdown())(answer))
      else streams.out(await forPeople(operation, answer, output, precise, streams))
      return EXIT.answered
    },
    async rows(rows, answer) {
      if (output.markdown) {
        throw new CalcError('bad-input', 'A sheet in Markdown is made of one input, not of rows.', {
          hint: 'Leave --markdown out, or give one input.',
        })
      }
      let worst: ExitStatus = EXIT.answered
      const kept: Outcome[] = []
      for await (const row of rows) {
        const outcome = outcomeOf(row, answer)
        if (outcome.error) worst = Math.max(worst, exitStatusOf[outcome.error.code]) as ExitStatus
        if (output.csv) kept.push(outcome)
        else streams.out(`${JSON.stringify(outcome.error ? outcome : outcome.answer)}\n`)
      }
      if (output.csv) streams.out((await import('../render/csv.ts')).outcomesCsv(kept))
      return worst
    },
  }
}

async function forPeople(
  operation: Operation,
  answer: Answer,
  output: Output,
  precise: boolean,
  streams: Streams,
): Promise<string> {
  const { answerText } = await import('../render/answer.ts')
  const { answerLines, resultLines, rowLines } = own[operation.name] ?? {}
  return answerText(operation, answer, {
    ink: inkOf(streams.color.out),
    width: streams.width,
    precise,
    steps: output.steps === true,
    sources: output.sources === true,
    full: output.full === true,
    resultLines: await resultLines?.(),
    rowLines: await rowLines?.(),
    answerLines: await answerLines?.(),
  })
}

async function singleCsv(
  ownCsv: (() => Promise<(answer: Answer) => string>) | undefined,
  answer: Answer,
): Promise<string> {
  if (ownCsv) return (await ownCsv())(answer)
  return (await import('../render/csv.ts')).outcomesCsv([{ row: 1, answer }])
}

function outcomeOf(row: Row, answer: (value: unknown) => Answer): Outcome {
  if (row.error) return row
  try {
    return { row: row.row, answer: answer(row.value) }
  } catch (error) {
    if (error instanceof CalcError) return { row: row.row, error }
    throw error
  }
}
