import { html } from 'hono/html'
import type { ErrorCode } from '../../shared/errors.ts'
import { DOOR_PROBLEMS, type DoorProblem, statusOf, titleOf } from '../problem.ts'
import { type Html, layout } from './layout.ts'

type Code = ErrorCode | DoorProblem

/** What each code means to whoever meets it, and what to do. */
const EXPLAINED: Readonly<Record<Code, string>> = {
  'bad-input':
    'A field has another type, is out of bounds, is unknown, or contradicts another. The path names it. Change the request; sending it again as it is gives the same.',
  'bad-quantity':
    'A quantity is no number with a unit, or has a size that no trade meets. Write it like "32 psig" or { "value": 32, "unit": "psig" }.',
  'ambiguous-quantity':
    'A number without its unit, or a unit that could be two: psi above the barometer or above a vacuum. Say which.',
  'wrong-kind': 'The unit measures something else: a temperature where a pressure is needed.',
  'missing-input': 'A field that is needed is not there. The path and the hint name it.',
  'unknown-refrigerant':
    'No refrigerant has this name. The hint has the nearest; GET /v1/refrigerants has all.',
  'unknown-name': 'Nothing has this name. The hint has the nearest.',
  'out-of-range':
    'The data end before this. Nothing is extrapolated: check the reading and its unit first.',
  'above-critical':
    'Above the critical point there is no boiling, so no pressure belongs to a temperature. Mostly a reading in a wrong unit; R-744 is the refrigerant that is met there.',
  'below-triple': 'Below the triple point there is no liquid.',
  'two-phase':
    'Liquid and vapour together have no single density: say which phase, or how much of it is vapour.',
  'no-convergence': 'The equations gave no answer at these readings. Please report the request.',
  refused:
    'The calculation was understood and is not done, for the reason in detail: it would be wrong or dangerous to give a figure.',
  'bad-request': 'This is no HTTP request, or its address or host is none.',
  'not-found': 'There is no such address. The hint has the nearest. No address ends with a slash.',
  'method-not-allowed': 'The address takes other methods; the Allow header names them.',
  'request-timeout': 'Headers or body did not arrive in time. Send it again.',
  'body-too-large': 'Send less at once, or a batch in parts.',
  'too-much-work': 'A batch counts more than one request may. Send it in parts.',
  'not-json':
    'Say Content-Type: application/json and send JSON; a batch may also be application/x-ndjson.',
  'encoded-body': 'Send the body as it is, without Content-Encoding.',
  'other-charset': 'JSON is read in UTF-8 (RFC 8259): send it so, or leave charset out.',
  'too-many-requests': 'Wait as long as Retry-After says, or send many inputs in one request.',
  'headers-too-large': 'Send fewer or shorter headers.',
  internal:
    'A fault of the service, which whoever runs it finds in the log. The request may well be right.',
  'not-ready':
    'The service could not read the data that it computes with, so it computes nothing. Send the request again as Retry-After says.',
}

export const PROBLEM_CODES = Object.keys(EXPLAINED) as readonly Code[]

const isCode = (text: string): text is Code => Object.hasOwn(EXPLAINED, text)

const isDoor = (code: Code): code is DoorProblem => Object.hasOwn(DOOR_PROBLEMS, code)

export const problemTitle = (code: Code): string =>
  isDoor(code) ? DOOR_PROBLEMS[code].title : titleOf[code]

/** Where a problem's `type` leads: what it means and what would do; nothing where there is no such code. */
export function problemPage(code: string): Html | undefined {
  if (!isCode(code)) return undefined
  const status = isDoor(code) ? DOOR_PROBLEMS[code].status : statusOf[code]
  const title = problemTitle(code)
  return layout(
    title,
    html`<main>
<h1>${title}</h1>
<p><code>${code}</code>, status ${status}</p>
<p>${EXPLAINED[code]}</p>
<p><a href="/reference#problems">All problems</a></p>
</main>`,
  )
}
