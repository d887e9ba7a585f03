import { CalcError } from '../errors.ts'
import { searchState } from '../substance/state-search.ts'
import { contentsAt } from './contents.ts'
import type { Refrigerant } from './refrigerant.ts'
import { saturatedCurves } from './saturated-curves.ts'
import { type State, stateAtDensity, stateWithEntropy } from './state.ts'
import { twoPhaseDensity } from './two-phase.ts'

/** A point of a line in the pressure-enthalpy plane. SI: Pa absolute, J/kg (IIR reference). */
export interface PlanePoint {
  readonly pressurePa: number
  readonly enthalpy: number
}

/** The two-phase region's outline, from its cold end upwards. */
export interface Dome {
  readonly bubble: readonly PlanePoint[]
  readonly dew: readonly PlanePoint[]
  /**
   * From the end of the bubble line over the critical point to the end of the dew line. The curves
   * stop short of it, so this piece is drawn and not computed: two parabolas that meet level.
   */
  readonly top: readonly PlanePoint[]
  readonly critical: PlanePoint
}

/** Lowest and highest pressure of a picture, Pa absolute. */
export interface Window {
  readonly fromPa: number
  readonly toPa: number
}

const TOP_STEPS = 8

/**
 * Outline of the two-phase region, its points dense towards the top, where it bends.
 *
 * @param count - Points a line, at least two.
 * @param fromK - Coldest temperature; the range of the curves holds.
 */
export function dome(r: Refrigerant, count: number, fromK = r.minimumTemperatureK): Dome {
  const { liquid, vapour } = saturatedCurves(r)
  const along = (line: 'bubble' | 'dew', enthalpy: (temperatureK: number) => number) =>
    temperatures(Math.max(fromK, r[line].fromK), r[line].toK, count).map((temperatureK) => ({
      pressurePa: r[line].pressure(temperatureK),
      enthalpy: enthalpy(temperatureK),
    }))
  const bubble = along('bubble', liquid.enthalpy)
  const dew = along('dew', vapour.enthalpy)
  const critical = criticalPoint(r)
  return { bubble, dew, critical, top: topOf(bubble.at(-1), critical, dew.at(-1)) }
}

/** From cold to hot, equal steps in √(distance from the end). */
function temperatures(fromK: number, toK: number, count: number): readonly number[] {
  return Array.from({ length: count }, (_, index) => {
    const share = 1 - index / (count - 1)
    return toK - share * share * (toK - fromK)
  })
}

/** At the critical temperature, with the density in the middle of the ends of both lines. */
function criticalPoint(r: Refrigerant): PlanePoint {
  const { bubble, dew, criticalTemperatureK, criticalPressurePa } = r
  const density = (bubble.density(bubble.toK) + dew.density(dew.toK)) / 2
  const { enthalpy } = stateAtDensity(r, criticalTemperatureK, density)
  return { pressurePa: criticalPressurePa, enthalpy }
}

function topOf(
  from: PlanePoint | undefined,
  critical: PlanePoint,
  to: PlanePoint | undefined,
): readonly PlanePoint[] {
  if (!from || !to) return []
  const side = (end: PlanePoint) =>
    Array.from({ length: TOP_STEPS }, (_, index) => {
      const share = 1 - index / TOP_STEPS
      return {
        enthalpy: critical.enthalpy + share * (end.enthalpy - critical.enthalpy),
        pressurePa: critical.pressurePa + share * share * (end.pressurePa - critical.pressurePa),
      }
    })
  return [...side(from), critical, ...side(to).reverse()]
}

/** A line of constant temperature, in the pieces that it has. */
export interface Isotherm {
  readonly temperatureK: number
  /** From above the window down to the bubble line; above the critical temperature empty. */
  readonly liquid: readonly PlanePoint[]
  /** Across the two-phase region: level for a pure refrigerant, falling for a blend. */
  readonly boiling: readonly PlanePoint[]
  /** From the dew line down to below the window; above the critical temperature the whole line. */
  readonly vapour: readonly PlanePoint[]
}

/** Points of a single phase a line. */
const ALONG = 48
/** Isotherms of a refrigerant whose inner points are kept. */
const MOST_KEPT = 200
/** Shares of vapour between the ends at which a blend's boiling is looked at. */
const INNER = [0.2, 0.4, 0.6, 0.8]

/**
 * A line of constant temperature, parametric in density: no solve but between the lines of a blend.
 *
 * @throws {CalcError} `out-of-range` between the end of the curves and the critical temperature.
 */
export function isotherm(r: Refrigerant, temperatureK: number, window: Window): Isotherm {
  const at = (density: number) => planeOf(stateAtDensity(r, temperatureK, density))
  if (temperatureK >= r.criticalTemperatureK) {
    const dense = densest(r, temperatureK, window.toPa, criticalDensity(r))
    const line = densities(dense, thinnest(r, temperatureK, window.fromPa)).map(at)
    return { temperatureK, liquid: [], boiling: [], vapour: line }
  }
  if (temperatureK > r.maximumTemperatureK || temperatureK < r.minimumTemperatureK) {
    throw new CalcError('out-of-range', 'The saturation curves do not reach this isotherm.', {
      hint: 'Ask for one inside their range, or above the critical temperature.',
    })
  }
  const { bubble, dew } = r
  const boils = bubble.density(temperatureK)
  const liquid = densities(densest(r, temperatureK, window.toPa, boils), boils).map(at)
  const vapour = densities(
    dew.density(temperatureK),
    Math.min(thinnest(r, temperatureK, window.fromPa), dew.density(temperatureK)),
  ).map(at)
  return {
    temperatureK,
    liquid: liquid,
    boiling: boiling(r, temperatureK),
    vapour: vapour,
  }
}

const planeOf = ({ pressurePa, enthalpy }: State): PlanePoint => ({ pressurePa, enthalpy })

const criticalDensity = ({ bubble, dew }: Refrigerant) =>
  (bubble.density(bubble.toK) + dew.density(dew.toK)) / 2

/** Densities from the denser to the thinner end, in equal ratios. */
function densities(from: number, to: number): readonly number[] {
  return Array.from({ length: ALONG }, (_, index) => from * (to / from) ** (index / (ALONG - 1)))
}

/** A density from which the pressure is above `toPa`, not much denser than it must be. */
function densest(r: Refrigerant, temperatureK: number, toPa: number, from: number): number {
  const limit = 1.2 * r.bubble.density(r.bubble.fromK)
  let density = from
  while (density < limit && stateAtDensity(r, temperatureK, density).pressurePa < toPa) {
    density *= 1.01
  }
  return density
}

/** A density at which the pressure is below `fromPa`: of an ideal gas, since the vapour is denser. */
const thinnest = (r: Refrigerant, temperatureK: number, fromPa: number) =>
  (0.98 * fromPa * r.molarMass) / (r.model().gasConstant * temperatureK)

const boilingKept = new WeakMap<Refrigerant, Map<number, readonly PlanePoint[]>>()

/** Kept: pictures ask for the same round temperatures again, and the flashes of a blend are nearly all their cost. */
function boiling(r: Refrigerant, temperatureK: number): readonly PlanePoint[] {
  const kept = boilingKept.get(r) ?? new Map<number, readonly PlanePoint[]>()
  boilingKept.set(r, kept)
  const known = kept.get(temperatureK)
  if (known !== undefined) return known
  const found = boilingAt(r, temperatureK)
  if (kept.size < MOST_KEPT) kept.set(temperatureK, found)
  return found
}

function boilingAt(r: Refrigerant, temperatureK: number): readonly PlanePoint[] {
  const { liquid, vapour } = saturatedCurves(r)
  const ends = [
    { pressurePa: r.bubble.pressure(temperatureK), enthalpy: liquid.enthalpy(temperatureK) },
    { pressurePa: r.dew.pressure(temperatureK), enthalpy: vapour.enthalpy(temperatureK) },
  ] as const
  if (r.info.composition.length === 1) return ends
  return [ends[0], ...INNER.flatMap((quality) => insideBlend(r, temperatureK, quality)), ends[1]]
}

/** By the flash for pressure, and by the share of the latent heat for enthalpy. */
function insideBlend(r: Refrigerant, temperatureK: number, quality: number): readonly PlanePoint[] {
  try {
    const density = twoPhaseDensity(r, { temperatureK }, quality)
    const { pressurePa } = contentsAt(r, temperatureK, density)
    return pressurePa === undefined ? [] : [wetAt(r, pressurePa, quality)]
  } catch (error) {
    // A flash that fails leaves a straight piece between its neighbours.
    if (error instanceof CalcError) return []
    throw error
  }
}

/** The share of vapour as the share of the latent heat, at a pressure: exact for a pure refrigerant. */
function wetAt(r: Refrigerant, pressurePa: number, quality: number): PlanePoint {
  const { liquid, vapour } = saturatedCurves(r)
  const boils = liquid.enthalpy(r.bubble.temperature(pressurePa))
  const dry = vapour.enthalpy(r.dew.temperature(pressurePa))
  return { pressurePa, enthalpy: boils + quality * (dry - boils) }
}

/**
 * Line of a constant share of the latent heat, 0 to 1, from the bottom of the window to the end of the
 * curves. For a pure refrigerant that is the share of vapour by mass; for a blend it differs from it by
 * less than a line's width.
 */
export function qualityLine(
  r: Refrigerant,
  quality: number,
  { fromPa, toPa }: Window,
  count: number,
): readonly PlanePoint[] {
  const from = Math.max(fromPa, r.bubble.fromPa, r.dew.fromPa)
  const to = Math.min(toPa, r.bubble.toPa, r.dew.toPa)
  if (!(from < to)) return []
  return Array.from({ length: count }, (_, index) => {
    const share = 1 - index / (count - 1)
    return wetAt(r, to * (from / to) ** (share * share), quality)
  })
}

const PER_DECADE = 30

/**
 * Vapour compressed at constant entropy: the states from one to a pressure above it, that one first.
 *
 * Each pressure is solved by Newton's method from the one before, past the critical pressure too.
 *
 * @param from - A state of vapour.
 * @throws {CalcError} `no-convergence`, and where the line would enter the two-phase region.
 */
export function compressed(r: Refrigerant, from: State, toPa: number): readonly State[] {
  const steps = Math.max(1, Math.ceil(PER_DECADE * Math.abs(Math.log10(toPa / from.pressurePa))))
  const ratio = (toPa / from.pressurePa) ** (1 / steps)
  const molarEntropy = (from.entropy - r.raise.entropy) * r.molarMass
  const states = [from]
  for (let step = 1; step <= steps; step += 1) {
    const last = states[states.length - 1] as State
    const guess = {
      // of a perfect gas with an isentropic exponent of about 1.1
      temperatureK: last.temperatureK * ratio ** 0.1,
      density: (last.density / r.molarMass) * ratio ** 0.9,
    }
    const pressurePa = step === steps ? toPa : from.pressurePa * ratio ** step
    const found = searchState(r.model(), pressurePa, 'entropy', molarEntropy, guess)
    const state = stateAtDensity(r, found.temperatureK, found.density * r.molarMass)
    if (isWet(r, state)) {
      throw new CalcError('two-phase', 'The vapour would condense on the way.', {
        hint: 'Start from vapour that is further from the dew line.',
      })
    }
    states.push(state)
  }
  return states
}

const isWet = (r: Refrigerant, { temperatureK, density }: State) =>
  temperatureK <= r.dew.toK &&
  temperatureK >= r.dew.fromK &&
  density > r.dew.density(temperatureK) * (1 + 1e-6)

/**
 * Line of constant entropy in the vapour, from the bottom of the window or the dew line up to the top.
 *
 * @returns No points where there is none inside the window.
 */
export function isentrope(
  r: Refrigerant,
  entropy: number,
  { fromPa, toPa }: Window,
): readonly PlanePoint[] {
  const start = lowestVapour(r, entropy, fromPa)
  if (!start || start.pressurePa >= toPa) return []
  const whole = upTo(r, start, toPa)
  return whole.map(planeOf)
}

/** As far as it goes in the vapour and below the hottest that the equation covers. */
function upTo(r: Refrigerant, start: State, toPa: number): readonly State[] {
  const states: State[] = [start]
  const rungs = Math.max(1, Math.ceil(6 * Math.log10(toPa / start.pressurePa)))
  for (let rung = 1; rung <= rungs; rung += 1) {
    const last = states[states.length - 1] as State
    const nextPa = start.pressurePa * (toPa / start.pressurePa) ** (rung / rungs)
    try {
      const piece = compressed(r, last, nextPa)
      if (piece.some(({ temperatureK }) => temperatureK > r.equationMaximumK)) break
      states.push(...piece.slice(1))
    } catch (error) {
      if (error instanceof CalcError) break
      throw error
    }
  }
  return states
}

/** The state of vapour with an entropy at the lowest pressure from `fromPa` on where there is one. */
function lowestVapour(r: Refrigerant, entropy: number, fromPa: number): State | undefined {
  const { vapour } = saturatedCurves(r)
  const from = Math.max(fromPa, r.bubble.fromPa, r.dew.fromPa)
  const onDew = (pressurePa: number) => vapour.entropy(r.dew.temperature(pressurePa))
  if (entropy >= onDew(from)) {
    const state = stateWithEntropy(r, from, entropy)
    return state.temperatureK <= r.equationMaximumK ? state : undefined
  }
  // Along the dew line entropy falls as the pressure rises, at its cold end at least.
  let [low, high] = [from, Math.min(r.bubble.toPa, r.dew.toPa)]
  if (entropy < onDew(high)) return undefined
  for (let step = 0; step < 50; step += 1) {
    const middle = Math.sqrt(low * high)
    if (onDew(middle) > entropy) low = middle
    else high = middle
  }
  const temperatureK = r.dew.temperature(high)
  return stateAtDensity(r, temperatureK, r.dew.density(temperatureK))
}
