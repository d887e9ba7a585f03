import { describe, expect, it } from 'vitest'
import { charge } from '../../../shared/service/charge.ts'
import { charging } from '../../../shared/service/charging.ts'
import { coolingCheck } from '../../../shared/service/cooling-check.ts'
import { evacuation } from '../../../shared/service/evacuation.ts'
import { leakTest } from '../../../shared/service/leak-test.ts'
import { oil } from '../../../shared/service/oil.ts'
import { readings } from '../../../shared/service/readings.ts'
import { recovery } from '../../../shared/service/recovery.ts'
import { STEP_IDS } from '../../../shared/work-order/step.ts'
import { workOrder } from '../../../shared/work-order/work-order.ts'
import { changed, EXAMPLES, type Order, run, stepOf, without } from './examples.ts'

const { crane, forwarder, groomer, loader } = EXAMPLES
/** Every number to twelve digits. */
const rounded = (value: unknown): unknown =>
  JSON.parse(
    JSON.stringify(value, (_, entry) =>
      typeof entry === 'number' ? Number(entry.toPrecision(12)) : entry,
    ),
  )
const idsOf = (order: Order) => run(order).result.steps.map(({ id }) => id)

describe.each(Object.entries(EXAMPLES))('the %s example', (_, order) => {
  const answer = run(order)

  it('fits the schema, says that it is invented, and fails nowhere', () => {
    workOrder.output.parse(answer)
    expect(answer.result.invented).toBe(true)
    expect(answer.warnings.map(({ code }) => code)).toContain('invented')
    expect(answer.result.failed).toEqual([])
  })

  it('keeps the order of a visit', () => {
    const places = answer.result.steps.map(({ id }) => STEP_IDS.indexOf(id))
    if (order.job !== 'diagnose') expect(places).toEqual([...places].sort((a, b) => a - b))
    expect(new Set(places).size).toBe(places.length)
    expect(answer.result.steps.at(-1)?.id).toBe('records')
  })

  it('has the source of every instruction and rule among its sources', () => {
    const ids = new Set(answer.sources.map(({ id }) => id))
    for (const { instructions, rules } of answer.result.steps) {
      for (const { source, text } of [...instructions, ...rules]) {
        expect(ids.has(source), `${source}: ${text}`).toBe(true)
      }
    }
  })

  it('starts with the dangers, and names the law with section and date', () => {
    expect(answer.cautions[0]?.level).toBe('danger')
    const { rules } = stepOf(answer, 'before-opening')
    expect(rules.length).toBeGreaterThan(0)
    for (const { text } of rules)
      expect(text).toMatch(/; (checked 2026-11(-25|-27)?|not checked)\)$/u)
  })

  it('repeats in its list all that the steps miss', () => {
    const inSteps = answer.result.steps.flatMap(({ missing }) => missing)
    for (const entry of inSteps) expect(answer.result.missing).toContainEqual(entry)
    expect(answer.result.missing.length).toBeLessThanOrEqual(inSteps.length)
  })
})

describe('the steps of a job', () => {
  it('are few where only couplers were parted', () => {
    expect(idsOf(loader)).toEqual(['before-opening', 'open', 'charge', 'verify', 'records'])
  })

  it('are all where the system was opened or lost its pressure', () => {
    const whole = STEP_IDS.filter((id) => id !== 'measure')
    expect(idsOf(crane)).toEqual(whole)
    expect(idsOf(groomer)).toEqual(whole)
    expect(idsOf({ ...crane, job: 'section-opened' })).toEqual(whole)
  })

  it('only measure where the job is to find out', () => {
    expect(idsOf(forwarder)).toEqual(['before-opening', 'measure', 'records'])
  })

  it('grow by what was filled in all the same', () => {
    const more = { ...loader, parts: [{ name: 'Seal set' }], leakTest: { method: 'soap-film' } }
    expect(idsOf(more)).toEqual([
      'before-opening',
      'open',
      'replace',
      'oil',
      'leak-test',
      'charge',
      'verify',
      'records',
    ])
  })
})

describe('the couplings', () => {
  const withTypes = (...types: (string | undefined)[]) =>
    run({
      ...loader,
      couplings: types.map((couplingType, index) => ({
        name: `Coupling ${index + 1}`,
        couplingType,
        spillVolume: '5 mL',
        phase: 'vapour',
      })),
    })

  it('may be parted under charge only when both halves close by themselves', () => {
    const step = stepOf(
      withTypes('two-valve', 'no-valve', undefined, 'one-valve', 'diaphragm'),
      'before-opening',
    )
    const figures = Object.fromEntries(step.figures.map(({ label, value }) => [label, value]))
    expect(figures['Coupling 1']).toContain('may be parted under charge')
    expect(figures['Coupling 2']).toContain('never to be parted under charge')
    expect(figures['Coupling 3']).toContain('not to be parted under charge yet')
    expect(figures['Coupling 4']).toContain('never to be parted under charge')
    expect(figures['Coupling 5']).toContain('never to be parted under charge')
    expect(step.findings.join(' ')).toContain('recover first')
    expect(step.missing.map(({ path }) => path)).toEqual([['couplings', 2, 'couplingType']])
  })

  it('are held at the fixed half where they are parted, once, marked as common practice', () => {
    const answer = withTypes('two-valve')
    const { instructions, title } = stepOf(answer, 'open')
    expect(title).toBe('Part, and rejoin')
    expect(instructions[0]).toMatchObject({
      mark: 'common-practice',
      text: expect.stringContaining('Hold the fixed half'),
    })
    const { steps } = answer.result
    expect(JSON.stringify(steps).match(/Hold the fixed half/gu)).toHaveLength(1)
  })

  it('are asked for when the order names none', () => {
    const step = stepOf(run(without(loader, 'couplings')), 'before-opening')
    expect(step.missing.map(({ path }) => path)).toContainEqual(['couplings'])
  })
})

describe('the figures are those of the single operations', () => {
  const precise = <T>(
    order: Order,
    pick: (computed: ReturnType<typeof run>['result']['computed']) => T,
  ) => pick(run({ ...order, precise: true }).result.computed)

  it('charge of the loader: couplings and place inherited', () => {
    const alone = charge.run({
      precise: true,
      refrigerant: 'R-134a',
      job: 'couplers-parted',
      couplingType: 'two-valve',
      labelCharge: '2 lb 6 oz',
      altitude: '1200 ft',
      ambient: '75 °F',
      couplings: (loader.couplings as Order[]).map((entry) => without(entry, 'couplingType')),
      ...(loader.charge as Order),
    }).result
    const inOrder = precise(loader, ({ charge: result }) => result)
    expect(inOrder).toEqual(alone)
    expect(inOrder?.massToAdd?.also?.value).toBeCloseTo(7.65, 1)
  })

  it('charge and oil of the crane: parts, label and recovered mass inherited', () => {
    const [condenser, drier] = crane.parts as Order[]
    const { recovered } = crane.recovery as Order
    expect(precise(crane, (computed) => computed.charge)).toEqual(
      charge.run({
        precise: true,
        refrigerant: 'R-134a',
        job: 'system-opened',
        labelCharge: '1.9 kg',
        ambient: '21 °C',
        recovered,
        parts: [without(condenser ?? {}, 'part')],
        ...(crane.charge as Order),
      }).result,
    )
    expect(precise(crane, (computed) => computed.oil)).toEqual(
      oil.run({
        precise: true,
        refrigerant: 'R-134a',
        labelCharge: '1.9 kg',
        oilTotal: '400 mL',
        existingOil: 'POE 68',
        compressorDrive: 'electric',
        parts: [{ name: 'Condenser', part: 'condenser' }, drier],
        ...(crane.oil as Order),
      }).result,
    )
  })

  it('recovery, leak test, evacuation and readings of the groomer', () => {
    const head = { precise: true, refrigerant: 'R-134a', altitude: '5200 ft' }
    const computed = precise(groomer, (found) => found)
    expect(computed.recovery).toEqual(
      recovery.run({
        ...head,
        labelCharge: '2 lb 12 oz',
        machine: 'off-road',
        compressorDrive: 'open',
        law: 'us-federal',
        date: '2026-11-25',
        ...(groomer.recovery as Order),
      }).result,
    )
    expect(computed.leakTest).toEqual(
      leakTest.run({
        ...head,
        labelCharge: '2 lb 12 oz',
        law: 'us-federal',
        ...(groomer.leakTest as Order),
      }).result,
    )
    expect(computed.evacuation).toEqual(
      evacuation.run({ ...head, temperature: '80 °F', ...(groomer.evacuation as Order) }).result,
    )
    expect(computed.readings).toEqual(
      readings.run({
        ...head,
        ambient: '80 °F',
        machine: 'off-road',
        meteringDevice: 'expansion-valve',
        ...(groomer.readings as Order),
      }).result,
    )
    const { suctionPressure, liquidPressure } = groomer.readings as Order
    expect(computed.cooling).toEqual(
      coolingCheck.run({
        ...head,
        ambient: '80 °F',
        machine: 'off-road',
        suctionPressure,
        liquidPressure,
        ...(groomer.cooling as Order),
      }).result,
    )
    expect(computed.evacuation?.rise?.verdict).toBe('tight-and-dry')
    expect(computed.leakTest?.standing?.verdict).toBe('no-leak-shown')
  })

  it('charging of the groomer takes its target from the charge step', () => {
    const computed = precise(groomer, (found) => found)
    const target = computed.charge?.totalTarget
    // The target goes through a second conversion here: its last digits may differ.
    expect(rounded(computed.charging)).toEqual(
      rounded(
        charging.run({
          precise: true,
          refrigerant: 'R-134a',
          altitude: '5200 ft',
          ambient: '80 °F',
          machine: 'off-road',
          serviceHoseBore: '1/4 in',
          serviceHoseLength: '72 in',
          labelCharge: target && {
            value: target.value,
            unit: target.unit,
            plusMinus: target.plusMinus,
          },
          ...(groomer.charging as Order),
        }).result,
      ),
    )
  })

  it('the forwarder is short of refrigerant, and the sheet says so', () => {
    const { findings } = stepOf(run(forwarder), 'measure')
    expect(findings.join(' ')).toContain('the charge may be low')
    expect(findings.join(' ')).toContain('Recover, and weigh in the charge on the label')
  })
})

describe('a correction goes on top of what is in', () => {
  const order = {
    ...without(loader, 'charge'),
    labelCharge: '2 kg',
    couplings: [
      {
        name: 'Liquid',
        couplingType: 'two-valve',
        spillVolume: '90 mL',
        phase: 'liquid',
        temperature: '75 °F',
      },
    ],
    charging: { scaleStart: '9 kg', scaleDivision: '2 g' },
    precise: true,
    units: 'si',
  }

  it('so the scale falls by the correction, not by the whole charge', () => {
    const { charge: found, charging: scale } = run(order).result.computed
    const added = (found?.massToAdd?.value ?? Number.NaN) / 1000
    expect(added).toBeGreaterThan(0.1)
    expect(scale?.scale?.stop?.value).toBeCloseTo(9 - added, 9)
    expect(scale?.band.target.value).toBeCloseTo(2, 9)
  })

  it('and a what-if passes nothing on', () => {
    const guess = {
      ...order,
      couplings: [
        {
          name: 'Liquid',
          couplingType: 'two-valve',
          spillFrom: '5 mL',
          spillTo: '90 mL',
          phase: 'liquid',
          temperature: '75 °F',
        },
      ],
      charge: { whatIf: true },
    }
    const step = stepOf(run(guess), 'charge')
    expect(run(guess).result.computed.charging).toBeUndefined()
    expect(step.missing.map(({ path }) => path)).toContainEqual(['charging', 'labelCharge'])
    expect(step.missing.map(({ path }) => path)).toContainEqual(['couplings'])
  })
})

describe('a step that is refused', () => {
  it('stands in its place with the path below its section, and the others stand', () => {
    const broken = run(changed(groomer, 'recovery', { cylinder: 'disposable' }))
    const whole = run(groomer)
    expect(broken.result.failed).toEqual(['recover'])
    expect(stepOf(broken, 'recover').problems).toMatchObject([
      { code: 'refused', path: ['recovery', 'cylinder'] },
    ])
    for (const id of ['oil', 'leak-test', 'evacuate', 'charge', 'verify']) {
      expect(stepOf(broken, id)).toEqual(stepOf(whole, id))
    }
    expect(broken.warnings.map(({ code }) => code)).toContain('step-failed')
    workOrder.output.parse(broken)
  })

  const cases: [string, Order, string, string, (string | number)[]][] = [
    [
      'compressed air',
      changed(groomer, 'leakTest', { testGas: 'compressed-air' }),
      'leak-test',
      'refused',
      ['leakTest', 'testGas'],
    ],
    [
      'a rise that runs backwards',
      changed(groomer, 'evacuation', {
        rise: [
          { time: '5 min', pressure: '400 micron' },
          { time: '1 min', pressure: '410 micron' },
        ],
      }),
      'evacuate',
      'bad-input',
      ['evacuation', 'rise', 1, 'time'],
    ],
    [
      'mineral oil with R-134a',
      changed(groomer, 'oil', { newOil: 'mineral' }),
      'oil',
      'refused',
      ['oil', 'newOil'],
    ],
    [
      'a correction of an opened system',
      changed(crane, 'charge', { want: 'correction' }),
      'charge',
      'refused',
      ['charge', 'want'],
    ],
  ]
  it.each(cases)('for %s', (_, order, id, code, path) => {
    const answer = run(order)
    expect(answer.result.failed).toEqual([id])
    expect(stepOf(answer, id).problems).toMatchObject([{ code, path }])
  })

  it('is traced to the place on the order that a value was inherited from', () => {
    const oil = without(groomer.oil as Order, 'newOil')
    const head = stepOf(run({ ...groomer, existingOil: 'engine oil', oil }), 'oil')
    expect(head.problems[0]?.path).toEqual(['existingOil'])
    const altitude = { ...(groomer.place as Order), altitude: '40000 ft' }
    for (const id of ['verify', 'leak-test']) {
      const step = stepOf(run({ ...groomer, place: altitude }), id)
      expect(step.problems[0]?.path).toEqual(['place', 'altitude'])
    }
    const day = stepOf(run({ ...groomer, date: '2026-13-45' }), 'recover')
    expect(day.problems[0]?.path).toEqual(['date'])
    const [hose] = groomer.parts as Order[]
    const parts = [{ name: 'Seal set' }, { ...hose, old: { hoseSize: '#7', length: '9 ft' } }]
    const { problems } = stepOf(run({ ...groomer, parts }), 'charge')
    expect(problems[0]?.path.slice(0, 3)).toEqual(['parts', 1, 'old'])
  })
})

describe('the order as a whole is refused', () => {
  const cases: [string, Order, string, (string | number)[]][] = [
    ['without a machine', without(loader, 'machine'), 'missing-input', ['machine']],
    [
      'with an unknown refrigerant',
      { ...loader, refrigerant: 'R-13x' },
      'unknown-refrigerant',
      ['refrigerant'],
    ],
    ['with a misspelt section', { ...loader, evacuaton: {} }, 'bad-input', ['evacuaton']],
    [
      'with a misspelt field of a part',
      { ...crane, parts: [{ nam: 'Condenser' }] },
      'bad-input',
      ['parts', 0, 'nam'],
    ],
    [
      'with an unknown kind of part',
      { ...crane, parts: [{ part: 'radiator' }] },
      'bad-input',
      ['parts', 0, 'part'],
    ],
    [
      'with a bare label charge',
      { ...loader, labelCharge: 2.4 },
      'ambiguous-quantity',
      ['labelCharge'],
    ],
    [
      'with an unknown field in a section',
      changed(groomer, 'leakTest', { startPresure: '1 psig' }),
      'bad-input',
      ['leakTest', 'startPresure'],
    ],
    [
      'with a bare number in a section',
      changed(groomer, 'readings', { suctionPressure: '21' }),
      'ambiguous-quantity',
      ['readings', 'suctionPressure'],
    ],
    [
      'with a wrong unit in a section',
      changed(groomer, 'readings', { suctionPressure: '21 °F' }),
      'wrong-kind',
      ['readings', 'suctionPressure'],
    ],
    [
      'with a part that holds less than nothing',
      {
        ...crane,
        parts: [{ name: 'Seal set' }, { ...(crane.parts as Order[])[0], old: { volume: '-3 mL' } }],
      },
      'out-of-range',
      ['parts', 1, 'old', 'volume'],
    ],
    ['with a date in another form', { ...loader, date: '25.11.2026' }, 'bad-input', ['date']],
  ]
  it.each(cases)('%s', (_, order, code, path) => {
    expect(() => run(order)).toThrow(expect.objectContaining({ code, path }))
  })
})

describe('an order that is run again', () => {
  const SECTIONS = [
    'recovery',
    'oil',
    'leakTest',
    'evacuation',
    'charge',
    'charging',
    'readings',
    'cooling',
    'record',
  ]
  const bare = without(groomer, ...SECTIONS)

  it('asks for everything at first, by the place where it belongs', () => {
    const paths = run(bare).result.missing.map(({ path }) => path.join('.'))
    for (const path of [
      'recovery.recovered',
      'oil.recoveredOil',
      'leakTest.startPressure',
      'evacuation.vacuum',
      'evacuation.rise',
      'charging.scaleStart',
      'record.charged',
      'readings.suctionPressure',
    ]) {
      expect(paths).toContain(path)
    }
  })

  it('misses less with every section that comes in, and nothing at the end', () => {
    let left = run(bare).result.missing.length
    const order: Order = { ...bare }
    for (const section of SECTIONS) {
      order[section] = groomer[section]
      const now = run(order).result.missing.length
      expect(now, section).toBeLessThanOrEqual(left)
      left = now
    }
    expect(run(groomer).result.missing).toEqual([])
  })

  it('leaves finished steps as they are', () => {
    const before = run(without(groomer, 'readings'))
    for (const id of ['recover', 'leak-test', 'evacuate', 'charge']) {
      expect(stepOf(before, id)).toEqual(stepOf(run(groomer), id))
    }
  })

  it('asks what the law turns on', () => {
    const person = { name: 'Somebody' }
    const road = { ...loader, machine: { ...(loader.machine as Order), kind: 'road-vehicle' } }
    const paths = run({ ...road, person }).result.missing.map(({ path }) => path.join('.'))
    expect(paths).toContain('person.forPay')
    expect(paths).toContain('person.certificates')
    const lawless = run({ ...loader, place: { ambient: '75 °F' } })
    expect(lawless.result.missing.map(({ path }) => path)).toContainEqual(['place', 'law'])
    expect(lawless.result.computed.rules).toEqual([])
  })
})

describe('the checklist', () => {
  it('is filled from what is on the order', () => {
    const items = new Map(run(groomer).result.checklist.map((entry) => [entry.what, entry]))
    expect(items.get('Mass charged')).toMatchObject({
      filled: true,
      value: '2 lb 13 oz (1275.7 g)',
    })
    expect(items.get('Standing vacuum')?.value).toBe('tight and dry')
    expect(items.get('Mass recovered')?.value).toBe('9 ±1 oz')
    expect(
      [...items.values()]
        .filter(({ because }) => because === undefined)
        .every(({ filled }) => filled),
    ).toBe(true)
  })

  it('names the rule that asks for a record', () => {
    const byLaw = run(groomer).result.checklist.filter(({ because }) => because !== undefined)
    expect(byLaw.length).toBeGreaterThan(0)
    for (const { because } of byLaw)
      expect(because).toMatch(/40 CFR .*; (checked 2026-11|not checked)/u)
  })

  it('asks for no vacuum where nothing was opened', () => {
    const what = run(loader).result.checklist.map((entry) => entry.what)
    expect(what).not.toContain('Vacuum reached')
    expect(what).not.toContain('Mass recovered')
  })

  it('says in the records step what is still open', () => {
    expect(stepOf(run(loader), 'records').findings.join(' ')).toContain('Mass charged')
    expect(stepOf(run(groomer), 'records').findings).toEqual([])
  })
})

describe('the federal leak rates', () => {
  it('are told of an order under that law alone', () => {
    const federal = (law: string | undefined) =>
      run({ ...groomer, place: { ...(groomer.place as Order), law } }).result.computed.leakTest
        ?.federal
    expect(federal('us-federal')).toBeDefined()
    for (const law of ['eu', 'canada', undefined]) expect(federal(law)).toBeUndefined()
  })
})
