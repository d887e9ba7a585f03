import { describe, expect, it } from 'vitest'
import { moistAir } from '../../../shared/service/moist-air.ts'

describe('moist air', () => {
  it.each([
    [200, 0.5, 101_325],
    [300, 0, 101_325],
    [300, 1.2, 101_325],
    [300, 0.5, 1_000],
    [343, 1, 21_000],
    [Number.NaN, 0.5, 101_325],
    [300, Number.NaN, 101_325],
  ])('refuses %d K at %d and %d Pa', (dryBulb, humidity, pressure) => {
    expect(() => moistAir(dryBulb, humidity, pressure)).toThrow()
  })
})
