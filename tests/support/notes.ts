import { describe, expect, it } from 'vitest'
import { operation } from '../../shared/operations.ts'
import type { ShownQuantity } from '../../shared/quantity/index.ts'

/**
 * What an answer comes with, by name: nothing of it may be lost on the way. Its figures are a
 * regression, held to the outside in the published and the reference tests: they stand here so that a
 * sign, a unit or a ± that is lost between calculation and answer is seen.
 */
export interface Noted {
  readonly input: Readonly<Record<string, unknown>>
  /** Level, figures by their id, and how many things to do. */
  readonly tells: string
  /** Codes of the warnings. */
  readonly warns: string
  /** Fields that were assumed, in the order told; one may stand for two assumptions. */
  readonly assumes: string
  /** Lines of the calculation, each with what it gives. */
  readonly computes: readonly string[]
  /** Ids of the sources. */
  readonly restsOn: string
}

type Value = ShownQuantity | number | string | undefined

/** Three figures, with the unit and the ±. */
export function brief(given: unknown): string {
  const value = given as Value
  if (typeof value === 'number') return String(Number(value.toPrecision(3)))
  if (typeof value !== 'object') return String(value ?? '-')
  const parts = [value.value, value.plusMinus].flatMap((number) =>
    number === undefined ? [] : [Number(number.toPrecision(3))],
  )
  return `${parts.join(' ±')} ${value.unit}`
}

/** The answer by name, as `Noted` has it. */
export function noted(name: string, input: Noted['input']): Omit<Noted, 'input'> {
  const answer = operation(name).run({ units: 'us', ...input })
  const { level, figures = [], next = [], warnings, assumptions, steps, sources } = answer
  const told = figures.map(
    ({ id, value, text }) => `${id} ${value === undefined ? text : brief(value)}`,
  )
  return {
    tells: [level, ...told, `${next.length} to do`].join('; '),
    warns: warnings.map(({ code }) => code).join(' '),
    assumes: assumptions.map(({ field }) => field).join(' '),
    computes: steps.map(({ what, gives }) => `${what}: ${brief(gives)}`),
    restsOn: sources.map(({ id }) => id).join(' '),
  }
}

/** Runs each input, and compares what came with its answer. */
export function notesOf(name: string, cases: readonly Noted[]): void {
  if (cases.length === 0) throw new Error(`give whole answers of ${name}, one at least`)
  describe(`what comes with an answer of ${name}`, () => {
    it.each(cases)('$input', ({ input, ...expected }) => {
      expect(noted(name, input)).toEqual(expected)
      const { warnings, assumptions } = operation(name).run({ units: 'us', ...input })
      // Each says something, and each assumption why.
      for (const { message } of warnings) expect(message).toMatch(/^\S.{20,}[.!]$/su)
      for (const { taken, because } of assumptions) {
        expect(`${taken}; ${because}`).toMatch(/\S; \S/u)
      }
    })
  })
}
