import { ERROR_CODES } from '../../shared/errors.ts'
import { DOOR_PROBLEMS, statusOf } from '../problem.ts'
import type { JsonObject } from './schemas.ts'

const codesOf = (status: number): readonly string[] => [
  ...ERROR_CODES.filter((code) => statusOf[code] === status),
  ...Object.entries(DOOR_PROBLEMS).flatMap(([code, entry]) =>
    entry.status === status ? [code] : [],
  ),
]

/** Statuses of all refusals. */
export const refusals: readonly number[] = [
  ...new Set<number>([
    ...Object.values(statusOf),
    ...Object.values(DOOR_PROBLEMS).map(({ status }) => status),
  ]),
].sort()

const MEANING: Readonly<Record<number, string>> = {
  400: 'The request or the input must be written differently; detail says what was wrong, hint what would do.',
  404: 'There is no such address, refrigerant or other name; hint gives the nearest.',
  405: 'The address takes other methods; the Allow header names them.',
  408: 'The request took too long to arrive.',
  413: 'The body is too large.',
  415: 'The body is not declared as plain JSON in UTF-8.',
  422: 'The input was understood, and the calculation refuses it, with the reason.',
  429: 'Too many requests from one address.',
  431: 'The headers are too large.',
  500: 'A fault of the service, not of the input.',
}

/** Where the document describes a refusal. */
export const problemRef = (status: number): JsonObject => ({
  $ref: `#/components/responses/Problem${status}`,
})

export function problemResponse(status: number): JsonObject {
  return {
    description: `${MEANING[status] ?? ''} Codes: ${codesOf(status).join(', ')}.`,
    content: { 'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } } },
  }
}

export function problemSchema(): JsonObject {
  return {
    type: 'object',
    description: 'Why there is no answer: problem details by RFC 9457.',
    properties: {
      type: { type: 'string', format: 'uri-reference', description: 'Where the code is explained' },
      title: { type: 'string', description: 'The code in words' },
      status: { type: 'integer', description: 'The HTTP status' },
      detail: { type: 'string', description: 'What was wrong, with the figures' },
      code: {
        type: 'string',
        enum: [...ERROR_CODES, ...Object.keys(DOOR_PROBLEMS)],
        description: 'What a program decides by',
      },
      path: {
        type: 'array',
        items: { type: ['string', 'integer'] },
        description: 'Where in the input; empty when it is not about one field',
      },
      hint: { type: 'string', description: 'What would do instead; may be empty' },
    },
    required: ['type', 'title', 'status', 'detail', 'code', 'path', 'hint'],
  }
}
