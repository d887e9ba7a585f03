import { type Refrigerant, saturatedCurves } from '../refrigerant/index.ts'
import type { Phase } from '../substance/density.ts'
import type { HelmholtzModel } from '../substance/model.ts'
import type { MolarState } from '../substance/state.ts'
import { type FoundState, findAtTemperature, findState } from '../substance/state-found.ts'

/** Both ends of boiling at one pressure. SI, a kg. */
export interface Saturation {
  readonly pressurePa: number
  readonly bubbleK: number
  readonly dewK: number
  /** Between the two: a blend's own temperature while it boils, near enough where the glide is small. */
  readonly meanK: number
  readonly liquidDensity: number
  readonly vapourDensity: number
  readonly liquidEnthalpy: number
  readonly vapourEnthalpy: number
  readonly latentHeat: number
  readonly liquidEntropy: number
  readonly vapourEntropy: number
  readonly liquidHeatCapacity: number
  readonly vapourHeatCapacity: number
}

/** A state as the cycle meets it: of one phase or, with a quality below 1 and above 0, of two. */
export interface Point {
  readonly temperatureK: number
  readonly pressurePa: number
  readonly density: number
  readonly enthalpy: number
  readonly entropy: number
}

type Place = 'suction' | 'isentropic' | 'discharge' | 'liquid' | 'warm' | 'cold' | 'other'

/** Nearer to the line than this, K, the line's own heat capacity serves. */
const SAME_K = 0.05

/**
 * The properties of one refrigerant as the cycle asks for them, thousands of times a solve: no
 * range checks but the curves' own, and each search starts where the last one at the same place
 * of the cycle ended. Make one for each solve, so that an answer depends on its input alone.
 */
export interface Fluid {
  readonly refrigerant: Refrigerant
  readonly lowestPa: number
  readonly highestPa: number
  saturation(pressurePa: number): Saturation
  saturationPressure(temperatureK: number): number
  /**
   * Mean heat capacity, J/(kg·K), of the single phase between its line and a temperature beyond it:
   * what a stream has on its way to the air's temperature.
   */
  heatCapacityTowards(temperatureK: number, at: Saturation, phase: Phase): number
  withEnthalpy(enthalpy: number, at: Saturation, place: Place): Point
  withEntropy(entropy: number, at: Saturation, place: Place): Point
}

/** What is asked for is worked out then and kept: of most ends of boiling that is a part. */
class SaturationAt implements Saturation {
  readonly pressurePa: number
  readonly bubbleK: number
  readonly dewK: number
  readonly meanK: number
  readonly #of: Refrigerant
  #liquidDensity: number | undefined
  #vapourDensity: number | undefined
  #liquidEnthalpy: number | undefined
  #vapourEnthalpy: number | undefined
  #liquidEntropy: number | undefined
  #vapourEntropy: number | undefined
  #liquidHeatCapacity: number | undefined
  #vapourHeatCapacity: number | undefined

  constructor(of: Refrigerant, pressurePa: number) {
    this.#of = of
    this.pressurePa = pressurePa
    this.bubbleK = of.bubble.temperature(pressurePa)
    this.dewK = of.dew.temperature(pressurePa)
    this.meanK = (this.bubbleK + this.dewK) / 2
  }
  get liquidDensity() {
    this.#liquidDensity ??= this.#of.bubble.density(this.bubbleK)
    return this.#liquidDensity
  }
  get vapourDensity() {
    this.#vapourDensity ??= this.#of.dew.density(this.dewK)
    return this.#vapourDensity
  }
  get liquidEnthalpy() {
    this.#liquidEnthalpy ??= saturatedCurves(this.#of).liquid.enthalpy(this.bubbleK)
    return this.#liquidEnthalpy
  }
  get vapourEnthalpy() {
    this.#vapourEnthalpy ??= saturatedCurves(this.#of).vapour.enthalpy(this.dewK)
    return this.#vapourEnthalpy
  }
  get latentHeat() {
    return this.vapourEnthalpy - this.liquidEnthalpy
  }
  get liquidEntropy() {
    this.#liquidEntropy ??= saturatedCurves(this.#of).liquid.entropy(this.bubbleK)
    return this.#liquidEntropy
  }
  get vapourEntropy() {
    this.#vapourEntropy ??= saturatedCurves(this.#of).vapour.entropy(this.dewK)
    return this.#vapourEntropy
  }
  get liquidHeatCapacity() {
    this.#liquidHeatCapacity ??= saturatedCurves(this.#of).liquid.heatCapacity(this.bubbleK)
    return this.#liquidHeatCapacity
  }
  get vapourHeatCapacity() {
    this.#vapourHeatCapacity ??= saturatedCurves(this.#of).vapour.heatCapacity(this.dewK)
    return this.#vapourHeatCapacity
  }
}

/** Share of the critical pressure above which the model does not go: heat capacities run away there. */
const HIGHEST_SHARE = 0.93

export function cycleFluid(refrigerant: Refrigerant): Fluid {
  const model: HelmholtzModel = refrigerant.model()
  const { bubble, dew, molarMass, raise } = refrigerant
  const last = new Map<Place, MolarState>()

  const saturation = (pressurePa: number): Saturation => new SaturationAt(refrigerant, pressurePa)

  const point = (state: FoundState): Point => ({
    temperatureK: state.temperatureK,
    pressurePa: state.pressurePa,
    density: state.density * molarMass,
    enthalpy: state.enthalpy / molarMass + raise.enthalpy,
    entropy: state.entropy / molarMass + raise.entropy,
  })

  /** What the last search at this place looked at, if that was the same phase. */
  const known = (place: Place, phase: Phase) => {
    const before = last.get(place)
    return before !== undefined && before.density > model.reducingDensity === (phase === 'liquid')
      ? before
      : undefined
  }

  /** What a search starts from where nothing is known. */
  const guess = (phase: Phase, shiftK: number, at: Saturation) => {
    const lineK = phase === 'liquid' ? at.bubbleK : at.dewK
    const temperatureK = Math.min(Math.max(lineK + shiftK, 0.7 * lineK), 1.6 * lineK)
    const density =
      phase === 'liquid' ? at.liquidDensity : (at.vapourDensity * lineK) / temperatureK
    return { temperatureK, density: density / molarMass }
  }

  const search = (
    held: 'enthalpy' | 'entropy',
    value: number,
    at: Saturation,
    place: Place,
  ): Point => {
    const [liquid, vapour] =
      held === 'enthalpy'
        ? [at.liquidEnthalpy, at.vapourEnthalpy]
        : [at.liquidEntropy, at.vapourEntropy]
    if (value >= liquid && value <= vapour) return boiling(at, (value - liquid) / (vapour - liquid))
    const phase = value < liquid ? 'liquid' : 'vapour'
    const capacity = phase === 'liquid' ? at.liquidHeatCapacity : at.vapourHeatCapacity
    const beyond = value - (phase === 'liquid' ? liquid : vapour)
    const shiftK = (beyond / capacity) * (held === 'entropy' ? at.dewK : 1)
    const state = findState(
      model,
      at.pressurePa,
      held,
      (value - raise[held]) * molarMass,
      guess(phase, shiftK, at),
      known(place, phase),
    )
    last.set(place, state.from)
    return point(state)
  }

  return {
    refrigerant,
    lowestPa: Math.max(bubble.fromPa, dew.fromPa),
    highestPa: Math.min(HIGHEST_SHARE * refrigerant.criticalPressurePa, bubble.toPa, dew.toPa),
    saturation,
    saturationPressure: (temperatureK) => dew.pressure(temperatureK),
    heatCapacityTowards(temperatureK, at, phase) {
      const [lineK, enthalpy, heatCapacity] =
        phase === 'liquid'
          ? [at.bubbleK, at.liquidEnthalpy, at.liquidHeatCapacity]
          : [at.dewK, at.vapourEnthalpy, at.vapourHeatCapacity]
      if (Math.abs(temperatureK - lineK) < SAME_K) return heatCapacity
      const place = phase === 'liquid' ? 'cold' : 'warm'
      const state = findAtTemperature(
        model,
        temperatureK,
        at.pressurePa,
        phase,
        guess(phase, temperatureK - lineK, at),
        known(place, phase),
      )
      last.set(place, state.from)
      return (point(state).enthalpy - enthalpy) / (temperatureK - lineK)
    },
    withEnthalpy: (enthalpy, at, place) => search('enthalpy', enthalpy, at, place),
    withEntropy: (entropy, at, place) => search('entropy', entropy, at, place),
  }
}

/** Liquid and vapour together, `quality` of it vapour by mass. */
export function boiling(at: Saturation, quality: number): Point {
  return {
    temperatureK: at.bubbleK + quality * (at.dewK - at.bubbleK),
    pressurePa: at.pressurePa,
    density: 1 / ((1 - quality) / at.liquidDensity + quality / at.vapourDensity),
    enthalpy: at.liquidEnthalpy + quality * at.latentHeat,
    entropy: at.liquidEntropy + quality * (at.vapourEntropy - at.liquidEntropy),
  }
}

/** Vapour by mass, not held to 0…1: below 0 subcooled, above 1 superheated. */
export function qualityOf(enthalpy: number, at: Saturation): number {
  return (enthalpy - at.liquidEnthalpy) / at.latentHeat
}
