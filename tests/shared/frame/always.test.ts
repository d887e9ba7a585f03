import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CalcError } from '../../../shared/errors.ts'
import { operation, operations } from '../../../shared/operations.ts'
import { arbitraryInput } from '../../support/arbitrary-input.ts'
import { refusalOf } from '../../support/refusal.ts'

const LOOSE = 'pressure cold-burns asphyxiation'
const SHEET = 'maker-first local-rules'

/** What stands in every answer of a step, whatever was asked of it. */
const ALWAYS: Readonly<Record<string, string>> = {
  saturation: 'maker-first',
  table: 'maker-first',
  diagnose: `pressure cold-burns first-aid-eyes ${SHEET}`,
  simulate: 'weigh-the-charge maker-first',
  lesson: 'weigh-the-charge maker-first',
  readings: `pressure cold-burns first-aid-eyes ${SHEET}`,
  charge: `${LOOSE} goggles-even-empty weigh-the-charge ${SHEET}`,
  oil: `pressure ${SHEET}`,
  recovery: `${LOOSE} do-not-mix ${SHEET}`,
  'air-check': `${LOOSE} do-not-mix ${SHEET}`,
  contamination: `${LOOSE} do-not-mix ${SHEET}`,
  rules: 'local-rules',
  'leak-test': `pressure no-oxygen no-air nitrogen-regulator whipping-line asphyxiation ${SHEET}`,
  fractionation: `${LOOSE} no-venting do-not-mix weigh-the-charge ${SHEET}`,
  evacuation: `pressure compressor-in-vacuum ${SHEET}`,
  charging: `${LOOSE} no-high-side-running warm-water-only no-liquid-to-suction weigh-the-charge ${SHEET}`,
  'cooling-check': `pressure cold-burns first-aid-eyes ${SHEET}`,
  retrofit: `no-flammable-retrofit pressure cold-burns do-not-mix ${SHEET}`,
  'work-order': `pressure cold-burns weigh-the-charge ${SHEET}`,
}

/** Cautions of an answer, or of a refusal of something dangerous; undefined for any other refusal. */
function cautionsOf(
  run: () => { cautions: readonly { id: string }[] },
): readonly string[] | undefined {
  try {
    return run().cautions.map(({ id }) => id)
  } catch (error) {
    if (!(error instanceof CalcError)) throw error
    return error.level === 'stop' ? error.cautions : undefined
  }
}

describe.each(operations.map((entry) => [entry.name, entry] as const))('%s', (name, entry) => {
  const always = ALWAYS[name]?.split(' ') ?? []

  it('carries its cautions in the answer to its example', () => {
    expect(
      ALWAYS,
      'what must stand in every answer belongs to the table of this file',
    ).toHaveProperty(name)
    expect(cautionsOf(() => entry.run(entry.example))).toEqual(expect.arrayContaining(always))
  })

  it('carries them in any answer, and in any refusal of something dangerous', () => {
    fc.assert(
      fc.property(arbitraryInput(entry), (input) => {
        const found = cautionsOf(() => entry.run(input))
        if (found) expect(found).toEqual(expect.arrayContaining(always))
      }),
      { numRuns: 40, seed: 20261127 },
    )
  })
})

describe('something dangerous', () => {
  it.each([
    ['leak-test', { testGas: 'oxygen' }],
    ['leak-test', { testGas: 'air' }],
  ] as const)('%s: %o is stopped with all of its cautions', (name, change) => {
    const { example, run } = operation(name)
    const error = refusalOf(() => run({ ...example, ...change }))
    expect(error.level).toBe('stop')
    expect(error.cautions).toEqual(expect.arrayContaining(ALWAYS[name]?.split(' ') ?? []))
    expect(new Set(error.cautions).size).toBe(error.cautions.length)
  })
})
