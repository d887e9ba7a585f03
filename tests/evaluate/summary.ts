import { randomFrom } from '../../shared/random.ts'
import type { Score } from './score.ts'
import { OUTCOMES } from './score.ts'

/** Share of a list for which something holds. */
export const shareWhere = <T>(list: readonly T[], holds: (each: T) => boolean): number =>
  list.length === 0 ? Number.NaN : list.filter(holds).length / list.length

export const meanOf = <T>(list: readonly T[], value: (each: T) => number): number =>
  list.length === 0 ? Number.NaN : list.reduce((sum, each) => sum + value(each), 0) / list.length

const BINS = 10

/** Expected calibration error of the first cause: mean gap of its share and of how often it is right. */
export function calibrationError(scores: readonly Pick<Score, 'confidence' | 'top1'>[]): number {
  let sum = 0
  for (let bin = 0; bin < BINS; bin += 1) {
    const within = scores.filter(
      ({ confidence }) => Math.min(BINS - 1, Math.floor(confidence * BINS)) === bin,
    )
    if (within.length === 0) continue
    const gap = Math.abs(
      meanOf(within, ({ confidence }) => confidence) - shareWhere(within, ({ top1 }) => top1),
    )
    sum += (gap * within.length) / scores.length
  }
  return sum
}

const RESAMPLES = 400

/** 95 % interval of a figure by drawing the cases again, with replacement. */
export function bootstrap<T>(
  list: readonly T[],
  figure: (list: readonly T[]) => number,
  seed = 99,
): readonly [low: number, high: number] {
  const random = randomFrom(seed)
  const values = Array.from({ length: RESAMPLES }, () =>
    figure(list.map(() => list[Math.floor(random() * list.length)] as T)),
  ).sort((a, b) => a - b)
  const at = (share: number) => values[Math.floor(share * (values.length - 1))] ?? Number.NaN
  return [at(0.025), at(0.975)]
}

/** All figures of one cell of the report. */
export interface Summary {
  readonly count: number
  readonly outcomes: Readonly<Record<(typeof OUTCOMES)[number], number>>
  readonly top1: number
  readonly top2: number
  readonly coverage: number
  readonly setSize: number
  readonly namedSize: number
  readonly inNamedWhereOpen: number
  readonly calibration: number
  readonly brier: number
  readonly harm: number
}

export function summaryOf(scores: readonly Score[]): Summary {
  const open = scores.filter(({ outcome }) => outcome === 'cannot-tell')
  return {
    count: scores.length,
    outcomes: Object.fromEntries(
      OUTCOMES.map((name) => [name, shareWhere(scores, ({ outcome }) => outcome === name)]),
    ) as Summary['outcomes'],
    top1: shareWhere(scores, ({ top1 }) => top1),
    top2: shareWhere(scores, ({ top2 }) => top2),
    coverage: shareWhere(scores, ({ covered }) => covered),
    setSize: meanOf(scores, ({ setSize }) => setSize),
    namedSize: meanOf(scores, ({ namedSize }) => namedSize),
    inNamedWhereOpen: shareWhere(open, ({ inNamed }) => inNamed),
    calibration: calibrationError(scores),
    brier: meanOf(scores, ({ brier }) => brier),
    harm: scores.filter(({ harm }) => harm).length,
  }
}
