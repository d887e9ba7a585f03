import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import data from '../../../data/service/card.json' with { type: 'json' }
import { ABOUT } from '../../../shared/about.ts'
import { changed, EXAMPLES, type Order, run, without } from './examples.ts'
import { arbitraryOrder } from './orders.ts'

const { crane, forwarder, groomer, loader } = EXAMPLES

const cardOf = (order: Order) => run(order).result.card
const stepOn = (order: Order, id: string) => cardOf(order).steps.find((step) => step.id === id)
const linesOf = (order: Order) => {
  const { steps, records } = cardOf(order)
  return [...steps.flatMap(({ lines }) => lines), ...records]
}
const textOf = (order: Order) => linesOf(order).map(({ text }) => text)
const said = (order: Order) => textOf(order).join('\n')
const onMachine = (kind: string, more: Order = {}) => ({
  ...without(crane, 'recovery', 'oil'),
  machine: { name: 'Unit', kind, compressorDrive: 'open', ...more },
})

describe('the steps on the card', () => {
  it('of parted couplings begin with the parting', () => {
    const ids = cardOf(loader).steps.map(({ id }) => id)
    expect(ids).toEqual(['before', 'part', 'cab', 'rejoin', 'charge', 'prove'])
    expect(cardOf({ ...loader, cabOff: false }).steps.map(({ id }) => id)).not.toContain('cab')
  })

  it('of an opened system go from recovery to proof', () => {
    const ids = cardOf(crane).steps.map(({ id }) => id)
    expect(ids).toEqual([
      'before',
      'recover',
      'open',
      'replace',
      'oil',
      'leak-test',
      'evacuate',
      'charge',
      'prove',
    ])
  })

  it('of couplings that cannot shut are those of an opened system', () => {
    const couplings = [{ couplingType: 'no-valve' }]
    const ids = cardOf({ ...loader, couplings }).steps.map(({ id }) => id)
    expect(ids).toEqual(expect.arrayContaining(['recover', 'open', 'evacuate']))
    expect(ids).not.toContain('part')
  })

  it('of a diagnosis open nothing', () => {
    expect(cardOf(forwarder).steps.map(({ id }) => id)).toEqual(['before', 'measure'])
  })

  it('take one line each once they are done', () => {
    const done = cardOf(groomer).steps.filter((step) => step.done)
    expect(done.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['oil', 'leak-test', 'evacuate', 'charge', 'prove']),
    )
    for (const { lines } of done) {
      expect(lines).toHaveLength(1)
      expect(lines[0]?.text).toMatch(/^done: .*\d/u)
      expect(lines[0]?.ticked).toBeUndefined()
      expect(lines[0]?.text.length).toBeLessThanOrEqual(64)
    }
  })

  it('are not done while something speaks against them', () => {
    const leaks = changed(groomer, 'leakTest', { endPressure: '120 psig' })
    expect(stepOn(groomer, 'leak-test')?.done).toBe(true)
    expect(stepOn(leaks, 'leak-test')?.done).toBe(false)
    const wet = changed(groomer, 'evacuation', {
      rise: [
        { time: '0 min', pressure: '402 micron' },
        { time: '5 min', pressure: '9000 micron' },
      ],
    })
    expect(stepOn(wet, 'evacuate')?.done).toBe(false)
    const short = changed(groomer, 'record', { charged: '2 lb' })
    expect(stepOn(groomer, 'charge')?.done).toBe(true)
    expect(stepOn(short, 'charge')?.done).toBe(false)
    const { oilAdded: _, ...record } = groomer.record as Order
    expect(stepOn({ ...groomer, record }, 'oil')?.done).toBe(false)
    expect(
      stepOn(changed(groomer, 'readings', { liquidPressure: '440 psig' }), 'prove')?.done,
    ).toBe(false)
  })
})

describe('tasks', () => {
  it.each([
    ['road-vehicle', 'open', /1000 rpm/u, /engine off/u],
    ['bus', 'open', /1000 rpm/u, /engine off/u],
    ['off-road', 'open', /1000 rpm/u, /engine off/u],
    ['off-road', 'electric', /^full cold, fan high/mu, /high voltage switched off/u],
    ['refrigerated-cargo', 'open', /running 15 min/u, /unit off/u],
    ['stationary', 'open', /running 15 min/u, /power off, locked out/u],
  ])('are those of a %s with %s drive', (kind, compressorDrive, reads, off) => {
    const text = said(onMachine(kind, { compressorDrive }))
    expect(text).toMatch(reads)
    expect(text).toMatch(off)
    if (!reads.test('1000 rpm')) expect(text).not.toContain('1000 rpm')
    if (kind === 'stationary' || kind === 'refrigerated-cargo') {
      expect(text).not.toMatch(/engine|battery|vent /u)
    }
  })

  it('know no belts in a building, and belts on a machine', () => {
    const belts = /Belts/u
    expect(cardOf(onMachine('stationary')).dangers.join(' ')).not.toMatch(belts)
    expect(cardOf(onMachine('off-road')).dangers.join(' ')).toMatch(belts)
    const read = {
      ...onMachine('stationary'),
      readings: groomer.readings,
      cooling: groomer.cooling,
    }
    expect(cardOf(read).dangers.join(' ')).not.toMatch(belts)
  })

  it('recover no carbon dioxide', () => {
    const order = { ...without(crane, 'recovery', 'oil', 'existingOil'), refrigerant: 'R-744' }
    const { steps, records, dangers } = cardOf(order)
    expect(steps.find(({ id }) => id === 'recover')?.title).toBe('Let out')
    const words = [
      ...steps.filter(({ id }) => id !== 'charge').flatMap(({ lines }) => lines),
      ...records,
    ]
      .map(({ text }): string => text)
      .concat(dangers)
      .join('\n')
    expect(words).toContain('let out slowly, outdoors')
    expect(words).not.toMatch(/recover|identif|cylinder|mix/iu)
    expect(cardOf(crane).steps.find(({ id }) => id === 'recover')?.title).toBe('Recover')
    expect(said(crane)).toMatch(/identified before the recovery machine/u)
  })

  it('secure a lifted cab only where one is lifted', () => {
    expect(said(loader)).toContain('nothing can roll, drop or start')
    expect(cardOf(loader).dangers.join(' ')).toContain('Lifted cab')
    const down = { ...loader, cabOff: false }
    expect(said(down)).not.toContain('nothing can roll')
    expect(cardOf(down).dangers.join(' ')).not.toContain('Lifted cab')
  })

  it('ask for a caliper only where nothing says what was spilt', () => {
    expect(said(loader)).not.toContain('caliper')
    const couplings = [{ couplingType: 'two-valve' }, { couplingType: 'two-valve' }]
    const order = { ...loader, charge: {}, couplings }
    expect(stepOn(order, 'part')?.lines.at(-1)?.text).toMatch(/caliper.*mm, depths .*mm \+ .*mm/u)
  })

  it('say at rest what the gauges should show in this air', () => {
    // R-134a at 75 °F: 93.0 psia less the 14.06 psia of 1200 ft.
    expect(said(loader)).toMatch(/79\.\d ±1\.\d psig at that air/u)
    const { place } = loader
    expect(said({ ...loader, place: { ...(place as Order), altitude: '0 ft' } })).toMatch(
      /78\.\d ±1\.\d psig at that air/u,
    )
    // Liquid stands in it: R-407C at 75 °F has its bubble point near 167 psia and its dew point near 143 psia.
    expect(said({ ...loader, refrigerant: 'R-407C' })).toMatch(
      /1(4|5)\d(\.\d)? ±\d(\.\d)? psig at that air/u,
    )
  })
})

describe('lines', () => {
  const tasks = Object.values(data.tasks).map(({ text }) => text.split('{')[0] ?? '')

  it('have a box where there is something to do or to write, and nowhere else', () => {
    fc.assert(
      fc.property(arbitraryOrder, (order) => {
        for (const { lines } of cardOf(order).steps) {
          for (const { text, ticked } of lines) {
            const isTask = tasks.some((start) => start !== '' && text.startsWith(start))
            expect(ticked !== undefined, text).toBe(isTask)
          }
        }
      }),
      { numRuns: 40 },
    )
  })

  it('have the unit behind every blank that is a figure', () => {
    fc.assert(
      fc.property(arbitraryOrder, (order) => {
        for (const { lines } of cardOf(order).steps) {
          for (const { text } of lines) {
            if (text.includes('certificate')) continue
            expect(text).not.toMatch(
              /____(?! (psig|kPa g|micron|Pa abs|°F|°C|lb oz|g|fl oz|mL|mm|min|%))/u,
            )
          }
        }
      }),
      { numRuns: 40 },
    )
  })

  it('say nothing twice', () => {
    fc.assert(
      fc.property(arbitraryOrder, (order) => {
        const card = cardOf(order)
        const all = [
          ...card.stops,
          ...card.dangers,
          ...[...card.steps.flatMap(({ lines }) => lines), ...card.records].map(
            ({ text, oneOf }) => (oneOf ? `${text} ${oneOf.join(' ')}` : text),
          ),
        ].filter((text) => text !== data.says.stopped)
        expect(all).toEqual([...new Set(all)])
      }),
      { numRuns: 60 },
    )
  })

  it('tell the ways to a charge whose label is gone as one of several', () => {
    const order = without(crane, 'labelCharge')
    const ways = stepOn(order, 'charge')?.lines.find(({ oneOf }) => oneOf)
    expect(ways?.ticked).toBeUndefined()
    expect(ways?.text).toBe('one of')
    expect(ways?.oneOf?.join(' ')).toMatch(/serial number.*sister machine.*charging procedure/u)
    expect(stepOn(crane, 'charge')?.lines.some(({ oneOf }) => oneOf)).toBe(false)
  })

  it('tell the ways to bound a loss as one of several', () => {
    const order = { ...loader, charge: {}, couplings: [{ couplingType: 'two-valve' }] }
    const ways = stepOn(order, 'charge')?.lines.find(({ oneOf }) => oneOf)
    expect(ways?.oneOf).toHaveLength(3)
    expect(stepOn(loader, 'charge')?.lines.some(({ oneOf }) => oneOf)).toBe(false)
  })

  it('name target, hold and limit of the vacuum, then whether it passed', () => {
    const order = { ...groomer, evacuation: {} }
    const ask = stepOn(order, 'evacuate')
      ?.lines.map(({ text }) => text)
      .join(' ')
    expect(ask).toMatch(/Pull to 500 micron or lower.*10 min.*below 1000 micron/u)
    expect(stepOn(groomer, 'evacuate')?.lines[0]?.text).toContain('tight and dry: 400 micron')
    const { rise } = groomer.evacuation as { rise: Order[] }
    const leaking = rise.map((entry, index) => ({
      ...entry,
      pressure: `${400 + 60 * index} micron`,
    }))
    const found = stepOn(changed(groomer, 'evacuation', { rise: leaking }), 'evacuate')
    expect(found?.lines[0]?.text).toMatch(/^Fail/u)
  })

  it('bound the loss of couplings by a caliper', () => {
    const couplings = [
      {
        couplingType: 'two-valve',
        line: 'liquid',
        mouthDiameter: '18 mm',
        firstDepth: '4 mm',
        secondDepth: '2 mm',
      },
      {
        couplingType: 'two-valve',
        line: 'suction',
        mouthDiameter: '25 mm',
        firstDepth: '5 mm',
        secondDepth: '3 mm',
      },
    ]
    const order = { ...loader, charge: {}, couplings }
    expect(stepOn(order, 'charge')?.lines[0]?.text).toMatch(/at most 0\.\d+ oz can be gone/u)
    const sheet = run(order).result.steps.find(({ id }) => id === 'charge')
    expect(sheet?.figures.map(({ label }) => label)).toContain('Cannot exceed')
  })

  it('hold what went in against the tolerance', () => {
    const short = stepOn(changed(groomer, 'record', { charged: '2 lb' }), 'charge')
    expect(short?.lines.at(-1)?.text).toMatch(/1[23](\.\d)? oz too little, outside/u)
    const over = stepOn(changed(groomer, 'record', { charged: '3 lb' }), 'charge')
    expect(over?.lines.at(-1)?.text).toMatch(/[23](\.\d)? oz too much, outside/u)
  })
})

describe('who may', () => {
  it('is confirmed at each order, whatever is on file', () => {
    for (const order of [loader, groomer]) {
      const line = stepOn(order, 'before')?.lines.find(({ text }) =>
        text.startsWith('certificate seen'),
      )
      expect(line?.ticked).toBe(false)
      expect(line?.text).toMatch(/609|608 Universal/u)
    }
    const nobody = stepOn(without(loader, 'person'), 'before')
    expect(nobody?.lines.map(({ text }) => text)).toContain('certificate seen today: ____')
    expect(said(forwarder)).not.toContain('certificate seen')
  })
})

it('names the program and the day of its data at the foot', () => {
  expect(cardOf(loader).foot).toBe(`chargewright ${ABOUT.version}, data of ${ABOUT.data}`)
})

describe('the head of the card', () => {
  it('names machine, refrigerant with its class, charge, oil, place and person', () => {
    const { machine, about, title } = cardOf(loader)
    expect(title).toBe('Cab off and on again')
    expect(machine).toBe('Quarry loader 7 · QL-0007 · 6412 h · 2026-11-25')
    expect(about[0]).toBe(
      'R-134a (A1) · 2 lb 6 oz · PAG 46, 8 fl oz · expansion valve · open drive',
    )
    expect(about[1]).toBe('1200 ft · Workshop, bay 2')
    expect(about[2]).toBe('Couplings parted and rejoined: The cab came off for a boom pin.')
  })

  it('takes braces that people wrote for what they are', () => {
    const order = { ...loader, story: 'The {low} line hissed.', parts: [{ name: '{high} hose' }] }
    expect(cardOf(order).about[2]).toContain('The low line hissed.')
    expect(said(order)).toContain('high hose')
  })
})

describe('what was read, in its place on the card', () => {
  const crewed = { ...crane, labelCharge: '2 lb' }
  const charged = (mass: string) =>
    stepOn({ ...crewed, parts: [], record: { charged: mass } }, 'charge')
      ?.lines.map(({ text }) => text)
      .join('\n')

  it('what went in against what should have, by the tolerance of the charge', () => {
    expect(charged('32 ±0.1 oz')).toBe('done: went in 2 lb: within the tolerance')
    expect(charged('30.5 ±0.1 oz')).toContain('off, about what the charge may be off')
    expect(charged('28 ±0.1 oz')).toMatch(/4 oz too little, outside the charge tolerance/u)
    expect(charged('36 ±0.1 oz')).toMatch(/4 oz too much, outside the charge tolerance/u)
  })

  it('the pressures at rest, low side first', () => {
    const rest = { staticLow: '71 psig', staticHigh: '82 psig' }
    const lines = stepOn(changed(loader, 'cooling', rest), 'before')?.lines ?? []
    expect(lines.map(({ text }) => text).join('\n')).toMatch(/at rest 71 psig \/ 82 psig/u)
  })
})
