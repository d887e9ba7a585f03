import { type Point, qualityOf, type Saturation } from './fluid.ts'
import type { Outcome } from './outcome.ts'
import type { Running } from './running.ts'

/** What gauges and thermometers show at the usual places. Pa absolute, K, W. */
export interface Readings {
  readonly lowSidePa: number
  readonly highSidePa: number
  /** Pipe at the evaporator's outlet; in front of an accumulator where there is one. */
  readonly evaporatorOutletK: number
  /** Pipe at the compressor; behind an accumulator where there is one. */
  readonly suctionLineK: number
  readonly dischargeLineK: number
  /** Pipe behind the condenser (and receiver). */
  readonly condenserOutletK: number
  /** Pipe where the machine's thermometer sits: in front of a restriction, or behind it. */
  readonly liquidLineK: number
  /** Pipe in front of the device, behind any restriction. */
  readonly deviceInletK: number
  readonly ventK: number
  /** Air behind the condenser, mixed. */
  readonly condenserAirK: number
  /** As a mechanic works it out: suction line less dew temperature at the low gauge, K. */
  readonly superheatK: number
  /** As a mechanic works it out: bubble temperature at the high gauge less liquid line, K. */
  readonly subcoolingK: number
  /** Vapour is seen behind the condenser or receiver. */
  readonly bubbles: boolean
}

/** What a gauge cannot show. */
export interface Performance {
  /** W taken from the return air, sensible and latent. */
  readonly capacity: number
  /** W at the compressor's shaft, while it runs. */
  readonly power: number
  /** kg/s while it runs. */
  readonly flow: number
}

/** kg by part of the machine. */
export interface Inventory {
  readonly compressorAndDischarge: number
  readonly condenser: number
  readonly receiver: number
  readonly liquidLine: number
  readonly evaporator: number
  readonly accumulator: number
  readonly suctionLine: number
}

/** The cycle's corners, in the order of flow. */
export interface StatePoint {
  readonly place:
    | 'compressor-inlet'
    | 'compressor-outlet'
    | 'condenser-outlet'
    | 'device-inlet'
    | 'evaporator-inlet'
    | 'evaporator-outlet'
  readonly pressurePa: number
  readonly temperatureK: number
  /** kg/m³ */
  readonly density: number
  /** J/kg */
  readonly enthalpy: number
  /** J/(kg·K) */
  readonly entropy: number
  /** Vapour by mass where it boils, from 0 to 1. */
  readonly quality: number | undefined
}

/** The state that an outcome shows, where it shows one. */
export function stateOf(outcome: Outcome): Running | undefined {
  return outcome.kind === 'dry' ? undefined : outcome.state
}

/** W that an outcome takes from the air in the long run: nothing where the machine stops or freezes. */
export function capacityOf(outcome: Outcome): number {
  if (outcome.kind === 'steady') return performanceOf(outcome.state).capacity
  if (outcome.kind === 'cycling') return outcome.averageCapacity
  return 0
}

export function performanceOf({ solution }: Running): Performance {
  const { compression, suction, condensation } = solution.trial
  return {
    capacity: compression.flow * (suction.enthalpy - condensation.enthalpy),
    power: compression.power,
    flow: compression.flow,
  }
}

export function readingsOf(running: Running): Readings {
  const { setup, solution, leaving } = running
  const { trial } = solution
  const { ports, ductGainK } = setup.machine
  const { bubble, dew } = setup.fluid.refrigerant
  const [, , condenserOutlet, deviceInlet, , evaporatorOutlet] = pointsOf(running) as Corners
  const lowSidePa =
    ports.low === 'compressor' ? trial.guess.suctionPa : trial.evaporatingAt.pressurePa
  const highSidePa = ports.high === 'discharge' ? trial.guess.dischargePa : trial.atCondenserPa
  const liquidLineK =
    ports.liquidThermometer === 'before-restriction'
      ? condenserOutlet.temperatureK
      : deviceInlet.temperatureK
  const suctionLineK = trial.suction.temperatureK
  return {
    lowSidePa,
    highSidePa,
    evaporatorOutletK: evaporatorOutlet.temperatureK,
    suctionLineK,
    dischargeLineK: trial.compression.discharge.temperatureK,
    condenserOutletK: condenserOutlet.temperatureK,
    liquidLineK,
    deviceInletK: deviceInlet.temperatureK,
    ventK: leaving.temperatureK + ductGainK,
    condenserAirK:
      setup.outdoorAir.temperatureK + trial.condensation.airHeat / setup.outdoorAir.capacityRate,
    superheatK: suctionLineK - dew.temperature(lowSidePa),
    subcoolingK: bubble.temperature(Math.min(highSidePa, bubble.toPa)) - liquidLineK,
    bubbles: trial.condensation.quality > 0,
  }
}

export function inventoryOf({ setup, solution }: Running): Inventory {
  const { trial, level } = solution
  const { store } = setup.machine
  const stored = () => {
    if (store.kind === 'none') return 0
    const at = store.kind === 'receiver' ? trial.condensingAt : trial.suctionAt
    const gas =
      store.kind === 'receiver'
        ? at.vapourDensity
        : Math.min(at.vapourDensity, trial.suction.density)
    const share = level ?? 0
    return store.volume * (share * at.liquidDensity + (1 - share) * gas)
  }
  return {
    ...trial.mass,
    receiver: store.kind === 'receiver' ? stored() : 0,
    accumulator: store.kind === 'accumulator' ? stored() : 0,
  }
}

type Corners = readonly [StatePoint, StatePoint, StatePoint, StatePoint, StatePoint, StatePoint]

export function pointsOf({ setup, solution }: Running): readonly StatePoint[] {
  const { fluid } = setup
  const { trial } = solution
  const { suction, suctionAt, compression, dischargeAt, condensation, evaporatingAt } = trial
  const at = (place: StatePoint['place'], point: Point, line: Saturation): StatePoint => {
    const quality = qualityOf(point.enthalpy, line)
    return {
      place,
      pressurePa: line.pressurePa,
      temperatureK: point.temperatureK,
      density: point.density,
      enthalpy: point.enthalpy,
      entropy: point.entropy,
      quality: quality >= 0 && quality <= 1 ? quality : undefined,
    }
  }
  const through = (place: StatePoint['place'], enthalpy: number, line: Saturation) =>
    at(place, fluid.withEnthalpy(enthalpy, line, 'other'), line)
  return [
    at('compressor-inlet', suction, suctionAt),
    at('compressor-outlet', compression.discharge, dischargeAt),
    through('condenser-outlet', condensation.enthalpy, trial.condensingAt),
    through('device-inlet', condensation.enthalpy, trial.deviceAt),
    through('evaporator-inlet', condensation.enthalpy, evaporatingAt),
    through('evaporator-outlet', suction.enthalpy, evaporatingAt),
  ]
}
