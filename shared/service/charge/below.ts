import { CalcError } from '../../errors.ts'

/** Errors of `f`, found below `path`. */
export function below<T>(path: readonly (string | number)[], f: () => T): T {
  try {
    return f()
  } catch (error) {
    throw error instanceof CalcError ? error.under(...path) : error
  }
}
