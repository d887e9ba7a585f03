import type { Solution } from './branch.ts'
import type { Running } from './running.ts'

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
      /** At the mean of the two settings: what duty and capacity are taken from. */
      readonly averaged: Solution
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
