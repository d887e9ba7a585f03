import {
  capacityOf,
  inventoryOf,
  type Outcome,
  performanceOf,
  pointsOf,
  type Running,
  readingsOf,
  stateOf,
} from '../../cycle/index.ts'
import type { Place } from '../../instrument/index.ts'
import {
  absolutePressure,
  fraction,
  mass,
  massFlow,
  power,
  type Quantity,
  specificEnergy,
  specificEntropy,
  temperature,
  temperatureDifference,
} from '../../quantity/index.ts'

/** What gauges and thermometers show, in the order of the refrigerant's flow, then the air. */
export const READINGS = [
  'suctionPressure',
  'dischargePressure',
  'liquidPressure',
  'suctionTemperature',
  'dischargeTemperature',
  'liquidTemperature',
  'deviceInletTemperature',
  'evaporatorOutletTemperature',
  'superheat',
  'subcooling',
  'ventTemperature',
  'condenserOutletAir',
] as const
export type Reading = (typeof READINGS)[number]

/** What no gauge shows. `capacity` is that of the long run, the others hold while it runs. */
export const PERFORMANCE = [
  'capacity',
  'power',
  'heatTaken',
  'heatRejected',
  'shellLoss',
  'flow',
] as const

export const PARTS = [
  'compressorAndDischarge',
  'condenser',
  'receiver',
  'liquidLine',
  'evaporator',
  'accumulator',
  'suctionLine',
] as const

/** A corner of the cycle, of the refrigerant alone. */
interface Point {
  readonly name: string
  readonly pressure: Quantity
  readonly temperature: Quantity
  readonly enthalpy: Quantity
  readonly entropy: Quantity
}

type Figures<Name extends string> = Readonly<Record<Name, Quantity>>

/** A machine as it is looked at: what can be read, what cannot, where its refrigerant is. */
export interface View {
  readonly outcome: Outcome
  /** W taken from the air in the long run. */
  readonly capacity: Quantity<'power'>
  /** Nothing where no state is. */
  readonly running?: {
    readonly readings: Figures<Reading>
    readonly performance: Figures<(typeof PERFORMANCE)[number]>
    readonly points: readonly Point[]
    readonly parts: readonly {
      readonly part: (typeof PARTS)[number]
      readonly mass: Quantity<'mass'>
    }[]
    readonly remarks: Running['remarks']
    readonly bubbles: boolean
    /** Filled share of the receiver or accumulator. */
    readonly storeLevel: Quantity<'fraction'> | undefined
  }
}

/** Looks at an outcome: absolute pressures become those of a gauge in its own weather. */
export function viewOf(outcome: Outcome, place: Place): View {
  const capacity = power(capacityOf(outcome))
  const state = stateOf(outcome)
  if (state === undefined) return { outcome, capacity }
  const { level } = state.solution
  return {
    outcome,
    capacity,
    running: {
      readings: shownReadings(state, place),
      performance: { capacity, ...whileRunning(state) },
      points: pointsOf(state).map((point) => ({
        name: point.place,
        pressure: absolutePressure(point.pressurePa),
        temperature: temperature(point.temperatureK),
        enthalpy: specificEnergy(point.enthalpy),
        entropy: specificEntropy(point.entropy),
      })),
      parts: partsOf(state),
      remarks: state.remarks,
      bubbles: readingsOf(state).bubbles,
      storeLevel: level === undefined ? undefined : fraction(level),
    },
  }
}

function shownReadings(state: Running, place: Place): Figures<Reading> {
  const readings = readingsOf(state)
  const { guess, atCondenserPa } = state.solution.trial
  const gauge = (pressurePa: number) => place.gauge(pressurePa).within(undefined)
  return {
    suctionPressure: gauge(readings.lowSidePa),
    dischargePressure: gauge(guess.dischargePa),
    liquidPressure: gauge(atCondenserPa),
    suctionTemperature: temperature(readings.suctionLineK),
    dischargeTemperature: temperature(readings.dischargeLineK),
    liquidTemperature: temperature(readings.liquidLineK),
    deviceInletTemperature: temperature(readings.deviceInletK),
    evaporatorOutletTemperature: temperature(readings.evaporatorOutletK),
    superheat: temperatureDifference(readings.superheatK),
    subcooling: temperatureDifference(readings.subcoolingK),
    ventTemperature: temperature(readings.ventK),
    condenserOutletAir: temperature(readings.condenserAirK),
  }
}

function whileRunning(state: Running) {
  const rates = performanceOf(state)
  const { compression, condensation } = state.solution.trial
  return {
    power: power(rates.power),
    heatTaken: power(rates.capacity),
    // from the side of the air: the balance is not assumed
    heatRejected: power(condensation.airHeat),
    shellLoss: power(compression.shellHeat),
    flow: massFlow(rates.flow),
  }
}

/** Mass by part, of the parts that the machine has. */
function partsOf(state: Running) {
  const inventory = inventoryOf(state)
  const { kind } = state.setup.machine.store
  return PARTS.filter(
    (part) => (part !== 'receiver' && part !== 'accumulator') || part === kind,
  ).map((part) => ({ part, mass: mass(inventory[part]) }))
}
