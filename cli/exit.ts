import type { ErrorCode } from '../shared/errors.ts'

/** Exit statuses: 0 all answered, 1 not computable, 2 not understood. */
export const EXIT = { answered: 0, failed: 1, misused: 2 } as const

export type ExitStatus = (typeof EXIT)[keyof typeof EXIT]

/** 2 where the input must be written differently, 1 where it was understood and the calculation refuses. */
export const exitStatusOf = {
  'bad-input': EXIT.misused,
  'bad-quantity': EXIT.misused,
  'ambiguous-quantity': EXIT.misused,
  'wrong-kind': EXIT.misused,
  'missing-input': EXIT.misused,
  'unknown-refrigerant': EXIT.misused,
  'unknown-name': EXIT.misused,
  'out-of-range': EXIT.failed,
  'above-critical': EXIT.failed,
  'below-triple': EXIT.failed,
  'two-phase': EXIT.failed,
  'no-convergence': EXIT.failed,
  refused: EXIT.failed,
} as const satisfies Record<ErrorCode, ExitStatus>
