import { describe, expect, it } from 'vitest'
import { preset } from '../../shared/cycle/index.ts'
import { FEATURES, type Feature } from '../../shared/diagnosis/features.ts'
import { randomFrom } from '../../shared/random.ts'
import type { Result } from './ask.ts'
import { evaluated } from './cases.ts'
import { drawDesign, foreignPlant } from './foreign.ts'
import type { Truth } from './plant.ts'
import { report } from './report.ts'
import { type Score, scoreOf } from './score.ts'
import { ways } from './steps.ts'
import { bootstrap, calibrationError, summaryOf } from './summary.ts'

/** That the counting counts right; how good the diagnosis is, `npm run evaluate` says. */
describe('the counting', () => {
  const truth = (cause: Truth['cause'], charge = 1) => ({ cause, charge }) as Truth
  const said = (
    verdict: Result['verdict'],
    named: Result['named'],
    causes: readonly (readonly [Result['named'][number], number])[],
  ) =>
    ({
      verdict,
      named,
      causes: causes.map(([cause, share]) => ({ cause, share })),
    }) as unknown as Result

  it('knows the five outcomes and an open answer apart', () => {
    const fault = said(
      'fault',
      ['undercharge'],
      [
        ['undercharge', 0.8],
        ['none', 0.2],
      ],
    )
    expect(scoreOf(truth('undercharge', 0.8), fault).outcome).toBe('correct')
    expect(scoreOf(truth('none'), fault).outcome).toBe('false-alarm')
    expect(scoreOf(truth('air'), fault).outcome).toBe('misdiagnosis')
    const none = said(
      'no-fault-shown',
      ['none'],
      [
        ['none', 0.9],
        ['air', 0.1],
      ],
    )
    expect(scoreOf(truth('air'), none).outcome).toBe('missed-detection')
    expect(scoreOf(truth('none'), none).outcome).toBe('correct')
    const open = said(
      'cannot-tell',
      ['none', 'air'],
      [
        ['none', 0.5],
        ['air', 0.5],
      ],
    )
    expect(scoreOf(truth('air'), open)).toMatchObject({ outcome: 'cannot-tell', inNamed: true })
    expect(scoreOf(truth('air'), undefined).outcome).toBe('no-response')
  })

  it('counts as harm a low charge named alone where it is not low', () => {
    const fault = said('fault', ['undercharge'], [['undercharge', 0.8]])
    expect(scoreOf(truth('restriction'), fault).harm).toBe(true)
    expect(scoreOf(truth('undercharge', 0.7), fault).harm).toBe(false)
    const two = said('fault', ['undercharge', 'restriction'], [['undercharge', 0.8]])
    expect(scoreOf(truth('restriction'), two).harm).toBe(false)
  })

  it('takes the fewest causes that hold nine tenths, and the first two', () => {
    const result = said(
      'cannot-tell',
      ['air'],
      [
        ['air', 0.6],
        ['none', 0.3],
        ['overcharge', 0.1],
      ],
    )
    expect(scoreOf(truth('none'), result)).toMatchObject({
      top1: false,
      top2: true,
      covered: true,
      setSize: 2,
    })
    expect(scoreOf(truth('overcharge'), result)).toMatchObject({ top2: false, covered: false })
    // (0.6 − 1)² + 0.3² + 0.1²
    expect(scoreOf(truth('air'), result).brier).toBeCloseTo(0.26, 12)
  })

  it('finds who is surer than right', () => {
    const scores = (right: number) =>
      Array.from({ length: 10 }, (_, i) => ({ confidence: 0.85, top1: i < right }) as Score)
    expect(calibrationError(scores(10))).toBeCloseTo(0.15, 12)
    expect(calibrationError(scores(5))).toBeCloseTo(0.35, 12)
    expect(calibrationError([...scores(9), ...scores(8)])).toBeCloseTo(0, 12)
    const [low, high] = bootstrap([0, 0, 1, 1], (list) => list.reduce((a, b) => a + b, 0) / 4)
    expect(low).toBeLessThan(0.3)
    expect(high).toBeGreaterThan(0.7)
  })
})

it('draws machines, asks about them and reports', { timeout: 60_000 }, () => {
  const machines = [preset('van-valve-134a'), preset('cooler-orifice-134a')]
  const list = [
    ...evaluated({ seed: 3, count: 4, level: 'model', priors: 'equal', sets: ['usual'], machines }),
  ]
  expect(list.length).toBeGreaterThan(1)
  const again = [
    ...evaluated({ seed: 3, count: 4, level: 'model', priors: 'equal', sets: ['usual'], machines }),
  ]
  expect(again.map(({ score }) => score)).toEqual(list.map(({ score }) => score))
  for (const { truth, score } of list) {
    if (truth.cause !== 'none' && !truth.mistake) expect(truth.severity).toBeGreaterThan(0)
    expect(score.brier).toBeGreaterThanOrEqual(0)
  }
  expect(summaryOf(list.map(({ score }) => score)).count).toBe(list.length)
  const text = report(list, 3)
  expect(text.indexOf('What went wrong')).toBeLessThan(text.indexOf('| model | usual |'))
})

it('reads on in three orders from the same two gauges', { timeout: 60_000 }, () => {
  const [first] = ways(2, 5, 'model')
  expect(first?.map(({ policy }) => policy)).toEqual(['worth', 'fixed', 'random'])
  for (const { steps, minutes } of first ?? []) expect(minutes >= steps).toBe(true)
})

describe('the plant of another structure', () => {
  const machine = preset('van-valve-134a')
  const one = foreignPlant(drawDesign(machine, randomFrom(8)))
  const { nominal } = machine
  const shown = (cause: Parameters<typeof one>[1], severity: number) => {
    const found = one(nominal, cause, severity)
    if (!found) throw new Error(`${cause} has no state`)
    return (feature: Feature) => found.features[FEATURES.indexOf(feature)] as number
  }
  const sound = shown('none', 0)

  it('runs at usual pressures and cools', () => {
    expect(sound('lowSidePa')).toBeGreaterThan(2.5e5)
    expect(sound('lowSidePa')).toBeLessThan(4.5e5)
    expect(sound('highSidePa')).toBeGreaterThan(10e5)
    expect(sound('highSidePa')).toBeLessThan(20e5)
    expect(sound('ventK')).toBeLessThan(nominal.returnAirK - 8)
  })

  it('moves as machines do', () => {
    const up = (feature: Feature, ...of: Parameters<typeof shown>) =>
      expect(shown(...of)(feature), of.join()).toBeGreaterThan(sound(feature))
    const down = (feature: Feature, ...of: Parameters<typeof shown>) =>
      expect(shown(...of)(feature), of.join()).toBeLessThan(sound(feature))
    up('highSidePa', 'condenser-air', 0.5)
    up('highSidePa', 'air', 0.5)
    up('highSidePa', 'overcharge', 0.3)
    down('lowSidePa', 'evaporator-air', 0.6)
    up('lowSidePa', 'compressor-leak', 0.5)
    down('highSidePa', 'compressor-leak', 0.5)
    up('suctionLineK', 'undercharge', 0.3)
    down('lowSidePa', 'valve-stuck-closed', 0.3)
    down('suctionLineK', 'valve-stuck-open', 0.5)
    down('deviceInletK', 'restriction', 0.6)
  })

  it('is asked about by all kinds of machines', { timeout: 60_000 }, () => {
    const list = [
      ...evaluated({
        seed: 12,
        count: 12,
        level: 'kind',
        priors: 'equal',
        sets: ['usual'],
        structure: 'foreign',
      }),
    ]
    expect(list.length).toBeGreaterThan(8)
    expect(summaryOf(list.map(({ score }) => score)).harm).toBe(0)
  })
})
