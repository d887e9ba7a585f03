import * as z from 'zod'
import { placeIn, refrigerantIn } from '../../shared/fields/index.ts'
import { type Computation, defineOperation } from '../../shared/operation.ts'
import { mass, type Quantity, quantityIn, quantityOut } from '../../shared/quantity/index.ts'
import { lawOfJob } from '../../shared/rules/job-law.ts'

type Made = Computation<{ mass: Quantity }>

const fields = {
  pressure: quantityIn.pressure.optional(),
  given: quantityIn.mass.optional(),
  refrigerant: refrigerantIn.optional(),
  ...placeIn,
}
type Given = z.output<z.ZodObject<typeof fields>>

export const PLAIN: Made = {
  result: { mass: mass(1) },
  steps: [],
  cautions: [],
  sources: [],
  assumptions: [],
  warnings: [],
}

/** An operation that does next to nothing, with some of it as a test needs it. */
export const madeOperation = (
  compute: (input: Given) => Partial<Made> = () => ({}),
  {
    opens,
    ...more
  }: {
    readonly check?: (input: Given) => void
    readonly older?: (raw: unknown) => { readonly raw: unknown; readonly changes: string[] }
    readonly opens?: boolean
    readonly description?: string
    readonly example?: z.input<z.ZodObject<typeof fields>>
  } = {},
) =>
  defineOperation({
    name: 'weigh',
    summary: 'Weighs',
    fields,
    result: z.strictObject({ mass: quantityOut }),
    cautions: { always: ['maker-first', 'pressure'], mayAlso: ['no-venting', 'no-oxygen'] },
    example: { given: '1 kg' },
    compute: (input) => ({ ...PLAIN, ...compute(input) }),
    ...more,
    ...(opens ? { opens: lawOfJob } : {}),
  })
