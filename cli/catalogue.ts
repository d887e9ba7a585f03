import type { Operation } from '../shared/operation.ts'
import { saturation } from '../shared/service/saturation.ts'

type Load = () => Promise<Operation>

/**
 * Where each calculation lies, so that a run loads the one that it is asked for and not all of them.
 * What is not here is found in the whole list, at the cost of time: a test asks for each one's line.
 */
const ALONE: Readonly<Record<string, Load>> = {
  // What it needs, every other needs too.
  saturation: async () => saturation,
  table: async () => (await import('../shared/service/table.ts')).table,
  readings: async () => (await import('../shared/service/readings.ts')).readings,
  diagnose: async () => (await import('../shared/service/diagnose.ts')).diagnose,
  charge: async () => (await import('../shared/service/charge.ts')).charge,
  oil: async () => (await import('../shared/service/oil.ts')).oil,
  recovery: async () => (await import('../shared/service/recovery.ts')).recovery,
  'air-check': async () => (await import('../shared/service/air-check.ts')).airCheck,
  contamination: async () => (await import('../shared/service/contamination.ts')).contamination,
  rules: async () => (await import('../shared/rules/rules.ts')).rules,
  'leak-test': async () => (await import('../shared/service/leak-test.ts')).leakTest,
  fractionation: async () => (await import('../shared/service/fractionation.ts')).fractionation,
  evacuation: async () => (await import('../shared/service/evacuation.ts')).evacuation,
  charging: async () => (await import('../shared/service/charging.ts')).charging,
  'cooling-check': async () => (await import('../shared/service/cooling-check.ts')).coolingCheck,
  retrofit: async () => (await import('../shared/service/retrofit.ts')).retrofit,
  'work-order': async () => (await import('../shared/work-order/work-order.ts')).workOrder,
  lesson: async () => (await import('../shared/service/lesson.ts')).lesson,
  simulate: async () => (await import('../shared/service/simulate.ts')).simulate,
}

/** Names that {@link operationsFor} loads alone. */
export const LOADED_ALONE: readonly string[] = Object.keys(ALONE)

/** The operation that a command line names, alone where it can be; else all of them. */
export async function operationsFor(argv: readonly string[]): Promise<readonly Operation[]> {
  const [name = ''] = argv
  const load = Object.hasOwn(ALONE, name) ? ALONE[name] : undefined
  if (load) return [await load()]
  return (await import('../shared/operations.ts')).operations
}
