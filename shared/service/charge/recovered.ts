import type { Step, Warning } from '../../operation.ts'
import type { Quantity } from '../../quantity/index.ts'
import { difference, type Estimate, reading, settle } from './estimate.ts'
import { massQuantity } from './inventory.ts'
import type { Job } from './job.ts'

interface Credited {
  readonly toAdd: Estimate | undefined
  /** What is missing beyond the recovered mass, kg. */
  readonly lost: Estimate | undefined
  /** What another cylinder must give when all that was recovered goes back, kg. */
  readonly newRefrigerant: Estimate | undefined
  /** More came out than the opened part can have held: the shut-off let through, or the input is wrong. */
  readonly beyondHeld: boolean
  readonly steps: readonly Step[]
  readonly warnings: readonly Warning[]
}

/**
 * The recovered mass beside the mass to add.
 *
 * What a scale took out is certainly gone: where it is more than the section can have held by its
 * volume, the recovered mass goes back. In a full charge it tells how far the machine was from its
 * label.
 */
export function recoveredAgainst(
  job: Job,
  recovered: Quantity<'mass'> | undefined,
  labelCharge: Quantity<'mass'> | undefined,
): Credited {
  const { toAdd, missing } = job
  const nothing = {
    toAdd,
    lost: undefined,
    newRefrigerant: undefined,
    beyondHeld: false,
    steps: [],
    warnings: [],
  }
  if (!recovered || !toAdd) return nothing
  const out = reading(recovered)
  if (!missing) return fullCharge(toAdd, out, labelCharge)
  const beyond = difference(missing, out)
  const { si, plusMinus } = settle(beyond)
  if (si >= 0) {
    const fresh = difference(toAdd, out)
    return {
      toAdd,
      lost: beyond,
      newRefrigerant: settle(fresh).si >= 0 ? fresh : undefined,
      beyondHeld: false,
      steps: [balance(missing, out, beyond)],
      warnings: [],
    }
  }
  const certain = si + (plusMinus ?? 0) < 0
  return {
    // The estimate was too low by what came out beyond it.
    toAdd: difference(toAdd, beyond),
    lost: undefined,
    newRefrigerant: undefined,
    beyondHeld: certain,
    steps: [balance(missing, out, beyond)],
    warnings: [
      {
        code: certain ? 'recovered-more-than-held' : 'recovered-about-as-held',
        message: certain
          ? 'More was recovered than the opened part can have held: the shut-off let refrigerant through, or volume or state is wrong. The recovered mass was taken; better recover the rest, evacuate and weigh in the full charge.'
          : 'The recovered mass is a little above the estimate, within its band; the recovered mass was taken.',
      },
    ],
  }
}

function fullCharge(
  toAdd: Estimate,
  out: Estimate,
  labelCharge: Quantity<'mass'> | undefined,
): Credited {
  const fresh = difference(toAdd, out)
  const enough = settle(fresh).si < 0
  const lost = labelCharge && difference(reading(labelCharge), out)
  const settled = lost && settle(lost)
  const over = settled !== undefined && settled.si + (settled.plusMinus ?? 0) < 0
  return {
    toAdd,
    lost: settled && settled.si >= 0 ? lost : undefined,
    newRefrigerant: enough ? undefined : fresh,
    beyondHeld: false,
    steps: [],
    warnings: over
      ? [
          {
            code: 'was-overcharged',
            message:
              'More was recovered than the label charge: the machine was overcharged, held something else, or the recovery scale counted oil. Weigh in the label charge all the same.',
          },
        ]
      : [],
  }
}

const balance = (missing: Estimate, out: Estimate, beyond: Estimate): Step => ({
  what: 'Recovered mass beside what the opened part held',
  formula: 'mass held − mass recovered',
  values: { held: massQuantity(missing), recovered: massQuantity(out) },
  gives: massQuantity(beyond),
})
