import { describe, expect, it } from 'vitest'
import { cooledAir, moistAir } from '../../../shared/physics/moist-air.ts'
import { coolingCheck } from '../../../shared/service/cooling-check.ts'

const run = (input: Record<string, unknown>) =>
  coolingCheck.run({ units: 'us', refrigerant: 'R-134a', ambient: '90 °F', ...input })
const ids = (answer: { cautions: readonly { id: string }[] }) => answer.cautions.map(({ id }) => id)
const codes = (answer: { warnings: readonly { code: string }[] }) =>
  answer.warnings.map(({ code }) => code)
const loader = { machine: 'off-road', engine: 'about-1000-rpm' }

describe('a dangerous running pressure', () => {
  const stop = (input: Record<string, unknown>) => run({ ...loader, ...input })

  it('stops the machine first, by the makers’ own switches, whatever else was asked', () => {
    const answer = stop({ dischargePressure: '440 psig', suctionPressure: '30 psig' })
    expect(answer.level).toBe('stop')
    expect(answer.headline).toMatch(/^STOP the machine: the gauge shows 440 psig; .* 43[45]/u)
    expect(ids(answer)).toContain('stop-the-machine')
    expect(answer.result.danger).toMatchObject({ why: 'above-cut-out', pressure: { value: 440 } })
    expect(answer.next?.[0]).toMatch(/^Stop the machine/u)
    expect(codes(answer)).toContain('above-cut-out')
    expect(answer.sources.map(({ id }) => id)).toContain('pressure-switch-1994')
  })

  it('is one on whichever port the high side was read, and below the switch it is none', () => {
    expect(stop({ liquidPressure: '450 psig' }).level).toBe('stop')
    expect(stop({ suctionPressure: '450 psig' }).level).toBe('stop')
    const below = stop({ dischargePressure: '430 psig' })
    expect(below.level).toBe('check')
    expect(below.result.danger).toBeUndefined()
    expect(ids(below)).not.toContain('stop-the-machine')
  })

  it('is one above the critical pressure where no switch is known, R-744 aside', () => {
    const hot = run({ refrigerant: 'R-290', dischargePressure: '640 psig' })
    expect(hot).toMatchObject({ level: 'stop', result: { danger: { why: 'above-critical' } } })
    expect(run({ refrigerant: 'R-744', dischargePressure: '1400 psig' }).level).not.toBe('stop')
  })

  it('does not hang on how good the gauge is', () => {
    expect(stop({ dischargePressure: '440 ±30 psig' }).level).toBe('stop')
    expect(stop({ dischargePressure: '440 ±0 psig' }).level).toBe('stop')
  })
})

describe('printed gauge pressures', () => {
  it('are those of sea level: a normal evaporating temperature at 7000 ft is not above every table', () => {
    // 26 psig at sea level boils as 29.4 psig does at 7000 ft
    const high = run({ ...loader, suctionPressure: '29.4 ±0.2 psig', altitude: '7000 ft' })
    const sea = run({ ...loader, suctionPressure: '26 ±0.2 psig', altitude: '0 ft' })
    expect(high.result.temperatures?.evaporating?.value).toBeCloseTo(
      sea.result.temperatures?.evaporating?.value ?? Number.NaN,
      0,
    )
    expect(high.result.bands.low.verdict).toBe(sea.result.bands.low.verdict)
    expect(high.result.bands.low.verdict).toBe('in-every-table')
    expect(
      run({ ...loader, suctionPressure: '32.7 ±0.2 psig', altitude: '7000 ft', ambient: '95 °F' })
        .result.bands.low.verdict,
    ).toBe('in-every-table')
    expect(
      run({ ...loader, suctionPressure: '32.7 ±0.2 psig', ambient: '95 °F' }).result.bands.low
        .verdict,
    ).toBe('above-all')
    const row = high.result.tables.find(({ id }) => id === 'loader-1000-rpm')
    expect(row?.low?.to.value).toBeCloseTo(30 + 3.36, 1)
    expect(high.assumptions.map(({ short }) => short)).toContain(
      'printed gauge pressures at sea level',
    )
  })

  it('are so for the least at rest, the switches and the maker’s figures too', () => {
    const at = { altitude: '7000 ft', ambient: '80 ±0 °F' }
    expect(run({ ...at, staticLow: '72 ±0 psig' }).result.rest?.test).toBe('below-least')
    expect(run({ ...at, staticLow: '75 ±0 psig' }).result.rest?.test).toBe('above-least')
    expect(run({ ...at, staticLow: '72 ±0 psig', altitude: '0 ft' }).result.rest?.test).toBe(
      'above-least',
    )
    const { clutch, maker } = run({
      ...at,
      cutOut: '30.5 ±0 psig',
      makerHighTo: '240 psig',
      dischargePressure: '242 ±1 psig',
    }).result
    expect(clutch?.rows[0]?.opens).toBe('inside')
    expect(maker?.high).toBe('inside')
  })
})

describe('both gauges alike', () => {
  it('are a pressure at rest: no word of a running machine', () => {
    const answer = run({
      ...loader,
      ambient: '75 °F',
      suctionPressure: '79 psig',
      dischargePressure: '80 psig',
    })
    expect(answer.result.rest?.state).toBe('at')
    expect(answer.result.temperatures).toBeUndefined()
    expect(answer.result.bands).toEqual({
      high: { from: expect.anything(), to: expect.anything() },
      low: { from: expect.anything(), to: expect.anything() },
      vent: {},
    })
    expect(codes(answer)).toContain('gauges-alike')
    expect(answer.headline).toMatch(/^At rest 79 psig is saturation at 75 °F/u)
    expect(JSON.stringify(answer.figures)).not.toMatch(/condensing|evaporating/u)
  })

  it('are not alike when they differ by more than both gauges explain', () => {
    const apart = run({ suctionPressure: '79 ±1 psig', dischargePressure: '85 ±4 psig' })
    expect(apart.result.rest).toBeUndefined()
  })
})

describe('the first line', () => {
  const cells: [Record<string, unknown>, string, RegExp][] = [
    [
      { ...loader, suctionPressure: '24 psig', dischargePressure: '205 psig' },
      'fine',
      /^Against published tables: high side 205 psig normal, low side 24 psig normal\.$/u,
    ],
    [
      { ...loader, dischargePressure: '205 psig', ventTemperature: '52 °F' },
      'fine',
      /^Against published tables: high side 205 psig normal\.$/u,
    ],
    [{ ...loader, dischargePressure: '320 psig' }, 'check', /high side 320 psig high\.$/u],
    [{ ...loader, suctionPressure: '4 psig' }, 'check', /low side 4 psig low\.$/u],
    [
      { ...loader, dischargePressure: '205 psig', makerHighTo: '180 psig' },
      'check',
      /high side 205 psig high for the maker\.$/u,
    ],
    [
      { refrigerant: 'R-1234yf', dischargePressure: '205 psig' },
      'check',
      /^No published table fits R-1234yf/u,
    ],
    [
      { dischargePressure: '100 psig', suctionPressure: '150 psig' },
      'check',
      /^High side 100 psig reads below low side 150 psig/u,
    ],
    [{ staticLow: '110 psig', ambient: '75 °F' }, 'check', /above saturation at 75 °F: air/u],
    [{ staticLow: '75 psig', ambient: '75 °F' }, 'check', /below saturation at 75 °F/u],
    [{ relativeHumidity: '50 %' }, 'information', /water drips from the coil below 69 °F/u],
    [{ cutOut: '25 psig' }, 'information', /opens at 25 psig, as published\.$/u],
    [{ cyclesPerMinute: 4 }, 'information', /^Cycling: 4 a minute\.$/u],
  ]
  it.each(cells)('%j', (input, level, headline) => {
    const answer = run(input)
    expect(answer.level).toBe(level)
    expect(answer.headline).toMatch(headline)
    expect(answer.headline?.length).toBeLessThanOrEqual(160)
    expect(answer.figures?.length).toBeGreaterThan(0)
    expect(answer.figures?.length).toBeLessThanOrEqual(6)
  })

  it('says that tables fit which print nothing of what was read', () => {
    const answer = run({ ...loader, ambient: '95 °F', ventTemperature: '55 °F' })
    expect(answer.headline).toMatch(
      /^The published tables that fit here print no vent temperature: /u,
    )
    expect(answer.level).toBe('check')
    expect(answer.next?.[0]).toMatch(/^Read both gauges/u)
  })

  it('speaks of belts and of the weighed charge at a vehicle only', () => {
    const at = (machine: string) => ids(run({ machine, dischargePressure: '205 psig' }))
    expect(at('off-road')).toEqual(expect.arrayContaining(['rotating-parts', 'weigh-the-charge']))
    expect(at('stationary')).not.toContain('rotating-parts')
    expect(at('stationary')).not.toContain('weigh-the-charge')
    for (const id of ['pressure', 'cold-burns', 'first-aid-eyes', 'maker-first', 'local-rules']) {
      expect(at('stationary')).toContain(id)
    }
  })

  it('knows each reading as well as its instrument, and says which was assumed', () => {
    const { assumptions } = run({
      suctionPressure: '24 psig',
      liquidPressure: '205 psig',
      ventTemperature: '50 °F',
    })
    const taken = Object.fromEntries(assumptions.map(({ field, short }) => [field, short]))
    expect(taken).toMatchObject({
      suctionPressure: 'low-side gauge ±1 psi',
      liquidPressure: 'high-side gauge ±4 psi',
      ambient: 'thermometer ±1 °F',
      ventTemperature: 'thermometer ±1 °F',
    })
  })

  it('carries the ± of the barometer and of the data into what a pressure means', () => {
    const evaporating = (input: Record<string, unknown>) =>
      run({ suctionPressure: '24 ±0 psig', precise: true, ...input }).result.temperatures
        ?.evaporating?.plusMinus ?? Number.NaN
    const data = evaporating({ barometer: '1013.25 ±0 hPa' })
    // R-134a: 0.3 % of the pressure, 0.1 K
    expect(data).toBeGreaterThan(0.1)
    expect(data).toBeLessThan(0.3)
    expect(evaporating({})).toBeGreaterThan(data + 0.3)
  })

  it('reads a printed switch setting to half a psi', () => {
    const opens = (cutOut: string) =>
      run({ cutOut, barometer: '1013.25 ±0 hPa' }).result.clutch?.rows[2]?.opens
    // printed 17.4 psig
    expect(opens('17.0 ±0 psig')).toBe('inside')
    expect(opens('16.8 ±0 psig')).toBe('below')
    expect(opens('17.8 ±0 psig')).toBe('inside')
    expect(opens('18.0 ±0 psig')).toBe('above')
  })

  it('counts as drying the heat of the water that left, and no other', () => {
    const air = run({
      ambient: '90 ±0 °F',
      ventTemperature: '50 ±0 °F',
      relativeHumidity: '50 %',
      barometer: '1013.25 ±0 hPa',
      precise: true,
    }).result.air
    const kelvin = (fahrenheit: number) => (fahrenheit + 459.67) / 1.8
    const inlet = moistAir(kelvin(90), 0.5, 101_325)
    const outlet = cooledAir(inlet, kelvin(50), 101_325)
    const celsius = kelvin(90) - 273.15
    // ASHRAE Fundamentals 2017, chapter 1, equation 30: 2501 + 1.86 t kJ a kg of water
    const water = (inlet.humidityRatio - outlet.humidityRatio) * (2501 + 1.86 * celsius) * 1000
    expect(air?.latentShare?.value).toBeCloseTo(
      (100 * water) / (inlet.enthalpy - outlet.enthalpy),
      6,
    )
  })

  it('takes one high side', () => {
    expect(() => run({ dischargePressure: '205 psig', liquidPressure: '200 psig' })).toThrow(
      expect.objectContaining({ code: 'bad-input', path: ['liquidPressure'] }),
    )
    expect(() => run({ highPressure: '205 psig' })).toThrow(
      expect.objectContaining({
        message: expect.stringMatching(/dischargePressure.*liquidPressure/u),
      }),
    )
  })
})
