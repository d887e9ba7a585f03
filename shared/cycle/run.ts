import type { Solution } from './branch.ts'
import type { Guess } from './evaluate.ts'
import { boilingHeat, type LeavingAir, leavingAir } from './evaporator.ts'
import { guessAtSuction } from './first-guess.ts'
import { findBelow, settled } from './scan.ts'
import { type Setup, setUp } from './setup.ts'
import { MOST_STARTS, solveAnyhow, solvePinned, solveSteady, solveUnsettled } from './solve.ts'
import type { Case, Controls } from './types.ts'

/** What is to be said of a state that was found. */
export type Remark =
  /** No liquid is left in the receiver: vapour goes to the device. */
  | 'receiver-empty'
  /** Vapour reaches the device in a machine without a receiver. */
  | 'vapour-at-device'
  /** Less than a quarter of the evaporator boils. */
  | 'evaporator-dry'
  /** More liquid reaches the compressor than an accumulator lets go. */
  | 'liquid-at-compressor'
  /** The accumulator is empty: its outlet is superheated. */
  | 'accumulator-empty'

/** How a machine ends up. Every case ends as one of these. */
export type Outcome =
  | {
      readonly kind: 'steady'
      readonly state: Running
    }
  | {
      /** A thermostat or a pressure switch lets the compressor run part of the time. */
      readonly kind: 'cycling'
      readonly by: 'thermostat' | 'low-pressure-switch'
      /** Share of the time that it runs, by the heat that the air brings meanwhile. */
      readonly duty: number
      /** Just before it opens; the evaporator is not settled then, all else nearly. */
      readonly state: Running
      /** W taken from the air, averaged. */
      readonly averageCapacity: number
      /** Suction pressure when it closes again, Pa absolute. */
      readonly closesPa: number
    }
  | {
      /** Would run above the cut-out, or finds no balance below it. */
      readonly kind: 'high-pressure-trip'
      readonly limitPa: number
      /**
       * The state that it would run to, or the last on the way there; nothing where it has none below
       * the critical region.
       */
      readonly state?: Running
    }
  | {
      readonly kind: 'low-pressure-trip'
      readonly limitPa: number
      readonly state: Running
    }
  | {
      /** Fins below 0 °C and nothing that stops it: it freezes up in a while. */
      readonly kind: 'iced'
      readonly state: Running
    }
  | {
      /** Pumped down: too little comes through for any pressure that the properties reach. */
      readonly kind: 'dry'
    }

/** A solved state with what follows from it. */
export interface Running {
  readonly setup: Setup
  readonly solution: Solution
  readonly leaving: LeavingAir
  readonly remarks: readonly Remark[]
  /** Heat and work that do not add up between refrigerant and air, as a share of the heat given off. */
  readonly imbalance: number
}

const FREEZING_K = 273.15
/** Fins above the boiling refrigerant, K: where a search starts. */
const FINS_ABOVE_K = 4
/** Liquid face of a condenser, share of the whole, from which on more flow drives the high side up without end. */
const FLOODED = 0.4
/** Share of the face below which an evaporator counts as dry. */
const DRY_FACE = 0.25
/** Quality of the suction below which liquid is said to reach the compressor. */
const WET_SUCTION_K = -0.01

/** What a machine does in the case asked. `start` is a state near by, for sweeps. */
export function run(asked: Case, start?: Guess): Outcome {
  const setup = setUp(asked)
  const { controls } = setup.machine
  const steady = steadyState(setup, start)
  if (steady === 'tripped') {
    return { kind: 'high-pressure-trip', limitPa: controls.highCutOutPa }
  }
  if (steady === undefined) return withoutSteady(setup)
  const state = running(setup, steady)
  const { suctionPa, dischargePa } = steady.trial.guess
  const stopped = clutchOpens(controls, state)
  if (stopped !== undefined) {
    const cycling = cycle(setup, stopped, state)
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

/** The state that a machine settles in; or that it trips on the way to one, or pumps itself down. */
function steadyState(setup: Setup, start?: Guess): Solution | 'tripped' | undefined {
  const found = solveSteady(setup, start) ?? solveAnyhow(setup, 1)
  if (found !== undefined) return settled(setup, found)
  const below = findBelow(setup, setup.machine.controls.highCutOutPa)
  if (below !== undefined) return below
  const any = solveAnyhow(setup, MOST_STARTS)
  if (any !== undefined) return settled(setup, any)
  return findBelow(setup, setup.machine.controls.highCutOutPa, true)
}

/** No state at all: pumped down, unless a control stops it before. */
function withoutSteady(setup: Setup): Outcome {
  const { cyclingSwitch, thermostat } = setup.machine.controls
  if (cyclingSwitch !== undefined) return cycle(setup, 'low-pressure-switch') ?? { kind: 'dry' }
  if (thermostat !== undefined) return cycle(setup, 'thermostat') ?? { kind: 'dry' }
  return { kind: 'dry' }
}

type Stop = 'thermostat' | 'low-pressure-switch'

function clutchOpens(controls: Controls, state: Running): Stop | undefined {
  const { suctionPa } = state.solution.trial.guess
  if (controls.cyclingSwitch !== undefined && suctionPa < controls.cyclingSwitch.opensPa) {
    return 'low-pressure-switch'
  }
  if (controls.thermostat !== undefined && state.leaving.probeK < controls.thermostat.opensK) {
    return 'thermostat'
  }
  return undefined
}

/** Only where no thermostat and no cycling switch guards the fins. */
function freezes(controls: Controls, state: Running): boolean {
  return (
    controls.thermostat === undefined &&
    controls.cyclingSwitch === undefined &&
    state.leaving.surfaceK < FREEZING_K &&
    state.setup.returnAir.dewPointK > state.leaving.surfaceK
  )
}

/**
 * A clutch that opens and closes. The low side swings between two settings. Compressor and
 * condenser work at the full flow while it runs; what is stored on either side keeps device and
 * evaporator going at the mean flow. So at a setting of the low side the same balances are solved,
 * with the share of the time that it runs in the place of the pressure: at the mean setting that is
 * the duty, at the opening one the state just before it opens, which makers' charts ask to read.
 */
function cycle(setup: Setup, by: Stop, steady?: Running): Outcome | undefined {
  const { thermostat, cyclingSwitch, highCutOutPa } = setup.machine.controls
  const [opens, closes] =
    by === 'thermostat'
      ? [thermostat?.opensK, thermostat?.closesK]
      : [cyclingSwitch?.opensPa, cyclingSwitch?.closesPa]
  if (opens === undefined || closes === undefined) return undefined
  const at = (setting: number, near: Guess | undefined) => {
    const suctionPa =
      by === 'thermostat' ? setup.fluid.saturationPressure(setting - FINS_ABOVE_K) : setting
    const start = near ?? guessAtSuction(setup, suctionPa)
    return solvePinned(
      setup,
      by === 'thermostat' ? { finsK: setting } : 'suction',
      by === 'thermostat' ? start : { ...start, suctionPa },
    )
  }
  const unsettled = (setting: number, near: Solution | undefined) => {
    const suctionPa =
      by === 'thermostat' ? setup.fluid.saturationPressure(setting - FINS_ABOVE_K) : setting
    const pinned = by === 'thermostat' ? { finsK: setting } : 'suction'
    for (const start of [
      near?.trial.guess ?? guessAtSuction(setup, suctionPa),
      steady?.solution.trial.guess,
    ]) {
      const found = start && solveUnsettled(setup, pinned, { ...start, suctionPa })
      if (found !== undefined) return found
    }
    return undefined
  }
  const tripped = (last: Solution): Outcome => ({
    kind: 'high-pressure-trip',
    limitPa: highCutOutPa,
    state: running(setup, last),
  })
  const opening = at(opens, undefined)
  const mean = opening && at((opens + closes) / 2, opening.trial.guess)
  const [shown, averaged] =
    opening !== undefined && mean !== undefined
      ? [opening, mean]
      : [unsettled(opens, opening), unsettled((opens + closes) / 2, opening)]
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
    averaged === mean ? (guess.duty ?? 1) : Math.min(1, boilingAll(setup, averaged) / perSecond)
  return {
    kind: 'cycling',
    by,
    duty,
    state: running(setup, shown),
    averageCapacity: duty * perSecond,
    // the low side swings evenly about its mean
    closesPa: 2 * guess.suctionPa - shown.trial.guess.suctionPa,
  }
}

/** W that the air brings to an evaporator that boils all over. */
function boilingAll(setup: Setup, { trial }: Solution): number {
  const { evaporatingAt, evaporatorFilm } = trial
  return boilingHeat(setup.evaporator, setup.returnAir, evaporatingAt.meanK, evaporatorFilm).whole
}

/** Much of the condenser stands full of liquid. */
function floods({ solution }: Running): boolean {
  return solution.trial.condensation.faces.liquid > FLOODED
}

function running(setup: Setup, solution: Solution): Running {
  const { trial, branch } = solution
  const { evaporation, evaporatingAt, condensation, compression, suction } = trial
  const { store } = setup.machine
  const leaving = leavingAir(
    setup.evaporator,
    setup.returnAir,
    evaporatingAt,
    trial.evaporatorFilm,
    evaporation,
  )
  const remarks: Remark[] = []
  if (store.kind === 'receiver' && branch.liquid === 'empty') remarks.push('receiver-empty')
  if (store.kind !== 'receiver' && condensation.quality > 0) remarks.push('vapour-at-device')
  if (store.kind === 'accumulator' && branch.liquid === 'empty') remarks.push('accumulator-empty')
  if (evaporation.boilingFace < DRY_FACE) remarks.push('evaporator-dry')
  const bleed = store.kind === 'accumulator' ? store.bleed : 0
  const dryness = (suction.enthalpy - trial.suctionAt.vapourEnthalpy) / trial.suctionAt.latentHeat
  if (dryness < WET_SUCTION_K - bleed) remarks.push('liquid-at-compressor')
  const gained = evaporation.airHeat + compression.power - compression.shellHeat
  return {
    setup,
    solution,
    leaving,
    remarks,
    imbalance: gained / condensation.airHeat - 1,
  }
}
