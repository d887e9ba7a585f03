import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CalcError, ERROR_CODES } from '../../shared/errors.ts'
import { fieldsOf } from '../../shared/input/index.ts'
import { operation, operations } from '../../shared/operations.ts'
import { arbitraryInput } from '../support/arbitrary-input.ts'

/** Fixed, so that a failure is met again; other seeds by FUZZ_SEED, more runs by FUZZ_RUNS. */
const SEED = Number(process.env.FUZZ_SEED ?? 20261125)
const RUNS = Number(process.env.FUZZ_RUNS ?? 150)

/** Paths of everything that is not a plain, finite value. */
function unsound(value: unknown, path = '$'): readonly string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} is ${value}`]
  if (typeof value === 'string' || typeof value === 'boolean') return []
  if (Array.isArray(value))
    return value.flatMap((item, index) => unsound(item, `${path}[${index}]`))
  if (typeof value === 'object' && value !== null) {
    return Object.entries(value).flatMap(([key, item]) => unsound(item, `${path}.${key}`))
  }
  return [`${path} is ${String(value)}`]
}

describe('the list of operations', () => {
  it('has at least the main job', () => {
    const names = operations.map(({ name }) => name)
    expect(names).toEqual(
      expect.arrayContaining(['saturation', 'table', 'readings', 'charge', 'oil', 'work-order']),
    )
  })

  it('names each operation once, in kebab case', () => {
    const names = operations.map(({ name }) => name)
    expect(new Set(names).size).toBe(names.length)
    for (const name of names) expect(name).toMatch(/^[a-z]+(?:-[a-z]+)*$/u)
  })

  it('finds an operation by name, and says which are near otherwise', () => {
    expect(operation('saturation').name).toBe('saturation')
    expect(() => operation('saturatoin')).toThrow(
      expect.objectContaining({
        code: 'unknown-name',
        hint: expect.stringContaining('saturation'),
      }),
    )
  })
})

describe.each(operations.map((entry) => [entry.name, entry] as const))('%s', (_, entry) => {
  it('describes itself and every field of its input', () => {
    expect(entry.summary).toMatch(/\S{3}/u)
    expect(entry.description).toMatch(/\S{3}/u)
    const bare = fieldsOf(entry).filter(({ description }) => description.trim() === '')
    expect(bare.map(({ name }) => name)).toEqual([])
  })

  it('has fields whose options neither collide with those of every command nor read as a negation', () => {
    const taken = ['json', 'csv', 'steps', 'markdown', 'input', 'help', 'format']
    const clash = fieldsOf(entry).filter(
      ({ name }) => taken.includes(name) || /^no[A-Z]/u.test(name),
    )
    expect(clash.map(({ name }) => name)).toEqual([])
  })

  it('answers its own example as its schema says, in each unit system and in full precision', () => {
    for (const presentation of [
      {},
      { units: 'us' },
      { units: 'si' },
      { units: 'both', precise: true },
    ]) {
      const answer = entry.run({ ...entry.example, ...presentation })
      expect(entry.output.safeParse(answer).error?.issues ?? []).toEqual([])
      expect(unsound(answer)).toEqual([])
      expect(JSON.parse(JSON.stringify(answer))).toEqual(answer)
    }
  })

  it('gives the same answer to the same input, and leaves the input as it was', () => {
    const input = structuredClone(entry.example)
    expect(entry.run(input)).toEqual(entry.run(structuredClone(input)))
    expect(input).toEqual(entry.example)
  })

  it('refuses an unknown field by name', () => {
    expect(() => entry.run({ ...entry.example, presure: '1 psig' })).toThrow(
      expect.objectContaining({ code: 'bad-input', message: expect.stringContaining('presure') }),
    )
  })

  it.each([[undefined], [null], [[]], ['text'], [5], [Number.NaN]])(
    'refuses %s as an input',
    (input) => {
      expect(() => entry.run(input)).toThrow(CalcError)
    },
  )

  it('gives finite figures or a named error for anything that its schema allows', () => {
    fc.assert(
      fc.property(arbitraryInput(entry), (input) => {
        let answer: ReturnType<typeof entry.run>
        try {
          answer = entry.run(input)
        } catch (error) {
          if (!(error instanceof CalcError)) throw error
          expect(ERROR_CODES).toContain(error.code)
          expect(error.message).toMatch(/\S/u)
          expect(error.message).not.toMatch(/NaN|Infinity|undefined|\[object/u)
          return
        }
        expect(unsound(answer)).toEqual([])
        expect(entry.output.safeParse(answer).error?.issues ?? []).toEqual([])
      }),
      { numRuns: RUNS, seed: SEED },
    )
  })
})
