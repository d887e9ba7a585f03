import { CalcError } from '../errors.ts'

/** The answer, or undefined where a search found none (`no-convergence`). */
export function attempt<T>(work: () => T): T | undefined {
  try {
    return work()
  } catch (error) {
    if (error instanceof CalcError && error.code === 'no-convergence') return undefined
    throw error
  }
}
