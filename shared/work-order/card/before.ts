import { Blank, sentence } from '../../answer/sentence.ts'
import { isCarbonDioxide, pickRefrigerant } from '../../fields/index.ts'
import { resolvePlace, withInstrument } from '../../instrument/index.ts'
import { propagate, type Quantity } from '../../quantity/index.ts'
import { saturationPressure } from '../../refrigerant/index.ts'
import { breaksOpen } from '../breaks-open.ts'
import { certificatesText } from '../certificates.ts'
import { runsOf } from '../head.ts'
import type { WorkOrderInput } from '../input.ts'
import { asking, type Build } from './built.ts'
import { BEFORE, type TaskId, task, told, type Values, written } from './lines.ts'
import type { Line } from './schema.ts'

const OFF: Readonly<Record<ReturnType<typeof runsOf>, TaskId>> = {
  engine: 'engine-off',
  electric: 'engine-off',
  cargo: 'unit-off',
  building: 'power-off',
}

/** What is done and read before anything is loosened. */
export const before: Build = (input, { rules }) => {
  const { cooling, place, machine, person, job } = input
  const air = place?.ambient
  const expected = air && expectedAt(input, air)
  const values = {
    low: written(cooling?.staticLow, 'gaugePressure'),
    high: written(cooling?.staticHigh, 'gaugePressure'),
    air: written(air, 'temperature'),
  }
  const opens = job !== 'diagnose'
  const law = rules.open?.state === 'done' ? rules.open.computation.result.certificate : undefined
  const highVoltage = machine.compressorDrive === 'electric' && machine.kind !== 'stationary'
  const identifies = breaksOpen(input) && !isCarbonDioxide(pickRefrigerant(input.refrigerant))
  const lines = [
    task(OFF[runsOf(input)]),
    ...(highVoltage && opens ? [task('high-voltage')] : []),
    ...(input.cabOff ? [task('secured')] : []),
    // Who holds what is confirmed at each order, on paper: a list in a file permits nothing.
    ...(opens && law?.needed !== 'not-required'
      ? [
          {
            ...task('certificate', { certificates: certificatesText(person?.certificates) }),
            ticked: false,
          },
        ]
      : []),
    expected ? task('at-rest-expected', { ...values, expected }) : task('at-rest', values),
    ...(identifies ? [task('identified', { purity: new Blank('fraction') })] : []),
    ...earlier(input),
  ]
  return asking('before', lines, values)
}

/** What was read before the work, in the place where it matters. */
function earlier({ readingsBefore = {} }: WorkOrderInput): readonly Line[] {
  const { suctionPressure, liquidPressure, dischargePressure } = readingsBefore
  const all: Values = {
    low: suctionPressure,
    high: liquidPressure ?? dischargePressure,
    suction: readingsBefore.suctionTemperature,
    liquid: readingsBefore.liquidTemperature,
  }
  const read = Object.entries(all).filter(([, value]) => value !== undefined)
  if (read.length === 0) return []
  const words = read.map(([name]) => `${name} {${name}}`).join(', ')
  return [told(sentence(`${BEFORE} ${words}`, all))]
}

/** What the gauges should show at rest in this air: the saturation pressure, as a gauge here shows it. */
function expectedAt(input: WorkOrderInput, air: Quantity<'temperature'>) {
  try {
    const r = pickRefrigerant(input.refrigerant)
    const place = resolvePlace(input.place ?? {})
    // As finely as thermometer and barometer know it, which is coarser than its digits.
    const { reading } = withInstrument(air, 'thermometer', 'ambient')
    const { si, plusMinus } = propagate([reading], (kelvin) =>
      saturationPressure(r, kelvin, 'bubble'),
    )
    return place.gauge(si, plusMinus)
  } catch {
    return undefined
  }
}
