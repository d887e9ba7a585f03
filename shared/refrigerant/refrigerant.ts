import { type CurveFile, curves, type LineCurve } from '../substance/curve.ts'
import type { Line } from '../substance/equilibrium.ts'
import { substanceData, substanceModel } from '../substance/library.ts'
import { mixtureModel, moleFractions } from '../substance/mixture.ts'
import type { HelmholtzModel } from '../substance/model.ts'
import { findEntry } from './find.ts'
import type { RefrigerantInfo } from './info.ts'
import { ENTRIES, type Entry } from './registry.ts'

/** Saturated liquid belongs to the bubble line, saturated vapour to the dew line. */
export type { Line }

/** A refrigerant, ready to ask for properties. SI: K, Pa absolute, kg/m³, J/kg. */
export interface Refrigerant {
  readonly info: RefrigerantInfo
  /** kg/mol */
  readonly molarMass: number
  readonly criticalTemperatureK: number
  readonly criticalPressurePa: number
  /** Range of its saturation curves. */
  readonly minimumTemperatureK: number
  readonly maximumTemperatureK: number
  /** Highest temperature and pressure that the equations behind it cover. */
  readonly equationMaximumK: number
  readonly equationMaximumPa: number
  /** The range starts at the triple point: below it, solid. */
  readonly startsAtTriplePoint: boolean
  readonly bubble: LineCurve
  readonly dew: LineCurve
  /** What the model's own enthalpy (J/kg) and entropy (J/(kg·K)) are raised by. */
  readonly raise: CurveFile['raise']
  /** The equation of state; compiled when first asked for. */
  model(): HelmholtzModel
}

const built = new Map<string, Refrigerant>()

/** What there is to pick, in order of designation. */
export function refrigerants(): readonly RefrigerantInfo[] {
  return ENTRIES.map((entry) => entry.info)
}

/**
 * The refrigerant of a name: 'R-134a', 'r134a', '134a', 'HFC-134a', 'propane', 'CO2'.
 * Throws 'unknown-refrigerant', whose hint gives the nearest names.
 */
export function refrigerant(name: string): Refrigerant {
  const entry = findEntry(name)
  const known = built.get(entry.info.id)
  if (known !== undefined) return known
  const made = build(entry)
  built.set(entry.info.id, made)
  return made
}

function build({ info, file }: Entry): Refrigerant {
  const lines = curves(file)
  const components = info.composition.map(({ substance }) => substanceData(substance))
  const minimumTemperatureK = Math.max(lines.bubble.fromK, lines.dew.fromK)
  let model: HelmholtzModel | undefined
  return {
    info,
    molarMass: file.molarMass,
    criticalTemperatureK: file.criticalK,
    criticalPressurePa: file.criticalPa,
    minimumTemperatureK,
    maximumTemperatureK: Math.min(lines.bubble.toK, lines.dew.toK),
    equationMaximumK: Math.min(...components.map((c) => c.valid.maximumTemperatureK)),
    equationMaximumPa: Math.min(...components.map((c) => c.valid.maximumPressurePa)),
    // a blend is not solid where one of its components alone would be
    startsAtTriplePoint:
      components.length === 1 &&
      components.some((c) => c.triple.temperatureK >= minimumTemperatureK),
    bubble: lines.bubble,
    dew: lines.dew,
    raise: file.raise,
    model() {
      model ??= modelOf(info)
      return model
    },
  }
}

function modelOf(info: RefrigerantInfo): HelmholtzModel {
  const [first, ...others] = info.composition
  if (first !== undefined && others.length === 0) return substanceModel(first.substance)
  const components = info.composition.map(({ substance }) => substanceData(substance))
  return mixtureModel(
    components,
    moleFractions(
      info.composition.map(({ massFraction }) => massFraction),
      components.map((c) => c.molarMass),
    ),
  )
}
