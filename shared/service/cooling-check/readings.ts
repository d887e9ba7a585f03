import * as z from 'zod'
import { CalcError, under } from '../../errors.ts'
import { type Place, reader } from '../../instrument/index.ts'
import type { Notes } from '../../notes.ts'
import {
  compareWithBand,
  type PressureReading,
  type Quantity,
  surelyBelow,
  widthOf,
} from '../../quantity/index.ts'
import { plausible } from '../plausible.ts'
import { printedPa } from '../printed-gauge.ts'
import type { Compared } from './band.ts'
import type { CoolingInput } from './fields.ts'

/** A pressure as it was read, with its gauge's ±, and absolute, with the barometer's too. */
export interface Reading extends Compared {
  readonly gauge: Quantity<'gaugePressure'>
  readonly absolute: Quantity<'absolutePressure'>
}

export const PRESSURES = [
  'suctionPressure',
  'dischargePressure',
  'liquidPressure',
  'staticHigh',
  'staticLow',
  'cutOut',
  'cutIn',
] as const
type PressureName = (typeof PRESSURES)[number]

const GAUGES = {
  suctionPressure: 'low-side-gauge',
  dischargePressure: 'high-side-gauge',
  liquidPressure: 'high-side-gauge',
  staticHigh: 'a-gauge',
  staticLow: 'a-gauge',
  cutOut: 'low-side-gauge',
  cutIn: 'low-side-gauge',
} as const

/** Readings in SI, each with an uncertainty. */
export interface CoolingReadings {
  readonly ambient: Quantity<'temperature'>
  readonly returnAir: Quantity<'temperature'>
  readonly vent: Compared<Quantity<'temperature'>> | undefined
  readonly relativeHumidity: Quantity<'fraction'> | undefined
  readonly high: Reading | undefined
  readonly low: Reading | undefined
  readonly staticHigh: Reading | undefined
  readonly staticLow: Reading | undefined
  readonly cutOut: Reading | undefined
  readonly cutIn: Reading | undefined
  /** Both running gauges read the same, and stand among the pressures at rest instead. */
  readonly alike: boolean
}

/** @throws {CalcError} `bad-input` for two high sides, `out-of-range` for what no gauge can show. */
export function readingsOf(input: CoolingInput, place: Place, notes: Notes): CoolingReadings {
  const take = reader(input, notes)
  const pressure = (name: PressureName): Reading | undefined => {
    const reading: PressureReading | undefined = take(input[name], GAUGES[name], name)
    if (!reading) return undefined
    const absolute = under(name, () => place.absolute(reading))
    const gauge =
      reading.kind === 'gaugePressure' ? reading : place.gauge(reading.si, reading.plusMinus)
    return { shown: gauge, si: absolute, gauge: gauge as Quantity<'gaugePressure'>, absolute }
  }
  const air = (name: 'ambient' | 'ventTemperature' | 'returnAir') => {
    const reading = take(input[name], 'thermometer', name)
    return reading && plausible(reading, 233.15, 343.15, 'An air temperature', [name])
  }
  const ambient = air('ambient') as Quantity<'temperature'>
  const returnAir = air('returnAir')
  if (!returnAir && (input.ventTemperature || input.relativeHumidity)) {
    notes.assumptions.push({
      field: 'returnAir',
      taken: 'the ambient temperature',
      because: 'the air entering the evaporator was not given; a recirculating cab is cooler',
      short: 'return air as ambient',
    })
  }
  if (input.dischargePressure && input.liquidPressure) {
    throw new CalcError('bad-input', 'The tables print one high side; two were given.', {
      path: ['liquidPressure'],
      hint: 'Give dischargePressure or liquidPressure, whichever port the gauge is on.',
    })
  }
  const high = pressure('dischargePressure') ?? pressure('liquidPressure')
  const low = pressure('suctionPressure')
  const vent = air('ventTemperature')
  const alike = high !== undefined && low !== undefined && readAlike(high, low)
  return {
    ambient,
    returnAir: returnAir ?? ambient,
    vent: vent && { shown: vent, si: vent },
    relativeHumidity: take(input.relativeHumidity, 'hygrometer', 'relativeHumidity'),
    high: alike ? undefined : high,
    low: alike ? undefined : low,
    staticHigh: pressure('staticHigh') ?? (alike ? high : undefined),
    staticLow: pressure('staticLow') ?? (alike ? low : undefined),
    cutOut: pressure('cutOut'),
    cutIn: pressure('cutIn'),
    alike,
  }
}

/** The gauges cannot tell the two apart; the barometer is the same for both and does not count. */
export const readAlike = (a: Reading, b: Reading): boolean =>
  Math.abs(a.absolute.si - b.absolute.si) <= Math.hypot(widthOf(a.gauge), widthOf(b.gauge))

/** The high side lies surely below the low side. */
export const isSwapped = ({ high, low }: CoolingReadings): boolean =>
  high !== undefined &&
  low !== undefined &&
  surelyBelow(
    {
      si: high.absolute.si - low.absolute.si,
      plusMinus: Math.hypot(widthOf(high.gauge), widthOf(low.gauge)),
    },
    0,
  )

const against = z.enum(['below', 'inside', 'above', 'cannot-tell']).optional()

export const makerOut = z
  .strictObject({ high: against, low: against, vent: against })
  .describe("Against the equipment maker's figures, which override the tables")

export type MakerResult = z.output<typeof makerOut>

function refuseInverted(field: string, from: number | undefined, to: number | undefined): void {
  if (from === undefined || to === undefined || from <= to) return
  throw new CalcError('bad-input', "The maker's least pressure is above the most.", {
    path: [field],
    hint: 'Give the lower of the two as From and the higher as To.',
  })
}

/**
 * Readings against the equipment maker's own figures, printed ones; undefined where none was given.
 *
 * @throws {CalcError} `bad-input` for a band whose least is above its most.
 */
export function makerPart(
  input: CoolingInput,
  readings: Pick<CoolingReadings, 'high' | 'low' | 'vent'>,
): MakerResult | undefined {
  const limit = (name: 'makerHighFrom' | 'makerHighTo' | 'makerLowFrom' | 'makerLowTo') => {
    const given = input[name]
    if (!given) return undefined
    return given.kind === 'gaugePressure' ? printedPa(given.si) : given.si
  }
  refuseInverted('makerHighFrom', limit('makerHighFrom'), limit('makerHighTo'))
  refuseInverted('makerLowFrom', limit('makerLowFrom'), limit('makerLowTo'))
  const where = (
    reading: Compared | undefined,
    from: number | undefined,
    to: number | undefined,
  ) =>
    reading && (from !== undefined || to !== undefined)
      ? compareWithBand(
          reading.si,
          from ?? Number.NEGATIVE_INFINITY,
          to ?? Number.POSITIVE_INFINITY,
        )
      : undefined
  const found = {
    high: where(readings.high, limit('makerHighFrom'), limit('makerHighTo')),
    low: where(readings.low, limit('makerLowFrom'), limit('makerLowTo')),
    vent: where(readings.vent, undefined, input.makerVentTo?.si),
  }
  return found.high || found.low || found.vent ? found : undefined
}
