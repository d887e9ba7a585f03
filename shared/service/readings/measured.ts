import { CalcError } from '../../errors.ts'
import { type Place, reader, resolvePlace } from '../../instrument/index.ts'
import { type Notes, newNotes } from '../../notes.ts'
import { type PressureReading, type Quantity, quantity } from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { plausible } from '../plausible.ts'
import type { ReadingsInput } from './fields.ts'

type Temperature = Quantity<'temperature'> | undefined

/** Readings, each with the uncertainty of its instrument. */
export interface Measured {
  readonly refrigerant: Refrigerant
  readonly place: Place
  readonly suctionPressure: PressureReading | undefined
  /** Liquid-line pressure where there is one, else the discharge pressure. */
  readonly highPressure: PressureReading | undefined
  readonly highFrom: 'liquid-line' | 'discharge-line'
  readonly dischargePressure: PressureReading | undefined
  readonly suctionTemperature: Temperature
  readonly liquidTemperature: Temperature
  readonly dischargeTemperature: Temperature
  readonly ambient: Temperature
  readonly returnWetBulb: Temperature
  /** What was assumed about the instruments, and the sources of their classes and defaults. */
  readonly notes: Pick<Notes, 'assumptions' | 'sources'>
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
  const notes = newNotes()
  const take = reader(input, notes)
  const pipe = (field: 'suctionTemperature' | 'liquidTemperature' | 'dischargeTemperature') =>
    take(input[field], 'pipe-probe', field)
  const dischargePressure = take(input.dischargePressure, 'high-side-gauge', 'dischargePressure')
  return {
    suctionPressure: take(
      input.suctionPressure,
      // A pressure beyond the low-side gauge, such as that of R-744, was read on another.
      input.lowGauge === undefined ? 'a-gauge' : 'low-side-gauge',
      'suctionPressure',
    ),
    highPressure:
      take(input.liquidPressure, 'high-side-gauge', 'liquidPressure') ?? dischargePressure,
    dischargePressure,
    suctionTemperature: pipe('suctionTemperature'),
    liquidTemperature: pipe('liquidTemperature'),
    dischargeTemperature: pipe('dischargeTemperature'),
    ambient: take(input.ambient, 'thermometer', 'ambient'),
    returnWetBulb: take(input.returnWetBulb, 'thermometer', 'returnWetBulb'),
    refrigerant,
    place: resolvePlace(input),
    highFrom: input.liquidPressure ? 'liquid-line' : 'discharge-line',
    notes,
  }
}

const kelvin = (fahrenheit: number) => quantity('temperature', fahrenheit, '°F').si
/** Colder and hotter than any place where a machine is serviced; hot air from an engine bay included. */
const AIR = [kelvin(-80), kelvin(180)] as const
/** Beyond any pipe of a machine that still runs. */
const PIPE = [kelvin(-150), kelvin(500)] as const
/** Nobody stands in air of a wet bulb above 95 °F for long; below freezing there is no cooling load. */
const WET_BULB = [kelvin(32), kelvin(95)] as const

const TEMPERATURES = [
  ['suctionTemperature', PIPE, 'A pipe temperature'],
  ['liquidTemperature', PIPE, 'A pipe temperature'],
  ['dischargeTemperature', PIPE, 'A pipe temperature'],
  ['ambient', AIR, 'An air temperature'],
  ['returnWetBulb', WET_BULB, 'A wet bulb'],
] as const

/** @throws {CalcError} `out-of-range` for a temperature that is a slip of the pen. */
function checkTemperatures(input: ReadingsInput): void {
  for (const [field, [low, high], what] of TEMPERATURES) {
    const given = input[field]
    if (given) plausible(given, low, high, what, [field])
  }
}
