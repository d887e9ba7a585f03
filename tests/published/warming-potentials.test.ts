import { describe, expect, it } from 'vitest'
import warming from '../../data/service/warming-potentials.json' with { type: 'json' }

// IPCC, 100 years: AR4 (2007) WG1 table 2.14, AR5 (2013) WG1 table 8.A.1, AR6 (2021) WG1 table 7.SM.7, read in
// the tables of CalebBell/chemicals (Environment, commit 82faef9). Whole figures are exact. Ozone:
// Montreal Protocol values, 40 CFR 82 subpart A appendices, in the same tables.
const IPCC = {
  'R-22': [1810, 1760, 1960, 0.055],
  'R-32': [675, 677, 771, 0],
  'R-124': [609, 527, 597, 0.022],
  'R-125': [3500, 3170, 3740, 0],
  'R-134a': [1430, 1300, 1530, 0],
  'R-142b': [2310, 1980, 2300, 0.065],
  'R-143a': [4470, 4800, 5810, 0],
  'R-152a': [124, 138, 164, 0],
  'R-218': [8830, 8900, 9290, 0],
  'R-744': [1, 1, 1, 0],
} as const

// The same reports, which have none of these in AR4; the convention of Regulation (EU) 517/2014 for
// them is from memory. A report that has none counts as 0: hydrocarbons are below 1.
const NOT_IN_AR4 = {
  'R-290': [3, 0, 0.02],
  'R-600': [4, 0, 0],
  'R-600a': [3, 0, 0],
  'R-601a': [5, 0, 0],
  'R-1234yf': [4, 0.351, 0.501],
  'R-1234ze(E)': [7, 0.953, 1.37],
} as const

type Row = Readonly<Record<string, number | string>>
const rows = warming.substances as unknown as Readonly<Record<string, Row | undefined>>

describe('warming potentials of the components of blends', () => {
  it.each(Object.entries(IPCC))(
    '%s in AR4, AR5 and AR6, and its ozone depletion potential',
    (substance, [ar4, ar5, ar6, odp]) => {
      expect(rows[substance]).toEqual({
        ...{ AR4: ar4, AR4From: 'AR4', AR5: ar5, AR5From: 'AR5', AR6: ar6, AR6From: 'AR6' },
        odp,
      })
    },
  )

  it.each(Object.entries(NOT_IN_AR4))(
    '%s in AR5 and AR6, and by the remembered convention before them',
    (substance, [convention, ar5, ar6]) => {
      expect(rows[substance]).toMatchObject({ AR4: convention, AR4From: 'convention', odp: 0 })
      expect(rows[substance]).toMatchObject({ AR5: ar5, AR5From: ar5 ? 'AR5' : 'none' })
      expect(rows[substance]).toMatchObject({ AR6: ar6, AR6From: ar6 ? 'AR6' : 'none' })
    },
  )

  it('name the report or the convention that each comes from', () => {
    const named = Object.values(rows).flatMap((row) => [row?.AR4From, row?.AR5From, row?.AR6From])
    for (const source of new Set(named)) expect(Object.keys(warming.sources)).toContain(source)
    expect(Object.keys(warming.sources).sort()).toEqual([
      ...['AR4', 'AR5', 'AR6', 'convention', 'none', 'odp'],
    ])
  })

  it('are of no other substance', () => {
    expect(Object.keys(rows).sort()).toEqual(Object.keys({ ...IPCC, ...NOT_IN_AR4 }).sort())
  })
})
