import { describe, expect, it } from 'vitest'
import { EXAMPLES, type Order, run, stepOf, without } from './examples.ts'

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
