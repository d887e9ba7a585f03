import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { LEVELS, LONGEST_HEADLINE, MOST_FIGURES, MOST_NEXT } from '../../../shared/answer/told.ts'
import { CalcError } from '../../../shared/errors.ts'
import type { Answer, Operation } from '../../../shared/operation.ts'
import { charge } from '../../../shared/service/charge.ts'
import { charging } from '../../../shared/service/charging.ts'
import { oil } from '../../../shared/service/oil.ts'
import { arbitraryInput } from '../../support/arbitrary-input.ts'

/** The answer, or undefined where it was refused. */
function answered(operation: Operation, input: Record<string, unknown>): Answer | undefined {
  try {
    return operation.run(input)
  } catch (error) {
    if (error instanceof CalcError) return undefined
    throw error
  }
}

const operations: readonly Operation[] = [charge, charging, oil]

describe.each(operations.map((entry) => [entry.name, entry] as const))('%s', (_, operation) => {
  it('tells every answer in one sentence, few figures and few things to do', () => {
    let told = 0
    fc.assert(
      fc.property(arbitraryInput(operation), (input) => {
        const answer = answered(operation, input)
        if (!answer) return
        told += 1
        expect(LEVELS).toContain(answer.level)
        expect(answer.headline?.length).toBeLessThanOrEqual(LONGEST_HEADLINE)
        expect(answer.headline).not.toMatch(/[{}%]/u)
        expect(answer.figures?.length).toBeLessThanOrEqual(MOST_FIGURES)
        for (const { label } of answer.figures ?? []) expect(label.length).toBeLessThanOrEqual(14)
        expect(answer.next?.length).toBeLessThanOrEqual(MOST_NEXT)
      }),
      { numRuns: 250 },
    )
    expect(told).toBeGreaterThan(5)
  })

  it('has no number in its sentence that is none of its figures', () => {
    fc.assert(
      fc.property(arbitraryInput(operation), (input) => {
        const answer = answered(operation, { ...input, units: 'us' })
        if (!answer) return
        const told = (answer.figures ?? []).map(({ text }) => text).join(' | ')
        const names = /PAG|POE|R-\d|SP-|ND-|5GS/u
        const numbers = answer.headline?.match(/\d+(?:\.\d+)?/gu) ?? []
        if (names.test(answer.headline ?? '')) return
        for (const number of numbers) expect(told).toContain(number)
      }),
      { numRuns: 80 },
    )
  })
})
