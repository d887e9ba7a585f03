import { parse } from 'csv-parse/sync'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { csvLine } from '../../shared/csv.ts'
import { visible } from '../../shared/visible.ts'

describe('a line of CSV', () => {
  it.each(['=1+1', '+SUM(A1)', '-2+3', '@SUM(A1)', "=cmd|' /C calc'!A0", '＝1+1', '\tx'])(
    'has %j as a text, which no spreadsheet runs',
    (text) => {
      const [[cell = '']] = parse(csvLine([text])) as [[string]]
      expect(cell).toBe(`'${text}`)
    },
  )

  it.each(['-5.2', '+3', '-1e-6', -5.2, 'a=b', 'R-134a'])('leaves %j as it is', (cell) => {
    expect(csvLine([cell])).toBe(`${cell}\r\n`)
  })

  it('reads back as the cells that went in', () => {
    const cell = fc
      .string({ unit: 'grapheme' })
      .filter((text) => !/^[=+\-@\t\r＝＋－＠]/u.test(text))
    fc.assert(
      fc.property(fc.array(cell, { minLength: 2, maxLength: 6 }), (cells) => {
        expect(parse(csvLine(cells))).toEqual([cells.map(visible)])
      }),
    )
  })
})
