import { CalcError, under } from '../../errors.ts'
import type { Place } from '../../instrument/index.ts'
import { REFRIGERANT_DATA, type Saturating, saturating } from '../../physics/saturating.ts'
import {
  absolutePressure,
  budget,
  density,
  type PressureReading,
  type Quantity,
  temperature,
  type Uncertain,
  widthAround,
} from '../../quantity/index.ts'
import {
  densityUncertainty,
  glide,
  type Line,
  latentHeat,
  latentHeatBetween,
  propertyUncertainty,
  type Refrigerant,
  saturatedDensity,
  saturationPressure,
} from '../../refrigerant/index.ts'

/** One end of boiling. */
export interface LinePoint {
  readonly line: Line
  readonly temperature: Quantity<'temperature'>
  readonly pressure: Quantity<'absolutePressure'>
  readonly gauge: Quantity<'gaugePressure'>
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

/**
 * Saturation on both lines, with what the reading, the barometer and the refrigerant's data are worth.
 *
 * @throws {CalcError} outside the refrigerant's range, with the path of what was given.
 */
export function linesOf(r: Refrigerant, { pressure, temperature: given }: Given, place: Place) {
  if (pressure) return under('pressure', () => finish(r, atPressure(r, pressure, place)))
  if (given) return under('temperature', () => finish(r, atTemperature(r, given, place)))
  throw new CalcError('missing-input', 'Neither a pressure nor a temperature is given.', {
    path: ['pressure'],
    hint: 'Give a pressure such as 70 psig, or a temperature such as 40 °F.',
  })
}

function finish(r: Refrigerant, point: (line: Line) => LinePoint): BothLines {
  const bubble = point('bubble')
  const dew = point('dew')
  const pressurePa = bubble.pressure.si
  return {
    bubble,
    dew,
    glideK: r.info.kind === 'pure' ? 0 : glide(r, pressurePa),
    // Boiling at the pressure that was read, both temperatures are known.
    latentHeat:
      dew.pressure === bubble.pressure
        ? latentHeatBetween(r, bubble.temperature.si, dew.temperature.si)
        : latentHeat(r, pressurePa),
  }
}

const atPressure = (r: Refrigerant, reading: PressureReading, place: Place) => {
  const absolute = place.absolute(reading)
  const gauge =
    reading.kind === 'gaugePressure'
      ? (reading as Quantity<'gaugePressure'>).in(undefined)
      : place.gauge(reading.si, reading.plusMinus)
  const air = place.barometer.si
  const boils = (line: Line) => {
    const on: Saturating = saturating(r, reading, place.barometer, line)
    const at = on.temperatureK(reading.si, air, 0)
    const width = widthAround(on.ingredients, at, (moved, value) =>
      moved === 0
        ? on.temperatureK(value, air, 0)
        : moved === 1
          ? on.temperatureK(reading.si, value, 0)
          : on.temperatureK(reading.si, air, value),
    )
    return { on, found: temperature(at, width) }
  }
  const bubble = boils('bubble')
  return (line: Line): LinePoint => {
    // Both lines of one substance are the same.
    const { on, found } = line === 'bubble' || r.info.kind === 'pure' ? bubble : boils(line)
    return {
      line,
      temperature: found,
      pressure: absolute,
      gauge,
      density: densityOf(r, line, found.si, [reading, place.barometer], (moved, value) =>
        moved === 0 ? on.temperatureK(value, air, 0) : on.temperatureK(reading.si, value, 0),
      ),
    }
  }
}

const phaseOf = (line: Line) => (line === 'bubble' ? 'liquid' : 'vapour')

/**
 * A density is known no better than the reading that it is of, nor than the equation of state.
 *
 * @param readings - What the temperature rests on.
 * @param movedK - The temperature where one of them alone has another value.
 */
function densityOf(
  r: Refrigerant,
  line: Line,
  temperatureK: number,
  readings: readonly Uncertain[],
  movedK: (index: number, value: number) => number,
): Quantity<'density'> {
  const phase = phaseOf(line)
  const found = saturatedDensity(r, temperatureK, phase)
  const share = { si: 0, plusMinus: densityUncertainty(r, phase) }
  const width = widthAround([share, ...readings], found, (index, value) =>
    index === 0 ? found * (1 + value) : saturatedDensity(r, movedK(index - 1, value), phase),
  )
  return density(found, width)
}

const atTemperature =
  (r: Refrigerant, given: Quantity<'temperature'>, place: Place) =>
  (line: Line): LinePoint => {
    const reading = { name: 'temperature', si: given.si, plusMinus: given.plusMinus }
    const data = propertyUncertainty(r, given.si, line).pressure
    const share = { name: REFRIGERANT_DATA, si: 0, plusMinus: data }
    const { si, plusMinus } = budget(
      [reading, share],
      (kelvin = 0, off = 0) => saturationPressure(r, kelvin, line) * (1 + off),
    )
    return {
      line,
      temperature: given,
      pressure: absolutePressure(si, plusMinus),
      gauge: place.gauge(si, plusMinus),
      density: densityOf(r, line, given.si, [given], (_, kelvin) => kelvin),
    }
  }
