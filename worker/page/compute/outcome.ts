import { CalcError } from '../../../shared/errors.ts'
import type { Answer, Operation } from '../../../shared/operation.ts'

/** What an operation says to an input. */
export type Outcome =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'answer'; readonly answer: Answer; readonly input?: unknown }
  | { readonly kind: 'error'; readonly error: CalcError }
  | { readonly kind: 'fault'; readonly message: string }

export function run(operation: Operation, input: unknown): Outcome {
  try {
    return { kind: 'answer', answer: operation.run(input) }
  } catch (error) {
    if (error instanceof CalcError) return { kind: 'error', error }
    console.error(error)
    return { kind: 'fault', message: error instanceof Error ? error.message : String(error) }
  }
}

/** The same as it crosses from one thread to another: an error loses its class on the way. */
export type Sent =
  | Exclude<Outcome, { readonly kind: 'error' }>
  | { readonly kind: 'error'; readonly error: ReturnType<CalcError['toJSON']> }

export const sent = (outcome: Outcome): Sent =>
  outcome.kind === 'error' ? { kind: 'error', error: outcome.error.toJSON() } : outcome

export function received(outcome: Sent): Outcome {
  if (outcome.kind !== 'error') return outcome
  const { code, message, ...more } = outcome.error
  return { kind: 'error', error: new CalcError(code, message, more) }
}
