import {
  type Case,
  type Conditions,
  capacityOf,
  type FaultKind,
  faultOf,
  faultsOf,
  type Machine,
  type Nearby,
  NO_DEVIATIONS,
  NO_FAULTS,
  run,
  runNear,
  stateOf,
} from '../cycle/index.ts'
import { FEATURES, featuresOf } from './features.ts'
import { moved, NUISANCES, type Nuisance, SPREAD } from './nuisance.ts'

/** What a fault of some severity shows on a machine like the model, SI. */
export interface Effect {
  readonly cause: FaultKind | 'none'
  /** 0 to 1; 0 where there is nothing to be severe. */
  readonly severity: number
  /** Share of the capacity that it costs, in this weather; below 0 where it adds some. */
  readonly impact: number
  /** Readings, in the order of FEATURES. */
  readonly mean: Float64Array
  /** Change of the readings for a whole unit of each of NUISANCES, in their order. */
  readonly columns: Columns
}

export type Columns = readonly Float64Array[]

/** Severity at which the columns of a fault are taken; they change little along it. */
const COLUMNS_AT = 0.4

/** Where the columns of an effect come from: differences of their own, or some that were made before. */
type ColumnsFrom = 'differences' | ((cause: FaultKind | 'none') => Columns | undefined)

/**
 * The sound machine, then every fault that it can have at rising severity. A state that a cut-out
 * stops is left out: a machine that was read was running.
 *
 * @returns empty where not even the sound machine runs.
 */
export function effectsOf(
  machine: Machine,
  conditions: Conditions,
  severitiesOf: (cause: FaultKind) => readonly number[],
  columnsFrom: ColumnsFrom = 'differences',
  sizes: Readonly<Record<Nuisance, number>> = SPREAD,
  causes: readonly FaultKind[] = faultsOf(machine),
): readonly Effect[] {
  const sound: Case = { machine, conditions, faults: NO_FAULTS, deviations: NO_DEVIATIONS }
  const whole = shownIn(sound)
  if (whole === undefined) return []
  const given = (cause: FaultKind | 'none') =>
    columnsFrom === 'differences' ? undefined : columnsFrom(cause)
  const columns = given('none') ?? columnsOf(sound, whole, sizes)
  const found: Effect[] = [{ cause: 'none', severity: 0, impact: 0, mean: whole.mean, columns }]
  for (const cause of causes) {
    const at = (severity: number): Case => ({
      ...sound,
      faults: faultOf(machine, cause, severity),
    })
    let own = given(cause)
    if (own === undefined && columnsFrom === 'differences') {
      const middle = shownIn(at(COLUMNS_AT), whole.near)
      own = middle && columnsOf(at(COLUMNS_AT), middle, sizes)
    }
    let before = { ...whole, severity: 0 }
    for (const severity of severitiesOf(cause)) {
      let shown = shownNear(at(severity), before.near)
      if (shown === undefined) {
        const middle = before.severity + 0.5 * (severity - before.severity)
        const half = shownNear(at(middle), before.near)
        shown = half && half !== 'stopped' ? shownNear(at(severity), half.near) : undefined
        shown ??= shownIn(at(severity))
      }
      // worse ones stop, too
      if (shown === undefined || shown === 'stopped') break
      const impact = 1 - shown.capacity / whole.capacity
      found.push({ cause, severity, impact, mean: shown.mean, columns: own ?? columns })
      before = { ...shown, severity }
    }
  }
  return found
}

/** Readings, with the state that a next solve near by starts from. */
interface Shown {
  readonly mean: Float64Array
  /** W */
  readonly capacity: number
  readonly near: Nearby
}

/** What the sound machine shows in some weather; undefined where it does not run. */
export const soundReadings = (machine: Machine, conditions: Conditions) =>
  shownIn({ machine, conditions, faults: NO_FAULTS, deviations: NO_DEVIATIONS })?.mean

function shownIn(asked: Case, near?: Nearby): Shown | undefined {
  const found = near === undefined ? shownBy({ outcome: run(asked) }) : shownNear(asked, near)
  return found === 'stopped' ? undefined : found
}

/** From a state near by; undefined where that leads nowhere, which a shorter step might not. */
function shownNear(asked: Case, near: Nearby): Shown | 'stopped' | undefined {
  const found = runNear(asked, near)
  return found && shownBy(found)
}

/** What is shown while it runs; `stopped` by a cut-out, or without refrigerant. */
function shownBy(found: Nearby): Shown | 'stopped' {
  const { outcome } = found
  const state = stateOf(outcome)
  if (
    state === undefined ||
    outcome.kind === 'high-pressure-trip' ||
    outcome.kind === 'low-pressure-trip'
  ) {
    return 'stopped'
  }
  return { mean: featuresOf(state), capacity: capacityOf(outcome), near: found }
}

/** Columns of a fault at some severity in some weather, by differences there; undefined where it does not run. */
export function columnsAt(
  machine: Machine,
  conditions: Conditions,
  cause: FaultKind,
  severity: number,
): Columns | undefined {
  const faults = faultOf(machine, cause, severity)
  const asked: Case = { machine, conditions, faults, deviations: NO_DEVIATIONS }
  const shown = shownIn(asked)
  return shown && columnsOf(asked, shown, SPREAD)
}

/** A difference each, over half its spread: the nearer, the less it runs over a corner. What trips adds nothing. */
function columnsOf(
  asked: Case,
  { mean, near }: Shown,
  sizes: Readonly<Record<Nuisance, number>>,
): Columns {
  return NUISANCES.map((name) => {
    const step = sizes[name] / 2
    const other = shownIn(moved(asked, name, step), near)?.mean
    if (other === undefined) return new Float64Array(FEATURES.length)
    return other.map((value, i) => (value - (mean[i] as number)) / step)
  })
}
