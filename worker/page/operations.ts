import type { Operation } from '../../shared/operation.ts'
import { readings } from '../../shared/service/readings.ts'
import { saturation } from '../../shared/service/saturation.ts'

/**
 * Where each operation is loaded from: two come with the page, the others when they are first asked
 * for. Named one by one, so that each gets a file of its own; the list of all must not be imported here.
 */
const LOADERS = {
  saturation: async () => saturation,
  table: async () => (await import('../../shared/service/table.ts')).table,
  readings: async () => readings,
  diagnose: async () => (await import('../../shared/service/diagnose.ts')).diagnose,
  charge: async () => (await import('../../shared/service/charge.ts')).charge,
  oil: async () => (await import('../../shared/service/oil.ts')).oil,
  recovery: async () => (await import('../../shared/service/recovery.ts')).recovery,
  'air-check': async () => (await import('../../shared/service/air-check.ts')).airCheck,
  contamination: async () => (await import('../../shared/service/contamination.ts')).contamination,
  rules: async () => (await import('../../shared/rules/rules.ts')).rules,
  'leak-test': async () => (await import('../../shared/service/leak-test.ts')).leakTest,
  fractionation: async () => (await import('../../shared/service/fractionation.ts')).fractionation,
  evacuation: async () => (await import('../../shared/service/evacuation.ts')).evacuation,
  charging: async () => (await import('../../shared/service/charging.ts')).charging,
  'cooling-check': async () => (await import('../../shared/service/cooling-check.ts')).coolingCheck,
  retrofit: async () => (await import('../../shared/service/retrofit.ts')).retrofit,
  simulate: async () => (await import('../../shared/service/simulate.ts')).simulate,
  lesson: async () => (await import('../../shared/service/lesson.ts')).lesson,
  'work-order': async () => (await import('../../shared/work-order/work-order.ts')).workOrder,
} satisfies Readonly<Record<string, () => Promise<Operation>>>

export type OperationName = keyof typeof LOADERS

export const OPERATION_NAMES = Object.keys(LOADERS) as readonly OperationName[]

export const isOperationName = (name: string): name is OperationName => Object.hasOwn(LOADERS, name)

const loaded = new Map<string, Operation>([
  [saturation.name, saturation],
  [readings.name, readings],
])

/** The operation, where it is here already. */
export const operationNow = (name: OperationName): Operation | undefined => loaded.get(name)

/** The operation, once it is here. */
export async function loadOperation(name: OperationName): Promise<Operation> {
  const [operation]: readonly [Operation, unknown] = await Promise.all([
    LOADERS[name](),
    import('../../shared/form/steps.ts'),
  ])
  loaded.set(name, operation)
  return operation
}
