import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cardLines, MOST_LINES } from '../../cli/render/card.ts'
import { inkOf } from '../../cli/render/ink.ts'
import { columnsOf } from '../../cli/render/wrap.ts'
import { isOnScreen } from '../../shared/cautions.ts'
import { JOBS } from '../../shared/fields/index.ts'
import { EXAMPLES, type Order, run } from '../shared/work-order/examples.ts'
import { arbitraryOrder } from '../shared/work-order/orders.ts'
import { session } from './session.ts'

const page = { ink: inkOf(false), width: 80, precise: false }
const linesOf = (order: Order) => cardLines(run(order), page)
const squeezed = (lines: readonly string[]) => lines.join(' ').replace(/\s+/gu, ' ')

describe.each(JOBS)('the card of any order to %s', (job) => {
  it('is one sheet of 70 lines and 80 columns, with every danger and every stop', () => {
    fc.assert(
      fc.property(arbitraryOrder, (order) => {
        const answer = run({ ...order, job })
        const lines = cardLines(answer, page)
        expect(lines.length).toBeLessThanOrEqual(70)
        expect(lines.filter((line) => columnsOf(line) > 80)).toEqual([])
        const text = squeezed(lines)
        const { dangers, stops, steps, foot } = answer.result.card
        expect(new Set(dangers).size).toBe(answer.cautions.filter(isOnScreen).length)
        for (const danger of dangers) expect(text).toContain(danger)
        if (stops.length > 0) expect(lines[0]).toMatch(/^STOP/u)
        for (const stop of stops) expect(text).toContain(stop.replace(/\s+/gu, ' '))
        for (const { title } of steps) expect(text).toContain(title)
        expect(lines.at(-1)).toBe(foot)
        expect(text).not.toMatch(/undefined|NaN|\[object|[{}]/u)
      }),
      { numRuns: 40 },
    )
  })
})

describe('the order of the card', () => {
  it('is stop-lines, machine, dangers, law, steps, records, program', () => {
    const order = { ...EXAMPLES.loader, person: { certificates: [], forPay: true } }
    const text = squeezed(linesOf(order))
    const marks = [
      'STOP: Do not open',
      'WORK ORDER',
      'Danger Pressure',
      'Law US:',
      '1 Before',
      'Records',
      'chargewright',
    ]
    const places = marks.map((mark) => text.indexOf(mark))
    expect(places).not.toContain(-1)
    expect(places).toEqual([...places].sort((a, b) => a - b))
  })

  it('stays below 70 lines without packing where there is room', () => {
    expect(MOST_LINES).toBe(70)
    const lines = linesOf(EXAMPLES.loader)
    expect(lines.filter((line) => line.includes('[ ]')).length).toBeGreaterThan(10)
  })
})

describe('the line of the law', () => {
  const lawOf = (order: Order) => linesOf(order).find((line) => line.startsWith('Law '))

  it('stands on the card of every job that opens something', () => {
    for (const { job, ...order } of [EXAMPLES.loader, EXAMPLES.crane, EXAMPLES.groomer]) {
      expect(lawOf({ ...order, job })).toMatch(/^Law +(US|EU): do not vent; recover/u)
    }
    expect(lawOf(EXAMPLES.forwarder)).toBeUndefined()
  })

  it('asks for the law where nobody gave one', () => {
    const { place: _, ...nowhere } = EXAMPLES.loader
    expect(lawOf(nowhere)).toMatch(/Venting is illegal in most places: give/u)
  })
})

describe('the page of an order', () => {
  const files = { 'order.json': JSON.stringify(EXAMPLES.groomer) }
  const printed = async (...options: string[]) =>
    (await session(['work-order', 'order.json', ...options], { files })).out

  it('has card, then appendix, in the terminal and in Markdown', async () => {
    for (const options of [['--full'], ['--markdown']]) {
      const out = await printed(...options)
      const places = ['Snow groomer 2', 'Records', 'Appendix', 'First aid', 'Sources'].map((mark) =>
        out.indexOf(mark),
      )
      expect(places).not.toContain(-1)
      expect(places).toEqual([...places].sort((a, b) => a - b))
    }
    expect(await printed()).not.toContain('Appendix')
  })

  it('is a copy for the customer without internals, in the terminal and in Markdown', async () => {
    const [plain, markdown] = [
      await printed('--customer'),
      await printed('--customer', '--markdown'),
    ]
    for (const out of [plain, markdown]) {
      expect(out).toMatch(/customer's copy/u)
      expect(out).toMatch(/Put in: 2 lb 13 oz of R-134a, new\./u)
      expect(out).not.toMatch(/CFR|superheat|\[ \]|Sources|Danger|tolerance/iu)
    }
    expect(markdown).toMatch(/^# Air conditioning/u)
    expect(plain).not.toContain('#')
  })
})
