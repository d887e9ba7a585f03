import * as z from 'zod'
import { figureText } from '../answer/figure-text.ts'
import { say } from '../quantity/index.ts'
import { citation } from '../rules/decide.ts'
import { breaksOpen } from './breaks-open.ts'
import type { WorkOrderInput } from './input.ts'
import type { Outcomes } from './run.ts'
import { asWritten } from './written.ts'

export const checklistOut = z.array(
  z.strictObject({
    what: z.string(),
    filled: z.boolean(),
    value: z.string().optional(),
    because: z.string().optional().describe('The rule that asks for it, where one does'),
  }),
)

type Item = z.output<typeof checklistOut>[number]

const item = (what: string, value: string | undefined): Item => ({
  what,
  filled: value !== undefined,
  value,
})

/** What must be written down for this job, and what of it stands on the order already. */
export function checklist(input: WorkOrderInput, outcomes: Outcomes): readonly Item[] {
  const { machine, person, record, job } = input
  const serial = [machine.name, machine.serial, machine.hours].flatMap((text) => text ?? [])
  const worked = job !== 'diagnose'
  const recovers = outcomes.recovery.state !== 'absent'
  const evacuates = breaksOpen(input)
  const rise = result(outcomes.evacuation)?.rise
  return [
    item('Date', input.date),
    item('Machine, serial or fleet number, hours', machine.serial && serial.join(', ')),
    item('Who did the work', person?.name),
    item('Certificates held', person?.certificates && (person.certificates.join(', ') || 'none')),
    item(
      'Refrigerant and label charge',
      input.labelCharge &&
        `${input.refrigerant}, ${figureText({ value: input.labelCharge }, { units: 'both', precise: false }, 'both')}`,
    ),
    ...(recovers ? [item('Mass recovered', asWritten(input.recovery?.recovered))] : []),
    ...(recovers ? [item('Recovered refrigerant sent to', record?.sentTo)] : []),
    ...(worked ? [item('Parts replaced', input.parts && partNames(input))] : []),
    ...(evacuates
      ? [
          item('Oil: kind', input.existingOil),
          item('Oil put in', record?.oilAdded && say(record.oilAdded)),
          item('Leak test and what was found', record?.leakFound),
          item('Vacuum reached', asWritten(input.evacuation?.vacuum)),
          item('Standing vacuum', rise?.verdict.replaceAll('-', ' ')),
        ]
      : []),
    ...(worked
      ? [
          item(
            'Mass charged',
            record?.charged &&
              figureText({ value: record.charged }, { units: 'both', precise: false }, 'both'),
          ),
          item('New, recycled or reclaimed', record?.chargedFrom),
        ]
      : []),
    item('Readings', input.readings && `${Object.keys(input.readings).length} entries`),
    ...byLaw(outcomes),
  ]
}

const result = <R>(outcome: { state: string; computation?: { result: R } }): R | undefined =>
  outcome.computation?.result

const partNames = ({ parts = [] }: WorkOrderInput) =>
  parts.map(({ name, part }) => name ?? part ?? 'not named').join(', ') || 'none'

/** Records that the law asks for: the tool cannot know whether they are kept. */
function byLaw({ rules }: Outcomes): Item[] {
  const found = new Map<string, Item>()
  for (const outcome of Object.values(rules)) {
    if (outcome.state !== 'done') continue
    const { lawName, records } = outcome.computation.result
    for (const statement of records.statements) {
      const { id, text, applies, dependsOn } = statement
      const hangs = dependsOn.length > 0 ? ` (depends on ${dependsOn.join(', ')})` : ' (may apply)'
      const open = applies === 'yes' ? '' : hangs
      found.set(id, {
        what: `${text}${open}`,
        filled: false,
        because: `${lawName}, ${citation(statement)}`,
      })
    }
  }
  return [...found.values()]
}
