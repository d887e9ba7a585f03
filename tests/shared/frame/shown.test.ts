import { describe, expect, it } from 'vitest'
import { operations } from '../../../shared/operations.ts'
import { quantity } from '../../../shared/quantity/index.ts'
import { lawLine } from '../../../shared/rules/law-line.ts'
import { charge } from '../../../shared/service/charge.ts'
import { madeOperation } from '../../support/made-operation.ts'

const unitOf = (input: Readonly<Record<string, unknown>>, opens = false) => {
  const { mass } = madeOperation(() => ({}), { opens }).run(input).result
  return [mass.unit, mass.also?.unit]
}
const US_FIRST = ['lb', 'g']
const SI_FIRST = ['g', 'lb']

describe('the unit system that comes first', () => {
  it.each([
    ['nothing that was read', {}, US_FIRST],
    ['a reading in US units', { pressure: '30 psig' }, US_FIRST],
    ['a reading in SI units', { pressure: '200 kPa g' }, SI_FIRST],
    ['the first of two', { pressure: '2 bar g', given: '2 lb' }, SI_FIRST],
    ['the first of two, however they stand', { given: '900 g', pressure: '30 psig' }, US_FIRST],
    ['the first whose unit is of one system', { pressure: '500 micron', given: '900 g' }, SI_FIRST],
    ['a unit of both systems', { pressure: '500 micron' }, US_FIRST],
    ['the place where nothing else was read', { altitude: '900 m' }, SI_FIRST],
  ])('is that of %s', (_, input, units) => {
    expect(unitOf(input)).toEqual(units)
  })

  it.each([
    ['us-federal', US_FIRST],
    ['usa', US_FIRST],
    ['eu', SI_FIRST],
    ['uk', SI_FIRST],
    ['canada', SI_FIRST],
    ['australia', SI_FIRST],
  ])('is that of the law where no reading says: %s', (law, units) => {
    expect(unitOf({ law }, true)).toEqual(units)
    expect(unitOf({ law, pressure: '500 micron' }, true)).toEqual(units)
    expect(unitOf({ law, pressure: '30 psig' }, true)).toEqual(US_FIRST)
    expect(unitOf({ law, pressure: '200 kPa g' }, true)).toEqual(SI_FIRST)
  })

  it('is the only one where one was asked for', () => {
    expect(unitOf({ pressure: '30 psig', units: 'si' })).toEqual(['g', undefined])
    expect(unitOf({ pressure: '200 kPa g', units: 'us' })).toEqual(['lb', undefined])
  })

  it('leaves the rounding to whoever asked for none', () => {
    const value = (precise?: boolean) =>
      madeOperation().run({ units: 'us', ...(precise !== undefined && { precise }) }).result.mass
        .value
    expect(value(true)).toBeCloseTo(2.204_622_621_85, 9)
    expect(value()).toBe(value(false))
    expect(value()).not.toBe(value(true))
  })
})

describe('the line of the law', () => {
  const line = (input: Readonly<Record<string, unknown>>, opens = true) =>
    madeOperation(() => ({}), { opens }).run(input).law

  it('stands where the job opens a system, and nowhere else', () => {
    expect(line({ refrigerant: 'R-134a' })).toBe(lawLine(undefined))
    expect(line({ refrigerant: 'R-134a' }, false)).toBeUndefined()
    expect(Object.keys(madeOperation().run({}))).not.toContain('law')
    const opening = operations.filter((entry) => entry.run(entry.example).law !== undefined)
    expect(opening.map(({ name }) => name)).toEqual(
      expect.arrayContaining([
        ...['charge', 'oil', 'recovery', 'leak-test', 'evacuation', 'charging'],
      ]),
    )
  })

  it('follows the law and the refrigerant', () => {
    expect(line({ law: 'eu', refrigerant: 'R-134a' })).toMatch(/^EU: do not vent; recover/u)
    expect(line({ law: 'us', refrigerant: 'R-134a' })).toMatch(/^US: do not vent; recover/u)
    expect(line({ law: 'us', refrigerant: 'R-744' })).toMatch(/^US: R-744 may be let out/u)
  })

  it('asks for the law where no refrigerant is named, and says nothing of one that is', () => {
    expect(line({})).toBe(lawLine(undefined))
    expect(line({ law: 'eu' })).toBeUndefined()
  })

  it('is in the computation that another step builds on', () => {
    const input = { ...charge.example, law: 'uk' }
    expect(charge.compute(charge.parse(input)).law).toMatch(/^UK: /u)
    expect(charge.run(input).law).toBe(charge.compute(charge.parse(input)).law)
  })
})

describe('what an operation tells of itself', () => {
  const source = (id: string) => ({ id, title: id, mark: 'memory' as const })

  it('are the sources of its example’s answer, each once', () => {
    const entry = madeOperation(({ given, pressure }) => ({
      sources: [...(given ? ['a', 'b', 'a'] : []), ...(pressure ? ['c'] : [])].map(source),
    }))
    expect(entry.sources.map(({ id }) => id)).toEqual(['a', 'b'])
    expect(entry.run({ pressure: '1 psig' }).sources.map(({ id }) => id)).toEqual(['c'])
    for (const each of operations) {
      expect(each.sources, each.name).toEqual(each.run(each.example).sources)
      expect(each.sources.length, each.name).toBeGreaterThan(0)
    }
  })

  it('is its description, or its summary where it has none', () => {
    expect(madeOperation().description).toBe('Weighs')
    expect(madeOperation(() => ({}), { description: 'Weighs well' }).description).toBe(
      'Weighs well',
    )
  })

  it('is told only where it has something to tell', () => {
    expect(Object.keys(madeOperation().run({})).sort()).toEqual([
      ...['assumptions', 'cautions', 'result', 'sources', 'steps', 'warnings'],
    ])
    const told = { level: 'fine' as const, headline: 'Done.', figures: [], next: [] }
    const answer = madeOperation(() => ({ told })).run({})
    expect(answer).toMatchObject({ ...told, line: false })
    expect(madeOperation().output.safeParse(answer).error).toBeUndefined()
  })

  it('shows how a figure came about, in figures, numbers and words', () => {
    const length = quantity('length', 254, 'mm')
    const entry = madeOperation(() => ({
      steps: [length, 3, 'tight'].map((gives) => ({
        what: 'It',
        formula: 'as read',
        values: { length, count: 3, word: 'tight' },
        gives,
      })),
    }))
    const answer = entry.run({ units: 'us' })
    const shown = { value: 10, unit: 'in' }
    expect(answer.steps.map(({ gives }) => gives)).toEqual([shown, 3, 'tight'])
    expect(answer.steps[0]?.values).toEqual({ length: shown, count: 3, word: 'tight' })
    expect(entry.output.safeParse(answer).error).toBeUndefined()
  })

  it('hands on what was assumed', () => {
    const assumptions = [{ field: 'given', taken: '1 kg', because: 'nobody said' }]
    expect(madeOperation(() => ({ assumptions })).run({}).assumptions).toEqual(assumptions)
  })
})
