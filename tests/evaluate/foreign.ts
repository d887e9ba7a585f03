import { airStream, saturatedAirEnthalpy } from '../../shared/cycle/air.ts'
import { cycleFluid, type Fluid, type Point, type Saturation } from '../../shared/cycle/fluid.ts'
import type { Conditions, FaultKind, Preset } from '../../shared/cycle/index.ts'
import { newton } from '../../shared/cycle/newton.ts'
import { FEATURES, type Feature } from '../../shared/diagnosis/features.ts'
import { refrigerant } from '../../shared/refrigerant/index.ts'
import { attempt } from '../../shared/substance/attempt.ts'
import type { Plant, Shown } from './plant.ts'

/**
 * A plant of another structure than `shared/cycle`, so that the diagnosis is asked about machines
 * that it does not invert: one lumped condenser whose flooded share follows from the charge, a
 * bypassed evaporator, constant isentropic efficiency, no pressure drops, a valve that opens along a
 * straight line, a tube by Bernoulli's law, constant mean void fractions, and no film that follows
 * the flow. Only the properties of refrigerant and air are shared.
 */
export interface Design {
  readonly preset: Preset
  /** m³/s at the nominal speed. */
  readonly swept: number
  readonly isentropic: number
  /** Share of the swept volume lost for each whole pressure ratio. */
  readonly lossPerRatio: number
  readonly condenserUa: number
  readonly condenserAir: number
  readonly evaporatorUa: number
  readonly evaporatorAir: number
  /** Share of the span from boiling refrigerant to air that lies on the refrigerant's side. */
  readonly surfaceShare: number
  readonly staticSuperheatK: number
  readonly gainK: number
  readonly usualOpening: number
  /** Flow area fully open, or of the tube; m². */
  readonly area: number
  /** m³ */
  readonly condenserVolume: number
  readonly lineVolume: number
  readonly evaporatorVolume: number
  readonly storeVolume: number
  /** kg */
  readonly charge: number
  readonly nominalFlow: number
  /** Pa absolute that a stroke holds. */
  readonly heldPa: number
  /** K of the fins at which a clutch opens. */
  readonly finsK: number
  readonly suctionGainK: number
  readonly ductGainK: number
}

/** Mean share of the volume that gas fills where it condenses, and where it boils. */
const VOID = { condenser: 0.8, evaporator: 0.86 }
const AIR_EXPONENT = 0.62
/** Flow coefficient of valve and tube, and what a tube sees of the saturation pressure. */
const CONTRACTION = 0.65
const CHOKES_AT = 0.88
/** Vapour that a condenser which lacks so much of its liquid lets through. */
const SHORT = 2.2

interface Faulty {
  readonly charge: number
  readonly condenserAir: number
  readonly evaporatorAir: number
  readonly restrictionPa: number
  readonly leak: number
  readonly airPa: number
  readonly stuck: number | undefined
  readonly stroke: number | undefined
}

function faultyBy(design: Design, cause: FaultKind | 'none', severity: number): Faulty {
  const to = (from: number, end: number, of: FaultKind) =>
    cause === of ? from + severity * (end - from) : from
  const { usualOpening } = design
  const charge = cause === 'undercharge' ? 1 - 0.65 * severity : to(1, 1.7, 'overcharge')
  const stuck =
    cause === 'valve-stuck-open'
      ? to(usualOpening, 1, cause)
      : cause === 'valve-stuck-closed'
        ? to(usualOpening, 0.04, cause)
        : undefined
  const stroke =
    cause === 'stroke-stuck-high'
      ? to(0.7, 1, cause)
      : cause === 'stroke-stuck-low'
        ? to(0.7, LEAST_STROKE, cause)
        : undefined
  return {
    charge,
    condenserAir: to(1, 0.25, 'condenser-air'),
    evaporatorAir: to(1, 0.25, 'evaporator-air'),
    restrictionPa: to(0, 12e5, 'restriction'),
    leak: to(0, 0.65, 'compressor-leak'),
    airPa: to(0, 3e5, 'air'),
    stuck,
    stroke,
  }
}

const LEAST_STROKE = 0.07

interface State {
  readonly boilsK: number
  readonly condensesK: number
  readonly superheatK: number
  readonly stroke: number
  /** Flooded share of the condenser where an accumulator holds the superheat; else it follows. */
  readonly flooded: number | undefined
}

interface Round {
  readonly residuals: readonly [device: number, condenser: number, evaporator: number]
  readonly low: Saturation
  readonly high: Saturation
  readonly suction: Point
  readonly discharge: Point
  readonly flow: number
  readonly subcoolingK: number
  readonly flooded: number
  /** kg that would stand in an accumulator. */
  readonly spare: number
  readonly finsK: number
  readonly heat: number
  readonly capacity: number
  readonly leavingK: number
}

function streams(design: Design, conditions: Conditions, faulty: Faulty) {
  const outdoor = airStream(
    conditions.ambientK,
    0.4,
    conditions.barometerPa,
    design.condenserAir * conditions.condenserFan * faulty.condenserAir,
  )
  const indoor = airStream(
    conditions.returnAirK,
    conditions.returnHumidity,
    conditions.barometerPa,
    design.evaporatorAir * conditions.blower * faulty.evaporatorAir,
  )
  return { outdoor, indoor }
}

/** Once round; undefined where pressures lie the wrong way round. */
function round(
  design: Design,
  fluid: Fluid,
  conditions: Conditions,
  faulty: Faulty,
  state: State,
): Round | undefined {
  const { boilsK, condensesK, superheatK, stroke } = state
  const { outdoor, indoor } = streams(design, conditions, faulty)
  const { bubble, dew } = fluid.refrigerant
  if (!(boilsK < condensesK - 2 && condensesK < 0.97 * bubble.toK && boilsK > dew.fromK + 3))
    return undefined
  const low = fluid.saturation(dew.pressure(boilsK))
  const high = fluid.saturation(bubble.pressure(condensesK))
  const dischargePa = high.pressurePa + faulty.airPa
  const speed = conditions.speed / design.preset.nominal.speed
  const suction = fluid.withEnthalpy(
    low.vapourEnthalpy + superheatK * low.vapourHeatCapacity,
    low,
    'suction',
  )
  const at = fluid.saturation(dischargePa)
  const ideal = fluid.withEntropy(Math.max(suction.entropy, at.vapourEntropy), at, 'isentropic')
  const ratio = dischargePa / low.pressurePa
  const filled = Math.max(0.1, 0.93 - design.lossPerRatio * ratio)
  const flow = design.swept * speed * stroke * suction.density * filled * (1 - faulty.leak)
  const work = (ideal.enthalpy - suction.enthalpy) / design.isentropic
  const discharge = fluid.withEnthalpy(
    suction.enthalpy + work * (1 + 0.5 * faulty.leak),
    at,
    'discharge',
  )

  const gap = Math.max(conditions.returnAirK - boilsK, 1)
  // gas can be warmed no further than by the air
  if (superheatK >= WARMEST * gap) return undefined
  const dry = dryShare(superheatK, gap)
  const mixed = (each: Saturation, share: number) =>
    (1 - share) * each.liquidDensity + share * each.vapourDensity
  const inEvaporator =
    design.evaporatorVolume * ((1 - dry) * mixed(low, VOID.evaporator) + dry * suction.density)
  const inCondenser = design.condenserVolume * mixed(high, VOID.condenser)
  const room = design.condenserVolume * (high.liquidDensity - mixed(high, VOID.condenser))
  const total = design.charge * faulty.charge
  const rest = total - inEvaporator - inCondenser - design.lineVolume * high.liquidDensity
  const { store } = design.preset.machine
  const holds = design.storeVolume * (high.liquidDensity - high.vapourDensity)
  const beyond =
    store.kind === 'receiver'
      ? rest < 0
        ? rest
        : Math.max(0, rest - holds)
      : store.kind === 'accumulator'
        ? rest - (superheatK < 0 ? holds : 0)
        : rest
  const flooded = state.flooded ?? beyond / room
  const full = Math.min(0.92, (flooded + Math.sqrt(flooded * flooded + 1e-4)) / 2)
  const short = (Math.sqrt(flooded * flooded + 1e-4) - flooded) / 2
  const quality = Math.min(0.9, SHORT * Math.max(0, short - 0.004))

  const fan = (conditions.condenserFan * faulty.condenserAir) ** AIR_EXPONENT
  const thinned = 1 - 0.2 * Math.min(1, faulty.airPa / 3e5)
  const ntu = (design.condenserUa * fan * thinned) / outdoor.capacityRate
  const over = condensesK - conditions.ambientK
  const condensing = outdoor.capacityRate * (1 - full) * (1 - Math.exp(-ntu)) * over
  const liquidFilm = design.condenserUa * fan * 0.5
  const subcoolingK = over * (1 - Math.exp((-liquidFilm * full) / (flow * high.liquidHeatCapacity)))
  const leaves =
    high.liquidEnthalpy + quality * high.latentHeat - high.liquidHeatCapacity * subcoolingK
  const given = flow * (discharge.enthalpy - high.liquidEnthalpy - quality * high.latentHeat)

  const bypass = Math.exp(
    (-design.evaporatorUa *
      (conditions.blower * faulty.evaporatorAir) ** AIR_EXPONENT *
      (1 - dry)) /
      indoor.capacityRate,
  )
  const finsK = boilsK + design.surfaceShare * gap
  const wet = indoor.enthalpy - saturatedAirEnthalpy(finsK, conditions.barometerPa)
  const sensible = indoor.heatCapacity * (indoor.temperatureK - finsK)
  const capacity = indoor.dryFlow * (1 - bypass) * Math.max(wet, sensible)
  const taken = flow * (suction.enthalpy - leaves)

  const beforePa =
    high.pressurePa - faulty.restrictionPa * (flow / design.nominalFlow) ** 2 * (1 + 4 * quality)
  const density = 1 / ((1 - quality) / high.liquidDensity + quality / high.vapourDensity)
  const opening =
    faulty.stuck ??
    Math.min(1, Math.max(0.03, (superheatK - design.staticSuperheatK) / design.gainK))
  const saturatedPa = bubble.pressure(condensesK - subcoolingK)
  const drive =
    design.preset.machine.device.kind === 'valve'
      ? beforePa - low.pressurePa
      : beforePa - Math.max(low.pressurePa, CHOKES_AT * Math.min(saturatedPa, beforePa))
  const passes =
    CONTRACTION *
    design.area *
    (design.preset.machine.device.kind === 'valve' ? opening : 1) *
    Math.sqrt(2 * density * Math.max(drive, 0.01 * high.pressurePa))
  return {
    residuals: [
      Math.log(passes / flow),
      (condensing - given) / Math.max(given, 1),
      (capacity - taken) / Math.max(capacity, 1),
    ],
    low,
    high: { ...high, pressurePa: dischargePa },
    suction,
    discharge,
    flow,
    subcoolingK,
    flooded,
    spare: rest - flooded * room,
    finsK,
    heat: given + flow * high.liquidHeatCapacity * subcoolingK,
    capacity,
    leavingK: indoor.temperatureK - (1 - bypass) * (indoor.temperatureK - finsK),
  }
}

/** Share of an evaporator that only warms gas by so much of its gap to the air. */
const dryShare = (superheatK: number, gap: number) =>
  Math.max(0, -Math.log(1 - superheatK / gap) / DRY_NTU)
const DRY_NTU = 3.5
const WARMEST = 0.96

type Pinned = 'stroke' | 'boils' | undefined

const STARTS = [
  [22, 18, 7],
  [30, 28, 3],
  [35, 14, 18],
  [50, 10, 38],
  [14, 12, 2],
] as const

/**
 * The state that it settles in; `boils` holds the low side and leaves the evaporator's balance out,
 * `stroke` holds it by the stroke.
 */
function settle(
  design: Design,
  fluid: Fluid,
  conditions: Conditions,
  faulty: Faulty,
  held: { readonly pinned: Pinned; readonly boilsK: number; readonly stroke: number },
  wetStore: boolean,
): { readonly state: State; readonly round: Round } | undefined {
  const { pinned } = held
  const stateOf = (x: Float64Array): State => ({
    boilsK: pinned ? held.boilsK : conditions.returnAirK - Math.exp(x[0] as number),
    condensesK: conditions.ambientK + Math.exp(x[1] as number),
    superheatK: wetStore ? 0 : 10 * (x[2] as number),
    flooded: wetStore ? (x[2] as number) : undefined,
    stroke: pinned === 'stroke' ? Math.exp(x[0] as number) : held.stroke,
  })
  const free = pinned === 'boils' ? [1, 2] : [0, 1, 2]
  for (const [below, above, superheat] of STARTS) {
    const full = Float64Array.from([
      pinned === 'stroke' ? Math.log(0.5) : Math.log(below),
      Math.log(above),
      wetStore ? 0.1 : superheat / 10,
    ])
    const whole = (x: Float64Array) => {
      const y = Float64Array.from(full)
      free.forEach((i, k) => {
        y[i] = x[k] as number
      })
      return y
    }
    const found = newton(
      (x) => {
        const r = attempt(() => round(design, fluid, conditions, faulty, stateOf(whole(x))))
        return r && Float64Array.from(r.residuals.slice(0, free.length))
      },
      Float64Array.from(free, (i) => full[i] as number),
      free.map((i) => [0.3, 0.4, 0.8][i] as number),
    )
    if (found?.converged !== true) continue
    const state = stateOf(whole(found.at))
    const last = attempt(() => round(design, fluid, conditions, faulty, state))
    if (last) return { state, round: last }
  }
  return undefined
}

export const foreignPlant =
  (design: Design): Plant =>
  (conditions, cause, severity) =>
    foreignShown(design, conditions, cause === 'reading-or-test-wrong' ? 'none' : cause, severity)

/** What the plant shows with one fault; undefined where it stops or finds no state. */
function foreignShown(
  design: Design,
  conditions: Conditions,
  cause: FaultKind | 'none',
  severity: number,
): Shown | undefined {
  const fluid = cycleFluid(refrigerant(design.preset.machine.refrigerant))
  const faulty = faultyBy(design, cause, severity)
  const { machine } = design.preset
  const solve = (pinned: Pinned, boilsK: number, stroke: number) => {
    const one = (wet: boolean) =>
      settle(design, fluid, conditions, faulty, { pinned, boilsK, stroke }, wet)
    if (machine.store.kind !== 'accumulator') return one(false)
    const wet = one(true)
    return wet && wet.round.spare >= 0 ? wet : (one(false) ?? wet)
  }
  const heldK = fluid.refrigerant.dew.temperature(design.heldPa)
  const strokes = machine.compressor.stroke !== undefined
  let found = solve(undefined, 0, faulty.stroke ?? 1)
  if (strokes && faulty.stroke === undefined && (!found || found.state.boilsK < heldK)) {
    const holding = solve('stroke', heldK, 1)
    if (holding && holding.state.stroke <= 1) {
      found = holding.state.stroke < LEAST_STROKE ? solve(undefined, 0, LEAST_STROKE) : holding
    }
  }
  const guarded = machine.controls.thermostat !== undefined || machine.controls.cyclingSwitch
  if (guarded && found && found.round.finsK < design.finsK && !(strokes && !faulty.stroke)) {
    const share = design.surfaceShare
    const boilsK = (design.finsK - share * conditions.returnAirK) / (1 - share)
    found = solve('boils', boilsK, faulty.stroke ?? 1) ?? found
  }
  if (!found || found.round.high.pressurePa > machine.controls.highCutOutPa) return undefined
  return {
    features: featuresOf(design, conditions, faulty, found.round),
    capacity: found.round.capacity,
  }
}

function featuresOf(
  design: Design,
  conditions: Conditions,
  faulty: Faulty,
  { low, high, suction, discharge, subcoolingK, heat, leavingK }: Round,
): Float64Array {
  const { outdoor } = streams(design, conditions, faulty)
  const condenses = high.pressurePa - faulty.airPa
  const liquidK = cycleBubble(design, condenses) - subcoolingK
  const values: Readonly<Record<Feature, number>> = {
    lowSidePa: low.pressurePa,
    highSidePa: high.pressurePa,
    suctionLineK: suction.temperatureK + design.suctionGainK,
    liquidLineK: liquidK,
    deviceInletK: Math.min(
      liquidK - 0.5,
      cycleBubble(design, Math.max(condenses - faulty.restrictionPa, 1.2 * low.pressurePa)),
    ),
    evaporatorOutletK: suction.temperatureK,
    dischargeLineK: discharge.temperatureK,
    ventK: leavingK + design.ductGainK,
    condenserAirK: conditions.ambientK + heat / outdoor.capacityRate,
    chargeShare: faulty.charge,
  }
  return Float64Array.from(FEATURES, (feature) => values[feature])
}

const cycleBubble = (design: Design, pa: number) =>
  refrigerant(design.preset.machine.refrigerant).bubble.temperature(pa)

/**
 * A machine that runs at usual pressures in the nominal weather of a kind: its coils, device and
 * charge are worked back from drawn temperatures, so that no number of the model's own is in it but
 * what is nominal: weather, capacity class, switches.
 */
export function drawDesign(preset: Preset, random: () => number): Design {
  const { machine, nominal } = preset
  const fluid = cycleFluid(refrigerant(machine.refrigerant))
  const within = (from: number, to: number) => from + (to - from) * random()
  const stationary = preset.architecture.startsWith('stationary')
  const boilsK = nominal.returnAirK - (stationary ? within(17, 23) : within(22, 28))
  const condensesK = nominal.ambientK + (stationary ? within(9, 17) : within(13, 22))
  const accumulator = machine.store.kind === 'accumulator'
  const receiver = machine.store.kind === 'receiver'
  const valve = machine.device.kind === 'valve'
  const superheatK = accumulator ? 0 : within(5, 9)
  const low = fluid.saturation(fluid.refrigerant.dew.pressure(boilsK))
  const high = fluid.saturation(fluid.refrigerant.bubble.pressure(condensesK))
  const suction = fluid.withEnthalpy(
    low.vapourEnthalpy + superheatK * low.vapourHeatCapacity,
    low,
    'suction',
  )
  const swept = machine.compressor.displacement * nominal.speed * within(0.75, 1.25)
  const lossPerRatio = within(0.03, 0.06)
  const isentropic = within(0.55, 0.75)
  const stroke = machine.compressor.stroke ? 0.75 : 1
  const filled = 0.93 - (lossPerRatio * high.pressurePa) / low.pressurePa
  const flow = swept * stroke * suction.density * filled
  const ideal = fluid.withEntropy(suction.entropy, high, 'isentropic')
  const discharge = suction.enthalpy + (ideal.enthalpy - suction.enthalpy) / isentropic
  const subcoolingK = receiver ? 0 : within(4, 9)
  const over = condensesK - nominal.ambientK
  const airRise = within(0.5, 0.7) * over
  const condenses = flow * (discharge - high.liquidEnthalpy)
  const dry = dryShare(superheatK, nominal.returnAirK - boilsK)
  const surfaceShare = within(0.15, 0.3)
  const finsK = boilsK + surfaceShare * (nominal.returnAirK - boilsK)
  const taken =
    flow * (suction.enthalpy - high.liquidEnthalpy + high.liquidHeatCapacity * subcoolingK)
  const bypass = within(0.1, 0.25)
  // air flows for these temperatures
  const perVolume = airStream(nominal.ambientK, 0.4, nominal.barometerPa, 1).capacityRate
  const ntu = -Math.log(1 - airRise / over)
  // flooded share that gives the subcooling, with the liquid's film half as good
  const find = (): { full: number; air: number } => {
    let full = receiver ? 0.005 : 0.1
    for (let i = 0; i < 40 && !receiver; i += 1) {
      const air = condenses / ((1 - full) * (1 - Math.exp(-ntu)) * over)
      const film = ntu * air * 0.5
      full = Math.min(
        0.5,
        (-Math.log(1 - Math.min(0.9, subcoolingK / over)) * flow * high.liquidHeatCapacity) / film,
      )
    }
    return { full, air: condenses / ((1 - full) * (1 - Math.exp(-ntu)) * over) }
  }
  const { full, air } = find()
  const indoor = airStream(nominal.returnAirK, nominal.returnHumidity, nominal.barometerPa, 1)
  const wet = indoor.enthalpy - saturatedAirEnthalpy(finsK, nominal.barometerPa)
  const sensible = indoor.heatCapacity * (nominal.returnAirK - finsK)
  const evaporatorAir = taken / ((1 - bypass) * Math.max(wet, sensible) * indoor.dryFlow)
  const usualOpening = within(0.5, 0.75)
  const staticSuperheatK = valve ? superheatK - within(2, 4) : 0
  const gainK = (superheatK - staticSuperheatK) / usualOpening
  const saturatedPa = fluid.refrigerant.bubble.pressure(condensesK - subcoolingK)
  const drive = valve
    ? high.pressurePa - low.pressurePa
    : high.pressurePa - Math.max(low.pressurePa, CHOKES_AT * saturatedPa)
  const area =
    flow / (CONTRACTION * (valve ? usualOpening : 1) * Math.sqrt(2 * high.liquidDensity * drive))
  const condenserVolume = machine.condenser.volume * within(0.7, 1.3)
  const evaporatorVolume = machine.evaporator.volume * within(0.7, 1.3)
  const lineVolume = machine.lines.liquid * within(0.7, 1.5)
  const storeVolume = machine.store.kind === 'none' ? 0 : machine.store.volume * within(0.8, 1.3)
  const mixed = (each: Saturation, share: number) =>
    (1 - share) * each.liquidDensity + share * each.vapourDensity
  const spare = storeVolume * within(0.3, 0.6) * (high.liquidDensity - high.vapourDensity)
  const charge =
    evaporatorVolume * ((1 - dry) * mixed(low, VOID.evaporator) + dry * suction.density) +
    condenserVolume *
      (mixed(high, VOID.condenser) +
        (receiver ? 0 : full) * (high.liquidDensity - mixed(high, VOID.condenser))) +
    lineVolume * high.liquidDensity +
    spare
  return {
    preset,
    swept,
    isentropic,
    lossPerRatio,
    condenserUa: ntu * air,
    condenserAir: air / perVolume,
    evaporatorUa: (-Math.log(bypass) * evaporatorAir * indoor.capacityRate) / (1 - dry),
    evaporatorAir,
    surfaceShare,
    staticSuperheatK,
    gainK,
    usualOpening,
    area,
    condenserVolume,
    lineVolume,
    evaporatorVolume,
    storeVolume,
    charge,
    nominalFlow: flow,
    heldPa: low.pressurePa * within(0.95, 1.02),
    finsK: within(273.4, 275.2),
    suctionGainK: within(0, 2),
    ductGainK: within(0, 3),
  }
}
