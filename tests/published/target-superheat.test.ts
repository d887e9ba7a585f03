import { describe, expect, it } from 'vitest'
import data from '../../data/service/reading-sources.json' with { type: 'json' }
import { quantity } from '../../shared/quantity/index.ts'
import { targetSuperheat } from '../../shared/service/readings/target-superheat.ts'
import { refusalOf } from '../support/refusal.ts'

const kelvin = (fahrenheit: number) => quantity('temperature', fahrenheit, '°F').si
const targetF = (outdoorF: number, wetBulbF: number) =>
  quantity(
    'temperatureDifference',
    targetSuperheat(kelvin(outdoorF), kelvin(wetBulbF)).targetK,
    'K',
  ).to('°F')

const refusal = (outdoorF: number, wetBulbF: number) => refusalOf(() => targetF(outdoorF, wetBulbF))

// Keyed again from the printed table, apart from the data file: whole degrees, so the tolerance is nothing.
// Carrier 38VTA installation guide, https://manuals.online/carrier/heat-pump/38vta040/dimensions-and-installation-guide/19xq4
// rows 40 to 50: Lennox 14ACX, page 26.
const PRINTED = `
       50 52 54 56 58 60 62 64 66 68 70 72 74 76
   40  15 18 20 23 26 29 32 34 38 41 43 46 48 51
   45  13 16 18 21 24 27 30 33 36 39 41 44 46 49
   50  11 14 16 19 22 25 28 31 34 37 39 42 44 47
   55   9 12 14 17 20 23 26 29 32 35 37 40 42 45
   60   7 10 12 15 18 21 24 27 30 33 35 38 40 43
   65   -  6 10 13 16 19 21 24 27 30 33 36 38 41
   70   -  -  7 10 13 16 19 21 24 27 30 33 36 39
   75   -  -  -  6  9 12 15 18 21 24 28 31 34 37
   80   -  -  -  -  5  8 12 15 18 21 25 28 31 35
   85   -  -  -  -  -  -  8 11 15 19 22 26 30 33
   90   -  -  -  -  -  -  5  9 13 16 20 24 27 31
   95   -  -  -  -  -  -  -  6 10 14 18 22 25 29
  100   -  -  -  -  -  -  -  -  8 12 15 20 23 27
  105   -  -  -  -  -  -  -  -  5  9 13 17 22 26
  110   -  -  -  -  -  -  -  -  -  6 11 15 20 25
  115   -  -  -  -  -  -  -  -  -  -  8 14 18 23`
const [header = [], ...lines] = PRINTED.trim()
  .split('\n')
  .map((line) => line.trim().split(/\s+/u))
const cells = lines.flatMap(([outdoor, ...targets]) =>
  targets.map((target, index) => ({
    outdoorF: Number(outdoor),
    wetBulbF: Number(header[index]),
    printed: target === '-' ? undefined : Number(target),
  })),
)

describe('published target superheat of a fixed orifice', () => {
  it('has 160 cells with a figure and 64 with a dash', () => {
    expect(cells.filter((cell) => cell.printed !== undefined)).toHaveLength(160)
    expect(cells).toHaveLength(224)
  })

  it.each(cells.filter((cell) => cell.printed !== undefined))(
    '$outdoorF °F outdoors, $wetBulbF °F wet bulb: $printed °F',
    ({ outdoorF, wetBulbF, printed }) => {
      expect(targetF(outdoorF, wetBulbF)).toBeCloseTo(printed ?? Number.NaN, 9)
      expect(targetSuperheat(kelvin(outdoorF), kelvin(wetBulbF)).method).toBe('published-table')
    },
  )

  it.each(cells.filter((cell) => cell.printed === undefined))(
    '$outdoorF °F outdoors, $wetBulbF °F wet bulb: a dash, so no valid test',
    ({ outdoorF, wetBulbF }) => {
      const error = refusal(outdoorF, wetBulbF)
      expect(error.code).toBe('refused')
      expect(error.message).toContain('dash')
    },
  )
})

describe('the common formula', () => {
  it('agrees with the printed table as far as its source entry says', () => {
    // What data/service/reading-sources.json says of the formula, counted over the Carrier cells.
    const errors = cells
      .filter(({ outdoorF, printed }) => outdoorF >= 55 && printed !== undefined)
      .map(({ outdoorF, wetBulbF, printed }) => (3 * wetBulbF - 80 - outdoorF) / 2 - (printed ?? 0))
    expect(errors).toHaveLength(118)
    expect(errors.reduce((sum, error) => sum + error, 0) / errors.length).toBeCloseTo(-0.5, 1)
    expect(errors.filter((error) => Math.abs(error) <= 5).length / errors.length).toBeCloseTo(
      0.98,
      2,
    )
    expect(Math.min(...errors)).toBe(-6.5)
    expect(data.sources['superheat-formula'].note).toContain('−6.5 °F')
  })
})
