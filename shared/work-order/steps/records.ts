import { instruct, newBody, type StepBody } from '../step.ts'

/** What is written down: the checklist of the sheet. */
export function records(open: readonly string[]): StepBody {
  const body = newBody()
  instruct(body, 'write-it-down')
  if (open.length > 0) {
    body.findings.push(`Still to be written down: ${open.join('; ')}.`)
  }
  return body
}
