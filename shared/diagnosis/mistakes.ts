import figures from '../../data/service/diagnosis.json' with { type: 'json' }
import type { Effect } from './effects.ts'
import { FEATURES, type Feature } from './features.ts'
import { type Hypothesis, mistaken } from './hypotheses.ts'
import { NUISANCES, OF_THE_TEST, type TestNuisance } from './nuisance.ts'

const { gauges, readings, conditions } = figures.mistakes

/**
 * What may be wrong with a test: one reading far off, one condition other than it was said, both
 * gauges read for another refrigerant than is in the machine, or anything.
 */
export type Doubt = (typeof DOUBTS)[number]
export const DOUBTS = [...FEATURES, ...OF_THE_TEST, 'refrigerant', 'anything'] as const

/** A mistake as a hypothesis, with what it doubts. */
export interface Mistake extends Hypothesis {
  readonly doubts: Doubt
}

const isReading = (doubt: Doubt): doubt is keyof typeof readings => doubt in readings
const isCondition = (doubt: Doubt): doubt is TestNuisance => doubt in conditions

/** What can be doubted of what was read: a weighed charge is not. */
export function doubtsOf(
  read: readonly Feature[],
  known: readonly TestNuisance[],
): readonly Doubt[] {
  const both = read.includes('lowSidePa') && read.includes('highSidePa')
  return [
    ...read.filter(isReading),
    ...known,
    ...(both ? (['refrigerant'] as const) : []),
    'anything',
  ]
}

/** One mistake each on a sound machine: what is doubted lies anywhere around what it should be. */
export function mistakesOf(
  sound: Hypothesis,
  { columns }: Pick<Effect, 'columns'>,
  doubts: readonly Doubt[],
): readonly Mistake[] {
  return doubts.map((doubt): Mistake => {
    if (doubt === 'anything') return { ...mistaken(sound), doubts: doubt }
    return {
      ...sound,
      cause: 'reading-or-test-wrong',
      spread: { ...sound.spread, along: offBy(doubt, sound, columns) },
      doubts: doubt,
    }
  })
}

/** How far each reading is off together with the others, 1 σ. */
function offBy(doubt: Doubt, { mean }: Hypothesis, columns: Effect['columns']): Float64Array {
  const off = new Float64Array(FEATURES.length)
  if (isCondition(doubt)) {
    const column = columns[NUISANCES.indexOf(doubt)] as Float64Array
    return off.map((_, i) => (column[i] as number) * conditions[doubt])
  }
  const pressures = ['lowSidePa', 'highSidePa'] as const
  if (doubt === 'refrigerant') {
    for (const feature of pressures) {
      const at = FEATURES.indexOf(feature)
      off[at] = (mean[at] as number) * gauges.otherRefrigerant
    }
  } else if (isReading(doubt)) {
    const at = FEATURES.indexOf(doubt)
    const { share, kelvin } = readings[doubt]
    off[at] = share * (mean[at] as number) + kelvin
  }
  return off
}
