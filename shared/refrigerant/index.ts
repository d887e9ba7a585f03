export type { Phase } from '../substance/density.ts'
export type {
  FlammabilityFact,
  RefrigerantInfo,
  Sourced,
  UsualOil,
  WarmingPotential,
} from './info.ts'
export { type Line, type Refrigerant, refrigerant, refrigerants } from './refrigerant.ts'
export { type SaturatedCurves, saturatedCurves } from './saturated-curves.ts'
export {
  glide,
  latentHeat,
  saturatedDensity,
  saturatedEnthalpy,
  saturatedEntropy,
  saturationPressure,
  saturationTemperature,
} from './saturation.ts'
export { density, enthalpy, entropy, type PhaseName, phaseAt } from './single-phase.ts'
export {
  type State,
  stateAtDensity,
  stateAtPressure,
  stateWithEnthalpy,
  stateWithEntropy,
} from './state.ts'
