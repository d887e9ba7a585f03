import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { standardAtmosphere } from '../../../shared/quantity/index.ts'
import { refrigerant, saturationPressure } from '../../../shared/refrigerant/index.ts'
import { airCheck } from '../../../shared/service/air-check.ts'
import { contamination } from '../../../shared/service/contamination.ts'
import { coolingCheck } from '../../../shared/service/cooling-check.ts'
import { readings } from '../../../shared/service/readings.ts'

interface Rest {
  readonly refrigerant: string
  readonly pressure: unknown
  readonly temperature: unknown
  readonly place?: Record<string, unknown>
}
const shown = { units: 'si', precise: true } as const

/** The same reading, asked of every step that judges a pressure at rest. */
const steps = {
  'air-check': ({ refrigerant: name, pressure, temperature, place }: Rest) =>
    airCheck.run({ refrigerant: name, pressure, temperature, ...place, ...shown }).result,
  contamination: ({ refrigerant: name, pressure, temperature, place }: Rest) =>
    contamination.run({
      refrigerant: name,
      pressure,
      temperature,
      suspects: ['R-12'],
      ...place,
      ...shown,
    }).result,
  'cooling-check': ({ refrigerant: name, pressure, temperature, place }: Rest) => {
    const { rest } = coolingCheck.run({
      refrigerant: name,
      ambient: temperature,
      staticLow: pressure,
      ...place,
      ...shown,
    }).result
    if (!rest) throw new Error('A pressure at rest was not judged.')
    return rest
  },
  readings: ({ refrigerant: name, pressure, temperature, place }: Rest) => {
    const { rest } = readings.run({
      refrigerant: name,
      suctionPressure: pressure,
      dischargePressure: pressure,
      ambient: temperature,
      ...place,
      ...shown,
    }).result
    if (!rest) throw new Error('Gauges that read alike were not judged.')
    return { ...rest, saturation: { bubble: rest.bubblePressure, dew: rest.dewPressure } }
  },
}
const names = Object.keys(steps) as (keyof typeof steps)[]
const stateOf = (rest: Rest) => names.map((name) => steps[name](rest).state)

describe('a pressure at rest', () => {
  it.each([
    ['110 psig', 'above'],
    ['75 psig', 'below'],
    ['79 psig', 'at'],
  ])('of R-134a, %s at 75 °F, is %s in every step', (pressure, state) => {
    const rest = { refrigerant: 'R-134a', pressure, temperature: '75 °F' }
    expect(stateOf(rest)).toEqual(names.map(() => state))
  })

  it('lies 31 psi above saturation at 110 psig, whoever is asked', () => {
    for (const name of names) {
      const { off } = steps[name]({
        refrigerant: 'R-134a',
        pressure: '110 psig',
        temperature: '75 °F',
      })
      expect((off?.value ?? 0) / 6.894757).toBeCloseTo(31.3, 0)
    }
  })

  const reading = fc.record({
    refrigerant: fc.constantFrom('R-134a', 'R-407C', 'R-1234yf', 'R-12', 'R-409A'),
    kelvin: fc.double({ min: 285, max: 315, noNaN: true }),
    share: fc.double({ min: 0.8, max: 1.25, noNaN: true }),
    width: fc.option(fc.double({ min: 0, max: 40, noNaN: true }), { nil: undefined }),
    metres: fc.integer({ min: 0, max: 3000 }),
  })
  const askOf = ({
    refrigerant: name,
    kelvin,
    share,
    width,
    metres,
  }: {
    refrigerant: string
    kelvin: number
    share: number
    width: number | undefined
    metres: number
  }) => {
    const gauge =
      share * saturationPressure(refrigerant(name), kelvin, 'bubble') - standardAtmosphere(metres)
    return {
      refrigerant: name,
      pressure: {
        value: gauge / 1000,
        unit: 'kPa g',
        ...(width === undefined ? {} : { plusMinus: width }),
      },
      temperature: { value: kelvin, unit: 'K' },
      place: { altitude: { value: metres, unit: 'm' } },
    }
  }

  it('has the same state, saturation, distance and uncertainty in every step', () => {
    fc.assert(
      fc.property(reading, (given) => {
        const rest = askOf(given)
        const [first, ...others] = names.map((name) => {
          const { state, saturation, off, from } = steps[name](rest)
          return { state, saturation, off, from }
        })
        for (const other of others) expect(other).toEqual(first)
      }),
      { numRuns: 40 },
    )
  })

  it('has the same central values for an altitude and for the barometer that belongs to it', () => {
    fc.assert(
      fc.property(reading, (given) => {
        const rest = askOf(given)
        const barometer = { value: standardAtmosphere(given.metres) / 1000, unit: 'kPa' }
        for (const name of names) {
          const [byAltitude, byBarometer] = [
            steps[name](rest),
            steps[name]({ ...rest, place: { barometer } }),
          ]
          expect(byBarometer.off?.value).toBeCloseTo(byAltitude.off?.value ?? Number.NaN, 6)
          expect(byBarometer.saturation.bubble?.value).toBeCloseTo(
            byAltitude.saturation.bubble?.value ?? Number.NaN,
            6,
          )
        }
      }),
      { numRuns: 25 },
    )
  })

  it('is never reversed by a better gauge, nor made one that cannot be told', () => {
    const side = { below: -1, at: 0, between: 0, above: 1, 'liquid-full': 0, 'cannot-tell': 0 }
    fc.assert(
      fc.property(reading, fc.double({ min: 0, max: 1, noNaN: true }), (given, finer) => {
        const rough = { ...given, width: given.width ?? 7 }
        const sharp = { ...rough, width: rough.width * finer }
        for (const name of names) {
          const [before, after] = [steps[name](askOf(rough)).state, steps[name](askOf(sharp)).state]
          if (side[before] !== 0) expect(side[after]).toBe(side[before])
          if (before !== 'cannot-tell') expect(after).not.toBe('cannot-tell')
        }
      }),
      { numRuns: 40 },
    )
  })
})
