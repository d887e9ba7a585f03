import crane from '../../../data/examples/harbour-crane.json' with { type: 'json' }
import forwarder from '../../../data/examples/log-forwarder.json' with { type: 'json' }
import loader from '../../../data/examples/quarry-loader.json' with { type: 'json' }
import groomer from '../../../data/examples/snow-groomer.json' with { type: 'json' }
import type { WorkOrderAnswer } from '../../../shared/work-order/sheet.ts'
import { workOrder } from '../../../shared/work-order/work-order.ts'

export type Order = Record<string, unknown>

export const EXAMPLES: Readonly<Record<'crane' | 'forwarder' | 'groomer' | 'loader', Order>> = {
  crane,
  forwarder,
  groomer,
  loader,
}

export const run = (order: Order): WorkOrderAnswer => workOrder.run(order)

/** The step of this id. */
export function stepOf(answer: WorkOrderAnswer, id: string) {
  const found = answer.result.steps.find((step) => step.id === id)
  if (!found) throw new Error(`There is no step ${id}.`)
  return found
}

export const without = (order: Order, ...keys: string[]): Order =>
  Object.fromEntries(Object.entries(order).filter(([key]) => !keys.includes(key)))

/** The order with `changes` put into one of its sections. */
export const changed = (order: Order, section: string, changes: Order): Order => ({
  ...order,
  [section]: { ...(order[section] as Order | undefined), ...changes },
})
