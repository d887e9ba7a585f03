import {
  type Case,
  counting,
  type Faults,
  type Nearby,
  type Outcome,
  runInPieces,
  runNext,
  stateOf,
} from '../../cycle/index.ts'
import type { Machine } from '../../cycle/types.ts'
import { FEATURES, featuresOf, USUAL_CANDIDATES } from '../../diagnosis/index.ts'
import { CalcError } from '../../errors.ts'
import type { Place } from '../../instrument/index.ts'
import type { InPieces } from '../../pieces.ts'
import { requireSetting, shownSize, sizeOf, withoutFault, withSize, worstOf } from './faults.ts'
import { type Setting, type SimulateInput, SWEEPS, type SweepName, USUAL_POINTS } from './fields.ts'
import { viewOf } from './view.ts'

/** One size of the fault that is led over a range, with what the machine does then. */
interface SweepRow {
  readonly size: number
  readonly outcome: Outcome
  /** Whether a usual instrument shows a difference from the machine without this fault. */
  readonly moved: boolean
}

export interface Sweep {
  readonly name: SweepName
  readonly setting: Setting
  readonly rows: readonly SweepRow[]
  /** Sizes at both ends of the longest run of rows that did not move; two rows at least. */
  readonly plateau: readonly [from: number, to: number] | undefined
}

/** Trials of one sweep: 60 rows in usual weather take up to 1600, a hard row in odd weather up to 3000. */
export const MOST_TRIALS = 3_000

/** Cases that are solved already, so that none is solved twice. */
export type Known = readonly (readonly [Faults, Outcome])[]

/** What a machine does with some faults: as it was solved before, else solved now. */
export function* outcomeOf(asked: Case, known: Known = []): InPieces<Outcome> {
  const found = known.find(([faults]) => sameFaults(faults, asked.faults))
  return found?.[1] ?? (yield* runInPieces(asked))
}

const sameFaults = (a: Faults, b: Faults) =>
  ([a, b] as const).every((one) =>
    (Object.keys(one) as (keyof Faults)[]).every((name) => a[name] === b[name]),
  )

/** What is asked of a sweep. */
interface Range {
  readonly name: SweepName
  readonly setting: Setting
  readonly from: number
  readonly to: number
  readonly points: number
}

/**
 * The range of a sweep; nothing where none is asked for.
 *
 * @throws {CalcError} `bad-input` for ends without a fault that they belong to, and for equal ends;
 *   `refused` for a fault that the machine cannot have.
 */
export function rangeOf(
  machine: Machine,
  input: Pick<SimulateInput, 'sweep' | 'sweepFrom' | 'sweepTo' | 'sweepPoints'>,
): Range | undefined {
  const { sweep: name, sweepFrom, sweepTo, sweepPoints: points = USUAL_POINTS } = input
  if (name === undefined) {
    const stray = (['sweepFrom', 'sweepTo', 'sweepPoints'] as const).find((field) => input[field])
    if (stray === undefined) return undefined
    throw new CalcError('missing-input', 'There is a range, and no fault that it is of.', {
      path: ['sweep'],
      hint: 'Say which: charge, condenser-air, restriction and so on.',
    })
  }
  const setting = SWEEPS[name]
  requireSetting(setting, machine, 'sweep')
  const usual = worstOf(setting, machine)
  const from = sweepFrom ? sizeOf(setting, sweepFrom, machine, 'sweepFrom') : usual[0]
  const to = sweepTo ? sizeOf(setting, sweepTo, machine, 'sweepTo') : usual[1]
  if (from === to) {
    throw new CalcError('bad-input', 'The sweep begins where it ends.', {
      path: ['sweepTo'],
      hint: 'Give two sizes that differ.',
    })
  }
  return { name, setting, from, to, points }
}

/**
 * One fault over a range, all else as in the case. Each row starts from the state of the one before.
 *
 * @param known - Outcomes of the case with other faults that are there already.
 * @param most - Trials that it may take.
 * @throws {CalcError} `bad-input` for more points than the work allows in this weather.
 */
export function* sweepOf(
  asked: Case,
  { name, setting, from, to, points }: Range,
  known: Known = [],
  most = MOST_TRIALS,
): InPieces<Sweep> {
  const without = { ...asked, faults: withoutFault(asked.faults, setting) }
  const reference = yield* outcomeOf(without, known)
  let near: Nearby = { outcome: reference }
  let trials = 0
  const rows: SweepRow[] = []
  for (let index = 0; index < points; index += 1) {
    const size = from + ((to - from) * index) / (points - 1)
    const faults = withSize(asked.faults, setting, size)
    yield
    const row = yield* counting(runNext({ ...asked, faults }, near), most - trials)
    if (row === undefined) throw tooMuch(index)
    trials += row.trials
    near = row.value
    const { outcome } = near
    rows.push({ size, outcome, moved: moves(reference, outcome) })
  }
  return { name, setting, rows, plateau: plateauOf(rows) }
}

const tooMuch = (done: number) =>
  new CalcError('bad-input', 'In this weather such a sweep is more than is computed at once.', {
    path: ['sweepPoints'],
    hint: `Give fewer points, ${Math.max(2, done)} or so, a shorter range, or more usual weather.`,
  })

/** Some reading lies further away than its instrument tells (1 σ). Weighing is no reading here. */
function moves(reference: Outcome, outcome: Outcome): boolean {
  const [before, now] = [stateOf(reference), stateOf(outcome)]
  if (before === undefined || now === undefined || reference.kind !== outcome.kind) return true
  const [a, b] = [featuresOf(before), featuresOf(now)]
  return USUAL_CANDIDATES.some(({ feature, sigma }) => {
    const index = FEATURES.indexOf(feature)
    return feature !== 'chargeShare' && Math.abs((b[index] ?? 0) - (a[index] ?? 0)) > sigma
  })
}

function plateauOf(rows: readonly SweepRow[]): Sweep['plateau'] {
  let best: readonly SweepRow[] = []
  let open: SweepRow[] = []
  for (const row of rows) {
    open = row.moved ? [] : [...open, row]
    if (open.length > best.length) best = open
  }
  const [first, last] = [best[0], best.at(-1)]
  if (first === undefined || last === undefined || first === last) return undefined
  return first.size < last.size ? [first.size, last.size] : [last.size, first.size]
}

/** A sweep as it is shown. */
export function shownSweep({ name, setting, rows, plateau }: Sweep, place: Place) {
  const shown = (si: number) => shownSize(setting, si)
  return {
    fault: name,
    unit: shown(0).kind,
    plateau: plateau && { from: shown(plateau[0]), to: shown(plateau[1]) },
    rows: rows.map(({ size, outcome, moved }) => {
      const { capacity, running } = viewOf(outcome, place)
      const { readings, performance, storeLevel } = running ?? {}
      return {
        size: shown(size),
        state: outcome.kind,
        moved,
        suctionPressure: readings?.suctionPressure,
        dischargePressure: readings?.dischargePressure,
        superheat: readings?.superheat,
        subcooling: readings?.subcooling,
        dischargeTemperature: readings?.dischargeTemperature,
        liquidTemperature: readings?.liquidTemperature,
        ventTemperature: readings?.ventTemperature,
        capacity,
        power: performance?.power,
        storeLevel,
      }
    }),
  }
}
