import { describe, expect, it } from 'vitest'
import { preset } from '../../../../shared/cycle/index.ts'
import { FEATURES } from '../../../../shared/diagnosis/features.ts'
import { resolvePlace } from '../../../../shared/instrument/index.ts'
import { newNotes } from '../../../../shared/notes.ts'
import { mass, type PressureReading, parseQuantity } from '../../../../shared/quantity/index.ts'
import { refrigerant } from '../../../../shared/refrigerant/index.ts'
import { kindsOf } from '../../../../shared/service/diagnose/input/kinds.ts'
import { conditionsIn, isTestWeather } from '../../../../shared/service/diagnose/input/weather.ts'
import {
  observationsOf,
  weighedObservation,
} from '../../../../shared/service/diagnose/observations/observations.ts'
import { takenIn } from '../../../../shared/service/diagnose/observations/taken.ts'
import { candidatesOf } from '../../../../shared/service/diagnose/posterior/candidates.ts'
import { diagnose } from '../../../../shared/service/diagnose.ts'

const PSI = 6894.757
const gauge = (text: string) => parseQuantity(text, ['gaugePressure']) as PressureReading
const kelvin = (text: string) => parseQuantity(text, ['temperature'])
const seaLevel = resolvePlace({ barometer: parseQuantity('29.92 ±0 inHg', ['barometricPressure']) })
const AIR = 101_320
const none = { suctionPressure: undefined, highPressure: undefined, temperatures: {} }
const r134a = refrigerant('R-134a')

const input = (more: Record<string, unknown>) =>
  diagnose.parse({ refrigerant: 'R-134a', suctionPressure: '30 psig', ...more })

describe('a reading', () => {
  it('is known to half of its ±, and absolute', () => {
    const [low, high] = observationsOf(
      {
        ...none,
        suctionPressure: gauge('30 ±2 psig'),
        highPressure: gauge('200 ±8 psig'),
        highFrom: 'discharge-line',
      },
      seaLevel,
      r134a,
      'R-134a',
    )
    expect(low?.feature).toBe('lowSidePa')
    expect(low?.value).toBeCloseTo(30 * PSI + AIR, -2)
    expect(low?.sigma).toBeCloseTo(PSI, -1)
    expect(high?.sigma).toBeCloseTo(4 * PSI, -1)
    const [pipe] = observationsOf(
      {
        ...none,
        highFrom: 'liquid-line',
        temperatures: { liquidLineK: kelvin('45 ±2 °C') },
      },
      seaLevel,
      r134a,
      'R-134a',
    )
    expect(pipe).toEqual({ feature: 'liquidLineK', value: 318.15, sigma: 1 })
  })

  it('is never taken for better than a gauge and a probe repeat', () => {
    const [low, pipe] = observationsOf(
      {
        ...none,
        suctionPressure: gauge('30 ±0 psig'),
        highFrom: 'liquid-line',
        temperatures: { ventK: kelvin('10 ±0 °C') },
      },
      seaLevel,
      r134a,
      'R-134a',
    )
    expect(low?.sigma).toBe(1500)
    expect(pipe?.sigma).toBe(0.3)
  })

  it('of another refrigerant is that of the model’s at the same saturation temperature', () => {
    // R-407C, dew 8.9 °C and bubble 2.8 °C at 5.2 bar g: R-134a boils at 8.9 °C at 3.99 bar a.
    const [low, high] = observationsOf(
      {
        ...none,
        suctionPressure: gauge('5.2 bar g'),
        highPressure: gauge('5.2 bar g'),
        highFrom: 'liquid-line',
      },
      seaLevel,
      refrigerant('R-407C'),
      'R-134a',
    )
    expect((low?.value ?? 0) / 1e5).toBeCloseTo(3.99, 1)
    expect((high?.value ?? 0) / 1e5).toBeCloseTo(3.21, 1)
  })

  it('of the scale is a share of the label’s charge', () => {
    const [weighed] = weighedObservation(mass(0.6, 0.03), mass(0.75))
    expect(weighed?.value).toBeCloseTo(0.8, 12)
    expect(weighed?.sigma).toBeCloseTo(Math.hypot(0.02, 0.02), 12)
    expect(weighedObservation(mass(0.6), undefined)).toEqual([])
  })
})

describe('what a test is like', () => {
  const test = (more: Record<string, unknown>) => {
    const given = input(more)
    return takenIn(given, given, seaLevel, newNotes())
  }
  const { nominal } = preset('van-valve-134a')

  it('is as read, else as the model’s own and known roughly', () => {
    const { weather } = test({
      ambient: '35 ±4 °C',
      returnAir: '27 °C',
      relativeHumidity: '60 %',
      compressorRpm: 1800,
    })
    expect(conditionsIn(nominal, weather)).toMatchObject({
      ambientK: 308.15,
      returnAirK: 300.15,
      returnHumidity: 0.6,
      speed: 30,
    })
    // a kelvin that air differs from place to place, and half of the ±4
    expect(weather.sizes.ambientK).toBeCloseTo(Math.hypot(1, 2), 10)
    const open = test({}).weather
    expect(conditionsIn(nominal, open)).toMatchObject({ ambientK: nominal.ambientK })
    for (const name of ['ambientK', 'returnAirK', 'returnHumidity', 'speed'] as const) {
      expect(open.sizes[name]).toBeGreaterThan(2 * weather.sizes[name])
    }
  })

  it('has the humidity of two bulbs', () => {
    // ASHRAE: 80 °F dry and 67 °F wet bulb at sea level is 51 %.
    const { weather } = test({ returnAir: '80 °F', returnWetBulb: '67 °F' })
    expect(weather.known.returnHumidity).toBeCloseTo(0.511, 2)
    expect(() => test({ returnAir: '70 °F', returnWetBulb: '80 °F' })).toThrow(
      /No air has a wet bulb of/u,
    )
  })

  it('is none in cold air', () => {
    expect(isTestWeather(test({ ambient: '90 °F' }).weather)).toBe(true)
    expect(isTestWeather(test({ ambient: '50 °F' }).weather)).toBe(false)
    expect(isTestWeather(test({ returnAir: '50 °F' }).weather)).toBe(false)
  })

  it('has its high side before the condenser or behind it', () => {
    const at = FEATURES.indexOf('highSidePa')
    const given = input({ architecture: 'valve' })
    const kinds = kindsOf(given, r134a)
    const { weather } = test({})
    const high = (from: 'liquid-line' | 'discharge-line') =>
      candidatesOf(kinds, weather, from, undefined, 'carried')[0]?.effects[0]?.mean[at] as number
    const drop = preset('van-valve-134a').machine.drops.discharge.nominalPa
    expect(high('discharge-line') - high('liquid-line')).toBeCloseTo(drop, 6)
  })
})

describe('an answer', () => {
  it('says which readings went into nothing', () => {
    const unused = (more: Record<string, unknown>) =>
      diagnose
        .run({
          refrigerant: 'R-134a',
          architecture: 'valve',
          dischargePressure: '220 psig',
          ...more,
        })
        .warnings.filter(({ code }) => code === 'reading-not-used')
        .map(({ message }) => message)
    expect(unused({})).toEqual([])
    expect(unused({ recovered: '0.5 kg' })).toEqual([
      'recovered went into nothing: it needs labelCharge beside it.',
    ])
    expect(unused({ recovered: '0.5 kg', labelCharge: '0.7 kg' })).toEqual([])
    expect(unused({ liquidPressure: '215 psig' })).toEqual([
      'liquidPressure went into nothing: dischargePressure was used instead.',
    ])
  })

  it('is the same by gauge on a mountain and by absolute pressure', () => {
    const barometer = '80 ±0.1 kPa'
    const bare = { refrigerant: 'R-134a', ambient: '30 °C', architecture: 'valve', barometer }
    const byGauge = diagnose.run({
      ...bare,
      suctionPressure: '220 ±7 kPa g',
      dischargePressure: '1500 ±28 kPa g',
    }).result
    const absolute = diagnose.run({
      ...bare,
      suctionPressure: '300 ±7 kPa a',
      dischargePressure: '1580 ±28 kPa a',
    }).result
    for (const { cause, share } of byGauge.causes) {
      const other = absolute.causes.find((each) => each.cause === cause)?.share ?? 0
      expect(Math.abs(share - other)).toBeLessThan(0.005)
    }
    const wrong = diagnose.run({
      ...bare,
      barometer: '101.3 kPa',
      suctionPressure: '220 ±7 kPa g',
      dischargePressure: '1500 ±28 kPa g',
    }).result
    expect(wrong.causes[0]?.share).not.toBe(byGauge.causes[0]?.share)
  })
})

describe('the refrigerant of the model that stands for another', () => {
  const standsFor = (id: string) =>
    kindsOf(input({ machine: 'stationary' }), refrigerant(id)).modelRefrigerant

  // Replacements of R-410A run at its pressures within a tenth.
  it.each(['R-32', 'R-410A', 'R-452B', 'R-454B'])('of %s is R-410A', (id) => {
    expect(standsFor(id)).toBe('R-410A')
  })

  it.each(['R-22', 'R-404A', 'R-407C', 'R-455A', 'R-290'])('of %s is R-134a', (id) => {
    expect(standsFor(id)).toBe('R-134a')
  })
})
