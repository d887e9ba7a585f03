import { figureText } from '../../answer/figure-text.ts'
import { type Kind, Quantity, requireUnit } from '../../quantity/index.ts'
import { CHOICES } from '../../quantity/shown-units.ts'
import { TIGHT } from './node.ts'

/** A unit along an axis. */
export interface Measure {
  readonly kind: Kind
  readonly unit: string
  /** A value in SI in this unit. */
  of(si: number): number
  /** A value in this unit in SI. */
  si(value: number): number
}

/** The unit in which a figure of the size `si` is shown in a system. */
export const measureOf = (kind: Kind, system: 'us' | 'si', si: number): Measure =>
  measureIn(kind, CHOICES[kind][system](si).unit.symbol)

export function measureIn(kind: Kind, symbol: string): Measure {
  const { factor, offset } = requireUnit(kind, symbol)
  return {
    kind,
    unit: symbol,
    of: (si) => (si - offset) / factor,
    si: (value) => value * factor + offset,
  }
}

/** A figure in words, in one unit system, no finer than `step` (SI), that no line is broken within. */
export const inWords = (quantity: Quantity, system: 'us' | 'si', step?: number): string =>
  figureText({ value: quantity, step }, { units: system, precise: false }).replaceAll(' ', TIGHT)

/** The same of a plain value in SI. */
export const wordsOf = (kind: Kind, si: number, system: 'us' | 'si', plusMinus?: number): string =>
  inWords(new Quantity(kind, si, plusMinus), system)
