import { describe, expect, it } from 'vitest'
import { quantity, SEA_LEVEL_PA } from '../../../shared/quantity/index.ts'
import { refrigerant } from '../../../shared/refrigerant/index.ts'
import { middleTemperature } from '../../../shared/service/cooling-check/condensing-part.ts'
import { PERFORMANCE_TABLES } from '../../../shared/service/cooling-check/tables.ts'

const r134a = refrigerant('R-134a')
const kelvin = (fahrenheit: number) => quantity('temperature', fahrenheit, '°F').si

describe('performance tables', () => {
  it('prints each range from low to high, and high sides that rise with the ambient', () => {
    for (const entry of PERFORMANCE_TABLES.filter(({ followsAmbient }) => followsAmbient)) {
      const rows = [70, 77, 80, 86, 90, 95, 100, 104, 110].flatMap((f) => {
        const high = entry.high(kelvin(f))
        const low = entry.low(kelvin(f))
        return high && low ? [{ high, low }] : []
      })
      expect(rows.length).toBeGreaterThan(1)
      rows.forEach(({ high, low }, index) => {
        expect(high[0]).toBeLessThan(high[1])
        expect(low[0]).toBeLessThan(low[1])
        expect(low[1]).toBeLessThan(high[0])
        expect(high[1]).toBeGreaterThanOrEqual((rows[index - 1]?.high[1] ?? 0) - 1e-6)
      })
    }
  })

  // The spread of published high sides as condensing above ambient: no one figure fits them all.
  it('spans some 24 to 70 °F of condensing above ambient', () => {
    const above = PERFORMANCE_TABLES.filter(
      ({ refrigerant: name, followsAmbient }) => name === 'R-134a' && followsAmbient,
    ).flatMap((entry) =>
      [70, 77, 80, 86, 90, 95, 100, 104, 110].flatMap((f) =>
        (entry.high(kelvin(f)) ?? []).map((pa) => (middleTemperature(r134a, pa) - kelvin(f)) * 1.8),
      ),
    )
    expect(Math.min(...above)).toBeCloseTo(24, 0)
    expect(Math.max(...above)).toBeCloseTo(70, 0)
  })
})
