import type { CautionId } from './cautions.ts'

/** Every way a calculation can refuse, in one closed list: doors map each code to a status. */
export const ERROR_CODES = [
  'bad-input',
  'bad-quantity',
  'ambiguous-quantity',
  'wrong-kind',
  'missing-input',
  'unknown-refrigerant',
  'unknown-name',
  'out-of-range',
  'above-critical',
  'below-triple',
  'two-phase',
  'no-convergence',
  'refused',
] as const

export type ErrorCode = (typeof ERROR_CODES)[number]

/** How urgent an error is: `stop` where going on would hurt somebody or break the law. */
export type RefusalLevel = 'stop' | 'check'

interface ErrorOptions {
  readonly hint?: string
  readonly path?: readonly (string | number)[]
  readonly level?: RefusalLevel
  /** Cautions that belong to what was asked; those of the operation are added by its frame. */
  readonly cautions?: readonly CautionId[]
}

/**
 * The one error of the project.
 *
 * `message` says what was wrong in a full sentence, `hint` what would do instead,
 * `path` where in the input it was found (empty when it is not about one field).
 */
export class CalcError extends Error {
  override readonly name = 'CalcError' as const
  readonly code: ErrorCode
  readonly path: readonly (string | number)[]
  readonly hint: string
  readonly level: RefusalLevel
  readonly cautions: readonly CautionId[]

  constructor(code: ErrorCode, message: string, options: ErrorOptions = {}) {
    super(message)
    this.code = code
    this.hint = options.hint ?? ''
    this.path = options.path ?? []
    this.level = options.level ?? 'check'
    this.cautions = options.cautions ?? []
  }

  /** The same error with some of it changed. */
  with(change: ErrorOptions): CalcError {
    const { hint, path, level, cautions } = this
    return new CalcError(this.code, this.message, { hint, path, level, cautions, ...change })
  }

  /** The same error, found below `prefix` in a larger input. */
  under(...prefix: readonly (string | number)[]): CalcError {
    return this.with({ path: [...prefix, ...this.path] })
  }

  toJSON(): {
    code: ErrorCode
    message: string
    path: readonly (string | number)[]
    hint: string
    level: RefusalLevel
    cautions: readonly CautionId[]
  } {
    const { code, message, path, hint, level, cautions } = this
    return { code, message, path, hint, level, cautions }
  }
}

/**
 * The refusal of something that would hurt somebody or is forbidden: the first line of any answer.
 *
 * @param cautions - What the danger is.
 */
export const refusal = (
  message: string,
  options: Omit<ErrorOptions, 'level'> & { readonly cautions: readonly CautionId[] },
): CalcError => new CalcError('refused', message, { ...options, level: 'stop' })

/** Runs `work`; a refusal in it is about the input field `path`, or what stands below it. */
export function under<T>(path: string | readonly (string | number)[], work: () => T): T {
  try {
    return work()
  } catch (error) {
    throw error instanceof CalcError ? error.under(...[path].flat()) : error
  }
}
