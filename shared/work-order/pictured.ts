import { DIAGRAMS, type KindName } from '../diagram/index.ts'
import { headOf } from './head.ts'
import type { WorkOrderInput } from './input.ts'
import { modernised } from './older.ts'

type Raw = Readonly<Record<string, unknown>>

/** A picture that belongs to a card, and the input of the step that it shows. */
export interface Pictured {
  readonly kind: KindName
  readonly operation: string
  readonly input: Raw
}

/** What is worth a picture on a card: what was read in the end, and what stood. */
const PICTURES: readonly (readonly [section: string, kind: KindName])[] = [
  ['readings', 'superheat-subcooling'],
  ['evacuation', 'vacuum-rise'],
  ['leakTest', 'pressure-hold'],
]

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
  const head = headOf(raw as unknown as WorkOrderInput)
  return PICTURES.flatMap(([section, kind]) => {
    const own = raw[section] as Raw | undefined
    const operation = DIAGRAMS.find((entry) => entry.kind === kind)?.operation
    if (own === undefined || operation === undefined) return []
    const known = fieldsOf(operation)
    const taken = Object.entries(head).flatMap(([name, { value }]) =>
      known.has(name) && !(section === 'leakTest' && NOT_STANDING.has(name))
        ? [[name, value] as const]
        : [],
    )
    const place = raw.place as Raw | undefined
    const air = section === 'evacuation' && place?.ambient ? { temperature: place.ambient } : {}
    return [{ kind, operation, input: { ...air, ...Object.fromEntries(taken), ...own } }]
  })
}
