import { CalcError } from '../../shared/errors.ts'
import { type Answers, plainNames, QUESTIONS, verdictOf } from '../../shared/work-order/begin.ts'
import type { Ask, Streams } from '../streams.ts'
import { templateOf } from './template.ts'

/** Answers that options may give beforehand, by their names. */
export const ANSWER_IDS = QUESTIONS.map(({ id }) => id)

/**
 * Writes the file of a new order; it never writes over one that there is.
 *
 * On a terminal it asks what options have not said; without one it writes a template, with blanks
 * where nothing was said.
 */
export async function newOrder(file: string, given: Answers, streams: Streams): Promise<void> {
  if (streams.isThere(file)) {
    throw new CalcError('refused', `There is a file ${file} already.`, {
      hint: 'Give another name; --set name=value --save writes into the one that there is.',
    })
  }
  if (!/\.(?:ya?ml|json)$/iu.test(file)) {
    throw new CalcError('bad-input', `"${file}" is no name for an order.`, {
      hint: 'Let it end in .yaml, such as loader-7.yaml.',
    })
  }
  const answers = plainNames(streams.ask ? await asked(given, streams.ask) : given)
  await streams.writeFile(file, templateOf(answers, /\.json$/iu.test(file) ? 'json' : 'yaml'))
}

async function asked(given: Answers, ask: Ask): Promise<Answers> {
  const answers: Record<string, string> = { ...given }
  for (const question of QUESTIONS) {
    const { id, message, choices, needed } = question
    if (answers[id]) continue
    const answer = choices
      ? await ask.choose(message, needed ? choices : [...choices, NOT_KNOWN])
      : await ask.text(message, (text) => verdictOf(question, text))
    if (answer !== '' && answer !== NOT_KNOWN) answers[id] = answer
  }
  return answers
}

const NOT_KNOWN = 'not known yet'
