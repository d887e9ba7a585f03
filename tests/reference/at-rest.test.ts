import { describe, expect, it } from 'vitest'
import { atRest } from '../../shared/physics/at-rest.ts'
import { quantity, SEA_LEVEL_PA } from '../../shared/quantity/index.ts'
import {
  contentsAt,
  refrigerant,
  saturationPressure,
  twoPhaseDensity,
} from '../../shared/refrigerant/index.ts'
import golden from './golden/at-rest.json' with { type: 'json' }

const psi = (value: number) => quantity('pressureDifference', value, 'psi').si
const gauge = (value: number) => SEA_LEVEL_PA + psi(value)
const fahrenheit = (value: number) => quantity('temperature', value, '°F').si
/** The curves are good to 1e-5 in pressure (pure); the flash itself to 1e-9. */
const NEAR = 1e-5

type Row = readonly [id: string, kelvin: number, pascal: number]
type ContentsRow = readonly [string, number, number, number, number, number]
type DensityRow = readonly [string, string, number, number, number]

describe('a closed space at equilibrium', () => {
  it.each(golden.contents as unknown as readonly ContentsRow[])(
    '%s at %d K, %d kg in %d m³, has the pressure and quality of an independent flash',
    (id, kelvin, kg, cubicMetres, pascal, quality) => {
      const found = contentsAt(refrigerant(id), kelvin, kg / cubicMetres)
      expect(Math.abs((found.pressurePa ?? 0) / pascal - 1)).toBeLessThan(NEAR)
      expect(Math.abs(found.quality - quality)).toBeLessThan(1e-5)
    },
  )
})

describe('density of liquid and vapour together', () => {
  it.each(golden.twoPhase as unknown as readonly DensityRow[])(
    '%s at %s %d, vapour share %d, has the density of an independent flash',
    (id, by, value, quality, density) => {
      const at = by === 'T' ? { temperatureK: value } : { pressurePa: value }
      const found = twoPhaseDensity(refrigerant(id), at, quality)
      expect(Math.abs(found / density - 1)).toBeLessThan(NEAR)
    },
  )
})

describe('a pressure at rest beside the reference', () => {
  it.each(golden.saturation as unknown as readonly Row[])(
    '%s at %d K: off by the difference from its saturation pressure',
    (id, kelvin, pascal) => {
      const found = atRest(refrigerant(id), { si: pascal + 50_000 }, { si: kelvin })
      expect(Math.abs((found.off?.si ?? 0) - 50_000)).toBeLessThan(NEAR * pascal)
      expect(saturationPressure(refrigerant(id), kelvin, 'dew') / pascal).toBeCloseTo(1, 4)
    },
  )

  it('R-134a at 75 °F: 110 psig is 31 psi above, 75 psig is below', () => {
    const at = (psig: number) =>
      atRest(
        refrigerant('R-134a'),
        { si: gauge(psig), plusMinus: psi(1) },
        { si: fahrenheit(75), plusMinus: 0.5 },
      )
    const [row] = golden.saturation
    const saturatedPa = Number(row?.[2])
    expect(at(110)).toMatchObject({ state: 'above' })
    expect(((at(110).off?.si ?? 0) - (gauge(110) - saturatedPa)) / psi(1)).toBeCloseTo(0, 2)
    expect((at(110).off?.si ?? 0) / psi(1)).toBeCloseTo(31.35, 1)
    expect(at(75)).toMatchObject({ state: 'below' })
    expect(at(78.5)).toMatchObject({ state: 'at' })
  })

  it('R-407C, 8 lb in 21.6 L at 77 °F and 157 psig: 5.4 psi above its own flash, between its lines', () => {
    const r = refrigerant('R-407C')
    const pressure = { si: gauge(157), plusMinus: psi(1) }
    const temperature = { si: fahrenheit(77), plusMinus: 0.5 }
    const contents = { mass: { si: quantity('mass', 8, 'lb').si }, volume: { si: 0.0216 } }
    const found = atRest(r, pressure, temperature, contents)
    expect(found).toMatchObject({ state: 'above', holds: 'two-phase', from: 'contents' })
    expect(((found.expected?.si ?? 0) - SEA_LEVEL_PA) / psi(1)).toBeCloseTo(151.6, 1)
    expect((found.off?.si ?? 0) / psi(1)).toBeCloseTo(5.4, 1)
    expect(atRest(r, pressure, temperature).state).toBe('cannot-tell')
  })
})
