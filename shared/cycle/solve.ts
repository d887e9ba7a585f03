import { atOnce, type InPieces } from '../pieces.ts'
import { type Branch, heldSuction, type Solution, solveBranch } from './branch.ts'
import type { Guess, Trial } from './evaluate.ts'
import { firstGuess } from './first-guess.ts'
import { massIn } from './inventory.ts'
import type { Setup } from './setup.ts'

/** An answer on the edge of its branch belongs to it. */
const EDGE = 1e-7

/** Evaporating below the return air, condensing above the outdoor air, superheat: all K. */
type Difference = readonly [evaporating: number, condensing: number, superheat: number]

/** What a search starts from where nothing better did: the most fruitful first. */
const STARTS: readonly Difference[] = [
  [34, 26, 12],
  [28, 36, 4],
  [24, 17, 6],
  [16, 10, 3],
]
export const MOST_STARTS = STARTS.length

/**
 * The steady state of a machine left running, whatever its controls would say: the branch of the
 * spare liquid and of the stroke that agrees with its own answer, from where the coils would settle.
 * `undefined` where that did not lead to one: `findBelow` of `scan.ts` looks for it then.
 */
export const solveSteady = (setup: Setup): InPieces<Solution | undefined> =>
  solvingFrom(setup, firstGuess(setup))

/** The same from so many less usual differences from the air, but for the first that were tried. */
export function* solvingAnyhow(
  setup: Setup,
  most: number,
  pinned?: Branch['pinned'],
  near?: Guess,
  tried = 0,
): InPieces<Solution | undefined> {
  for (const difference of STARTS.slice(tried, most)) {
    const found = yield* solvingFrom(setup, startFrom(setup, difference, pinned, near), pinned)
    if (found !== undefined) return found
  }
  return undefined
}

export const solveAnyhow = (...asked: Parameters<typeof solvingAnyhow>): Solution | undefined =>
  atOnce(solvingAnyhow(...asked))

/** The low side held fast where no mean flow settles: the full flow, with the evaporator's balance left out. */
export function solveUnsettled(
  setup: Setup,
  pinned: Branch['pinned'],
  from: Guess,
): Solution | undefined {
  const branch = { stroke: 'given', pinned, unsettled: true } as const
  return atOnce(spareLiquid(setup, branch, { ...from, stroke: 1 }))
}

function startFrom(
  setup: Setup,
  [evaporating, condensing, superheatK]: Difference,
  pinned: Branch['pinned'],
  near: Guess | undefined,
): Guess {
  const { conditions, faults } = setup.case
  const { fluid } = setup
  const inside = (pressure: number) =>
    Math.min(Math.max(pressure, 1.3 * fluid.lowestPa), 0.97 * fluid.highestPa)
  const hottestK = 0.97 * fluid.refrigerant.criticalTemperatureK
  const dischargeK = Math.min(conditions.ambientK + condensing, hottestK)
  return {
    suctionPa:
      pinned === 'suction' && near !== undefined
        ? near.suctionPa
        : inside(fluid.saturationPressure(conditions.returnAirK - evaporating)),
    dischargePa:
      pinned === 'discharge' && near !== undefined
        ? near.dischargePa
        : inside(fluid.saturationPressure(dischargeK) + faults.airPa),
    superheatK,
    stroke: 1,
  }
}

/**
 * Find the branch from one guess, that of the guess first; with a pause after each that is not the
 * one.
 */
export function* solvingFrom(
  setup: Setup,
  from: Guess,
  pinned?: Branch['pinned'],
): InPieces<Solution | undefined> {
  const { stroke } = setup.machine.compressor
  const stuck = setup.case.faults.strokeStuck
  const same = onItsBranch(setup, from, pinned)
  if (same !== undefined) return same
  const given = (value: number, near: Guess = from) =>
    spareLiquid(setup, { stroke: 'given', pinned }, { ...near, stroke: value })
  if (stroke === undefined || stuck !== undefined) return yield* given(stuck ?? 1)
  if (pinned !== undefined && pinned !== 'discharge') return yield* given(1)
  const holding = yield* spareLiquid(
    setup,
    { stroke: 'holding', pinned },
    { ...from, stroke: Math.max(from.stroke, stroke.minimum) },
  )
  if (holding !== undefined) {
    const { guess } = holding.trial
    // that answer may lie too far off, which the guess does not
    if (guess.stroke > 1 + EDGE) return (yield* given(1, guess)) ?? (yield* given(1))
    if (guess.stroke < stroke.minimum - EDGE) return yield* given(stroke.minimum, guess)
    return holding
  }
  const whole = yield* given(1)
  if (whole !== undefined && isAbove(setup, whole)) return whole
  const least = yield* given(stroke.minimum)
  return least !== undefined && !isAbove(setup, least) ? least : undefined
}

/** On the branch that a guess was found on, where that is not the one tried first anyway. */
function onItsBranch(setup: Setup, from: Guess, pinned: Branch['pinned']): Solution | undefined {
  const branch = from.slopes?.of
  if (branch === undefined || !holdsTheSame(branch.pinned, pinned)) return undefined
  const { stroke } = setup.machine.compressor
  const stuck = setup.case.faults.strokeStuck
  const varies = stroke !== undefined && stuck === undefined
  const isUsual = pinned === 'discharge' || branch.liquid === 'between' || branch.liquid === 'none'
  const isFirst = isUsual && (branch.stroke === 'holding' || !varies)
  if (isFirst || (branch.stroke === 'holding' && !varies)) return undefined
  const ends = varies ? [1, stroke.minimum] : [stuck ?? 1]
  if (branch.stroke === 'given' && !ends.includes(from.stroke)) return undefined
  const found = solveBranch(setup, { ...branch, pinned }, from)
  if (found === undefined) return undefined
  return liquidAgrees(setup, found) && (!varies || strokeAgrees(setup, found)) ? found : undefined
}

/** At whatever temperature of the fins. */
const holdsTheSame = (a: Branch['pinned'], b: Branch['pinned']) =>
  a === b || (typeof a === 'object' && typeof b === 'object')

function liquidAgrees(setup: Setup, found: Solution): boolean {
  const { liquid, pinned } = found.branch
  if (liquid === 'none' || pinned === 'discharge') return true
  return liquid === 'between' ? isPartly(found) : agrees(setup, found)
}

const isPartly = ({ level }: Solution) => level !== undefined && level >= -EDGE && level <= 1 + EDGE

function strokeAgrees(setup: Setup, found: Solution): boolean {
  const { stroke } = found.trial.guess
  const least = setup.machine.compressor.stroke?.minimum ?? 0
  return found.branch.stroke === 'holding'
    ? stroke >= least - EDGE && stroke <= 1 + EDGE
    : (stroke === 1) === isAbove(setup, found)
}

export const solveFrom = (...asked: Parameters<typeof solvingFrom>): Solution | undefined =>
  atOnce(solvingFrom(...asked))

/** The suction lies above what the stroke would hold: it cannot pump more. */
function isAbove(setup: Setup, { trial }: Solution): boolean {
  return trial.guess.suctionPa >= heldSuction(setup, trial.guess.dischargePa) * (1 - EDGE)
}

function* spareLiquid(
  setup: Setup,
  branch: Omit<Branch, 'liquid'>,
  from: Guess,
): InPieces<Solution | undefined> {
  if (setup.machine.store.kind === 'none') {
    return solveBranch(setup, { ...branch, liquid: 'none' }, from)
  }
  // with the high side held fast the charge is left open, and with it what the store holds
  if (branch.pinned === 'discharge') return solveBranch(setup, { ...branch, liquid: 'empty' }, from)
  const between = solveBranch(setup, { ...branch, liquid: 'between' }, from)
  const level = between?.level
  if (between && isPartly(between)) return between
  const order = (level ?? 0) < 0.5 ? (['empty', 'full'] as const) : (['full', 'empty'] as const)
  for (const liquid of order) {
    const near = between && beside(setup, between.trial.guess, liquid)
    const lean = between && level !== undefined && level < LEAN && leanGuess(setup, between, branch)
    for (const start of liquid === 'empty' ? [lean, near, from] : [from, near]) {
      yield
      const found = start ? solveBranch(setup, { ...branch, liquid }, start) : undefined
      if (found !== undefined && agrees(setup, found)) return found
    }
    // a store that would be far beyond one end does not end at the other
    if (level !== undefined && Math.abs(level - 0.5) > SURELY) break
  }
  return undefined
}

/** Level below nothing, as a share of the store, from which on an empty one is far from that answer. */
const LEAN = -0.15

/** Where little liquid is left: less flow, all of it gas that the air has warmed most of the way. */
function leanGuess(setup: Setup, { trial }: Solution, branch: Omit<Branch, 'liquid'>): Guess {
  const { bubble } = setup.fluid.refrigerant
  const { airPa } = setup.case.faults
  const airK = setup.outdoorAir.temperatureK
  const { guess, evaporatingAt } = trial
  const excess = bubble.temperature(guess.dischargePa - airPa) - airK
  const holds = branch.stroke === 'holding' || branch.pinned === 'suction'
  return {
    ...guess,
    suctionPa: holds
      ? guess.suctionPa
      : Math.max(0.6 * guess.suctionPa, 1.2 * setup.fluid.lowestPa),
    dischargePa: bubble.pressure(airK + 0.6 * excess) + airPa,
    superheatK: 0.75 * (setup.returnAir.temperatureK - evaporatingAt.dewK),
    stroke: branch.stroke === 'holding' ? 0.45 * guess.stroke : guess.stroke,
  }
}

/** Beyond this distance from half full, the other end is not tried. */
const SURELY = 0.8

/**
 * A start off the corner on which the answer with a store partly filled stands: a little colder
 * behind the condenser for a receiver that has run full, a little warmer for an empty one.
 */
function beside(setup: Setup, guess: Guess, liquid: 'empty' | 'full'): Guess {
  const { bubble } = setup.fluid.refrigerant
  const { airPa } = setup.case.faults
  const airK = setup.outdoorAir.temperatureK
  const excess = bubble.temperature(guess.dischargePa - airPa) - airK
  const moved = airK + excess * (liquid === 'empty' ? 0.93 : 1.08)
  const dischargePa = Math.min(bubble.pressure(moved) + airPa, 0.99 * setup.fluid.highestPa)
  return { ...guess, dischargePa }
}

/** An empty store lets through what a store with liquid in it would not, and so does a full one. */
function agrees(setup: Setup, { branch, trial }: Solution): boolean {
  const excess = vapourLetThrough(setup, trial)
  return branch.liquid === 'empty' ? excess >= -EDGE : excess <= EDGE
}

/** Above 0 where more vapour passes the store than one with liquid in it lets through, below 0 where less. */
function vapourLetThrough(setup: Setup, trial: Trial): number {
  const { store } = setup.machine
  if (store.kind === 'none') return 0
  if (store.kind === 'receiver') return trial.condensation.shortfall
  const { latentHeat, vapourHeatCapacity } = trial.suctionAt
  return trial.guess.superheatK + (store.bleed * latentHeat) / vapourHeatCapacity
}

/**
 * At a high side held fast: what the machine holds, with its store as full as what passes it allows, as
 * a share of its charge. Below 1 the charge asks for a higher one.
 */
export function heldShare(setup: Setup, { trial }: Solution): number {
  const level = vapourLetThrough(setup, trial) > 0 ? 0 : 1
  return massIn(setup, trial, level) / setup.charge
}

/** The charge asks for a higher one. */
export const mustRise = (setup: Setup, solution: Solution): boolean =>
  heldShare(setup, solution) < 1
