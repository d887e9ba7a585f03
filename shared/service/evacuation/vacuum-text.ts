import {
  absolutePressure,
  pressureDifference,
  type Quantity,
  type ShownValue,
  show,
} from '../../quantity/index.ts'

const shownIn = (given: Quantity, unit: string) =>
  show(given.in(unit), { units: 'us', precise: false, onScreen: true })

const three = (value: number) => Number(value.toPrecision(3))

const text = ({ value, plusMinus }: ShownValue, unit: string) =>
  plusMinus === undefined
    ? `${three(value)} ${unit}`
    : `${three(value)} ±${Number(plusMinus.toPrecision(2))} ${unit}`

/** A pressure in a vacuum inside a sentence, in the unit of its gauge and in SI: "405 micron (54 Pa)". */
export function vacuumText(pressurePa: number, plusMinusPa?: number): string {
  const given = absolutePressure(Math.max(pressurePa, Number.MIN_VALUE), plusMinusPa)
  return `${text(shownIn(given, 'micron'), 'micron')} (${text(shownIn(given, 'Pa abs'), 'Pa')})`
}

/** The same of a difference of two pressures. */
export function riseText(pressurePa: number, plusMinusPa?: number): string {
  const given = pressureDifference(pressurePa, plusMinusPa)
  return `${text(shownIn(given, 'micron'), 'micron')} (${text(shownIn(given, 'Pa'), 'Pa')})`
}
