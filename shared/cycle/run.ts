import { ZERO_CELSIUS_K } from '../gas-constants.ts'
import { atOnce, type InPieces } from '../pieces.ts'
import type { Solution } from './branch.ts'
import { clutchOpens, cycle, type Swing, swingOf } from './clutch.ts'
import type { Guess } from './evaluate.ts'
import type { Outcome } from './outcome.ts'
import { stateOf } from './readings.ts'
import { type Running, running } from './running.ts'
import {
  findBelow,
  nothingBalances,
  type Rungs,
  searchBelow,
  settled,
  standsFirm,
  tripsPlainly,
} from './scan.ts'
import { type Setup, setUp } from './setup.ts'
import { MOST_STARTS, solveFrom, solveSteady, solvingAnyhow, solvingFrom } from './solve.ts'
import type { Case, Controls } from './types.ts'

/**
 * What a machine does in the case asked. `start` is a state near by, for sweeps: it makes a steady
 * state quicker to find. Where controls take part it could lead to another of several states, so that
 * those are always sought from the beginning. Of two steady states, which are rare, that is the one
 * that the search from the coils' own temperatures comes to, and with a start the one beside it.
 */
export function run(asked: Case, start?: Guess): Outcome {
  if (start !== undefined) {
    const near = beside(asked, start)
    if (near?.kind === 'steady') return near
  }
  return atOnce(runInPieces(asked))
}

/**
 * The same with pauses where a state has to be searched for, which may take as long as a hundred others.
 *
 * @param near - What was found from a state near by: it is the answer where its state is this one.
 */
export function* runInPieces(asked: Case, near?: Nearby): InPieces<Outcome> {
  const setup = setUp(asked)
  const { controls } = setup.machine
  const steady = yield* steadyState(setup)
  if (steady === 'tripped') {
    return { kind: 'high-pressure-trip', limitPa: controls.highCutOutPa }
  }
  if (steady === undefined) return withoutSteady(setup)
  return near?.free && isSame(near.free, steady.trial.guess) ? near.outcome : judged(setup, steady)
}

/** Two solves of one state differ by less, as a share. */
const SAME = 1e-6

const isSame = (a: Guess, b: Guess) =>
  Math.abs(a.suctionPa / b.suctionPa - 1) < SAME &&
  Math.abs(a.dischargePa / b.dischargePa - 1) < SAME

/** Straight from a state near by; nothing where that leads to none, or to one that is not the only one. */
function beside(asked: Case, start: Guess): Outcome | undefined {
  const setup = setUp(asked)
  const found = solveFrom(setup, start)
  return found && standsFirm(setup, found) ? judged(setup, found) : undefined
}

/** An outcome, with the states that a next one is sought from. */
export interface Nearby {
  readonly outcome: Outcome
  /** Without its controls, where that was found. */
  readonly free?: Guess | undefined
  /** Of the last that cycled. */
  readonly swing?: Swing | undefined
  /** Of one that trips because it has no state. */
  readonly rungs?: Rungs | undefined
}

/**
 * As {@link run}, from an outcome near by and by few solves, none of them a search: for the many cases
 * of a diagnosis.
 *
 * @returns undefined where that leads to no state; a search might.
 */
export const runNear = (asked: Case, before: Outcome | Nearby): Nearby | undefined =>
  atOnce(runNearInPieces(asked, before))

export function* runNearInPieces(
  asked: Case,
  before: Outcome | Nearby,
): InPieces<Nearby | undefined> {
  const { outcome, free, swing } = 'outcome' in before ? before : { outcome: before }
  const start = free ?? guessOf(outcome)
  if (start === undefined) return undefined
  const { duty: _, ...guess } = start
  const setup = setUp(asked)
  const found = yield* solvingFrom(setup, guess)
  if (found === undefined || !standsFirm(setup, found)) return undefined
  const swings = swingOf(outcome) ?? swing
  const next = judged(setup, found, swings)
  return { outcome: next, free: found.trial.guess, swing: swingOf(next) ?? swings }
}

/** From the coils' own temperatures, without a search: for where a state near by leads nowhere. */
export function* runFromCoils(asked: Case): InPieces<Nearby | undefined> {
  const setup = setUp(asked)
  const found = yield* solveSteady(setup)
  if (found === undefined || !standsFirm(setup, found)) return undefined
  return { outcome: judged(setup, found), free: found.trial.guess }
}

/**
 * The next case of a sweep: its state, and how a clutch swings, from those of the one before, and all
 * of it from the beginning where another control stops it, where it freezes up, or where nothing was
 * found near by. So each row ends as {@link run} says.
 */
export function* runNext(asked: Case, before: Nearby): InPieces<Nearby> {
  const { outcome: was } = before
  const hadNone = was.kind === 'high-pressure-trip' && was.state === undefined
  const plainly = hadNone ? yield* trippingPlainly(asked, before) : undefined
  if (plainly !== undefined) return plainly
  const dry = was.kind === 'dry' ? yield* dryPlainly(asked) : undefined
  if (dry !== undefined) return { ...before, outcome: dry }
  const near = yield* runNearInPieces(asked, before)
  if (near?.outcome.kind === 'steady' || near?.outcome.kind === 'cycling') return near
  if (near === undefined && !hadNone) {
    const trips = yield* trippingPlainly(asked, before)
    if (trips !== undefined) return trips
  }
  const outcome = yield* runInPieces(asked, near)
  const shown = stateOf(outcome)
  const swing = swingOf(outcome) ?? before.swing
  return shown === undefined
    ? { outcome, free: before.free ?? guessOf(before.outcome), swing }
    : { outcome, free: near?.free ?? shown.solution.trial.guess, swing }
}

/** How the next case of one without any balance ends, where it plainly has none either. */
function* dryPlainly(asked: Case): InPieces<Outcome | undefined> {
  const setup = setUp(asked)
  if ((yield* withoutSearch(setup)) !== undefined) return undefined
  const isDry = yield* nothingBalances(setup, setup.machine.controls.highCutOutPa)
  return isDry ? withoutSteady(setup) : undefined
}

/** The next case where it plainly has no state. */
function* trippingPlainly(asked: Case, before: Nearby): InPieces<Nearby | undefined> {
  const { free = guessOf(before.outcome), rungs: near } = before
  const { highCutOutPa: limitPa } = asked.machine.controls
  const rungs = yield* tripsPlainly(setUp(asked), limitPa, near, free)
  return rungs && { ...before, free, outcome: { kind: 'high-pressure-trip', limitPa }, rungs }
}

const guessOf = (outcome: Outcome) => stateOf(outcome)?.solution.trial.guess

/** What its controls make of a state that a machine would settle in without them. */
function judged(setup: Setup, steady: Solution, near?: Swing): Outcome {
  const { controls } = setup.machine
  const state = running(setup, steady)
  const { suctionPa, dischargePa } = steady.trial.guess
  const stopped = clutchOpens(controls, state)
  if (stopped !== undefined) {
    const cycling = cycle(setup, stopped, state, near)
    if (cycling !== undefined) return cycling
  }
  if (dischargePa > controls.highCutOutPa) {
    return { kind: 'high-pressure-trip', limitPa: controls.highCutOutPa, state }
  }
  if (controls.lowCutOutPa !== undefined && suctionPa < controls.lowCutOutPa) {
    return { kind: 'low-pressure-trip', limitPa: controls.lowCutOutPa, state }
  }
  if (freezes(controls, state)) return { kind: 'iced', state }
  return { kind: 'steady', state }
}

/** Starts that are tried before a state is searched for. */
const TRIED = 1

function* withoutSearch(setup: Setup): InPieces<Solution | undefined> {
  return (yield* solveSteady(setup)) ?? (yield* solvingAnyhow(setup, TRIED))
}

/** The state that a machine settles in; or that it trips on the way to one, or pumps itself down. */
function* steadyState(setup: Setup): InPieces<Solution | 'tripped' | undefined> {
  const found = yield* withoutSearch(setup)
  if (found !== undefined) return yield* settled(setup, found)
  const search = searchBelow(setup, setup.machine.controls.highCutOutPa)
  const below = yield* findBelow(search)
  if (below !== undefined) return below
  const any = yield* solvingAnyhow(setup, MOST_STARTS, undefined, undefined, TRIED)
  if (any !== undefined) return yield* settled(setup, any)
  return yield* findBelow(search, true)
}

/** No state at all: pumped down, unless a control stops it before. */
function withoutSteady(setup: Setup): Outcome {
  const { cyclingSwitch, thermostat } = setup.machine.controls
  if (cyclingSwitch !== undefined) return cycle(setup, 'low-pressure-switch') ?? { kind: 'dry' }
  if (thermostat !== undefined) return cycle(setup, 'thermostat') ?? { kind: 'dry' }
  return { kind: 'dry' }
}

/** Only where no thermostat and no cycling switch guards the fins. */
function freezes(controls: Controls, state: Running): boolean {
  return (
    controls.thermostat === undefined &&
    controls.cyclingSwitch === undefined &&
    state.leaving.surfaceK < ZERO_CELSIUS_K &&
    state.setup.returnAir.dewPointK > state.leaving.surfaceK
  )
}
