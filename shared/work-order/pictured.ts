import { DIAGRAMS, type KindName } from '../diagram/index.ts'
import { type Head, headOf } from './head.ts'
import type { WorkOrderInput } from './input.ts'
import { modernised } from './older.ts'
import { handedToCharge, handedToCooling } from './run.ts'

type Raw = Readonly<Record<string, unknown>>

/** A picture that belongs to a card, and the input of the step that it shows. */
export interface Pictured {
  readonly kind: KindName
  readonly operation: string
  readonly input: Raw
  /** Which of them is left out first where a sheet has no room: the higher it is. */
  readonly rank: number
}

/** What is worth a picture on a card, in the order of the visit: what stood, what goes in, what was read in the end. */
const PICTURES: readonly (readonly [section: string, kind: KindName, rank: number])[] = [
  ['leakTest', 'pressure-hold', 4],
  ['evacuation', 'vacuum-rise', 3],
  ['charge', 'charge-bar', 1],
  ['readings', 'superheat-subcooling', 2],
  ['cooling', 'cooling-bands', 5],
]

/** What else of the order a step is handed; values of the order's head are overridden by it. */
function handed(section: string, order: WorkOrderInput, head: Head): Raw {
  const given =
    section === 'charge'
      ? handedToCharge(order)
      : section === 'cooling'
        ? handedToCooling(order, head)
        : section === 'evacuation'
          ? { temperature: head.ambient }
          : {}
  return Object.fromEntries(
    Object.entries(given).flatMap(([name, placed]) => (placed ? [[name, placed.value]] : [])),
  )
}

/** Of the head, what a standing test leaves aside: the air of the place alone asks for no search, and leak rates go by charge. */
const NOT_STANDING: ReadonlySet<string> = new Set(['labelCharge', 'ambient'])

/**
 * The pictures of an order as it was written, each with the input of its step: the step's own section,
 * and what stands on the order's head under the same name, as `runSection` takes it.
 *
 * @param fieldsOf - Names of the fields of an operation.
 */
export function picturesOf(
  order: unknown,
  fieldsOf: (operation: string) => ReadonlySet<string>,
): readonly Pictured[] {
  // Values stand where they stand, whether they were read or not.
  const raw = modernised(order).raw as Raw
  const written = raw as unknown as WorkOrderInput
  const head = headOf(written)
  return PICTURES.flatMap(([section, kind, rank]) => {
    const own = raw[section] as Raw | undefined
    const operation = DIAGRAMS.find((entry) => entry.kind === kind)?.operation
    // A charge follows from the couplings and parts of the order, whether its own section says more or not.
    const isAsked = own !== undefined || (section === 'charge' && raw.job !== 'diagnose')
    if (!isAsked || operation === undefined) return []
    const known = fieldsOf(operation)
    const taken = Object.entries(head).flatMap(([name, { value }]) =>
      known.has(name) && !(section === 'leakTest' && NOT_STANDING.has(name))
        ? [[name, value] as const]
        : [],
    )
    const input = { ...Object.fromEntries(taken), ...handed(section, written, head), ...own }
    return [{ kind, operation, input, rank }]
  })
}
