import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { LONGEST_HEADLINE, MOST_FIGURES, MOST_NEXT } from '../../shared/answer/told.ts'
import { cautions, isOnScreen } from '../../shared/cautions.ts'
import { CalcError } from '../../shared/errors.ts'
import type { Answer } from '../../shared/operation.ts'
import { operations } from '../../shared/operations.ts'
import { arbitraryInput } from '../support/arbitrary-input.ts'
import { session } from './session.ts'

const SEED = Number(process.env.FUZZ_SEED ?? 20261125)
const RUNS = Number(process.env.FUZZ_RUNS ?? 60)
const SCREEN_RUNS = Math.ceil(RUNS / 6)

/** Numbers that belong to a name and are no figure: R-134a, PAG 46, 40 CFR 82.161, SAE J2788, section 609. */
const NAMES =
  /\bR-?\d[\w()]*|\b(?:PAG|POE|PVE|PAO|ISO|SAE|EN|AHRI|type|Type|class|Table|table|art\.|recital|article|section|Section|rule|Rule) ?[A-Z]?[\d.()]+\w*|\(?EU\)? \d+\/\d+|\b\d+ CFR [\d., ()a-z]+|\b\d{4} text|\b60[89]\b|(?<=[a-z]-)\d+/gu
const NUMBER = /\d+(?:[.,]\d+)?/gu

const numbersOf = (text: string): readonly string[] => text.replace(NAMES, ' ').match(NUMBER) ?? []
/** Whether `text` is `other` with fewer figures, or in the steps of a gauge. */
function isRounded(text: string, other: string): boolean {
  const [value, exact] = [Number(text), Number(other)]
  const unit = 10 ** -(text.split('.')[1]?.length ?? 0)
  return Math.abs(value - exact) <= Math.max(0.51 * unit, 0.01 * exact)
}

/** What a screen must say; a card leaves out what one of its tasks or the line of the law says. */
function dangersIn({ cautions, result }: Answer): readonly string[] {
  const { card } = result as { readonly card?: { readonly dangers: readonly string[] } }
  const shorts = cautions.filter(isOnScreen).map(({ short }) => short.replace(/\.$/u, ''))
  return card?.dangers ?? shorts
}

const squeezed = (text: string) => text.replace(/\s+/gu, ' ')

/** The answer to an input, or its refusal. */
function heard(run: (input: unknown) => Answer, input: unknown) {
  try {
    return { answer: run(input) }
  } catch (error) {
    if (error instanceof CalcError) return { error }
    throw error
  }
}

const told = operations.filter((entry) => entry.run(entry.example).headline !== undefined)

describe('every operation', () => {
  it('tells its answer', () => {
    const silent = operations.filter(({ name }) => !told.some((entry) => entry.name === name))
    expect(
      silent.map(({ name }) => name),
      'the answer to the example must have told: level, headline, figures, next',
    ).toEqual([])
  })
})

describe.each(told.map((entry) => [entry.name, entry] as const))('what %s tells', (name, entry) => {
  it('is short, and its numbers and verdicts are those of the answer', () => {
    fc.assert(
      fc.property(arbitraryInput(entry), (input) => {
        const { answer } = heard(entry.run, input)
        if (!answer) return
        const { headline = '', figures = [], next = [], level } = answer
        expect(headline).toMatch(/\S/u)
        expect(headline.length).toBeLessThanOrEqual(LONGEST_HEADLINE)
        expect(headline).not.toMatch(/undefined|NaN|\[object|[{}]/u)
        expect(figures.length).toBeLessThanOrEqual(MOST_FIGURES)
        expect(next.length).toBeLessThanOrEqual(MOST_NEXT)
        expect(['stop', 'check', 'fine', 'information']).toContain(level)
        for (const { label } of figures) expect(label.length).toBeLessThanOrEqual(14)
        // A number in the headline is that of a figure, perhaps rounded to what a gauge shows.
        const known: readonly string[] = JSON.stringify(figures).match(NUMBER) ?? []
        const strange = numbersOf(headline).filter(
          (number) => !known.some((other) => isRounded(number, other)),
        )
        expect(strange, headline).toEqual([])
      }),
      { numRuns: RUNS, seed: SEED },
    )
  })

  it('stands on the screen with every danger, a stop as its first line', async () => {
    await fc.assert(
      fc.asyncProperty(arbitraryInput(entry), async (input) => {
        const body = JSON.stringify(input)
        const { answer, error } = heard(entry.run, JSON.parse(body))
        const { out, err } = await session([name, '-'], { stdin: body })
        if (error) {
          expect(err).toMatch(error.level === 'stop' ? /^STOP:/u : /^error:/u)
          const dangers = error.level === 'stop' ? cautions(error.cautions).filter(isOnScreen) : []
          for (const { short } of dangers) {
            expect(squeezed(err)).toContain(short.replace(/\.$/u, ''))
          }
          return
        }
        const screen = squeezed(out)
        for (const danger of answer ? dangersIn(answer) : []) expect(screen).toContain(danger)
        const stops = answer?.level === 'stop'
        expect(/^STOP/u.test(out)).toBe(stops)
      }),
      { numRuns: SCREEN_RUNS, seed: SEED },
    )
  })
})
