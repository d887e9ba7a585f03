import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import figures from '../../../data/service/diagnosis.json' with { type: 'json' }
import data from '../../../data/service/patterns.json' with { type: 'json' }
import tables from '../../../data/service/performance-tables.json' with { type: 'json' }
import { FAULT_KINDS } from '../../../shared/cycle/index.ts'
import { patternsOf } from '../../../shared/diagnosis/patterns.ts'
import {
  LEVELS_OF_SIGN,
  limitsOf,
  possibleLevels,
  type SignId,
} from '../../../shared/diagnosis/signs.ts'
import { parseQuantity, SEA_LEVEL_PA } from '../../../shared/quantity/index.ts'
import { refrigerant, saturationTemperature } from '../../../shared/refrigerant/index.ts'
import { readings } from '../../../shared/service/readings.ts'

const run = (input: Record<string, unknown>) =>
  readings.run({ refrigerant: 'R-134a', units: 'us', ...input })
const patterns = (input: Record<string, unknown>) => run(input).result.patterns.map(({ id }) => id)

const kelvin = (fahrenheit: number) => (fahrenheit + 459.67) / 1.8
const CAB = { machine: 'off-road' } as const
const VALVE = { ...CAB, meteringDevice: 'expansion-valve' } as const
const TUBE = { ...CAB, meteringDevice: 'orifice-tube' } as const
const machineOf = (known: { readonly machine?: 'off-road' | 'stationary' }) => known.machine
const pipes = (low: number, suction: number, high: number, liquid: number) => ({
  suctionPressure: `${low} psig`,
  suctionTemperature: `${suction} °F`,
  liquidPressure: `${high} psig`,
  liquidTemperature: `${liquid} °F`,
})

describe('what two gauges and a few thermometers fit', () => {
  it.each<[what: string, input: Record<string, unknown>, pattern: string, said: RegExp]>([
    [
      '8/120 psig at 95 °F, orifice tube: both sides low',
      {
        ...CAB,
        meteringDevice: 'orifice-tube',
        suctionPressure: '8 psig',
        liquidPressure: '120 psig',
        ambient: '95 °F',
      },
      'both-low',
      /low charge or a restriction/u,
    ],
    [
      '70/120 psig: the compressor does not pump',
      { suctionPressure: '70 psig', liquidPressure: '120 psig', ambient: '95 °F' },
      'not-pumping',
      /not pumping/u,
    ],
    [
      '45/330 psig, subcooling 59 °F, 77 °F over the air',
      {
        ...CAB,
        meteringDevice: 'expansion-valve',
        suctionPressure: '45 psig',
        suctionTemperature: '62 °F',
        liquidPressure: '330 psig',
        liquidTemperature: '108 °F',
        ambient: '90 °F',
      },
      'condenser-and-subcooling',
      /condenser air flow, overcharge, or air/u,
    ],
    [
      '48/320 psig, subcooling 50 °F, orifice tube, no ±',
      {
        ...CAB,
        meteringDevice: 'orifice-tube',
        suctionPressure: '48 psig',
        liquidPressure: '320 psig',
        liquidTemperature: '115 °F',
      },
      'backed-up',
      /overcharge, condenser air flow, air in the system, or a restriction/u,
    ],
    [
      '12 inHg vac, superheat 94 °F, subcooling 16.5 °F: a restriction',
      {
        ...CAB,
        meteringDevice: 'expansion-valve',
        suctionPressure: '12 inHg vac',
        suctionTemperature: '60 °F',
        liquidPressure: '120 psig',
        liquidTemperature: '81.5 °F',
      },
      'restriction-in-vacuum',
      /^Restriction/u,
    ],
    [
      'superheat 49 °F with subcooling 2 °F: a low charge',
      {
        ...CAB,
        meteringDevice: 'expansion-valve',
        suctionPressure: '20 psig',
        suctionTemperature: '71 °F',
        liquidPressure: '150 psig',
        liquidTemperature: '109.5 °F',
      },
      'low-charge',
      /^Low charge/u,
    ],
    [
      'superheat high, subcooling there: a restriction, not a low charge',
      {
        ...CAB,
        meteringDevice: 'expansion-valve',
        suctionPressure: '20 psig',
        suctionTemperature: '71 °F',
        liquidPressure: '150 psig',
        liquidTemperature: '98 °F',
      },
      'starved-not-low',
      /^Restriction likely/u,
    ],
    [
      'low side and superheat low with a valve: air over the evaporator',
      {
        ...CAB,
        meteringDevice: 'expansion-valve',
        suctionPressure: '6 ±0.5 psig',
        suctionTemperature: '0.5 ±0.5 °F',
        liquidPressure: '150 psig',
      },
      'evaporator-air',
      /too little air over the evaporator/u,
    ],
    [
      'a condenser far above its air, nothing else read',
      { ...CAB, liquidPressure: '350 psig', ambient: '80 °F' },
      'condenser',
      /condenser air flow first/u,
    ],
    [
      'a vacuum on the low side alone',
      { ...CAB, suctionPressure: '10 inHg vac', liquidPressure: '120 psig' },
      'starved-in-vacuum',
      /vacuum/u,
    ],
  ])('%s', (_, input, pattern, said) => {
    const { result, headline, level, next } = run(input)
    expect(result.patterns.map(({ id }) => id)).toEqual([pattern])
    expect(headline).toMatch(said)
    expect(level).toBe('check')
    expect(next).toEqual(result.patterns[0]?.next)
    expect(result.patterns[0]?.causes.length).toBeGreaterThan(0)
    // Each row of the table stands on a source that is named in the answer.
    const row = data.patterns.find(({ id }) => id === pattern)
    expect(run(input).sources.map(({ id }) => id)).toContain(row?.source)
  })

  it('a sound machine fits none', () => {
    expect(
      patterns({
        ...CAB,
        meteringDevice: 'expansion-valve',
        suctionPressure: '32 psig',
        suctionTemperature: '48 °F',
        liquidPressure: '210 psig',
        liquidTemperature: '122 °F',
        ambient: '90 °F',
      }),
    ).toEqual([])
  })

  it('a machine at rest, readings that cannot be, and a danger fit none', () => {
    expect(patterns({ suctionPressure: '78 psig', liquidPressure: '78 psig' })).toEqual([])
    expect(
      patterns({
        suctionPressure: '20 psig',
        suctionTemperature: '10 °F',
        liquidPressure: '350 psig',
        ambient: '80 °F',
      }),
    ).toEqual([])
    expect(patterns({ liquidPressure: '500 psig', ambient: '80 °F' })).toEqual([])
  })

  it('counts a subcooling from the discharge pressure as far as no condenser takes it away', () => {
    // 300 psig condenses at 160 °F: 60 and 33 °F less, of which the condenser may be 8
    const high = { liquidTemperature: '100 °F', suctionPressure: '40 psig' }
    expect(patterns({ ...high, liquidPressure: '300 psig' })).toEqual(['backed-up'])
    expect(patterns({ ...high, dischargePressure: '300 psig' })).toEqual(['backed-up'])
    const near = { ...high, liquidTemperature: '127 °F' }
    expect(patterns({ ...near, liquidPressure: '300 psig' })).toEqual(['backed-up'])
    expect(patterns({ ...near, dischargePressure: '300 psig' })).toEqual([])
    // too large as it is shown, so what is low is surely low
    const starved = { suctionPressure: '20 psig', suctionTemperature: '75 °F' }
    const dry = { ...starved, ...CAB, dischargePressure: '150 psig', liquidTemperature: '113 °F' }
    expect(patterns(dry)).toEqual(['low-charge'])
  })

  it.each<[what: string, input: Record<string, unknown>, pattern: string, said: RegExp]>([
    [
      'a high side far above its air and a high superheat: no restriction alone',
      { ...VALVE, ...pipes(45, 90, 330, 95), ambient: '95 °F' },
      'raised-and-starved',
      /condenser air flow or overcharge/u,
    ],
    [
      'the same at an orifice tube that is fed: low charge first',
      { ...TUBE, ...pipes(20, 71, 150, 98), ambient: '85 °F' },
      'tube-starved',
      /low charge first/u,
    ],
    [
      'a superheat at a low side that is not low: hardly a restriction',
      { ...VALVE, ...pipes(60, 105, 200, 115), ambient: '92 °F' },
      'warm-suction',
      /hardly a restriction/u,
    ],
    [
      'the same with the liquid backed up: no low charge',
      { ...VALVE, ...pipes(45, 90, 330, 100) },
      'backed-up',
      /overcharge, condenser air flow/u,
    ],
    [
      'a high superheat, nothing known of the device',
      { ...pipes(30, 95, 150, 106), ambient: '85 °F' },
      'starved',
      /low charge or a restriction; subcooling/u,
    ],
    [
      'a high superheat alone',
      { ...CAB, suctionPressure: '30 psig', suctionTemperature: '84 °F' },
      'starved',
      /Read the liquid line/u,
    ],
    [
      'a liquid line colder than the air, the condenser hot',
      { ...VALVE, ...pipes(48, 60, 320, 85), ambient: '95 °F' },
      'cold-liquid-raised',
      /overcharge, condenser air flow, or a restriction/u,
    ],
    [
      'a liquid line colder than the air',
      { ...VALVE, ...pipes(30, 45, 170, 75), ambient: '95 °F' },
      'cold-liquid',
      /^Liquid line colder than the air/u,
    ],
    [
      '60/150 psig at a valve: a compressor that hardly lifts',
      { ...VALVE, suctionPressure: '60 psig', liquidPressure: '150 psig', ambient: '92 °F' },
      'weak-lift',
      /weak compressor/u,
    ],
    [
      'both sides high',
      { ...CAB, suctionPressure: '65 psig', liquidPressure: '270 psig', ambient: '90 °F' },
      'low-side-high',
      /^Low side high.*, the high side not low: condenser air flow/u,
    ],
    [
      'a valve that floods a fed evaporator',
      {
        ...VALVE,
        suctionPressure: '58 psig',
        suctionTemperature: '61 °F',
        liquidPressure: '190 psig',
      },
      'flooded',
      /the valve overfeeds/u,
    ],
    [
      'both sides a little low, as no published machine is',
      { ...CAB, suctionPressure: '11 psig', liquidPressure: '145 psig', ambient: '92 °F' },
      'both-low',
      /low charge or a restriction/u,
    ],
    [
      'a stationary valve with hardly any subcooling',
      {
        refrigerant: 'R-410A',
        machine: 'stationary',
        meteringDevice: 'expansion-valve',
        ...pipes(115, 60, 340, 103),
        ambient: '90 °F',
      },
      'low-subcooling',
      /low charge at a valve/u,
    ],
  ])('%s', (_, input, pattern, said) => {
    const { result, headline, level, next } = run(input)
    expect(result.patterns[0]?.id).toBe(pattern)
    expect(headline).toMatch(said)
    expect(level).toBe('check')
    expect(next?.length).toBeGreaterThan(0)
  })

  it('two gauges far from usual never end without a cause and a next step', () => {
    const psig = (from: number, to: number) => fc.double({ min: from, max: to, noNaN: true })
    const kind = fc.constantFrom({}, CAB, VALVE, TUBE, { machine: 'stationary' } as const)
    fc.assert(
      fc.property(psig(1, 90), psig(95, 400), psig(65, 110), kind, (low, high, air, known) => {
        const { result, next, headline } = run({
          ...known,
          suctionPressure: `${low} psig`,
          liquidPressure: `${high} psig`,
          ambient: `${air} °F`,
        })
        if (result.findings.some((found) => found.level === 'impossible' || found.level === 'stop'))
          return
        const r = refrigerant('R-134a')
        const absolute = (gauge: number) => gauge * 6894.757 + SEA_LEVEL_PA
        const [suctionPa, liquidPa] = [absolute(low), absolute(high)]
        const beyond = (sign: SignId, si: number, margin: number) => {
          const limits = limitsOf(sign, machineOf(known))
          return si < limits.low - margin || si > limits.high + margin
        }
        // by more than what the instruments may be off
        const far =
          beyond('evaporating', saturationTemperature(r, suctionPa, 'dew'), 2) ||
          beyond('overAmbient', saturationTemperature(r, liquidPa, 'dew') - kelvin(air), 2) ||
          liquidPa / suctionPa < limitsOf('ratio', machineOf(known)).low - 0.3
        if (!far) return
        expect(result.patterns.length, headline).toBeGreaterThan(0)
        expect(next?.length).toBeGreaterThan(0)
      }),
      { numRuns: 300 },
    )
  })

  it('a finer sign counts only where its whole ± lies beyond its limit', () => {
    const raised = (plusMinus: number) =>
      patterns({
        ...VALVE,
        suctionPressure: '30 psig',
        suctionTemperature: '80 °F',
        liquidPressure: `245 ±${plusMinus} psig`,
        liquidTemperature: '120 °F',
        ambient: '92 ±0.5 °F',
      })[0]
    // 245 psig condenses 53 °F above the air, 230 psig 49
    expect(raised(2)).toBe('raised-and-starved')
    expect(raised(20)).toBe('starved-not-low')
  })

  it('is not read from how cold a cold store evaporates', () => {
    const cold = { suctionPressure: '2 psig', liquidPressure: '150 psig' }
    expect(patterns({ ...cold, machine: 'off-road' })).toEqual(['evaporator-starved'])
    expect(patterns({ ...cold, machine: 'refrigerated-cargo' })).toEqual([])
  })

  it('goes by the dew line of a blend', () => {
    // R-407C at 32 psig: bubble 2.6 °F, dew 14.3 °F; a bubble line would call it too cold.
    expect(
      patterns({
        ...CAB,
        refrigerant: 'R-407C',
        suctionPressure: '32 psig',
        liquidPressure: '210 psig',
      }),
    ).toEqual([])
  })

  it('an orifice floods by design: its low superheat says nothing of a valve', () => {
    const flooded = {
      ...CAB,
      suctionPressure: '6 ±0.5 psig',
      suctionTemperature: '0.5 ±0.5 °F',
      liquidPressure: '150 psig',
    }
    expect(patterns({ ...flooded, meteringDevice: 'orifice-tube' })).toEqual(['evaporator-starved'])
  })

  it('with both figures at hand says which, and not that subcooling would tell', () => {
    const { result } = run({
      ...CAB,
      meteringDevice: 'expansion-valve',
      suctionPressure: '20 psig',
      suctionTemperature: '71 °F',
      liquidPressure: '150 psig',
      liquidTemperature: '109.5 °F',
    })
    expect(JSON.stringify(result)).not.toMatch(/tells (them|the first two) apart/u)
    const valve = result.verdicts.find(({ about }) => about === 'metering-device')
    expect(valve?.meaning).toMatch(/a low charge; only with a receiver a restriction/u)
  })

  it('never says to add refrigerant by pressure, and puts the leak before the charge', () => {
    for (const { headline, next, causes } of data.patterns) {
      const text = [headline, ...next, ...causes].join(' ')
      expect(text).not.toMatch(/top up|add (some|refrigerant|a can)|charge to \d/iu)
      const weighs = next.findIndex((line) => /weigh in/iu.test(line))
      const leak = next.findIndex((line) => /leak/iu.test(line))
      if (leak >= 0 && weighs >= 0) expect(leak).toBeLessThanOrEqual(weighs)
    }
  })
})

describe('the table of signs', () => {
  it('holds every published pressure of R-134a machines as usual', () => {
    const r = refrigerant('R-134a')
    const psig = (text: string) => parseQuantity(text, ['gaugePressure']).si + SEA_LEVEL_PA
    const { overAmbient, evaporating } = {
      overAmbient: limitsOf('overAmbient', 'off-road'),
      evaporating: limitsOf('evaporating', 'off-road'),
    }
    let held = 0
    for (const row of tables.rows) {
      if (row.refrigerant !== 'R-134a' || !('pressures' in row) || !row.pressures) continue
      for (const { ambient, high, low } of row.pressures) {
        const airK = parseQuantity(ambient, ['temperature']).si
        for (const text of high) {
          const over = saturationTemperature(r, psig(text), 'bubble') - airK
          expect(over, `${row.id} ${ambient} ${text}`).toBeGreaterThan(overAmbient.low)
          expect(over, `${row.id} ${ambient} ${text}`).toBeLessThan(overAmbient.high)
          held += 1
        }
        for (const text of low) {
          const boils = saturationTemperature(r, psig(text), 'dew')
          expect(boils, `${row.id} ${ambient} ${text}`).toBeGreaterThanOrEqual(
            evaporating.low - 0.1,
          )
          expect(boils, `${row.id} ${ambient} ${text}`).toBeLessThan(evaporating.high)
        }
      }
    }
    expect(held).toBeGreaterThan(30)
  })

  it('is wider where the machine is not known', () => {
    for (const id of Object.keys(data.signs) as SignId[]) {
      const any = limitsOf(id, undefined)
      for (const machine of ['off-road', 'stationary'] as const) {
        expect(any.low).toBeLessThanOrEqual(limitsOf(id, machine).low)
        expect(any.high).toBeGreaterThanOrEqual(limitsOf(id, machine).high)
      }
    }
  })

  it('a tighter ± leaves fewer levels, and always the true one', () => {
    const id = fc.constantFrom(...(Object.keys(data.signs) as SignId[]))
    const share = fc.double({ min: -1, max: 2, noNaN: true })
    const width = fc.double({ min: 0, max: 40, noNaN: true })
    fc.assert(
      fc.property(
        id,
        share,
        width,
        fc.double({ min: 0, max: 1, noNaN: true }),
        (sign, at, wide, part) => {
          const { low, high } = limitsOf(sign, 'off-road')
          const si = low + at * (high - low)
          const loose = possibleLevels(sign, { si, plusMinus: wide }, 'off-road')
          const tight = possibleLevels(sign, { si, plusMinus: wide * part }, 'off-road')
          for (const level of tight) expect(loose).toContain(level)
          const [only, ...others] = possibleLevels(sign, { si, plusMinus: 0 }, 'off-road')
          expect(others).toEqual([])
          expect(only).toBe(LEVELS_OF_SIGN[si < low ? 0 : si > high ? 2 : 1])
          expect(tight).toContain(only)
        },
      ),
    )
  })

  it('no level of a sign is left out of what its ± allows', () => {
    // 6.5 °F is the lower limit: 8 ±2 °F may be low or normal.
    const at = (fahrenheit: number, plusMinusF: number) => [
      ...possibleLevels(
        'evaporating',
        { si: (fahrenheit + 459.67) / 1.8, plusMinus: plusMinusF / 1.8 },
        'off-road',
      ),
    ]
    expect(at(8, 2)).toEqual(['low', 'normal'])
    expect(at(8, 0.5)).toEqual(['normal'])
    expect(at(4, 1)).toEqual(['low'])
    expect(at(60, 1)).toEqual(['normal', 'high'])
    expect(at(30, 60)).toEqual(['low', 'normal', 'high'])
  })

  it('a pattern needs each of its signs, surely', () => {
    for (const { id, when, ...of } of data.patterns) {
      const entries = Object.entries(when) as [SignId, readonly string[]][]
      const middle = (sign: SignId, level: string | undefined) => {
        const { low, high } = limitsOf(sign, facts.machine)
        const width = high - low
        return level === 'low' ? low - width : level === 'high' ? high + width : (low + high) / 2
      }
      const facts = {
        machine: 'machine' in of ? 'stationary' : 'off-road',
        meteringDevice:
          'device' in of && of.device === 'orifice' ? 'orifice-tube' : 'expansion-valve',
      } as const
      const signs = Object.fromEntries(
        entries.map(([sign, levels]) => [sign, { si: middle(sign, levels[0]), plusMinus: 0 }]),
      )
      const covering = data.patterns.filter(({ covers }) => (covers as string[]).includes(id))
      const found = patternsOf(signs, facts).map((entry) => entry.id)
      expect(
        found.some((one) => one === id || covering.some((c) => c.id === one)),
        id,
      ).toBe(true)
      for (const [sign] of entries) {
        const { [sign]: _, ...others } = signs
        expect(
          patternsOf(others, facts).map((entry) => entry.id),
          `${id} without ${sign}`,
        ).not.toContain(id)
      }
    }
  })
})

it('every pattern stands for faults of the machine model', () => {
  const faults: Readonly<Record<string, readonly string[]>> = figures.evidence.patterns
  for (const { id } of data.patterns) {
    expect(faults[id]?.length, id).toBeGreaterThan(0)
    for (const fault of faults[id] ?? []) expect(FAULT_KINDS).toContain(fault)
  }
})
