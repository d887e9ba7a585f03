import { describe, expect, it } from 'vitest'
import figures from '../../../data/service/diagnosis.json' with { type: 'json' }
import { preset } from '../../../shared/cycle/index.ts'
import { FEATURES } from '../../../shared/diagnosis/features.ts'
import { fitOf } from '../../../shared/diagnosis/gaussian.ts'
import { carriedEffects } from '../../../shared/diagnosis/kinds.ts'
import { DOUBTS } from '../../../shared/diagnosis/mistakes.ts'
import { suspectsOf } from '../../../shared/diagnosis/suspects.ts'

const n = FEATURES.length
const SIGMA = 3
const SIGMA_READ = 4
const AT = FEATURES.indexOf('ventK')
const MEAN = 285

/** Mean square of one reading about its hypothesis, by the likelihood integrated over all that it could be. */
function spreadSquared(isGuess: boolean): number {
  const mean = new Float64Array(n)
  mean[AT] = MEAN
  const covariance = new Float64Array(n * n)
  for (let i = 0; i < n; i += 1) covariance[i * n + i] = SIGMA ** 2
  const hypothesis = {
    cause: 'none',
    severity: 0,
    mean,
    spread: { common: covariance },
    isGuess,
  } as const
  let [total, squares] = [0, 0]
  for (let off = -4000; off <= 4000; off += 0.25) {
    const observation = { feature: 'ventK', value: MEAN + off, sigma: SIGMA_READ } as const
    const density = Math.exp(fitOf(hypothesis, [observation]).logLikelihood)
    total += density
    squares += density * off * off
  }
  return squares / total
}

describe('the weight of an error', () => {
  it('has the spread of machine and instrument together as its standard deviation', () => {
    expect(spreadSquared(false)).toBeCloseTo(SIGMA ** 2 + SIGMA_READ ** 2, 1)
  })

  it('is spread wider where the spread of the machine is a guess: by 5 / 3 for five degrees of freedom', () => {
    expect(spreadSquared(true)).toBeCloseTo((5 / 3) * (SIGMA ** 2 + SIGMA_READ ** 2), 1)
  })
})

describe('whose spread is a guess', () => {
  const van = preset('van-valve-134a')
  const NO_TEST = { speed: 0, returnHumidity: 0, returnAirK: 0, ambientK: 0 }
  const guessesOf = (knowledge: 'model' | 'kind') => {
    const effects = carriedEffects(van, van.nominal)
    const all = suspectsOf({ share: 1, effects, knowledge }, NO_TEST, undefined, DOUBTS)
    return new Set(all.map(({ isGuess }) => isGuess))
  }

  it('is that of a machine of some kind, faults and mistakes alike, and not of one that is known', () => {
    expect([...guessesOf('kind')]).toEqual([true])
    expect([...guessesOf('model')]).toEqual([false])
  })

  it('and has of its own what the curve may miss, and of a kind a third of each change besides', () => {
    const effects = carriedEffects(van, { ...van.nominal, ambientK: van.nominal.ambientK + 5 })
    const [sound] = effects
    const own = (knowledge: 'model' | 'kind', i: number) =>
      suspectsOf({ share: 1, effects, knowledge }, NO_TEST, undefined)[i]?.spread.own?.[AT] ?? 0
    effects.forEach(({ mean, carried }, i) => {
      const change = (mean[AT] as number) - (sound?.mean[AT] as number)
      expect(own('model', i)).toBe(carried[AT])
      const off = figures.discrepancy.ofTheChange * change
      expect(own('kind', i)).toBeCloseTo((carried[AT] as number) + off ** 2, 9)
    })
    expect(Math.max(...effects.map(({ carried }) => carried[AT] as number))).toBeGreaterThan(0.01)
  })
})
