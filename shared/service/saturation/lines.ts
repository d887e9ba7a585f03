import { CalcError, under } from '../../errors.ts'
import type { Place } from '../../instrument/index.ts'
import {
  absolutePressure,
  density,
  type PressureReading,
  propagate,
  type Quantity,
  temperature,
  toAbsolute,
} from '../../quantity/index.ts'
import {
  type Line,
  latentHeat,
  type Refrigerant,
  saturatedDensity,
  saturationPressure,
  saturationTemperature,
} from '../../refrigerant/index.ts'

/** One end of boiling. */
export interface LinePoint {
  readonly line: Line
  readonly temperature: Quantity<'temperature'>
  readonly pressure: Quantity<'absolutePressure'>
  readonly density: Quantity<'density'>
}

/** Both ends of boiling at one reading; the same line for a pure substance. */
export interface BothLines {
  readonly bubble: LinePoint
  readonly dew: LinePoint
  readonly glideK: number
  readonly latentHeat: number
}

/** What the user gave: exactly one of them. */
export interface Given {
  readonly pressure?: PressureReading | undefined
  readonly temperature?: Quantity<'temperature'> | undefined
}

/** @throws {CalcError} outside the refrigerant's range, with the path of what was given. */
export function linesOf(r: Refrigerant, { pressure, temperature: given }: Given, place: Place) {
  if (pressure) {
    return under('pressure', () => {
      const atPa = toAbsolute(pressure, place.barometerPa)
      return finish(r, (line) => atPressure(r, line, atPa))
    })
  }
  if (given) return under('temperature', () => finish(r, (line) => atTemperature(r, line, given)))
  throw new CalcError('missing-input', 'Neither a pressure nor a temperature is given.', {
    path: ['pressure'],
    hint: 'Give a pressure such as 70 psig, or a temperature such as 40 °F.',
  })
}

function finish(r: Refrigerant, point: (line: Line) => LinePoint): BothLines {
  const bubble = point('bubble')
  const dew = point('dew')
  const pressurePa = bubble.pressure.si
  const dewK = saturationTemperature(r, pressurePa, 'dew')
  const bubbleK = saturationTemperature(r, pressurePa, 'bubble')
  return {
    bubble,
    dew,
    glideK: r.info.kind === 'pure' ? 0 : Math.max(0, dewK - bubbleK),
    latentHeat: latentHeat(r, pressurePa),
  }
}

function atPressure(r: Refrigerant, line: Line, pressure: Quantity<'absolutePressure'>): LinePoint {
  const found = propagate([pressure], (pressurePa) => saturationTemperature(r, pressurePa, line))
  return {
    line,
    temperature: temperature(found.si, found.plusMinus),
    pressure,
    density: densityFrom([pressure], (pressurePa) =>
      saturatedDensity(r, saturationTemperature(r, pressurePa, line), phaseOf(line)),
    ),
  }
}

const phaseOf = (line: Line) => (line === 'bubble' ? 'liquid' : 'vapour')

/** A density is known no better than the reading that it is of. */
function densityFrom(reading: readonly Quantity[], of: (si: number) => number) {
  const { si, plusMinus } = propagate(reading, of)
  return density(si, plusMinus)
}

function atTemperature(r: Refrigerant, line: Line, given: Quantity<'temperature'>): LinePoint {
  const found = propagate([given], (temperatureK) => saturationPressure(r, temperatureK, line))
  return {
    line,
    temperature: given,
    pressure: absolutePressure(found.si, found.plusMinus),
    density: densityFrom([given], (kelvin) => saturatedDensity(r, kelvin, phaseOf(line))),
  }
}
