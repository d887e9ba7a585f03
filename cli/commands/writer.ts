import { MADE_BY } from '../../shared/about.ts'
import { CalcError } from '../../shared/errors.ts'
import type { Answer, Operation } from '../../shared/operation.ts'
import { jsonText, visibleAll } from '../../shared/visible.ts'
import { EXIT, type ExitStatus } from '../exit.ts'
import type { Rows } from '../input/rows.ts'
import type { Output } from '../output.ts'
import { inkOf } from '../render/ink.ts'
import { type Outcome, outcomeOf, statusOf } from '../render/outcome.ts'
import { progressOn } from '../render/progress.ts'
import type { Streams } from '../streams.ts'
import { own } from './own.ts'

/** Answers are written together, this many characters at a time: the first row at once, then as they fill it. */
const WRITE_AT = 32 * 1024

/** Writes answers in the asked form and says with which status the run ends. */
export interface Writer {
  one(answer: Answer): Promise<ExitStatus>
  rows(rows: Rows, answer: (value: unknown) => Answer): Promise<ExitStatus>
}

/** What the operation's own input says of the form of its answer. */
interface Presentation {
  readonly precise: boolean
  /** One unit system, where the options ask for one: rows cannot ask for another then. */
  readonly units: unknown
}

export function writer(
  operation: Operation,
  output: Output,
  { precise, units }: Presentation,
  streams: Streams,
): Writer {
  const extra = own[operation.name]
  const both = units !== 'us' && units !== 'si'
  const csv = async () => (await import('../render/csv.ts')).csvWriter(operation, both)
  return {
    async one(answer) {
      if (output.json) streams.out(`${jsonText({ ...answer, madeBy: MADE_BY })}\n`)
      else if (output.csv && !extra?.csv) {
        const { head, line } = await csv()
        streams.out(head + line({ row: 1, answer }))
      } else streams.out(await forPeople(operation, visibleAll(answer), output, precise, streams))
      return EXIT.answered
    },
    async rows({ blocks, hides }, answer) {
      if (output.markdown) {
        throw new CalcError('bad-input', 'A sheet in Markdown is made of one input, not of rows.', {
          hint: 'Leave --markdown out, or give one input.',
        })
      }
      const form = output.csv ? await csv() : jsonLines(hides)
      const progress = progressOn(streams, output.progress === true)
      let worst: ExitStatus = EXIT.answered
      let waiting = form.head
      let [count, refused, written] = [0, 0, 0]
      for await (const rows of blocks) {
        for (const row of rows) {
          const outcome = outcomeOf(row, answer)
          worst = Math.max(worst, statusOf(outcome)) as ExitStatus
          count += 1
          if (outcome.error) refused += 1
          waiting += form.line(outcome)
          if (written === 0 || waiting.length >= WRITE_AT) {
            await streams.out(waiting)
            written += 1
            waiting = ''
            progress.tell(count, refused)
          }
        }
        if (waiting !== '' && count > 0) await streams.out(waiting)
        if (count > 0) waiting = ''
      }
      if (waiting !== '') await streams.out(waiting)
      progress.end(count, refused)
      return worst
    },
  }
}

/** A JSON value a line: the answer, or the row's number and its error. */
const jsonLines = (hides: () => boolean) => ({
  head: '',
  line: (outcome: Outcome) => `${jsonText(outcome.error ? outcome : outcome.answer, hides())}\n`,
})

async function forPeople(
  operation: Operation,
  answer: Answer,
  output: Output,
  precise: boolean,
  streams: Streams,
): Promise<string> {
  const commands = own[operation.name] ?? {}
  const { answerLines, resultLines, rowLines, csv } = commands
  const markdown = output.customer ? commands.customerMarkdown : commands.markdown
  if (output.csv && csv) return (await csv())(answer)
  if (output.markdown && markdown) return (await markdown())(answer)
  const { answerText } = await import('../render/answer.ts')
  return answerText(operation, answer, {
    ink: inkOf(streams.color.out),
    width: streams.width,
    precise,
    steps: output.steps === true,
    sources: output.sources === true,
    full: output.full === true,
    customer: output.customer === true,
    resultLines: await resultLines?.(),
    rowLines: await rowLines?.(),
    answerLines: await answerLines?.(),
  })
}
