import { describe, expect, it, vi } from 'vitest'
import { keptBy, keptWith } from '../../shared/kept.ts'

describe('what is made once', () => {
  it('is made for each key, and kept, undefined too', () => {
    const make = vi.fn((key: string) => (key === 'none' ? undefined : key.length))
    const lengthOf = keptBy(make)
    expect([lengthOf('a'), lengthOf('bcd'), lengthOf('a'), lengthOf('none')]).toEqual([
      1,
      3,
      1,
      undefined,
    ])
    lengthOf('none')
    expect(make.mock.calls).toEqual([['a'], ['bcd'], ['none']])
  })

  it('is right, but made anew, for more keys than are kept', () => {
    const make = vi.fn((key: number) => -key)
    const negative = keptBy(make, 2)
    expect([1, 2, 3, 3, 1].map((key) => negative(key))).toEqual([-1, -2, -3, -3, -1])
    expect(make).toHaveBeenCalledTimes(4)
  })

  it('is made for each object by itself', () => {
    const [a, b] = [{ name: 'a' }, { name: 'a' }]
    const make = vi.fn(({ name }: { name: string }) => name.toUpperCase())
    const upper = keptWith(make)
    expect([upper(a), upper(b), upper(a)]).toEqual(['A', 'A', 'A'])
    expect(make).toHaveBeenCalledTimes(2)
  })
})
