import { describe, expect, it } from 'vitest'
import { RENAMED, renamedTo } from '../../../shared/fields/index.ts'
import { operation, operations } from '../../../shared/operations.ts'
import { everyField } from '../../support/every-field.ts'
import { refusalOf } from '../../support/refusal.ts'

/** What each old name is called now, with an operation that says so. */
const ROWS: readonly (readonly [old: string, now: string, operation: string])[] = [
  ['charge', 'labelCharge', 'leak-test'],
  ['charge', 'startMass', 'fractionation'],
  ['fullCharge', 'labelCharge', 'charging'],
  ['originalCharge', 'labelCharge', 'retrofit'],
  ['case', 'job', 'charge'],
  ['ambientTemperature', 'ambient', 'cooling-check'],
  ['outdoorTemperature', 'ambient', 'readings'],
  ['outdoorDryBulb', 'ambient', 'readings'],
  ['indoorWetBulb', 'returnWetBulb', 'readings'],
  ['airIn', 'returnAir', 'cooling-check'],
  ['internalVolume', 'volume', 'evacuation'],
  ['containerVolume', 'volume', 'air-check'],
  ['compressor', 'compressorDrive', 'oil'],
  ['equipment', 'machine', 'recovery'],
  ['kind', 'machine', 'rules'],
  ['place', 'law', 'rules'],
  ['hoseBore', 'serviceHoseBore', 'charging'],
  ['hoseBore', 'vacuumHoseBore', 'evacuation'],
  ['hoseLength', 'serviceHoseLength', 'charging'],
  ['hoseLength', 'vacuumHoseLength', 'evacuation'],
  ['hoseLength', 'longHoseLength', 'oil'],
  ['hoses', 'vacuumHoses', 'evacuation'],
  ['hoseAtStart', 'serviceHoseStarts', 'charging'],
  ['hoseAtEnd', 'serviceHoseHolds', 'charging'],
  ['hosePressure', 'serviceHosePressure', 'charge'],
  ['tolerance', 'chargeTolerance', 'charge'],
  ['scaleResolution', 'scaleDivision', 'charging'],
  ['staticPressure', 'systemPressure', 'leak-test'],
  ['lowPressure', 'suctionPressure', 'readings'],
  ['highPressure', 'dischargePressure', 'cooling-check'],
  ['highPressure', 'liquidPressure', 'readings'],
  ['dryBelow', 'holdBelow', 'evacuation'],
  ['oil', 'newOil', 'oil'],
  ['oilType', 'existingOil', 'oil'],
  ['systemTotal', 'oilTotal', 'oil'],
  ['on', 'date', 'recovery'],
  ['from', 'refrigerant', 'retrofit'],
  ['to', 'newRefrigerant', 'retrofit'],
  ['retrofitTo', 'newRefrigerant', 'rules'],
]

/** Where an old name means something of its own today. */
const OWN_MEANING: Readonly<Record<string, string>> = {
  'table.from': 'the first row of a table',
  'table.to': 'its last row',
  'work-order.charge': 'the fields of that step',
  'work-order.oil': 'the fields of that step',
  'work-order.place': 'the place as a whole, its law among the rest',
  'work-order.machine.kind': 'the kind of the machine, below the machine',
}

const nameOf = (path: readonly (string | number)[]) =>
  path.filter((part) => typeof part === 'string').join('.')

describe('a field by its old name', () => {
  it.each(ROWS)('%s is now %s, says %s', (old, now, name) => {
    const { example, run } = operation(name)
    const error = refusalOf(() => run({ ...example, [old]: 'anything' }))
    expect(error).toMatchObject({ code: 'bad-input', path: [old] })
    expect(error.message).toContain(`"${old}" is now called "`)
    expect(error.message).toContain(`"${now}"`)
    expect(error.hint).toBe('Use the new name; the value stays as it is.')
  })

  it('is in the list above, and nothing else is', () => {
    const told = Object.entries(RENAMED).flatMap(([old, now]) =>
      now.map((name) => `${old} ${name}`),
    )
    expect(told.sort()).toEqual(ROWS.map(([old, now]) => `${old} ${now}`).sort())
  })

  it('is taken by no operation, at any depth', () => {
    const taken = everyField().flatMap(({ operation: name, path, field }) =>
      Object.hasOwn(RENAMED, field.name) ? [`${name}.${nameOf(path)}`] : [],
    )
    expect(taken.sort()).toEqual(Object.keys(OWN_MEANING).sort())
  })

  it('is answered with names that the operation has', () => {
    for (const entry of operations) {
      const fields = everyField().filter(({ operation: name }) => name === entry.name)
      const names = fields.filter(({ path }) => path.length === 1).map(({ field }) => field.name)
      for (const old of Object.keys(RENAMED)) {
        for (const now of renamedTo(old, names)) expect(names).toContain(now)
      }
    }
  })

  it('has no new name where the operation has none of them', () => {
    expect(renamedTo('hoseBore', ['refrigerant', 'vacuumHoseBore'])).toEqual(['vacuumHoseBore'])
    expect(renamedTo('hoseBore', ['refrigerant'])).toEqual([])
    expect(renamedTo('refrigerant', ['refrigerant'])).toEqual([])
    expect(renamedTo('toString', ['toString'])).toEqual([])
    const { example, run } = operation('saturation')
    const error = refusalOf(() => run({ ...example, hoseBore: '5 mm' }))
    expect(error.message).toBe('Unknown field "hoseBore".')
  })
})
