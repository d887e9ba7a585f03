import type { Solution } from './branch.ts'
import { type LeavingAir, leavingAir } from './evaporator.ts'
import type { Setup } from './setup.ts'

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

/** A solved state with what follows from it. */
export interface Running {
  readonly setup: Setup
  readonly solution: Solution
  readonly leaving: LeavingAir
  readonly remarks: readonly Remark[]
  /** Heat and work that do not add up between refrigerant and air, as a share of the heat given off. */
  readonly imbalance: number
}

/** Share of the face below which an evaporator counts as dry. */
const DRY_FACE = 0.25
/** How far below dry saturated vapour, as a share of the latent heat, liquid is said to reach the compressor. */
const WET_SUCTION = -0.01

/** What follows from a solution. */
export function running(setup: Setup, solution: Solution): Running {
  const { trial, branch } = solution
  const { evaporation, condensation, compression, suction } = trial
  const { store } = setup.machine
  const leaving = leavingAir(setup.evaporator, setup.returnAir, evaporation)
  const remarks: Remark[] = []
  if (store.kind === 'receiver' && branch.liquid === 'empty') remarks.push('receiver-empty')
  if (store.kind !== 'receiver' && condensation.quality > 0) remarks.push('vapour-at-device')
  if (store.kind === 'accumulator' && branch.liquid === 'empty') remarks.push('accumulator-empty')
  if (evaporation.boilingFace < DRY_FACE) remarks.push('evaporator-dry')
  const bleed = store.kind === 'accumulator' ? store.bleed : 0
  const dryness = (suction.enthalpy - trial.suctionAt.vapourEnthalpy) / trial.suctionAt.latentHeat
  if (dryness < WET_SUCTION - bleed) remarks.push('liquid-at-compressor')
  const gained = evaporation.airHeat + compression.power - compression.shellHeat
  return {
    setup,
    solution,
    leaving,
    remarks,
    imbalance: gained / condensation.airHeat - 1,
  }
}
