import type { Operation } from '../shared/operation.ts'

type Load = () => Promise<Operation>

/**
 * Where the calculations lie that are asked for by hand all day, so that such a run loads one of them
 * and not all. What is not here is found in the whole list: leaving a line out costs time, nothing else.
 */
const ALONE: Readonly<Record<string, Load>> = {
  saturation: async () => (await import('../shared/service/saturation.ts')).saturation,
  table: async () => (await import('../shared/service/table.ts')).table,
  readings: async () => (await import('../shared/service/readings.ts')).readings,
  charge: async () => (await import('../shared/service/charge.ts')).charge,
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
