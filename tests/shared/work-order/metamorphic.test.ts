import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dangersOf } from '../../../shared/dangers.ts'
import { pickRefrigerant } from '../../../shared/fields/index.ts'
import { actsOf } from '../../../shared/work-order/acts.ts'
import type { WorkOrderInput } from '../../../shared/work-order/input.ts'
import { workOrder } from '../../../shared/work-order/work-order.ts'
import { EXAMPLES, type Order, run } from './examples.ts'
import { arbitraryOrder } from './orders.ts'

const { crane, groomer, loader } = EXAMPLES

/** Every number to eleven digits: sums in another order differ in the last ones. */
const rounded = (value: unknown): unknown =>
  JSON.parse(
    JSON.stringify(value, (_, entry) =>
      typeof entry === 'number' ? Number(entry.toPrecision(11)) : entry,
    ),
  )

describe('the order in which things stand on it', () => {
  const third = {
    name: 'Heater loop',
    couplingType: 'two-valve',
    phase: 'liquid',
    spillVolume: '3 mL ±1 mL',
  }
  const couplings = [...(loader.couplings as Order[]), third]
  const figures = (order: Order) => {
    const { massToAdd, setOnScale, bound, totalTarget, changeOfCharge } =
      run({ ...order, precise: true }).result.computed.charge ?? {}
    return rounded({ massToAdd, setOnScale, bound, totalTarget, changeOfCharge })
  }

  it('of couplings changes no figure', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(couplings, { minLength: 3 }), (shuffled) => {
        expect(figures({ ...loader, couplings: shuffled })).toEqual(
          figures({ ...loader, couplings }),
        )
      }),
      { numRuns: 12 },
    )
  })

  it('of couplings changes no verdict, whichever of them cannot shut', () => {
    const open = [...couplings.slice(0, 2), { ...third, couplingType: 'one-valve' }]
    fc.assert(
      fc.property(fc.shuffledSubarray(open, { minLength: 3 }), (shuffled) => {
        const { computed, card } = run({ ...loader, charge: {}, couplings: shuffled }).result
        expect(computed.charge?.kind).toBe('full-charge')
        expect(card.steps.map(({ id }) => id)).toContain('recover')
      }),
      { numRuns: 12 },
    )
  })

  it('of parts changes neither charge nor oil', () => {
    const parts = [...(crane.parts as Order[]), ...(groomer.parts as Order[]).slice(0, 1)]
    const answer = (shuffled: Order[]) => {
      const { computed } = run({ ...crane, parts: shuffled, precise: true }).result
      return rounded([computed.charge?.massToAdd, computed.oil?.pourIn, computed.oil?.addTo])
    }
    fc.assert(
      fc.property(fc.shuffledSubarray(parts, { minLength: parts.length }), (shuffled) => {
        expect(answer(shuffled)).toEqual(answer(parts))
      }),
      { numRuns: 12 },
    )
  })

  it('every parted coupling counts', () => {
    const all = figures({ ...loader, couplings })
    for (const left of couplings) {
      const fewer = couplings.filter((entry) => entry !== left)
      expect(figures({ ...loader, couplings: fewer })).not.toEqual(all)
    }
  })
})

describe('an order of an earlier version', () => {
  const older = {
    ...EXAMPLES.groomer,
    version: undefined,
    machine: { ...(groomer.machine as Order), compressor: 'open', compressorDrive: undefined },
    oilType: 'PAG 46',
    existingOil: undefined,
    fullCharge: '2 lb 12 oz',
    labelCharge: undefined,
    case: 'pressure-lost',
    job: undefined,
    couplings: [{ name: 'Quick end', selfSealing: true }],
  }
  const plain = JSON.parse(JSON.stringify(older)) as Order
  const now = { ...groomer, couplings: [{ name: 'Quick end', couplingType: 'two-valve' }] }

  it('is answered like the same order of this one, and told what it was read as', () => {
    const { warnings, ...before } = run(plain)
    const { warnings: told, ...after } = run(now)
    expect(before).toEqual(after)
    const [first, ...others] = warnings
    expect(others).toEqual(told)
    expect(first?.code).toBe('older-version')
    for (const words of [
      'oilType is now existingOil',
      'fullCharge is now labelCharge',
      'case is now job',
      'machine.compressor is now machine.compressorDrive',
      'couplings.0.selfSealing is now couplings.0.couplingType',
    ]) {
      expect(first?.message).toContain(words)
    }
  })

  it('that names its version is held to it', () => {
    expect(() => run({ ...plain, version: 2 })).toThrow(
      expect.objectContaining({ code: 'bad-input' }),
    )
    expect(() => run({ ...now, version: 3 })).toThrow()
  })

  it('says of couplings that did not seal that they cannot', () => {
    const open = {
      ...plain,
      job: 'couplers-parted',
      case: undefined,
      couplings: [{ selfSealing: false }],
    }
    const { result } = run(JSON.parse(JSON.stringify(open)))
    expect(result.card.steps.map(({ id }) => id)).toContain('recover')
  })
})

describe('the dangers of the job', () => {
  it('are in every answer, whatever was read', () => {
    fc.assert(
      fc.property(arbitraryOrder, (order) => {
        const input = workOrder.parse(order) as WorkOrderInput
        const ids = new Set(run(order).cautions.map(({ id }) => id))
        const expected = dangersOf({
          refrigerant: pickRefrigerant(input.refrigerant),
          compressorDrive: input.machine.compressorDrive,
          does: actsOf(input),
        })
        for (const id of expected) expect(ids).toContain(id)
      }),
      { numRuns: 60 },
    )
  })

  const bare = (more: Order) =>
    run({
      machine: { name: 'Unit', kind: 'off-road', compressorDrive: 'open' },
      refrigerant: 'R-134a',
      job: 'system-opened',
      ...more,
    }).cautions.map(({ id }) => id)
  const electric = { machine: { name: 'Unit', kind: 'off-road', compressorDrive: 'electric' } }

  it.each<[string, Order, string[], string[]]>([
    [
      'opened',
      {},
      [
        'nitrogen-regulator',
        'no-oxygen',
        'no-air',
        'rotating-parts',
        'no-venting',
        'full-cylinder',
        'goggles-even-empty',
        'compressor-in-vacuum',
        'first-aid-eyes',
        'first-aid-frostbite',
        'first-aid-inhalation',
        'first-aid-hydrogen-fluoride',
      ],
      ['high-voltage', 'lifted-cab', 'flammable', 'carbon-dioxide'],
    ],
    ['electric', electric, ['high-voltage', 'electric-compressor-oil'], []],
    [
      'electric, couplings parted',
      { ...electric, job: 'couplers-parted' },
      ['high-voltage', 'electric-compressor-oil', 'parted-half', 'stuck-coupling'],
      ['nitrogen-regulator'],
    ],
    [
      'cab lifted',
      { cabOff: true },
      ['lifted-cab', 'machine-secured', 'bystanders', 'working-alone'],
      [],
    ],
    [
      'R-744',
      { refrigerant: 'R-744' },
      ['carbon-dioxide', 'carbon-dioxide-release', 'dry-ice', 'carbon-dioxide-test-pressure'],
      ['no-venting', 'full-cylinder', 'do-not-mix', 'no-disposable-refill'],
    ],
    [
      'flammable',
      { refrigerant: 'R-290' },
      ['flammable', 'pump-exhaust-outdoors', 'hydrocarbons-rated-machine'],
      [],
    ],
    [
      'mildly flammable',
      { refrigerant: 'R-1234yf' },
      ['flammable', 'decomposition'],
      ['hydrocarbons-rated-machine'],
    ],
    [
      'building',
      { machine: { name: 'Unit', kind: 'stationary' } },
      ['pressure'],
      ['rotating-parts'],
    ],
    [
      'only read',
      { job: 'diagnose' },
      ['pressure', 'cold-burns', 'rotating-parts'],
      ['no-venting', 'nitrogen-regulator'],
    ],
    [
      'couplings parted',
      { job: 'couplers-parted' },
      ['trapped-liquid', 'whipping-line'],
      ['no-liquid-to-suction'],
    ],
    [
      'couplings parted, then charged',
      { job: 'couplers-parted', record: { charged: '2 oz' } },
      ['no-high-side-running', 'warm-water-only'],
      [],
    ],
  ])('%s, before anything was read', (_, order, there, absent) => {
    const ids = bare(order)
    expect(ids).toEqual(expect.arrayContaining(there))
    for (const id of absent) expect(ids).not.toContain(id)
  })
})

describe('readings from before the work', () => {
  const { readings } = EXAMPLES.forwarder
  const order = { ...groomer, readingsBefore: readings }

  it('are judged apart from those behind it', () => {
    const { computed, card } = run(order).result
    expect(computed.readingsBefore?.superheat).not.toEqual(computed.readings?.superheat)
    expect(computed.readings).toEqual(run(groomer).result.computed.readings)
    const before = card.steps.find(({ id }) => id === 'before')
    expect(before?.lines.at(-1)?.text).toMatch(
      /^running, before the work: low 12 ±1 psig, high 138 ±3 psig, suction 58 ±2 °F, liquid 104 ±2 °F$/u,
    )
  })

  it('stop the work where they are dangerous', () => {
    const stop = run({
      ...groomer,
      readingsBefore: { ...(readings as Order), liquidPressure: '450 psig' },
    })
    expect(stop.level).toBe('stop')
  })
})
