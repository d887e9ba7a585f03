import {
  absolutePressure,
  type Budget,
  budget,
  gaugePressure,
  type Ingredient,
  type PressureReading,
  toAbsolute,
} from '../quantity/index.ts'
import {
  type Line,
  propertyUncertainty,
  type Refrigerant,
  saturationTemperature,
} from '../refrigerant/index.ts'

/** What the equations and mixing rules themselves bring to a figure. */
export const REFRIGERANT_DATA = 'refrigerant data'

/** A blend condenses about the mean of its two lines. */
export type SaturationLine = Line | 'mean'

/** The saturation temperature of a pressure reading, and all that it rests on. */
export interface Saturating {
  /** The reading, the barometer and the refrigerant's own data, as `temperatureK` takes them. */
  readonly ingredients: readonly Ingredient[]
  /** K, of the reading (its own SI unit), the barometer (Pa) and an error of the data (K). */
  temperatureK(reading: number, barometerPa: number, dataK: number): number
}

/**
 * Ingredients of the saturation temperature of a reading, for figures that need more than it alone:
 * a superheat adds the pipe's temperature to them.
 *
 * @param barometer - That of the place, with its ±.
 * @throws {CalcError} outside the refrigerant's range, above its critical point among others.
 */
export function saturating(
  r: Refrigerant,
  reading: PressureReading,
  barometer: Ingredient,
  line: SaturationLine,
  name = 'pressure',
): Saturating {
  const boilsAt = remembered((pressurePa) => onLine(r, pressurePa, line))
  const temperatureK = (value: number, barometerPa: number, dataK: number) =>
    boilsAt(absolutePa(reading, value, barometerPa)) + dataK
  return {
    ingredients: [
      { name, si: reading.si, plusMinus: reading.plusMinus },
      barometer,
      {
        name: REFRIGERANT_DATA,
        si: 0,
        plusMinus: dataUncertaintyK(r, temperatureK(reading.si, barometer.si, 0), line),
      },
    ],
    temperatureK,
  }
}

/** More points than these are no budget's, and looking for them would cost as much as the curve. */
const MOST_POINTS = 8

/**
 * The same function, which knows its last points: budgets of all figures that rest on one reading
 * move it to the same few.
 */
function remembered(f: (value: number) => number): (value: number) => number {
  const values: number[] = []
  const found: number[] = []
  return (value) => {
    for (let point = 0; point < found.length; point += 1) {
      if (values[point] === value) return found[point] as number
    }
    const now = f(value)
    if (found.length < MOST_POINTS) {
      values.push(value)
      found.push(now)
    }
    return now
  }
}

/** Saturation temperature (K) of a reading with its budget; throws as {@link saturating} does. */
export function saturatedAt(
  r: Refrigerant,
  reading: PressureReading,
  barometer: Ingredient,
  line: SaturationLine,
  name?: string,
): Budget {
  return saturatedOn(saturating(r, reading, barometer, line, name))
}

/** The same of what is known of a reading on a line. */
export const saturatedOn = ({ ingredients, temperatureK }: Saturating): Budget =>
  budget(ingredients, (reading = 0, air = 0, data = 0) => temperatureK(reading, air, data))

/** Absolute pressure of a reading moved to `value`, Pa. @throws {CalcError} as {@link toAbsolute} */
export function absolutePa(reading: PressureReading, value: number, barometerPa: number): number {
  const pressurePa = reading.kind === 'gaugePressure' ? value + barometerPa : value
  // Asked for a dozen times a figure, and nearly always well above a vacuum.
  if (pressurePa > 0 && pressurePa < Number.POSITIVE_INFINITY) return pressurePa
  const moved = reading.kind === 'gaugePressure' ? gaugePressure(value) : absolutePressure(value)
  return toAbsolute(moved, barometerPa).si
}

function onLine(r: Refrigerant, pressurePa: number, line: SaturationLine): number {
  if (line !== 'mean') return saturationTemperature(r, pressurePa, line)
  const bubble = saturationTemperature(r, pressurePa, 'bubble')
  return r.info.kind === 'pure'
    ? bubble
    : (bubble + saturationTemperature(r, pressurePa, 'dew')) / 2
}

/** Errors of both lines have one origin: their mean is known no better than the worse of them. */
function dataUncertaintyK(r: Refrigerant, temperatureK: number, line: SaturationLine): number {
  const on = (one: Line) => propertyUncertainty(r, temperatureK, one).temperatureK
  return line === 'mean' ? Math.max(on('bubble'), on('dew')) : on(line)
}
