import { describe, expect, it } from 'vitest'
import { operation } from '../../shared/operations.ts'

/** What comes with an answer beside its figures, written by hand: nothing of it may be lost on the way. */
export interface Noted {
  readonly input: Readonly<Record<string, unknown>>
  /** Codes of the warnings. */
  readonly warns: string
  /** Fields that were assumed, in the order told; one may stand for two assumptions. */
  readonly assumes: string
  /** Names of the lines of the calculation, joined by a semicolon. */
  readonly shows: string
  /** Ids of the sources. */
  readonly restsOn: string
}

/** Runs each input, and compares what was noted on the way to its answer. */
export function notesOf(name: string, cases: readonly Noted[]): void {
  describe(`what comes with an answer of ${name}`, () => {
    it.each(cases)('$input', ({ input, ...expected }) => {
      const { warnings, assumptions, steps, sources } = operation(name).run({
        units: 'us',
        ...input,
      })
      expect({
        warns: warnings.map(({ code }) => code).join(' '),
        assumes: assumptions.map(({ field }) => field).join(' '),
        shows: steps.map(({ what }) => what).join('; '),
        restsOn: sources.map(({ id }) => id).join(' '),
      }).toEqual(expected)
      // Each says something, and each assumption why.
      for (const { message } of warnings) expect(message).toMatch(/^\S.{20,}[.!]$/su)
      for (const { taken, because } of assumptions)
        expect(`${taken}; ${because}`).toMatch(/\S; \S/u)
    })
  })
}
