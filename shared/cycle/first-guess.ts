import { heldSuction } from './branch.ts'
import { airRates } from './condenser.ts'
import type { Guess } from './evaluate.ts'
import { boilingHeat } from './evaporator.ts'
import type { Setup } from './setup.ts'
import { tubeFlux } from './short-tube.ts'

/** Of a middling compressor; it only places the start. */
const FILLING = 0.75
/** J/kg that compression adds, middling. */
const COMPRESSION = 40e3
/** Share of a condenser that condenses. */
const CONDENSING_FACE = 0.85
/** The same with a low side held fast at a pressure in Pa, whatever the evaporator brings. */
export function guessAtSuction(setup: Setup, suctionPa: number): Guess {
  const { fluid, machine, condenser, outdoorAir } = setup
  const { conditions, faults } = setup.case
  const at = fluid.saturation(suctionPa)
  const { boilingRate } = airRates(condenser, outdoorAir, 1)
  const sweep = machine.compressor.displacement * conditions.speed * FILLING * (1 - faults.leakage)
  // a liquid at about the air's temperature: half of what it is warmer by is taken as given
  const liquid = fluid.saturation(
    fluid.refrigerant.bubble.pressure(outdoorAir.temperatureK + 12),
  ).liquidEnthalpy
  const given = sweep * at.vapourDensity * (at.vapourEnthalpy - liquid + COMPRESSION)
  const condensingK = Math.min(
    outdoorAir.temperatureK + given / (boilingRate * CONDENSING_FACE),
    fluid.refrigerant.bubble.temperature(fluid.highestPa) - 3,
  )
  const dischargePa = fluid.refrigerant.bubble.pressure(condensingK) + faults.airPa
  return {
    suctionPa,
    dischargePa: Math.min(dischargePa, 0.97 * fluid.highestPa),
    superheatK: 5,
    stroke: faults.strokeStuck ?? 1,
  }
}

/** Share of the way to the air's temperature that gas warms up by where little comes through. */
const STARVED_SUPERHEAT = 0.9
const ROUNDS = 2
const HALVINGS = 14

/**
 * Where the two coils would let a machine settle whose device is always the right one: the
 * evaporating temperature at which the air brings what the compressor takes away, and the
 * condensing temperature at which the other air takes it all. No digit of the answer depends on it.
 */
export function firstGuess(setup: Setup): Guess {
  const { fluid, machine, condenser, evaporator, outdoorAir, returnAir } = setup
  const { conditions, faults } = setup.case
  const { bubble, dew } = fluid.refrigerant
  const sweep = machine.compressor.displacement * conditions.speed * FILLING * (1 - faults.leakage)
  const stroke = faults.strokeStuck ?? 1
  const highestK = bubble.temperature(fluid.highestPa) - 3
  const lowestK = dew.temperature(fluid.lowestPa) + 4
  const { boilingRate } = airRates(condenser, outdoorAir, 1)
  let condensingK = Math.min(outdoorAir.temperatureK + 15, highestK)
  let evaporatingK = lowestK
  let flow = 0
  for (let round = 0; round < ROUNDS; round += 1) {
    const liquid = fluid.saturation(bubble.pressure(condensingK)).liquidEnthalpy
    let [low, high] = [lowestK, Math.min(returnAir.temperatureK - 1, condensingK - 5)]
    for (let step = 0; step < HALVINGS; step += 1) {
      evaporatingK = (low + high) / 2
      const at = fluid.saturation(dew.pressure(evaporatingK))
      flow = stroke * sweep * at.vapourDensity
      const brought = boilingHeat(evaporator, returnAir, evaporatingK, 1).whole
      if (flow * (at.vapourEnthalpy - liquid) > brought) high = evaporatingK
      else low = evaporatingK
    }
    const at = fluid.saturation(dew.pressure(evaporatingK))
    const given = flow * (at.vapourEnthalpy - liquid + COMPRESSION)
    condensingK = Math.min(
      outdoorAir.temperatureK + given / (boilingRate * CONDENSING_FACE),
      highestK,
    )
  }
  const dischargePa = Math.min(bubble.pressure(condensingK) + faults.airPa, 0.97 * fluid.highestPa)
  const suctionPa = dew.pressure(evaporatingK)
  const heldPa = heldSuction(setup, dischargePa)
  const most = mostThroughDevice(setup, dischargePa, suctionPa)
  if (most < flow) return starvedGuess(setup, { flow, most, suctionPa, dischargePa })
  return {
    suctionPa: faults.strokeStuck === undefined ? Math.max(suctionPa, heldPa) : suctionPa,
    dischargePa,
    superheatK: 5,
    stroke: faults.strokeStuck ?? Math.min(1, suctionPa < heldPa ? 0.6 : 1),
  }
}

/** kg/s of liquid that the open device and the line in front of it pass, from the one pressure to the other. */
function mostThroughDevice(setup: Setup, fromPa: number, toPa: number): number {
  const { fluid, machine, liquidDropPa } = setup
  const { device } = machine
  const at = fluid.saturation(fromPa)
  const drive = at.liquidDensity * (fromPa - toPa)
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

/** The compressor draws the low side down until it takes no more than comes through. */
function starvedGuess(
  setup: Setup,
  from: {
    readonly flow: number
    readonly most: number
    readonly suctionPa: number
    readonly dischargePa: number
  },
): Guess {
  const { fluid, outdoorAir, returnAir } = setup
  const share = Math.max(from.most / from.flow, 0.1)
  const suctionPa = Math.max(from.suctionPa * share, 1.2 * fluid.lowestPa)
  const { bubble } = fluid.refrigerant
  const excess = bubble.temperature(from.dischargePa) - outdoorAir.temperatureK
  const dischargePa = bubble.pressure(outdoorAir.temperatureK + Math.max(share * excess, 3))
  const held = heldSuction(setup, dischargePa)
  const stuck = setup.case.faults.strokeStuck
  return {
    suctionPa: stuck === undefined ? Math.max(suctionPa, held) : suctionPa,
    dischargePa: Math.min(dischargePa + setup.case.faults.airPa, 0.97 * fluid.highestPa),
    superheatK: Math.max(
      5,
      STARVED_SUPERHEAT * (returnAir.temperatureK - fluid.saturation(suctionPa).dewK) * (1 - share),
    ),
    stroke: stuck ?? (suctionPa < held ? Math.max(0.3, share) : 1),
  }
}
