import { waterVapourPressure } from '../../shared/physics/water.ts'
import { randomFrom } from '../../shared/random.ts'
import type { RisePoint } from '../../shared/service/evacuation/rise-shape.ts'

/** What is really in the simulated system. */
export interface RiseCase {
  readonly truth: 'leaking' | 'wet' | 'tight-and-dry' | 'wet-and-leaking' | 'levels-off-above-water'
  /** Inflow of air, micron a minute, while the inside is below half of the outside. */
  readonly leak: number
  /** Time constant of evaporation, min; 0 without water. */
  readonly drying: number
  /** Gas that leaves the oil in the end, micron. */
  readonly outgassing: number
  readonly outgassingConstant: number
  /** Refrigerant that boils out of oil or of a trapped pocket in the end, micron, and how fast, min. */
  readonly refrigerant?: number
  readonly refrigerantConstant?: number
  readonly startMicron: number
  readonly temperatureC: number
  readonly minutes: number
  readonly everyMinutes: number
  /** Standard deviation of one reading, as a share of it. */
  readonly noise: number
}

export const MICRON = 0.133322387415
const AIR_PA = 101_325
/** Share of the refrigerant that leaves quickly. */
const FILM = 0.7

/** Normal deviate by Box and Muller. */
const normal = (random: () => number) =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())

/**
 * Readings of a gauge on a system that follows the physics rather than the shapes that are fitted.
 *
 * Air comes in at a constant rate until the flow is no longer choked; water evaporates toward its
 * vapour pressure while the evaporation cools it and the metal warms it again; gas leaves the oil.
 * Refrigerant leaves a film of oil, and a deeper part of it at half the speed: no single exponential.
 * The gauge is off by a constant share, scatters, and shows whole steps.
 */
export function simulateRise(entry: RiseCase, random: () => number): readonly RisePoint[] {
  const step = 1
  const calibration = 1 + 0.03 * (2 * random() - 1)
  const roomK = entry.temperatureC + 273.15
  let air = entry.startMicron * MICRON
  let vapour = 0
  let waterK = roomK
  let gas = 0
  let film = 0
  let deep = 0
  const { refrigerant = 0, refrigerantConstant = 1 } = entry
  const points: RisePoint[] = []
  for (let second = 0; second <= entry.minutes * 60; second += step) {
    const total = air + vapour + gas + film + deep
    if (second % (entry.everyMinutes * 60) === 0) {
      const read =
        total * calibration * (1 + entry.noise * normal(random)) + MICRON * normal(random)
      points.push({ timeS: second, pressurePa: shownAs(Math.max(read, MICRON)) })
    }
    air += ((entry.leak * MICRON) / 60) * step * chokedShare(total)
    if (entry.drying > 0) {
      const evaporated = ((waterVapourPressure(waterK) - total) / (entry.drying * 60)) * step
      vapour = Math.max(vapour + evaporated, 0)
      // 5 L and about 100 J/K of wetted metal and water: 1 K for each 1100 Pa of vapour
      waterK += -evaporated / 1100 + ((roomK - waterK) / 300) * step
    }
    film += ((FILM * refrigerant * MICRON - film) / (refrigerantConstant * 60)) * step
    deep += (((1 - FILM) * refrigerant * MICRON - deep) / (2 * refrigerantConstant * 60)) * step
    gas += ((entry.outgassing * MICRON - gas) / (entry.outgassingConstant * 60)) * step
  }
  return points
}

/** Full inflow below the critical ratio 0.528, then the square-root law of an orifice (air). */
function chokedShare(insidePa: number): number {
  const ratio = insidePa / AIR_PA
  return ratio < 0.528 ? 1 : Math.sqrt(Math.max(1 - ((ratio - 0.528) / 0.472) ** 2, 0))
}

/** Whole micron up to 1000, then tens, then hundreds: what electronic gauges show. */
function shownAs(pressurePa: number): number {
  const micron = pressurePa / MICRON
  const step = micron < 1_000 ? 1 : micron < 10_000 ? 10 : 100
  return Math.max(Math.round(micron / step) * step, 1) * MICRON
}

const product = <A, B>(as: readonly A[], bs: readonly B[]): readonly (readonly [A, B])[] =>
  as.flatMap((a) => bs.map((b) => [a, b] as const))

interface GridAxes {
  readonly leaks: readonly number[]
  readonly dryings: readonly number[]
  readonly outgassings: readonly number[]
  readonly starts: readonly number[]
  readonly temperatures: readonly number[]
  readonly watches: readonly number[]
  readonly noises: readonly number[]
}

/** Every combination of the axes as a leak, as water, and as neither. */
export function riseGrid(axes: GridAxes): readonly RiseCase[] {
  const common = product(
    product(axes.starts, axes.temperatures),
    product(axes.watches, axes.noises),
  ).map(([[startMicron, temperatureC], [minutes, noise]]) => ({
    startMicron,
    temperatureC,
    minutes,
    noise,
    everyMinutes: 1,
  }))
  return common.flatMap((shared) => {
    const still = { ...shared, leak: 0, drying: 0, outgassing: 0, outgassingConstant: 4 }
    return [
      ...product(axes.leaks, axes.outgassings).map(
        ([leak, outgassing]): RiseCase => ({ ...still, truth: 'leaking', leak, outgassing }),
      ),
      ...product(axes.dryings, axes.outgassings).map(
        ([drying, outgassing]): RiseCase => ({ ...still, truth: 'wet', drying, outgassing }),
      ),
      ...product([0, 1, 3], axes.outgassings).map(
        ([leak, outgassing]): RiseCase => ({
          ...still,
          truth: 'tight-and-dry',
          leak,
          outgassing,
        }),
      ),
    ]
  })
}

/** Used while the limits of the classifier were set. */
export const TUNING_AXES: GridAxes = {
  leaks: [32, 60, 150, 600, 3000],
  dryings: [2, 5, 8.5],
  outgassings: [0, 50, 100],
  starts: [150, 300, 700],
  temperatures: [4, 10, 22, 34],
  watches: [18, 22, 30],
  noises: [0.002, 0.006, 0.012],
}

/**
 * Held out: other values on every axis, and another seed. The watches are about those that service
 * manuals ask for (20 to 45 min); what a shorter watch or a coarser gauge can tell is the hard grid.
 */
export const HELD_OUT_AXES: GridAxes = {
  leaks: [45, 90, 250, 1000, 5000],
  dryings: [1.5, 3, 6.5, 9],
  outgassings: [0, 35, 90],
  starts: [180, 380, 620],
  temperatures: [5, 14, 27, 38],
  watches: [21, 28, 40],
  noises: [0.001, 0.005, 0.012],
}

/** Short watches, small leaks and coarse gauges: here "too short" or "cannot tell" is the right thing to say. */
export const HARD_AXES: GridAxes = {
  ...HELD_OUT_AXES,
  leaks: [15, 25, 45, 90, 250],
  watches: [6, 10, 15],
  noises: [0.01, 0.02, 0.05],
}

/** Cases drawn between the held-out values rather than on them: even in the logarithm of rates and times. */
export function randomCases(
  truths: readonly RiseCase['truth'][],
  count: number,
  seed: number,
): readonly RiseCase[] {
  const random = randomFrom(seed)
  const even = (from: number, to: number) => from + (to - from) * random()
  const spread = (from: number, to: number) => from * (to / from) ** random()
  return Array.from({ length: count }, () => truths)
    .flat()
    .map((truth) => {
      const entry = {
        truth,
        leak: leakOf(truth, even, spread),
        drying: truth.startsWith('wet') ? spread(1.5, 9) : 0,
        outgassing: even(0, 90),
        outgassingConstant: even(2, 6),
        startMicron: even(150, 700),
        temperatureC: even(5, 38),
        minutes: Math.round(even(20, 40)),
        everyMinutes: 1,
        noise: spread(0.001, 0.012),
      }
      if (truth !== 'levels-off-above-water') return entry
      // From twice what water can do, to 40 % of the air.
      const waterMicron = waterVapourPressure(entry.temperatureC + 273.15) / MICRON
      return {
        ...entry,
        refrigerant: spread(2 * waterMicron, (0.4 * AIR_PA) / MICRON),
        refrigerantConstant: spread(1.5, 9),
      }
    })
}

type Draw = (from: number, to: number) => number

function leakOf(truth: RiseCase['truth'], even: Draw, spread: Draw): number {
  if (truth === 'leaking' || truth === 'wet-and-leaking') return spread(45, 5000)
  return truth === 'tight-and-dry' ? even(0, 3) : 0
}

/** How the flow through a narrow path depends on the pressure inside, as a share of the air's. */
const NARROW = {
  molecular: (share: number) => 1 - share,
  viscous: (share: number) => 1 - share ** 2,
} as const

/**
 * Readings of a leak through a long narrow path: unlike a hole it slows down all the way to the air.
 *
 * @param endShare - Share of the air's pressure after the watch of half an hour.
 */
export function narrowLeak(
  law: keyof typeof NARROW,
  endShare: number,
  noise: number,
  random: () => number,
): readonly RisePoint[] {
  const watchS = 1800
  const rate = (law === 'molecular' ? -Math.log(1 - endShare) : Math.atanh(endShare)) / watchS
  let share = 60 / AIR_PA
  return Array.from({ length: watchS + 1 }, (_, second) => {
    const read = share * AIR_PA * (1 + noise * normal(random))
    share += rate * NARROW[law](share)
    return { timeS: second, pressurePa: read }
  }).filter(({ timeS }) => timeS % 60 === 0)
}
