import { describe, expect, it } from 'vitest'
import { atRest } from '../../shared/physics/at-rest.ts'
import { holdUp, hoseVolume } from '../../shared/physics/hose.ts'
import { AIR, WATER_VAPOUR } from '../../shared/physics/hose-flow.ts'
import { THINNER } from '../../shared/physics/leak-rate.ts'
import { quantity, SEA_LEVEL_PA } from '../../shared/quantity/index.ts'
import {
  contentsAt,
  refrigerant,
  saturationPressure,
  twoPhaseDensity,
} from '../../shared/refrigerant/index.ts'
import { mixed } from '../../shared/service/contamination/mixed.ts'
import { sharesThatFit } from '../../shared/service/contamination/shares.ts'
import { AGREEMENT } from '../support/agreement.ts'
import golden from './golden/physics.json' with { type: 'json' }

const psi = (value: number) => quantity('pressureDifference', value, 'psi').si
const gauge = (value: number) => SEA_LEVEL_PA + psi(value)
const fahrenheit = (value: number) => quantity('temperature', value, '°F').si
/** The curves are good to 1e-5 in pressure (pure); the flash itself to 1e-9. */
const NEAR = AGREEMENT.flash

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

describe('gases that flow through hoses and leaks, at 21 °C', () => {
  const gas = (name: string) => {
    const [, molarMass = 0, viscosity = 0] =
      (golden.gases as unknown as readonly (readonly [string, number, number])[]).find(
        ([id]) => id === name,
      ) ?? []
    return { molarMass, viscosity }
  }

  it.each([
    ['air', AIR],
    ['water vapour', WATER_VAPOUR],
  ] as const)('%s has the molar mass and the viscosity of the reference', (name, ours) => {
    // three digits are given
    expect(ours.viscosity / gas(name).viscosity).toBeCloseTo(1, 2)
    expect(ours.molarMass / gas(name).molarMass).toBeCloseTo(1, 4)
  })

  it('air and nitrogen are as much more viscous than refrigerant vapours as the leak band says', () => {
    const ratios = golden.gases
      .filter(([name]) => String(name).startsWith('R-'))
      .flatMap(([, , thin]) =>
        ['air', 'nitrogen'].map((test) => gas(test).viscosity / Number(thin)),
      )
    expect(Math.min(...ratios)).toBeCloseTo(THINNER[0], 1)
    expect(Math.max(...ratios)).toBeCloseTo(THINNER[1], 1)
  })
})

describe('what a charging hose holds of R-134a', () => {
  const r = refrigerant('R-134a')
  const inch = (value: number) => quantity('length', value, 'in').si

  // Worked out with the reference's densities: mL/ft, g/ft of liquid at 120 °F.
  it.each([
    [5 / 16, 15.1, 16.7],
    [13 / 32, 25.5, 28.2],
    [1 / 2, 38.6, 42.8],
    [5 / 8, 60.3, 66.8],
  ])('%d in bore: %d mL/ft, %d g/ft', (bore, millilitres, grams) => {
    const hose = { boreM: inch(bore), lengthM: inch(12) }
    expect(Math.abs(hoseVolume(hose) * 1e6 - millilitres)).toBeLessThan(0.06)
    const held = holdUp(r, hose, fahrenheit(120), { holds: 'empty' }, { holds: 'liquid' })
    expect(Math.abs(held * 1e3 - grams)).toBeLessThan(0.06)
  })

  it('72 in of 1/4 in bore: 58 mL, about 70 g of liquid at 77 °F, about 2 g of vapour', () => {
    const hose = { boreM: inch(1 / 4), lengthM: inch(72) }
    const held = (holds: 'liquid' | 'vapour') =>
      holdUp(r, hose, fahrenheit(77), { holds: 'empty' }, { holds }) * 1e3
    expect(hoseVolume(hose) * 1e6).toBeCloseTo(58, 0)
    expect(held('liquid')).toBeCloseTo(70, 0)
    expect(held('vapour')).toBeCloseTo(2, 0)
  })
})

describe('shares of a second refrigerant that read one pressure', () => {
  it.each(
    golden.shares as unknown as readonly (readonly [
      string,
      string,
      number,
      number,
      number,
      number,
      number,
    ])[],
  )(
    '%s with %s at %d K and %d Pa: both that an independent solver finds',
    (id, other, kelvin, pascal, _, low, high) => {
      const mixture = mixed(refrigerant(id), refrigerant(other), kelvin)
      const found = sharesThatFit(
        (share) => mixture.pressure(share),
        pascal,
        () => 1000,
      )
      expect(found.map(({ share }) => share)).toEqual([
        expect.closeTo(low, 5),
        expect.closeTo(high, 5),
      ])
    },
  )
})
