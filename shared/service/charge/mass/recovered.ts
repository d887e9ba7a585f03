import data from '../../../../data/service/charge.json' with { type: 'json' }
import {
  difference,
  type Quantity,
  settle,
  surelyBelow,
  type Tied,
  tied,
} from '../../../quantity/index.ts'
import type { Setting } from '../space/setting.ts'
import type { ChargeJob } from './job.ts'
import { massOf } from './shown.ts'

interface Credited {
  readonly toAdd: Tied | undefined
  /** What is missing beyond the recovered mass, kg. */
  readonly lost?: Tied | undefined
  /** What another cylinder must give when all that was recovered goes back, kg. */
  readonly newRefrigerant?: Tied | undefined
  /** More came out than the opened part can have held: the shut-off let through, or the input is wrong. */
  readonly beyondHeld: boolean
}

/**
 * The recovered mass beside the mass to add.
 *
 * What a scale took out is certainly gone: where it is more than the section can have held by its
 * volume, the recovered mass goes back. In a full charge it tells how far the machine was from its
 * label.
 */
export function recoveredAgainst(
  { notes }: Setting,
  { toAdd, missing }: ChargeJob,
  recovered: Quantity<'mass'> | undefined,
  labelCharge: Quantity<'mass'> | undefined,
): Credited {
  if (!recovered || !toAdd) return { toAdd, beyondHeld: false }
  const out = tied(recovered, 'recovered mass')
  const warn = (code: keyof typeof data.warnings) =>
    notes.warnings.push({ code, message: data.warnings[code] })
  const fresh = difference(toAdd, out)
  const newRefrigerant = settle(fresh).si >= 0 ? fresh : undefined
  if (!missing) {
    const lost = labelCharge && difference(tied(labelCharge, 'label charge'), out)
    if (lost && surelyBelow(settle(lost), 0)) warn('was-overcharged')
    return {
      toAdd,
      lost: lost && settle(lost).si >= 0 ? lost : undefined,
      newRefrigerant,
      beyondHeld: false,
    }
  }
  const beyond = difference(missing, out)
  const settled = settle(beyond)
  notes.steps.push({
    what: 'Recovered mass beside what the opened part held',
    formula: 'mass held − mass recovered',
    values: { held: massOf(missing), recovered },
    gives: massOf(beyond),
  })
  if (settled.si >= 0) return { toAdd, lost: beyond, newRefrigerant, beyondHeld: false }
  const certain = surelyBelow(settled, 0)
  warn(certain ? 'recovered-more-than-held' : 'recovered-about-as-held')
  // The estimate was too low by what came out beyond it.
  return { toAdd: difference(toAdd, beyond), beyondHeld: certain }
}
