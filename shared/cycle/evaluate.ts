import type { Branch } from './branch.ts'
import { type Compression, compress } from './compressor.ts'
import { type Condensation, condense } from './condenser.ts'
import { type DeviceFlow, deviceFlow } from './device.ts'
import { countTrial } from './effort.ts'
import { type Evaporation, evaporate } from './evaporator.ts'
import { boiling, type Point, qualityOf, type Saturation } from './fluid.ts'
import type { Setup } from './setup.ts'
import type { Drop } from './types.ts'
import { voidFraction } from './void-fraction.ts'

/** What the solver moves. */
export interface Guess {
  /** At the compressor, Pa absolute. */
  readonly suctionPa: number
  readonly dischargePa: number
  /**
   * How far the suction is beyond saturated vapour: enthalpy over the heat capacity of that vapour,
   * K. Below 0 liquid comes along.
   */
  readonly superheatK: number
  readonly stroke: number
  /** Share of the time that the compressor runs, by its clutch; 1 where it is left out. */
  readonly duty?: number
  /** Of a state that was found: how its balances turn with what is sought, to start another from. */
  readonly slopes?: Slopes
}

/** A Jacobian of the unknowns and balances of one branch. */
interface Slopes {
  readonly of: Branch
  readonly jacobian: Float64Array
}

/** One trial of the whole machine, each part fed by the one before it. */
export interface Trial {
  readonly guess: Guess
  /** Behind the discharge line, air and all, Pa. */
  readonly atCondenserPa: number
  readonly suctionAt: Saturation
  readonly dischargeAt: Saturation
  readonly condensingAt: Saturation
  readonly evaporatingAt: Saturation
  /** In front of the device. */
  readonly deviceAt: Saturation
  readonly suction: Point
  readonly compression: Compression
  readonly condensation: Condensation
  readonly evaporation: Evaporation
  readonly device: DeviceFlow
  /** Pressure that the flow needs through liquid line and device over what there is: 1 in balance. */
  readonly driveNeeded: number
  /** Superheat at the evaporator's outlet as the bulb feels it, K; below 0 wet. */
  readonly bulbK: number
  /** kg by part; the store is not in it. */
  readonly mass: {
    readonly compressorAndDischarge: number
    readonly condenser: number
    readonly liquidLine: number
    readonly evaporator: number
    readonly suctionLine: number
  }
}

/** Trials of a duty outside of these lead nowhere. */
const LEAST_DUTY = 1e-3
const MOST_DUTY = 5

/** Exponent by which the refrigerant's side follows its flow (turbulent flow in tubes). */
const FILM_EXPONENT = 0.8

/**
 * Follow the refrigerant round once. Nothing is searched for but single states; `undefined` where
 * the trial leaves what a machine can be: pressures the wrong way round, air on the wrong side.
 *
 * @param saturatedOutlet - A receiver with liquid in it lets saturated liquid go, whatever the
 *   condenser of the trial makes; once solved the condenser makes just that. Without it the
 *   answer would stand on a corner.
 */
export function tryOut(setup: Setup, guess: Guess, saturatedOutlet = false): Trial | undefined {
  countTrial()
  const { fluid, machine } = setup
  const { conditions, faults, deviations } = setup.case
  const { suctionPa, dischargePa } = guess
  if (!(suctionPa > fluid.lowestPa && dischargePa < fluid.highestPa && dischargePa > suctionPa)) {
    return undefined
  }
  const suctionAt = fluid.saturation(suctionPa)
  const dischargeAt = fluid.saturation(dischargePa)
  const suction = suctionPoint(setup, suctionAt, guess.superheatK)
  if (suction === undefined) return undefined
  const compression = compress(machine.compressor, fluid, suction, dischargeAt, {
    speed: conditions.speed,
    stroke: guess.stroke,
    leakage: faults.leakage,
    volumetric: deviations.volumetric,
    isentropic: deviations.isentropic,
  })
  const { flow, discharge } = compression
  if (!(flow > 0)) return undefined
  const share = flow / machine.nominalFlow
  const film = share ** FILM_EXPONENT
  // a clutch stops compressor and condenser alike; what is stored keeps device and evaporator going
  const duty = guess.duty ?? 1
  const meanFlow = duty * flow
  if (!(duty > LEAST_DUTY && duty < MOST_DUTY)) return undefined

  const atCondenserPa = dischargePa - dropPa(machine.drops.discharge, share, discharge.density)
  const condensingPa = atCondenserPa - faults.airPa
  if (!(condensingPa > suctionPa)) return undefined
  const condensingAt = fluid.saturation(condensingPa)
  const condensed = condense(fluid, setup.condenser, setup.outdoorAir, condensingAt, {
    point: discharge,
    flow,
    film,
  })
  if (condensed === undefined) return undefined
  const condensation = saturatedOutlet
    ? { ...condensed, enthalpy: condensingAt.liquidEnthalpy, quality: 0 }
    : condensed

  const evaporatingPa = suctionPa + dropPa(machine.drops.suction, share, suction.density)
  if (!(evaporatingPa < condensingPa)) return undefined
  const evaporatingAt = fluid.saturation(evaporatingPa)
  const evaporation = evaporate(fluid, setup.evaporator, setup.returnAir, evaporatingAt, {
    enthalpy: condensation.enthalpy,
    flow: meanFlow,
    film: (duty * share) ** FILM_EXPONENT,
  })
  if (evaporation === undefined) return undefined

  const bulbK = (suction.enthalpy - evaporatingAt.vapourEnthalpy) / evaporatingAt.vapourHeatCapacity
  const { deviceAt, device, driveNeeded } = feed(
    setup,
    { atCondenserPa, condensingAt, bulbK },
    meanFlow,
    condensation,
    evaporatingAt,
  )
  return {
    guess,
    atCondenserPa,
    suctionAt,
    dischargeAt,
    condensingAt,
    evaporatingAt,
    deviceAt,
    suction,
    compression,
    condensation,
    evaporation,
    device,
    driveNeeded,
    bulbK,
    mass: {
      compressorAndDischarge: machine.lines.discharge * discharge.density,
      condenser: condensation.mass,
      liquidLine: machine.lines.liquid * lineDensity(condensation, condensingAt),
      evaporator: evaporation.mass,
      suctionLine: machine.lines.suction * lineDensityOf(suction.enthalpy, suctionAt, suction),
    },
  }
}

/** Least share of the pressure in front of it that a device is tried at, behind a line that takes more than there is. */
const LEAST_DRIVE = 0.03

/** Through the liquid line to the device, how much that would pass, and what drives a flow through both. */
export function feed(
  setup: Setup,
  from: Pick<Trial, 'atCondenserPa' | 'condensingAt' | 'bulbK'>,
  flow: number,
  { quality, enthalpy }: Condensation,
  evaporatingAt: Saturation,
): Pick<Trial, 'deviceAt' | 'device' | 'driveNeeded'> {
  const { fluid, machine, liquidDropPa } = setup
  const density =
    quality > 0
      ? boiling(from.condensingAt, Math.min(quality, 1)).density
      : from.condensingAt.liquidDensity
  const share = flow / machine.nominalFlow
  const lostPa = dropPa({ ...machine.drops.liquid, nominalPa: liquidDropPa }, share, density)
  const downstreamPa = evaporatingAt.pressurePa
  const available = from.atCondenserPa - downstreamPa
  const drive = Math.max(available - lostPa, LEAST_DRIVE * available)
  const deviceAt = fluid.saturation(downstreamPa + drive)
  const device = deviceFlow(machine.device, fluid, {
    at: deviceAt,
    enthalpy,
    downstreamPa,
    superheatK: from.bulbK,
    stuck: setup.case.faults.valveStuck,
    size: setup.case.deviations.device,
  })
  const driveNeeded = (lostPa + drive * (flow / device.flow) ** 2) / available
  return { deviceAt, device, driveNeeded }
}

/** Gas as given by its superheat, or liquid and gas together below it. */
function suctionPoint(setup: Setup, at: Saturation, superheatK: number): Point | undefined {
  const enthalpy = at.vapourEnthalpy + superheatK * at.vapourHeatCapacity
  if (superheatK <= 0) {
    const quality = qualityOf(enthalpy, at)
    return quality > 0 ? boiling(at, quality) : undefined
  }
  return setup.fluid.withEnthalpy(enthalpy, at, 'suction')
}

/** Pa lost by a flow, as the square of it and the inverse of the density. */
function dropPa(drop: Drop, share: number, density: number): number {
  return (drop.nominalPa * share * share * drop.density) / density
}

/** Liquid line: full of liquid, or of what the condenser could not condense. */
function lineDensity(condensation: Condensation, at: Saturation): number {
  if (condensation.quality <= 0) return at.liquidDensity
  const alpha = voidFraction(Math.min(condensation.quality, 1), at.liquidDensity, at.vapourDensity)
  return alpha * at.vapourDensity + (1 - alpha) * at.liquidDensity
}

function lineDensityOf(enthalpy: number, at: Saturation, point: Point): number {
  const quality = qualityOf(enthalpy, at)
  if (quality >= 1) return point.density
  const alpha = voidFraction(Math.max(quality, 0), at.liquidDensity, at.vapourDensity)
  return alpha * at.vapourDensity + (1 - alpha) * at.liquidDensity
}
