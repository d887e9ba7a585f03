import { CalcError } from '../errors.ts'
import { absolutePressure, type Quantity, show, temperature } from '../quantity/index.ts'
import type { Line, Refrigerant } from './refrigerant.ts'

function inBoth(quantity: Quantity): string {
  const { value, unit, also } = show(quantity, { units: 'both', precise: false })
  return also === undefined ? `${value} ${unit}` : `${value} ${unit} (${also.value} ${also.unit})`
}

/** A temperature for a message, in both systems of units. */
export const showK = (kelvin: number): string => inBoth(temperature(kelvin))
/** An absolute pressure for a message, in both systems of units. */
export const showPa = (pascal: number): string => inBoth(absolutePressure(pascal))

/** Why there is no saturation temperature at this absolute pressure. */
export function pressureRefusal(r: Refrigerant, line: Line, pressurePa: number): CalcError {
  const name = r.info.id
  const { fromPa, toPa } = r[line]
  if (!(pressurePa > 0)) {
    return new CalcError(
      'out-of-range',
      `${name} has no saturation temperature at ${pressurePa} Pa: absolute pressure is above zero.`,
      { hint: 'Check the gauge reading and the barometric pressure.' },
    )
  }
  if (pressurePa >= r.criticalPressurePa) {
    return new CalcError(
      'above-critical',
      `${name} does not condense at ${showPa(pressurePa)}: its critical pressure is ${showPa(r.criticalPressurePa)}.`,
      { hint: 'Above the critical pressure there is no saturation temperature to compare with.' },
    )
  }
  if (pressurePa > toPa) {
    return new CalcError(
      'out-of-range',
      `${showPa(pressurePa)} is too near ${name}'s critical pressure, ${showPa(r.criticalPressurePa)}.`,
      { hint: `Saturation is given up to ${showPa(toPa)}.` },
    )
  }
  if (r.startsAtTriplePoint) {
    return new CalcError(
      'below-triple',
      `${name} is solid, not liquid, at ${showPa(pressurePa)}: its triple point is ${showPa(fromPa)}.`,
      {
        hint: 'Liquid would freeze here; feed vapour until the pressure is above the triple point.',
      },
    )
  }
  return new CalcError(
    'out-of-range',
    `${showPa(pressurePa)} is below the range of ${name}'s saturation data, ${showPa(fromPa)}.`,
    { hint: `Saturation is given from ${showPa(fromPa)} to ${showPa(toPa)}.` },
  )
}

/** Why there is no saturation at this temperature. */
export function temperatureRefusal(r: Refrigerant, line: Line, temperatureK: number): CalcError {
  const name = r.info.id
  const { fromK, toK } = r[line]
  const range = `Saturation is given from ${showK(fromK)} to ${showK(toK)}.`
  if (!(temperatureK > 0)) {
    return new CalcError('out-of-range', `${temperatureK} K is not a temperature.`, { hint: range })
  }
  if (temperatureK >= r.criticalTemperatureK) {
    return new CalcError(
      'above-critical',
      `${name} does not condense at ${showK(temperatureK)}: its critical temperature is ${showK(r.criticalTemperatureK)}.`,
      { hint: range },
    )
  }
  if (temperatureK > toK) {
    return new CalcError(
      'out-of-range',
      `${showK(temperatureK)} is too near ${name}'s critical temperature, ${showK(r.criticalTemperatureK)}.`,
      { hint: range },
    )
  }
  if (r.startsAtTriplePoint) {
    return new CalcError(
      'below-triple',
      `${name} is solid at ${showK(temperatureK)}: its triple point is ${showK(fromK)}.`,
      { hint: range },
    )
  }
  return new CalcError(
    'out-of-range',
    `${showK(temperatureK)} is below the range of ${name}'s saturation data, ${showK(fromK)}.`,
    { hint: range },
  )
}
