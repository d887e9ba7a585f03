import { describe, expect, it } from 'vitest'
import { CalcError, refusal } from '../../../shared/errors.ts'
import { operations } from '../../../shared/operations.ts'
import { madeOperation } from '../../support/made-operation.ts'
import { refusalOf } from '../../support/refusal.ts'

const ids = (cautions: readonly { readonly id: string }[]) => cautions.map(({ id }) => id)
const stop = () =>
  refusal('No.', { path: ['given'], hint: 'Do not.', cautions: ['no-air', 'pressure'] })

describe('the cautions of an operation', () => {
  it('are in every answer, with those of the computation, each once and the worst first', () => {
    expect(ids(madeOperation().run({}).cautions)).toEqual(['pressure', 'maker-first'])
    const also = madeOperation(() => ({ cautions: ['no-venting', 'pressure', 'no-venting'] }))
    expect(ids(also.run({}).cautions)).toEqual(['pressure', 'no-venting', 'maker-first'])
  })

  it('are in the computation that another step builds on', () => {
    const also = madeOperation(() => ({ cautions: ['no-venting'] }))
    expect(also.compute({})).toMatchObject({ cautions: ['maker-first', 'pressure', 'no-venting'] })
  })

  it('are told beforehand, those too that only some answers carry', () => {
    expect(ids(madeOperation().cautions)).toEqual([
      ...['pressure', 'no-oxygen', 'no-venting', 'maker-first'],
    ])
  })

  it('are a fault of the program where they were not told beforehand', () => {
    const rogue = madeOperation(() => ({ cautions: ['dry-ice', 'no-venting', 'flammable'] }))
    expect(() => rogue.run({})).toThrow(/^weigh gives cautions .*: dry-ice, flammable$/u)
    expect(() => rogue.compute({})).toThrow('dry-ice')
  })

  it.each(operations.map((entry) => [entry.name, entry] as const))(
    '%s tells all that it gives',
    (_, entry) => {
      const told = ids(entry.cautions)
      const given = ids(entry.run(entry.example).cautions)
      expect(told).toEqual(expect.arrayContaining(given))
      expect(new Set(given).size).toBe(given.length)
    },
  )
})

describe('the refusal of something dangerous', () => {
  it.each([
    ['of the computation', {}, true],
    ['of the rules between fields', { check: () => void raise(stop()) }, false],
  ] as const)('%s has its own cautions first, then those of the operation', (_, more, inside) => {
    const entry = madeOperation(() => (inside ? raise(stop()) : {}), more)
    for (const refused of [() => entry.run({}), () => entry.compute({})]) {
      expect(refusalOf(refused)).toMatchObject({
        code: 'refused',
        message: 'No.',
        hint: 'Do not.',
        path: ['given'],
        level: 'stop',
        cautions: ['no-air', 'pressure', 'maker-first'],
      })
    }
  })

  it('differs from one that only asks for another look', () => {
    const error = new CalcError('out-of-range', 'Too much.', { cautions: ['no-air'] })
    const found = refusalOf(() => madeOperation(() => raise(error)).run({}))
    expect(found).toBe(error)
    expect(found.cautions).toEqual(['no-air'])
  })

  it('is not made of a fault of the program', () => {
    const fault = new TypeError('undefined is not a function')
    expect(() => madeOperation(() => raise(fault)).run({})).toThrow(fault)
  })
})

function raise(error: unknown): never {
  throw error
}
