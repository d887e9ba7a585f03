import { describe, expect, it } from 'vitest'
import { orderOf, plainNames, QUESTIONS, verdictOf } from '../../../shared/work-order/begin.ts'
import { workOrder } from '../../../shared/work-order/work-order.ts'

const question = (id: string) => {
  const found = QUESTIONS.find((entry) => entry.id === id)
  if (!found) throw new Error(id)
  return found
}

describe('beginning an order', () => {
  it('asks ten questions at most, and names what does not fit', () => {
    expect(QUESTIONS.length).toBeLessThanOrEqual(10)
    expect(verdictOf(question('name'), ' ')).toBe('Needed to go on.')
    expect(verdictOf(question('labelCharge'), '')).toBe(true)
    expect(verdictOf(question('labelCharge'), '3')).toContain('unit')
    expect(verdictOf(question('refrigerant'), 'R-999')).toContain('R-999')
    expect(verdictOf(question('kind'), 'vehicle')).toBe(true)
  })

  it('makes an order that runs, of what was said and nothing else', () => {
    const order = orderOf(
      plainNames({
        name: 'Loader 7',
        kind: 'off-road',
        refrigerant: '134a',
        labelCharge: '2 lb 6 oz',
        existingOil: '',
        compressorDrive: 'open',
        meteringDevice: 'txv',
        job: 'parted',
        cabOff: 'yes',
        law: 'us',
      }),
    )
    expect(order).toEqual({
      version: 2,
      machine: {
        name: 'Loader 7',
        kind: 'off-road',
        compressorDrive: 'open',
        meteringDevice: 'expansion-valve',
      },
      refrigerant: '134a',
      labelCharge: '2 lb 6 oz',
      place: { law: 'us-federal' },
      job: 'couplers-parted',
      cabOff: true,
    })
    expect(workOrder.run(order).result.job).toBe('couplers-parted')
  })
})
