import { describe, expect, it } from 'vitest'
import data from '../../data/service/air-check.json' with { type: 'json' }
import { airCheck } from '../../shared/service/air-check.ts'

/** psi to one kgf/cm². */
const PSI_PER_KGF = 98_066.5 / 6_894.757293168

/** Readings without error under the barometer of sea level, for which tables are printed. */
const exact = (psig: number, fahrenheit: number) => ({
  pressure: `${psig} ±0 psig`,
  temperature: `${fahrenheit} ±0 °F`,
  barometer: '1013.25 ±0 hPa',
})

describe('40 CFR 82 Subpart B, Appendix A, Table 1 for CFC-12 (2015 edition, every cell read in both units)', () => {
  const cells = data.r12Limits.cells as [number, number, number, number][]

  it('has a line for each degree from 65 to 114 °F', () => {
    expect(cells.map(([, , fahrenheit]) => fahrenheit)).toEqual(
      Array.from({ length: 50 }, (_, index) => 65 + index),
    )
  })

  it('gives the example of 5.4: at 70 °F not over 80 psig', () => {
    expect(cells.find(([, , fahrenheit]) => fahrenheit === 70)?.[3]).toBe(80)
  })

  it.each(cells)(
    '%d °C %d kgf/cm² as printed is %d °F %d psig',
    (celsius, kgf, fahrenheit, psig) => {
      // The printed metric cells are cut to a tenth of a degree and a hundredth of a kgf/cm².
      expect(Math.abs((fahrenheit - 32) / 1.8 - celsius)).toBeLessThan(0.11)
      expect(Math.abs(kgf * PSI_PER_KGF - psig)).toBeLessThan(0.6)
    },
  )

  it.each(cells)('%d °C: the limit is the cell itself', (_, __, fahrenheit, psig) => {
    const at = (pressure: number) =>
      airCheck.run({
        refrigerant: 'R-12',
        ...exact(pressure, fahrenheit),
        recycled: true,
        units: 'us',
      }).result
    const limit = at(psig).limit
    expect(limit?.atLeast).toMatchObject({ value: psig, unit: 'psig' })
    expect(limit?.atMost?.value).toBe(psig)
    expect(at(psig).verdict).toBe('within-limit')
    expect(at(psig + 1).verdict).toBe('over-limit')
  })

  it('stays 9 to 12.5 psi above the saturation pressure of R-12, as an independent check of the cells', () => {
    for (const [, , fahrenheit, psig] of cells) {
      const { result } = airCheck.run({
        refrigerant: 'R-12',
        ...exact(psig, fahrenheit),
        units: 'us',
        precise: true,
      })
      expect(result.above.value).toBeGreaterThan(8.3)
      expect(result.above.value).toBeLessThan(12.7)
    }
  })
})
