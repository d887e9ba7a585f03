import { describe, expect, it } from 'vitest'
import { parseQuantity } from '../../../shared/quantity/index.ts'
import { modernised } from '../../../shared/work-order/older.ts'
import { asWritten, label } from '../../../shared/work-order/written.ts'

describe('what stands on an order, as words on the sheet', () => {
  it.each([
    [parseQuantity('2.5 lb', ['mass']), '2.5 lb'],
    [parseQuantity('24 °C', ['temperature']), '24 °C'],
    [parseQuantity('500 ±10 g', ['mass']), '500 ±10 g'],
    ['PAG 46', 'PAG 46'],
    ['x'.repeat(120), 'x'.repeat(120)],
    ['x'.repeat(121), undefined],
    [3, '3'],
    [0, '0'],
    [true, 'yes'],
    [false, 'no'],
    [['us-609', 'us-608-universal'], 'us-609, us-608-universal'],
    [['short', 'y'.repeat(30)], '2 entries'],
    [[{ time: '0 min' }, { time: '5 min' }, { time: '9 min' }], '3 entries'],
    [[], ''],
    [{ volume: '4 L' }, undefined],
    [undefined, undefined],
    [null, undefined],
  ])('%o: %o', (value, words) => {
    expect(asWritten(value)).toBe(words)
  })

  it.each([
    ['suctionTemperature', 'Suction temperature'],
    ['leak', 'Leak'],
    ['grossNow', 'Gross now'],
  ])('%s: %s', (field, words) => {
    expect(label(field)).toBe(words)
  })
})

describe('an order by older names', () => {
  const read = (order: object) => modernised(order).raw
  const changes = (order: object) => modernised(order).changes

  it('of a coupling: one that sealed has two valves, one that did not has none', () => {
    expect(
      read({
        couplings: [{ name: 'A', selfSealing: true }, { selfSealing: false }, { name: 'C' }],
      }),
    ).toEqual({
      couplings: [
        { name: 'A', couplingType: 'two-valve' },
        { couplingType: 'no-valve' },
        { name: 'C' },
      ],
    })
  })

  it('of a coupling whose type is given beside the old name, or that is no coupling: left to be refused', () => {
    const couplings = [
      { couplingType: 'no-valve', selfSealing: true },
      { selfSealing: 'yes' },
      'A',
      null,
    ]
    expect(read({ couplings })).toEqual({ couplings })
    expect(changes({ couplings })).toEqual([])
  })

  it('in every section, and on the head', () => {
    const older = {
      fullCharge: '2 lb',
      machine: { compressor: 'open' },
      charge: { hoseBore: '6 mm', tolerance: '1 oz' },
      readings: { lowPressure: '20 psig' },
      readingsBefore: { lowPressure: '10 psig' },
      cooling: { lowPressure: '21 psig' },
      recovery: { charge: '2 lb' },
    }
    expect(read(older)).toEqual({
      labelCharge: '2 lb',
      machine: { compressorDrive: 'open' },
      charge: { serviceHoseBore: '6 mm', chargeTolerance: '1 oz' },
      readings: { suctionPressure: '20 psig' },
      readingsBefore: { suctionPressure: '10 psig' },
      cooling: { suctionPressure: '21 psig' },
      recovery: { labelCharge: '2 lb' },
    })
    expect(changes(older)).toEqual([
      'fullCharge is now labelCharge',
      'readings.lowPressure is now readings.suctionPressure',
      'readingsBefore.lowPressure is now readingsBefore.suctionPressure',
      'recovery.charge is now recovery.labelCharge',
      'charge.hoseBore is now charge.serviceHoseBore',
      'charge.tolerance is now charge.chargeTolerance',
      'cooling.lowPressure is now cooling.suctionPressure',
      'machine.compressor is now machine.compressorDrive',
    ])
  })

  it('never over a newer one that stands beside it, nor in an order that states its version', () => {
    const both = { labelCharge: '3 lb', fullCharge: '2 lb' }
    expect(read(both)).toEqual(both)
    expect(changes(both)).toEqual([])
    const stated = { version: 2, fullCharge: '2 lb', couplings: [{ selfSealing: true }] }
    expect(modernised(stated)).toEqual({ raw: stated, changes: [] })
    for (const other of [undefined, null, 'text', [1]]) {
      expect(modernised(other)).toEqual({ raw: other, changes: [] })
    }
  })
})
