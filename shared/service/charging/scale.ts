import * as z from 'zod'
import { CalcError } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import {
  fromLimits,
  mass,
  propagate,
  type Quantity,
  quantityOut,
  say,
  type Uncertain,
} from '../../quantity/index.ts'
import { shopScale } from '../shop-scale.ts'
import type { Amount } from './amounts.ts'
import type { ChargingInput } from './fields.ts'

export const scaleOut = z.strictObject({
  stop: quantityOut.optional().describe('Reading at which to close the valve'),
  earliest: quantityOut.optional().describe('Reading from which the charge is within tolerance'),
  latest: quantityOut.optional().describe('Reading beyond which the charge is out of tolerance'),
  change: quantityOut.describe('By how much the reading changes; negative when it falls'),
  verdict: z
    .enum(['fine-enough', 'too-coarse'])
    .describe('Whether the scale resolves the tolerance of the charge'),
})

type ScaleResult = Computed<z.output<typeof scaleOut>>

/**
 * Scale readings to start and to stop at.
 *
 * Under the source the reading falls by what leaves it, the hose's hold-up included; under the machine it
 * rises by what goes in.
 *
 * @param holdUp - What leaves the source and stays in the hose, kg; negative when the hose gives some back.
 * @throws {CalcError} `bad-input` when less stands on the scale than must leave it.
 */
export function scaleReadings(
  { toAdd, tolerance }: Amount,
  holdUp: Uncertain,
  input: ChargingInput,
  notes: Notes,
): ScaleResult {
  const underSource = input.scale === 'under-source'
  const change = underSource
    ? propagate([toAdd, holdUp], (add = 0, kept = 0) => -(add + kept))
    : toAdd
  const verdict = resolves(tolerance, input, notes)
  const { scaleStart: start } = input
  const shownChange = mass(change.si, change.plusMinus)
  if (!start) return { change: shownChange, verdict }
  const stopKg = start.si + change.si
  if (stopKg < 0) {
    throw new CalcError(
      'bad-input',
      `The scale shows ${say(start)}, less than the ${say(mass(-change.si))} that must leave it.`,
      {
        hint: 'Do not zero the scale with the cylinder on it, or use a fuller one.',
        path: ['scaleStart'],
      },
    )
  }
  // A reading to set, not a measurement: the scale's own error cancels between start and stop.
  const stop = mass(stopKg)
  notes.steps.push({
    what: 'Scale reading to stop at',
    formula: underSource
      ? 'reading at the start − mass to add − hold-up of the hose'
      : 'reading at the start + mass to add',
    values: { start, toAdd, holdUp: mass(holdUp.si, holdUp.plusMinus) },
    gives: stop,
  })
  const sign = underSource ? -1 : 1
  return {
    stop,
    earliest: mass(Math.max(stopKg - sign * tolerance.si, 0)),
    latest: mass(Math.max(stopKg + sign * tolerance.si, 0)),
    change: shownChange,
    verdict,
  }
}

/** Whether the difference of two readings of this scale is known better than the charge may be off. */
function resolves(
  tolerance: Quantity<'mass'>,
  { scaleStart, scaleDivision, scaleTolerance, labelCharge }: ChargingInput,
  notes: Notes,
): ScaleResult['verdict'] {
  const own = scaleTolerance?.si ?? scaleStart?.plusMinus
  const division = scaleDivision ? fromLimits(scaleDivision.si / 2) : 0
  const one = own ?? (scaleDivision ? 0 : shopScale(scaleStart ?? labelCharge, notes))
  const width = Math.SQRT2 * Math.hypot(one, division)
  if (width <= tolerance.si) return 'fine-enough'
  notes.warnings.push({
    code: 'scale-too-coarse',
    message: `The difference of two readings of this scale is uncertain by ±${say(mass(width))}, more than the tolerance of ${say(tolerance)}: use a finer scale.`,
  })
  return 'too-coarse'
}
