import { describe, expect, it } from 'vitest'
import data from '../../../data/service/reading-findings.json' with { type: 'json' }
import sources from '../../../data/service/reading-sources.json' with { type: 'json' }
import { readings } from '../../../shared/service/readings.ts'

const run = (input: Record<string, unknown>) =>
  readings.run({ refrigerant: 'R-134a', units: 'us', ...input }).result
const ids = (input: Record<string, unknown>) => run(input).findings.map((finding) => finding.id)

const SOUND = {
  suctionPressure: '35 psig',
  suctionTemperature: '52 °F',
  liquidPressure: '185 psig',
  liquidTemperature: '112 °F',
  ambient: '90 °F',
  dischargeTemperature: '160 °F',
}

describe('findings', () => {
  it('sound readings have none', () => {
    expect(ids(SOUND)).toEqual([])
  })

  it.each<[finding: string, change: Record<string, unknown>]>([
    ['liquid-hotter-than-bubble', { liquidTemperature: '135 °F' }],
    ['liquid-hotter-than-bubble', { liquidTemperature: '135 ±3 °F' }],
    ['no-subcooling', { liquidTemperature: '126 ±4 °F' }],
    ['suction-colder-than-dew', { suctionTemperature: '30 °F' }],
    ['no-superheat', { suctionTemperature: '39 ±3 °F' }],
    ['superheat-very-low', { suctionPressure: '35 ±0.3 psig', suctionTemperature: '42 ±0.5 °F' }],
    ['superheat-very-high', { suctionTemperature: '75 °F', meteringDevice: 'expansion-valve' }],
    [
      'no-pressure-difference',
      { suctionPressure: '80 psig', suctionTemperature: '85 °F', liquidPressure: '80 psig' },
    ],
    [
      'no-pressure-difference',
      { suctionPressure: '80 ±3 psig', suctionTemperature: '85 °F', liquidPressure: '83 ±3 psig' },
    ],
    ['suction-above-discharge', { suctionPressure: '185 psig', liquidPressure: '35 psig' }],
    ['discharge-colder-than-dew', { dischargeTemperature: '90 °F' }],
    ['condensing-below-ambient', { ambient: '140 °F' }],
    ['liquid-colder-than-ambient', { ambient: '118 °F' }],
    ['suction-in-vacuum', { suctionPressure: '5 inHg vac' }],
    ['liquid-above-discharge', { dischargePressure: '170 psig' }],
    [
      'subcooling-from-discharge-pressure',
      { liquidPressure: undefined, dischargePressure: '190 psig' },
    ],
  ])('%s', (finding, change) => {
    expect(ids({ ...SOUND, ...change })).toContain(finding)
  })

  it('an impossible reading says by how much, why it may be, and what would settle it', () => {
    const [first] = run({ ...SOUND, suctionTemperature: '30 ±2 °F' }).findings
    expect(first?.id).toBe('suction-colder-than-dew')
    expect(first?.level).toBe('impossible')
    expect(first?.message).toMatch(
      /by \d+(\.\d+)? °F \(5\.\d+ K\), where the instruments allow 2\.\d+ °F/u,
    )
    expect(first?.causes.join(' ')).toMatch(/refrigerant.*probe/u)
    expect(first?.settle.length).toBeGreaterThan(1)
  })

  it('a contradiction inside the uncertainty is none', () => {
    expect(ids({ ...SOUND, liquidTemperature: '127 ±5 °F' })).not.toContain(
      'liquid-hotter-than-bubble',
    )
    expect(ids({ ...SOUND, liquidTemperature: '127 ±1 °F' })).toContain('liquid-hotter-than-bubble')
  })

  it('impossible ones come first', () => {
    const levels = run({
      ...SOUND,
      liquidPressure: undefined,
      dischargePressure: '190 psig',
      suctionTemperature: '41 °F',
      liquidTemperature: '150 °F',
    }).findings.map((finding) => finding.level)
    expect(levels).toEqual([...levels].sort((a, b) => order(a) - order(b)))
    expect(levels).toContain('impossible')
    expect(levels.at(-1)).toBe('note')
  })
  const order = (level: string) => ['stop', 'impossible', 'suspect', 'note'].indexOf(level)

  it('a starved evaporator behind an orifice is judged by its target, not by the range of a valve', () => {
    expect(ids({ ...SOUND, suctionTemperature: '75 °F', meteringDevice: 'fixed-orifice' })).toEqual(
      [],
    )
  })

  it('an orifice tube floods its evaporator outlet by design', () => {
    expect(
      ids({ ...SOUND, suctionTemperature: '41 ±2 °F', meteringDevice: 'orifice-tube' }),
    ).toEqual([])
    expect(
      ids({ ...SOUND, suctionTemperature: '33 ±2 °F', meteringDevice: 'orifice-tube' }),
    ).toEqual(['suction-colder-than-dew'])
  })

  it('an orifice on stationary equipment has no accumulator to keep the liquid back', () => {
    const wet = { ...SOUND, suctionTemperature: '41 ±2 °F' }
    expect(ids({ ...wet, machine: 'stationary', meteringDevice: 'orifice-tube' })).toEqual([
      'no-superheat',
    ])
    expect(ids({ ...wet, machine: 'off-road', meteringDevice: 'fixed-orifice' })).toEqual([])
  })

  it('a machine that does not pump, and swapped hoses, are all that is said of them', () => {
    const rest = {
      suctionPressure: '70 ±1 psig',
      suctionTemperature: '70 °F',
      liquidPressure: '71 ±1 psig',
      liquidTemperature: '70 °F',
      ambient: '75 °F',
    }
    expect(ids(rest)).toEqual(['no-pressure-difference'])
    expect(
      ids({ ...SOUND, suctionPressure: '185 psig', liquidPressure: '35 psig', ambient: '90 °F' }),
    ).toEqual(['suction-above-discharge'])
  })

  it('above its critical pressure no other refrigerant works', () => {
    const { findings, verdicts } = run({
      ...SOUND,
      refrigerant: 'R-410A',
      suctionPressure: '118 psig',
      liquidPressure: '720 psig',
      machine: 'stationary',
      meteringDevice: 'expansion-valve',
    })
    expect(findings.map(({ id, level }) => [id, level])).toEqual([
      ['above-cut-out', 'stop'],
      ['above-critical', 'stop'],
    ])
    expect(findings[1]?.settle.join(' ')).toContain('stop the machine')
    expect(verdicts.map(({ outcome }) => outcome)).toEqual(['no-valid-test', 'no-valid-test'])
  })

  it('a discharge line too hot for the oil is said, and not for R-744', () => {
    expect(ids({ ...SOUND, dischargeTemperature: '240 °F' })).toContain('discharge-very-hot')
    expect(ids({ ...SOUND, dischargeTemperature: '226 ±4 °F' })).not.toContain('discharge-very-hot')
    expect(
      ids({
        refrigerant: 'R-744',
        dischargePressure: '95 bar g',
        dischargeTemperature: '130 °C',
      }),
    ).not.toContain('discharge-very-hot')
  })

  it('a temperature that no pipe and no air has is refused at its field', () => {
    for (const [field, value] of [
      ['suctionTemperature', '900 °F'],
      ['ambient', '300 °F'],
      ['returnWetBulb', '120 °F'],
    ] as const) {
      expect(() => run({ ...SOUND, [field]: value })).toThrow(
        expect.objectContaining({ code: 'out-of-range', path: [field] }),
      )
    }
  })

  it('R-744 above its critical pressure is no fault, and the low side is worked out', () => {
    const result = run({
      refrigerant: 'R-744',
      suctionPressure: '35 bar g',
      suctionTemperature: '8 °C',
      dischargePressure: '95 bar g',
      dischargeTemperature: '95 °C',
      liquidTemperature: '38 °C',
    })
    expect(result.findings.map((finding) => [finding.id, finding.level])).toEqual([
      ['supercritical', 'note'],
    ])
    expect(result.highSide?.state).toBe('supercritical')
    expect(result.highSide?.bubbleTemperature).toBeUndefined()
    expect(result.superheat?.value).toBeGreaterThan(0)
    expect(result.compressionRatio?.value).toBeCloseTo((95 + 1.013_25) / (35 + 1.013_25), 2)
  })

  it('R-744 parked above its critical temperature is refused on neither side', () => {
    const result = run({
      refrigerant: 'R-744',
      suctionPressure: '80 bar g',
      suctionTemperature: '40 °C',
      liquidPressure: '80 bar g',
    })
    expect(result.findings.map((finding) => finding.id)).toEqual([
      'no-pressure-difference',
      'supercritical',
      'supercritical',
    ])
  })
})

describe('the data of the findings', () => {
  it.each(Object.entries(data.findings))(
    '%s has causes, a way to settle it, and sources',
    (_, entry) => {
      expect(entry.causes.length).toBeGreaterThan(0)
      expect(entry.settle.length).toBeGreaterThan(0)
      expect(['stop', 'impossible', 'suspect', 'note']).toContain(entry.level)
      for (const id of entry.sources) expect(Object.keys(sources.sources)).toContain(id)
    },
  )
})
