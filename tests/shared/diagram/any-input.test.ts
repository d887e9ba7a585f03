import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { DRAWN } from '../../../shared/diagram/all.ts'
import { DIAGRAMS, diagramsOf, exampleOf } from '../../../shared/diagram/index.ts'
import { loadDiagram } from '../../../shared/diagram/load.ts'
import { NARROWEST, WIDEST } from '../../../shared/diagram/options.ts'
import { THEMES } from '../../../shared/diagram/scene/theme.ts'
import { CalcError } from '../../../shared/errors.ts'
import { operation, operations } from '../../../shared/operations.ts'
import { arbitraryInput } from '../../support/arbitrary-input.ts'
import { faultsOf } from '../../support/picture.ts'

const WIDTHS = fc.constantFrom(NARROWEST, 360, 720, 1280, WIDEST)

describe('every picture', () => {
  it('has a name of its own, an operation that there is, and one drawing by both ways', async () => {
    const kinds = DIAGRAMS.map(({ kind }) => kind)
    expect(new Set(kinds).size).toBe(kinds.length)
    const names = operations.map(({ name }) => name)
    for (const { operation: name } of DIAGRAMS) expect(names).toContain(name)
    for (const { kind } of DIAGRAMS) expect(await loadDiagram(kind)).toBe(DRAWN[kind])
    expect(diagramsOf('readings')[0]?.kind).toBe('pressure-enthalpy')
  })

  describe.each(DIAGRAMS.map((entry) => [entry.kind, entry] as const))('%s', (_, entry) => {
    const of = operation(entry.operation)
    const example = exampleOf(entry, of)

    it('is drawn of the example, in every theme and at every width', async () => {
      const diagram = await loadDiagram(entry.kind)
      for (const theme of THEMES) {
        for (const width of [NARROWEST, 360, 1280]) {
          for (const units of ['us', 'si', 'both']) {
            const svg = diagram.draw({ ...example, units }, { theme, width })
            expect(faultsOf(svg)).toEqual([])
            expect(svg.includes('class=')).toBe(theme === 'page')
            expect(/#[0-9a-f]{6}/u.test(svg)).toBe(theme !== 'page')
          }
        }
      }
    })

    it('is well-formed and finite for any input, or refused as the operation refuses', {
      timeout: 120_000,
    }, async () => {
      const diagram = await loadDiagram(entry.kind)
      let drawn = 0
      fc.assert(
        fc.property(arbitraryInput({ ...of, example }), WIDTHS, (input, width) => {
          let svg: string
          try {
            svg = diagram.draw(input, { width })
          } catch (error) {
            if (!(error instanceof CalcError)) throw error
            expect(error.message.length).toBeGreaterThan(0)
            return
          }
          drawn += 1
          // What has a picture has an answer.
          of.run(input)
          expect(faultsOf(svg)).toEqual([])
        }),
        { numRuns: 150 },
      )
      expect(drawn).toBeGreaterThan(2)
    })

    it('says the same twice', async () => {
      const diagram = await loadDiagram(entry.kind)
      expect(diagram.draw(example)).toBe(diagram.draw(example))
    })

    it('refuses a width that no screen has, and a theme that there is not', async () => {
      const diagram = await loadDiagram(entry.kind)
      expect(() => diagram.draw(example, { width: 100 })).toThrow(CalcError)
      expect(() => diagram.draw(example, { theme: 'neon' as never })).toThrow(CalcError)
    })
  })
})
