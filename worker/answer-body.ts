import { answerText, textOf } from '../shared/answer/answer-text.ts'
import { CalcError } from '../shared/errors.ts'
import { parseJson } from '../shared/input/index.ts'
import type { Operation } from '../shared/operation.ts'
import { hidesLetters, printable } from '../shared/visible.ts'
import { inTurns } from './turns.ts'

/**
 * The answer of an operation to a body, as JSON.
 *
 * @throws {CalcError} for a body that holds no input, and whatever the operation refuses.
 */
export const answerBody = (operation: Operation, body: string): string =>
  printable(answerText(operation, inputOf(operation, body)), hidesLetters(body))

/** The same, others having their turn while one that takes long is computed. */
export const answerInTurns = async (operation: Operation, body: string): Promise<string> =>
  printable(await textInTurns(operation, inputOf(operation, body)), hidesLetters(body))

/** An answer as JSON: at once, or of an operation that takes long in turns. @throws {CalcError} */
export const textInTurns = (operation: Operation, input: unknown): string | Promise<string> =>
  operation.unshownInPieces
    ? inTurns(operation.unshownInPieces(input)).then((answer) => textOf(operation, answer))
    : answerText(operation, input)

function inputOf({ name }: Operation, body: string): unknown {
  const input = bodyOf(body)
  if (!Array.isArray(input)) return input
  throw new CalcError('bad-input', 'One input is needed here, and a list is given.', {
    hint: `Many inputs go to /v1/${name}/batch.`,
  })
}

/** @throws {CalcError} `missing-input` for an empty body, `bad-input` for what is no JSON. */
export function bodyOf(text: string): unknown {
  if (text.trim() === '') {
    throw new CalcError('missing-input', 'The body is empty.', {
      hint: 'Send a JSON object with the fields of the operation; /reference lists them.',
    })
  }
  return parseJson(text)
}
