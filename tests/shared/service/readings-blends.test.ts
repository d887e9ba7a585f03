import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CalcError } from '../../../shared/errors.ts'
import {
  refrigerant,
  refrigerants,
  saturationTemperature,
} from '../../../shared/refrigerant/index.ts'
import { readings } from '../../../shared/service/readings.ts'
import { saturation } from '../../../shared/service/saturation.ts'
import { table } from '../../../shared/service/table.ts'

const run = (input: Record<string, unknown>) =>
  readings.run({ refrigerant: 'R-407C', units: 'us', ...input })
const ids = (input: Record<string, unknown>) =>
  run(input).result.findings.map((finding) => finding.id)

describe('a blend with glide', () => {
  it('has its superheat from the dew line and its subcooling from the bubble line', () => {
    const r = refrigerant('R-407C')
    const { result } = run({
      suctionPressure: '500 kPa abs',
      suctionTemperature: '15 °C',
      liquidPressure: '1900 kPa abs',
      liquidTemperature: '38 °C',
      units: 'si',
      precise: true,
    })
    expect(result.superheat?.value).toBeCloseTo(288.15 - saturationTemperature(r, 5e5, 'dew'), 9)
    expect(result.subcooling?.value).toBeCloseTo(
      saturationTemperature(r, 1.9e6, 'bubble') - 311.15,
      9,
    )
    // Taking the wrong line would be wrong by the glide, more than the whole verdict's tolerance.
    expect(result.lowSide?.dewTemperature?.value ?? 0).toBeGreaterThan(
      (result.lowSide?.bubbleTemperature?.value ?? 0) + 5,
    )
  })

  it('says so', () => {
    const { result } = run({ suctionPressure: '68 psig', suctionTemperature: '54 °F' })
    expect(result.statements.join(' ')).toMatch(
      /superheat counts from its dew line and subcooling from its bubble line/u,
    )
  })

  it('condenses about the mean of both lines', () => {
    const { result } = run({ liquidPressure: '260 psig', precise: true })
    const { bubbleTemperature, dewTemperature, condensingTemperature } = result.highSide ?? {}
    expect(condensingTemperature?.value).toBeCloseTo(
      ((bubbleTemperature?.value ?? 0) + (dewTemperature?.value ?? 0)) / 2,
      9,
    )
  })

  it('has its discharge superheat from the dew line', () => {
    const { result } = run({
      dischargePressure: '1900 kPa abs',
      dischargeTemperature: '80 °C',
      units: 'si',
      precise: true,
    })
    const dew = saturationTemperature(refrigerant('R-407C'), 1.9e6, 'dew')
    expect(result.dischargeSuperheat?.value).toBeCloseTo(353.15 - dew, 9)
  })

  it('between its lines holds liquid and vapour, and below both the reading is impossible', () => {
    // At 68 psig R-407C boils from 32 to 43 °F.
    expect(ids({ suctionPressure: '68 psig', suctionTemperature: '38 °F' })).toEqual([
      'liquid-in-suction-line',
    ])
    expect(ids({ suctionPressure: '68 psig', suctionTemperature: '28 °F' })).toEqual([
      'suction-colder-than-dew',
    ])
    // At 260 psig it condenses from 118 to 110 °F.
    expect(ids({ liquidPressure: '260 psig', liquidTemperature: '114 °F' })).toEqual([
      'vapour-in-liquid-line',
    ])
    expect(ids({ liquidPressure: '260 psig', liquidTemperature: '122 °F' })).toEqual([
      'liquid-hotter-than-bubble',
    ])
  })
})

describe('saturation and table of a blend', () => {
  it('saturation shows both lines and the glide', () => {
    const { result } = saturation.run({
      refrigerant: 'R-407C',
      pressure: '500 kPa abs',
      units: 'si',
      precise: true,
    })
    expect(result.lines).toBe('bubble-and-dew')
    const width = result.dew.temperature.value - result.bubble.temperature.value
    expect(result.glide.value).toBeCloseTo(width, 6)
    expect(width).toBeGreaterThan(5)
  })

  it('a table has a column for each line', () => {
    const { result } = table.run({
      refrigerant: 'R-407C',
      from: '40 °F',
      to: '60 °F',
      step: '10 °F',
      columns: ['saturation', 'glide'],
    })
    expect(result.columns.map((column) => column.label)).toEqual([
      'temperature',
      'bubble pressure',
      'dew pressure',
      'glide',
    ])
  })
})

describe('whatever is read, of whatever refrigerant', () => {
  const name = fc.constantFrom(...refrigerants().map((entry) => entry.id))
  const odd = fc.oneof(
    { weight: 30, arbitrary: fc.double({ min: 0.5, max: 400, noNaN: true }) },
    { weight: 1, arbitrary: fc.constantFrom(0, -14.7, 1e6, 1e-9) },
  )
  const pressure = fc.option(
    fc.record({
      value: odd,
      unit: fc.constantFrom('psig', 'psia', 'bar g', 'inHg vac', 'kPa abs'),
      plusMinus: fc.constantFrom(0, 0.5, 5, 500),
    }),
    { nil: undefined },
  )
  const temperature = fc.option(
    fc.record({
      value: fc.oneof(
        { weight: 20, arbitrary: fc.double({ min: -100, max: 255, noNaN: true }) },
        { weight: 1, arbitrary: fc.constantFrom(0, 400, 1e9) },
      ),
      unit: fc.constantFrom('°F', '°F', '°C', '°C', 'K'),
      plusMinus: fc.constantFrom(0, 1, 40),
    }),
    { nil: undefined },
  )
  const air = fc.option(
    fc.record({
      value: fc.oneof(
        { weight: 20, arbitrary: fc.double({ min: 35, max: 94, noNaN: true }) },
        { weight: 1, arbitrary: fc.constantFrom(0, 1e9) },
      ),
      unit: fc.constantFrom('°F'),
      plusMinus: fc.constantFrom(0, 1, 40),
    }),
    { nil: undefined },
  )
  const input = fc.record(
    {
      refrigerant: name,
      machine: fc.constantFrom('off-road', 'stationary', 'refrigerated-cargo', undefined),
      meteringDevice: fc.constantFrom(
        'expansion-valve',
        'electronic-valve',
        'fixed-orifice',
        'orifice-tube',
        undefined,
      ),
      suctionPressure: pressure,
      suctionTemperature: temperature,
      liquidPressure: pressure,
      liquidTemperature: temperature,
      dischargePressure: pressure,
      dischargeTemperature: temperature,
      ambient: air,
      returnWetBulb: air,
      altitude: fc.constantFrom('0 ft', '9000 ft', '70000 ft', undefined),
    },
    { requiredKeys: ['refrigerant'] },
  )

  it('the answer fits its schema and is finite throughout, or is a named refusal', () => {
    let answered = 0
    fc.assert(
      fc.property(input, (raw) => {
        try {
          const answer = readings.run(raw)
          expect(readings.output.safeParse(answer).error).toBeUndefined()
          expect(JSON.stringify(answer)).not.toMatch(/:null|NaN|Infinity/u)
          answered += 1
        } catch (error) {
          expect(error).toBeInstanceOf(CalcError)
        }
      }),
      { numRuns: 1_500 },
    )
    // The generator must not refuse its way past the test.
    expect(answered).toBeGreaterThan(100)
  })
})
