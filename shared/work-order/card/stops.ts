import { headlineOf, type Sentence } from '../../answer/sentence.ts'
import type { Outcomes } from '../run.ts'
import type { Outcome } from '../section.ts'
import { plainly } from './lines.ts'

/** What forbids the work, and what to do about it. */
export interface Stop {
  readonly says: Sentence
  readonly next: readonly string[]
}

/** What any step forbids or calls dangerous, each once: the law first, then what can hurt. */
export function stopsOf({ rules, ...others }: Outcomes): readonly Stop[] {
  const found = [...Object.values(rules), ...Object.values(others)].flatMap(stopOf)
  // Without the certificate nothing of it may be done: the first action that lacks it says so for all.
  const key = ({ says }: Stop) => (says.text.includes('{certificate}') ? 'certificate' : says.text)
  return found.filter((entry, at) => found.findIndex((other) => key(other) === key(entry)) === at)
}

function stopOf(outcome: Outcome<unknown>): readonly Stop[] {
  if (outcome.state === 'done') {
    const { told } = outcome.computation
    // What is done about it names figures of its own answer: that stands on the sheet.
    return told?.level === 'stop' ? [{ says: headlineOf(told), next: [] }] : []
  }
  if (outcome.state !== 'failed' || !outcome.problem.stop) return []
  const { message, hint } = outcome.problem
  return [{ says: plainly(message), next: hint === '' ? [] : [hint] }]
}
