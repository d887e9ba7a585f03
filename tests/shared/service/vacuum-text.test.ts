import { describe, expect, it } from 'vitest'
import { riseText, vacuumText } from '../../../shared/service/evacuation/vacuum-text.ts'

// One micron of mercury is 0.1333224 Pa.
describe('a vacuum inside a sentence', () => {
  it('has three figures in the unit of its gauge, and the same in SI', () => {
    expect(vacuumText(54)).toBe('405 micron (54 Pa)')
    expect(vacuumText(133.3224)).toBe('1000 micron (133 Pa)')
    expect(vacuumText(3169)).toBe('23800 micron (3170 Pa)')
    expect(riseText(13.33224)).toBe('100 micron (13.3 Pa)')
  })

  it('has its ± in both units, to its own last figure', () => {
    expect(vacuumText(66.6612, 6.66612)).toBe('500 ±50 micron (67 ±7 Pa)')
    expect(riseText(66.6612, 1.99984)).toBe('500 ±15 micron (66.7 ±2 Pa)')
  })

  it('does not go below nothing', () => {
    expect(vacuumText(-5)).toMatch(/^0 micron \(0 Pa\)$/u)
  })
})
