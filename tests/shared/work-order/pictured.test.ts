import { describe, expect, it } from 'vitest'
import loader from '../../../data/examples/quarry-loader.json' with { type: 'json' }
import { DRAWN } from '../../../shared/diagram/all.ts'
import { operation } from '../../../shared/operations.ts'
import { picturesOf } from '../../../shared/work-order/pictured.ts'
import { workOrder } from '../../../shared/work-order/work-order.ts'

const names = (name: string): ReadonlySet<string> => {
  const { fields } = operation(name) as unknown as { fields: object }
  return new Set(Object.keys(fields))
}

const READ = {
  suctionPressure: '32 psig',
  suctionTemperature: '48 °F',
  liquidPressure: '185 psig',
  liquidTemperature: '115 °F',
}
const STOOD = {
  vacuum: '400 micron',
  rise: [
    { time: '0 min', pressure: '400 micron' },
    { time: '5 min', pressure: '430 micron' },
    { time: '10 min', pressure: '450 micron' },
    { time: '15 min', pressure: '460 micron' },
  ],
}

describe('pictures of an order', () => {
  it('are those of what was read, none where nothing was', () => {
    const { readings: _, ...bare } = loader as Record<string, unknown>
    expect(picturesOf(bare, names)).toEqual([])
    const kinds = picturesOf({ ...bare, readings: READ, evacuation: STOOD }, names)
    expect(kinds.map(({ kind }) => kind)).toEqual(['superheat-subcooling', 'vacuum-rise'])
  })

  it('show the step as the order itself computes it', () => {
    const order = {
      ...loader,
      job: 'system-opened',
      couplings: [],
      readings: READ,
      evacuation: STOOD,
    }
    const { computed } = workOrder.run(order).result
    for (const { operation: name, input, kind } of picturesOf(order, names)) {
      const own = operation(name).run(input).result
      const there = kind === 'vacuum-rise' ? computed.evacuation : computed.readings
      expect(own, kind).toEqual(there)
      expect(DRAWN[kind].draw(input)).toMatch(/^<svg /u)
    }
  })
})
