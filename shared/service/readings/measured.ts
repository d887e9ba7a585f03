import { CalcError } from '../../errors.ts'
import { type PressureReading, type Quantity, quantity } from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import type { Source } from '../../sources.ts'
import { type ResolvedPlace, resolveBarometer } from '../place.ts'
import { plausible } from '../plausible.ts'
import type { ReadingsInput } from './fields.ts'
import { type Rated, ratePressure, rateTemperature } from './instruments.ts'

/** Readings with the uncertainty of their instruments. */
export interface Measured {
  readonly refrigerant: Refrigerant
  readonly place: ResolvedPlace
  readonly suctionPressure: PressureReading | undefined
  /** Liquid-line pressure where there is one, else the discharge pressure. */
  readonly highPressure: PressureReading | undefined
  readonly highFrom: 'liquid-line' | 'discharge-line'
  readonly dischargePressure: PressureReading | undefined
  readonly suctionTemperature: Quantity<'temperature'> | undefined
  readonly liquidTemperature: Quantity<'temperature'> | undefined
  readonly dischargeTemperature: Quantity<'temperature'> | undefined
  readonly ambient: Quantity<'temperature'> | undefined
  readonly indoorWetBulb: Quantity<'temperature'> | undefined
  readonly outdoorDryBulb: Quantity<'temperature'> | undefined
  /** Classes that gave an uncertainty. */
  readonly sources: readonly Source[]
  /** At least one reading carries an uncertainty. */
  readonly uncertain: boolean
}

/** @throws {CalcError} `missing-input` where there is nothing to read, or as the instruments' classes refuse. */
export function measured(refrigerant: Refrigerant, input: ReadingsInput): Measured {
  if (!input.suctionPressure && !input.liquidPressure && !input.dischargePressure) {
    throw new CalcError('missing-input', 'No pressure is given.', {
      path: ['suctionPressure'],
      hint: 'Give the suction pressure, the liquid or discharge pressure, or both.',
    })
  }
  checkTemperatures(input)
  const sources: Source[] = []
  const keep = <Q>({ reading, source }: Rated<Q>): Q => {
    if (source) sources.push(source)
    return reading
  }
  const low = (reading: PressureReading | undefined) =>
    reading && keep(ratePressure(reading, input.lowGauge, input.lowGaugeSpan, 'lowGauge'))
  const high = (reading: PressureReading | undefined) =>
    reading && keep(ratePressure(reading, input.highGauge, input.highGaugeSpan, 'highGauge'))
  const pipe = (reading: Quantity<'temperature'> | undefined) =>
    reading && keep(rateTemperature(reading, input.thermometer, contactOf(input)))
  const air = (reading: Quantity<'temperature'> | undefined) =>
    reading && keep(rateTemperature(reading, input.thermometer, undefined))

  const dischargePressure = high(input.dischargePressure)
  const readings = {
    suctionPressure: low(input.suctionPressure),
    highPressure: high(input.liquidPressure) ?? dischargePressure,
    dischargePressure,
    suctionTemperature: pipe(input.suctionTemperature),
    liquidTemperature: pipe(input.liquidTemperature),
    dischargeTemperature: pipe(input.dischargeTemperature),
    ambient: air(input.ambient),
    indoorWetBulb: air(input.indoorWetBulb),
    outdoorDryBulb: air(input.outdoorDryBulb),
  }
  return {
    ...readings,
    refrigerant,
    place: resolveBarometer(input),
    highFrom: input.liquidPressure ? 'liquid-line' : 'discharge-line',
    sources,
    uncertain: Object.values(readings).some((reading) => reading?.plusMinus !== undefined),
  }
}

const kelvin = (fahrenheit: number) => quantity('temperature', fahrenheit, '°F').si
/** Colder and hotter than any place where a machine is serviced; hot air from an engine bay included. */
const AIR = [kelvin(-80), kelvin(180)] as const
/** Beyond any pipe of a machine that still runs. */
const PIPE = [kelvin(-150), kelvin(500)] as const
/** Nobody stands in air of a wet bulb above 95 °F for long; below freezing there is no cooling load. */
const WET_BULB = [kelvin(32), kelvin(95)] as const

/** @throws {CalcError} `out-of-range` for a temperature that is a slip of the pen. */
function checkTemperatures(input: ReadingsInput): void {
  const fields = [
    ['suctionTemperature', PIPE, 'A pipe temperature'],
    ['liquidTemperature', PIPE, 'A pipe temperature'],
    ['dischargeTemperature', PIPE, 'A pipe temperature'],
    ['ambient', AIR, 'An air temperature'],
    ['outdoorDryBulb', AIR, 'An air temperature'],
    ['indoorWetBulb', WET_BULB, 'An indoor wet bulb'],
  ] as const
  for (const [field, [low, high], what] of fields) {
    const given = input[field]
    if (given) plausible(given, low, high, what, [field])
  }
}

function contactOf({ contactError }: ReadingsInput): number | undefined {
  if (contactError && contactError.si < 0) {
    throw new CalcError('out-of-range', 'A contact error is a size, without a sign.', {
      path: ['contactError'],
      hint: 'Write it like 3 °F or 2 K.',
    })
  }
  return contactError?.si
}
