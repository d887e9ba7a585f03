import { describe, expect, it } from 'vitest'
import { counting, trialsSoFar } from '../../../shared/cycle/index.ts'
import type { Operation, Unshown } from '../../../shared/operation.ts'
import { atOnce, type InPieces } from '../../../shared/pieces.ts'
import { TOPIC_IDS } from '../../../shared/service/lesson/topics.ts'
import { lesson } from '../../../shared/service/lesson.ts'
import { simulate } from '../../../shared/service/simulate.ts'

// How long a trial of the model takes is for the bench; what is counted here is how many there are.

const PREDICTIONS = {
  lowSide: 'up',
  highSide: 'up',
  superheat: 'same',
  subcooling: 'same',
  vent: 'same',
} as const
const endOf = (seed: number, topic: string, knowledge: string) => ({
  seed,
  topic,
  knowledge,
  predictions: PREDICTIONS,
  named: 'none',
})
const ENDS = [1, 2, 3, 4].flatMap((seed) =>
  ['known', 'roughly'].map((knowledge) => (topic: string) => endOf(seed, topic, knowledge)),
)

/** Trials of each piece of an answer. */
function piecesOf({ unshownInPieces }: Operation, input: unknown): readonly number[] {
  const work = unshownInPieces?.(input)
  if (work === undefined) throw new Error('It is computed at once.')
  const pieces: number[] = []
  for (let ended = false; !ended; ) {
    const before = trialsSoFar()
    try {
      ended = work.next().done === true
    } catch {
      ended = true
    }
    pieces.push(trialsSoFar() - before)
  }
  return pieces
}
const sum = (numbers: readonly number[]) => numbers.reduce((a, b) => a + b, 0)

/** Far from what one that nobody waits for may take: some 15 µs each. */
const MOST_A_PIECE = 450

describe('the end of a lesson', () => {
  it.each(TOPIC_IDS)('"%s" takes few trials of the model, and gives others their turn', (topic) => {
    const ends = ENDS.map((end) => piecesOf(lesson, end(topic)))
    const trials = ends.map(sum)
    // Where every state was solved as if nothing near by were known they were 3100 to 5400.
    expect(Math.max(...trials)).toBeLessThan(2_200)
    expect(Math.min(...trials)).toBeGreaterThan(1_000)
    expect(Math.max(...ends.flat())).toBeLessThan(MOST_A_PIECE)
  })

  it('is the same in pieces', () => {
    const end = endOf(4, 'vent', 'roughly')
    expect(atOnce(lesson.unshownInPieces?.(end) as InPieces<Unshown>)).toEqual(lesson.unshown(end))
  })
})

describe('a simulation', () => {
  const odd = { ambient: '44 °C', returnAir: '12.5 °C', relativeHumidity: '50 %' }
  it.each([
    ['a sweep', { modelMachine: 'loader', sweep: 'charge', sweepPoints: 60 }],
    ['where a stroke varies', { modelMachine: 'tractor', sweep: 'charge', sweepPoints: 60 }],
    ['where a clutch swings', { modelMachine: 'loader', sweep: 'evaporator-air' }],
    [
      'where no state is found',
      { ...odd, modelMachine: 'cooler-orifice', compressorRpm: 2078, fault: 'air' },
    ],
    [
      'where hardly one is found',
      { ...odd, modelMachine: 'split-orifice', sweep: 'compressor-leak', sweepPoints: 20 },
    ],
  ])('gives others their turn: %s', (_, input) => {
    const pieces = piecesOf(simulate, input)
    expect(sum(pieces)).toBeGreaterThan(100)
    expect(Math.max(...pieces)).toBeLessThan(MOST_A_PIECE)
  })

  const usual = { ambient: '40 °C', returnAir: '32 °C', relativeHumidity: '60 %' }
  it.each([
    [
      'where a clutch swings in nearly every row',
      { ambient: '95 °F', returnAir: '12.5 °C', modelMachine: 'loader', compressorRpm: 1799 },
      // 7200 where every swing was sought as if none were known
      1_700,
    ],
    ['where the last rows have no state', { ...usual, modelMachine: 'split-valve' }, 1_300],
    // 7000 where each of those was searched for anew
    ['and a stroke varies', { ...usual, modelMachine: 'tractor', compressorRpm: 3100 }, 2_300],
  ])('takes few trials for 60 rows: %s', (_, input, most) => {
    const trials = sum(piecesOf(simulate, { ...input, sweep: 'charge', sweepPoints: 60 }))
    expect(trials).toBeGreaterThan(300)
    expect(trials).toBeLessThan(most)
  })

  it('solves no state twice: the sound machine is its own twin, and what a sweep is compared with', () => {
    const alone = sum(piecesOf(simulate, { modelMachine: 'loader' }))
    const fault = sum(piecesOf(simulate, { modelMachine: 'loader', condenserAir: '60 %' }))
    const swept = (input: object) =>
      sum(piecesOf(simulate, { ...input, modelMachine: 'loader', sweep: 'air', sweepPoints: 2 }))
    const rows = swept({}) - alone
    expect(rows).toBeGreaterThan(0)
    expect(fault).toBeLessThan(3 * alone)
    // of a machine with that fault alone, the sound one is what it is compared with
    const air = { airInside: '5 psi' }
    const withAir = sum(piecesOf(simulate, { ...air, modelMachine: 'loader' }))
    expect(swept(air) - withAir).toBe(rows)
  })

  it('of a fault that no machine of its kind has is refused before any is solved', () => {
    const pieces = piecesOf(simulate, { modelMachine: 'loader', sweep: 'stroke' })
    expect(sum(pieces)).toBe(0)
  })
})

describe('a count of trials', () => {
  it('is of the work itself, whatever has its turn meanwhile', () => {
    const input = simulate.parse({ modelMachine: 'loader', sweep: 'charge' })
    const alone = atOnce(counting(simulate.inPieces(input)))?.trials
    const work = counting(simulate.inPieces(input))
    for (;;) {
      const { done, value } = work.next()
      simulate.compute(simulate.parse({ modelMachine: 'van' }))
      if (done !== true) continue
      expect(value?.trials).toBe(alone)
      break
    }
  })

  it('ends work that takes more', () => {
    const { fault: _, ...input } = simulate.parse({ modelMachine: 'loader', sweep: 'charge' })
    const before = trialsSoFar()
    expect(atOnce(counting(simulate.inPieces(input), 100))).toBeUndefined()
    expect(trialsSoFar() - before).toBeLessThan(100 + MOST_A_PIECE)
  })
})
