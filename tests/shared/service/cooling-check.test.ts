import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { coolingCheck } from '../../../shared/service/cooling-check.ts'
import { refusalOf } from '../../support/refusal.ts'

const run = (input: Record<string, unknown>) =>
  coolingCheck.run({ units: 'us', refrigerant: 'R-134a', ambient: '90 ±1 °F', ...input })

const refusal = (input: Record<string, unknown>) => refusalOf(() => run(input))

const codes = (answer: { warnings: readonly { code: string }[] }) =>
  answer.warnings.map(({ code }) => code)

const loader = { machine: 'off-road', engine: 'about-1000-rpm' }
const car = {
  machine: 'road-vehicle',
  air: 'recirculated',
  windows: 'closed',
  engine: 'about-1000-rpm',
}

describe('published bands', () => {
  it('calls a pressure that every fitting table prints normal', () => {
    const { high } = run({ ...loader, dischargePressure: '200 ±2 psig' }).result.bands
    expect(high.verdict).toBe('in-every-table')
    expect(high.sentence).toContain('normal by every table')
  })

  it('shows that the same pressure is normal on a loader and low on a car', () => {
    const found = (machine: Record<string, unknown>) =>
      run({ ...machine, dischargePressure: '175 ±1 psig', ambient: '90 ±0.1 °F' })
    expect(found(loader).result.bands.high.verdict).toBe('in-every-table')
    expect(
      found(car).result.tables.find(({ id }) => id === 'passenger-car-closed')?.high?.reading,
    ).toBe('below')
  })

  it('reads the band between two printed rows, and not beyond the last', () => {
    const at = (ambient: string) =>
      run({ ...loader, ambient, dischargePressure: '200 psig' }).result.tables.find(
        ({ id }) => id === 'loader-1000-rpm',
      )
    expect(at('85 °F')?.high?.from).toMatchObject({ value: 155, unit: 'psig' })
    expect(at('120 °F')?.status).toBe('no-row-for-this-temperature')
    expect(at('120 °F')?.high).toBeUndefined()
  })

  it('says when it cannot tell, and calls what is above every table so', () => {
    expect(run({ ...car, dischargePressure: '281 ±5 psig' }).result.bands.high.verdict).toBe(
      'cannot-tell',
    )
    expect(run({ ...loader, dischargePressure: '320 ±2 psig' }).result.bands.high.verdict).toBe(
      'above-all',
    )
    expect(run({ ...loader, suctionPressure: '2 ±1 psig' }).result.bands.low.verdict).toBe(
      'below-all',
    )
  })

  it('names the conditions in which a table differs', () => {
    const { tables } = run({
      ...loader,
      dischargePressure: '200 psig',
      relativeHumidity: '30 %',
    }).result
    const sports = tables.find(({ id }) => id === 'sports-car-idle-open-50-60-rh')
    expect(sports?.status).toBe('other-condition')
    expect(sports?.differs).toEqual(['machine', 'engine', 'humidity'])
  })

  it('takes one printed vent figure as the warmest', () => {
    const vent = (ventTemperature: string) =>
      run({ ...car, ventTemperature, ambient: '90 ±0.1 °F' }).result.tables.find(
        ({ id }) => id === 'passenger-car-closed',
      )?.vent?.reading
    expect(vent('44 ±1 °F')).toBe('inside')
    expect(vent('56 ±1 °F')).toBe('above')
  })

  it('has no table for other refrigerants and says so', () => {
    const answer = run({ refrigerant: 'R-1234yf', dischargePressure: '200 psig' })
    expect(answer.result.bands.high.verdict).toBe('no-table')
    expect(codes(answer)).toContain('no-table-for-refrigerant')
  })

  it('puts the figures of the equipment maker first', () => {
    const { maker } = run({
      ...loader,
      dischargePressure: '200 ±2 psig',
      makerHighFrom: '210 psig',
      makerHighTo: '240 psig',
      ventTemperature: '50 ±1 °F',
      makerVentTo: '55 °F',
    }).result
    expect(maker).toEqual({ high: 'below', vent: 'inside' })
  })

  it('does not turn from one verdict to its opposite within the stated uncertainty', () => {
    const decided = new Set(['in-every-table', 'below-all', 'above-all'])
    fc.assert(
      fc.property(
        fc.double({ min: 100, max: 400, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.double({ min: 70, max: 110, noNaN: true }),
        (psig, shift, fahrenheit) => {
          const verdict = (value: number) =>
            run({
              ...loader,
              ambient: { value: fahrenheit, unit: '°F', plusMinus: 1 },
              dischargePressure: { value, unit: 'psig', plusMinus: 3 },
            }).result.bands.high.verdict ?? ''
          const found = new Set([verdict(psig), verdict(psig + shift)])
          expect([...found].filter((name) => decided.has(name)).length).toBeLessThan(2)
        },
      ),
      { numRuns: 80 },
    )
  })
})

describe('pressures as temperatures', () => {
  it('names the spread of condensing above ambient over the tables that fit', () => {
    const { temperatures } = run({
      ...loader,
      dischargePressure: '200 ±2 psig',
      suctionPressure: '22 psig',
    }).result
    expect(temperatures?.condensing?.value).toBeCloseTo(130.5, 0)
    expect(temperatures?.verdict).toBe('inside')
    // the army table alone spans about 24 to 57 °F above ambient
    expect(temperatures?.tablesFrom?.value).toBeGreaterThan(20)
    expect(temperatures?.tablesTo?.value).toBeLessThan(62)
  })

  it('has no condensing temperature above the critical pressure, and goes on', () => {
    const answer = run({
      refrigerant: 'R-744',
      dischargePressure: '1400 psig',
      suctionPressure: '500 psig',
    })
    expect(codes(answer)).toContain('no-saturation-temperature')
    expect(answer.result.temperatures?.condensing).toBeUndefined()
    expect(answer.result.temperatures?.evaporating?.value).toBeLessThan(50)
  })
})

describe('air side', () => {
  it('gives drop, dew points and a wet coil', () => {
    const { air } = run({ ventTemperature: '50 ±1 °F', relativeHumidity: '50 %' }).result
    expect(air?.drop).toMatchObject({ value: 40, unit: '°F' })
    expect(air?.coil).toBe('wet')
    expect(air?.dewPointVent?.value).toBeCloseTo(50, 1)
    expect(air?.latentShare?.value).toBeGreaterThan(20)
  })

  it('calls the coil of dry air dry, and cannot tell at the dew point', () => {
    expect(run({ ventTemperature: '55 °F', relativeHumidity: '15 %' }).result.air?.coil).toBe('dry')
    const dewPoint = run({ relativeHumidity: '40 ±3 %' }).result.air?.dewPointIn
    expect(
      run({ relativeHumidity: '40 ±3 %', ventTemperature: `${dewPoint?.value} ±1 °F` }).result.air
        ?.coil,
    ).toBe('cannot-tell')
  })

  it('warns when the vent is warmer than the air going in', () => {
    expect(codes(run({ ventTemperature: '110 °F' }))).toContain('vent-warmer-than-inlet')
  })

  it('takes out more heat and leaves less water the colder the vent', () => {
    const degrees = fc.double({ min: 36, max: 85, noNaN: true })
    const humidity = fc.double({ min: 5, max: 100, noNaN: true })
    fc.assert(
      fc.property(degrees, humidity, (fahrenheit, percent) => {
        const air = (value: number) =>
          run({
            ventTemperature: { value, unit: '°F' },
            relativeHumidity: { value: percent, unit: '%' },
            precise: true,
          }).result.air
        const [warm, cold] = [air(fahrenheit), air(fahrenheit - 2)]
        expect(cold?.heatTaken?.value ?? 0).toBeGreaterThan(warm?.heatTaken?.value ?? Infinity)
        expect(cold?.dewPointVent?.value ?? 0).toBeLessThanOrEqual(
          (warm?.dewPointVent?.value ?? -Infinity) + 0.01,
        )
        expect(warm?.humidityVent?.value).toBeLessThanOrEqual(100)
      }),
      { numRuns: 60 },
    )
  })
})

describe('at rest and clutch', () => {
  it.each([
    ['80 psig', '80 psig', 'above-least'],
    ['60 psig', '60 psig', 'below-least'],
    ['70.5 psig', '80 psig', 'cannot-tell'],
  ])('reads %s and %s at 80 °F as %s', (staticHigh, staticLow, verdict) => {
    expect(run({ ambient: '80 °F', staticHigh, staticLow }).result.rest?.test).toBe(verdict)
  })

  it('compares the rest with saturation and asks to wait for unequal sides', () => {
    const answer = run({ ambient: '80 °F', staticHigh: '88 psig', staticLow: '70 psig' })
    expect(answer.result.rest?.state).toBe('below')
    expect(codes(answer)).toContain('sides-not-equal')
    expect(run({ ambient: '80 °F', staticLow: '87 psig' }).result.rest?.state).toBe('at')
    expect(run({ ambient: '80 °F', staticLow: '110 psig' }).result.rest?.state).toBe('above')
  })

  it('has no published row below 60 °F', () => {
    expect(run({ ambient: '50 °F', staticLow: '40 psig' }).result.rest?.test).toBe(
      'no-published-row',
    )
  })

  it('holds switch points against published settings', () => {
    const { clutch } = run({ cutOut: '25 psig', cutIn: '44 psig', cyclesPerMinute: 3 }).result
    expect(clutch?.rows[0]).toMatchObject({ opens: 'inside', closes: 'inside' })
    expect(clutch?.rows[2]).toMatchObject({ opens: 'above', closes: 'above' })
    expect(clutch?.cycling).toContain('weigh the charge')
  })
})

describe('bad input', () => {
  it.each([
    [{}, 'missing-input', ['dischargePressure']],
    [
      { refrigerant: 'R-9999', dischargePressure: '200 psig' },
      'unknown-refrigerant',
      ['refrigerant'],
    ],
    [{ ambient: '300 °F', dischargePressure: '200 psig' }, 'out-of-range', ['ambient']],
    [{ relativeHumidity: '140 %' }, 'out-of-range', ['relativeHumidity']],
    [{ dischargePressure: '40 inHg vac' }, 'out-of-range', ['dischargePressure']],
  ])('%j is answered with the field', (input, code, path) => {
    const error = refusal(input)
    expect(error.code).toBe(code)
    expect(error.path).toEqual(path)
  })
})

describe('readings that contradict each other', () => {
  it('says that a running compressor cannot have its high side below its low side', () => {
    expect(codes(run({ dischargePressure: '100 psig', suctionPressure: '150 psig' }))).toContain(
      'high-below-low',
    )
    expect(codes(run({ dischargePressure: '205 psig', suctionPressure: '24 psig' }))).not.toContain(
      'high-below-low',
    )
  })

  it("refuses a maker's band that is upside down", () => {
    const upside = {
      dischargePressure: '205 psig',
      makerHighFrom: '300 psig',
      makerHighTo: '250 psig',
    }
    expect(refusal(upside)).toMatchObject({ code: 'bad-input', path: ['makerHighFrom'] })
  })
})

describe('sides that have not met at rest', () => {
  it('do not say that the charge is gone while one of them shows it', () => {
    const rest = (staticHigh: string, staticLow: string) =>
      run({ ambient: '95 °F', staticHigh, staticLow }).result.rest?.test
    expect(rest('130 psig', '60 psig')).toBe('cannot-tell')
    expect(rest('60 psig', '40 psig')).toBe('below-least')
    expect(rest('110 psig', '110 psig')).toBe('above-least')
  })
})

describe('tables without an ambient', () => {
  it('say nothing of weather in which nobody tests cooling', () => {
    const high = (ambient: string) =>
      run({ ambient, dischargePressure: '100 psig' }).result.bands.high.verdict
    expect(high('20 °F')).toBe('no-table')
    expect(high('90 °F')).toBe('below-all')
  })
})
