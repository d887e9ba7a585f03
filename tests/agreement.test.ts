import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import fits from '../data/saturation-fits.json' with { type: 'json' }
import potentials from '../data/service/warming-potentials.json' with { type: 'json' }
import { refrigerants } from '../shared/refrigerant/index.ts'
import { substanceData } from '../shared/substance/library.ts'
import { mixingRule } from '../shared/substance/mixing-rules.ts'
import { AGREEMENT } from './support/agreement.ts'

const readme = readFileSync('README.md', 'utf8')
/** Rows of the table: what was checked, against what, how near. */
const rows = readme
  .slice(readme.indexOf('| Checked | Against | Agreement |'))
  .split('\n')
  .filter((line, i, all) => line.includes('|') && all.slice(0, i).every((l) => l.includes('|')))
  .slice(2)
  .map((line) => line.split('|').map((cell) => cell.trim()))
const row = (begins: string) =>
  rows.find(([, checked = '', against = '']) => (checked || against).startsWith(begins)) ?? []

const blends = refrigerants().filter(({ composition }) => composition.length > 1)
const isEstimated = ({ composition }: (typeof blends)[number]) => {
  const parts = composition.map(({ substance }) => substanceData(substance))
  return parts.some((a, i) =>
    parts.slice(i + 1).some((b) => mixingRule(a, b).basis === 'estimated'),
  )
}
const relative = (share: number) => share.toExponential()
const percent = (share: number) => `${Number((100 * share).toPrecision(3))} %`

describe("README's table of agreement", () => {
  it('says that a blend with an estimated pair is compared by its own estimates', () => {
    const [, , against, agreement] = row('blends with an estimated pair')
    expect(against).toMatch(/same estimates/u)
    expect(agreement).toMatch(/arithmetic, not the estimates/u)
    expect(row('blends whose pairs all have published parameters')[3]).not.toBe('')
  })

  it('names every blend with an estimated pair and no other, and how far it may be off', () => {
    const said = /such a blend \(([^)]*)\) may be off by 1 to (\d) K/u.exec(readme)
    expect(said?.[1]?.split(', ').toSorted()).toEqual(
      blends
        .filter(isEstimated)
        .map(({ id }) => id)
        .toSorted(),
    )
    expect(Number(said?.[2])).toBe(AGREEMENT.boilingPoint.estimated)
  })

  it.each([
    ['pure substances', `better than ${relative(AGREEMENT.pure)} relative`],
    [
      'blends whose pairs',
      `pressure ${relative(AGREEMENT.blendPressure)}, densities ${relative(AGREEMENT.blendDensity)} relative`,
    ],
    [
      'latent heat',
      AGREEMENT.latentHeat
        .filter(([at]) => [0.95, 0.995, 0.9999].includes(at))
        .map(([at, near], i) => `${percent(near)} ${i < 2 ? 'up to' : 'at'} ${at} Tc`)
        .join(', '),
    ],
    ['contents of a closed space', `${relative(AGREEMENT.flash)} relative`],
    ['boiling points at one atmosphere', `within ${AGREEMENT.boilingPoint.pure} K`],
    [
      'the same of blends',
      `within ${AGREEMENT.boilingPoint.blend} K; ${AGREEMENT.boilingPoint.withHydrocarbon} K with a hydrocarbon in the blend; ${AGREEMENT.boilingPoint.estimated} K with an estimated pair`,
    ],
    [
      'R-410A, R-407C',
      `within ${percent(AGREEMENT.printed['R-410A'])} and ${percent(AGREEMENT.printed['R-407C'])}; the makers print below the equations`,
    ],
  ])('promises of "%s" what its comparison allows: %s', (begins, agreement) => {
    expect(row(begins)[3]).toBe(agreement)
  })

  it('promises of the curves no more than was found when they were fitted', () => {
    const errors = Object.values(fits).map(({ largestErrors }) => largestErrors)
    expect(errors.length).toBeGreaterThan(20)
    const worst = (name: keyof (typeof errors)[number]) => Math.max(...errors.map((e) => e[name]))
    expect(row('curves')[3]).toBe('better than 1 mK; density 1e-6 below 0.98 Tc, 2e-5 above')
    expect(worst('temperatureK')).toBeLessThan(1e-3)
    expect(worst('densityRelative')).toBeLessThan(1e-6)
    expect(worst('densityRelativeNearCritical')).toBeLessThan(2e-5)
  })
})

describe('a warming potential as a refrigerant and as a component of a blend', () => {
  const own: Readonly<Record<string, Readonly<Record<string, unknown>>>> = potentials.substances
  const both = refrigerants()
    .filter(({ composition }) => composition.length === 1)
    .flatMap(({ id, gwp }) => gwp.map((figure) => ({ id, ...figure })))
    .filter(({ id, report }) => own[id]?.[report] !== undefined)

  it.each(both.map((figure) => [figure.id, figure.report, figure] as const))(
    '%s by %s is one figure, or an upper bound that the other keeps',
    (id, report, { value, ...figure }) => {
      const counted = own[id]?.[report]
      if ('below' in figure && figure.below) expect(counted).toBeLessThan(value)
      else expect(counted).toBe(value)
    },
  )
})
