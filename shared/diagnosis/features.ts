import { type Running, readingsOf } from '../cycle/index.ts'

/** What can be read on a machine and told from the model. Pa absolute, K, and the charge as a share of the label's. */
export const FEATURES = [
  'lowSidePa',
  'highSidePa',
  'suctionLineK',
  'liquidLineK',
  'deviceInletK',
  'evaporatorOutletK',
  'dischargeLineK',
  'ventK',
  'condenserAirK',
  'chargeShare',
] as const

export type Feature = (typeof FEATURES)[number]

/** One thing that was read, with its standard deviation (1 σ): a ± of the project is two of these. */
export interface Observation {
  readonly feature: Feature
  readonly value: number
  readonly sigma: number
}

/** All features of a state, in the order of FEATURES. Weighing shows the charge, no gauge does. */
export function featuresOf(running: Running): Float64Array {
  const readings = readingsOf(running)
  return Float64Array.from(FEATURES, (feature) =>
    feature === 'chargeShare' ? running.setup.case.faults.charge : readings[feature],
  )
}
