import * as z from 'zod'
import { CalcError } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import { mass, quantityOut, say } from '../../quantity/index.ts'
import { cansFor } from './cans.ts'
import type { ChargingInput } from './fields.ts'

export const cansOut = z.strictObject({
  whole: z.number().describe('Cans that go in whole'),
  fromLast: quantityOut.describe('What to take from the last can'),
  opened: z.number().describe('Cans to have at hand'),
})

/** How many cans to open, and how much of the last; undefined when it does not come from cans. */
export function cansOf(
  input: ChargingInput,
  leavesKg: number,
  notes: Notes,
): Computed<z.output<typeof cansOut>> | undefined {
  if (input.supply !== 'small-cans') return undefined
  if (!input.canNet) {
    throw new CalcError('missing-input', 'The net mass of a can is missing.', {
      hint: 'Read it on the label, such as 12 oz.',
      path: ['canNet'],
    })
  }
  if (!input.canLeft) {
    notes.assumptions.push({
      field: 'canLeft',
      taken: 'cans that empty completely',
      because: 'what stays in an empty can was not given; weigh one before and after',
    })
  }
  const { whole, lastKg, opened } = cansFor(leavesKg, input.canNet, input.canLeft?.si ?? 0)
  notes.steps.push({
    what: 'Small cans',
    formula: 'mass that must leave the cans ÷ (net mass − what stays in an empty can)',
    values: { needed: mass(leavesKg), net: input.canNet, left: input.canLeft ?? mass(0) },
    gives: `${whole} whole and ${say(mass(lastKg))} from the last`,
  })
  return { whole, fromLast: mass(lastKg), opened }
}
