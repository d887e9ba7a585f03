import { Blank, headlineOf, sentence } from '../../answer/sentence.ts'
import { isCarbonDioxide, pickRefrigerant } from '../../fields/index.ts'
import { resolvePlace } from '../../instrument/index.ts'
import { gaugePressure, type Quantity } from '../../quantity/index.ts'
import { saturationPressure } from '../../refrigerant/index.ts'
import { breaksOpen } from '../breaks-open.ts'
import { isVehicleOrder } from '../head.ts'
import type { WorkOrderInput } from '../input.ts'
import type { Outcomes } from '../run.ts'
import type { Outcome } from '../section.ts'
import { type Line, type StepId, task, told, written } from './lines.ts'

type Build = (input: WorkOrderInput, outcomes: Outcomes) => readonly Line[]

/** The headline of a step that was worked out, or what it still needs. */
function outcomeLine(outcome: Outcome<unknown>): readonly Line[] {
  if (outcome.state === 'done') {
    const { told: answer } = outcome.computation
    return answer ? [told(headlineOf(answer))] : []
  }
  if (outcome.state === 'absent') return []
  const { message, hint } = outcome.problem
  return [told(sentence(outcome.state === 'failed' ? `${message} ${hint}`.trim() : message))]
}

const before: Build = (input) => {
  const { cooling, place } = input
  const air = place?.ambient
  const expected = air && expectedAt(input, air)
  const values = {
    low: written(cooling?.staticLow, 'gaugePressure'),
    high: written(cooling?.staticHigh, 'gaugePressure'),
    air: written(air, 'temperature'),
  }
  return [
    task(isVehicleOrder(input) ? 'engine-off' : 'power-off'),
    ...(input.cabOff ? [task('secured')] : []),
    expected ? task('at-rest-expected', { ...values, expected }) : task('at-rest', values),
    ...(breaksOpen(input) && !isCarbonDioxide(pickRefrigerant(input.refrigerant))
      ? [task('identified', { purity: new Blank('fraction') })]
      : []),
  ]
}

/** What the gauges should show at rest in this air: the saturation pressure, as a gauge here shows it. */
function expectedAt(input: WorkOrderInput, air: Quantity<'temperature'>) {
  try {
    const r = pickRefrigerant(input.refrigerant)
    const place = resolvePlace(input.place ?? {})
    return gaugePressure(place.gauge(saturationPressure(r, air.si, 'bubble')).si)
  } catch {
    return undefined
  }
}

const part: Build = (input) => {
  const { couplings = [], charge } = input
  const makers = charge?.makerCorrection !== undefined || charge?.spillVolume !== undefined
  const known =
    makers ||
    (couplings.length > 0 &&
      couplings.every(({ spillVolume, mouthDiameter }) => spillVolume ?? mouthDiameter))
  return [
    task('fixed-half'),
    task('hiss'),
    task('capped'),
    ...(known
      ? []
      : [
          task('caliper', {
            mouth: new Blank('length'),
            first: new Blank('length'),
            second: new Blank('length'),
          }),
        ]),
  ]
}

const recover: Build = ({ recovery, oil, refrigerant }, outcomes) =>
  isCarbonDioxide(pickRefrigerant(refrigerant))
    ? [task('let-out')]
    : [
        ...outcomeLine(outcomes.recovery),
        task('hoses-purged'),
        task('stays-down'),
        task('came-out', {
          recovered: written(recovery?.recovered, 'mass'),
          oil: written(oil?.recoveredOil, 'volume'),
        }),
      ]

const replace: Build = ({ parts = [], job }) => [
  ...(parts.length === 0
    ? []
    : [told(sentence(parts.map(({ name, part: kind }) => name ?? kind ?? 'a part').join(', ')))]),
  task('seals'),
  ...(job === 'couplers-parted' ? [] : [task('drier-last')]),
]

const leakTest: Build = ({ leakTest: test }, outcomes) => [
  ...outcomeLine(outcomes.leakTest),
  task('standing', {
    start: written(test?.startPressure, 'gaugePressure'),
    startAir: written(test?.startTemperature, 'temperature'),
    elapsed: written(test?.elapsed, 'duration'),
    end: written(test?.endPressure, 'gaugePressure'),
    endAir: written(test?.endTemperature, 'temperature'),
  }),
]

const evacuate: Build = ({ evacuation }, outcomes) => {
  const last = evacuation?.rise?.at(-1)
  return [
    ...outcomeLine(outcomes.evacuation),
    task('vacuum', { vacuum: written(evacuation?.vacuum, 'absolutePressure') }),
    task('held', {
      elapsed: written(last?.time, 'duration'),
      later: written(last?.pressure, 'absolutePressure'),
    }),
  ]
}

const charge: Build = (input, outcomes) => {
  const { charging, record } = input
  const found = outcomes.charge.state === 'done' ? outcomes.charge.computation.result : undefined
  const nothing = found !== undefined && found.setOnScale === undefined
  return [
    ...outcomeLine(outcomes.charge),
    ...outcomeLine(outcomes.charging),
    ...(nothing && !record?.charged
      ? []
      : [
          ...(charging?.scaleStart ? [] : [task('scale', { start: new Blank('mass') })]),
          task('went-in', { charged: written(record?.charged, 'mass') }),
        ]),
  ]
}

const read: Build = (input, outcomes) => {
  const { readings, cooling } = input
  const high = readings?.liquidPressure ?? readings?.dischargePressure
  return [
    ...outcomeLine(outcomes.readings),
    ...outcomeLine(outcomes.cooling),
    task(isVehicleOrder(input) ? 'read-vehicle' : 'read-stationary', {
      low: written(readings?.suctionPressure, 'gaugePressure'),
      high: written(high, 'gaugePressure'),
      suction: written(readings?.suctionTemperature, 'temperature'),
      liquid: written(readings?.liquidTemperature, 'temperature'),
      vent: written(cooling?.ventTemperature, 'temperature'),
    }),
  ]
}

const BUILD: Readonly<Record<StepId, Build>> = {
  before,
  part,
  cab: () => [task('all-off'), task('on-blocks')],
  rejoin: () => [task('faces'), task('by-hand')],
  recover,
  open: () => [task('proved-empty'), task('cap-at-once')],
  replace,
  oil: (_, outcomes) => outcomeLine(outcomes.oil),
  'leak-test': leakTest,
  evacuate,
  charge,
  prove: (input, outcomes) => [
    task(input.job === 'couplers-parted' ? 'couplings-checked' : 'joints'),
    ...read(input, outcomes),
    task('caps-back'),
  ],
  measure: read,
}

/** The steps of this job in the order of the visit. */
export function stepIds(input: WorkOrderInput, outcomes: Outcomes): readonly StepId[] {
  const { job, cabOff, parts = [] } = input
  if (job === 'diagnose') return ['before', 'measure']
  const open = breaksOpen(input)
  const cab: readonly StepId[] = cabOff ? ['cab'] : []
  const replaces: readonly StepId[] = [
    ...(parts.length > 0 ? (['replace'] as const) : []),
    ...(outcomes.oil.state === 'absent' ? [] : (['oil'] as const)),
  ]
  if (job === 'couplers-parted' && !open) {
    return ['before', 'part', ...cab, ...replaces, 'rejoin', 'charge', 'prove']
  }
  return [
    'before',
    'recover',
    'open',
    ...cab,
    ...replaces,
    'leak-test',
    'evacuate',
    'charge',
    'prove',
  ]
}

export const buildStep = (id: StepId, input: WorkOrderInput, outcomes: Outcomes): readonly Line[] =>
  BUILD[id](input, outcomes)
