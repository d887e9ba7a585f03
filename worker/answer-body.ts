import { answerText } from '../shared/answer/answer-text.ts'
import { CalcError } from '../shared/errors.ts'
import { parseJson } from '../shared/input/index.ts'
import type { Operation } from '../shared/operation.ts'
import { hidesLetters, printable } from '../shared/visible.ts'

/**
 * The answer of an operation to a body, as JSON.
 *
 * @throws {CalcError} for a body that holds no input, and whatever the operation refuses.
 */
export function answerBody(operation: Operation, body: string): string {
  const input = bodyOf(body)
  if (Array.isArray(input)) {
    throw new CalcError('bad-input', 'One input is needed here, and a list is given.', {
      hint: `Many inputs go to /v1/${operation.name}/batch.`,
    })
  }
  return printable(answerText(operation, input), hidesLetters(body))
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
