import * as z from 'zod'
import { ARCHITECTURES, FAULT_KINDS } from '../../../cycle/index.ts'
import type { Cause } from '../../../diagnosis/hypotheses.ts'
import { DOUBTS } from '../../../diagnosis/mistakes.ts'
import { PATTERN_IDS } from '../../../diagnosis/patterns.ts'
import { type Priors, toThousandths } from '../../../diagnosis/posterior.ts'
import { quantityOut, temperatureDifference, type Uncertain } from '../../../quantity/index.ts'
import { findingOut } from '../../readings/findings.ts'
import { KNOWLEDGE } from '../input/kinds.ts'
import type { Inferred } from '../posterior/infer.ts'
import { VERDICTS } from './verdict.ts'

export const CAUSES = [
  'none',
  'reading-or-test-wrong',
  ...FAULT_KINDS,
] as const satisfies readonly Cause[]

const causeOut = z.enum(CAUSES)
const shareOut = z.number().min(0).max(1)

export const diagnoseOut = z.strictObject({
  refrigerant: z.string(),
  verdict: z
    .enum(VERDICTS)
    .describe(
      'fault: named; no-fault-shown; reading-or-test-wrong; cannot-tell: what is named may be it',
    ),
  named: z
    .array(causeOut)
    .describe('The cause, or those that these readings show alike, or those that may be it'),
  share: shareOut.describe('How likely the named ones are together'),
  causes: z
    .array(
      z.strictObject({
        cause: causeOut,
        share: shareOut.describe('How likely it is, by the machine model'),
        severity: z
          .number()
          .min(0)
          .max(1)
          .optional()
          .describe('How bad, where this is the cause: 1 is as far as such a fault goes'),
      }),
    )
    .describe('Every cause, the likeliest first; shares add up to 1'),
  classes: z
    .array(z.strictObject({ causes: z.array(causeOut), share: shareOut }))
    .describe('Causes that these readings cannot part, taken together'),
  doubted: z
    .array(z.strictObject({ what: z.enum(DOUBTS), share: shareOut }))
    .describe(
      'Where the reading or the test is wrong: which, the likeliest first; shares of all causes',
    ),
  nextSteps: z
    .array(
      z.strictObject({
        id: z.string(),
        what: z.string(),
        minutes: z.number().describe('What it takes'),
        gain: z.number().nonnegative().describe('What it is expected to tell, bit'),
      }),
    )
    .describe('What to read or to look at next, the best for its minutes first'),
  machine: z.strictObject({
    known: z.enum(KNOWLEDGE).describe('How well the machine is known'),
    kinds: z.array(z.enum(ARCHITECTURES)).describe('Kinds that it may be'),
  }),
  priors: z
    .array(z.strictObject({ cause: causeOut, share: shareOut }))
    .describe('How likely each was before anything was read'),
  observed: z.array(z.string()).describe('What went into it'),
  superheat: quantityOut.optional(),
  subcooling: quantityOut.optional(),
  condensingOverAmbient: quantityOut.optional(),
  patterns: z.array(z.enum(PATTERN_IDS)).describe('Published patterns that the readings show'),
  findings: z.array(findingOut).describe('What else the readings show, the most urgent first'),
})

export const differenceOf = (figure: Uncertain | undefined) =>
  figure && temperatureDifference(figure.si, figure.plusMinus)

/** Shares of the causes that these machines can have, before anything was read. */
export function priorsShown(priors: Priors | undefined, inferred: Inferred | undefined) {
  const causes = CAUSES.filter(
    (cause) => inferred?.posterior.causes.some((each) => each.cause === cause) ?? true,
  )
  const of = (cause: Cause) => (priors === undefined ? 1 : (priors[cause] ?? 0))
  const total = causes.reduce((sum, cause) => sum + of(cause), 0)
  return causes.map((cause) => ({ cause, share: toThousandths(of(cause) / total) }))
}
