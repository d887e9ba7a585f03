import { heldSuction } from './branch.ts'
import { airRates } from './condenser.ts'
import type { Guess } from './evaluate.ts'
import { boilingHeat } from './evaporator.ts'
import type { Setup } from './setup.ts'
import { tubeFlux } from './short-tube.ts'

/**
 * Where a search starts: no digit of an answer depends on what is assumed here, only how soon it is
 * found. Middling values of what a compressor fills, of the heat that it adds (J/kg), and of the
 * face of a condenser that condenses.
 */
const FILLING = 0.75
const COMPRESSION = 40e3
const CONDENSING_FACE = 0.85
/** Share of the way to the air's temperature that gas warms up by where little comes through. */
const STARVED_SUPERHEAT = 0.9
const ROUNDS = 2
const HALVINGS = 14
const LEAST_STROKE = 0.05

/**
 * Where the two coils would let a machine settle whose device is always the right one: the
 * evaporating temperature at which the air brings what the compressor takes away, and the
 * condensing temperature at which the other air takes it all; then less, where the device or the
 * line in front of it does not pass that much.
 */
export function firstGuess(setup: Setup): Guess {
  const { fluid, evaporator, outdoorAir, returnAir } = setup
  const { faults } = setup.case
  const { bubble, dew } = fluid.refrigerant
  const given = faults.strokeStuck ?? 1
  const sweep = given * sweptVolume(setup)
  const lowestK = dew.temperature(fluid.lowestPa) + 4
  let condensingK = condensingAt(setup, 0.7 * setup.machine.nominalFlow * 190e3)
  let suctionPa = 0
  let flow = 0
  let stroke = given
  let perKilogram = 0
  for (let round = 0; round < ROUNDS; round += 1) {
    const liquid = fluid.saturation(bubble.pressure(condensingK)).liquidEnthalpy
    let [low, high] = [lowestK, Math.min(returnAir.temperatureK - 1, condensingK - 5)]
    for (let step = 0; step < HALVINGS; step += 1) {
      const middle = (low + high) / 2
      const at = fluid.saturation(dew.pressure(middle))
      const brought = boilingHeat(evaporator, returnAir, middle, 1).whole
      if (sweep * at.vapourDensity * (at.vapourEnthalpy - liquid) > brought) high = middle
      else low = middle
    }
    suctionPa = dew.pressure((low + high) / 2)
    const held =
      faults.strokeStuck === undefined ? heldSuction(setup, bubble.pressure(condensingK)) : 0
    const holds = held > suctionPa
    if (holds) suctionPa = Math.min(held, dew.pressure(returnAir.temperatureK - 2))
    const at = fluid.saturation(suctionPa)
    perKilogram = at.vapourEnthalpy - liquid
    const whole = sweep * at.vapourDensity
    flow = whole
    if (holds) {
      flow = Math.min(whole, boilingHeat(evaporator, returnAir, at.meanK, 1).whole / perKilogram)
      stroke = Math.max(flow / whole, LEAST_STROKE)
    }
    condensingK = condensingAt(setup, flow * (perKilogram + COMPRESSION))
  }
  const dischargePa = dischargeAt(setup, condensingK)
  const most = mostThroughDevice(setup, dischargePa, suctionPa)
  if (most >= flow) {
    const superheatK = faults.valveStuck === undefined ? 5 : flooded(setup, suctionPa, flow / most)
    return { suctionPa, dischargePa, superheatK, stroke }
  }
  const share = Math.max(most / flow, 0.1)
  // a stroke that holds the low side gives way; any other compressor draws it down
  if (stroke < given) stroke = Math.max(stroke * share, LEAST_STROKE)
  else suctionPa = Math.max(suctionPa * share, 1.2 * fluid.lowestPa)
  const excess = (condensingK - outdoorAir.temperatureK) * share
  const warmest = returnAir.temperatureK - fluid.saturation(suctionPa).dewK
  return {
    suctionPa,
    dischargePa: dischargeAt(setup, outdoorAir.temperatureK + Math.max(excess, 2)),
    superheatK: Math.max(5, STARVED_SUPERHEAT * warmest * (1 - share)),
    stroke,
  }
}

/** Share of what a stuck valve passes too much, that comes through unboiled. */
const UNBOILED = 0.7

/** Superheat below 0 of a suction that gets more than the evaporator boils, K. */
function flooded(setup: Setup, suctionPa: number, boiledShare: number): number {
  const { latentHeat, vapourHeatCapacity } = setup.fluid.saturation(suctionPa)
  return (-UNBOILED * (1 - boiledShare) * latentHeat) / vapourHeatCapacity
}

/** The same with a low side held fast at a pressure in Pa, whatever the evaporator brings. */
export function guessAtSuction(setup: Setup, suctionPa: number): Guess {
  const { fluid, outdoorAir } = setup
  const at = fluid.saturation(suctionPa)
  const liquid = fluid.saturation(fluid.refrigerant.bubble.pressure(outdoorAir.temperatureK + 12))
  const flow = sweptVolume(setup) * at.vapourDensity
  const heat = flow * (at.vapourEnthalpy - liquid.liquidEnthalpy + COMPRESSION)
  return {
    suctionPa,
    dischargePa: dischargeAt(setup, condensingAt(setup, heat)),
    superheatK: 5,
    stroke: setup.case.faults.strokeStuck ?? 1,
  }
}

/** m³/s at full stroke. */
function sweptVolume({ machine, case: { conditions, faults } }: Setup): number {
  return machine.compressor.displacement * conditions.speed * FILLING * (1 - faults.leakage)
}

/** K at which the condenser gives off a heat in W. */
function condensingAt({ condenser, outdoorAir, fluid }: Setup, heat: number): number {
  const { boilingRate } = airRates(condenser, outdoorAir, 1)
  const highestK = fluid.refrigerant.bubble.temperature(fluid.highestPa) - 3
  return Math.min(outdoorAir.temperatureK + heat / (boilingRate * CONDENSING_FACE), highestK)
}

function dischargeAt({ fluid, case: { faults } }: Setup, condensingK: number): number {
  const { bubble } = fluid.refrigerant
  return Math.min(bubble.pressure(condensingK) + faults.airPa, 0.97 * fluid.highestPa)
}

/** kg/s of liquid that the open device and the line in front of it pass, from the one pressure to the other. */
function mostThroughDevice(setup: Setup, fromPa: number, toPa: number): number {
  const { fluid, machine, liquidDropPa } = setup
  const { device } = machine
  const at = fluid.saturation(fromPa)
  const drive = at.liquidDensity * Math.max(fromPa - toPa, 1)
  const area =
    device.kind === 'valve'
      ? device.flowArea * (setup.case.faults.valveStuck ?? 1)
      : ((Math.PI / 4) *
          device.diameter ** 2 *
          tubeFlux(fluid, device, { at, liquidK: at.bubbleK - 5, quality: 0 })) /
        Math.sqrt(drive)
  const line = (area * area * at.liquidDensity * liquidDropPa) / machine.nominalFlow ** 2
  return area * Math.sqrt(drive / (1 + line))
}
