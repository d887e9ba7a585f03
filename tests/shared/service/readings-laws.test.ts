import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { standardAtmosphere } from '../../../shared/quantity/index.ts'
import { fractionation } from '../../../shared/service/fractionation.ts'
import { readings } from '../../../shared/service/readings.ts'
import { retrofit } from '../../../shared/service/retrofit.ts'
import { saturation } from '../../../shared/service/saturation.ts'
import { table } from '../../../shared/service/table.ts'

const OPERATIONS = { readings, saturation, table, fractionation, retrofit } as const

/** A vehicle or a building with every reading that a verdict takes. */
const machine = fc.constantFrom('off-road', 'road-vehicle', 'stationary')
const device = fc.constantFrom('expansion-valve', 'orifice-tube', 'fixed-orifice')
const refrigerant = fc.constantFrom('R-134a', 'R-1234yf', 'R-407C', 'R-409A')
const psig = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const fahrenheit = (min: number, max: number) => fc.double({ min, max, noNaN: true })

const read = fc.record({
  refrigerant,
  machine,
  meteringDevice: device,
  low: psig(15, 70),
  suction: fahrenheit(20, 90),
  high: psig(120, 320),
  liquid: fahrenheit(70, 150),
  air: fahrenheit(60, 110),
  wetBulb: fahrenheit(55, 75),
  width: fc.double({ min: 0.05, max: 4, noNaN: true }),
  tighter: fc.double({ min: 0, max: 1, noNaN: true }),
})
type Read = typeof read extends fc.Arbitrary<infer T> ? T : never

const inputOf = (
  r: Read,
  share: number,
  place: Record<string, unknown> = { barometer: '29.92 ±0.05 inHg' },
) => {
  const width = r.width * share
  const p = (value: number) => ({ value, unit: 'psig', plusMinus: width })
  const t = (value: number) => ({ value, unit: '°F', plusMinus: width })
  return {
    refrigerant: r.refrigerant,
    machine: r.machine,
    meteringDevice: r.meteringDevice,
    suctionPressure: p(r.low),
    suctionTemperature: t(r.suction),
    liquidPressure: p(r.high),
    liquidTemperature: t(r.liquid),
    ambient: t(r.air),
    ...(r.machine === 'stationary' && r.meteringDevice !== 'expansion-valve'
      ? { returnWetBulb: t(r.wetBulb) }
      : {}),
    ...(r.meteringDevice === 'expansion-valve'
      ? { subcoolingLow: '8 °F', subcoolingHigh: '16 °F' }
      : {}),
    ...place,
    units: 'si' as const,
    precise: true,
  }
}

const DECIDED: readonly string[] = ['inside', 'below', 'above']

describe('readings', () => {
  it('a tighter ± never reverses a verdict nor turns one into cannot tell', () => {
    let decided = 0
    let opened = 0
    fc.assert(
      fc.property(read, (r) => {
        const loose = readings.run(inputOf(r, 1)).result.verdicts
        const tight = readings.run(inputOf(r, r.tighter)).result.verdicts
        for (const [index, verdict] of loose.entries()) {
          if (verdict.outcome === 'cannot-tell') opened += 1
          if (!DECIDED.includes(verdict.outcome)) continue
          decided += 1
          // A better instrument may show that readings contradict each other; it decides nothing else anew.
          expect([verdict.outcome, 'no-valid-test']).toContain(tight[index]?.outcome)
        }
      }),
      { numRuns: 400 },
    )
    expect(decided).toBeGreaterThan(100)
    expect(opened).toBeGreaterThan(15)
  })

  it('a wider ± is never more certain: what it decides, the exact reading decides alike', () => {
    fc.assert(
      fc.property(read, (r) => {
        const place = { barometer: '101325 ±0 Pa' }
        const [loose, exact] = [1, 0].map((share) => readings.run(inputOf(r, share, place)).result)
        for (const name of ['superheat', 'subcooling', 'condensingOverAmbient'] as const) {
          expect(loose?.[name]?.value).toBeCloseTo(exact?.[name]?.value ?? Number.NaN, 9)
          expect(loose?.[name]?.plusMinus ?? 0).toBeGreaterThan(exact?.[name]?.plusMinus ?? 0)
        }
      }),
      { numRuns: 60 },
    )
  })

  it('a pattern that is shown stays, or gives way to one that says more, with a better instrument', () => {
    fc.assert(
      fc.property(read, (r) => {
        const at = (share: number) => readings.run(inputOf(r, share)).result
        const [loose, tight] = [at(1), at(r.tighter)]
        const spoils = ({ id, level }: (typeof tight.findings)[number]) =>
          level === 'impossible' || level === 'stop' || id === 'liquid-colder-than-ambient'
        if (tight.findings.some(spoils)) return
        if (loose.patterns.length > 0) expect(tight.patterns.length).toBeGreaterThan(0)
      }),
      { numRuns: 200 },
    )
  })

  it('an altitude and the barometer that belongs to it give the same figures', () => {
    fc.assert(
      fc.property(read, fc.double({ min: -100, max: 4_000, noNaN: true }), (r, metres) => {
        const up = readings.run(inputOf(r, 1, { altitude: { value: metres, unit: 'm' } })).result
        const down = readings.run(
          inputOf(r, 1, { barometer: { value: standardAtmosphere(metres), unit: 'Pa' } }),
        ).result
        for (const name of ['superheat', 'subcooling', 'condensingOverAmbient'] as const) {
          expect(up[name]?.value).toBeCloseTo(down[name]?.value ?? Number.NaN, 9)
        }
        expect(up.compressionRatio?.value).toBe(down.compressionRatio?.value)
        // The weather is in the altitude, a station's own error in the barometer.
        expect(up.superheat?.plusMinus ?? 0).toBeGreaterThan(down.superheat?.plusMinus ?? 0)
      }),
      { numRuns: 60 },
    )
  })
})

describe('one reading', () => {
  const place = fc.constantFrom(
    {},
    { altitude: '5000 ±500 ft' },
    { barometer: '28.5 inHg' },
    { barometer: '29.92 ±0.1 inHg' },
  )
  const given = fc.oneof(
    psig(5, 240).map((value) => ({ value, unit: 'psig' })),
    fc.record({
      value: psig(5, 240),
      unit: fc.constant('psig'),
      plusMinus: fc.constantFrom(0, 0.3, 5),
    }),
    psig(20, 240).map((value) => ({ value, unit: 'psia' })),
  )

  it('has the same saturation and the same ± in saturation and in readings', () => {
    fc.assert(
      fc.property(refrigerant, given, place, (name, pressure, where) => {
        const common = { refrigerant: name, ...where, units: 'si', precise: true }
        const one = saturation.run({ ...common, pressure }).result
        const side = readings.run({ ...common, suctionPressure: pressure }).result.lowSide
        expect(side?.bubbleTemperature).toEqual(one.bubble.temperature)
        expect(side?.dewTemperature).toEqual(one.dew.temperature)
        expect(side?.absolutePressure).toEqual(one.dew.absolutePressure)
        expect(side?.gaugePressure).toEqual(one.dew.gaugePressure)
      }),
      { numRuns: 150 },
    )
  })

  it('has the same central figures in saturation and in a table, on each line', () => {
    fc.assert(
      fc.property(refrigerant, fahrenheit(-10, 120), (name, degrees) => {
        const from = { value: Number(degrees.toFixed(3)), unit: '°F' }
        const common = { refrigerant: name, units: 'us', precise: true }
        const columns = ['saturation', 'density', 'latent-heat', 'glide']
        const row = table.run({ ...common, from, to: from, step: '1 °F', columns }).result.rows[0]
        const one = saturation.run({ ...common, temperature: from }).result
        const pure = one.lines === 'one'
        expect(row?.[pure ? 'pressure' : 'bubblePressure']?.value).toBeCloseTo(
          one.bubble.gaugePressure.value,
          9,
        )
        if (!pure) expect(row?.dewPressure?.value).toBeCloseTo(one.dew.gaugePressure.value, 9)
        expect(row?.liquidDensity?.value).toBeCloseTo(one.bubble.density.value, 9)
        expect(row?.vapourDensity?.value).toBeCloseTo(one.dew.density.value, 9)
        expect(row?.latentHeat?.value).toBeCloseTo(one.latentHeat.value, 9)
        expect(row?.glide?.value).toBeCloseTo(one.glide.value, 9)
      }),
      { numRuns: 60 },
    )
  })

  it('of a pressure has the same central figures in saturation and in a table, on each line', () => {
    fc.assert(
      fc.property(refrigerant, psig(10, 200), (name, value) => {
        const from = { value: Number(value.toFixed(3)), unit: 'psig' }
        const common = { refrigerant: name, units: 'us', precise: true }
        const columns = ['saturation', 'density', 'latent-heat', 'glide']
        const row = table.run({ ...common, from, to: from, step: '1 psi', columns }).result.rows[0]
        const one = saturation.run({ ...common, pressure: from }).result
        const pure = one.lines === 'one'
        const at = (key: string) => row?.[key]?.value
        expect(at(pure ? 'temperature' : 'bubbleTemperature')).toBeCloseTo(
          one.bubble.temperature.value,
          9,
        )
        if (!pure) expect(at('dewTemperature')).toBeCloseTo(one.dew.temperature.value, 9)
        expect(at('liquidDensity')).toBeCloseTo(one.bubble.density.value, 9)
        expect(at('vapourDensity')).toBeCloseTo(one.dew.density.value, 9)
        expect(at('latentHeat')).toBeCloseTo(one.latentHeat.value, 9)
        expect(at('glide')).toBeCloseTo(one.glide.value, 9)
      }),
      { numRuns: 40 },
    )
  })

  it('at a place carries the ± of the place: altitude, weather, barometer', () => {
    const at = (where: Record<string, unknown>) =>
      saturation.run({
        refrigerant: 'R-134a',
        pressure: '32 ±0 psig',
        ...where,
        units: 'si',
        precise: true,
      }).result.dew.temperature.plusMinus ?? 0
    const exact = at({ barometer: '101325 ±0 Pa' })
    expect(exact).toBeLessThan(0.15)
    expect(at({})).toBeGreaterThan(exact * 2)
    expect(at({ altitude: '5000 ±2000 ft' })).toBeGreaterThan(at({ altitude: '5000 ft' }) * 1.5)
    expect(at({ barometer: '101325 ±2000 Pa' })).toBeGreaterThan(at({ barometer: '101325 Pa' }))
  })
})

describe('cautions', () => {
  /** What each of these steps says whatever is given, the machine at rest and the dullest refrigerant included. */
  const ALWAYS: Readonly<Record<keyof typeof OPERATIONS, readonly string[]>> = {
    readings: ['pressure', 'cold-burns', 'first-aid-eyes', 'maker-first', 'local-rules'],
    saturation: ['maker-first'],
    table: ['maker-first'],
    fractionation: [
      'pressure',
      'cold-burns',
      'asphyxiation',
      'no-venting',
      'do-not-mix',
      'weigh-the-charge',
      'maker-first',
      'local-rules',
    ],
    retrofit: [
      'no-flammable-retrofit',
      'pressure',
      'cold-burns',
      'do-not-mix',
      'maker-first',
      'local-rules',
    ],
  }

  const ids = (name: keyof typeof OPERATIONS, input: Record<string, unknown>) =>
    OPERATIONS[name].run({ ...OPERATIONS[name].example, ...input }).cautions.map(({ id }) => id)

  it.each(Object.keys(ALWAYS) as (keyof typeof OPERATIONS)[])(
    'of %s are in every answer',
    (name) => {
      const change = {
        readings: 'R-22',
        saturation: 'R-22',
        table: 'R-22',
        fractionation: 'R-410A',
        retrofit: 'R-12',
      }
      for (const input of [{}, { refrigerant: change[name] }, { units: 'si' }]) {
        expect(ids(name, input)).toEqual(expect.arrayContaining([...ALWAYS[name]]))
      }
    },
  )

  it('of what burns are in every step that names it', () => {
    for (const name of ['readings', 'saturation', 'table'] as const) {
      expect(ids(name, { refrigerant: 'R-1234yf' })).toContain('flammable')
      expect(ids(name, { refrigerant: 'R-134a' })).not.toContain('flammable')
    }
    expect(ids('fractionation', { refrigerant: 'R-454B', lost: '10 %' })).toContain('flammable')
  })

  it('of R-744 are its own', () => {
    const given = {
      refrigerant: 'R-744',
      suctionPressure: '500 psig',
      liquidPressure: undefined,
      altitude: undefined,
    }
    expect(ids('readings', given)).toContain('carbon-dioxide')
    expect(ids('readings', given)).not.toContain('no-venting')
    expect(ids('saturation', { refrigerant: 'R-744', pressure: '500 psig' })).toContain(
      'carbon-dioxide',
    )
  })

  it('of a conversion tell an electric compressor’s own dangers before anything is opened', () => {
    const given = ids('retrofit', { compressorDrive: 'electric' })
    expect(given).toEqual(
      expect.arrayContaining([
        'high-voltage',
        'electric-compressor-oil',
        'no-disposable-refill',
        'no-venting',
      ]),
    )
    expect(ids('retrofit', {})).not.toContain('high-voltage')
  })

  it('of a refused conversion come with the refusal, its own first', () => {
    let given: readonly string[] = []
    try {
      retrofit.run({ refrigerant: 'R-134a', newRefrigerant: 'R-290' })
    } catch (error) {
      given = (error as { cautions: readonly string[] }).cautions
    }
    expect(given[0]).toBe('no-flammable-retrofit')
    expect(given).toEqual(expect.arrayContaining([...ALWAYS.retrofit]))
  })
})

describe('old names', () => {
  it.each([
    ['readings', 'equipment', 'machine'],
    ['readings', 'indoorWetBulb', 'returnWetBulb'],
    ['readings', 'outdoorDryBulb', 'ambient'],
    ['fractionation', 'charge', 'startMass'],
    ['retrofit', 'from', 'refrigerant'],
    ['retrofit', 'to', 'newRefrigerant'],
    ['retrofit', 'originalCharge', 'labelCharge'],
  ] as const)('%s answers %s with %s', (name, old, now) => {
    const operation = OPERATIONS[name]
    expect(() => operation.run({ ...operation.example, [old]: '60 °F' })).toThrow(
      expect.objectContaining({ code: 'bad-input', message: expect.stringContaining(`"${now}"`) }),
    )
  })
})
