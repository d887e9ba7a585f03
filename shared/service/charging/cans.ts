import { CalcError } from '../../errors.ts'
import { mass, type Quantity, say } from '../../quantity/index.ts'

/** Smaller rests than this are rounding, kg. */
const NOTHING_KG = 1e-6
const MOST_CANS = 500

export interface Cans {
  /** Cans that go in whole. */
  readonly whole: number
  /** From the last, broken can, kg; 0 when none is broken. */
  readonly lastKg: number
  readonly opened: number
}

/**
 * How many small cans a mass takes, and how much of the last.
 *
 * @param neededKg - Mass that must leave the cans.
 * @param net - Net mass on a can; `left` what stays in each when it is empty.
 * @throws {CalcError} `bad-input` when a can would give nothing, `out-of-range` beyond 500 cans.
 */
export function cansFor(neededKg: number, net: Quantity<'mass'>, left: number): Cans {
  const each = net.si - left
  if (!(each > 0)) {
    throw new CalcError(
      'bad-input',
      `A can of ${say(net)} of which ${say(mass(left))} stays behind gives nothing.`,
      {
        hint: 'Read the net weight on the can; weigh an empty one for what stays.',
        path: ['canNet'],
      },
    )
  }
  if (neededKg / each > MOST_CANS) {
    throw new CalcError('out-of-range', `This would take more than ${MOST_CANS} cans.`, {
      hint: 'Check the net weight of a can, or charge from a cylinder.',
      path: ['canNet'],
    })
  }
  const whole = Math.floor((neededKg + NOTHING_KG) / each)
  const rest = neededKg - whole * each
  const lastKg = rest > NOTHING_KG ? rest : 0
  return { whole, lastKg, opened: whole + (lastKg > 0 ? 1 : 0) }
}
