import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CautionId } from '../../shared/cautions.ts'
import { CalcError } from '../../shared/errors.ts'
import { rules } from '../../shared/rules/rules.ts'
import { airCheck } from '../../shared/service/air-check.ts'
import { contamination } from '../../shared/service/contamination.ts'
import { coolingCheck } from '../../shared/service/cooling-check.ts'
import { recovery } from '../../shared/service/recovery.ts'
import { arbitraryInput } from '../support/arbitrary-input.ts'

const LOOSE: readonly CautionId[] = ['pressure', 'cold-burns', 'asphyxiation', 'do-not-mix']
const ALWAYS = [
  [rules, ['local-rules']],
  [airCheck, [...LOOSE, 'local-rules']],
  [contamination, [...LOOSE, 'local-rules']],
  [recovery, [...LOOSE, 'local-rules']],
  [coolingCheck, ['pressure', 'cold-burns', 'first-aid-eyes', 'maker-first', 'local-rules']],
] as const

describe.each(ALWAYS)('$name', (operation, always) => {
  it('carries what always belongs to it in every answer, and in every refusal of a danger', () => {
    fc.assert(
      fc.property(arbitraryInput(operation), (input) => {
        try {
          const found = operation.run(input).cautions.map(({ id }) => id)
          expect(found).toEqual(expect.arrayContaining([...always]))
        } catch (error) {
          if (!(error instanceof CalcError)) throw error
          if (error.level === 'stop') {
            expect(error.cautions).toEqual(expect.arrayContaining([...always]))
          }
        }
      }),
      { numRuns: 60, seed: 20261127 },
    )
  })

  it('does so for its example', () => {
    const found = operation.run(operation.example).cautions.map(({ id }) => id)
    expect(found).toEqual(expect.arrayContaining([...always]))
  })
})
