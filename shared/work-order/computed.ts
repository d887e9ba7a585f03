import * as z from 'zod'
import type { Computed } from '../operation.ts'
import { rulesOut } from '../rules/shown.ts'
import { ACTIONS } from '../rules/types.ts'
import { charge } from '../service/charge.ts'
import { charging } from '../service/charging.ts'
import { coolingCheck } from '../service/cooling-check.ts'
import { diagnose } from '../service/diagnose.ts'
import { evacuation } from '../service/evacuation.ts'
import { leakTest } from '../service/leak-test.ts'
import { oil } from '../service/oil.ts'
import { readings } from '../service/readings.ts'
import { recovery } from '../service/recovery.ts'
import type { Outcomes } from './run.ts'
import type { Outcome } from './section.ts'

export const computedOut = z.strictObject({
  rules: z.array(z.strictObject({ action: z.enum(ACTIONS), result: rulesOut })),
  readingsBefore: readings.result.optional(),
  readings: readings.result.optional(),
  diagnosis: diagnose.result.optional(),
  recovery: recovery.result.optional(),
  charge: charge.result.optional(),
  oil: oil.result.optional(),
  leakTest: leakTest.result.optional(),
  evacuation: evacuation.result.optional(),
  charging: charging.result.optional(),
  cooling: coolingCheck.result.optional(),
})

export type ComputedParts = Computed<z.output<typeof computedOut>>

/** The results of the steps that could be computed. */
export function computedOf({ rules, ...others }: Outcomes): ComputedParts {
  return {
    rules: ACTIONS.flatMap((action) => {
      const outcome = rules[action]
      return outcome?.state === 'done' ? [{ action, result: outcome.computation.result }] : []
    }),
    readingsBefore: resultOf(others.readingsBefore),
    readings: resultOf(others.readings),
    diagnosis: resultOf(others.diagnosis),
    recovery: resultOf(others.recovery),
    charge: resultOf(others.charge),
    oil: resultOf(others.oil),
    leakTest: resultOf(others.leakTest),
    evacuation: resultOf(others.evacuation),
    charging: resultOf(others.charging),
    cooling: resultOf(others.cooling),
  }
}

const resultOf = <R>(outcome: Outcome<R>): R | undefined =>
  outcome.state === 'done' ? outcome.computation.result : undefined
