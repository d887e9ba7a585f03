import { CalcError } from '../errors.ts'
import { TRADE_BOUNDS } from './bounds.ts'
import { KIND_NAMES, type Kind } from './kinds.ts'
import type { Quantity } from './quantity.ts'
import { wouldDo } from './unit-refusal.ts'

/** Kinds that are nothing below zero; of these a temperature and an absolute pressure cannot even be zero. */
const NEVER_NEGATIVE: ReadonlySet<Kind> = new Set<Kind>([
  'temperature',
  'absolutePressure',
  'barometricPressure',
  'mass',
  'volume',
  'length',
  'duration',
  'density',
  'massPerLength',
  'volumeFlow',
  'massFlow',
  'leakRate',
  'power',
  'fraction',
])
const ALWAYS_POSITIVE: ReadonlySet<Kind> = new Set<Kind>([
  'temperature',
  'absolutePressure',
  'barometricPressure',
])

/**
 * Hands `read` through.
 *
 * @throws {CalcError} `out-of-range` for what cannot exist, such as 0 K or a negative length;
 *   `ambiguous-quantity` for a vacuum reading with a minus, which means the vacuum without it as a
 *   rule and would be a pressure by the letter; `bad-quantity` for a figure or a ± that no trade meets.
 */
export function physical<K extends Kind>(read: Quantity<K>, text: string): Quantity<K> {
  if (read.kind === 'gaugePressure' && read.si > 0 && /^\s*[-−]/u.test(text)) {
    throw new CalcError(
      'ambiguous-quantity',
      `"${text}" counts downward twice: by the minus and as a vacuum reading.`,
      {
        hint: 'Write a vacuum without the minus, such as 5 inHg vac, or as a gauge reading: -5 inHg g.',
      },
    )
  }
  const impossible =
    (NEVER_NEGATIVE.has(read.kind) && read.si < 0) ||
    (ALWAYS_POSITIVE.has(read.kind) && read.si === 0)
  if (impossible) {
    const floor = read.kind === 'temperature' ? 'absolute zero' : 'zero'
    const relation = ALWAYS_POSITIVE.has(read.kind) ? `at or below ${floor}` : 'below zero'
    throw new CalcError(
      'out-of-range',
      `"${text}" is ${relation}, which ${KIND_NAMES[read.kind].name} cannot be.`,
      {
        hint: wouldDo([read.kind]),
      },
    )
  }
  const [low, high] = TRADE_BOUNDS[read.kind]
  const widest = Math.max(Math.abs(low), Math.abs(high))
  if (read.si < low || read.si > high || (read.plusMinus ?? 0) > widest) {
    throw new CalcError('bad-quantity', `"${text}" is not one that the trade meets.`, {
      hint: 'Check the number, its unit and its ±.',
    })
  }
  return read
}
