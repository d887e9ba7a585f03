import { exports } from 'cloudflare:workers'
import type { Problem } from '../../worker/problem.ts'

const ORIGIN = 'http://shop.test'

/** A request to the service, inside workerd. */
export const ask = (address: string, init?: RequestInit): Promise<Response> =>
  exports.default.fetch(`${ORIGIN}${address}`, init)

/** `POST /v1/<operation>` with a body as it is, JSON by default. */
export const post = (
  operation: string,
  body: NonNullable<RequestInit['body']> | null,
  headers: Record<string, string> = { 'content-type': 'application/json' },
): Promise<Response> => ask(`/v1/${operation}`, { method: 'POST', headers, body })

/** The problem details of a refusal, after checking that they are whole. */
export async function problemOf(response: Response): Promise<Problem> {
  const type = response.headers.get('content-type') ?? ''
  if (!type.startsWith('application/problem+json')) throw new Error(`${response.status} is ${type}`)
  const problem = (await response.json()) as Problem
  if (problem.status !== response.status) throw new Error('The status is told differently.')
  return problem
}
