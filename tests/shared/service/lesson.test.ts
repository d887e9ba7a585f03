import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import data from '../../../data/service/lesson.json' with { type: 'json' }
import { FAULT_KINDS, NO_FAULTS, run, stateOf } from '../../../shared/cycle/index.ts'
import { FEATURES, featuresOf, USUAL_CANDIDATES } from '../../../shared/diagnosis/index.ts'
import { refrigerant } from '../../../shared/refrigerant/index.ts'
import { caseOf, type LessonCase } from '../../../shared/service/lesson/draw.ts'
import { OFFER_IDS, OFFERS, observationsOf } from '../../../shared/service/lesson/market.ts'
import { expectedOf } from '../../../shared/service/lesson/reveal.ts'
import { NAMED, TOPICS, wordsOf } from '../../../shared/service/lesson/topics.ts'
import { lesson } from '../../../shared/service/lesson.ts'
import { simulate } from '../../../shared/service/simulate.ts'
import { refusalOf } from '../../support/refusal.ts'

const exact = { units: 'si', precise: true } as const
const GUESS = {
  lowSide: 'down',
  highSide: 'up',
  superheat: 'same',
  subcooling: 'up',
  vent: 'up',
} as const

type Input = Record<string, unknown>
const asked = (input: Input) => lesson.run({ ...exact, seed: 1, ...input })
const SEEDS = Array.from({ length: 50 }, (_, index) => index * 7919 + 1)
const everyTopic = TOPICS.map((topic) => [topic.id, topic] as const)

describe('a case', () => {
  it('is the same for the same seed, and another for another', () => {
    const seen = new Set<string>()
    for (const seed of SEEDS) {
      const text = JSON.stringify(asked({ seed, predictions: GUESS, bought: ['vent', 'low-side'] }))
      expect(
        JSON.stringify(asked({ seed, predictions: GUESS, bought: ['vent', 'low-side'] })),
      ).toBe(text)
      seen.add(text)
    }
    expect(seen.size).toBe(SEEDS.length)
    expect(new Set(SEEDS.map((seed) => asked({ seed }).result.topic)).size).toBe(TOPICS.length)
  })

  it.each(everyTopic)('of "%s" draws each of its truths, runs, and can be read', (id, topic) => {
    const drawn = SEEDS.map((seed) => caseOf(seed, id, 'known'))
    expect(new Set(drawn.map(({ cause }) => cause))).toEqual(
      new Set(topic.truths.map(({ fault }) => fault)),
    )
    for (const { outcome } of drawn) expect(['steady', 'cycling']).toContain(outcome.kind)
  })

  it('reads by instruments: nearly all within two standard deviations, and never the same error', () => {
    const errors = SEEDS.flatMap((seed) => {
      const drawn = caseOf(seed, undefined, 'known')
      const state = stateOf(drawn.outcome)
      if (!state) throw new Error(String(seed))
      const truth = featuresOf(state)
      return observationsOf(drawn, OFFER_IDS).map(
        ({ feature, value, sigma }) =>
          (value - (truth[FEATURES.indexOf(feature)] as number)) / sigma,
      )
    })
    const mean = errors.reduce((a, b) => a + b, 0) / errors.length
    const spread = Math.sqrt(errors.reduce((sum, e) => sum + (e - mean) ** 2, 0) / errors.length)
    expect(Math.abs(mean)).toBeLessThan(0.15)
    expect(spread).toBeGreaterThan(0.85)
    expect(spread).toBeLessThan(1.15)
    expect(errors.filter((e) => Math.abs(e) > 2).length / errors.length).toBeLessThan(0.08)
    expect(new Set(errors.map((e) => e.toFixed(9))).size).toBeGreaterThan(0.97 * errors.length)
  })
})

describe.each(everyTopic)('the lesson "%s"', (id, topic) => {
  it('breaks its saying', () => {
    const drawn = SEEDS.slice(0, 12).map((seed) => caseOf(seed, id, 'known'))
    expect(topic.claim).toMatch(/\.$/u)
    BREAKS[id]?.(drawn)
    expect(Object.keys(BREAKS)).toContain(id)
  })
})

const shows = ({ outcome }: LessonCase) => {
  const state = stateOf(outcome)
  if (!state) throw new Error('no state')
  return featuresOf(state)
}
const whole = ({ asked: sound }: LessonCase) => {
  const state = stateOf(run({ ...sound, faults: NO_FAULTS }))
  if (!state) throw new Error('no state')
  return featuresOf(state)
}
const at = (features: Float64Array, name: (typeof FEATURES)[number]) =>
  features[FEATURES.indexOf(name)] as number
const sigmaOf = (name: (typeof FEATURES)[number]) =>
  USUAL_CANDIDATES.find(({ feature }) => feature === name)?.sigma ?? 0
const subcooling = (drawn: LessonCase, features: Float64Array) =>
  refrigerant(drawn.machine.refrigerant).bubble.temperature(at(features, 'highSidePa')) -
  at(features, 'liquidLineK')
const moved = (drawn: LessonCase, name: (typeof FEATURES)[number]) =>
  (at(shows(drawn), name) - at(whole(drawn), name)) / sigmaOf(name)
const of = (drawn: readonly LessonCase[], ...causes: string[]) => {
  const found = drawn.filter(({ cause }) => causes.includes(cause))
  expect(found.length).toBeGreaterThan(0)
  return found
}

/** What of a case speaks against each saying. */
const BREAKS: Readonly<Record<string, (drawn: readonly LessonCase[]) => void>> = {
  'both-low': (drawn) => {
    for (const each of of(drawn, 'evaporator-air', 'restriction')) {
      expect(moved(each, 'lowSidePa')).toBeLessThan(-1)
      expect(moved(each, 'highSidePa')).toBeLessThan(-1)
      expect(each.asked.faults.charge).toBe(1)
    }
  },
  'normal-pressures': (drawn) => {
    for (const each of of(drawn, 'undercharge', 'overcharge')) {
      expect(Math.abs(moved(each, 'lowSidePa'))).toBeLessThan(1)
      expect(Math.abs(moved(each, 'highSidePa'))).toBeLessThan(1)
      expect(Math.abs(each.asked.faults.charge - 1)).toBeGreaterThan(0.12)
    }
  },
  'low-charge-suction': (drawn) => {
    for (const each of of(drawn, 'undercharge')) {
      expect(Math.abs(moved(each, 'lowSidePa'))).toBeLessThan(1)
      expect(subcooling(each, shows(each))).toBeLessThan(subcooling(each, whole(each)) - 2)
    }
  },
  'high-head': (drawn) => {
    for (const each of of(drawn, 'condenser-air', 'air')) {
      expect(moved(each, 'highSidePa')).toBeGreaterThan(1)
      expect(each.asked.faults.charge).toBe(1)
    }
  },
  'more-subcooling': (drawn) => {
    for (const each of of(drawn, 'overcharge', 'air')) {
      expect(subcooling(each, shows(each))).toBeGreaterThan(subcooling(each, whole(each)) + 2)
      expect(moved(each, 'highSidePa')).toBeGreaterThan(1)
    }
  },
  'normal-superheat': (drawn) => {
    for (const each of of(drawn, 'undercharge', 'overcharge')) {
      expect(Math.abs(moved(each, 'suctionLineK'))).toBeLessThan(2)
      expect(Math.abs(each.asked.faults.charge - 1)).toBeGreaterThan(0.08)
    }
  },
  'suction-normal': (drawn) => {
    for (const each of of(drawn, 'compressor-leak')) {
      expect(Math.abs(moved(each, 'lowSidePa'))).toBeLessThan(1)
      expect(moved(each, 'dischargeLineK')).toBeGreaterThan(1)
    }
  },
  'sight-glass': (drawn) => {
    for (const each of of(drawn, 'undercharge', 'overcharge')) {
      expect(asked({ seed: each.seed, topic: 'sight-glass' }).result.seen).toContain(
        'sight glass clear',
      )
      expect(Math.abs(each.asked.faults.charge - 1)).toBeGreaterThan(0.12)
    }
  },
  vent: (drawn) => {
    for (const each of of(drawn, 'none')) {
      const nominal = stateOf(run({ ...each.asked, conditions: each.before }))
      if (!nominal) throw new Error('no state')
      expect(at(shows(each), 'ventK')).toBeGreaterThan(at(featuresOf(nominal), 'ventK') + 2)
    }
  },
}

describe('before the end', () => {
  const before = (seed: number, topic: string, knowledge: string, bought: readonly string[]) =>
    bought.length === 0
      ? [asked({ seed, topic, knowledge }), asked({ seed, topic, knowledge, predictions: GUESS })]
      : [asked({ seed, topic, knowledge, predictions: GUESS, bought })]

  it('nothing of the answer stands anywhere in it', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1e6 }),
        fc.constantFrom(...TOPICS.map(({ id }) => id)),
        fc.constantFrom('known', 'roughly'),
        fc.uniqueArray(fc.constantFrom(...OFFER_IDS)),
        (seed, topic, knowledge, bought) => {
          const drawn = caseOf(seed, topic, knowledge as 'known')
          for (const answer of before(seed, topic, knowledge, bought)) {
            expect(answer.result.reveal).toBeUndefined()
            expect(answer.result.sheet).toHaveLength(5)
            // What can be named, what is supposed, the seed and the readings themselves are said; else no cause is named.
            const { choices: _, supposed: __, offers: ___, ...result } = answer.result
            const said = JSON.stringify({ ...answer, result }).replaceAll(
              wordsOf(drawn.topic.supposed.fault),
              '',
            )
            for (const cause of NAMED) {
              if (cause === 'none' || cause === 'air' || cause === drawn.topic.supposed.fault)
                continue
              expect(said).not.toContain(`"${cause}"`)
              expect(said).not.toContain(wordsOf(cause))
            }
            expect(said).not.toContain(drawn.topic.broken)
            expect(said).not.toMatch(/"(?:cause|severity|truth|expected|verdict|probability)"/u)
          }
        },
      ),
      { numRuns: 60, seed: 20261127 },
    )
  })

  it('a case with another truth reads the same but for what is bought and seen', () => {
    // Two seeds that draw the same scene and other truths: compared field by field.
    const strip = (seed: number, topic: string) => {
      const answer = asked({ seed, topic, predictions: GUESS })
      const {
        seen: _,
        conditions: __,
        machine: ___,
        sheet: ____,
        seed: _____,
        choices: ______,
        supposed: _______,
        ...result
      } = answer.result
      return JSON.stringify({
        ...answer,
        sources: [],
        figures: answer.figures?.filter(({ id }) => id !== 'seen'),
        result,
      })
    }
    for (const { id } of TOPICS) {
      expect(new Set(SEEDS.slice(0, 12).map((seed) => strip(seed, id))).size).toBe(1)
    }
  })
})

describe('the order of a lesson', () => {
  it('is predictions, readings, a cause', () => {
    expect(asked({}).result.stage).toBe('predict')
    expect(asked({ predictions: GUESS }).result.stage).toBe('buy')
    expect(asked({ predictions: GUESS, named: 'none' }).result.stage).toBe('revealed')
    expect(refusalOf(() => asked({ bought: ['vent'] }))).toMatchObject({
      code: 'missing-input',
      path: ['predictions'],
    })
    expect(refusalOf(() => asked({ named: 'none' }))).toMatchObject({
      code: 'missing-input',
      path: ['predictions'],
    })
    expect(refusalOf(() => asked({ predictions: GUESS, bought: ['vent', 'vent'] })).path).toEqual([
      'bought',
      1,
    ])
    const van = { topic: 'low-charge-suction', predictions: GUESS, named: 'stroke-stuck-low' }
    expect(refusalOf(() => asked(van))).toMatchObject({ code: 'refused', path: ['named'] })
    const doubtful = { topic: 'low-charge-suction', suspected: 'stroke-stuck-low' }
    expect(refusalOf(() => asked(doubtful))).toMatchObject({ code: 'refused', path: ['suspected'] })
    // A suspicion is kept beside the answer and ends nothing.
    const suspecting = asked({ predictions: GUESS, suspected: 'undercharge' }).result
    expect([suspecting.stage, suspecting.suspected]).toEqual(['buy', 'undercharge'])
    expect(refusalOf(() => lesson.run({})).path).toEqual(['seed'])
  })

  it('costs what each reading costs, and works out superheat and subcooling from what is bought', () => {
    const bought = ['low-side', 'suction-line', 'high-side', 'liquid-line']
    const { result } = asked({ topic: 'both-low', predictions: GUESS, bought })
    expect(result.spent).toMatchObject({ value: 10, unit: 'min' })
    const shown = Object.fromEntries(
      result.offers.map(({ reading, shows: value }) => [reading, value]),
    )
    const pa = (reading: string) => 1000 * (shown[reading]?.value ?? 0) + 101_325
    const r = refrigerant(result.machine.refrigerant)
    expect(result.superheat?.value).toBeCloseTo(
      (shown['suction-line']?.value ?? 0) + 273.15 - r.dew.temperature(pa('low-side')),
      4,
    )
    expect(result.subcooling?.value).toBeCloseTo(
      r.bubble.temperature(pa('high-side')) - (shown['liquid-line']?.value ?? 0) - 273.15,
      4,
    )
    // two standard deviations of the gauge: 1 psi and 4 psi
    expect(shown['low-side']?.plusMinus).toBeCloseTo(2 * 6.895, 3)
    expect(shown['high-side']?.plusMinus).toBeCloseTo(2 * 27.58, 3)
    const few = asked({ topic: 'both-low', predictions: GUESS, bought: ['low-side'] }).result
    expect(few.superheat).toBeUndefined()
    expect(few.offers.filter(({ shows: value }) => value !== undefined)).toHaveLength(1)
  })

  it('gives the readings of the sound machine only where it is known', () => {
    const buy = (knowledge: string) =>
      asked({ knowledge, predictions: GUESS, bought: ['vent'] }).result.offers.find(
        ({ reading }) => reading === 'vent',
      )
    expect(buy('known')?.sound).toBeDefined()
    expect(buy('roughly')?.sound).toBeUndefined()
  })
})

describe('the end', () => {
  const end = (input: Input) => {
    const answer = asked({ predictions: GUESS, ...input })
    const { reveal } = answer.result
    if (!reveal) throw new Error('not revealed')
    return { ...answer, reveal }
  }

  it('is that of the case, told first, with a simulation that shows the same', () => {
    for (const [topic] of everyTopic) {
      const drawn = caseOf(3, topic, 'known')
      const { reveal, headline, result } = end({ seed: 3, topic, named: drawn.cause })
      expect(reveal.cause).toBe(drawn.cause)
      expect(reveal.verdict).toBe('right')
      expect(headline).toContain(wordsOf(drawn.cause))
      const { conditions, machine } = result
      const figure = ({ value, unit }: { value: number; unit: string }) => `${value} ${unit}`
      const { result: simulated } = simulate.run({
        ...exact,
        modelMachine: machine.id,
        refrigerant: machine.refrigerant,
        barometer: '101.325 kPa',
        ambient: figure(conditions.ambient),
        returnAir: figure(conditions.returnAir),
        relativeHumidity: figure(conditions.relativeHumidity),
        compressorRpm: drawn.conditions.speed * 60,
        ...(reveal.size && reveal.setting ? { [reveal.setting]: figure(reveal.size) } : {}),
      })
      expect(simulated.outcome.state).toBe(reveal.outcome.state)
      expect(simulated.outcome.remarks).toEqual(reveal.outcome.remarks)
      expect(simulated.outcome.duty?.value ?? 0).toBeCloseTo(reveal.outcome.duty?.value ?? 0, 4)
      simulated.readings.forEach(({ now }, index) => {
        expect(reveal.readings[index]?.now?.value).toBeCloseTo(now?.value ?? 0, 4)
      })
      expect(reveal.sweep.rows.length).toBeGreaterThan(10)
    }
  })

  it('hands over the case as it is, however little of the machine was known', () => {
    for (const knowledge of ['known', 'roughly'] as const) {
      for (const [topic] of everyTopic) {
        const { reveal } = end({ seed: 11, topic, knowledge, named: 'none' })
        const { result } = simulate.run({ ...exact, ...reveal.simulation })
        expect(reveal.simulation.deviations === undefined).toBe(knowledge === 'known')
        expect(result.faults.map(({ fault }) => fault)).toEqual(
          reveal.cause === 'none' ? [] : [reveal.cause],
        )
        expect(result.outcome.state).toBe(reveal.outcome.state)
        result.readings.forEach(({ now }, index) => {
          const shown = reveal.readings[index]?.now?.value ?? 0
          expect(Math.abs(shown - (now?.value ?? 0))).toBeLessThan(1e-3 * Math.abs(shown) + 5e-3)
        })
      }
    }
  })

  it('grades the predictions by what the supposed fault does', () => {
    const topic = 'normal-pressures'
    const drawn = caseOf(1, topic, 'known')
    const expected = expectedOf(drawn)
    // a receiver or accumulator with liquid in it: nothing moves
    expect(Object.values(expected)).toEqual(['same', 'same', 'same', 'same', 'same'])
    const all = end({ topic, predictions: expected, named: 'none' })
    expect(all.reveal.predictions.every(({ predicted, expected: was }) => predicted === was)).toBe(
      true,
    )
    const value = (id: string) => all.figures?.find((figure) => figure.id === id)?.text
    expect(value('predicted')).toBe('5 of 5')
    const humid = expectedOf(caseOf(1, 'vent', 'known'))
    expect([humid.lowSide, humid.highSide, humid.vent]).toEqual(['up', 'up', 'up'])
  })

  it('says of each other cause what it would have shown, and which reading parts it', () => {
    const { reveal } = end({
      topic: 'high-head',
      seed: 7,
      named: 'condenser-air',
      bought: ['vent'],
    })
    expect(reveal.cause).toBe('overcharge')
    expect(reveal.verdict).not.toBe('right')
    const causes = reveal.others.map(({ cause }) => cause)
    expect(causes).not.toContain(reveal.cause)
    expect(new Set(causes).size).toBe(causes.length)
    for (const { cause, reading, would, shows: here, apart } of reveal.others) {
      if (reading === undefined) continue
      expect(apart, cause).toBeGreaterThanOrEqual(2)
      expect(would?.value).not.toBe(here?.value)
    }
    const air = reveal.others.find(({ cause }) => cause === 'condenser-air')
    expect(air?.moves).toMatchObject({ highSide: 'up', superheat: 'same' })
    expect(reveal.others.find(({ cause }) => cause === 'evaporator-air')?.moves.lowSide).toBe(
      'down',
    )
  })

  it('says that the readings cannot part what they cannot part', () => {
    const drawn = SEEDS.map((seed) => caseOf(seed, 'normal-pressures', 'known')).find(
      ({ cause, machine }) => cause === 'undercharge' && machine.store.kind === 'receiver',
    )
    if (!drawn) throw new Error('no such case')
    const seen = { seed: drawn.seed, topic: 'normal-pressures', named: 'none' }
    const gauges = end({
      ...seen,
      bought: ['low-side', 'high-side', 'liquid-line', 'suction-line', 'vent'],
    })
    expect(gauges.reveal.verdict).toBe('same-class')
    // the scale parts them
    const scale = end({ ...seen, bought: ['weighed-charge'] })
    expect(scale.reveal.verdict).toBe('wrong')
    const none = scale.reveal.others.find(({ cause }) => cause === 'none')
    expect(none?.reading).toBe('weighed-charge')
    expect(none?.moves).toMatchObject({ lowSide: 'same', highSide: 'same' })
    expect(scale.reveal.bits).toBeGreaterThan(0)
  })

  it('prints a sheet with its answers', () => {
    const { result } = end({ topic: 'vent', named: 'none' })
    expect(result.sheet).toHaveLength(8)
    expect(result.sheet.join('\n')).not.toMatch(/\{|undefined/u)
    expect(asked({ topic: 'vent' }).result.sheet.join('\n')).toMatch(/____/u)
  })
})

describe('the sayings', () => {
  it('are nine, each with a source; those from memory say so on the screen', () => {
    expect(TOPICS).toHaveLength(9)
    for (const { id, source } of TOPICS) {
      const { figures = [], sources } = asked({ topic: id })
      expect(sources.map((each) => each.id)).toContain(source)
      const fromMemory = data.sources[source].mark === 'memory'
      expect(figures.some(({ basis }) => basis === 'from memory')).toBe(fromMemory)
    }
  })

  it('never make anybody add refrigerant by what a gauge shows', () => {
    expect(JSON.stringify(data)).not.toMatch(
      /\b(?:add refrigerant|top up|fill up|charge until)\b/iu,
    )
    expect(asked({}).cautions.map(({ id }) => id)).toContain('weigh-the-charge')
  })

  it('have words for every cause and every reading', () => {
    for (const cause of [...FAULT_KINDS, 'none'] as const) expect(wordsOf(cause)).toMatch(/\S/u)
    expect(Object.keys(data.readings).sort()).toEqual([...OFFER_IDS].sort())
    expect(Object.values(OFFERS).sort()).toEqual([...FEATURES].sort())
  })
})
