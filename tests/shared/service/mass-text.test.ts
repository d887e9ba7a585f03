import { describe, expect, it } from 'vitest'
import { mass, quantity } from '../../../shared/quantity/index.ts'
import { massText } from '../../../shared/service/charge/mass-text.ts'

describe('a mass in words', () => {
  it('has the decimals of a scale', () => {
    expect(massText(quantity('mass', 38, 'oz'), undefined)).toBe('2 lb 6.0 oz (1077 g)')
    expect(massText(quantity('mass', 15.97, 'oz'), 'lb-oz')).toBe('1 lb 0.0 oz')
    expect(massText(mass(0.5), 'kg')).toBe('0.500 kg')
  })

  it('never says nothing of something small', () => {
    expect(massText(mass(0.000_48), undefined)).toBe('0.017 oz (0.48 g)')
    expect(massText(mass(0.001_9), undefined)).toBe('0.067 oz (1.9 g)')
    expect(massText(mass(0), undefined)).toBe('0.0 oz (0 g)')
    expect(massText(mass(-0.000_48), 'g')).toBe('−0.48 g')
  })
})
