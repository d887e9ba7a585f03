import { describe, expect, it } from 'vitest'
import { CalcError } from '../../../shared/errors.ts'
import type { WorkOrderAnswer } from '../../../shared/work-order/sheet.ts'
import { changed, EXAMPLES, type Order, run, without } from './examples.ts'

const { crane, forwarder, groomer, loader } = EXAMPLES

/** A groomer of which everything is written down. */
const whole: Order = {
  ...groomer,
  recovery: {
    recovered: '0.8 kg',
    cylinder: 'refillable',
    waterCapacity: '21.6 kg',
    tare: '12.7 kg',
    grossNow: '14 kg',
    servicePressure: '2760 kPa g',
    cylinderHolds: 'R-134a',
    requalified: '2023-04',
  },
  leakTest: {
    lowSideRating: '1400 kPa g',
    startPressure: '1000 kPa g',
    endPressure: '960 kPa g',
    startTemperature: '20 °C',
    endTemperature: '20 °C',
    elapsed: '12 h',
  },
  evacuation: {
    temperature: '20 °C',
    vacuum: '400 micron',
    rise: [0, 4, 8, 12, 16, 20, 24].map((minute) => ({
      time: `${minute} min`,
      pressure: `${400 + 2 * minute} micron`,
    })),
  },
  cooling: { ventTemperature: '9 °C', relativeHumidity: '45 %' },
}

/** A section parted by valves: a what-if, a bound by caliper, what is not known. */
const coupled = (coupling: Order): Order => ({
  ...loader,
  couplings: [{ name: 'Liquid', ...coupling }],
})
const measured = coupled({
  couplingType: 'two-valve',
  phase: 'liquid',
  mouthDiameter: '18 mm',
  firstDepth: '4 mm',
  secondDepth: '2 mm',
})
const ORDERS: Readonly<Record<string, Order>> = {
  crane,
  forwarder,
  groomer,
  loader,
  whole,
  measured,
}

type Read = (computed: WorkOrderAnswer['result']['computed']) => unknown
/** Each figure of a step, and the result that it carries. */
const CARRIED: Readonly<Record<string, Readonly<Record<string, Read>>>> = {
  recover: {
    'Should come out, at least': ({ recovery }) => recovery?.expected?.least,
    'Should come out, at most': ({ recovery }) => recovery?.expected?.most,
    'Came out': ({ recovery }) => recovery?.expected?.recovered?.mass,
    'Share of the label charge': ({ recovery }) => recovery?.expected?.recovered?.ofLabel,
    'Missing against the label': ({ recovery }) => recovery?.expected?.recovered?.missing,
    'Cylinder still takes': ({ recovery }) => recovery?.cylinder?.room,
    'Stop when the scale shows': ({ recovery }) => recovery?.cylinder?.stopAt,
    'Evacuate before opening to': ({ recovery }) => recovery?.evacuation?.level,
    'A gauge here then shows': ({ recovery }) => recovery?.evacuation?.gaugeReading,
  },
  'leak-test': {
    'Change that was read': ({ leakTest }) => leakTest?.standing?.measuredChange,
    'Of it by temperature': ({ leakTest }) => leakTest?.standing?.byTemperature,
    'Not explained': ({ leakTest }) => leakTest?.standing?.unexplained,
  },
  evacuate: {
    'Pull down to, or lower': ({ evacuation }) => evacuation?.target.target,
    'Then valve off, and watch': ({ evacuation }) => evacuation?.target.holdFor,
    'Must stay below': ({ evacuation }) => evacuation?.target.holdBelow,
    'Water boils below': ({ evacuation }) => evacuation?.water?.vapourPressure,
    'Steady rise a minute': ({ evacuation }) => evacuation?.rise?.risePerMinute,
  },
  charge: {
    'Mass to add': ({ charge }) => charge?.massToAdd,
    'Lower end': ({ charge }) => charge?.massToAddFrom,
    'Upper end': ({ charge }) => charge?.massToAddTo,
    'Cannot exceed': ({ charge }) => charge?.bound?.most,
    'Space in the couplings': ({ charge }) => charge?.bound?.space,
    'Like couplings may spill, from': ({ charge }) => charge?.likeParts?.from,
    'Like couplings may spill, up to': ({ charge }) => charge?.likeParts?.to,
    'Charge of the whole machine': ({ charge }) => charge?.totalTarget,
    'Change by altered parts': ({ charge }) => charge?.changeOfCharge,
  },
  oil: {
    'Oil to pour in': ({ oil }) => oil?.pourIn,
    'By the published spread, from': ({ oil }) => oil?.addFrom,
    'By the published spread, to': ({ oil }) => oil?.addTo,
  },
}

describe.each(Object.entries(ORDERS))('the papers of %s', (name, order) => {
  const answer = run(order)
  const { computed, steps } = answer.result

  it('carry every result of a step as its figure, and nothing else under its name', () => {
    let carried = 0
    for (const step of steps) {
      for (const [label, read] of Object.entries(CARRIED[step.id] ?? {})) {
        const shown = step.figures.find((figure) => figure.label === label)?.value
        expect([label, shown]).toEqual([label, read(computed)])
        carried += shown === undefined ? 0 : 1
      }
    }
    expect(carried).toBeGreaterThan(name === 'forwarder' ? -1 : 1)
  })

  it('say what each calculation says of itself', () => {
    const said = (id: string) => steps.find((step) => step.id === id)?.findings ?? []
    const { charge, leakTest, evacuation, oil } = computed
    const of = (id: string, ...texts: readonly (string | undefined)[]) => {
      for (const text of texts) if (text !== undefined) expect(said(id)).toContain(text)
    }
    of(
      'charge',
      charge?.why,
      charge?.againstCharge?.text,
      charge?.againstScale?.text,
      charge?.measure,
    )
    of('leak-test', leakTest?.standing?.sentence)
    of('evacuate', evacuation?.rise?.because)
    of('oil', oil?.oilType.text, ...(oil?.advice ?? []))
  })

  it('state the law of a step in that step', () => {
    const statements = (id: string) =>
      steps.find((step) => step.id === id)?.rules.map(({ source }) => source) ?? []
    const law = (action: string) => computed.rules.find((each) => each.action === action)?.result
    for (const [action, step] of [['charge', 'charge']] as const) {
      for (const { id } of law(action)?.leakRepair.statements ?? []) {
        expect(statements(step).some((source) => source.endsWith(`/${id}`))).toBe(true)
      }
    }
  })
})

describe('what is still to be read', () => {
  const missing = (order: Order) => run(order).result.missing.map(({ path }) => path.join('.'))

  it.each([
    ['recovery', 'recovered', whole],
    ['recovery', 'cylinder', whole],
    ['leakTest', 'lowSideRating', whole],
    ['evacuation', 'vacuum', whole],
    ['evacuation', 'rise', whole],
    ['cooling', 'ventTemperature', whole],
    ['cooling', 'relativeHumidity', whole],
    ['place', 'ambient', forwarder],
    ['readings', 'suctionPressure', forwarder],
    ['readings', 'suctionTemperature', forwarder],
    ['readings', 'liquidPressure', forwarder],
    ['readings', 'liquidTemperature', forwarder],
  ] as const)('is %s.%s where it is not given, and only there', (section, field, order) => {
    const path = `${section}.${field}`
    expect(missing(order)).not.toContain(path)
    const rest = without((order[section] ?? {}) as Order, field)
    expect(missing({ ...order, [section]: rest })).toContain(path)
  })

  it('is no air at the condenser where it stands beside the readings', () => {
    const { ambient, ...place } = forwarder.place as Order
    const beside = changed({ ...forwarder, place }, 'readings', { ambient })
    expect(missing(beside)).not.toContain('place.ambient')
  })
})

describe('the card of an order', () => {
  const lines = (order: Order, id: string) =>
    run(order)
      .result.card.steps.find((step) => step.id === id)
      ?.lines.map(({ text }) => text) ?? []
  const records = (order: Order) =>
    run(order)
      .result.card.records.map(({ text }) => text)
      .join('\n')

  it('tells what should come out before it is recovered', () => {
    expect(lines(without(groomer, 'recovery'), 'recover').join('\n')).toMatch(
      /Expect .* to come out/u,
    )
  })

  it('asks what was charged only where something was recovered or charged', () => {
    expect(records(groomer)).toMatch(/charged: new, recycled or reclaimed/u)
    expect(records(loader)).not.toMatch(/charged: new/u)
    expect(records(changed(loader, 'record', { charged: '10 g' }))).toMatch(/charged: new/u)
    expect(records(changed(forwarder, 'record', { charged: '10 g' }))).not.toMatch(/charged: new/u)
  })
})

describe('a warning of several steps', () => {
  it('is said once, with the steps that it is of', () => {
    const { warnings } = run({ ...groomer, refrigerant: 'R-409A' })
    const parts = warnings.map(({ message }) => message.split(': '))
    const said = parts.map(([, ...rest]) => rest.join(': '))
    expect(new Set(said).size).toBe(said.length)
    const several = parts.find(([, text]) => text && /estimat/u.test(text))
    expect(several?.[0]).toMatch(/^[A-Z][a-z ]+(?:, [A-Z][a-z ]+)+$/u)
  })
})

describe('words on an order', () => {
  const put = (order: Order) => () => run(order)

  it.each([
    ['machine', 'name', 120],
    ['machine', 'serial', 80],
    ['machine', 'hours', 40],
    ['person', 'name', 120],
    ['record', 'leakFound', 300],
    ['record', 'sentTo', 300],
    ['record', 'notes', 2000],
  ] as const)('%s.%s has up to %d letters', (section, field, most) => {
    expect(put(changed(groomer, section, { [field]: 'x'.repeat(most) }))).not.toThrow()
    expect(put(changed(groomer, section, { [field]: 'x'.repeat(most + 1) }))).toThrow(CalcError)
  })

  it.each([
    ['order', 80],
    ['story', 2000],
  ] as const)('%s has up to %d letters', (field, most) => {
    expect(put({ ...groomer, [field]: 'x'.repeat(most) })).not.toThrow()
    expect(put({ ...groomer, [field]: 'x'.repeat(most + 1) })).toThrow(CalcError)
  })
})
