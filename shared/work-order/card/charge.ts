import { Blank } from '../../answer/sentence.ts'
import type { Outcomes } from '../run.ts'
import { type WentIn, wentIn } from '../went-in.ts'
import { asking, type Build, isAnswered, onPaper, outcomeLines } from './built.ts'
import { oneOf, says, task, written } from './lines.ts'
import type { Line } from './schema.ts'

/** How much goes in, and what went in. */
export const charge: Build = (input, outcomes) => {
  const { charging, record, labelCharge } = input
  const lines = [
    ...outcomeLines(outcomes.charge),
    ...((labelCharge ?? input.charge?.labelCharge) ? [] : [oneOf('find-charge')]),
    ...(needsBound(outcomes) ? [oneOf('bound')] : []),
    ...outcomeLines(outcomes.charging),
  ]
  if (nothingToAdd(outcomes) && !record?.charged) return onPaper(...lines)
  const found = wentIn(input, outcomes)
  const values = { charged: written(record?.charged, 'mass') }
  return asking(
    'charge',
    [
      ...lines,
      ...(charging?.scaleStart ? [] : [task('scale', { start: new Blank('mass') })]),
      task('went-in', values),
      ...(found ? [against(found)] : []),
    ],
    values,
    found?.verdict === 'inside' &&
      isAnswered(outcomes.charge) &&
      (outcomes.charging.state === 'absent' || isAnswered(outcomes.charging)),
  )
}

/** A tenth of an ounce: finer than that nobody weighs. */
const STEP_KG = 0.0028

function against({ verdict, allowed, off: size, less }: WentIn): Line {
  const off = { value: size, step: STEP_KG }
  if (verdict === 'inside') return says('inside', { allowed })
  if (verdict === 'about') return says('about', { off })
  return says(less ? 'outside-less' : 'outside-more', { off })
}

/** Couplings of which nothing or too little is known. */
const needsBound = ({ charge: outcome }: Outcomes): boolean => {
  if (outcome.state !== 'done') return false
  const { kind, bound } = outcome.computation.result
  return kind === 'measure' || kind === 'what-if' || bound?.verdict === 'too-loose'
}

/** Inside the tolerance of the charge, or not known to be missing: nothing is weighed in. */
const nothingToAdd = ({ charge: outcome }: Outcomes): boolean =>
  outcome.state === 'done' && outcome.computation.result.setOnScale === undefined
