import { describe, expect, it } from 'vitest'
import bores from '../../data/service/bores.json' with { type: 'json' }
import { charge } from '../../shared/service/charge.ts'
import { apart, referencePoint } from '../support/reference-point.ts'

const INCH = 0.0254
const FOOT = 0.3048
/** The curves' promise in density, 1e-6, and what the reference and our solver differ by. */
const DENSITY = 2e-6

/** Mass of one foot of line, kg, as the charge step reckons it. */
function perFoot(line: Record<string, unknown>): number {
  const { result } = charge.run({
    job: 'section-opened',
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
