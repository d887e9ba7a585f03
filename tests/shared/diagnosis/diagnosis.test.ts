import { describe, expect, it } from 'vitest'
import {
  type FaultKind,
  faultOf,
  faultsOf,
  NO_DEVIATIONS,
  NO_FAULTS,
  preset,
  run,
  stateOf,
} from '../../../shared/cycle/index.ts'
import { cholesky, fitOf, forward } from '../../../shared/diagnosis/gaussian.ts'
import {
  APART,
  classes,
  distance,
  FEATURES,
  type Feature,
  featuresOf,
  hypotheses,
  type Observation,
  posterior,
  USUAL_CANDIDATES,
  USUAL_PRIORS,
  worthReading,
} from '../../../shared/diagnosis/index.ts'
import { covarianceOf } from '../../../shared/diagnosis/spread.ts'

const GAUGES: readonly Feature[] = [
  'lowSidePa',
  'highSidePa',
  'suctionLineK',
  'liquidLineK',
  'ventK',
]

function machine(id: string) {
  const { machine, nominal } = preset(id)
  return { machine, nominal, all: hypotheses(machine, nominal, 'known') }
}

const machines = {
  van: machine('van-valve-134a'),
  loader: machine('loader-receiver-134a'),
  cooler: machine('cooler-orifice-134a'),
}

const sigmaOf = (feature: Feature) =>
  USUAL_CANDIDATES.find((candidate) => candidate.feature === feature)?.sigma ?? 1

function observed(
  { machine, nominal }: (typeof machines)[keyof typeof machines],
  kind: FaultKind | 'none',
  severity: number,
  features: readonly Feature[] = GAUGES,
): Observation[] {
  const faults = kind === 'none' ? NO_FAULTS : faultOf(machine, kind, severity)
  const state = stateOf(run({ machine, conditions: nominal, faults, deviations: NO_DEVIATIONS }))
  if (state === undefined) throw new Error(`${kind} has no state`)
  const values = featuresOf(state)
  return features.map((feature) => ({
    feature,
    value: values[FEATURES.indexOf(feature)] as number,
    sigma: sigmaOf(feature),
  }))
}

describe('the likelihood', () => {
  it('has a factor whose square is the matrix, and solves with it', () => {
    const matrix = Float64Array.from([4, 2, 0.6, 2, 5, 1, 0.6, 1, 3])
    const factor = cholesky(matrix, 3)
    for (let i = 0; i < 3; i += 1) {
      for (let j = 0; j < 3; j += 1) {
        let sum = 0
        for (let k = 0; k < 3; k += 1) {
          sum += (factor[i * 3 + k] as number) * (factor[j * 3 + k] as number)
        }
        expect(sum).toBeCloseTo(matrix[i * 3 + j] as number, 12)
      }
    }
    expect([...forward(factor, Float64Array.from([2, 1, 0]))][0]).toBeCloseTo(1, 12)
  })

  it('counts a reading by the instrument and by what is not known of the machine', () => {
    const { van } = machines
    const sound = van.all.find(({ cause }) => cause === 'none')
    if (sound === undefined) throw new Error('none')
    const at = FEATURES.indexOf('highSidePa')
    const spread = covarianceOf(sound.spread, at, at)
    const value = (sound.mean[at] as number) + 50_000
    const { distance: found } = fitOf(sound, [{ feature: 'highSidePa', value, sigma: 20_000 }])
    expect(found).toBeCloseTo(50_000 ** 2 / (spread + 20_000 ** 2), 6)
    // a machine known by its kind alone spreads more
    const roughly = hypotheses(van.machine, van.nominal, 'roughly').find(
      ({ cause }) => cause === 'none',
    )
    expect(roughly && covarianceOf(roughly.spread, at, at)).toBeGreaterThan(2 * spread)
  })
})

describe('the posterior', () => {
  it('is the priors before anything is read, and adds up to 1', () => {
    const { loader } = machines
    const { causes } = posterior(loader.all, [], { none: 3, undercharge: 1 })
    expect(causes[0]?.cause).toBe('none')
    expect(causes[0]?.probability).toBeCloseTo(0.75, 12)
    const equal = posterior(loader.all, [])
    for (const { probability } of equal.causes) {
      expect(probability).toBeCloseTo(1 / equal.causes.length, 12)
    }
    const read = posterior(loader.all, observed(loader, 'air', 0.5), USUAL_PRIORS)
    expect(read.causes.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 12)
  })

  it.each([
    ['van', 'undercharge'],
    ['van', 'overcharge'],
    ['van', 'condenser-air'],
    ['van', 'evaporator-air'],
    ['van', 'compressor-leak'],
    ['van', 'valve-stuck-open'],
    ['cooler', 'undercharge'],
    ['cooler', 'restriction'],
    ['cooler', 'overcharge'],
    ['cooler', 'compressor-leak'],
    ['loader', 'condenser-air'],
    ['loader', 'compressor-leak'],
    ['loader', 'valve-stuck-open'],
  ] as const)('on the %s names %s, half as bad as it gets, first', (name, kind) => {
    const one = machines[name]
    for (const priors of [undefined, USUAL_PRIORS]) {
      const { causes } = posterior(one.all, observed(one, kind, 0.5), priors)
      expect(causes[0]?.cause).toBe(kind)
      expect(causes[0]?.probability).toBeGreaterThan(0.85)
      expect(causes[0]?.severity).toBeGreaterThan(0.35)
      expect(causes[0]?.severity).toBeLessThan(0.65)
    }
  })

  it('does not let one bad thermometer make a fault of a sound machine', () => {
    const { van } = machines
    const readings = observed(van, 'none', 0).map((observation) =>
      observation.feature === 'liquidLineK'
        ? { ...observation, value: observation.value + 25 }
        : observation,
    )
    const { causes } = posterior(van.all, readings, USUAL_PRIORS)
    expect(causes[0]?.cause).toBe('reading-or-test-wrong')
  })

  it('takes swapped gauges for a mistake of the test', () => {
    const { cooler } = machines
    const readings = observed(cooler, 'none', 0)
    const [low, high, ...rest] = readings as [Observation, Observation, ...Observation[]]
    const swapped = [{ ...low, value: high.value }, { ...high, value: low.value }, ...rest]
    expect(posterior(cooler.all, swapped, USUAL_PRIORS).causes[0]?.cause).toBe(
      'reading-or-test-wrong',
    )
  })
})

describe('causes that cannot be told apart', () => {
  it('on the plateau of a receiver: sound, too little and too much, and weighing is what settles it', () => {
    const { loader } = machines
    for (const [kind, severity] of [
      ['none', 0],
      ['undercharge', 0.35],
      ['overcharge', 0.25],
    ] as const) {
      const readings = observed(loader, kind, severity)
      const found = posterior(loader.all, readings)
      const [first] = classes(loader.all, readings, found)
      expect(first?.causes).toEqual(expect.arrayContaining(['none', 'undercharge', 'overcharge']))
      // none of the three is ever named alone
      expect(found.causes[0]?.probability).toBeLessThan(0.8)
      const worth = worthReading(loader.all, readings, found)
      const most = [...worth].sort((a, b) => b.gain - a.gain)[0]
      expect(most?.feature).toBe('chargeShare')
      expect(most?.gain).toBeGreaterThan(0.5)
    }
  })

  it('and the weight, once read, parts them', () => {
    const { loader } = machines
    const readings = observed(loader, 'undercharge', 0.35, [...GAUGES, 'chargeShare'])
    const found = posterior(loader.all, readings)
    expect(found.causes[0]).toMatchObject({ cause: 'undercharge' })
    expect(found.causes[0]?.probability).toBeGreaterThan(0.9)
  })

  it('a restriction and a valve nearly shut, until the pipe behind the restriction is felt', () => {
    const { van } = machines
    const readings = observed(van, 'restriction', 0.5)
    const found = posterior(van.all, readings)
    const [first] = classes(van.all, readings, found)
    expect(first?.causes).toEqual(expect.arrayContaining(['restriction', 'valve-stuck-closed']))
    const [next] = worthReading(van.all, readings, found)
    expect(next?.feature).toBe('deviceInletK')
    const more = observed(van, 'restriction', 0.5, [...GAUGES, 'deviceInletK'])
    const after = posterior(van.all, more)
    expect(after.causes[0]?.cause).toBe('restriction')
    expect(after.causes[0]?.probability).toBeGreaterThan(0.95)
    expect(classes(van.all, more, after)[0]?.causes).toEqual(['restriction'])
  })

  it('distance is none from oneself, grows with severity, and parts what stands far apart', () => {
    const { cooler } = machines
    const readings = observed(cooler, 'none', 0)
    const sound = cooler.all[0]
    if (sound === undefined) throw new Error('none')
    expect(distance(sound, sound, readings)).toBe(0)
    let before = 0
    for (const hypothesis of cooler.all.filter(({ cause }) => cause === 'undercharge')) {
      const found = distance(sound, hypothesis, readings)
      expect(found).toBeGreaterThan(before)
      before = found
    }
    expect(before).toBeGreaterThan(APART)
  })
})

describe('the next reading', () => {
  it('is never one that was taken, and brings nothing where all is known', () => {
    const { cooler } = machines
    const readings = observed(cooler, 'restriction', 0.5)
    const found = posterior(cooler.all, readings, USUAL_PRIORS)
    const worth = worthReading(cooler.all, readings, found)
    for (const { feature, gain } of worth) {
      expect(GAUGES).not.toContain(feature)
      expect(gain).toBeLessThan(0.02)
    }
    expect(worth).toHaveLength(USUAL_CANDIDATES.length - GAUGES.length)
  })

  it('brings at most what there is to know, and more with a better instrument', () => {
    const { van } = machines
    const start = posterior(van.all, [], USUAL_PRIORS)
    const bits = -start.causes.reduce(
      (sum, { probability: p }) => sum + (p > 0 ? p * Math.log2(p) : 0),
      0,
    )
    const with_ = (sigma: number) =>
      worthReading(van.all, [], start, [{ feature: 'highSidePa', sigma, minutes: 1 }])[0]?.gain ?? 0
    expect(with_(5000)).toBeGreaterThan(with_(50_000))
    expect(with_(50_000)).toBeGreaterThan(with_(500_000))
    expect(with_(5e9)).toBeLessThan(1e-3)
    expect(with_(5000)).toBeLessThan(bits)
  })
})

it('has hypotheses for every fault that a machine can have', () => {
  for (const { machine, all } of Object.values(machines)) {
    for (const kind of faultsOf(machine)) {
      expect(all.some(({ cause }) => cause === kind)).toBe(true)
    }
  }
})
