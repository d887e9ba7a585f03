import {
  type Conditions,
  type Deviations,
  faultsOf,
  NO_DEVIATIONS,
  type Preset,
} from '../../shared/cycle/index.ts'
import { FEATURES, type Feature } from '../../shared/diagnosis/features.ts'
import type { Cause } from '../../shared/diagnosis/hypotheses.ts'
import { SPREAD } from '../../shared/diagnosis/nuisance.ts'
import { USUAL_PRIORS } from '../../shared/diagnosis/posterior.ts'
import { drawDesign, foreignPlant } from './foreign.ts'
import { type Level, ownPlant, type Plant, type Truth } from './plant.ts'

/** A normal number by the polar-free form of Box and Muller. */
export const normal = (random: () => number) =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())

/** Whose machines are drawn: the model's own, or those of a plant of another structure. */
export const STRUCTURES = ['own', 'foreign'] as const
export type Structure = (typeof STRUCTURES)[number]

function drawOwn(preset: Preset, share: number, random: () => number): Plant {
  const off = (name: keyof Deviations) => 1 + SPREAD[name] * share * normal(random)
  return ownPlant(preset, {
    ...NO_DEVIATIONS,
    condenserConductance: off('condenserConductance'),
    evaporatorConductance: off('evaporatorConductance'),
    volumetric: off('volumetric'),
    isentropic: off('isentropic'),
    device: off('device'),
  })
}

const TRIES = 200
/** Share of the capacity that a fault costs which must be found. */
export const MATTERS = 0.1

/**
 * A machine unlike the model's own, in some weather, with one cause at some severity; a state that
 * stops is drawn again.
 *
 * @param level - A machine that is known lies nearer to the model than one of the same kind.
 */
export function drawTruth(
  preset: Preset,
  priors: 'equal' | 'usual',
  level: Level,
  random: () => number,
  structure: Structure = 'own',
): Truth {
  const cause = drawCause(preset, priors, random)
  const matters = random() < 0.7
  for (let attempt = 0; attempt < TRIES; attempt += 1) {
    const found = attemptTruth(
      { preset, cause, level, structure, mustMatter: matters && attempt < TRIES / 2 },
      random,
    )
    if (found) return found
  }
  throw new Error(`${preset.machine.id} stops whatever is drawn.`)
}

interface Wanted {
  readonly preset: Preset
  readonly cause: Cause
  readonly level: Level
  readonly structure: Structure
  readonly mustMatter: boolean
}

function attemptTruth(
  { preset, cause, level, structure, mustMatter }: Wanted,
  random: () => number,
): Truth | undefined {
  const within = (from: number, to: number) => from + (to - from) * random()
  const share = level === 'model' ? 0.3 : 1
  const plant =
    structure === 'own' ? drawOwn(preset, share, random) : foreignPlant(drawDesign(preset, random))
  const vehicle = preset.nominal.speed < 40
  const readConditions: Conditions = {
    ...preset.nominal,
    ambientK: within(295, 315),
    returnAirK: within(294, 306),
    returnHumidity: within(0.3, 0.7),
    speed: vehicle ? within(17, 40) : preset.nominal.speed,
  }
  const conditions: Conditions = {
    ...readConditions,
    ambientK: readConditions.ambientK + SPREAD.ambientK * normal(random),
    returnAirK: readConditions.returnAirK + SPREAD.returnAirK * normal(random),
    returnHumidity: Math.min(
      0.95,
      Math.max(0.1, readConditions.returnHumidity + SPREAD.returnHumidity * normal(random)),
    ),
    speed: readConditions.speed * (1 + 0.02 * normal(random)),
    condenserFan: 1 + SPREAD.condenserFan * share * normal(random),
    blower: 1 + SPREAD.blower * share * normal(random),
  }
  const isFault = cause !== 'none' && cause !== 'reading-or-test-wrong'
  const severity = isFault ? within(0.05, 1) : 0
  const shown = plant(conditions, cause, severity)
  if (shown === undefined) return undefined
  const sound = isFault ? plant(conditions, 'none', 0) : shown
  if (sound === undefined) return undefined
  const impact = isFault ? 1 - shown.capacity / sound.capacity : 0
  // half of the faults must matter, if they can
  if (isFault && mustMatter && impact < MATTERS) return undefined
  return {
    preset,
    plant,
    cause,
    severity,
    impact,
    charge: shown.features[FEATURES.indexOf('chargeShare')] as number,
    conditions,
    readConditions,
    mistake: cause === 'reading-or-test-wrong' ? drawMistake(random) : undefined,
    features: shown.features,
  }
}

function drawCause({ machine }: Preset, priors: 'equal' | 'usual', random: () => number): Cause {
  const causes: readonly Cause[] = ['none', 'reading-or-test-wrong', ...faultsOf(machine)]
  const weight = (cause: Cause) => (priors === 'equal' ? 1 : (USUAL_PRIORS[cause] ?? 0))
  let left = random() * causes.reduce((sum, cause) => sum + weight(cause), 0)
  for (const cause of causes) {
    left -= weight(cause)
    if (left < 0) return cause
  }
  return 'none'
}

/** Readings with the noise of instruments; of a mistaken test one of them is far off. */
export function withNoise(
  truth: Truth,
  sigma: (feature: Feature) => number,
  random: () => number,
): Float64Array {
  const read = truth.features.map(
    (value, i) => value + sigma(FEATURES[i] as Feature) * normal(random),
  )
  const { mistake } = truth
  if (mistake) {
    const at = FEATURES.indexOf(mistake.feature)
    read[at] = (read[at] as number) + mistake.by
  }
  return read
}

/** How far one reading can be off: by a gauge on the wrong scale, a probe on the wrong pipe. */
const MISTAKES = [
  ['lowSidePa', 1e5],
  ['highSidePa', 4e5],
  ['suctionLineK', 12],
  ['liquidLineK', 12],
] as const satisfies readonly (readonly [Feature, number])[]

/** @param set - The readings of which one is mistaken. */
export function drawMistake(
  random: () => number,
  set: readonly Feature[] = FEATURES,
): Truth['mistake'] {
  const among = MISTAKES.filter(([feature]) => set.includes(feature))
  const [feature, least] = among[Math.floor(random() * among.length)] ?? MISTAKES[0]
  return { feature, by: (random() < 0.5 ? -1 : 1) * least * (1 + random()) }
}
