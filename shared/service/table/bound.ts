import * as z from 'zod'
import { CalcError } from '../../errors.ts'
import {
  addCalcIssue,
  KIND_NAMES,
  type Kind,
  readQuantity,
  requireUnit,
} from '../../quantity/index.ts'

/** An end or the step of a table: the figure, in the unit that it was written in. */
export interface Bound<K extends Kind = Kind> {
  readonly kind: K
  /** In `unit`. */
  readonly value: number
  readonly unit: string
}

const AMOUNT = /^[+\-−–﹣－]?\s*(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?\s*/iu

function readBound<K extends Kind>(raw: unknown, accepted: readonly [K, ...K[]]): Bound<K> {
  const read = readQuantity(raw, accepted)
  if (read.plusMinus !== undefined) {
    throw new CalcError('bad-quantity', 'An end or a step of a table carries no uncertainty.', {
      hint: 'Leave out the ± and what follows it.',
    })
  }
  const written =
    typeof raw === 'string' ? raw.trim().replace(AMOUNT, '') : (raw as { unit: string }).unit
  const { symbol } = requireUnit(read.kind, written)
  return { kind: read.kind, value: Number(read.to(symbol).toPrecision(12)), unit: symbol }
}

/** Input schema like those of `quantityIn`, which keeps the unit that the user wrote. */
export const boundIn = <K extends Kind>(id: string, what: string, accepted: readonly [K, ...K[]]) =>
  z
    .unknown()
    .meta({
      id,
      description: `${what}: text with its unit, or an object with value and unit. A bare number is refused.`,
      anyOf: [
        { type: 'string', minLength: 1, maxLength: 80 },
        {
          type: 'object',
          properties: { value: { type: 'number' }, unit: { type: 'string' } },
          required: ['value', 'unit'],
          additionalProperties: false,
        },
      ],
      examples: accepted.flatMap((kind) => KIND_NAMES[kind].examples),
    })
    .transform((raw, context): Bound<K> => {
      try {
        return readBound(raw, accepted)
      } catch (error) {
        if (!(error instanceof CalcError)) throw error
        addCalcIssue(context, error)
        return z.NEVER
      }
    })
