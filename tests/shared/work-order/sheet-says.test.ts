import { describe, expect, it } from 'vitest'
import { customerMarkdown } from '../../../shared/work-order/markdown.ts'
import { changed, EXAMPLES, type Order, run, stepOf, without } from './examples.ts'

const { loader, crane } = EXAMPLES

describe('what is still missing', () => {
  it('is asked for where it belongs on the order', () => {
    const { labelCharge: _, ...unlabelled } = crane
    const paths = run(unlabelled).result.missing.map(({ path }) => path)
    expect(paths).toContainEqual(['labelCharge'])
    expect(paths).not.toContainEqual(['charge', 'labelCharge'])
  })
})

describe('a sheet of several refused steps', () => {
  it('names them in one line that does not contradict itself', () => {
    const { result, warnings } = run({
      ...crane,
      existingOil: 'motor oil',
      recovery: { ...(crane.recovery as Order), cylinder: 'disposable' },
    })
    expect(result.failed).toEqual(expect.arrayContaining(['recover', 'oil']))
    const lines = warnings.filter(({ code }) => code === 'step-failed')
    expect(lines).toHaveLength(1)
    expect(lines[0]?.message).toContain('Recover, Oil')
  })
})

describe('a new compressor on the sheet', () => {
  it('says how much to take out of it, and pours that much less', () => {
    const order = {
      ...loader,
      job: 'system-opened',
      oilTotal: '8 fl oz',
      parts: [{ part: 'compressor', drained: '2.5 fl oz' }, { part: 'drier' }],
      oil: { compressorHolds: '7 fl oz', leak: 'none' },
      units: 'us',
    }
    const { figures } = stepOf(run(order), 'oil')
    const value = (label: string) => figures.find((entry) => entry.label === label)?.value
    expect(value('Oil to pour in')).toMatchObject({ value: 1, unit: 'fl oz' })
    expect(value('Take out of the new compressor')).toMatchObject({ value: 4.5, unit: 'fl oz' })
  })
})

describe('the oil of an opened system', () => {
  const order = {
    ...without(loader, 'couplings', 'charge'),
    job: 'system-opened',
    oil: { leak: 'sudden', recoveredOil: '3 fl oz' },
    parts: [{ part: 'condenser' }, { part: 'drier' }, { part: 'evaporator' }],
  }
  const cut = /cut at the system's total: more oil would slug the compressor/u
  const says = (more: Order) => stepOf(run({ ...order, ...more }), 'oil').findings.join(' ')

  it('is said to be cut where the parts together ask for more than the system holds, and only there', () => {
    expect(run({ ...order, oilTotal: '4 fl oz' }).result.computed.oil?.limited).toBe(true)
    expect(says({ oilTotal: '4 fl oz' })).toMatch(cut)
    expect(run({ ...order, oilTotal: '40 fl oz' }).result.computed.oil?.limited).toBe(false)
    expect(says({ oilTotal: '40 fl oz' })).not.toMatch(cut)
  })

  it('asks for what the amount follows from, until it stands there', () => {
    const missing = (more: Order) =>
      stepOf(run({ ...order, ...more }), 'oil').missing.map(({ path }) => path.join('.'))
    expect(missing({ oil: {}, existingOil: undefined, oilTotal: undefined })).toEqual([
      'existingOil',
      'oilTotal',
      'oil.recoveredOil',
      'oil.leak',
    ])
    expect(missing({})).toEqual([])
    const inSection = {
      leak: 'none',
      recoveredOil: '0 fl oz',
      newOil: 'PAG 46',
      oilTotal: '8 fl oz',
    }
    expect(missing({ oil: inSection, existingOil: undefined, oilTotal: undefined })).toEqual([])
  })
})

describe('the sources of the sheet', () => {
  it('hold the records that the law asks for, and of the law nothing that is not on the sheet', () => {
    const order = { ...loader, job: 'system-opened', couplings: undefined, charge: undefined }
    const { result, sources } = run(JSON.parse(JSON.stringify(order)))
    const records = result.computed.rules.flatMap(({ result: { law, records: asked } }) =>
      asked.statements.map(({ id }) => `${law}/${id}`),
    )
    expect(records).not.toEqual([])
    const ids = sources.map(({ id }) => id)
    expect(ids).toEqual(expect.arrayContaining(records))
    const shown = new Set([
      ...records,
      ...result.steps.flatMap(({ rules }) => rules.map(({ source }) => source)),
    ])
    expect(ids.filter((id) => id.startsWith('us-federal/') && !shown.has(id))).toEqual([])
  })
})

describe('the cautions of the refrigerant', () => {
  it.each([
    ['R-744', 'carbon-dioxide'],
    ['R-1234yf', 'flammable'],
  ])('%s brings %s, whatever was computed', (refrigerant, caution) => {
    const { cautions } = run({ machine: loader.machine, refrigerant, job: 'diagnose' })
    expect(cautions.map(({ id }) => id)).toContain(caution)
    const other = run({ machine: loader.machine, refrigerant: 'R-134a', job: 'diagnose' })
    expect(other.cautions.map(({ id }) => id)).not.toContain(caution)
  })
})

describe('what went in', () => {
  const order = { machine: loader.machine, refrigerant: 'R-134a', labelCharge: '2 lb' }
  const says = (charged: string, more: Order = {}) =>
    stepOf(
      run({ ...order, job: 'system-opened', parts: [], record: { charged }, ...more }),
      'charge',
    ).findings.join(' ')

  it('is held against the tolerance of the charge', () => {
    expect(says('2 lb 0.5 oz')).toContain('lies within the tolerance')
    expect(says('1 lb 8 oz')).toMatch(/8 oz .*less went in than should, outside the tolerance/u)
    expect(says('2 lb 8 oz')).toMatch(/8 oz .*more went in than should, outside the tolerance/u)
    expect(says('2 lb 1.5 oz')).toContain('about what the charge may be off')
    // An ounce or two is a loader's: a machine of ten times its charge may be off by more.
    expect(says('40 lb 6 oz', { labelCharge: '40 lb' })).toContain('lies within the tolerance')
    expect(says('40 lb 40 oz', { labelCharge: '40 lb' })).toContain('outside the tolerance')
    // What the scale leaves open is no proof of either.
    expect(says('2 lb 0.5 oz ±1 oz')).toContain('about what the charge may be off')
    expect(says('2 lb 2.5 oz ±1 oz')).toContain('about what the charge may be off')
    expect(says('2 lb 3.5 oz ±1 oz')).toContain('outside the tolerance')
    expect(says('2 lb 1.5 oz', { charge: { chargeTolerance: '2 oz' } })).toContain('lies within')
  })
})

describe('what each step finds, in the words of its own answer', () => {
  const finds = (order: Order, step: string) => stepOf(run(order), step).findings.join('\n')
  const { groomer, crane } = EXAMPLES

  it('the cylinder: whether it takes what should come out', () => {
    const takes = 'The cylinder takes what should come out.'
    const not = 'The cylinder does not take what should come out.'
    expect(finds(groomer, 'recover')).toContain(takes)
    const large = { ...groomer, labelCharge: '60 lb', record: undefined }
    expect(run(JSON.parse(JSON.stringify(large))).result.computed.recovery?.fits).toBe('no')
    expect(finds(JSON.parse(JSON.stringify(large)), 'recover')).toContain(not)
    const none = without(changed(groomer, 'recovery', { cylinder: undefined }), 'labelCharge')
    expect(finds(JSON.parse(JSON.stringify(none)), 'recover')).not.toMatch(
      /The cylinder (?:does|takes)/u,
    )
  })

  it('the vacuum: that water does not boil yet, and the maker’s rule', () => {
    const boils = 'At the vacuum reached water does not boil yet: go on.'
    expect(finds(groomer, 'evacuate')).not.toContain(boils)
    const shallow = changed(groomer, 'evacuation', {
      temperature: '77 °F',
      vacuum: '40000 micron',
      rise: undefined,
    })
    expect(finds(JSON.parse(JSON.stringify(shallow)), 'evacuate')).toContain(boils)
    const ruled = changed(groomer, 'evacuation', { limit: 'rise-1-inhg-in-5-min' })
    const { limit } = run(ruled).result.computed.evacuation?.rise ?? {}
    expect(finds(ruled, 'evacuate')).toContain(
      `${limit?.rule}: ${limit?.verdict.replaceAll('-', ' ')}.`,
    )
  })

  it('the standing test by a rule for vacuum', () => {
    const order = {
      ...without(groomer, 'leakTest'),
      leakTest: {
        ...{ startPressure: '400 micron', endPressure: '600 micron', elapsed: '10 min' },
        ...{ startTemperature: '70 °F', endTemperature: '70 °F' },
        vacuumLimit: 'rise-500-micron-in-10-min',
      },
    }
    const { standing } = run(order).result.computed.leakTest ?? {}
    expect(standing?.limit).toBeDefined()
    expect(finds(order, 'leak-test')).toContain(
      `${standing?.limit?.rule}: ${standing?.limit?.verdict.replaceAll('-', ' ')}.`,
    )
    expect(finds(order, 'leak-test')).toContain(standing?.sentence)
  })

  it('the running machine: its bands, each a sentence, and a clutch that cycles', () => {
    const order = changed(groomer, 'cooling', { cutOut: '22 psig', cyclesPerMinute: 6 })
    const { cooling } = run(order).result.computed
    expect(cooling?.clutch?.cycling).toBeDefined()
    expect(finds(order, 'verify')).toContain(cooling?.clutch?.cycling)
    for (const { sentence } of Object.values(cooling?.bands ?? {})) {
      if (sentence) expect(finds(order, 'verify').toLowerCase()).toContain(sentence.toLowerCase())
    }
    for (const line of stepOf(run(order), 'verify').findings) expect(line).toMatch(/^[A-Z0-9]/u)
  })

  it('parts that go in, one that nobody named among them, and a drier only where there is none', () => {
    const missing = 'No receiver-drier or accumulator is among the parts'
    const parts = (list: readonly Order[]) => stepOf(run({ ...crane, parts: list }), 'replace')
    const shown = ({ figures }: ReturnType<typeof parts>) => figures.map(({ value }) => value)
    expect(shown(parts([{ name: 'Hose A', part: 'hose' }, { part: 'drier' }, {}]))).toEqual([
      'Hose A',
      'drier',
      'not named',
    ])
    expect(parts([{ name: 'Hose A' }]).findings.join()).toContain(missing)
    for (const drier of [
      { part: 'accumulator' },
      { name: 'Filter dryer' },
      { name: 'desiccant bag' },
    ]) {
      expect(parts([{ name: 'Hose A' }, drier]).findings.join()).not.toContain(missing)
    }
  })
})

describe("the customer's copy on paper", () => {
  const lines = (order: Order) => customerMarkdown(run(order))

  it('is signed where somebody or a day is known, and not where neither is', () => {
    const { groomer } = EXAMPLES
    expect(lines(groomer)).toMatch(/Done by[\s\S]*Mountain workshop, 2026-11-25/u)
    expect(lines(without(groomer, 'person'))).toMatch(/Done by[\s\S]*2026-11-25/u)
    expect(lines(without(groomer, 'person', 'date'))).not.toContain('Done by')
  })

  it('has a heading for what there is, in the order of the visit, and none for what there is not', () => {
    const { groomer, forwarder } = EXAMPLES
    const headings = (order: Order) =>
      [...lines(order).matchAll(/^#+ (.*)$/gmu)].map(([, words]) => words)
    expect(headings({ ...groomer, readingsBefore: forwarder.readings })).toEqual([
      "Air conditioning: the customer's copy",
      ...['Asked', 'Found', 'Done', 'Taken out and put in', 'Before the work', 'After the work'],
      ...['Look out for', 'Done by'],
    ])
    expect(
      headings(without(groomer, 'story', 'recovery', 'record', 'readings', 'cooling')),
    ).toEqual(["Air conditioning: the customer's copy", 'Done', 'Look out for', 'Done by'])
  })
})
