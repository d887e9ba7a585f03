import { propagate, type Uncertain } from '../quantity/index.ts'
import type { AtRest, Settles } from './rest-types.ts'

type Parts = AtRest['parts']

/** Half-width that one input gives `f`, by moving it within its ±. */
export const spanOf = (input: Uncertain, f: (value: number) => number): number =>
  Math.abs(propagate([input], f).plusMinus ?? 0)

/** Half-width of the whole band: independent parts in quadrature (GUM 5.1.2). */
export const widthOf = (parts: Parts): number => Math.hypot(...Object.values(parts))

/** The largest part; `pressure` where there is none at all. */
export function mostOf(parts: Parts): Settles {
  const order: readonly Settles[] = ['pressure', 'temperature', 'contents', 'property']
  return order.reduce((most, next) => (parts[next] > parts[most] ? next : most))
}
