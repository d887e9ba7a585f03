import type { RefrigerantInfo } from '../../shared/refrigerant/info.ts'
import type { Line } from '../../shared/substance/equilibrium.ts'
import { substanceData } from '../../shared/substance/library.ts'
import { mixtureOf, moleFractions } from '../../shared/substance/mixture.ts'
import { criticalPoint } from '../../shared/substance/mixture-critical.ts'
import { MIXTURE_GAS_CONSTANT, multifluid } from '../../shared/substance/multifluid.ts'
import {
  followLine,
  pointOnLine,
  type SaturationLine,
} from '../../shared/substance/saturation-line.ts'
import { stateAt } from '../../shared/substance/state.ts'
import { COLDEST_K, type ExactLine, type LineState, type LinesSource } from './provider.ts'

/** Both curves end here, below where a line can turn back in temperature or in pressure. */
const HIGHEST_FRACTION = 0.998

/** Bubble and dew lines of a blend by the mixture model. */
export function blendLines(info: RefrigerantInfo): LinesSource {
  const fluid = multifluid(info.composition.map((c) => substanceData(c.substance)))
  const fractions = moleFractions(
    info.composition.map((c) => c.massFraction),
    fluid.molarMasses,
  )
  return {
    id: info.id,
    inputs: [fluid.components, fluid.rules, fractions, MIXTURE_GAS_CONSTANT, HIGHEST_FRACTION],
    solve() {
      const fromK = Math.max(COLDEST_K, ...fluid.components.map((c) => c.triple.temperatureK))
      const z = Float64Array.from(fractions)
      const bubble = followLine(fluid, z, 'bubble', fromK)
      const dew = followLine(fluid, z, 'dew', fromK)
      const critical = criticalPoint(bubble, dew)
      const model = mixtureOf(fluid, fractions)
      const exact = (path: SaturationLine, line: Line): ExactLine => {
        const toK = HIGHEST_FRACTION * critical.temperatureK
        // the line closes where it turns back: of a zeotrope a little beyond the critical point
        const ends = [critical, ...path.points]
        return {
          fromK,
          toK,
          endK: Math.max(...ends.map((p) => p.temperatureK)),
          endPa: Math.max(...ends.map((p) => p.pressurePa)),
          at(temperatureK): LineState {
            const found = pointOnLine(path, temperatureK)
            const density = (line === 'bubble' ? found.liquid : found.vapour).density
            const state = stateAt(model, temperatureK, density)
            return {
              temperatureK,
              pressurePa: found.pressurePa,
              density: density * model.molarMass,
              enthalpy: state.enthalpy / model.molarMass,
              entropy: state.entropy / model.molarMass,
            }
          },
        }
      }
      return {
        id: info.id,
        molarMass: model.molarMass,
        criticalK: critical.temperatureK,
        criticalPa: critical.pressurePa,
        pure: false,
        bubble: exact(bubble, 'bubble'),
        dew: exact(dew, 'dew'),
      }
    },
  }
}
