import { describe, expect, it } from 'vitest'
import { hypotheses } from '../../../shared/diagnosis/index.ts'
import { caseOf } from '../../../shared/service/lesson/draw.ts'
import { OFFER_IDS, observationsOf } from '../../../shared/service/lesson/market.ts'
import { causesLeft } from '../../../shared/service/lesson/reveal.ts'
import { TOPICS } from '../../../shared/service/lesson/topics.ts'

/** Seeds of each lesson; more by LESSON_SEEDS (450 of 450 cases were solvable with 50, known). */
const COUNT = Number(process.env.LESSON_SEEDS ?? 15)
const SEEDS = Array.from({ length: COUNT }, (_, index) => index * 7919 + 1)

describe.each(TOPICS.map(({ id }) => id))('the lesson "%s"', (id) => {
  it('is solvable: with all readings bought the truth is among the causes that are left', () => {
    const unsolved = SEEDS.flatMap((seed) => {
      const drawn = caseOf(seed, id, 'known')
      const all = hypotheses(drawn.machine, drawn.conditions, 'known')
      const left = causesLeft(all, observationsOf(drawn, OFFER_IDS)).flatMap(({ causes }) => causes)
      return left.includes(drawn.cause) ? [] : [`${seed}: ${drawn.cause} not in ${left.join(', ')}`]
    })
    expect(unsolved).toEqual([])
  }, 120_000)
})
