import { refrigerant } from '../refrigerant/index.ts'
import { type AirStream, airStream } from './air.ts'
import { cycleFluid, type Fluid } from './fluid.ts'
import type { Case, Coil, Machine } from './types.ts'

/** A case with all worked out that does not change while it is solved. */
export interface Setup {
  readonly case: Case
  readonly machine: Machine
  readonly fluid: Fluid
  readonly condenser: Coil
  readonly evaporator: Coil
  readonly outdoorAir: AirStream
  readonly returnAir: AirStream
  /** kg in the machine. */
  readonly charge: number
  /** Pa of liquid-line loss at the nominal flow, restriction and all. */
  readonly liquidDropPa: number
}

/** Air outdoors is counted as this humid: it is only heated, and a condenser hardly feels it. */
const OUTDOOR_HUMIDITY = 0.4

/** Prepare a case. Throws CalcError 'out-of-range' for air that no machine meets. */
export function setUp(asked: Case): Setup {
  const { machine, conditions, faults, deviations } = asked
  const condenserFlow = machine.condenser.airFlow * conditions.condenserFan * faults.condenserAir
  const evaporatorFlow = machine.evaporator.airFlow * conditions.blower * faults.evaporatorAir
  return {
    case: asked,
    machine,
    fluid: cycleFluid(refrigerant(machine.refrigerant)),
    condenser: scaled(
      machine.condenser,
      conditions.condenserFan * faults.condenserAir,
      deviations.condenserConductance,
    ),
    evaporator: scaled(
      machine.evaporator,
      conditions.blower * faults.evaporatorAir,
      deviations.evaporatorConductance,
    ),
    outdoorAir: airStream(
      conditions.ambientK,
      OUTDOOR_HUMIDITY,
      conditions.barometerPa,
      condenserFlow,
    ),
    returnAir: airStream(
      conditions.returnAirK,
      conditions.returnHumidity,
      conditions.barometerPa,
      evaporatorFlow,
    ),
    charge: machine.charge * faults.charge,
    liquidDropPa: machine.drops.liquid.nominalPa + faults.restrictionPa,
  }
}

function scaled(coil: Coil, air: number, conductance: number): Coil {
  return {
    ...coil,
    airConductance: coil.airConductance * air ** coil.airExponent * conductance,
    refrigerantConductance: coil.refrigerantConductance * conductance,
  }
}
