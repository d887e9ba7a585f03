import { substanceData, substanceModel } from '../../shared/substance/library.ts'
import { HIGHEST_FRACTION, saturation } from '../../shared/substance/saturation.ts'
import { stateAt } from '../../shared/substance/state.ts'
import { COLDEST_K, type ExactLine, type LineState, type LinesSource } from './provider.ts'

/** The one line of a pure substance, seen from its liquid and from its vapour. */
export function pureLines(id: string, substanceId: string): LinesSource {
  const data = substanceData(substanceId)
  const model = substanceModel(substanceId)
  const line = (phase: 'liquid' | 'vapour'): ExactLine => ({
    fromK: Math.max(COLDEST_K, data.triple.temperatureK),
    toK: HIGHEST_FRACTION * data.critical.temperatureK,
    endK: data.critical.temperatureK,
    endPa: data.critical.pressurePa,
    at(temperatureK): LineState {
      const found = saturation(model, data, temperatureK)
      const state = stateAt(model, temperatureK, found[phase])
      return {
        temperatureK,
        pressurePa: found.pressurePa,
        density: found[phase] * model.molarMass,
        enthalpy: state.enthalpy / model.molarMass,
        entropy: state.entropy / model.molarMass,
      }
    },
  })
  return {
    id,
    inputs: [data],
    solve: () => ({
      id,
      molarMass: data.molarMass,
      criticalK: data.critical.temperatureK,
      criticalPa: data.critical.pressurePa,
      pure: true,
      bubble: line('liquid'),
      dew: line('vapour'),
    }),
  }
}
