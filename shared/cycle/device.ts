import type { Fluid, Point, Saturation } from './fluid.ts'
import { qualityOf } from './fluid.ts'
import { mixtureShare, tubeFlux, twoPhaseFactor } from './short-tube.ts'
import type { Device } from './types.ts'

/** What stands in front of a device, and behind it. */
interface DeviceInlet {
  /** Saturation at the pressure in front of it. */
  readonly at: Saturation
  /** J/kg. */
  readonly enthalpy: number
  /** Pa behind it. */
  readonly downstreamPa: number
  /** K that the bulb feels at the evaporator's outlet. */
  readonly superheatK: number
  /** Opening at which a valve is stuck. */
  readonly stuck?: number | undefined
  /** Size of this one against the model's. */
  readonly size: number
}

/** kg/s through a device, and how far a valve is open. */
export interface DeviceFlow {
  readonly flow: number
  readonly opening: number
}

/** Rounds off the corner where a valve begins to open, share of its stroke. */
const CORNER = 0.03

/**
 * Flow through an expansion valve or a fixed tube.
 *
 * Valve: ṁ = C A a √(ρ(p_up − p_down)), the opening a = 2s − s² of the share s that the superheat
 * has gone beyond the static one (Li, Purdue 2004, as given in public research codes), at least its
 * bleed, at most 1. Vapour in front of it thins the mixture, and cuts the flow further by the factor
 * of the short tube, for want of a better one. Tube: see `short-tube.ts`.
 */
export function deviceFlow(device: Device, fluid: Fluid, inlet: DeviceInlet): DeviceFlow {
  const { at, enthalpy } = inlet
  const quality = qualityOf(enthalpy, at)
  const drive = at.pressurePa - inlet.downstreamPa
  const liquid: Point = fluid.withEnthalpy(Math.min(enthalpy, at.liquidEnthalpy), at, 'liquid')
  const tube = device.kind === 'tube' ? device : { length: VALVE_LENGTH_RATIO, diameter: 1 }
  const upstream = { at, liquidK: liquid.temperatureK, quality: Math.max(quality, 0) }
  const cut = twoPhaseFactor(fluid, tube, upstream)
  if (device.kind === 'valve') {
    const opening = inlet.stuck ?? valveOpening(device, inlet.superheatK)
    const density = liquid.density * mixtureShare(at, upstream.quality)
    const full = device.flowArea * Math.sqrt(density * drive)
    return { flow: full * opening * cut * inlet.size, opening }
  }
  const area = (Math.PI / 4) * device.diameter * device.diameter
  // the published flux is that of choked flow: it must end where no pressure drives it
  const choked = Math.sqrt(1 - (inlet.downstreamPa / at.pressurePa) ** 4)
  const flux = tubeFlux(fluid, device, upstream) * cut
  return { flow: flux * area * choked * inlet.size, opening: 1 }
}

/** Length over diameter that stands for a valve's seat in the two-phase factor: assumed. */
const VALVE_LENGTH_RATIO = 8

/** Opening of a healthy valve, from its bleed to 1. */
function valveOpening(valve: Extract<Device, { kind: 'valve' }>, superheatK: number): number {
  const beyond = (superheatK - valve.staticSuperheatK) / valve.openingSuperheatK
  const share = beyond > 1 ? 1 : (beyond + Math.sqrt(beyond * beyond + CORNER * CORNER)) / 2
  const s = Math.min(share, 1)
  return valve.bleed + (1 - valve.bleed) * (2 * s - s * s)
}
