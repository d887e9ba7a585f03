import { type Block, under } from './blocks.ts'
import type { WorkOrderAnswer } from './sheet.ts'

/** The customer's copy: what was found and done, what went out and in, what to look out for. */
export function customerPage({ result }: WorkOrderAnswer): readonly Block[] {
  const { customer, card, invented } = result
  const { who, when, asked, found, done, amounts, before, after, watch } = customer
  const signed = [who, when].filter((text) => text !== undefined).join(', ')
  return [
    { kind: 'title', text: "Air conditioning: the customer's copy" },
    { kind: 'note', text: card.machine },
    ...(invented
      ? [{ kind: 'note', text: 'Demonstration: the machine is invented.' } as const]
      : []),
    ...under('Asked', asked === undefined ? [] : [asked]),
    ...under('Found', found),
    ...under('Done', done),
    ...under('Taken out and put in', amounts),
    ...under('Before the work', before),
    ...under('After the work', after),
    ...under('Look out for', watch),
    ...under('Done by', signed === '' ? [] : [signed]),
  ]
}
