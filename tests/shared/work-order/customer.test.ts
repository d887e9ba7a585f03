import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { customerMarkdown } from '../../../shared/work-order/markdown.ts'
import { changed, EXAMPLES, type Order, run, without } from './examples.ts'
import { arbitraryOrder } from './orders.ts'

const { crane, forwarder, groomer, loader } = EXAMPLES
const copyOf = (order: Order) => run(order).result.customer

describe('the customer reads', () => {
  it('what was found, done, taken out and put in, and who did it when', () => {
    const copy = copyOf(groomer)
    expect(copy).toMatchObject({ who: 'Mountain workshop', when: '2026-11-25' })
    expect(copy.found).toEqual([
      'Of a full charge of 2 lb 12 oz, 9 oz was left in it.',
      'Liquid hose cut by a stone; hose replaced, joints tight',
    ])
    expect(copy.done).toEqual([
      'The refrigerant circuit had lost its pressure.',
      'Replaced: Liquid hose, Receiver-drier.',
      'Pressure test with nitrogen: no leak shown.',
      'Vacuum test: tight and dry.',
    ])
    expect(copy.amounts).toEqual([
      'Taken out: 9 oz of R-134a.',
      'Put in: 2 lb 13 oz of R-134a, new.',
      'Oil put in: 3.8 fl oz of PAG 46.',
    ])
    expect(copy.after).toEqual([
      'Low side 21 psig, high side 165 psig.',
      'Nothing wrong was seen.',
      'Air from the vents 47 °F.',
    ])
  })

  it('nothing that was not done or read', () => {
    const { done, amounts, after, before } = copyOf(
      without(
        groomer,
        'leakTest',
        'evacuation',
        'record',
        'recovery',
        'readings',
        'cooling',
        'parts',
        'oil',
      ),
    )
    expect(done).toEqual(['The refrigerant circuit had lost its pressure.'])
    expect([amounts, after, before]).toEqual([[], [], []])
  })

  it('readings from before and after the work, each with its word', () => {
    const copy = copyOf({ ...groomer, readingsBefore: forwarder.readings })
    expect(copy.before[0]).toBe('Low side 12 psig, high side 138 psig.')
    expect(copy.before[1]).toBe('Another look is needed.')
    expect(copy.after[1]).toBe('Nothing wrong was seen.')
    expect(copy.found[0]).toMatch(/^The readings fit: refrigerant leaked out/u)
  })

  it('the high side where it was read: the liquid line before the discharge, and neither as the low', () => {
    const lineOf = (readings: Order) => copyOf({ ...groomer, readings }).after[0]
    const low = { suctionPressure: '21 psig' }
    expect(lineOf({ ...low, dischargePressure: '170 psig' })).toBe(
      'Low side 21 psig, high side 170 psig.',
    )
    expect(lineOf({ ...low, dischargePressure: '170 psig', liquidPressure: '165 psig' })).toBe(
      'Low side 21 psig, high side 165 psig.',
    )
    expect(lineOf({ dischargePressure: '170 psig', ambient: '75 °F' })).not.toContain('Low side')
    expect(lineOf(low)).not.toContain('high side')
  })

  it('of a diagnosis what was read, as it stands', () => {
    const { before, after, found, done } = copyOf({ ...forwarder, units: 'us' })
    expect(before).toEqual(['Low side 12 psig, high side 138 psig.', 'Another look is needed.'])
    expect(after).toEqual([])
    expect(found[0]).toMatch(/leaked out/u)
    expect(done[0]).toContain('nothing was opened')
  })

  it('that tests were not passed, where they were not', () => {
    const leaks = copyOf(changed(groomer, 'leakTest', { endPressure: '120 psig' }))
    expect(leaks.done).toContain('Pressure test with nitrogen: it leaks.')
    expect(leaks.done.join(' ')).not.toContain('no leak shown')
    const wet = changed(groomer, 'evacuation', {
      rise: [
        { time: '0 min', pressure: '402 micron' },
        { time: '10 min', pressure: '4000 micron' },
      ],
    })
    expect(copyOf(wet).done).toContain('Vacuum test: not passed yet.')
  })

  it('what to look out for with this machine', () => {
    expect(copyOf(loader).watch.join(' ')).toContain('couplings')
    expect(copyOf(groomer).watch.join(' ')).not.toMatch(/couplings|voltage|burns/u)
    expect(copyOf(crane).watch.join(' ')).toContain('voltage')
    const burning = { ...without(crane, 'existingOil', 'oil'), refrigerant: 'R-1234yf' }
    expect(copyOf(burning).watch.join(' ')).toContain('burns')
    const stopped = { ...loader, person: { certificates: [], forPay: true } }
    expect(copyOf(stopped).watch[0]).toContain('not finished')
    expect(copyOf(loader).watch[0]).not.toContain('not finished')
  })

  it('that the couplings lost too little, only where that was found', () => {
    expect(copyOf(loader).done.join(' ')).toContain('too little to be put back')
    const unknown = { ...loader, charge: {}, couplings: [{ couplingType: 'two-valve' }] }
    expect(copyOf(unknown).done.join(' ')).not.toContain('too little')
    expect(copyOf(changed(loader, 'record', { charged: '1 oz' })).done.join(' ')).not.toContain(
      'too little',
    )
  })

  it('no internals and nothing twice, of any order', () => {
    fc.assert(
      fc.property(arbitraryOrder, (order) => {
        const answer = run({ ...order, record: {} })
        const { asked: _, ...copy } = answer.result.customer
        for (const lines of [copy.found, copy.done, copy.amounts, copy.after, copy.watch]) {
          expect(lines).toEqual([...new Set(lines)])
        }
        const text = JSON.stringify(copy)
        expect(text).not.toMatch(/CFR|superheat|subcooling|undefined|NaN|____|[{}]{2}/u)
        expect(customerMarkdown(answer).match(/^# /gmu)).toHaveLength(1)
      }),
      { numRuns: 60 },
    )
  })
})
