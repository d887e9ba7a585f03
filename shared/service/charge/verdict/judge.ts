import {
  atWorst,
  type Budget,
  highest,
  lowest,
  settle,
  type Tied,
  total,
  type Uncertain,
} from '../../../quantity/index.ts'
import type { ChargeTolerance } from '../../charge-tolerance.ts'
import { chargeToleranceOf } from '../../charge-tolerance.ts'
import type { ChargeInput } from '../input/fields.ts'
import { type ChargeJob, negative } from '../mass/job.ts'
import { recoveredAgainst } from '../mass/recovered.ts'
import { serviceHoseHoldUp } from '../mass/service-hose.ts'
import { massOf } from '../mass/shown.ts'
import type { Setting } from '../space/setting.ts'
import {
  type AgainstCharge,
  againstCharge,
  type BoundVerdict,
  boundAgainst,
  settledBy,
} from './against-charge.ts'
import { type AgainstScale, againstScale } from './against-scale.ts'

/** What the computed masses come to. */
export interface Judgement {
  readonly tolerance: ChargeTolerance | undefined
  readonly toAdd: Tied | undefined
  readonly lost: Tied | undefined
  readonly newRefrigerant: Tied | undefined
  readonly beyondHeld: boolean
  readonly charge: AgainstCharge | undefined
  readonly settles: string | undefined
  readonly bound: { readonly mostKg: number; readonly verdict: BoundVerdict } | undefined
  readonly scale: AgainstScale | undefined
  readonly holdUp: Tied | undefined
  /** Whether it may all stay as it is: then no figure for the scale is given. */
  readonly nothingToAdd: boolean
  readonly onScale: Tied | undefined
}

/** Holds what is missing against the charge, the scale and the hose. */
export function judge(setting: Setting, input: ChargeInput, job: ChargeJob): Judgement {
  const { notes } = setting
  const credited = recoveredAgainst(setting, job, input.recovered, input.labelCharge)
  const { toAdd } = credited
  const missing = missingOf(job)
  const tolerance =
    missing || job.range
      ? chargeToleranceOf(input.chargeTolerance, input.labelCharge, notes)
      : undefined
  const charge = missing && tolerance && againstCharge(missing, tolerance)
  const bound = boundOf(job, tolerance)
  const scale = toAdd && againstScale(settle(toAdd), input, notes)
  const spare = job.kind === 'correction' && charge === 'inside' && !credited.beyondHeld
  const nothingToAdd = spare && (bound === undefined || bound.verdict === 'inside')
  const weighed = nothingToAdd ? undefined : toAdd
  const holdUp = weighed && serviceHoseHoldUp(setting, input)
  const onScale = weighed && (holdUp ? total([weighed, holdUp]) : weighed)
  if (onScale && settle(onScale).si < 0) throw negative('The mass to set on the scale', 'massToAdd')
  if (onScale && holdUp && toAdd) {
    notes.steps.push({
      what: 'Mass to set on the scale',
      formula: 'mass to add + what stays in the service hose',
      values: { 'mass to add': massOf(toAdd), 'in the hose': massOf(holdUp) },
      gives: massOf(onScale),
    })
  }
  return {
    tolerance,
    toAdd,
    lost: credited.lost,
    newRefrigerant: credited.newRefrigerant,
    beyondHeld: credited.beyondHeld,
    charge,
    settles:
      charge === 'cannot-tell' && job.missing && tolerance
        ? settledBy(settle(job.missing), tolerance)
        : "the couplings' own spill volume",
    bound,
    scale,
    holdUp,
    nothingToAdd,
    onScale,
  }
}

/** What has left the machine; a what-if stands for the middle of its range and half its width. */
function missingOf({ kind, missing, range }: ChargeJob): Uncertain | Budget | undefined {
  if (kind !== 'what-if' || !range) return missing && settle(missing)
  const from = Math.max(0, lowest(settle(range.from)))
  const to = highest(settle(range.to))
  return { si: (from + to) / 2, plusMinus: (to - from) / 2 }
}

/**
 * Most that bounded couplings can have lost: alone, everything that can be gone; beside a section,
 * what they can have lost beyond what is known.
 */
function boundOf({ kind, range, couplings }: ChargeJob, tolerance: ChargeTolerance | undefined) {
  if (!range || !tolerance || kind === 'what-if') return undefined
  const most = settle(
    kind === 'bound'
      ? range.to
      : total(
          couplings.filter(({ least, most: dense }) => least !== dense).map(({ most: m }) => m),
        ),
  )
  const mostKg = atWorst(most)
  return { mostKg, verdict: boundAgainst(mostKg, tolerance) }
}
