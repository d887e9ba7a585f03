import { describe, expect, it } from 'vitest'
import type { WorkOrderAnswer } from '../../../shared/work-order/sheet.ts'
import { changed, EXAMPLES, type Order, run, without } from './examples.ts'

const { crane, groomer, loader, forwarder } = EXAMPLES

const building = {
  ...without(crane, 'existingOil', 'oil', 'parts', 'charge', 'person'),
  machine: { name: 'Office, rooftop unit', kind: 'stationary', compressorDrive: 'electric' },
  refrigerant: 'R-410A',
  labelCharge: '12 kg',
  place: { law: 'us-federal', altitude: '5000 ft', ambient: '75 °F' },
  recovery: { systemPressure: '100 psig', systemTemperature: '75 °F', volume: '10 L' },
}
const compressor = {
  ...loader,
  job: 'system-opened',
  oilTotal: '8 fl oz',
  parts: [{ part: 'compressor', drained: '2.5 fl oz' }, { part: 'drier' }],
  oil: { compressorHolds: '7 fl oz', leak: 'none' },
}
const section = {
  ...without(loader, 'couplings'),
  job: 'section-opened',
  charge: { volume: '200 mL', phase: 'liquid', temperature: '110 °F', sealed: true },
}
const couplings = (list: readonly Order[], charge: Order = {}) => ({
  ...loader,
  couplings: list,
  charge,
})
const measured = { mouthDiameter: '18 mm', firstDepth: '4 mm', secondDepth: '2 mm', line: 'liquid' }
const standing = (volume: Order, ...rise: readonly (readonly [string, string])[]) =>
  changed(groomer, 'evacuation', {
    rise: rise.map(([time, pressure]) => ({ time, pressure })),
    ...volume,
  })

const ORDERS: Readonly<Record<string, Order>> = {
  crane,
  groomer,
  loader,
  forwarder,
  building,
  compressor,
  'a compressor with too little oil': changed(compressor, 'oil', { compressorHolds: '1 fl oz' }),
  section,
  'couplings by caliper': couplings([{ couplingType: 'two-valve', ...measured }]),
  'couplings of unknown spill': couplings(
    [{ couplingType: 'two-valve', spillFrom: '1 mL', spillTo: '8 mL', line: 'liquid' }],
    { whatIf: true },
  ),
  cans: changed(groomer, 'charging', { supply: 'small-cans', canNet: '340 g' }),
  'a leaking vacuum': standing(
    { volume: '4 L' },
    ['0 min', '500 micron'],
    ['5 min', '1500 micron'],
    ['10 min', '2500 micron'],
    ['20 min', '4500 micron'],
    ['40 min', '8500 micron'],
    ['60 min', '12500 micron'],
    ['90 min', '18500 micron'],
    ['120 min', '24500 micron'],
  ),
  'a vacuum that levels off': standing(
    { temperature: '77 °F', volume: '5 L' },
    ...([0, 5, 10, 20, 30, 45, 60, 90] as const).map(
      (time, i) =>
        [
          `${time} min`,
          `${[500, 19_000, 29_000, 37_000, 39_500, 40_400, 40_500, 40_500][i]} micron`,
        ] as const,
    ),
  ),
  'a vacuum watched too briefly': standing(
    { volume: '4 L' },
    ['0 min', '500 micron'],
    ['5 min', '1500 micron'],
    ['10 min', '2500 micron'],
    ['20 min', '4500 micron'],
    ['30 min', '6500 micron'],
  ),
  'weighed a year apart': {
    ...without(groomer, 'leakTest'),
    leakTest: { chargeThen: '2 lb 12 oz', chargeNow: '2 lb', between: '1 yr' },
  },
  'pressures at rest': changed(groomer, 'cooling', {
    staticHigh: '110 psig',
    staticLow: '109 psig',
  }),
}

type ComputedParts = WorkOrderAnswer['result']['computed']
type Row = readonly [step: string, label: string, of: (found: ComputedParts) => unknown]

const words = (text: string | undefined) => text?.replaceAll('-', ' ')

/** Which result each line of the sheet is. */
const ROWS: readonly Row[] = [
  ['recover', 'Should come out, at least', (c) => c.recovery?.expected?.least],
  ['recover', 'Should come out, at most', (c) => c.recovery?.expected?.most],
  ['recover', 'Came out', (c) => c.recovery?.expected?.recovered?.mass],
  ['recover', 'Share of the label charge', (c) => c.recovery?.expected?.recovered?.ofLabel],
  ['recover', 'Missing against the label', (c) => c.recovery?.expected?.recovered?.missing],
  ['recover', 'Cylinder still takes', (c) => c.recovery?.cylinder?.room],
  ['recover', 'Stop when the scale shows', (c) => c.recovery?.cylinder?.stopAt],
  [
    'recover',
    'At its highest contents it goes liquid-full at',
    (c) => c.recovery?.cylinder?.liquidFullAtMaximum,
  ],
  ['recover', 'Evacuate before opening to', (c) => c.recovery?.evacuation?.level],
  ['recover', 'A gauge here then shows', (c) => c.recovery?.evacuation?.gaugeReading],
  ['oil', 'Oil to pour in', (c) => c.oil?.pourIn],
  [
    'oil',
    'All that must go in, the new compressor included',
    (c) => c.oil?.compressor && c.oil.add,
  ],
  ['oil', 'By the published spread, from', (c) => c.oil?.addFrom],
  ['oil', 'By the published spread, to', (c) => c.oil?.addTo],
  ['oil', 'Take out of the new compressor', (c) => c.oil?.compressor?.drainFromNew],
  ['oil', 'Add to the new compressor', (c) => c.oil?.compressor?.addToNew],
  ['leak-test', 'Standing test', (c) => words(c.leakTest?.standing?.verdict)],
  ['leak-test', 'Change that was read', (c) => c.leakTest?.standing?.measuredChange],
  ['leak-test', 'Of it by temperature', (c) => c.leakTest?.standing?.byTemperature],
  ['leak-test', 'Not explained', (c) => c.leakTest?.standing?.unexplained],
  ['leak-test', 'Smallest leak that this could show', (c) => c.leakTest?.standing?.smallestLeak],
  ['leak-test', 'Loss a year', (c) => c.leakTest?.yearly?.perYear],
  ['evacuate', 'Pull down to, or lower', (c) => c.evacuation?.target.target],
  ['evacuate', 'Then valve off, and watch', (c) => c.evacuation?.target.holdFor],
  ['evacuate', 'Must stay below', (c) => c.evacuation?.target.holdBelow],
  ['evacuate', 'Target reached', (c) => words(c.evacuation?.target.reached)],
  ['evacuate', 'Hold', (c) => words(c.evacuation?.target.held)],
  ['evacuate', 'Water boils below', (c) => c.evacuation?.water?.vapourPressure],
  ['evacuate', 'A gauge here then shows', (c) => c.evacuation?.water?.gaugeNeeded],
  ['evacuate', 'Least pump-down time', (c) => c.evacuation?.pullDown?.time],
  ['evacuate', 'Standing vacuum', (c) => words(c.evacuation?.rise?.verdict)],
  ['evacuate', 'Steady rise a minute', (c) => c.evacuation?.rise?.risePerMinute],
  ['evacuate', 'Levels off at', (c) => c.evacuation?.rise?.plateau],
  ['evacuate', 'Watch for', (c) => c.evacuation?.rise?.watchFor],
  ['evacuate', 'Air that comes in', (c) => c.evacuation?.rise?.leakRate],
  ['charge', 'Mass to add', (c) => c.charge?.massToAdd],
  ['charge', 'Lower end', (c) => c.charge?.massToAddFrom],
  ['charge', 'Upper end', (c) => c.charge?.massToAddTo],
  ['charge', 'Cannot exceed', (c) => c.charge?.bound?.most],
  ['charge', 'Space in the couplings', (c) => c.charge?.bound?.space],
  ['charge', 'Like couplings may spill, from', (c) => c.charge?.likeParts?.from],
  ['charge', 'Like couplings may spill, up to', (c) => c.charge?.likeParts?.to],
  ['charge', 'What-if, least missing', (c) => c.charge?.whatIfFrom],
  ['charge', 'What-if, most missing', (c) => c.charge?.whatIfTo],
  ['charge', 'Charge of the whole machine', (c) => c.charge?.totalTarget],
  ['charge', 'Change by altered parts', (c) => c.charge?.changeOfCharge],
  ['charge', 'From a new cylinder', (c) => c.charge?.newRefrigerant],
  ['charge', 'Set on the scale', (c) => c.charge?.setOnScale],
  ['charge', 'Leaves the source', (c) => c.charging?.leavesSource],
  ['charge', 'Stays in the hose', (c) => c.charging?.hose?.holdUp],
  ['charge', 'Close the valve when the scale shows', (c) => c.charging?.scale?.stop],
  ['charge', 'Whole cans', (c) => c.charging?.cans?.whole],
  ['charge', 'From the last can', (c) => c.charging?.cans?.fromLast],
  ['verify', 'Superheat', (c) => c.readings?.superheat],
  ['verify', 'Subcooling', (c) => c.readings?.subcooling],
  ['verify', 'Condensing above ambient', (c) => c.readings?.condensingOverAmbient],
  ['verify', 'Compression ratio, absolute', (c) => c.readings?.compressionRatio?.value],
  ['verify', 'Vent', (c) => c.cooling?.bands.vent.reading],
  ['verify', 'Air in less vent', (c) => c.cooling?.air?.drop],
  ['verify', 'Dew point of the air in', (c) => c.cooling?.air?.dewPointIn],
  ['verify', 'Vent above evaporating', (c) => c.cooling?.temperatures?.ventAboveEvaporating],
  ['verify', 'At rest', (c) => words(c.cooling?.rest?.state)],
]

const answers = Object.entries(ORDERS).map(([name, order]) => ({ name, answer: run(order) }))

describe('each figure of the sheet is the one that its step computed', () => {
  it.each(ROWS)('%s: %s', (step, label, of) => {
    const seen = answers.flatMap(({ name, answer: { result } }) => {
      const shown = result.steps
        .find(({ id }) => id === step)
        ?.figures.filter((figure) => figure.label === label)
        .map(({ value }) => value)
      const computed = of(result.computed)
      if (!shown || (shown.length === 0 && computed === undefined)) return []
      // Where there is too little to weigh, nothing is set on a scale.
      if (label === 'Set on the scale' && shown.length === 0) return []
      expect(shown, name).toEqual(shown.length > 1 ? [computed, computed] : [computed])
      return [name]
    })
    expect(seen.length, `no order shows "${label}"`).toBeGreaterThan(0)
  })

  it('none is left out of this table', () => {
    const known = new Set(ROWS.map(([step, label]) => `${step}: ${label}`))
    const named =
      /^(?:before-opening|replace|measure): |^(?:leak-test: Leak|recover: Requalification|charge: Went in, less what should)$/u
    for (const { name, answer } of answers) {
      const lines = (answer.result.computed.oil?.lines ?? []).map(
        ({ what }) => `oil: ${what.charAt(0).toUpperCase()}${what.slice(1)}`,
      )
      const shown = answer.result.steps.flatMap(({ id, figures }) =>
        figures.map(({ label }) => `${id}: ${label}`),
      )
      const unknown = shown.filter(
        (line) => !known.has(line) && !named.test(line) && !lines.includes(line),
      )
      expect(unknown, name).toEqual([])
    }
  })
})
