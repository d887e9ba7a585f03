import type { Machine } from '../../cycle/types.ts'
import { FEATURES, type Feature } from '../../diagnosis/index.ts'
import { parseQuantity } from '../../quantity/index.ts'
import { refrigerant } from '../../refrigerant/index.ts'
import { TEXTS } from './topics.ts'

/** What a class predicts. */
export const GAUGES = ['lowSide', 'highSide', 'superheat', 'subcooling', 'vent'] as const
export type Gauge = (typeof GAUGES)[number]

export const MOVES = ['up', 'same', 'down'] as const
export type Move = (typeof MOVES)[number]
export type Moves = Readonly<Record<Gauge, Move>>

/** What a set of features reads at, Pa and K: superheat and subcooling as a mechanic works them out. */
function gaugesOf(features: Float64Array, machine: Machine): Readonly<Record<Gauge, number>> {
  const { bubble, dew } = refrigerant(machine.refrigerant)
  const at = (feature: Feature) => features[FEATURES.indexOf(feature)] as number
  return {
    lowSide: at('lowSidePa'),
    highSide: at('highSidePa'),
    superheat: at('suctionLineK') - dew.temperature(at('lowSidePa')),
    subcooling: bubble.temperature(Math.min(at('highSidePa'), bubble.toPa)) - at('liquidLineK'),
    vent: at('ventK'),
  }
}

/** Smallest change that counts, SI: what a usual instrument tells (1 σ). */
const stepOf = (gauge: Gauge) =>
  parseQuantity(TEXTS.steps[gauge], ['pressureDifference', 'temperatureDifference']).si

/** Which way each gauge moves from one set of features to another. */
export function movesOf(before: Float64Array, now: Float64Array, machine: Machine): Moves {
  const [a, b] = [gaugesOf(before, machine), gaugesOf(now, machine)]
  const moves = GAUGES.map((gauge): readonly [Gauge, Move] => {
    const gap = b[gauge] - a[gauge]
    return [gauge, Math.abs(gap) < stepOf(gauge) ? 'same' : gap > 0 ? 'up' : 'down']
  })
  return Object.fromEntries(moves) as Moves
}
