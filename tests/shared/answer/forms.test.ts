import { describe, expect, it } from 'vitest'
import { type FigureForm, figureText } from '../../../shared/answer/figure-text.ts'
import { type Presentation, quantity } from '../../../shared/quantity/index.ts'

const pressure = quantity('gaugePressure', 31.37, 'psig', 4)
const both: Presentation = { units: 'both', precise: false }
const pounds = (value: number, plusMinus?: number) => quantity('mass', value, 'lb', plusMinus)
const of = (value: Parameters<typeof figureText>[0]['value'], form?: FigureForm, how = both) =>
  figureText({ value }, how, form)

describe('a figure in a sentence', () => {
  it('is in the system that leads, with its ±', () => {
    expect(of(pressure)).toBe('31 ±4 psig')
    expect(of(pressure, undefined, { ...both, lead: 'si' })).toBe('216 ±28 kPa g')
  })

  it('has the other system in parentheses as "both"', () => {
    expect(of(pressure, 'both')).toBe('31 ±4 psig (216 ±28 kPa g)')
    expect(of(pressure, 'both', { ...both, lead: 'si' })).toBe('216 ±28 kPa g (31 ±4 psig)')
  })

  it('has no ± as "bare" and "spoken", and no more figures than the ± supports', () => {
    expect(of(pressure, 'bare')).toBe('31 psig')
    expect(of(pressure, 'spoken')).toBe('31 psig (216 kPa g)')
    expect(of(quantity('gaugePressure', 31.37, 'psig'), 'bare')).toBe('31.4 psig')
    expect(of(pounds(2.5, 0.1), 'bare')).toBe('2 lb 8 oz')
    expect(of(pounds(2.5, 0.1), 'spoken')).toBe('2 lb 8 oz (1134 g)')
  })

  it.each(['us', 'si'] as const)('stays in the one system that was asked for: %s', (units) => {
    const alone = { units, precise: false }
    const first = units === 'us' ? '31 ±4 psig' : '216 ±28 kPa g'
    for (const form of [undefined, 'both'] as const) expect(of(pressure, form, alone)).toBe(first)
    const bare = first.replace(/ ±\d+/u, '')
    for (const form of ['bare', 'spoken'] as const) expect(of(pressure, form, alone)).toBe(bare)
    // Whatever leads: it does not count where one system was asked for.
    expect(of(pressure, 'both', { ...alone, lead: units === 'us' ? 'si' : 'us' })).toBe(first)
  })

  it('stays in the unit that somebody asked for by name', () => {
    const kilopascals = quantity('gaugePressure', 200, 'kPa g').in('kPa g')
    expect(of(kilopascals, 'both')).toBe('200 kPa g')
    expect(of(pounds(3).in('oz'), 'both')).toBe('48 oz')
    expect(of(pounds(3).in('oz'), 'spoken')).toBe('48 oz')
  })

  it('is told once where both systems have one unit', () => {
    expect(of(quantity('duration', 10, 'min'), 'both')).toBe('10 min')
    expect(of(quantity('fraction', 55, '%'), 'spoken')).toBe('55 %')
  })

  it('tells a ± of nothing of a share alone', () => {
    expect(of(quantity('fraction', 55, '%', 0))).toBe('55 ±0 %')
    expect(of(quantity('gaugePressure', 30, 'psig', 0))).toBe('30 psig')
  })

  it('may be a word or a plain number', () => {
    expect(of('R-134a', 'both')).toBe('R-134a')
    expect(of(3, 'bare')).toBe('3')
  })
})

describe('pounds and ounces', () => {
  it.each([
    [31.98 / 16, '32 oz'],
    [2, '2 lb'],
    [2 + 15.94 / 16, '2 lb 15.9 oz'],
    [2 + 15.96 / 16, '3 lb'], // not 2 lb 16 oz
    [3 + 0.04 / 16, '3 lb'],
    [3 + 0.06 / 16, '3 lb 0.1 oz'],
    [-2.5, '-2 lb 8 oz'],
    [-1, '-16 oz'],
  ])('%d lb', (value, words) => {
    expect(of(pounds(value))).toBe(words)
  })

  it('follow a scale of grams in the next step of 1, 2 or 5', () => {
    // 5 g are 0.18 oz: steps of 0.2 oz. 10 g are 0.35 oz: steps of 0.5 oz.
    const stepped = (step: number, safe?: 'up' | 'down') =>
      figureText({ value: pounds(48.47 / 16), step, safe }, both)
    expect(stepped(0.005)).toBe('3 lb 0.4 oz')
    expect(stepped(0.005, 'up')).toBe('3 lb 0.6 oz')
    expect(stepped(0.01)).toBe('3 lb 0.5 oz')
    expect(stepped(0.01, 'down')).toBe('3 lb')
  })

  it('stay where they are when a tenth shows them, on whatever side is safe', () => {
    for (let tenths = 320; tenths < 800; tenths += 1) {
      const value = quantity('mass', tenths / 10, 'oz')
      const shown = of(value)
      for (const safe of ['up', 'down'] as const) {
        expect(figureText({ value, safe }, both), `${tenths / 10} oz, ${safe}`).toBe(shown)
      }
    }
  })

  it('have their ± in ounces, in two figures, unless it is below half a step', () => {
    expect(of(pounds(2.5, 0.5 / 16))).toBe('2 lb 8 oz ±0.5 oz')
    expect(of(pounds(2.5, 1.234 / 16))).toBe('2 lb 8 oz ±1.2 oz')
    expect(of(pounds(2.5, 0.051 / 16))).toBe('2 lb 8 oz ±0.051 oz')
    expect(of(pounds(2.5, 0.049 / 16))).toBe('2 lb 8 oz')
    const coarse = { value: pounds(2.5, 0.6 / 16), step: quantity('mass', 1, 'oz').si }
    expect(figureText(coarse, both)).toBe('2 lb 8 oz ±0.6 oz')
  })

  it('are kilograms or grams beside it, and never in SI alone', () => {
    expect(of(pounds(5), 'both')).toBe('5 lb (2.268 kg)')
    expect(of(pounds(5), undefined, { units: 'si', precise: false })).toBe('2.268 kg')
    expect(of(pounds(5.125), undefined, { units: 'us', precise: true })).toBe('5.125 lb')
  })
})
