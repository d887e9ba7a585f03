import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CalcError } from '../../../shared/errors.ts'
import { refrigerant, refrigerants } from '../../../shared/refrigerant/index.ts'
import { refusalOf } from '../../support/refusal.ts'

describe('finding a refrigerant', () => {
  it.each([
    ['R-134a', 'R-134a'],
    ['r134a', 'R-134a'],
    ['R134A', 'R-134a'],
    ['134a', 'R-134a'],
    ['HFC-134a', 'R-134a'],
    [' r - 134 a ', 'R-134a'],
    ['R‑134a', 'R-134a'], // a non-breaking hyphen
    ['１３４ａ', 'R-134a'], // full-width digits
    ['HFO-1234yf', 'R-1234yf'],
    ['1234yf', 'R-1234yf'],
    ['r1234ze', 'R-1234ze(E)'],
    ['R-1234ze(E)', 'R-1234ze(E)'],
    ['propane', 'R-290'],
    ['Isobutane', 'R-600a'],
    ['CO2', 'R-744'],
    ['carbon dioxide', 'R-744'],
    ['CFC-12', 'R-12'],
    ['22', 'R-22'],
    ['R−134a', 'R-134a'], // a minus
    ['R.134a', 'R-134a'],
    ['“R-134a”', 'R-134a'],
    ['R-134\u200Ba', 'R-134a'], // a space without width
    ['R-134a®', 'R-134a'],
    ['CO₂', 'R-744'],
  ])('%s is %s', (typed, id) => {
    expect(refrigerant(typed).info.id).toBe(id)
  })

  // The part of a number that only one has.
  it.each([
    ['410', 'R-410A'],
    ['r410', 'R-410A'],
    ['134', 'R-134a'],
    ['r600', 'R-600a'],
    ['yf', 'R-1234yf'],
    ['zee', 'R-1234ze(E)'],
  ])('%s can only be %s', (typed, id) => {
    expect(refrigerant(typed).info.id).toBe(id)
  })

  it.each(['407', '1234', '13', '4', '41', 'a', 'f', '7c', '34a', 'r', '', '410x', 'r1234z'])(
    '"%s" could be several, or none',
    (typed) => {
      expect(refusalOf(() => refrigerant(typed)).code).toBe('unknown-refrigerant')
    },
  )

  // What is left without such a letter would often be another refrigerant, or the one by chance.
  it.each([
    ['R-134\uFFFD', '\uFFFD'], // a letter that was lost on the way
    ['R-410\u0410', '\u0430'], // a Cyrillic А
    ['R-134?', '?'],
    ['R-1234yf*', '*'],
    ['R-407é', 'é'],
    ['R-22+', '+'],
  ])('%s is none, since no name has such a letter', (typed, letter) => {
    const { code, message, hint } = refusalOf(() => refrigerant(typed))
    expect(code).toBe('unknown-refrigerant')
    expect(message).toContain(typed)
    expect(hint).toMatch(/^Nearest: R-/u)
    expect(hint).toContain(`No name has '${letter}' in it.`)
  })

  it('names what it was asked for, cut where it is long, and what there is where nothing is near', () => {
    const { message } = refusalOf(() => refrigerant(`R-${'9'.repeat(60)}`))
    expect(message).toBe(`There is no refrigerant 'R-${'9'.repeat(38)}…' here.`)
    const { hint } = refusalOf(() => refrigerant('@@@@@@@@@@@@@@@@@@@@@@@@'))
    expect(hint).toMatch(/^Known: R-12, .*R-744/u)
    expect(refusalOf(() => refrigerant('R-134b')).hint).toMatch(
      /^Nearest: (?:R-\S+, ){0,2}R-\S+\.$/u,
    )
  })

  it('lists each once, in order of designation', () => {
    const ids = refrigerants().map(({ id }) => id)
    expect(new Set(ids).size).toBe(ids.length)
    const number = (id: string) => Number(/\d+/u.exec(id)?.[0])
    const misplaced = ids.find(
      (id, index) => index > 0 && number(id) < number(ids[index - 1] ?? ''),
    )
    expect(misplaced, 'entry of shared/refrigerant/registry.ts out of its order').toBeUndefined()
  })

  it('gives one object for one refrigerant, whatever it was called', () => {
    expect(refrigerant('CO2')).toBe(refrigerant('R-744'))
  })

  it('resolves every designation and alias to its own refrigerant', () => {
    for (const info of refrigerants()) {
      for (const name of [info.id, ...info.aliases]) expect(refrigerant(name).info.id).toBe(info.id)
    }
  })

  it.each([
    ['R-134b', 'R-134a'],
    ['R-1234fy', 'R-1234yf'],
    ['propan', 'R-290'],
    ['R23', 'R-22'],
  ])('for %s names %s among the nearest', (typed, near) => {
    const refusal = refusalOf(() => refrigerant(typed))
    expect(refusal.code).toBe('unknown-refrigerant')
    expect(refusal.hint).toContain(near)
  })

  it('answers any text with a refrigerant or a named refusal', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200 }), (text) => {
        try {
          expect(refrigerant(text).info.id).toMatch(/^R-/u)
        } catch (error) {
          expect((error as CalcError).code).toBe('unknown-refrigerant')
        }
      }),
    )
  })
})
