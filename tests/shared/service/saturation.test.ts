import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CalcError, type ErrorCode } from '../../../shared/errors.ts'
import {
  densityUncertainty,
  propertyUncertainty,
  refrigerant,
  refrigerants,
  saturationPressure,
} from '../../../shared/refrigerant/index.ts'
import { saturation } from '../../../shared/service/saturation.ts'
import { refusalOf } from '../../support/refusal.ts'

const run = (input: Record<string, unknown>) => saturation.run({ units: 'us', ...input })

const refusal = (input: Record<string, unknown>) => refusalOf(() => run(input))

describe('saturation', () => {
  it('gives the temperature of a gauge pressure', () => {
    // AGCO TerraGator 3244 printed table: R-134a at 27.7 psig is 32 °F.
    const { result } = run({ refrigerant: 'R-134a', pressure: '27.7 psig' })
    expect(result.dew.temperature).toEqual({ value: 31.9, unit: '°F', plusMinus: 1.3 })
    expect(result.given).toBe('pressure')
    expect(result.lines).toBe('one')
  })

  it('gives the pressure of a temperature', () => {
    // Carrier 38VTA printed table: R-22 at 45 °F is 76 psig.
    const { result } = run({ refrigerant: 'r22', temperature: '45 °F' })
    expect(result.bubble.gaugePressure.value).toBeCloseTo(76, 0)
    expect(result.refrigerant).toBe('R-22')
  })

  it('reads vacuum', () => {
    const { result } = run({ refrigerant: 'R-134a', pressure: '10 inHg vac' })
    expect(result.bubble.gaugePressure).toMatchObject({ value: 10, unit: 'inHg vac' })
    // A shop's low-side gauge: ±1 psi.
    expect(result.bubble.gaugePressure.plusMinus).toBe(2.1)
    expect(result.bubble.temperature.value).toBeLessThan(-25)
  })

  it('gives density of liquid and vapour, and latent heat', () => {
    // R-134a at 0 °C, from its equation of state (Tillner-Roth and Baehr 1994) by CoolProp 8.0.0:
    // 1294.78 and 14.428 kg/m³, 198.60 kJ/kg.
    const { result } = run({
      refrigerant: 'R-134a',
      temperature: '0 °C',
      units: 'si',
      precise: true,
    })
    expect(result.bubble.density.value).toBeCloseTo(1294.8, 1)
    expect(result.dew.density.value).toBeCloseTo(14.428, 3)
    expect(result.latentHeat.value).toBeCloseTo(198.6, 1)
    expect(result.glide.value).toBe(0)
  })

  it.each(['R-407C', 'R-448A', 'R-454B'])(
    'tells the glide of %s from bubble to dew',
    (refrigerant) => {
      const { result } = saturation.run({
        refrigerant,
        pressure: '100 psig',
        units: 'si',
        precise: true,
      })
      const apart = result.dew.temperature.value - result.bubble.temperature.value
      expect(apart).toBeGreaterThan(0.5)
      expect(result.glide.value).toBeCloseTo(apart, 9)
    },
  )

  it('reaches the ends of its range, whatever rounding makes of them', () => {
    // -60 °C is 213.14999999999998 K in binary.
    for (const given of ['-60 °C', '-76 °F', '213.15 K']) {
      const { result } = run({ refrigerant: 'R-22', temperature: given, precise: true })
      const pressure = {
        value: result.dew.absolutePressure.value,
        unit: result.dew.absolutePressure.unit,
      }
      const back = run({ refrigerant: 'R-22', pressure, units: 'si' }).result
      expect(back.dew.temperature.value).toBe(-60)
    }
  })

  it('takes the altitude from the gauge', () => {
    const low = run({ refrigerant: 'R-134a', pressure: '30 psig' })
    const high = run({ refrigerant: 'R-134a', pressure: '30 psig', altitude: '8000 ft' })
    expect(high.result.dew.temperature.value).toBeLessThan(low.result.dew.temperature.value - 4)
    expect(low.assumptions.map((entry) => entry.field)).toEqual(['pressure', 'altitude'])
    expect(high.assumptions.map((entry) => entry.field)).toEqual(['pressure', 'barometer'])
  })

  it('carries the uncertainty of the reading', () => {
    const { result } = run({
      refrigerant: 'R-134a',
      pressure: '70 ±3 psig',
      barometer: '101325 ±0 Pa',
      precise: true,
    })
    const edge = (pressure: string) =>
      run({ refrigerant: 'R-134a', pressure, precise: true }).result.dew.temperature.value
    const half = (edge('73 psig') - edge('67 psig')) / 2
    expect(result.dew.temperature.plusMinus).toBeCloseTo(half, 1)
  })

  it('shows how it came about', () => {
    const { steps } = run({ refrigerant: 'R-134a', pressure: '30 psig', altitude: '2000 ft' })
    expect(steps.map((step) => step.what)).toEqual(['Absolute pressure', 'Saturation temperature'])
  })

  it('warns of what burns, and only of that', () => {
    const ids = (name: string) =>
      run({ refrigerant: name, temperature: '20 °C' }).cautions.map((caution) => caution.id)
    expect(ids('propane')).toContain('flammable')
    expect(ids('R-1234yf')).toContain('flammable')
    expect(ids('R-134a')).not.toContain('flammable')
    expect(ids('CO2')).not.toContain('flammable')
  })

  it.each<[what: string, input: Record<string, unknown>, code: ErrorCode, path: string]>([
    ['neither', { refrigerant: 'R-134a' }, 'missing-input', 'pressure'],
    [
      'both',
      { refrigerant: 'R-134a', pressure: '30 psig', temperature: '40 °F' },
      'bad-input',
      'temperature',
    ],
    [
      'a pressure that could be gauge or absolute',
      { refrigerant: 'R-134a', pressure: '30 psi' },
      'ambiguous-quantity',
      'pressure',
    ],
    [
      'a pressure above the critical point',
      { refrigerant: 'R-134a', pressure: '700 psig' },
      'above-critical',
      'pressure',
    ],
    [
      'a temperature above the critical point',
      { refrigerant: 'CO2', temperature: '90 °F' },
      'above-critical',
      'temperature',
    ],
    [
      'a pressure below the triple point',
      { refrigerant: 'CO2', pressure: '5 inHg vac' },
      'below-triple',
      'pressure',
    ],
    [
      'a temperature below the triple point',
      { refrigerant: 'CO2', temperature: '-100 °F' },
      'below-triple',
      'temperature',
    ],
    [
      'a vacuum deeper than there is',
      { refrigerant: 'R-134a', pressure: '31 inHg vac' },
      'out-of-range',
      'pressure',
    ],
    [
      'a refrigerant that nobody sells',
      { refrigerant: 'R-9999', pressure: '30 psig' },
      'unknown-refrigerant',
      'refrigerant',
    ],
    [
      'a field that is none',
      { refrigerant: 'R-134a', preasure: '30 psig' },
      'bad-input',
      'preasure',
    ],
  ])('refuses %s', (_, input, code, path) => {
    const error = refusal(input)
    expect(error.code).toBe(code)
    expect(error.path[0]).toBe(path)
    expect(error.hint).not.toBe('')
  })
})

describe('a reading with an uncertainty', () => {
  it('gives densities that are known no better than it', () => {
    const at = (pressure: string) =>
      saturation.run({
        refrigerant: 'R-134a',
        pressure,
        barometer: '101325 ±0 Pa',
        units: 'si',
        precise: true,
      }).result.dew.density
    const { value, plusMinus } = at('32 ±2 psig')
    const half = (at('34 psig').value - at('30 psig').value) / 2
    const data = value * densityUncertainty(refrigerant('R-134a'), 'vapour')
    expect(plusMinus).toBeCloseTo(Math.hypot(half, data), 3)
    expect(value).toBeCloseTo(at('32 psig').value, 12)
    // A shop's low-side gauge: ±1 psi.
    expect(at('32 psig').plusMinus).toBeCloseTo(Math.hypot(half / 2, data), 3)
  })
})

describe('a temperature with an uncertainty', () => {
  const at = (input: Record<string, unknown>) =>
    saturation.run({ refrigerant: 'R-134a', units: 'si', precise: true, ...input }).result.dew
  const r = refrigerant('R-134a')
  const kPa = (kelvin: number) => saturationPressure(r, kelvin, 'dew') / 1000
  const data = kPa(278.15) * propertyUncertainty(r, 278.15, 'dew').pressure

  it('gives pressures with the thermometer’s ±, the data’s and, on the gauge, the place’s', () => {
    const half = (kPa(280.15) - kPa(276.15)) / 2
    const { absolutePressure, gaugePressure } = at({ temperature: '5 ±2 °C' })
    expect(absolutePressure.plusMinus).toBeCloseTo(Math.hypot(half, data), 2)
    expect(gaugePressure.plusMinus).toBeCloseTo(Math.hypot(half, data, 3), 2)
  })

  it('is that of a shop thermometer where none was given', () => {
    const { temperature, absolutePressure } = at({ temperature: '5 °C' })
    expect(temperature.plusMinus).toBeCloseTo(1 / 1.8, 9)
    const half = (kPa(278.15 + 1 / 1.8) - kPa(278.15 - 1 / 1.8)) / 2
    expect(absolutePressure.plusMinus).toBeCloseTo(Math.hypot(half, data), 3)
  })

  it('of nothing still has that of the data, larger where mixing is estimated', () => {
    expect(at({ temperature: '5 ±0 °C' }).absolutePressure.plusMinus).toBeCloseTo(data, 6)
    const estimated = at({ refrigerant: 'R-409A', temperature: '5 ±0 °C' }).absolutePressure
    expect((estimated.plusMinus ?? 0) / estimated.value).toBeGreaterThan(0.04)
  })
})

describe('saturation as a law', () => {
  const name = fc.constantFrom(...refrigerants().map((entry) => entry.id))
  const psig = fc.double({ min: 5, max: 300, noNaN: true })

  it('undoes itself: pressure to temperature and back, on the line of each', () => {
    fc.assert(
      fc.property(name, psig, (refrigerant, value) => {
        try {
          const there = saturation.run({
            refrigerant,
            pressure: { value, unit: 'psig' },
            units: 'us',
            precise: true,
          })
          const back = saturation.run({
            refrigerant,
            temperature: { value: there.result.dew.temperature.value, unit: '°F' },
            units: 'us',
            precise: true,
          })
          const off = Math.abs(back.result.dew.gaugePressure.value - value)
          // Half a thousandth of a kelvin, there and back.
          expect(off).toBeLessThan(2e-5 * (value + 14.7))
          expect(there.result.glide.value).toBeGreaterThanOrEqual(0)
          expect(there.result.bubble.temperature.value).toBeLessThanOrEqual(
            there.result.dew.temperature.value + 1e-6,
          )
        } catch (error) {
          expect(error).toBeInstanceOf(CalcError)
        }
      }),
    )
  })

  it('knows no unit system: the same absolute pressure is the same temperature', () => {
    fc.assert(
      fc.property(psig, (value) => {
        const us = saturation.run({
          refrigerant: 'R-134a',
          pressure: { value, unit: 'psig' },
          precise: true,
          units: 'si',
        })
        const kPa = value * 6.894_757_293_168_361 + 101.325
        const si = saturation.run({
          refrigerant: 'R-134a',
          pressure: { value: kPa, unit: 'kPa abs' },
          precise: true,
          units: 'si',
        })
        expect(si.result.dew.temperature.value).toBeCloseTo(us.result.dew.temperature.value, 8)
      }),
    )
  })
})
