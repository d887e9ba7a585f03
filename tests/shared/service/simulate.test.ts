import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import data from '../../../data/service/simulate.json' with { type: 'json' }
import {
  capacityOf,
  FAULT_KINDS,
  faultOf,
  faultsOf,
  inventoryOf,
  NO_DEVIATIONS,
  NO_FAULTS,
  performanceOf,
  preset,
  presets,
  readingsOf,
  run,
  stateOf,
  trialsSoFar,
} from '../../../shared/cycle/index.ts'
import { moistAir } from '../../../shared/physics/moist-air.ts'
import { quantity } from '../../../shared/quantity/index.ts'
import { refrigerant } from '../../../shared/refrigerant/index.ts'
import { SETTINGS, SWEEPS } from '../../../shared/service/simulate/fields.ts'
import { MODEL_MACHINES } from '../../../shared/service/simulate/machines.ts'
import { REMARKS, STATES } from '../../../shared/service/simulate/result.ts'
import { MOST_TRIALS } from '../../../shared/service/simulate/sweep.ts'
import { simulate } from '../../../shared/service/simulate.ts'
import { refusalOf } from '../../support/refusal.ts'

const exact = { units: 'si', precise: true } as const
const SEA_LEVEL = 101_325

type Input = Record<string, unknown>
const asked = (input: Input) => simulate.run({ ...exact, ...input })

/** A shown quantity in SI. */
const si = (
  { value, unit }: { value: number; unit: string },
  kind: Parameters<typeof quantity>[0],
) => quantity(kind, value, unit).si

function readingsIn(input: Input) {
  const { result } = asked(input)
  return Object.fromEntries(result.readings.map(({ reading, now }) => [reading, now?.value]))
}
const figureIn = (input: Input, name: string) =>
  asked(input).result.performance.find(({ figure }) => figure === name)?.now?.value ?? Number.NaN

const anyMachine = fc.constantFrom(...MODEL_MACHINES.map(({ id }) => id))
const anyWeather = fc.record({
  ambient: fc.integer({ min: 18, max: 45 }).map((c) => `${c} °C`),
  returnAir: fc.integer({ min: 18, max: 40 }).map((c) => `${c} °C`),
  relativeHumidity: fc.integer({ min: 20, max: 80 }).map((p) => `${p} %`),
  compressorRpm: fc.integer({ min: 900, max: 3600 }),
  chargeNow: fc.integer({ min: 40, max: 150 }).map((p) => `${p} %`),
  condenserAir: fc.integer({ min: 40, max: 100 }).map((p) => `${p} %`),
})

describe('what is simulated', () => {
  it('is what the model says, gauge pressures of the place and all', () => {
    for (const { id, presets: ids } of MODEL_MACHINES) {
      for (const key of ids) {
        const { machine, nominal } = preset(key)
        const faults = { ...NO_FAULTS, condenserAir: 0.6, charge: 0.9 }
        const outcome = run({
          machine,
          conditions: { ...nominal, barometerPa: 90_000, speed: 32 },
          faults,
          deviations: { ...NO_DEVIATIONS, isentropic: 0.9 },
        })
        const { result } = asked({
          modelMachine: id,
          refrigerant: machine.refrigerant,
          barometer: '90 kPa',
          compressorRpm: 1920,
          chargeNow: '90 %',
          condenserAir: '60 %',
          deviations: { isentropic: '90 %' },
        })
        expect(result.outcome.state, key).toBe(outcome.kind)
        const state = stateOf(outcome)
        if (state === undefined) throw new Error(key)
        const shown = readingsOf(state)
        const by = Object.fromEntries(result.readings.map(({ reading, now }) => [reading, now]))
        const pa = (name: string) => 90_000 + 1000 * (by[name]?.value ?? Number.NaN)
        expect(pa('suctionPressure')).toBeCloseTo(shown.lowSidePa, 3)
        const high = machine.ports.high === 'discharge' ? 'dischargePressure' : 'liquidPressure'
        expect(result.machine.highFitting).toBe(machine.ports.high)
        expect(pa(high)).toBeCloseTo(shown.highSidePa, 3)
        expect(by.superheat?.value).toBeCloseTo(shown.superheatK, 6)
        expect(by.subcooling?.value).toBeCloseTo(shown.subcoolingK, 6)
        expect(by.ventTemperature?.value).toBeCloseTo(shown.ventK - 273.15, 6)
        expect(by.dischargeTemperature?.value).toBeCloseTo(shown.dischargeLineK - 273.15, 6)
        expect(by.condenserOutletAir?.value).toBeCloseTo(shown.condenserAirK - 273.15, 6)
        const capacity = result.performance.find(({ figure }) => figure === 'capacity')?.now
        expect(capacity?.value).toBeCloseTo(capacityOf(outcome) / 1000, 9)
        const power = result.performance.find(({ figure }) => figure === 'power')?.now
        expect(power?.value).toBeCloseTo(performanceOf(state).power / 1000, 9)
        const parts = Object.fromEntries(result.parts.map(({ part, mass }) => [part, mass.value]))
        for (const [part, mass] of Object.entries(inventoryOf(state))) {
          expect(parts[part] ?? 0).toBeCloseTo(si({ value: mass, unit: 'kg' }, 'mass') * 1000, 6)
        }
      }
    }
  })

  it('covers every machine of the model, each once', () => {
    const ids = MODEL_MACHINES.flatMap((each) => each.presets)
    expect([...ids].sort()).toEqual(
      presets()
        .map(({ machine }) => machine.id)
        .sort(),
    )
  })

  it('balances as it is printed: heat, mass, and the corners of the cycle', () => {
    fc.assert(
      fc.property(anyMachine, anyWeather, (modelMachine, weather) => {
        const { result } = simulate.run({ modelMachine, ...weather, units: 'si' })
        const figures = Object.fromEntries(
          result.performance.map(({ figure, now }) => [figure, now?.value ?? Number.NaN]),
        )
        const { state } = result.outcome
        if (state === 'dry' || Number.isNaN(figures.power)) return
        const { heatTaken = 0, power = 0, shellLoss = 0, heatRejected = 0, flow = 0 } = figures
        // three figures each: half a percent of the largest
        expect(Math.abs(heatTaken + power - shellLoss - heatRejected)).toBeLessThan(
          0.01 * heatRejected,
        )
        if (state === 'steady') expect(figures.capacity).toBe(heatTaken)
        if (state === 'cycling') expect(figures.capacity).toBeLessThanOrEqual(1.02 * heatTaken)
        if (state !== 'steady' && state !== 'cycling') expect(figures.capacity).toBe(0)
        const at = (name: string) => {
          const point = result.points.find((each) => each.name === name)
          if (!point) throw new Error(name)
          return { h: point.enthalpy.value, s: point.entropy.value, p: point.pressure.value }
        }
        const [inlet, outlet] = [at('compressor-inlet'), at('compressor-outlet')]
        const [before, behind] = [at('device-inlet'), at('evaporator-inlet')]
        expect(behind.h).toBeCloseTo(before.h, 2)
        expect(at('condenser-outlet').h).toBeCloseTo(before.h, 2)
        expect(behind.s).toBeGreaterThan(before.s)
        expect(outlet.s).toBeGreaterThan(inlet.s)
        expect(outlet.p).toBeGreaterThan(inlet.p)
        const grams = flow / 60
        expect(
          Math.abs((grams * (at('evaporator-outlet').h - behind.h)) / 1000 / heatTaken - 1),
        ).toBeLessThan(0.012)
        const charge =
          result.machine.labelCharge.value * (Number.parseFloat(weather.chargeNow) / 100)
        const held = result.parts.reduce((sum, { mass }) => sum + mass.value, 0)
        // a state on the way to a cut-out holds what it holds
        if (state !== 'high-pressure-trip') expect(Math.abs(held / charge - 1)).toBeLessThan(0.003)
      }),
      { numRuns: 40, seed: 20261127 },
    )
  })

  it('has superheat from the dew line and subcooling from the bubble line of its own gauges', () => {
    for (const modelMachine of ['loader', 'split-valve', 'split-orifice', 'pickup']) {
      const { result } = asked({ modelMachine, chargeNow: '95 %' })
      const r = refrigerant(result.machine.refrigerant)
      const by = Object.fromEntries(
        result.readings.map(({ reading, now }) => [reading, now?.value ?? 0]),
      )
      const kelvin = (name: string) => (by[name] ?? 0) + 273.15
      const pa = (name: string) => 1000 * (by[name] ?? 0) + SEA_LEVEL
      expect(by.superheat).toBeCloseTo(
        kelvin('suctionTemperature') - r.dew.temperature(pa('suctionPressure')),
        4,
      )
      const high =
        result.machine.highFitting === 'discharge' ? 'dischargePressure' : 'liquidPressure'
      expect(by.subcooling).toBeCloseTo(
        r.bubble.temperature(pa(high)) - kelvin('liquidTemperature'),
        4,
      )
    }
  })

  it('moves the way that such machines do', () => {
    const sound = readingsIn({ modelMachine: 'cooler-orifice' })
    const short = readingsIn({ modelMachine: 'cooler-orifice', chargeNow: '75 %' })
    // Rossi and Braun 1997, a fixed orifice: low charge lowers both sides and subcooling, raises superheat
    for (const name of ['suctionPressure', 'dischargePressure', 'subcooling']) {
      expect(short[name], name).toBeLessThan((sound[name] ?? 0) - 0.5)
    }
    expect(short.superheat).toBeGreaterThan((sound.superheat ?? 0) + 1)
    // a receiver with liquid in it hides the charge
    const full = readingsIn({ modelMachine: 'loader' })
    const less = readingsIn({ modelMachine: 'loader', chargeNow: '80 %' })
    for (const [name, value] of Object.entries(full)) {
      expect(less[name], name).toBeCloseTo(value ?? 0, 3)
    }
    expect(
      readingsIn({ modelMachine: 'loader', condenserAir: '50 %' }).dischargePressure,
    ).toBeGreaterThan((full.dischargePressure ?? 0) + 200)
    expect(figureIn({ modelMachine: 'loader', evaporatorAir: '50 %' }, 'capacity')).toBeLessThan(
      0.9 * figureIn({ modelMachine: 'loader' }, 'capacity'),
    )
  })

  it('says each difference from the sound machine in the same weather, and names none without a fault', () => {
    const weather = { ambient: '40 °C', returnAir: '30 °C', compressorRpm: 2000 }
    const { result } = asked({ modelMachine: 'van', ...weather, chargeNow: '70 %' })
    const alone = asked({ modelMachine: 'van', ...weather }).result
    result.readings.forEach(({ now, sound, difference }, index) => {
      expect(sound).toEqual(alone.readings[index]?.now)
      const gap = (now?.value ?? 0) - (sound?.value ?? 0)
      expect(difference?.value).toBeCloseTo(gap, 6)
    })
    expect(result.sound?.points).toEqual(alone.points)
    expect(alone.sound).toBeUndefined()
    expect(alone.readings.every((row) => !('sound' in row))).toBe(true)
  })
})

/** A case of every way to end up, and of every remark, with what the headline must say of it. */
const ENDS: readonly (readonly [what: string, input: Input, says: RegExp])[] = [
  ['steady', { modelMachine: 'loader' }, /steady/u],
  [
    'cycling',
    { modelMachine: 'loader', ambient: '17 °C', returnAir: '17 °C' },
    /thermostat runs the clutch 43\.\d+ %/u,
  ],
  [
    'cycling',
    { modelMachine: 'pickup', ambient: '17 °C', returnAir: '17 °C' },
    /low-pressure switch runs the clutch [\d.]+ %/u,
  ],
  [
    'high-pressure-trip',
    { modelMachine: 'loader', ambient: '50 °C', condenserAir: '20 %' },
    /high-pressure cut-out at 29[67]\d/u,
  ],
  [
    'low-pressure-trip',
    { modelMachine: 'cooler-valve', valveOpening: '2 %' },
    /low-pressure cut-out at \d/u,
  ],
  ['iced', { modelMachine: 'tractor', evaporatorAir: '10 %', blower: '50 %' }, /ices up/u],
  [
    'dry',
    { modelMachine: 'split-orifice', chargeNow: '19 %', ambient: '42 °C', compressorRpm: 4000 },
    /pumped down/u,
  ],
  [
    'receiver-empty',
    { modelMachine: 'loader', chargeNow: '50 %' },
    /no liquid left in the receiver/u,
  ],
  [
    'vapour-at-device',
    { modelMachine: 'split-orifice', chargeNow: '50 %' },
    /vapour at the orifice/u,
  ],
  [
    'accumulator-empty',
    { modelMachine: 'pickup', chargeNow: '60 %', returnAir: '35 °C' },
    /accumulator empty/u,
  ],
  [
    'evaporator-dry',
    { modelMachine: 'cooler-valve', valveOpening: '2 %' },
    /evaporator mostly dry/u,
  ],
  [
    'liquid-at-compressor',
    { modelMachine: 'pickup', chargeNow: '190 %', returnAir: '35 °C' },
    /liquid reaches the compressor/u,
  ],
]

describe('how a machine ends up', () => {
  it.each(ENDS)('is told first: %s', (what, input, says) => {
    const { result, headline, level } = asked(input)
    expect([result.outcome.state, ...result.outcome.remarks]).toContain(what)
    expect(headline).toMatch(says)
    const quiet =
      ['steady', 'cycling'].includes(result.outcome.state) && result.outcome.remarks.length === 0
    expect(level).toBe(quiet ? 'information' : 'check')
  })

  it('is tried in every way that there is', () => {
    const tried = new Set(ENDS.map(([what]) => what))
    expect([...STATES, ...REMARKS].filter((what) => !tried.has(what))).toEqual([])
  })

  it('is told in figures that agree with the result, each beside the sound one', () => {
    const { result, figures = [] } = simulate.run({
      modelMachine: 'loader',
      chargeNow: '48 %',
      units: 'us',
    })
    const says = (id: string) => figures.find((figure) => figure.id === id)?.says
    const shown = (name: string) => result.readings.find(({ reading }) => reading === name)
    expect(says('low')).toBe(
      `sound ${Math.round(shown('suctionPressure')?.sound?.value ?? 0)} psig: ${Math.abs(shown('suctionPressure')?.difference?.value ?? 0).toFixed(1)} psi lower`,
    )
    expect(says('superheat')).toMatch(/^sound [\d.]+ °F: [\d.]+ °F higher$/u)
    const cycling = asked({ modelMachine: 'loader', ambient: '17 °C', returnAir: '17 °C' })
    const duty = cycling.figures?.find(({ id }) => id === 'duty')?.value
    expect(cycling.result.outcome.duty).toEqual(duty)
    expect(cycling.result.outcome.duty?.value).toBeLessThan(60)
  })

  it('has no figures where there is no state, and still compares', () => {
    const [, input = {}] = ENDS.find(([what]) => what === 'dry') ?? []
    const { result } = asked(input)
    expect(result.points).toEqual([])
    expect(result.readings.every(({ now }) => now === undefined)).toBe(true)
    expect(result.readings.every(({ sound }) => sound !== undefined)).toBe(true)
  })
})

describe('a fault', () => {
  it('by its severity is that of its own size', () => {
    for (const { id, presets: ids } of MODEL_MACHINES) {
      const { machine } = preset(ids[0] as string)
      for (const kind of faultsOf(machine)) {
        const { result } = asked({ modelMachine: id, fault: kind, severity: '60 %' })
        const [only, ...others] = result.faults
        expect(others).toEqual([])
        expect(only?.fault).toBe(kind)
        const size = only?.size as { value: number; unit: string }
        const again = asked({
          modelMachine: id,
          [only?.setting ?? '']: `${size.value} ${size.unit}`,
        })
        expect(again.result.faults).toEqual(result.faults)
        expect(again.result.outcome).toEqual(result.outcome)
        const given = faultOf(machine, kind, 0.6)
        const changed = Object.entries(given).filter(
          ([name, value]) => value !== NO_FAULTS[name as keyof typeof NO_FAULTS],
        )
        expect(changed).toHaveLength(1)
        expect(si(size, only?.size.unit === '%' ? 'fraction' : 'pressureDifference')).toBeCloseTo(
          changed[0]?.[1] ?? 0,
          6,
        )
      }
    }
  })

  it('beside others is each as it would be alone, in any order', () => {
    const dirty = { fault: 'condenser-air', severity: '40 %' }
    const short = { fault: 'undercharge', severity: '60 %' }
    const { result, sources, assumptions } = asked({ modelMachine: 'van', faults: [dirty, short] })
    const alone = [short, dirty].flatMap(
      (each) => asked({ modelMachine: 'van', ...each }).result.faults,
    )
    expect(result.faults).toEqual(alone)
    expect(asked({ modelMachine: 'van', faults: [short], ...dirty }).result).toEqual(result)
    expect(sources.map(({ id }) => id)).toContain('fault-sizes-assumed')
    expect(assumptions.filter(({ field }) => field === 'condenserAir')).toHaveLength(1)
    const half = asked({ modelMachine: 'van', faults: [{ fault: 'undercharge' }] })
    expect(half.result).toEqual(
      asked({ modelMachine: 'van', fault: 'undercharge', severity: '50 %' }).result,
    )
    expect(half.assumptions.map(({ field }) => field)).toContain('faults.0.severity')
    expect(result.choices).toEqual(faultsOf(preset('van-valve-134a').machine))
  })

  it('has words of its own, and so has every size', () => {
    expect(Object.keys(data.faults).sort()).toEqual([...FAULT_KINDS].sort())
    expect(Object.keys(data.settings).sort()).toEqual([...SETTINGS].sort())
  })

  it('of the charge may be a mass', () => {
    const label = preset('loader-receiver-134a').machine.charge
    const byMass = asked({ modelMachine: 'loader', chargeNow: `${label * 500} g` }).result
    expect(byMass.faults[0]?.size.value).toBeCloseTo(50, 6)
    expect(byMass.outcome).toEqual(
      asked({ modelMachine: 'loader', chargeNow: '50 %' }).result.outcome,
    )
  })

  it('that is none leaves the machine sound', () => {
    const { result, headline } = asked({
      modelMachine: 'loader',
      chargeNow: '100 %',
      restriction: '0 kPa',
    })
    expect(result.faults).toEqual([])
    expect(headline).toMatch(/^Loader, sound/u)
  })

  it('is refused where the machine has no such part, where it is said twice, and where it is no size', () => {
    const code = (input: Input) => {
      const { code: found, path } = refusalOf(() => asked(input))
      return [found, path.join('.')]
    }
    expect(code({ modelMachine: 'pickup', valveOpening: '10 %' })).toEqual([
      'refused',
      'valveOpening',
    ])
    expect(code({ modelMachine: 'loader', stroke: '10 %' })).toEqual(['refused', 'stroke'])
    expect(code({ modelMachine: 'loader', fault: 'stroke-stuck-low' })).toEqual([
      'refused',
      'fault',
    ])
    expect(code({ modelMachine: 'loader', fault: 'undercharge', chargeNow: '70 %' })).toEqual([
      'bad-input',
      'chargeNow',
    ])
    const several = (...faults: readonly Input[]) => code({ modelMachine: 'loader', faults })
    expect(several({ fault: 'air' }, { fault: 'stroke-stuck-low' })).toEqual([
      'refused',
      'faults.1.fault',
    ])
    expect(several({ fault: 'undercharge' }, { fault: 'overcharge' })).toEqual([
      'bad-input',
      'faults.1.fault',
    ])
    expect(several({ fault: 'air', severity: '120 %' })).toEqual([
      'out-of-range',
      'faults.0.severity',
    ])
    expect(several({ fault: 'air', severity: '50 ±5 %' })[0]).toBe('bad-quantity')
    expect(code({ modelMachine: 'loader', severity: '70 %' })).toEqual(['missing-input', 'fault'])
    expect(code({ modelMachine: 'loader', fault: 'air', severity: '120 %' })).toEqual([
      'out-of-range',
      'severity',
    ])
    expect(code({ modelMachine: 'loader', chargeNow: '900 %' })).toEqual([
      'out-of-range',
      'chargeNow',
    ])
    expect(code({ modelMachine: 'loader', chargeNow: '70 ±5 %' })).toEqual([
      'bad-quantity',
      'chargeNow',
    ])
    expect(code({ modelMachine: 'loader', ambient: '95 ±2 °F' })).toEqual([
      'bad-quantity',
      'ambient',
    ])
    expect(code({ modelMachine: 'loader', refrigerant: 'R-410A' })).toEqual([
      'refused',
      'refrigerant',
    ])
    expect(code({ modelMachine: 'loader', ambient: '90 °C' })).toEqual(['out-of-range', 'ambient'])
    expect(code({ modelMachine: 'loader', deviations: { deviceSize: '200 %' } })).toEqual([
      'out-of-range',
      'deviations.deviceSize',
    ])
  })
})

describe('the weather', () => {
  it('may be given by its wet bulb', () => {
    const wet = moistAir(301.15, 0.6, SEA_LEVEL).wetBulbK - 273.15
    const byWet = asked({ modelMachine: 'loader', returnAir: '28 °C', returnWetBulb: `${wet} °C` })
    const byHumidity = asked({
      modelMachine: 'loader',
      returnAir: '28 °C',
      relativeHumidity: '60 %',
    })
    expect(byWet.result.conditions.relativeHumidity.value).toBeCloseTo(60, 2)
    const vents = [byWet, byHumidity].map(
      ({ result }) =>
        result.readings.find(({ reading }) => reading === 'ventTemperature')?.now?.value,
    )
    expect(vents[0]).toBeCloseTo(vents[1] ?? 0, 3)
    const both = { modelMachine: 'loader', relativeHumidity: '60 %', returnWetBulb: '20 °C' }
    expect(refusalOf(() => asked(both)).path).toEqual(['returnWetBulb'])
    for (const returnWetBulb of ['29 °C', '3 °C']) {
      const odd = { modelMachine: 'loader', returnAir: '28 °C', returnWetBulb }
      expect(refusalOf(() => asked(odd))).toMatchObject({
        code: 'out-of-range',
        path: ['returnWetBulb'],
      })
    }
  })

  it('that is not given is the nominal one, and each figure of it is named', () => {
    const { assumptions, result } = asked({ modelMachine: 'tractor' })
    expect(assumptions.map(({ field }) => field).sort()).toEqual(
      [
        'altitude',
        'ambient',
        'blower',
        'compressorRpm',
        'condenserFan',
        'relativeHumidity',
        'returnAir',
      ].sort(),
    )
    expect(result.conditions.compressorRpm).toBe(1500)
  })
})

describe('a sweep', () => {
  it('has a row a size, each as it would be alone', () => {
    for (const [modelMachine, sweep] of [
      ['loader', 'charge'],
      ['van', 'restriction'],
      ['pickup', 'charge'],
      ['tractor', 'stroke'],
      ['split-orifice', 'air'],
    ] as const) {
      const { result } = asked({ modelMachine, sweep, sweepPoints: 7, ambient: '33 °C' })
      const rows = result.sweep?.rows ?? []
      expect(rows).toHaveLength(7)
      for (const { size, state, suctionPressure, superheat, capacity } of rows) {
        const alone = asked({
          modelMachine,
          ambient: '33 °C',
          [SWEEPS[sweep]]: `${size.value} ${size.unit}`,
        })
        expect(state).toBe(alone.result.outcome.state)
        const now = (name: string) =>
          alone.result.readings.find(({ reading }) => reading === name)?.now?.value ?? Number.NaN
        if (suctionPressure) expect(suctionPressure.value).toBeCloseTo(now('suctionPressure'), 2)
        if (superheat) expect(superheat.value).toBeCloseTo(now('superheat'), 3)
        const cooling = alone.result.performance.find(({ figure }) => figure === 'capacity')
        expect(capacity.value).toBeCloseTo(
          cooling?.now?.value ?? (capacity.value === 0 ? 0 : Number.NaN),
          4,
        )
      }
    }
  })

  it('of the charge shows the plateau of a store, and none without one', () => {
    const at = (modelMachine: string) =>
      asked({
        modelMachine,
        sweep: 'charge',
        sweepFrom: '40 %',
        sweepTo: '160 %',
        sweepPoints: 60,
      })
    for (const modelMachine of ['loader', 'tractor', 'pickup']) {
      const { result, headline } = at(modelMachine)
      const { from, to } = result.sweep?.plateau ?? {}
      expect(from?.value, modelMachine).toBeLessThan(78)
      expect(from?.value, modelMachine).toBeGreaterThan(55)
      expect(to?.value, modelMachine).toBeGreaterThan(122)
      expect(headline).toMatch(/moves no gauge or thermometer; beyond it does/u)
      // all over the plateau there is liquid in the store, and its level is all that moves
      const flat =
        result.sweep?.rows.filter(({ size }) => size.value > 80 && size.value < 120) ?? []
      expect(flat.every(({ moved }) => !moved)).toBe(true)
      const levels = flat.map(({ storeLevel }) => storeLevel?.value ?? Number.NaN)
      levels.slice(1).forEach((level, index) => {
        expect(level).toBeGreaterThan(levels[index] as number)
      })
    }
    const van = at('van').result.sweep?.plateau
    if (van) expect(van.to.value - van.from.value).toBeLessThan(12)
  })

  it('is about the machine as it is otherwise', () => {
    const { headline, result } = asked({
      modelMachine: 'loader',
      condenserAir: '60 %',
      sweep: 'charge',
      sweepPoints: 5,
    })
    expect(headline).toMatch(/^Loader, condenser short of air/u)
    const single = readingsIn({
      modelMachine: 'loader',
      condenserAir: '60 %',
      chargeNow: '102.5 %',
    })
    expect(result.sweep?.rows[2]?.suctionPressure?.value).toBeCloseTo(
      single.suctionPressure ?? 0,
      3,
    )
    const own = asked({ modelMachine: 'loader', fault: 'undercharge', sweep: 'charge' })
    expect(own.headline).toMatch(/^Loader, sound/u)
  })

  it('is refused without what it sweeps, with ends of another kind, and with no range', () => {
    const path = (input: Input) => refusalOf(() => asked({ modelMachine: 'loader', ...input })).path
    expect(path({ sweepFrom: '50 %' })).toEqual(['sweep'])
    expect(path({ sweep: 'stroke' })).toEqual(['sweep'])
    expect(path({ sweep: 'restriction', sweepTo: '50 %' })).toEqual(['sweepTo'])
    expect(path({ sweep: 'charge', sweepFrom: '50 %', sweepTo: '50 %' })).toEqual(['sweepTo'])
    expect(path({ sweep: 'charge', sweepPoints: 61 })).toEqual(['sweepPoints'])
  })
})

describe('what is said of a model', () => {
  it('is no target for a machine, and never to add refrigerant', () => {
    const { warnings, cautions } = asked({ modelMachine: 'loader', chargeNow: '50 %' })
    expect(warnings.map(({ code }) => code)).toContain('invented-machine')
    expect(cautions.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['weigh-the-charge', 'maker-first']),
    )
    expect(JSON.stringify(data)).not.toMatch(/\b(?:add|top up|fill up|charge until)\b/iu)
  })
})

describe('the work of a sweep', () => {
  const worked = (input: Record<string, unknown>) => {
    const before = trialsSoFar()
    try {
      simulate.run(input)
      return { trials: trialsSoFar() - before }
    } catch (error) {
      return { trials: trialsSoFar() - before, error }
    }
  }

  it('is counted, and given up with the number of points that would do', () => {
    const { trials, error } = worked({
      modelMachine: 'cooler-orifice',
      sweep: 'air',
      sweepPoints: 60,
      ambient: '35 °F',
      returnAir: '40 °F',
    })
    expect(error).toMatchObject({ code: 'bad-input', path: ['sweepPoints'] })
    expect((error as { hint?: string }).hint).toMatch(/^Give fewer points, \d+ or so/u)
    // The machine without the fault is solved besides, and the last piece is done to its end.
    expect(trials).toBeLessThan(1.2 * MOST_TRIALS)
  })

  it('is within its bounds for every sweep of 60 rows in usual weather', () => {
    for (const modelMachine of ['loader', 'tractor', 'pickup', 'van', 'split-valve']) {
      const { trials, error } = worked({ modelMachine, sweep: 'charge', sweepPoints: 60 })
      expect(error).toBeUndefined()
      expect(trials).toBeGreaterThan(60)
      expect(trials).toBeLessThan(0.6 * MOST_TRIALS)
    }
  })
})
