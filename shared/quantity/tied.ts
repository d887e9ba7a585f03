import { CalcError } from '../errors.ts'
import { type Budget, budgetAround, type Ingredient, type Uncertain } from './uncertainty.ts'

/** Ingredients that are moved, each by the object that it is. */
type Moved = ReadonlyMap<Uncertain, number>

/**
 * A figure still tied to what it rests on.
 *
 * Two figures that rest on one ingredient (one thermometer for both lines, one barometer under every
 * gauge) move together when it is off, so that their sum is not that of independent figures. An
 * ingredient is told from another by being another object, not by its value.
 */
export interface Tied {
  /** The figure as read. */
  readonly si: number
  /** What it rests on, with the words for it. */
  readonly from: ReadonlyMap<Uncertain, string>
  /** The figure with some ingredients moved. */
  at(moved: Moved): number
}

/** A reading, or anything else that has a ± of its own, as it is. */
export const tied = (ingredient: Uncertain, name: string): Tied => ({
  si: ingredient.si,
  from: new Map([[ingredient, name]]),
  at: (moved) => moved.get(ingredient) ?? ingredient.si,
})

/** A figure without uncertainty. */
export const exactly = (si: number): Tied => ({ si, from: new Map(), at: () => si })

/**
 * A figure made of others by a pure function of their values.
 *
 * @throws whatever `f` throws at the values as they were read.
 */
export function combine(parts: readonly Tied[], f: (...values: number[]) => number): Tied {
  const si = f(...parts.map((part) => part.si))
  const from = new Map(parts.flatMap((part) => [...part.from]))
  return {
    si,
    from,
    at: (moved) => (touches(from, moved) ? f(...parts.map((part) => part.at(moved))) : si),
  }
}

const touches = (from: ReadonlyMap<Uncertain, string>, moved: Moved) => {
  for (const ingredient of moved.keys()) if (from.has(ingredient)) return true
  return false
}

/** Sum of figures of one unit; 0 for none. */
export const total = (parts: readonly Tied[]): Tied =>
  combine(parts, (...values) => values.reduce((sum, value) => sum + value, 0))

/** Product of figures. */
export const product = (...parts: readonly Tied[]): Tied =>
  combine(parts, (...values) => values.reduce((sum, value) => sum * value, 1))

/** The first figure less the second. */
export const difference = (a: Tied, b: Tied): Tied => combine([a, b], (x = 0, y = 0) => x - y)

/** A figure times a plain number. */
export const times = (factor: number, figure: Tied): Tied =>
  combine([figure], (value = 0) => factor * value)

/**
 * The figure with its expanded uncertainty and what each ingredient brings to it.
 *
 * @throws {CalcError} `out-of-range` for a figure beyond any number, or as {@link budget}.
 */
export function settle(figure: Tied): Budget {
  const known = settledBefore.get(figure)
  if (known) return known
  const settled = settleAnew(figure)
  settledBefore.set(figure, settled)
  return settled
}

/** A figure never changes, and one of many parts is asked for again and again. */
const settledBefore = new WeakMap<Tied, Budget>()

function settleAnew(figure: Tied): Budget {
  const uncertain = [...figure.from].filter(([{ plusMinus }]) => plusMinus !== undefined)
  const ingredients: readonly Ingredient[] = uncertain.map(([{ si, plusMinus }, name]) => ({
    name,
    si,
    plusMinus,
  }))
  const settled = budgetAround(ingredients, figure.si, (index, value) => {
    const [ingredient] = uncertain[index] ?? []
    return ingredient === undefined ? figure.si : figure.at(new Map([[ingredient, value]]))
  })
  if (!Number.isFinite(settled.si) || !Number.isFinite(settled.plusMinus ?? 0)) {
    throw new CalcError('out-of-range', 'A figure comes out larger than any number.', {
      hint: 'Check the volumes, lengths and bores, and what stands behind their ±.',
    })
  }
  return settled
}

/** Lowest that a figure may be by its ±. */
export const lowest = ({ si, plusMinus = 0 }: Uncertain): number => si - plusMinus

/** Highest that a figure may be by its ±. */
export const highest = ({ si, plusMinus = 0 }: Uncertain): number => si + plusMinus

/** The figure with every ± at its worse end at once: what a bound must not be below. */
export const atWorst = ({ si, parts }: Budget): number =>
  parts.reduce((sum, { plusMinus }) => sum + plusMinus, si)
