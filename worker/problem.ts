import type { ContentfulStatusCode } from 'hono/utils/http-status'
import { CalcError, type ErrorCode } from '../shared/errors.ts'
import { jsonText } from '../shared/visible.ts'
import { type Headers, NOT_KEPT, reply } from './reply.ts'

/** 400 must be written differently, 404 names nothing that there is, 422 was understood and cannot be answered. */
export const statusOf = {
  'bad-input': 400,
  'bad-quantity': 400,
  'ambiguous-quantity': 400,
  'wrong-kind': 400,
  'missing-input': 400,
  'unknown-refrigerant': 404,
  'unknown-name': 404,
  'out-of-range': 422,
  'above-critical': 422,
  'below-triple': 422,
  'two-phase': 422,
  'no-convergence': 422,
  refused: 422,
} as const satisfies Record<ErrorCode, ContentfulStatusCode>

export const titleOf: Readonly<Record<ErrorCode, string>> = {
  'bad-input': 'The input does not fit',
  'bad-quantity': 'A quantity cannot be read',
  'ambiguous-quantity': 'A quantity could be two things',
  'wrong-kind': 'A quantity is of another kind',
  'missing-input': 'Something is missing',
  'unknown-refrigerant': 'There is no such refrigerant',
  'unknown-name': 'There is nothing of that name',
  'out-of-range': 'Outside what can be computed',
  'above-critical': 'Above the critical point',
  'below-triple': 'Below the triple point',
  'two-phase': 'Liquid and vapour together',
  'no-convergence': 'The calculation did not settle',
  refused: 'Refused, with the reason',
}

/** Refusals of the door itself, before any calculation. */
export const DOOR_PROBLEMS = {
  'bad-request': { status: 400, title: 'The request cannot be read' },
  'not-found': { status: 404, title: 'There is no such address' },
  'method-not-allowed': { status: 405, title: 'Not with this method' },
  'request-timeout': { status: 408, title: 'The request took too long to arrive' },
  'body-too-large': { status: 413, title: 'The body is too large' },
  'too-much-work': { status: 413, title: 'Too much for one request' },
  'not-json': { status: 415, title: 'The body is not JSON' },
  'encoded-body': { status: 415, title: 'The body is compressed' },
  'other-charset': { status: 415, title: 'The body is in another character set' },
  'too-many-requests': { status: 429, title: 'Too many requests' },
  'headers-too-large': { status: 431, title: 'The headers are too large' },
  internal: { status: 500, title: 'A fault of the service' },
  'not-ready': { status: 503, title: 'The service is not ready' },
} as const satisfies Record<string, { status: ContentfulStatusCode; title: string }>

export type DoorProblem = keyof typeof DOOR_PROBLEMS

/** Problem details by RFC 9457; `type` leads to the explanation. */
export interface Problem {
  readonly type: string
  readonly title: string
  readonly status: number
  readonly detail: string
  readonly code: string
  readonly path: readonly (string | number)[]
  readonly hint: string
}

const PROBLEM_TYPE = 'application/problem+json; charset=utf-8'

const answer = (problem: Problem, status: ContentfulStatusCode, headers?: Headers): Response =>
  reply(jsonText(problem), PROBLEM_TYPE, { ...NOT_KEPT, ...headers }, status)

/** Headers of a refused calculation. */
export const REFUSED: Headers = { ...NOT_KEPT, 'Content-Type': PROBLEM_TYPE }

const typeOf = (code: string) => `/problems/${code}`

/** What a refused calculation comes to. */
function calcProblemOf({ code, message, path, hint }: CalcError): Problem {
  const status = statusOf[code]
  return { type: typeOf(code), title: titleOf[code], status, detail: message, code, path, hint }
}

/** A refusal of the door itself. */
export function doorProblem(
  code: DoorProblem,
  detail: string,
  options: { readonly hint?: string; readonly headers?: Headers } = {},
): Response {
  const { hint = '', headers } = options
  return answer(doorProblemOf(code, detail, hint), DOOR_PROBLEMS[code].status, headers)
}

function doorProblemOf(code: DoorProblem, detail: string, hint = ''): Problem {
  const { status, title } = DOOR_PROBLEMS[code]
  return { type: typeOf(code), title, status, detail, code, path: [], hint }
}

/** A fault of ours: whoever runs the service is told all of it, whoever asked nothing. */
function faultProblem(error: unknown): Problem {
  console.error(error)
  return doorProblemOf('internal', 'The service failed; the input may well be right.')
}

/** Anything thrown: the project's own error is the caller's to mend, all else is ours. */
export const thrownProblem = (error: unknown): Problem =>
  error instanceof CalcError ? calcProblemOf(error) : faultProblem(error)

/** Status and text of what was thrown, for a server that makes its answers itself; its headers are {@link REFUSED}. */
export function refusedAs(error: unknown): { readonly status: number; readonly text: string } {
  const problem = thrownProblem(error)
  return { status: problem.status, text: jsonText(problem) }
}

/** The answer to a request of the platform's own in which something was thrown. */
export function problemOf(request: Request, error: unknown): Response {
  // Whoever hung up reads no answer, and it was no fault of the service.
  const hungUp = !(error instanceof CalcError) && request.signal.aborted
  if (hungUp) return new Response(null, { status: 400 })
  const { status, text } = refusedAs(error)
  return new Response(text, { status, headers: REFUSED })
}
