import type { Refrigerant } from '../../refrigerant/index.ts'
import { saturatedCurves } from '../../refrigerant/index.ts'
import {
  type Dome,
  dome,
  type Isotherm,
  isentrope,
  isotherm,
  type PlanePoint,
  qualityLine,
  type Window,
} from '../../refrigerant/isolines.ts'
import type { Measure } from '../scene/measure.ts'

/** What lies behind a cycle. */
export interface Background {
  readonly dome: Dome
  readonly isotherms: readonly Isotherm[]
  readonly isentropes: readonly (readonly PlanePoint[])[]
  readonly qualities: readonly (readonly PlanePoint[])[]
}

/** Points a side of the dome. */
const DOME_POINTS = 80
const QUALITIES = [0.2, 0.4, 0.6, 0.8]
const QUALITY_POINTS = 24
/** Steps between isotherms, in the unit of the picture, and how many there may be. */
const STEPS = [5, 10, 20, 25, 50, 100]
/** Entropies between isentropes, J/(kg·K). */
const ENTROPY_STEP = 50

/**
 * Lines of a refrigerant in a window of pressures and enthalpies.
 *
 * @param most - How many isotherms may be in it at most.
 */
export function background(
  r: Refrigerant,
  window: Window,
  hottestK: number,
  temperature: Measure,
  most: number,
): Background {
  const coldestK = coldestOf(r, window)
  return {
    dome: dome(r, DOME_POINTS, coldestK),
    isotherms: roundTemperatures(temperature, coldestK, hottestK, most)
      .filter((kelvin) => kelvin >= r.criticalTemperatureK || kelvin <= r.maximumTemperatureK)
      .map((kelvin) => isotherm(r, kelvin, window)),
    isentropes: entropies(r, window)
      .map((entropy) => isentrope(r, entropy, window))
      .filter((line) => line.length > 1),
    qualities: QUALITIES.map((quality) => qualityLine(r, quality, window, QUALITY_POINTS)),
  }
}

/** Temperature of the dew line at the bottom of the window, or where the curves begin. */
const coldestOf = (r: Refrigerant, { fromPa }: Window) =>
  fromPa <= Math.max(r.dew.fromPa, r.bubble.fromPa)
    ? r.minimumTemperatureK
    : r.bubble.temperature(fromPa)

function roundTemperatures(
  measure: Measure,
  fromK: number,
  toK: number,
  most: number,
): readonly number[] {
  const [from, to] = [measure.of(fromK), measure.of(toK)]
  const step = STEPS.find((size) => (to - from) / size <= most) ?? (STEPS.at(-1) as number)
  const first = Math.ceil(from / step)
  return Array.from({ length: Math.max(0, Math.floor(to / step) - first + 1) }, (_, index) =>
    measure.si((first + index) * step),
  )
}

/** Round entropies from the dew line's at the top to well into the vapour. */
function entropies(r: Refrigerant, window: Window): readonly number[] {
  const { vapour } = saturatedCurves(r)
  const at = (pressurePa: number) => vapour.entropy(r.dew.temperature(pressurePa))
  const top = at(Math.min(0.6 * r.criticalPressurePa, window.toPa, r.dew.toPa))
  const first = Math.ceil(top / ENTROPY_STEP)
  return Array.from({ length: 9 }, (_, index) => (first + index) * ENTROPY_STEP)
}
