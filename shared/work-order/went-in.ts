import { newNotes } from '../notes.ts'
import { mass, type Quantity, say } from '../quantity/index.ts'
import { chargeToleranceOf } from '../service/charge-tolerance.ts'
import type { WorkOrderInput } from './input.ts'
import type { Outcomes } from './run.ts'

/** What went in against what should have. */
export interface WentIn {
  readonly verdict: 'inside' | 'about' | 'outside'
  readonly less: boolean
  /** What went in, less what should. */
  readonly difference: Quantity<'mass'>
  /** Size of that. */
  readonly off: Quantity<'mass'>
  /** What the charge may surely be off. */
  readonly allowed: Quantity<'mass'>
  readonly text: string
}

/**
 * Holds what went in against the tolerance of the charge: the maker's where it was given, else the
 * published one. Undefined while either mass is not known.
 */
export function wentIn(input: WorkOrderInput, { charge }: Outcomes): WentIn | undefined {
  const charged = input.record?.charged
  const toAdd = charge.state === 'done' ? charge.computation.result.massToAdd : undefined
  if (!charged || !toAdd) return undefined
  const band =
    toAdd.plusMinus === undefined && charged.plusMinus === undefined
      ? undefined
      : Math.hypot(toAdd.plusMinus ?? 0, charged.plusMinus ?? 0)
  const difference = mass(charged.si - toAdd.si, band)
  const { from, to } = chargeToleranceOf(
    input.charge?.chargeTolerance,
    input.labelCharge,
    newNotes(),
  )
  const size = Math.abs(difference.si)
  const verdict =
    size + (band ?? 0) <= from.si ? 'inside' : size - (band ?? 0) > to.si ? 'outside' : 'about'
  const less = difference.si < 0
  const off = mass(size)
  const allowed = from.si === to.si ? say(to) : `${say(from)} to ${say(to)}`
  const way = `${say(off)} ${less ? 'less' : 'more'} went in than should`
  const text = {
    inside: `What went in lies within the tolerance of the charge (${allowed}).`,
    outside: `${way}, outside the tolerance of the charge (${allowed}): recover, and weigh in anew.`,
    about: `${way}, about what the charge may be off (${allowed}): the maker's tolerance decides.`,
  }[verdict]
  return { verdict, less, difference, off, allowed: from, text }
}
