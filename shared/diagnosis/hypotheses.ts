import figures from '../../data/service/diagnosis.json' with { type: 'json' }
import type { Guess } from '../cycle/evaluate.ts'
import {
  type Case,
  type Conditions,
  type Deviations,
  type FaultKind,
  faultOf,
  faultsOf,
  type Machine,
  NO_DEVIATIONS,
  NO_FAULTS,
  run,
  stateOf,
} from '../cycle/index.ts'
import { FEATURES, featuresOf } from './features.ts'

/** What may be the matter: one fault, none, or the readings themselves. */
export type Cause = FaultKind | 'none' | 'reading-or-test-wrong'

/** One cause at one severity, with what it would show. */
export interface Hypothesis {
  readonly cause: Cause
  /** 0 to 1; 0 where there is nothing to be severe. */
  readonly severity: number
  /** Expected readings, in the order of FEATURES. */
  readonly mean: Float64Array
  /** Spread of them by what is not known of machine and test, row by row; instruments left out. */
  readonly covariance: Float64Array
}

/** How well the machine is known: by readings of its own when it was sound, or by its kind alone. */
export type Knowledge = 'known' | 'roughly'

const SEVERITIES = [0.1, 0.2, 0.3, 0.4, 0.5, 0.65, 0.8, 1]
/** Severity at which the spread of a fault's readings is taken; it changes little along it. */
const SPREAD_AT = 0.4
/** A mistake can move a reading by so many times the spread and the instrument together. */
const MISTAKE = 6

/**
 * What every fault of a machine would show in some weather, at rising severity, with the spread by
 * all that is not known: coils, compressor, device, air flows, humidity, temperatures, speed, charge.
 * A state that a cut-out stops is left out: a machine that was read was running.
 *
 * Some 200 solves; empty only where not even the sound machine runs.
 */
export function hypotheses(
  machine: Machine,
  conditions: Conditions,
  knowledge: Knowledge,
): readonly Hypothesis[] {
  const sound: Case = { machine, conditions, faults: NO_FAULTS, deviations: NO_DEVIATIONS }
  const whole = shownIn(sound)
  if (whole === undefined) return []
  const { mean } = whole
  const covariance = spreadOf(sound, whole, knowledge)
  const found: Hypothesis[] = [
    { cause: 'none', severity: 0, mean, covariance },
    {
      cause: 'reading-or-test-wrong',
      severity: 0,
      mean,
      covariance: covariance.map((value) => value * MISTAKE * MISTAKE),
    },
  ]
  for (const cause of faultsOf(machine)) {
    const at = (severity: number): Case => ({
      ...sound,
      faults: faultOf(machine, cause, severity),
    })
    const middle = shownIn(at(SPREAD_AT), whole.near)
    const spread = middle === undefined ? covariance : spreadOf(at(SPREAD_AT), middle, knowledge)
    let { near } = whole
    for (const severity of SEVERITIES) {
      const shown = shownIn(at(severity), near)
      if (shown === undefined) continue
      found.push({ cause, severity, mean: shown.mean, covariance: spread })
      near = shown.near
    }
  }
  return found
}

/** Readings, with the state that a next solve near by starts from. */
interface Shown {
  readonly mean: Float64Array
  readonly near: Guess
}

function shownIn(asked: Case, near?: Guess): Shown | undefined {
  const outcome = run(asked, near)
  if (outcome.kind === 'high-pressure-trip' || outcome.kind === 'low-pressure-trip')
    return undefined
  const state = stateOf(outcome)
  if (state === undefined) return undefined
  return { mean: featuresOf(state), near: state.solution.trial.guess }
}

type Nudge = readonly [size: number, apply: (asked: Case, size: number) => Case]

const { spread } = figures
const deviation =
  (name: keyof Deviations): Nudge[1] =>
  (asked, size) => ({ ...asked, deviations: { ...asked.deviations, [name]: 1 + size } })
const share =
  (name: 'condenserFan' | 'blower' | 'speed'): Nudge[1] =>
  (asked, size) => ({
    ...asked,
    conditions: { ...asked.conditions, [name]: asked.conditions[name] * (1 + size) },
  })
const shift =
  (name: 'returnHumidity' | 'returnAirK' | 'ambientK'): Nudge[1] =>
  (asked, size) => ({
    ...asked,
    conditions: { ...asked.conditions, [name]: asked.conditions[name] + size },
  })

/** What differs from machine to machine, less so where this one is known. */
const OF_THE_MACHINE: readonly Nudge[] = [
  [spread.condenserConductance, deviation('condenserConductance')],
  [spread.evaporatorConductance, deviation('evaporatorConductance')],
  [spread.volumetric, deviation('volumetric')],
  [spread.isentropic, deviation('isentropic')],
  [spread.device, deviation('device')],
  [spread.condenserFan, share('condenserFan')],
  [spread.blower, share('blower')],
  [
    spread.charge,
    (asked, size) => ({
      ...asked,
      faults: { ...asked.faults, charge: asked.faults.charge * (1 + size) },
    }),
  ],
]
/** What differs from test to test, however well the machine is known. */
const OF_THE_TEST: readonly Nudge[] = [
  [spread.speed * spread.knownMachineShare, share('speed')],
  [spread.returnHumidity, shift('returnHumidity')],
  [spread.returnAirK, shift('returnAirK')],
  [spread.ambientK, shift('ambientK')],
]

/** J Λ Jᵀ, the columns of J by a difference each. What trips when nudged adds nothing. */
function spreadOf(asked: Case, { mean, near }: Shown, knowledge: Knowledge): Float64Array {
  const n = FEATURES.length
  const covariance = new Float64Array(n * n)
  const part = knowledge === 'known' ? spread.knownMachineShare : 1
  const nudges = [
    ...OF_THE_MACHINE.map(([size, apply]): Nudge => [size * part, apply]),
    ...OF_THE_TEST,
  ]
  for (const [size, apply] of nudges) {
    // the nearer the difference, the less it runs over a corner
    const step = size / 2
    const moved = shownIn(apply(asked, step), near)?.mean
    if (moved === undefined) continue
    const column = moved.map((value, i) => (value - (mean[i] as number)) * 2)
    for (let i = 0; i < n; i += 1) {
      for (let j = 0; j < n; j += 1) {
        covariance[i * n + j] =
          (covariance[i * n + j] as number) + (column[i] as number) * (column[j] as number)
      }
    }
  }
  return covariance
}
