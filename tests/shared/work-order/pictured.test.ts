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

const HELD = {
  startPressure: '150 psig',
  startTemperature: '70 °F',
  endPressure: '148 psig',
  endTemperature: '68 °F',
  elapsed: '30 min',
  lowSideRating: '250 psig',
}

const COOLED = { ventTemperature: '48 °F', returnAir: '80 °F', relativeHumidity: '50 %' }

describe('pictures of an order', () => {
  it('are those of what was read and what goes in, none where nothing was', () => {
    const { readings: _, charge: __, ...bare } = loader as Record<string, unknown>
    const kinds = (order: object) => picturesOf(order, names).map(({ kind }) => kind)
    expect(kinds({ ...bare, job: 'diagnose' })).toEqual([])
    expect(kinds(bare)).toEqual(['charge-bar'])
    expect(
      kinds({ ...bare, leakTest: HELD, readings: READ, evacuation: STOOD, cooling: COOLED }),
    ).toEqual([
      'pressure-hold',
      'vacuum-rise',
      'charge-bar',
      'superheat-subcooling',
      'cooling-bands',
    ])
  })

  it('leave the cooling out first and the charge last where a sheet has no room', () => {
    const order = { ...loader, leakTest: HELD, readings: READ, evacuation: STOOD, cooling: COOLED }
    const pictures = picturesOf(order, names)
    expect(pictures.toSorted((a, b) => b.rank - a.rank).map(({ kind }) => kind)).toEqual([
      'cooling-bands',
      'pressure-hold',
      'vacuum-rise',
      'superheat-subcooling',
      'charge-bar',
    ])
  })

  it.each([
    ['of an opened system', { job: 'system-opened', couplings: [] }],
    ['of parted couplings', {}],
    [
      'of a changed part',
      { job: 'system-opened', couplings: [], recovery: { recovered: '2 lb 1 oz' } },
    ],
  ])('show the step as the order %s computes it', (_, changes) => {
    const order = {
      ...loader,
      ...changes,
      leakTest: HELD,
      readings: READ,
      evacuation: STOOD,
      cooling: COOLED,
    }
    const { computed } = workOrder.run(order).result
    const there = {
      'pressure-hold': computed.leakTest,
      'vacuum-rise': computed.evacuation,
      'charge-bar': computed.charge,
      'superheat-subcooling': computed.readings,
      'cooling-bands': computed.cooling,
    }
    const pictures = picturesOf(order, names)
    expect(pictures.map(({ kind }) => kind)).toEqual(Object.keys(there))
    for (const { operation: name, input, kind } of pictures) {
      const own = operation(name).run(input).result
      const shown = there[kind as keyof typeof there]
      // Of a leak test the picture shows the standing test: no duty by law hangs on it.
      if (kind === 'pressure-hold')
        expect(own).toMatchObject({ standing: computed.leakTest?.standing })
      else expect(own, kind).toEqual(shown)
      expect(own, kind).toBeDefined()
      expect(DRAWN[kind].draw(input)).toMatch(/^<svg /u)
    }
  })
})
