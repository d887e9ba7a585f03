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
  type Outcome,
  run,
  runFromCoils,
  runNearInPieces,
  stateOf,
} from '../cycle/index.ts'
import { atOnce, type InPieces } from '../pieces.ts'
import { FEATURES, featuresOf } from './features.ts'
import { moved, NUISANCES, type Nuisance, OF_THE_TEST, SPREAD } from './nuisance.ts'

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
  /** Of one that was solved: where, and the state that others near by start from. */
  readonly solved?: { readonly severity: number; readonly near: Nearby }
}

export type Columns = readonly Float64Array[]

/** Severity at which the columns of a fault are taken; they change little along it. */
const COLUMNS_AT = 0.4

/** Columns that were made before. */
type ColumnsGiven = (cause: FaultKind | 'none') => Columns | undefined

/**
 * Where the columns of an effect come from: differences of their own, some that were made before, or
 * differences for what the test leaves open and some made before for what the machine does.
 */
type ColumnsFrom = 'differences' | ColumnsGiven | { readonly ofTheMachine: ColumnsGiven }

/**
 * The sound machine, then every fault that it can have at rising severity. A state that a cut-out
 * stops is left out: a machine that was read was running.
 *
 * @returns empty where not even the sound machine runs.
 */
export const effectsOf = (...asked: Parameters<typeof effectsInPieces>): readonly Effect[] =>
  atOnce(effectsInPieces(...asked))

/**
 * The same with a pause after every few states.
 *
 * @param solved - How the sound machine ends up, where that is known.
 */
export function* effectsInPieces(
  machine: Machine,
  conditions: Conditions,
  severitiesOf: (cause: FaultKind) => readonly number[],
  columnsFrom: ColumnsFrom = 'differences',
  sizes: Readonly<Record<Nuisance, number>> = SPREAD,
  causes: readonly FaultKind[] = faultsOf(machine),
  solved?: Outcome,
): InPieces<readonly Effect[]> {
  const sound: Case = { machine, conditions, faults: NO_FAULTS, deviations: NO_DEVIATIONS }
  const whole = running(shownBy({ outcome: solved ?? run(sound) }))
  if (whole === undefined) return []
  const given = (cause: FaultKind | 'none') =>
    typeof columnsFrom === 'function' ? columnsFrom(cause) : undefined
  const ofTheMachine = typeof columnsFrom === 'object' ? columnsFrom.ofTheMachine : undefined
  function* taken(cause: FaultKind | 'none', where: Case, shown: Shown): InPieces<Columns> {
    const before = ofTheMachine?.(cause)
    return before === undefined
      ? yield* columnsOf(where, shown, sizes)
      : withTest(before, yield* columnsOf(where, shown, sizes, OF_THE_TEST))
  }
  const columns = given('none') ?? (yield* taken('none', sound, whole))
  const found: Effect[] = [
    {
      cause: 'none',
      severity: 0,
      impact: 0,
      mean: whole.mean,
      columns,
      solved: { severity: 0, near: whole.near },
    },
  ]
  for (const cause of causes) {
    const at = (severity: number): Case => ({
      ...sound,
      faults: faultOf(machine, cause, severity),
    })
    const rising = yield* risingOf(at, whole, severitiesOf(cause))
    let own = given(cause)
    if (own === undefined && typeof columnsFrom !== 'function') {
      const middle =
        rising.find(({ severity }) => severity === COLUMNS_AT) ??
        (yield* shownNear(at(COLUMNS_AT), whole.near))
      const shown = running(middle)
      own = shown && (yield* taken(cause, at(COLUMNS_AT), shown))
    }
    for (const { severity, mean, capacity, near } of rising) {
      const impact = 1 - capacity / whole.capacity
      const state = { severity, near }
      found.push({ cause, severity, impact, mean, columns: own ?? columns, solved: state })
    }
  }
  return found
}

/** A fault at rising severity, each from the one before, until one stops the machine or is not found. */
function* risingOf(
  at: (severity: number) => Case,
  whole: Shown,
  severities: readonly number[],
): InPieces<readonly (Shown & { readonly severity: number })[]> {
  const found: (Shown & { readonly severity: number })[] = []
  let before = { ...whole, severity: 0 }
  for (const severity of severities) {
    yield
    let shown = yield* shownNear(at(severity), before.near)
    if (shown === undefined) {
      const middle = before.severity + 0.5 * (severity - before.severity)
      const half = running(yield* shownNear(at(middle), before.near))
      shown = half
        ? yield* shownNear(at(severity), half.near)
        : shownBy(yield* runFromCoils(at(severity)))
    }
    // worse ones stop, too
    if (shown === undefined || shown === 'stopped') break
    before = { ...shown, severity }
    found.push(before)
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
  running(
    shownBy({
      outcome: run({ machine, conditions, faults: NO_FAULTS, deviations: NO_DEVIATIONS }),
    }),
  )?.mean

const running = (shown: Shown | 'stopped' | undefined) => (shown === 'stopped' ? undefined : shown)

/** From a state near by; undefined where that leads nowhere, which a shorter step might not. */
function* shownNear(asked: Case, near: Nearby): InPieces<Shown | 'stopped' | undefined> {
  return shownBy(yield* runNearInPieces(asked, near))
}

/** What is shown while it runs; `stopped` by a cut-out, or without refrigerant; nothing of no state. */
function shownBy(found: Nearby | undefined): Shown | 'stopped' | undefined {
  if (found === undefined) return undefined
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

/** The columns of an effect with those of the test taken where it was solved, by differences there. */
export function withTestColumns(
  machine: Machine,
  conditions: Conditions,
  { cause, columns, solved }: Effect,
): Columns {
  const shown = running(shownBy(solved?.near))
  if (solved === undefined || shown === undefined) return columns
  const faults = cause === 'none' ? NO_FAULTS : faultOf(machine, cause, solved.severity)
  const asked: Case = { machine, conditions, faults, deviations: NO_DEVIATIONS }
  return withTest(columns, atOnce(columnsOf(asked, shown, SPREAD, OF_THE_TEST)))
}

/** Columns with those of OF_THE_TEST in their places. */
const withTest = (columns: Columns, ofTheTest: Columns): Columns =>
  columns.map(
    (column, k) =>
      ofTheTest[(OF_THE_TEST as readonly Nuisance[]).indexOf(NUISANCES[k] as Nuisance)] ?? column,
  )

/** A difference each, over half its spread: the nearer, the less it runs over a corner. What trips adds nothing. */
function* columnsOf(
  asked: Case,
  { mean, near }: Shown,
  sizes: Readonly<Record<Nuisance, number>>,
  names: readonly Nuisance[] = NUISANCES,
): InPieces<Columns> {
  const columns: Float64Array[] = []
  for (const name of names) {
    yield
    const step = sizes[name] / 2
    const other = running(yield* shownNear(moved(asked, name, step), near))?.mean
    columns.push(
      other?.map((value, i) => (value - (mean[i] as number)) / step) ??
        new Float64Array(FEATURES.length),
    )
  }
  return columns
}
