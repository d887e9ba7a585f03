import { type Preset, presets } from '../../shared/cycle/index.ts'
import type { Feature } from '../../shared/diagnosis/features.ts'
import { randomFrom } from '../../shared/random.ts'
import { answerTo, machineTold, type Result, typed } from './ask.ts'
import { BY_PRIOR, bySigns } from './baselines.ts'
import { drawMistake, drawTruth, type Structure, withNoise } from './draw.ts'
import {
  distanceFrom,
  type Level,
  otherClasses,
  SETS,
  type SetName,
  SIGMA,
  type Truth,
} from './plant.ts'
import { type Score, scoreOf } from './score.ts'

/** One machine, one set of readings, and what came of it. */
export interface Evaluated {
  readonly truth: Truth
  readonly level: Level
  readonly set: SetName
  readonly score: Score
  readonly result: Result | undefined
  /** Least distance from any other class by the plant itself, σ. */
  readonly distance: number
  readonly signsRight: boolean
  readonly priorRight: boolean
}

export interface Asked {
  readonly seed: number
  readonly count: number
  readonly level: Level
  readonly priors: 'equal' | 'usual'
  readonly sets: readonly SetName[]
  readonly machines?: readonly Preset[]
  readonly structure?: Structure
}

/** Draws machines one after the other of the model's kinds and asks about each. */
export function* evaluated({
  seed,
  count,
  level,
  priors,
  sets,
  machines = presets(),
  structure = 'own',
}: Asked): Generator<Evaluated> {
  const random = randomFrom(seed)
  for (let index = 0; index < count; index += 1) {
    const preset = machines[index % machines.length] as Preset
    const truth = drawTruth(preset, priors, level, random, structure)
    const read = withNoise(truth, (feature) => SIGMA[feature], random)
    const baseline = level === 'baseline' ? baselineOf(truth, random) : undefined
    const others = truth.mistake ? [] : otherClasses(truth)
    for (const set of sets) {
      const features: readonly Feature[] = SETS[set]
      const seen = mistakenIn(truth, features, random)
      const shown = seen === truth ? read : withNoise(seen, (feature) => SIGMA[feature], random)
      const input = typed(seen, shown, features, seen.readConditions)
      const result = answerTo({ ...input, ...machineTold(truth, level, baseline), priors })
      yield {
        truth,
        level,
        set,
        result,
        score: scoreOf(truth, result),
        distance: truth.mistake ? Number.NaN : distanceFrom(others, truth, features, level),
        signsRight: bySigns(truth, input) === truth.cause,
        priorRight: BY_PRIOR === truth.cause,
      }
    }
  }
}

/** With the mistake in one of the readings at hand: else it would be rarer in them than it was drawn. */
function mistakenIn(truth: Truth, set: readonly Feature[], random: () => number): Truth {
  const { mistake } = truth
  return mistake === undefined || set.includes(mistake.feature)
    ? truth
    : { ...truth, mistake: drawMistake(random, set) }
}

/** The same machine sound, read another day in weather of its own. */
export function baselineOf(
  truth: Truth,
  random: () => number,
): Record<string, unknown> | undefined {
  const { conditions } = truth
  const other = {
    ...conditions,
    ambientK: conditions.ambientK + 8 * (random() - 0.5),
    returnAirK: conditions.returnAirK + 4 * (random() - 0.5),
  }
  const shown = truth.plant(other, 'none', 0)
  if (shown === undefined) return undefined
  const sound: Truth = { ...truth, cause: 'none', mistake: undefined, features: shown.features }
  const read = withNoise(sound, (feature) => SIGMA[feature], random)
  return typed(truth, read, SETS.all, { ...other, condenserFan: 1, blower: 1 })
}
