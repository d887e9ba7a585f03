import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { labelsIn } from '../../../shared/diagram/scene/labels.ts'
import { el, rounded, written } from '../../../shared/diagram/scene/node.ts'
import { hatching, pathInside } from '../../../shared/diagram/scene/path.ts'
import { linear, log } from '../../../shared/diagram/scene/scale.ts'
import { widthOfText, wrapped } from '../../../shared/diagram/scene/text.ts'
import {
  diagramStyle,
  type LookName,
  PALETTES,
  paintIn,
} from '../../../shared/diagram/scene/theme.ts'
import { parsed } from '../../support/picture.ts'

const finite = { noNaN: true, noDefaultInfinity: true } as const

describe('an element', () => {
  it('says any text back, and nothing of it as an element', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const root = parsed(written(el('text', { title: text }, text)))
        const kept = [...text]
          .filter((letter) => !/[\p{Cc}\p{Cs}\ufffe\uffff]/u.test(letter))
          .join('')
        expect(root.children).toEqual([])
        expect(root.text.replace(/[\p{Cc}]/gu, '')).toBe(kept.replaceAll('\u00a0', ' '))
      }),
    )
    expect(written(el('text', { a: '"<&>' }, '<b> & "c"'))).toBe(
      '<text a="&quot;&lt;&amp;&gt;">&lt;b&gt; &amp; &quot;c&quot;</text>',
    )
  })

  it('has no place that is no number', () => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => written(el('line', { x1: value }))).toThrow(RangeError)
    }
    expect(rounded(-0.001)).toBe(0)
    expect(Object.is(rounded(-0.001), 0)).toBe(true)
  })
})

describe('a scale', () => {
  const ends = fc.tuple(
    fc.double({ ...finite, min: 1e-3, max: 1e6 }),
    fc.double({ ...finite, min: 1.01, max: 1e5 }),
  )

  it.each([
    ['linear', linear],
    ['log', log],
  ] as const)('undoes itself: %s', (_, scale) => {
    fc.assert(
      fc.property(ends, fc.double({ ...finite, min: 0, max: 1 }), ([from, ratio], share) => {
        const found = scale(from, from * ratio, 300, 20)
        const pixel = 300 - 280 * share
        expect(found(found.invert(pixel))).toBeCloseTo(pixel, 6)
        expect(found(from)).toBeCloseTo(300, 6)
        expect(found(from * ratio)).toBeCloseTo(20, 6)
      }),
    )
  })

  it('puts equal ratios at equal lengths where it is logarithmic', () => {
    const scale = log(10, 1000, 0, 200)
    expect(scale(100)).toBeCloseTo(100, 9)
    expect(scale.ticks(3)).toEqual([10, 100, 1000])
    expect(scale.ticks(8).every((tick) => tick >= 10 && tick <= 1000)).toBe(true)
  })
})

describe('a line', () => {
  const box = { left: 0, top: 0, right: 10, bottom: 10 }

  it('is cut where it leaves the plot, and goes on where it comes back', () => {
    const path = pathInside(
      [
        [-5, 5],
        [5, 5],
        [5, 20],
        [8, 20],
        [8, 5],
      ],
      box,
    )
    expect(path).toBe('M0,5L5,5L5,10M8,10L8,5')
    expect(
      pathInside(
        [
          [-5, -5],
          [-1, 20],
        ],
        box,
      ),
    ).toBeUndefined()
  })

  it('never leaves it', () => {
    const point = fc.tuple(
      fc.double({ ...finite, min: -50, max: 50 }),
      fc.double({ ...finite, min: -50, max: 50 }),
    )
    fc.assert(
      fc.property(fc.array(point, { minLength: 2, maxLength: 12 }), (points) => {
        const numbers = [...(pathInside(points, box) ?? '').matchAll(/-?[\d.]+/gu)].map(Number)
        expect(numbers.every((value) => value >= 0 && value <= 10)).toBe(true)
      }),
    )
  })

  it('hatches one way or the other', () => {
    const rising = hatching({ left: 0, top: 0, right: 20, bottom: 10 })
    const falling = hatching({ left: 0, top: 0, right: 20, bottom: 10 }, true)
    expect(rising).not.toBe(falling)
    expect(rising.length).toBeGreaterThan(20)
  })
})

describe('text', () => {
  it('is broken at spaces and nowhere within a figure', () => {
    const text = 'liquid, 185 psig, and more'.replace('185 psig', '185\u00a0psig')
    const lines = wrapped(text, 'label', widthOfText('liquid, 185', 'label') + 2)
    expect(lines.some((line) => line.includes('185\u00a0psig'))).toBe(true)
    expect(lines.join(' ')).toBe(text)
  })

  it('gives way to what lies there, and is left out where there is no room', () => {
    const labels = labelsIn(paintIn('light'), { left: 0, top: 0, right: 100, bottom: 100 })
    const at = (y: number) => ({ text: 'low', at: [10, y] as const })
    expect(labels.place([at(50)])).toHaveLength(1)
    expect(labels.place([at(52)])).toEqual([])
    const [moved] = labels.place([at(52), at(80)])
    expect(written(moved ?? '')).toContain('y="80"')
    expect(labels.mustPlace([at(51), at(90)])).toHaveLength(1)
    expect(labels.place([{ text: 'low', at: [98, 20] }])).toEqual([])
  })
})

describe('a theme', () => {
  /** WCAG 2.2: relative luminance, and the contrast of two. */
  const luminance = (colour: string) =>
    [1, 3, 5].reduce((sum, at, index) => {
      const value = Number.parseInt(colour.slice(at, at + 2), 16) / 255
      const part = value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4
      return sum + part * ([0.2126, 0.7152, 0.0722][index] ?? 0)
    }, 0)
  const contrast = (a: string, b: string) => {
    const [high = 0, low = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x)
    return (high + 0.05) / (low + 0.05)
  }

  it.each(Object.entries(PALETTES))('can be read: %s', (_, palette) => {
    for (const tone of ['ink', 'soft', 'warm', 'cool'] as const) {
      for (const ground of ['paper', 'tint'] as const) {
        expect(contrast(palette[tone], palette[ground])).toBeGreaterThan(4.5)
      }
    }
  })

  it('tells lines apart without colour', () => {
    const paint = paintIn('light')
    const look = (name: LookName) => {
      const { 'stroke-dasharray': dash, 'stroke-width': width } = paint(name)
      return `${dash} ${width}`
    }
    const together: readonly (readonly LookName[])[] = [
      ['cycle', 'cycle-assumed', 'other', 'dome', 'isotherm', 'isentrope', 'quality', 'dome-top'],
      ['bubble', 'dew', 'drop', 'distance'],
      ['fit', 'limit', 'other-limit', 'spread'],
    ]
    for (const group of together) {
      const looks = group.map(look)
      if (group[0] === 'bubble') expect(look('bubble')).not.toBe(look('dew'))
      else expect(new Set(looks).size).toBe(looks.length)
    }
  })

  it('has for a page a class for every look, and the same colours by the device and in print', () => {
    const css = diagramStyle()
    for (const name of ['dome', 'cycle', 'limit', 'halo', 'hatch'] as const) {
      const { class: names } = paintIn('page')(name)
      expect(css).toContain(`.${names}{`)
    }
    for (const palette of Object.values(PALETTES))
      expect(css).toContain(`--dg-warm:${palette.warm}`)
    expect(css).toContain('prefers-color-scheme:dark')
    expect(css).toContain('@media print')
    expect(css).not.toMatch(/undefined|NaN/u)
  })
})
