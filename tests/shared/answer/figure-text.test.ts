import { describe, expect, it } from 'vitest'
import { figureText } from '../../../shared/answer/figure-text.ts'
import { mass, type Quantity, quantity } from '../../../shared/quantity/index.ts'

const us = { units: 'us', precise: false } as const
const pounds = (value: number, plusMinus?: number) => quantity('mass', value, 'lb', plusMinus)
const ounces = (value: number) => quantity('mass', value, 'oz').si
const text = (value: Quantity, more: { step?: number; safe?: 'up' | 'down' } = {}) =>
  figureText({ value, ...more }, us)

describe('a mass on the screen', () => {
  it('is in pounds with ounces from two pounds on, and in ounces below', () => {
    expect(text(pounds(2.9669))).toBe('2 lb 15.5 oz')
    expect(text(pounds(1.9))).toBe('30.4 oz')
    expect(text(pounds(3))).toBe('3 lb')
    expect(text(mass(1).in('g'))).toBe('1000 g')
  })

  it('is no finer than the scale, in pounds with ounces too', () => {
    expect(text(pounds(2.9669), { step: ounces(0.5) })).toBe('2 lb 15.5 oz')
    expect(text(pounds(2.9669), { step: ounces(1) })).toBe('2 lb 15 oz')
    expect(text(pounds(2.99), { step: ounces(1) })).toBe('3 lb')
    expect(text(pounds(20.025), { step: ounces(0.2) })).toBe('20 lb 0.4 oz')
    expect(text(quantity('mass', 9.16, 'oz'), { step: ounces(0.5) })).toBe('9 oz')
  })

  it('rounds a limit to its safe side', () => {
    expect(text(pounds(2.9669), { step: ounces(1), safe: 'up' })).toBe('3 lb')
    expect(text(pounds(2.9669), { step: ounces(1), safe: 'down' })).toBe('2 lb 15 oz')
    expect(text(pounds(2.999), { safe: 'down' })).toBe('2 lb 15.9 oz')
  })

  it('tells a limit as finely as what it limits, where no step is known', () => {
    const si = (value: number, safe?: 'up' | 'down') =>
      figureText({ value: quantity('mass', value, 'kg'), safe }, { units: 'si', precise: false })
    expect(si(10.0364)).toBe('10.036 kg')
    // In steps of 0.1 kg the limit below it would stand above it.
    expect(si(10.0081, 'up')).toBe('10.009 kg')
    expect(si(10.0089, 'down')).toBe('10.008 kg')
  })

  it('shows no ± that the scale cannot show', () => {
    expect(text(pounds(2.5, 0.0003))).toBe('2 lb 8 oz')
    expect(text(pounds(2.5, 0.01))).toBe('2 lb 8 oz ±0.16 oz')
    expect(text(pounds(2.5, 0.01), { step: ounces(1) })).toBe('2 lb 8 oz')
  })

  it('keeps full precision where that is asked for', () => {
    const precise = figureText({ value: pounds(2.9669), step: ounces(1) }, { ...us, precise: true })
    expect(precise).toBe('2.9669 lb')
  })
})
