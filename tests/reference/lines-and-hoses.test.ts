import { describe, expect, it } from 'vitest'
import bores from '../../data/service/bores.json' with { type: 'json' }
import { refrigerant } from '../../shared/refrigerant/index.ts'
import { charge } from '../../shared/service/charge.ts'
import { hoseDensity, hoseVolume } from '../../shared/service/charging/hose.ts'
import { apart, referencePoint } from '../support/reference-point.ts'

const INCH = 0.0254
const FOOT = 0.3048
/** The curves' promise in density, 1e-6, and what the reference and our solver differ by. */
const DENSITY = 2e-6
const kelvin = (fahrenheit: number) => (fahrenheit + 459.67) / 1.8

/** Mass of one foot of line, kg, as the charge step reckons it. */
function perFoot(line: Record<string, unknown>): number {
  const { result } = charge.run({
    case: 'section-opened',
    length: '1 ft',
    units: 'si',
    precise: true,
    ...line,
  })
  expect(result.massToAdd?.unit).toBe('g')
  return (result.massToAdd?.value ?? Number.NaN) / 1000
}

/** Volume of one foot, m³: of drawn tube, where the size is listed so. */
function footOf(kind: string, size: string): number {
  const rows = bores.rows.filter((entry) => entry.kind === kind && entry.size === size)
  const row = rows.find(({ temper }) => temper === 'drawn') ?? rows[0]
  return (Math.PI / 4) * ((row?.boreIn ?? Number.NaN) * INCH) ** 2 * FOOT
}

describe.each(['R-12', 'R-22', 'R-32', 'R-134a', 'R-1234yf', 'R-407C', 'R-410A'])(
  '%s in ACR tube against CoolProp 8.0.0',
  (name) => {
    it.each(['1/4', '5/16', '3/8', '1/2', '5/8'])(
      'weighs as liquid at 100 °F in %s',
      (tubeSize) => {
        const found = perFoot({
          refrigerant: name,
          tubeSize,
          phase: 'liquid',
          temperature: '100 °F',
        })
        const { liquidKgPerM3 } = referencePoint(name, 100)
        expect(apart(found, footOf('tube', tubeSize) * liquidKgPerM3)).toBeLessThan(DENSITY)
      },
    )

    it.each(['1/2', '5/8', '3/4'])('weighs as vapour at 40 °F in %s', (tubeSize) => {
      const found = perFoot({ refrigerant: name, tubeSize, phase: 'vapour', temperature: '40 °F' })
      const { vapourKgPerM3 } = referencePoint(name, 40)
      expect(apart(found, footOf('tube', tubeSize) * vapourKgPerM3)).toBeLessThan(DENSITY)
    })
  },
)

describe.each(['#6', '#8', '#10', '#12'])(
  'R-134a in %s hose against CoolProp 8.0.0',
  (hoseSize) => {
    it.each([
      ['liquid', 120, 'liquidKgPerM3'],
      ['vapour', 40, 'vapourKgPerM3'],
    ] as const)('weighs as %s at %d °F', (phase, fahrenheit, density) => {
      const temperature = `${fahrenheit} °F`
      const found = perFoot({ refrigerant: 'R-134a', hoseSize, phase, temperature })
      const reference = footOf('hose', hoseSize) * referencePoint('R-134a', fahrenheit)[density]
      expect(apart(found, reference)).toBeLessThan(DENSITY)
    })
  },
)

describe('what a service hose holds, against CoolProp 8.0.0', () => {
  const r = refrigerant('R-134a')

  it.each([5 / 16, 13 / 32, 1 / 2, 5 / 8])('liquid R-134a at 120 °F in a bore of %d in', (bore) => {
    const found = hoseVolume(bore * INCH, FOOT) * hoseDensity(r, 'liquid', kelvin(120), undefined)
    const space = (Math.PI * (bore * INCH) ** 2 * FOOT) / 4
    expect(apart(found, space * referencePoint('R-134a', 120).liquidKgPerM3)).toBeLessThan(DENSITY)
  })

  it('72 in of 1/4 in bore at 77 °F: 57.9 mL, 69.9 g of liquid or 1.9 g of vapour', () => {
    const space = hoseVolume(INCH / 4, 72 * INCH)
    const { liquidKgPerM3, vapourKgPerM3 } = referencePoint('R-134a', 77)
    const held = (state: 'liquid' | 'vapour') =>
      space * hoseDensity(r, state, kelvin(77), undefined)
    expect(space * 1e6).toBeCloseTo(57.9, 1)
    expect(held('liquid') * 1e3).toBeCloseTo(69.9, 1)
    expect(held('vapour') * 1e3).toBeCloseTo(1.9, 1)
    expect(apart(held('liquid'), space * liquidKgPerM3)).toBeLessThan(DENSITY)
    expect(apart(held('vapour'), space * vapourKgPerM3)).toBeLessThan(DENSITY)
  })
})
