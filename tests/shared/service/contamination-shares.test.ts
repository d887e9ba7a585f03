import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { sharesThatFit } from '../../../shared/service/contamination/shares.ts'
import { contamination } from '../../../shared/service/contamination.ts'

/** A top of 150 at 55 %, as an azeotrope has. */
const hill = (share: number) => 150 - 200 * (share - 0.55) ** 2
/** Where the hill has a height. */
const sides = (height: number) => [
  0.55 - Math.sqrt((150 - height) / 200),
  0.55 + Math.sqrt((150 - height) / 200),
]
const close = (value: number | undefined) => expect.closeTo(value ?? Number.NaN, 4)

describe('the shares that read a pressure', () => {
  it('are both sides of a hill, each with its own edges', () => {
    const [from, to] = [sides(128), sides(132)]
    expect(sharesThatFit(hill, 130, () => 2)).toEqual([
      {
        share: close(sides(130)[0]),
        from: close(from[0]),
        to: close(to[0]),
        exact: [close(sides(130)[0])],
      },
      {
        share: close(sides(130)[1]),
        from: close(to[1]),
        to: close(from[1]),
        exact: [close(sides(130)[1])],
      },
    ])
  })

  it('run into one about the top, whose middle stands for them', () => {
    const [found, ...others] = sharesThatFit(hill, 149, () => 2)
    expect(others).toEqual([])
    expect(found).toMatchObject({
      share: close(0.55),
      from: close(sides(147)[0]),
      to: close(sides(147)[1]),
    })
    expect(found?.exact).toHaveLength(2)
  })

  it('are those under the top where the pressure lies above it within the band', () => {
    const [found, ...others] = sharesThatFit(hill, 151, () => 2)
    expect(others).toEqual([])
    expect(found).toMatchObject({ from: close(sides(149)[0]), to: close(sides(149)[1]), exact: [] })
    expect(Math.abs((found?.share ?? 0) - 0.55)).toBeLessThan(0.01)
    expect(sharesThatFit(hill, 155, () => 2)).toEqual([])
  })

  it('end at 0 or 100 % where the band does', () => {
    expect(
      sharesThatFit(
        (share) => 100 + 20 * share,
        101,
        () => 3,
      ),
    ).toEqual([{ share: close(0.05), from: 0, to: close(0.2), exact: [close(0.05)] }])
    expect(
      sharesThatFit(
        (share) => 100 + 20 * share,
        120,
        () => 1,
      ),
    ).toEqual([{ share: close(1), from: close(0.95), to: 1, exact: [close(1)] }])
  })

  it('are points where nothing is uncertain', () => {
    expect(
      sharesThatFit(hill, 130, () => 0).map(({ share, from, to }) => [share, from, to]),
    ).toEqual(sides(130).map((side) => [close(side), close(side), close(side)]))
  })

  it('are looked for on the side where the mixture has a liquid', () => {
    const cut = (share: number) => (share > 0.6 ? undefined : hill(share))
    expect(sharesThatFit(cut, 130, () => 2).map(({ share }) => share)).toEqual([
      close(sides(130)[0]),
    ])
    expect(
      sharesThatFit(
        () => undefined,
        130,
        () => 2,
      ),
    ).toEqual([])
  })

  it('take the width that belongs to the share', () => {
    const [found] = sharesThatFit(
      (share) => 100 + 100 * share,
      150,
      (share) => 20 * share,
    )
    // 100 + 100 s ± 20 s = 150
    expect(found).toMatchObject({ from: close(50 / 120), to: close(50 / 80) })
  })

  it('hold every share that fits and none that does not, for any hill, valley or slope', () => {
    const height = fc.double({ min: -300, max: 300, noNaN: true })
    const part = fc.double({ min: 0.1, max: 0.9, noNaN: true })
    fc.assert(
      fc.property(
        height,
        height,
        part,
        part,
        fc.double({ min: 0.5, max: 20, noNaN: true }),
        (slope, bend, top, aim, width) => {
          const curve = (share: number) => 1000 + slope * share + bend * (share - top) ** 2
          const wanted = curve(aim)
          const found = sharesThatFit(curve, wanted, () => width)
          expect(found.some(({ from, to }) => aim >= from - 1e-6 && aim <= to + 1e-6)).toBe(true)
          for (let share = 0; share <= 1; share += 0.01) {
            const off = Math.abs(curve(share) - wanted)
            if (Math.abs(off - width) < 0.2) continue
            expect(found.some(({ from, to }) => share >= from && share <= to)).toBe(off < width)
          }
        },
      ),
    )
  })
})

describe('R-134a that may hold R-12', () => {
  const run = (pressure: string, more: object = {}) =>
    contamination.run({
      refrigerant: 'R-134a',
      pressure,
      temperature: '80 °F',
      suspects: ['R-12'],
      ...more,
    })

  it('at 100 psig: 18 or 86 %, and the pressure alone cannot tell them apart', () => {
    const { result, warnings } = run('100 psig', { precise: true })
    expect(
      result.shares.map(({ refrigerant, share }) => [refrigerant, Math.round(share.value)]),
    ).toEqual([
      ['R-12', 18],
      ['R-12', 86],
    ])
    const [low, high] = result.shares
    expect(low?.shareTo.value).toBeLessThan(high?.shareFrom.value ?? 0)
    const texts = result.explanations
      .filter(({ cause }) => cause === 'other-refrigerant')
      .map(({ text }) => text)
    expect(texts).toHaveLength(2)
    for (const text of texts) expect(text).toMatch(/the pressure alone cannot tell them apart/u)
    expect(warnings.map(({ code }) => code)).toContain('several-shares-fit')
  })

  it('near the top is one wide band', () => {
    const { result, warnings } = run('107 psig')
    expect(result.shares).toHaveLength(1)
    expect(result.shares[0]?.shareFrom.value).toBeLessThan(35)
    expect(result.shares[0]?.shareTo.value).toBeGreaterThan(70)
    expect(warnings.map(({ code }) => code)).not.toContain('several-shares-fit')
  })

  it('is ruled out above the top, with the mixture model’s own uncertainty counted', () => {
    expect(run('125 psig').result).toMatchObject({ shares: [], ruledOut: ['R-12'] })
  })

  it('has a wider band where mixing parameters are estimated', () => {
    const share = (suspect: string) => {
      const found = run('100 psig', { suspects: [suspect], precise: true }).result.shares[0]
      return (
        ((found?.shareTo.value ?? 0) - (found?.shareFrom.value ?? 0)) / (found?.share.value ?? 1)
      )
    }
    // R-32 with R-134a is published; R-125 with R-134a too; R-115 with R-134a is not
    expect(share('R-32')).toBeLessThan(0.5)
    expect(share('R-402A')).toBeGreaterThan(share('R-404A'))
  })

  it('that is another refrigerant altogether is named so, apart from a share', () => {
    const { result } = contamination.run({
      refrigerant: 'R-134a',
      pressure: '150 psig',
      temperature: '80 °F',
      suspects: ['R-22'],
    })
    expect(result.shares.filter(({ share }) => share.value === 100)).toHaveLength(0)
    const alone = contamination.run({
      refrigerant: 'R-134a',
      pressure: '143.6 psig',
      temperature: '80 °F',
      suspects: ['R-22'],
    })
    expect(alone.result.shares.map(({ share }) => share.value)).toEqual([100])
  })
})
