import { attempt } from '../substance/attempt.ts'
import { type Guess, type Trial, tryOut } from './evaluate.ts'
import { surfaceTemperature } from './evaporator.ts'
import { massIn, storeOf } from './inventory.ts'
import { newton, type Residuals } from './newton.ts'
import type { Setup } from './setup.ts'

/**
 * What holds besides the balances of flow and of the evaporator: one condition for the spare
 * liquid, one for the compressor. Each combination is smooth; which one is true is found by trying
 * the likely one and looking whether its answer is one that it allows.
 */
export interface Branch {
  /** Where spare liquid stands; without a store `none`. */
  readonly liquid: 'none' | 'empty' | 'between' | 'full'
  /** Stroke given, or set so that the suction pressure is held. */
  readonly stroke: 'given' | 'holding'
  /**
   * What is held fast: the low side between which a clutch lets the machine swing (by its
   * pressure, or by the fins' temperature in K), where the share of the time that it runs becomes
   * unknown in its place; or a high side looked at from outside, the charge then being left open.
   */
  readonly pinned?: 'suction' | 'discharge' | { readonly finsK: number } | undefined
  /** With the low side pinned: device and evaporator at the full flow, the evaporator not balanced. */
  readonly unsettled?: boolean
}

export interface Solution {
  readonly branch: Branch
  readonly trial: Trial
  /** Filled share of the store, 0 to 1; beyond that where the branch is the wrong one. */
  readonly level: number | undefined
  /** Largest of the residuals. */
  readonly error: number
  readonly iterations: number
  readonly evaluations: number
}

const ALL = ['suction', 'discharge', 'superheat', 'stroke', 'duty'] as const
type Unknown = (typeof ALL)[number]

/** Superheat is moved in tens of K, so that a step of 1 is a large one as it is of ln p. */
const SUPERHEAT_SCALE = 10
const LIKELY_DUTY = 0.6
/** Longest steps, in the scaled unknowns. */
const LIMITS: Readonly<Record<Unknown, number>> = {
  suction: 0.3,
  discharge: 0.5,
  superheat: 0.8,
  stroke: 0.5,
  duty: 0.5,
}

/** Solve one branch from a guess; `undefined` where no answer was found from there. */
export function solveBranch(setup: Setup, branch: Branch, start: Guess): Solution | undefined {
  const unknowns = unknownsOf(setup, branch)
  const [suction, discharge, superheat, stroke, duty] = ALL.map((name) => unknowns.indexOf(name))
  const toGuess = (x: Float64Array): Guess => {
    const value = (index: number | undefined) => x[index as number]
    const excess = value(discharge)
    const dischargePa = excess === undefined ? start.dischargePa : fromExcess(setup, excess)
    const logPa = value(suction)
    const suctionPa =
      branch.stroke === 'holding'
        ? heldSuction(setup, dischargePa)
        : Math.exp(logPa ?? Math.log(start.suctionPa))
    const scaled = value(superheat)
    const logStroke = value(stroke)
    return {
      suctionPa,
      dischargePa,
      superheatK: scaled === undefined ? letGo(setup, suctionPa) : SUPERHEAT_SCALE * scaled,
      stroke: logStroke === undefined ? start.stroke : Math.exp(logStroke),
      duty: Math.exp(value(duty) ?? 0),
    }
  }
  const saturatedOutlet = setup.machine.store.kind === 'receiver' && branch.liquid === 'between'
  const trials = new Map<Float64Array, Trial>()
  const residuals: Residuals = (x) => {
    const trial = attempt(() => tryOut(setup, toGuess(x), saturatedOutlet))
    if (trial === undefined) return undefined
    trials.set(x, trial)
    return residualsOf(setup, branch, trial)
  }
  const from: Readonly<Record<Unknown, number>> = {
    suction: Math.log(start.suctionPa),
    discharge: toExcess(setup, start.dischargePa),
    superheat: start.superheatK / SUPERHEAT_SCALE,
    stroke: Math.log(start.stroke),
    duty: Math.log(start.duty ?? LIKELY_DUTY),
  }
  const found = newton(
    residuals,
    Float64Array.from(unknowns, (name) => from[name]),
    unknowns.map((name) => LIMITS[name]),
    start.slopes && isLike(start.slopes.of, branch) ? start.slopes.jacobian : undefined,
  )
  if (found?.converged !== true) return undefined
  const at = trials.get(found.at)
  if (at === undefined) return undefined
  const { jacobian } = found
  const slopes = jacobian && { of: branch, jacobian }
  const trial = slopes ? { ...at, guess: { ...at.guess, slopes } } : at
  return {
    branch,
    trial,
    level: levelOf(setup, branch, trial),
    error: found.error,
    iterations: found.iterations,
    evaluations: found.evaluations,
  }
}

/** The same unknowns and balances. */
const isLike = (a: Branch, b: Branch) =>
  a.liquid === b.liquid &&
  a.stroke === b.stroke &&
  a.unsettled === b.unsettled &&
  (a.pinned === b.pinned || (typeof a.pinned === 'object' && typeof b.pinned === 'object'))

/** Smallest excess of the high side over the air that a start is led to, K. */
const LEAST_EXCESS_K = 0.3

/**
 * The high side is moved by ln of its condensing temperature's excess over the outdoor air: heat
 * given off is straight in that excess, and no step leads to where there is none.
 */
function toExcess(setup: Setup, dischargePa: number): number {
  const { bubble } = setup.fluid.refrigerant
  const condensingPa = Math.max(dischargePa - setup.case.faults.airPa, setup.fluid.lowestPa)
  const excess = bubble.temperature(condensingPa) - setup.outdoorAir.temperatureK
  return Math.log(Math.max(excess, LEAST_EXCESS_K))
}

function fromExcess(setup: Setup, logExcess: number): number {
  const { bubble } = setup.fluid.refrigerant
  const kelvin = setup.outdoorAir.temperatureK + Math.exp(logExcess)
  return kelvin < bubble.toK ? bubble.pressure(kelvin) + setup.case.faults.airPa : Infinity
}

/** A clutch swings the low side, and the share of the time that it is engaged is sought. */
function cycles({ pinned, unsettled }: Branch): boolean {
  return (pinned === 'suction' || typeof pinned === 'object') && unsettled !== true
}

function unknownsOf(setup: Setup, branch: Branch): readonly Unknown[] {
  const { store } = setup.machine
  const unknowns: Unknown[] = []
  if (branch.pinned !== 'suction' && branch.stroke !== 'holding') unknowns.push('suction')
  if (branch.pinned !== 'discharge') unknowns.push('discharge')
  if (!(store.kind === 'accumulator' && branch.liquid === 'between')) unknowns.push('superheat')
  if (branch.stroke === 'holding') unknowns.push('stroke')
  if (cycles(branch)) unknowns.push('duty')
  return unknowns
}

/** Superheat (below 0) of what an accumulator with liquid in it lets go. */
function letGo(setup: Setup, suctionPa: number): number {
  const { store } = setup.machine
  if (store.kind !== 'accumulator') return 0
  const at = setup.fluid.saturation(suctionPa)
  return (-store.bleed * at.latentHeat) / at.vapourHeatCapacity
}

/** All that must vanish, each as a share of what it is about. */
function residualsOf(setup: Setup, branch: Branch, trial: Trial): Float64Array {
  const { evaporation, suction, evaporatingAt, condensation } = trial
  const residuals = [
    -0.5 * Math.log(trial.driveNeeded),
    ...(branch.unsettled === true
      ? []
      : [(evaporation.enthalpy - suction.enthalpy) / evaporatingAt.latentHeat]),
  ]
  if (typeof branch.pinned === 'object') {
    const { finsK } = branch.pinned
    residuals.push((finsOf(setup, trial, finsK) - finsK) / SUPERHEAT_SCALE)
  }
  if (branch.pinned !== 'discharge') {
    const spare = setup.machine.store.kind
    if (branch.liquid !== 'between') {
      residuals.push(massIn(setup, trial, branch.liquid === 'full' ? 1 : 0) / setup.charge - 1)
    } else if (spare === 'receiver') {
      residuals.push(Math.log1p(condensation.shortfall))
    }
  }
  return Float64Array.from(residuals)
}

/** Temperature of the fins where it boils, K, from where it is to be. */
function finsOf(setup: Setup, { evaporation }: Trial, nearK: number): number {
  return surfaceTemperature(setup.evaporator, setup.returnAir, evaporation.boiling, nearK)
}

/** Suction pressure that a variable stroke holds at a discharge pressure, both Pa absolute. */
export function heldSuction(setup: Setup, dischargePa: number): number {
  const { stroke } = setup.machine.compressor
  if (stroke === undefined) return 0
  return stroke.setPa - stroke.droop * (dischargePa - stroke.setAtDischargePa)
}

function levelOf(setup: Setup, branch: Branch, trial: Trial): number | undefined {
  const store = storeOf(setup, trial)
  if (store === undefined) return undefined
  if (branch.liquid === 'empty') return 0
  if (branch.liquid === 'full') return 1
  const rest = setup.charge - massIn(setup, trial, 0)
  return rest / (store.volume * (store.at.liquidDensity - store.gasDensity))
}
