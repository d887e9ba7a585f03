import { isCarbonDioxide, pickRefrigerant } from '../../fields/index.ts'
import type { WorkOrderInput } from '../input.ts'
import type { Outcomes } from '../run.ts'
import { record, shortened } from './lines.ts'
import type { Line } from './schema.ts'

/** What is written down in the end, beside the figures of the steps. */
export function recordsOf(input: WorkOrderInput, outcomes: Outcomes): readonly Line[] {
  const { person = {}, record: kept = {}, job, date } = input
  const asked = outcomes.rules.open
  const statements =
    asked?.state === 'done' ? asked.computation.result.records.statements.length : 0
  const recovers = outcomes.recovery.state !== 'absent'
  const gives = recovers && !isCarbonDioxide(pickRefrigerant(input.refrigerant))
  const charges = job !== 'diagnose' && (recovers || kept.charged !== undefined)
  return [
    record('who', { name: person.name, date }),
    ...(charges ? [record('kind', { kind: kept.chargedFrom })] : []),
    ...(gives ? [record('sent-to', { sentTo: cut(kept.sentTo) })] : []),
    ...(recovers || kept.leakFound ? [record('leak', { leak: cut(kept.leakFound) })] : []),
    ...(statements > 0 ? [record('by-law')] : []),
  ]
}

const LONGEST = 100

const cut = (text: string | undefined) => text && shortened(text, LONGEST)
