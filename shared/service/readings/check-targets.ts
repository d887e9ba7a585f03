import { CalcError } from '../../errors.ts'
import type { ReadingsInput } from './fields.ts'

/** @throws {CalcError} for half a range, one that runs backwards, or a target below zero. */
export function checkTargets(input: ReadingsInput): void {
  for (const name of ['superheat', 'subcooling'] as const) {
    const [low, high] = [input[`${name}Low`], input[`${name}High`]]
    if (!low !== !high) {
      throw new CalcError('missing-input', `Half of a ${name} range is given.`, {
        path: [low ? `${name}High` : `${name}Low`],
        hint: 'Give both ends of the range, or a target.',
      })
    }
    if (low && high && low.si > high.si) {
      throw new CalcError('bad-input', `The ${name} range runs backwards.`, {
        path: [`${name}Low`],
        hint: 'The lower end comes first.',
      })
    }
    const target = input[`${name}Target`]
    if (target && target.si < 0) {
      throw new CalcError('out-of-range', `A target ${name} below zero does not exist.`, {
        path: [`${name}Target`],
        hint: 'Give it as the maker prints it, without a sign.',
      })
    }
  }
}
