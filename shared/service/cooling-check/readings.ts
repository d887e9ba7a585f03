import * as z from 'zod'
import { CalcError, under } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import {
  compareWithBand,
  type PressureReading,
  type Quantity,
  toAbsolute,
  toGauge,
} from '../../quantity/index.ts'
import { plausible } from '../plausible.ts'
import type { CoolingInput } from './fields.ts'

/** One small division of a service gauge, Pa, and of a thermometer, K. */
const SERVICE_GAUGE_PA = 7_000
const THERMOMETER_K = 1
export const PRESSURES = [
  'highPressure',
  'lowPressure',
  'staticHigh',
  'staticLow',
  'cutOut',
  'cutIn',
] as const
const TEMPERATURES = ['ambient', 'ventTemperature', 'airIn'] as const

/** Readings in SI, each with an uncertainty. */
export function readingsOf(input: CoolingInput, barometerPa: number, notes: Notes) {
  const given = [...PRESSURES, ...TEMPERATURES].flatMap((name) => input[name] ?? [])
  if (given.some(({ plusMinus }) => plusMinus === undefined)) {
    notes.assumptions.push({
      field: 'highPressure',
      taken: 'gauges ±1 psi (7 kPa) and thermometers ±1.8 °F (1 K) where none was stated',
      because: 'no uncertainty was given with the readings; write it as "205 ±3 psig"',
    })
  }
  const gauge = (name: (typeof PRESSURES)[number]) => {
    const reading = input[name]
    return reading && gaugeOf(reading, barometerPa, name)
  }
  const kelvin = (name: 'ventTemperature' | 'airIn') => {
    const reading = input[name]
    return reading && settled(reading, name)
  }
  const ambient = settled(input.ambient, 'ambient')
  const airIn = kelvin('airIn')
  if (!airIn && (input.ventTemperature || input.relativeHumidity)) {
    notes.assumptions.push({
      field: 'airIn',
      taken: 'the ambient temperature',
      because:
        'the temperature of the air into the evaporator was not given; a recirculating cab is cooler',
    })
  }
  return {
    ambient,
    airIn: airIn ?? ambient,
    vent: kelvin('ventTemperature'),
    high: gauge('highPressure'),
    low: gauge('lowPressure'),
    staticHigh: gauge('staticHigh'),
    staticLow: gauge('staticLow'),
    cutOut: gauge('cutOut'),
    cutIn: gauge('cutIn'),
  }
}

function gaugeOf(reading: PressureReading, barometerPa: number, path: string) {
  const absolute = under(path, () => toAbsolute(reading, barometerPa))
  return toGauge(absolute.si, barometerPa, absolute.plusMinus ?? SERVICE_GAUGE_PA)
}

const settled = (reading: Quantity<'temperature'>, path: string) =>
  plausible(reading, 233.15, 343.15, 'An air temperature', [path]).within(
    reading.plusMinus ?? THERMOMETER_K,
  )

const against = z.enum(['below', 'inside', 'above', 'cannot-tell']).optional()

export const makerOut = z
  .strictObject({ high: against, low: against, vent: against })
  .describe('Against the figures of the equipment maker, which go first')

function refuseInverted(field: string, from: number | undefined, to: number | undefined): void {
  if (from === undefined || to === undefined || from <= to) return
  throw new CalcError('bad-input', "The maker's least pressure is above the most.", {
    path: [field],
    hint: 'Give the lower of the two as From and the higher as To.',
  })
}

/**
 * Readings against the equipment maker's own figures; undefined where none was given.
 *
 * @throws {CalcError} `bad-input` for a band whose least is above its most.
 */
export function makerPart(
  input: CoolingInput,
  readings: ReturnType<typeof readingsOf>,
  barometerPa: number,
) {
  const limit = (name: 'makerHighFrom' | 'makerHighTo' | 'makerLowFrom' | 'makerLowTo') => {
    const reading = input[name]
    return reading && under(name, () => toAbsolute(reading, barometerPa)).si - barometerPa
  }
  refuseInverted('makerHighFrom', limit('makerHighFrom'), limit('makerHighTo'))
  refuseInverted('makerLowFrom', limit('makerLowFrom'), limit('makerLowTo'))
  const where = (
    reading: Quantity | undefined,
    from: number | undefined,
    to: number | undefined,
  ) =>
    reading && (from !== undefined || to !== undefined)
      ? compareWithBand(reading, from ?? Number.NEGATIVE_INFINITY, to ?? Number.POSITIVE_INFINITY)
      : undefined
  const found = {
    high: where(readings.high, limit('makerHighFrom'), limit('makerHighTo')),
    low: where(readings.low, limit('makerLowFrom'), limit('makerLowTo')),
    vent: where(readings.vent, undefined, input.makerVentTo?.si),
  }
  return found.high || found.low || found.vent ? found : undefined
}
