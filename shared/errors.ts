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

  constructor(
    code: ErrorCode,
    message: string,
    options: { readonly hint?: string; readonly path?: readonly (string | number)[] } = {},
  ) {
    super(message)
    this.code = code
    this.hint = options.hint ?? ''
    this.path = options.path ?? []
  }

  /** The same error, found below `prefix` in a larger input. */
  under(...prefix: readonly (string | number)[]): CalcError {
    return new CalcError(this.code, this.message, {
      hint: this.hint,
      path: [...prefix, ...this.path],
    })
  }

  toJSON(): {
    code: ErrorCode
    message: string
    path: readonly (string | number)[]
    hint: string
  } {
    return { code: this.code, message: this.message, path: this.path, hint: this.hint }
  }
}
