import {
  type Conditions,
  capacityOf,
  type Deviations,
  faultOf,
  faultsOf,
  NO_FAULTS,
  type Preset,
  run,
  stateOf,
} from '../../shared/cycle/index.ts'
import { FEATURES, type Feature, featuresOf } from '../../shared/diagnosis/features.ts'
import { cholesky, forward } from '../../shared/diagnosis/gaussian.ts'
import type { Cause } from '../../shared/diagnosis/hypotheses.ts'
import { nominalEffects } from '../../shared/diagnosis/kinds.ts'
import { NUISANCES, type Nuisance, OF_THE_TEST, SPREAD } from '../../shared/diagnosis/nuisance.ts'

/** How well the diagnosis knows the machine that it is asked about. */
export const LEVELS = ['model', 'baseline', 'kind', 'unknown'] as const
export type Level = (typeof LEVELS)[number]

/** What is read, from two gauges and the air to everything. */
export const SETS = {
  gauges: ['lowSidePa', 'highSidePa'],
  usual: ['lowSidePa', 'highSidePa', 'suctionLineK', 'liquidLineK', 'ventK'],
  all: FEATURES.filter((feature) => feature !== 'chargeShare'),
} as const satisfies Readonly<Record<string, readonly Feature[]>>
export type SetName = keyof typeof SETS

/** 1 σ of the instruments that the program assumes where no ± is given. */
export const SIGMA: Readonly<Record<Feature, number>> = {
  lowSidePa: 6894.757 / 2,
  highSidePa: (4 * 6894.757) / 2,
  suctionLineK: 0.556,
  liquidLineK: 0.556,
  deviceInletK: 0.556,
  evaporatorOutletK: 0.556,
  dischargeLineK: 0.556,
  ventK: 0.3,
  condenserAirK: 0.3,
  chargeShare: 0.02,
}

/** What a plant shows in some state. */
export interface Shown {
  readonly features: Float64Array
  /** W */
  readonly capacity: number
}

/** A machine as it stands: what it shows with a cause; undefined where it stops or has no state. */
export type Plant = (conditions: Conditions, cause: Cause, severity: number) => Shown | undefined

/** One machine with what it has, as it is and as it was sound. */
export interface Truth {
  readonly preset: Preset
  readonly plant: Plant
  readonly cause: Cause
  readonly severity: number
  /** Share of the capacity that it costs. */
  readonly impact: number
  readonly charge: number
  /** As they are; and as they are read. */
  readonly conditions: Conditions
  readonly readConditions: Conditions
  /** Of a mistaken test: the reading that is far off, and by how much. */
  readonly mistake?: { readonly feature: Feature; readonly by: number } | undefined
  /** Without noise. */
  readonly features: Float64Array
}

/** A machine of the model itself, as far from its nominal one as the deviations say. */
export const ownPlant =
  ({ machine }: Preset, deviations: Deviations): Plant =>
  (conditions, cause, severity) => {
    const faults =
      cause === 'none' || cause === 'reading-or-test-wrong'
        ? NO_FAULTS
        : faultOf(machine, cause, severity)
    const outcome = run({ machine, conditions, deviations, faults })
    if (outcome.kind === 'high-pressure-trip' || outcome.kind === 'low-pressure-trip')
      return undefined
    const state = stateOf(outcome)
    return state && { features: featuresOf(state), capacity: capacityOf(outcome) }
  }

const GRID = [0.1, 0.25, 0.4, 0.6, 0.8, 1]

/** What the same machine would show sound, and with every other fault at any severity. */
export function otherClasses(truth: Truth): readonly Float64Array[] {
  const shown = (cause: Cause, severity: number) =>
    truth.plant(truth.conditions, cause, severity)?.features
  const sound = truth.cause === 'none' ? undefined : shown('none', 0)
  const faults = faultsOf(truth.preset.machine)
    .filter((cause) => cause !== truth.cause)
    .flatMap((cause) => GRID.map((severity) => shown(cause, severity)))
  return [sound, ...faults].filter((features) => features !== undefined)
}

/**
 * Least distance of the true readings, without noise, from the sound machine and from every other
 * fault of the same machine at any severity, in standard deviations of instruments, test and of
 * what is not known of the machine.
 */
export function distanceFrom(
  others: readonly Float64Array[],
  truth: Truth,
  set: readonly Feature[],
  level: Level,
): number {
  const index = set.map((feature) => FEATURES.indexOf(feature))
  const factor = cholesky(noiseOf(truth, set, level), set.length)
  return others.reduce((least, other) => {
    const gap = Float64Array.from(
      index,
      (i) => (truth.features[i] as number) - (other[i] as number),
    )
    return Math.min(least, Math.sqrt(forward(factor, gap).reduce((sum, v) => sum + v * v, 0)))
  }, Number.POSITIVE_INFINITY)
}

/** Covariance of readings by instruments, test and machine. */
function noiseOf({ preset }: Truth, set: readonly Feature[], level: Level): Float64Array {
  const m = set.length
  const columns = nominalEffects(preset.machine.id)[0]?.columns ?? []
  const share = level === 'model' || level === 'baseline' ? 0.3 : 1
  const size = (name: Nuisance) =>
    (OF_THE_TEST as readonly Nuisance[]).includes(name)
      ? name === 'speed'
        ? 0.03
        : SPREAD[name]
      : SPREAD[name] * share
  const total = new Float64Array(m * m)
  for (let a = 0; a < m; a += 1) {
    for (let b = 0; b < m; b += 1) {
      NUISANCES.forEach((name, k) => {
        const column = columns[k] as Float64Array
        const [i, j] = [FEATURES.indexOf(set[a] as Feature), FEATURES.indexOf(set[b] as Feature)]
        total[a * m + b] =
          (total[a * m + b] as number) +
          size(name) ** 2 * (column[i] as number) * (column[j] as number)
      })
    }
    total[a * m + a] = (total[a * m + a] as number) + SIGMA[set[a] as Feature] ** 2
  }
  return total
}
