import type { Solution } from './branch.ts'
import type { Guess } from './evaluate.ts'
import { guessAtSuction } from './first-guess.ts'
import type { Outcome } from './outcome.ts'
import { type Running, running } from './running.ts'
import type { Setup } from './setup.ts'
import { solveAnyhow, solveFrom, solveUnsettled } from './solve.ts'
import type { Controls } from './types.ts'

/** Fins above the boiling refrigerant, K: where a search starts. */
const FINS_ABOVE_K = 4
/** Liquid face of a condenser, share of the whole, from which on more flow drives the high side up without end. */
const FLOODED = 0.4

/** What lets a clutch go. */
export type Stop = 'thermostat' | 'low-pressure-switch'

/** Between what a clutch swings: where a case near by is sought from. */
export interface Swing {
  readonly opening: Guess
  readonly mean: Guess
  /** Whether a mean flow settles. */
  readonly settles: boolean
}

/** The swing of an outcome; nothing where no clutch cycles. */
export function swingOf(outcome: Outcome): Swing | undefined {
  if (outcome.kind !== 'cycling') return undefined
  const [opening, mean] = [outcome.state.solution, outcome.averaged]
  return {
    opening: opening.trial.guess,
    mean: mean.trial.guess,
    settles: opening.branch.unsettled !== true && mean.branch.unsettled !== true,
  }
}

/** The control that stops the compressor in a state, if one does. */
export function clutchOpens(controls: Controls, state: Running): Stop | undefined {
  const { suctionPa } = state.solution.trial.guess
  if (controls.cyclingSwitch !== undefined && suctionPa < controls.cyclingSwitch.opensPa) {
    return 'low-pressure-switch'
  }
  if (controls.thermostat !== undefined && state.leaving.probeK < controls.thermostat.opensK) {
    return 'thermostat'
  }
  return undefined
}

/**
 * A clutch that opens and closes. The low side swings between two settings. Compressor and
 * condenser work at the full flow while it runs; what is stored on either side keeps device and
 * evaporator going at the mean flow. So at a setting of the low side the same balances are solved,
 * with the share of the time that it runs in the place of the pressure: at the mean setting that is
 * the duty, at the opening one the state just before it opens, which makers' charts ask to read.
 *
 * @param steady - Without the control, where there is such a state.
 * @param beside - The swing of a case near by, to start from.
 */
export function cycle(
  setup: Setup,
  by: Stop,
  steady?: Running,
  beside?: Swing,
): Outcome | undefined {
  const { thermostat, cyclingSwitch, highCutOutPa } = setup.machine.controls
  const [opens, closes] =
    by === 'thermostat'
      ? [thermostat?.opensK, thermostat?.closesK]
      : [cyclingSwitch?.opensPa, cyclingSwitch?.closesPa]
  if (opens === undefined || closes === undefined) return undefined
  const pinnedAt = (setting: number) => (by === 'thermostat' ? { finsK: setting } : 'suction')
  const suctionAt = (setting: number) =>
    by === 'thermostat' ? setup.fluid.saturationPressure(setting - FINS_ABOVE_K) : setting
  const settling = (setting: number, near: Guess) =>
    solveFrom(
      setup,
      by === 'thermostat' ? near : { ...near, suctionPa: setting },
      pinnedAt(setting),
    )
  const full = (setting: number, near: Guess) =>
    solveUnsettled(
      setup,
      pinnedAt(setting),
      by === 'thermostat' ? near : { ...near, suctionPa: setting },
    )
  const at = (setting: number, near: Guess | undefined, start?: Guess) => {
    const suctionPa = suctionAt(setting)
    const usual = start ?? guessAtSuction(setup, suctionPa)
    const found = (near && settling(setting, near)) ?? settling(setting, usual)
    if (found !== undefined) return found
    if (steady === undefined)
      return solveAnyhow(setup, 2, pinnedAt(setting), { ...usual, suctionPa })
    const direct = led(steady, by, setting, 1, settling)
    return (
      direct ??
      (beside?.settles === false ? undefined : led(steady, by, setting, MOST_LED, settling))
    )
  }
  const unsettled = (setting: number, near: Solution | undefined, like: Guess | undefined) => {
    const suctionPa = suctionAt(setting)
    for (const start of [
      beside?.settles === false ? like : undefined,
      near?.trial.guess ?? guessAtSuction(setup, suctionPa),
      steady?.solution.trial.guess,
    ]) {
      const found = start && full(setting, { ...start, suctionPa })
      if (found !== undefined) return found
    }
    return steady && led(steady, by, setting, WALK, full)
  }
  const tripped = (last: Solution): Outcome => ({
    kind: 'high-pressure-trip',
    limitPa: highCutOutPa,
    state: running(setup, last),
  })
  const like = beside?.settles === true ? beside : undefined
  const opening = at(opens, like?.opening)
  const mean = opening && at((opens + closes) / 2, like?.mean, opening.trial.guess)
  const [shown, averaged] =
    opening !== undefined && mean !== undefined
      ? [opening, mean]
      : [
          unsettled(opens, opening, beside?.opening),
          unsettled((opens + closes) / 2, opening, beside?.mean),
        ]
  for (const each of [shown, averaged]) {
    if (each !== undefined && each.trial.guess.dischargePa > highCutOutPa) return tripped(each)
  }
  if (shown === undefined || averaged === undefined) {
    // the high side leaves the range of the properties before the low side comes to its setting
    return steady !== undefined && floods(steady) ? tripped(steady.solution) : undefined
  }
  const { compression, suction, condensation, guess } = averaged.trial
  const perSecond = compression.flow * (suction.enthalpy - condensation.enthalpy)
  const duty =
    averaged === mean
      ? (guess.duty ?? 1)
      : Math.min(1, averaged.trial.evaporation.boiling.whole / perSecond)
  return {
    kind: 'cycling',
    by,
    duty,
    state: running(setup, shown),
    averaged,
    averageCapacity: duty * perSecond,
    // the low side swings evenly about its mean
    closesPa: 2 * guess.suctionPa - shown.trial.guess.suctionPa,
  }
}

/** Steps from a steady state to the setting of its control where one does not do; and of the full flow. */
const MOST_LED = 4
const WALK = 12

/**
 * From a steady state, which is that of its own setting with the clutch engaged all the time, to
 * another setting: step by step, each solved from the one before.
 */
function led(
  { solution, leaving }: Running,
  by: Stop,
  setting: number,
  steps: number,
  solve: (setting: number, near: Guess) => Solution | undefined,
): Solution | undefined {
  const { slopes: _, ...guess } = solution.trial.guess
  const from = by === 'thermostat' ? leaving.surfaceK : guess.suctionPa
  let here: Solution | undefined
  for (let step = 1; step <= steps; step += 1) {
    here = solve(from + ((setting - from) * step) / steps, here?.trial.guess ?? guess)
    if (here === undefined) return undefined
  }
  return here
}

/** Much of the condenser stands full of liquid. */
function floods({ solution }: Running): boolean {
  return solution.trial.condensation.faces.liquid > FLOODED
}
