import { CalcError } from '../../errors.ts'
import { propagate, type Quantity } from '../../quantity/index.ts'

/** What a reading says when it is moved within its uncertainty. */
type Reader = (reading: Quantity) => number

/**
 * A figure still tied to the readings it comes from.
 *
 * Two figures that rest on one reading (one thermometer for both lines) move together when it is
 * off, so the uncertainty of their sum is not that of independent figures.
 */
export interface Estimate {
  readonly readings: readonly Quantity[]
  at(read: Reader): number
}

/** A figure without uncertainty. */
export const exactly = (value: number): Estimate => ({ readings: [], at: () => value })

/** A reading as it is, SI. */
export const reading = (quantity: Quantity): Estimate => ({
  readings: [quantity],
  at: (read) => read(quantity),
})

/** A figure made of others. */
export function combine(
  parts: readonly Estimate[],
  f: (values: readonly number[]) => number,
): Estimate {
  return {
    readings: parts.flatMap((part) => part.readings),
    at: (read) => f(parts.map((part) => part.at(read))),
  }
}

/** Sum of figures of one unit; 0 for none. */
export const total = (parts: readonly Estimate[]) =>
  combine(parts, (values) => values.reduce((sum, value) => sum + value, 0))

/** Product of figures. */
export const product = (...parts: readonly Estimate[]) =>
  combine(parts, (values) => values.reduce((sum, value) => sum * value, 1))

/** The first figure less the second. */
export const difference = (a: Estimate, b: Estimate) => combine([a, b], ([x = 0, y = 0]) => x - y)

/** A figure times a plain number. */
export const times = (factor: number, estimate: Estimate) =>
  combine([estimate], ([value = 0]) => factor * value)

/** The figure and its expanded uncertainty (coverage factor 2); undefined when no reading carries one. */
export function settle(estimate: Estimate): {
  readonly si: number
  readonly plusMinus: number | undefined
} {
  const uncertain = [...new Set(estimate.readings)].filter(({ plusMinus }) => plusMinus)
  const settled = propagate(uncertain, (...values) => {
    const moved = new Map(uncertain.map((quantity, index) => [quantity, values[index]]))
    return estimate.at((quantity) => moved.get(quantity) ?? quantity.si)
  })
  if (!Number.isFinite(settled.si) || !Number.isFinite(settled.plusMinus ?? 0)) {
    throw new CalcError('out-of-range', 'A mass or a volume comes out larger than any number.', {
      hint: 'Check the volumes, lengths and bores, and what stands behind their ±.',
    })
  }
  return settled
}
