/** What regulates how much boils: an expansion valve, or a tube of fixed bore. */
export type Device =
  | {
      readonly kind: 'valve'
      /** Flow coefficient times the area fully open, m². */
      readonly flowArea: number
      /** Superheat at which it begins to open, K. */
      readonly staticSuperheatK: number
      /** Further superheat that opens it fully, K. */
      readonly openingSuperheatK: number
      /** Flow share that passes when it is shut, 0 to 1. */
      readonly bleed: number
    }
  | {
      readonly kind: 'tube'
      readonly length: number
      readonly diameter: number
    }

/** Where liquid that is not needed just now can stand. */
type Store =
  | { readonly kind: 'none' }
  /** Behind the condenser, in front of the device; m³. */
  | { readonly kind: 'receiver'; readonly volume: number }
  /** Behind the evaporator; m³; `bleed` is the liquid by mass in what it lets go, 0 to 0.1. */
  | { readonly kind: 'accumulator'; readonly volume: number; readonly bleed: number }

/** A coil between refrigerant and air. Conductances are those of the whole coil, W/K. */
export interface Coil {
  /** At the nominal flow of refrigerant, while it boils or condenses. */
  readonly refrigerantConductance: number
  /** Conductance of a single phase as a share of that. */
  readonly singlePhaseShare: number
  /** At the nominal flow of air. */
  readonly airConductance: number
  /** Exponent by which the air side follows the air flow. */
  readonly airExponent: number
  /** m³/s of air. */
  readonly airFlow: number
  /** m³ inside. */
  readonly volume: number
}

export interface Compressor {
  /** m³ a revolution, all cylinders, full stroke. */
  readonly displacement: number
  /** Revolutions a second that the shares below belong to. */
  readonly nominalSpeed: number
  /** Space left at the end of a stroke as a share of the displacement. */
  readonly clearance: number
  /** Share of the flow that leaks back, at the nominal speed. */
  readonly leakage: number
  /** Share of the intake lost by throttling at the nominal speed; grows with the square of it. */
  readonly throttling: number
  /** Best isentropic efficiency, the pressure ratio that it belongs to, and how it falls. */
  readonly efficiency: { readonly best: number; readonly atRatio: number; readonly fall: number }
  /** Share of the work that its shell gives off as heat. */
  readonly shellLoss: number
  /** Only where the stroke is variable. */
  readonly stroke?: {
    readonly minimum: number
    /** Suction pressure that it holds, Pa absolute, at the discharge pressure given with it. */
    readonly setPa: number
    readonly setAtDischargePa: number
    /** Pa that the held pressure falls by for each Pa of discharge pressure. */
    readonly droop: number
  }
}

/** What stops the compressor and starts it again. Pa absolute, K. */
export interface Controls {
  /** Feels the fins of the evaporator. */
  readonly thermostat?: { readonly opensK: number; readonly closesK: number }
  /** Feels the low side and cycles the clutch. */
  readonly cyclingSwitch?: { readonly opensPa: number; readonly closesPa: number }
  readonly highCutOutPa: number
  /** Feels the low side and stops the machine. */
  readonly lowCutOutPa?: number
}

/** Where the gauges and the thermometers sit. */
interface Ports {
  /** The low-side fitting: beside the compressor, or beside the evaporator. */
  readonly low: 'compressor' | 'evaporator'
  /** The high-side fitting: in front of the condenser, or behind it in the liquid line. */
  readonly high: 'discharge' | 'liquid'
  /** Where a liquid-line restriction sits, seen from the liquid-line thermometer. */
  readonly liquidThermometer: 'before-restriction' | 'behind-restriction'
}

/** Pressure lost at the nominal flow, Pa, with the density that it belongs to, kg/m³. */
export interface Drop {
  readonly nominalPa: number
  readonly density: number
}

export interface Machine {
  readonly id: string
  /** Designation of `shared/refrigerant`. */
  readonly refrigerant: string
  readonly store: Store
  readonly device: Device
  readonly compressor: Compressor
  readonly condenser: Coil
  readonly evaporator: Coil
  /** Inner volumes, m³. */
  readonly lines: {
    readonly discharge: number
    readonly liquid: number
    readonly suction: number
  }
  readonly drops: { readonly discharge: Drop; readonly liquid: Drop; readonly suction: Drop }
  /** kg/s that conductances and pressure drops are given at. */
  readonly nominalFlow: number
  /** kg: what the label says. */
  readonly charge: number
  readonly controls: Controls
  readonly ports: Ports
  /** Heat that the duct adds between the evaporator and the vent, K. */
  readonly ductGainK: number
}

/** The weather, and how the machine is run. */
export interface Conditions {
  /** Air into the condenser, K. */
  readonly ambientK: number
  /** Air into the evaporator, K. */
  readonly returnAirK: number
  /** Of that air, 0.01 to 1. */
  readonly returnHumidity: number
  /** Pa. */
  readonly barometerPa: number
  /** Revolutions a second of the compressor's shaft. */
  readonly speed: number
  /** Share of the nominal air flow that the fan is set to, and the blower. */
  readonly condenserFan: number
  readonly blower: number
}

/** What is wrong, all together; see NO_FAULTS for a sound machine. */
export interface Faults {
  /** Charge as a share of the label's. */
  readonly charge: number
  /** Air flow left, as a share. */
  readonly condenserAir: number
  readonly evaporatorAir: number
  /** Pa that the liquid line loses beyond its own, at the nominal flow. */
  readonly restrictionPa: number
  /** Opening at which the valve is stuck, 0 to 1. */
  readonly valveStuck?: number
  /** Share of the compressor's flow lost at its nominal speed, beyond its own leakage. */
  readonly leakage: number
  /** Pa of air (non-condensable gas) in the condenser while running. */
  readonly airPa: number
  /** Stroke at which a variable compressor is stuck. */
  readonly strokeStuck?: number
}

/** How far one machine differs from another of its kind; 1 is like the model. */
export interface Deviations {
  readonly condenserConductance: number
  readonly evaporatorConductance: number
  readonly volumetric: number
  readonly isentropic: number
  readonly device: number
}

export const NO_FAULTS: Faults = {
  charge: 1,
  condenserAir: 1,
  evaporatorAir: 1,
  restrictionPa: 0,
  leakage: 0,
  airPa: 0,
}

export const NO_DEVIATIONS: Deviations = {
  condenserConductance: 1,
  evaporatorConductance: 1,
  volumetric: 1,
  isentropic: 1,
  device: 1,
}

/** One question to the model. */
export interface Case {
  readonly machine: Machine
  readonly conditions: Conditions
  readonly faults: Faults
  readonly deviations: Deviations
}
