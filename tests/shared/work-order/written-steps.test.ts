import { describe, expect, it } from 'vitest'
import visit from '../../../data/service/visit.json' with { type: 'json' }
import { actsOf } from '../../../shared/work-order/acts.ts'
import { workOrder } from '../../../shared/work-order/work-order.ts'
import { changed, EXAMPLES, type Order, run, stepOf, without } from './examples.ts'

const { crane, forwarder, groomer, loader } = EXAMPLES

const IDS = new Map(Object.entries(visit.statements).map(([id, { text }]) => [text, id]))
/** What a step of the visit instructs, by id: what a calculation adds of its own is left out. */
const told = (order: Order, step: string) =>
  stepOf(run(order), step)
    .instructions.flatMap(({ text }) => IDS.get(text) ?? [])
    .join(' ')
const figures = (order: Order, step: string) =>
  stepOf(run(order), step)
    .figures.map(({ label }) => label)
    .join('; ')

describe('what each step instructs', () => {
  it.each([
    ['before-opening', 'engine-off identify gauges-first'],
    ['recover', 'connect-recovery measure-oil'],
    ['open', 'prove-empty cap-openings purge-brazing'],
    ['replace', 'new-seals replace-drier drier-last drier-dries-oil'],
    ['oil', 'oil-before'],
    ['leak-test', 'never-air recover-trace'],
    ['evacuate', 'not-to-find-leaks both-sides-vacuum hold-vacuum'],
    ['charge', 'weigh-in'],
    ['verify', 'check-joints run-ten-minutes caps-back'],
    ['records', 'write-it-down'],
  ])('a system that was opened, %s: %s', (step, ids) => {
    expect(told(groomer, step)).toBe(ids)
  })

  it('couplings parted under charge: nothing is identified, recovered or proved empty', () => {
    expect(told(loader, 'before-opening')).toBe('engine-off gauges-first sealing-only')
    expect(told(loader, 'open')).toBe('hold-fixed-half clean-and-cap join-quickly')
    // It needs nothing for this job, so there is nothing to weigh in.
    expect(told(loader, 'charge')).toBe('')
    expect(told(without(loader, 'couplings'), 'before-opening')).toBe(
      'engine-off gauges-first sealing-only hold-fixed-half clean-and-cap',
    )
  })

  it('a coupling that does not seal, or nobody knows of', () => {
    const coupling = (more: Order) =>
      told({ ...loader, couplings: [{ name: 'A', ...more }] }, 'before-opening')
    expect(coupling({ couplingType: 'no-valve' })).toContain('identify')
    expect(coupling({ couplingType: 'no-valve' })).toContain('sealing-only recover-first')
    expect(coupling({ couplingType: 'two-valve' })).toMatch(/sealing-only$/u)
    expect(coupling({})).toContain('sealing-only look-at-coupling')
  })

  it('finding out: it is run and read, and nothing is opened', () => {
    expect(told(forwarder, 'before-opening')).toBe('engine-off gauges-first')
    expect(told(forwarder, 'measure')).toBe('run-ten-minutes after-diagnosis')
  })

  it('a compressor that no engine drives is run steady; a building is switched off', () => {
    expect(told(crane, 'verify')).toBe('check-joints run-steady caps-back')
    const building = changed(crane, 'machine', { kind: 'stationary' })
    expect(told(building, 'before-opening')).toBe('power-off identify gauges-first')
    const cargo = changed(crane, 'machine', { kind: 'refrigerated-cargo' })
    expect(told(cargo, 'before-opening')).toBe('unit-off identify gauges-first')
  })

  it('carbon dioxide is let out, not recovered, and brazed in an empty system', () => {
    const dioxide = {
      ...without(groomer, 'recovery', 'leakTest', 'evacuation', 'charging', 'record', 'readings'),
      refrigerant: 'R-744',
    }
    const order = without(dioxide, 'cooling', 'oil', 'existingOil', 'charge')
    expect(told(order, 'before-opening')).toBe('engine-off gauges-first')
    expect(told(order, 'recover')).toContain('let-out')
    expect(told(order, 'recover')).not.toContain('connect-recovery')
    expect(told(order, 'open')).toBe('prove-empty cap-openings purge-brazing-empty')
    expect(told(order, 'leak-test')).toBe('never-air')
  })
})

describe('which figures each step shows', () => {
  it.each([
    ['before-opening', 'Law; Regime'],
    [
      'recover',
      'Should come out, at least; Should come out, at most; Came out; Share of the label charge; Missing against the label; Cylinder still takes; Stop when the scale shows; At its highest contents it goes liquid-full at; Requalification',
    ],
    ['replace', 'Part 1; Part 2'],
    [
      'oil',
      'Oil to pour in; By the published spread, from; By the published spread, to; Liquid hose; Receiver-drier; Sudden leak; Recovered oil',
    ],
    [
      'leak-test',
      'Standing test; Change that was read; Of it by temperature; Not explained; Smallest leak that this could show',
    ],
    [
      'evacuate',
      'Pull down to, or lower; Then valve off, and watch; Must stay below; Target reached; Hold; Water boils below; A gauge here then shows; Least pump-down time; Standing vacuum; Steady rise a minute',
    ],
    [
      'charge',
      'Mass to add; Lower end; Upper end; Charge of the whole machine; Change by altered parts; From a new cylinder; Set on the scale; Leaves the source; Stays in the hose; Close the valve when the scale shows; Went in, less what should',
    ],
    [
      'verify',
      'Superheat; Subcooling; Condensing above ambient; Compression ratio, absolute; Vent; Air in less vent; Dew point of the air in; Vent above evaporating',
    ],
  ])('a system that was opened, %s: %s', (step, labels) => {
    expect(figures(groomer, step)).toBe(labels)
  })

  it('couplings parted under charge', () => {
    expect(figures(loader, 'before-opening')).toBe(
      'Law; Regime; Liquid line to the cab; Suction line from the cab',
    )
    expect(figures(loader, 'charge')).toBe(
      'Mass to add; Lower end; Upper end; Charge of the whole machine',
    )
  })
})

describe('what is missing', () => {
  const missing = (order: Order, step: string) =>
    stepOf(run(order), step)
      .missing.map(({ path }) => path.join('.'))
      .join(' ')

  it.each([
    [
      'leak-test',
      'leakTest.startPressure leakTest.startTemperature leakTest.endPressure leakTest.endTemperature leakTest.elapsed leakTest.lowSideRating',
    ],
    ['evacuate', 'evacuation.vacuum evacuation.rise'],
    ['charge', 'charging.scaleStart record.charged'],
    [
      'verify',
      'readings.suctionPressure readings.suctionTemperature readings.liquidPressure readings.liquidTemperature cooling.ventTemperature cooling.relativeHumidity',
    ],
  ])('in an order that was just begun, %s: %s', (step, paths) => {
    expect(missing(crane, step)).toBe(paths)
  })

  it('whose law binds the work, where nobody said', () => {
    const { machine, job, refrigerant } = loader
    expect(missing({ machine, job, refrigerant }, 'before-opening')).toContain('place.law')
  })
})

describe('the head of the sheet', () => {
  it('has a line for each thing that the order says, and none for what it does not', () => {
    const labels = (order: Order) => run(order).result.identity.map(({ label }) => label)
    expect(labels(groomer)).toEqual([
      ...['Order', 'Date', 'Machine', 'Serial or fleet number', 'Hours', 'Kind', 'Compressor'],
      ...['Feeds the evaporator', 'Refrigerant', 'Label charge', 'Oil', 'Oil of the whole system'],
      ...['Law', 'Altitude', 'Air', 'Done by', 'Job', 'What happened'],
    ])
    const { job, refrigerant } = loader
    expect(labels({ machine: { name: 'X', kind: 'bus' }, job, refrigerant })).toEqual([
      ...['Machine', 'Kind', 'Refrigerant', 'Job'],
    ])
  })

  it('takes names of up to 80 letters', () => {
    const named = (length: number) => workOrder.run({ ...loader, order: 'x'.repeat(length) })
    expect(named(80).result.identity[0]?.value).toHaveLength(80)
    expect(() => named(81)).toThrow()
  })
})

describe('what the job does that can hurt', () => {
  const acts = (order: Order) => actsOf(workOrder.parse(order))
  const base = { machine: { name: 'X', kind: 'off-road' }, refrigerant: 'R-134a' }
  const opens = ['opens', 'recovers', 'pressurises', 'evacuates', 'charges', 'runs']

  it.each([
    ['diagnose', {}, ['handles', 'runs']],
    ['system-opened', {}, opens],
    ['pressure-lost', {}, opens],
    ['section-opened', { cabOff: true }, [...opens, 'lifts-cab']],
    ['couplers-parted', {}, ['parts-couplings', 'runs']],
    [
      'couplers-parted',
      { cabOff: true, record: { charged: '10 g' } },
      ['parts-couplings', 'charges', 'runs', 'lifts-cab'],
    ],
    [
      'system-opened',
      { machine: { name: 'X', kind: 'stationary' } },
      opens.filter((act) => act !== 'runs'),
    ],
    ['system-opened', { refrigerant: 'R-744' }, opens.filter((act) => act !== 'recovers')],
  ])('%s %j', (job, more, expected) => {
    expect(acts({ ...base, job, ...more })).toEqual(expected)
  })
})
