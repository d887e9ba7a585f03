import { propagate, type Uncertain } from '../../quantity/index.ts'

/** A reading that a figure rests on, with the words for it. */
export interface Ingredient extends Uncertain {
  readonly name: string
}

/** A figure in SI, its expanded uncertainty, and how much of that each reading brings. */
export interface Figure extends Uncertain {
  readonly parts: readonly { readonly name: string; readonly plusMinus: number }[]
}

/** Works out a figure from readings and propagates their uncertainties, all together and each alone. */
export function figure(
  ingredients: readonly Ingredient[],
  f: (...values: number[]) => number,
): Figure {
  const whole = propagate(ingredients, f)
  const parts = ingredients.flatMap((ingredient, index) => {
    if (ingredient.plusMinus === undefined) return []
    const alone = propagate(
      ingredients.map(({ si, plusMinus }, other) => (other === index ? { si, plusMinus } : { si })),
      f,
    )
    return [{ name: ingredient.name, plusMinus: Math.abs(alone.plusMinus ?? 0) }]
  })
  return { ...whole, parts: [...parts].sort((a, b) => b.plusMinus - a.plusMinus) }
}

/** Half-width of a figure; zero where no reading brought one. */
export const widthOf = (entry: Uncertain) => entry.plusMinus ?? 0

/** The figure lies below `limit` with its whole interval. */
export const surelyBelow = (entry: Uncertain, limit: number) => entry.si + widthOf(entry) < limit

/** The figure lies above `limit` with its whole interval. */
export const surelyAbove = (entry: Uncertain, limit: number) => entry.si - widthOf(entry) > limit
