import { CalcError } from './errors.ts'
import { nearestNames } from './nearest.ts'
import type { Operation } from './operation.ts'
import { rules } from './rules/rules.ts'
import { airCheck } from './service/air-check.ts'
import { charge } from './service/charge.ts'
import { charging } from './service/charging.ts'
import { contamination } from './service/contamination.ts'
import { coolingCheck } from './service/cooling-check.ts'
import { diagnose } from './service/diagnose.ts'
import { evacuation } from './service/evacuation.ts'
import { fractionation } from './service/fractionation.ts'
import { leakTest } from './service/leak-test.ts'
import { lesson } from './service/lesson.ts'
import { oil } from './service/oil.ts'
import { readings } from './service/readings.ts'
import { recovery } from './service/recovery.ts'
import { retrofit } from './service/retrofit.ts'
import { saturation } from './service/saturation.ts'
import { simulate } from './service/simulate.ts'
import { table } from './service/table.ts'
import { workOrder } from './work-order/work-order.ts'

/** Everything the doors can call, in the order of a visit. */
export const operations: readonly Operation[] = [
  saturation,
  table,
  readings,
  diagnose,
  charge,
  oil,
  recovery,
  airCheck,
  contamination,
  rules,
  leakTest,
  fractionation,
  evacuation,
  charging,
  coolingCheck,
  retrofit,
  workOrder,
  simulate,
  lesson,
]

/** The operation of this name. @throws {CalcError} `unknown-name` with the nearest names. */
export function operation(name: string): Operation {
  const found = operations.find((entry) => entry.name === name)
  if (found) return found
  const names = operations.map((entry) => entry.name)
  const nearest = nearestNames(name, names)
  throw new CalcError('unknown-name', `There is no operation "${name.slice(0, 60)}".`, {
    path: ['operation'],
    hint:
      nearest.length > 0
        ? `Did you mean ${nearest.join(' or ')}?`
        : `There are: ${names.join(', ')}.`,
  })
}
