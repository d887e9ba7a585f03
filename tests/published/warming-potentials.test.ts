import { describe, expect, it } from 'vitest'
import warming from '../../data/service/warming-potentials.json' with { type: 'json' }

// IPCC, 100 years: AR4 (2007) WG1 table 2.14, AR5 (2013) WG1 table 8.A.1, AR6 (2021) WG1 table 7.SM.7, read in
// the tables of CalebBell/chemicals (Environment, commit 82faef9). Whole figures are exact.
const IPCC = {
  'R-22': [1810, 1760, 1960],
  'R-32': [675, 677, 771],
  'R-134a': [1430, 1300, 1530],
  'R-152a': [124, 138, 164],
} as const

// The same reports; AR4 has none of it.
const HFO = { 'R-1234yf': [0.351, 0.501] } as const

type Row = Readonly<Record<string, number | string>>
const rows = warming.substances as unknown as Readonly<Record<string, Row | undefined>>

describe('warming potentials of the components of blends', () => {
  it.each(Object.entries(IPCC))('%s in AR4, AR5 and AR6', (substance, [ar4, ar5, ar6]) => {
    expect(rows[substance]).toMatchObject({ AR4: ar4, AR5: ar5, AR6: ar6 })
  })

  it.each(Object.entries(HFO))('%s in AR5 and AR6', (substance, [ar5, ar6]) => {
    expect(rows[substance]).toMatchObject({ AR5: ar5, AR6: ar6 })
  })
})
