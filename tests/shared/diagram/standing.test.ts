import { describe, expect, it } from 'vitest'
import { measureIn } from '../../../shared/diagram/scene/measure.ts'
import { vacuumRise } from '../../../shared/diagram/standing/of-evacuation.ts'
import { pressureHold } from '../../../shared/diagram/standing/of-leak-test.ts'
import { CalcError } from '../../../shared/errors.ts'
import { evacuation } from '../../../shared/service/evacuation.ts'
import { leakTest } from '../../../shared/service/leak-test.ts'
import { all, axisOf, type Found, parsed, partOf, pointsOf, texts } from '../../support/picture.ts'

const MICRON = 133.322387415 / 1000

const RISE = evacuation.example.rise as readonly { time: string; pressure: string }[]

const circles = (element: Found | undefined) =>
  [...(element ? all(element) : [])]
    .filter(({ name }) => name === 'circle')
    .map(({ attributes }) => [Number(attributes.cx), Number(attributes.cy)] as const)
const heightOf = (element: Found | undefined) => Number(element?.children[0]?.attributes.y1)

describe.each([
  { units: 'us', pressure: 'micron' },
  { units: 'si', pressure: 'Pa abs' },
])('a standing vacuum in $units units', ({ units, pressure }) => {
  const input = { ...evacuation.example, units }
  const picture = parsed(vacuumRise.draw(input, { width: 1280 }))
  const [x, y] = [axisOf(picture, 'x'), axisOf(picture, 'y')]
  const minutes = (px: number) => x.at(px)
  const pa = (py: number) => measureIn('absolutePressure', pressure).si(y.at(py))

  it('has time to the right and pressure upwards, both in equal steps', () => {
    expect([x.title, x.kind]).toEqual(['Time since the pump was valved off, min', 'linear'])
    expect([y.title, y.kind]).toEqual([`Pressure, ${pressure}`, 'linear'])
    expect(y.at(100)).toBeGreaterThan(y.at(200))
  })

  it('puts every reading where it was read', () => {
    const found = circles(partOf(picture, 'readings'))
    expect(found).toHaveLength(RISE.length)
    for (const [index, { time, pressure: read }] of RISE.entries()) {
      const [px, py] = found[index] ?? [0, 0]
      expect(minutes(px)).toBeCloseTo(Number.parseFloat(time), 1)
      expect(Math.abs(pa(py) / MICRON - Number.parseFloat(read))).toBeLessThan(3)
    }
  })

  it('draws the fit by its slope', () => {
    const { rise } = evacuation.compute(evacuation.parse(input)).result
    const points = pointsOf(partOf(picture, 'fit'))
    const [first, last] = [points[0] ?? [0, 0], points.at(-1) ?? [0, 0]]
    const slope = (pa(last[1]) - pa(first[1])) / (minutes(last[0]) - minutes(first[0]))
    expect(slope / (rise?.risePerMinute.si ?? 0)).toBeCloseTo(1, 2)
    expect(minutes(last[0])).toBeCloseTo(20, 0)
    expect(texts(partOf(picture, 'key')).join(' ')).toContain('fits best: a steady rise')
  })

  it('draws what must not be passed, and for how long', () => {
    expect(pa(heightOf(partOf(picture, 'level-1'))) / MICRON).toBeCloseTo(1000, -1)
    // The chosen rule: 500 micron more than at the start.
    const levels = [2, 3].map((n) => pa(heightOf(partOf(picture, `level-${n}`))) / MICRON)
    expect(levels.some((level) => Math.abs(level - 920) < 3)).toBe(true)
    expect(minutes(Number(partOf(picture, 'watch')?.children[0]?.attributes.x1))).toBeCloseTo(10, 1)
    expect(texts(partOf(picture, 'level-1'))[0]).toContain(
      units === 'us' ? 'stay below 1000 micron' : '133.3 Pa',
    )
  })

  it('says what lies above it', () => {
    expect(texts(partOf(picture, 'key')).join(' ')).toContain('above the picture: water boils at')
  })
})

describe('a rise that levels off', () => {
  const rise = (pa: (minutes: number) => number) =>
    Array.from({ length: 16 }, (_, index) => ({
      time: `${2 * index} min`,
      pressure: `${pa(2 * index).toFixed(0)} Pa abs`,
    }))
  const wet = rise((minutes) => 120 + 2200 * (1 - Math.exp(-minutes / 6)))

  it('is drawn as it bends, near the line where water boils', () => {
    const picture = parsed(
      vacuumRise.draw({ temperature: '20 °C', rise: wet, units: 'si' }, { width: 1280 }),
    )
    const y = axisOf(picture, 'y')
    const x = axisOf(picture, 'x')
    const points = pointsOf(partOf(picture, 'fit'))
    for (const [px, py] of points) {
      const expected = 120 + 2200 * (1 - Math.exp(-x.at(px) / 6))
      expect(Math.abs(y.at(py) - expected)).toBeLessThan(60)
    }
    // Water at 20 °C: 2339 Pa (IAPWS-95).
    const boils = texts(picture).find((text) => text.startsWith('water boils at'))
    expect(boils).toContain('2339')
  })

  it('needs readings, and says so', () => {
    expect(() => vacuumRise.draw({ vacuum: '800 micron' })).toThrow(CalcError)
    expect(() => vacuumRise.draw({ vacuum: '800 micron' })).toThrow(/no rise/u)
  })
})

describe.each([
  { units: 'us', unit: 'psig' },
  { units: 'si', unit: 'kPa g' },
])('a standing pressure in $units units', ({ units, unit }) => {
  const draw = (input: object) => {
    const picture = parsed(pressureHold.draw({ ...input, units }, { width: 1280 }))
    const labels = [...texts(partOf(picture, 'y-axis'))]
    expect(labels.pop()).toBe(`Pressure at the gauge, ${unit}`)
    const lines = (partOf(picture, 'grid')?.children ?? []).filter(({ name }) => name === 'line')
    const ys = lines.map(({ attributes }) => Number(attributes.y1))
    const at = (py: number) => {
      const [a, b] = [Number(labels[0]), Number(labels.at(-1))]
      const [pa, pb] = [ys[0] ?? 0, ys.at(-1) ?? 0]
      return measureIn('gaugePressure', unit).si(a + ((py - pa) / (pb - pa)) * (b - a))
    }
    return { picture, psi: (py: number) => at(py) / 6894.757293168 }
  }

  it('puts start, end and what the temperature makes of it where they belong', () => {
    const { picture, psi } = draw(leakTest.example)
    const [start, end] = circles(partOf(picture, 'readings'))
    expect(psi(start?.[1] ?? 0)).toBeCloseTo(150, 1)
    expect(psi(end?.[1] ?? 0)).toBeCloseTo(146.9, 1)
    // The gas law at sea level: (150 + 14.696) psia × 529.67 °R ÷ 539.67 °R − 14.696.
    const expected = (164.696 * 529.67) / 539.67 - 14.696
    const [corner] = pointsOf(partOf(picture, 'expected'))
    expect(Math.abs(psi((corner?.[1] ?? 0) + 7) - expected)).toBeLessThan(0.1)
  })

  it('shades the ± of what is left about what is expected', () => {
    const { picture, psi } = draw(leakTest.example)
    const left = leakTest.compute(leakTest.parse(leakTest.example)).result.standing?.unexplained
    const { y, height } = partOf(picture, 'expected-zone')?.children[0]?.attributes ?? {}
    const span = psi(Number(y)) - psi(Number(y) + Number(height))
    expect(Math.abs(span - (2 * (left?.plusMinus ?? 0)) / 6894.757293168)).toBeLessThan(0.05)
  })

  it('tells a leak by the distance between the two', () => {
    const { picture, psi } = draw({ ...leakTest.example, endPressure: '120 ±0.5 psig' })
    const line = partOf(picture, 'left')?.children[0]?.attributes ?? {}
    const left = leakTest.compute(
      leakTest.parse({ ...leakTest.example, endPressure: '120 ±0.5 psig' }),
    ).result.standing?.unexplained
    const found = psi(Number(line.y2)) - psi(Number(line.y1))
    expect(Math.abs(found - (left?.si ?? 0) / 6894.757293168)).toBeLessThan(0.1)
    expect(found).toBeLessThan(-25)
    expect(texts(partOf(picture, 'left')).join(' ')).toMatch(/unexplained -/u)
  })

  it('needs a standing test', () => {
    const rated = { testPressure: '150 psig', lowSideRating: '200 psig' }
    expect(() => pressureHold.draw(rated)).toThrow(/no standing test/u)
  })
})
