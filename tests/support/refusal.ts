import { CalcError } from '../../shared/errors.ts'

/** The project's error that `work` ends in; anything else, success included, fails the test. */
export function refusalOf(work: () => unknown): CalcError {
  try {
    work()
  } catch (error) {
    if (error instanceof CalcError) return error
    throw error
  }
  throw new Error('It was not refused.')
}
