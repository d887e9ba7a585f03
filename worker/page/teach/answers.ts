import type { CalcError } from '../../../shared/errors.ts'
import { inputOf } from '../../../shared/form/index.ts'
import { fieldsOf } from '../../../shared/input/index.ts'
import { GAUGES } from '../../../shared/service/lesson/gauges.ts'
import type { lesson } from '../../../shared/service/lesson.ts'
import type { simulate } from '../../../shared/service/simulate.ts'
import { isWorking, outcomeNow } from '../compute/compute.ts'
import { operationNow } from '../operations.ts'
import { currentSettings } from '../state.ts'
import { type Case, nameOf } from './address.ts'

export type LessonAnswer = ReturnType<typeof lesson.run>
export type SimulateAnswer = ReturnType<typeof simulate.run>
export type Reveal = NonNullable<LessonAnswer['result']['reveal']>

/** What an operation says, and whether that is of an earlier question. */
export interface Told<A> {
  readonly answer?: A | undefined
  readonly error?: Pick<CalcError, 'message' | 'hint'> | undefined
  readonly working: boolean
}

function ask<A>(name: 'lesson' | 'simulate', input: object, about: string): Told<A> {
  const operation = operationNow(name)
  if (!operation) return { working: true }
  const { units } = currentSettings()
  const outcome = outcomeNow(operation, units ? { ...input, units } : input, about)
  const working = isWorking(name, about)
  switch (outcome.kind) {
    case 'answer':
      return { answer: outcome.answer as A, working }
    case 'error':
      return { error: outcome.error, working }
    case 'fault':
      return { error: { message: outcome.message, hint: '' }, working }
    default:
      return { working: true }
  }
}

/** The case as far as the class is. */
export function askLesson(now: Case): Told<LessonAnswer> {
  const { topic, seed, moves, fixed, suspected, bought, named } = now
  const predictions = fixed && GAUGES.every((gauge) => moves[gauge]) ? moves : undefined
  const input = {
    topic,
    seed,
    ...(predictions ? { predictions, bought } : {}),
    ...(suspected ? { suspected } : {}),
    ...(predictions && named ? { named } : {}),
  }
  return ask('lesson', input, nameOf(now))
}

export const askSimulate = (input: object, about: string): Told<SimulateAnswer> =>
  ask('simulate', input, about)

/** What a draft of fields of the simulation stands for. @throws {CalcError} for a text that is no number. */
export function simulationIn(draft: Parameters<typeof inputOf>[1]) {
  const operation = operationNow('simulate')
  return operation ? inputOf(fieldsOf(operation), draft).input : {}
}
