export type { Phase } from '../substance/density.ts'
export { type Contents, contentsAt } from './contents.ts'
export type {
  FlammabilityFact,
  RefrigerantInfo,
  Sourced,
  UsualOil,
  WarmingPotential,
} from './info.ts'
export {
  densityUncertainty,
  mixingUncertainty,
  type PropertyUncertainty,
  propertyBasis,
  propertyUncertainty,
} from './property-uncertainty.ts'
export { type Line, type Refrigerant, refrigerant, refrigerants } from './refrigerant.ts'
export { type SaturatedCurves, saturatedCurves } from './saturated-curves.ts'
export {
  glide,
  latentHeat,
  latentHeatBetween,
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
export { type DensitySlopes, type DensityStates, densityStates } from './states.ts'
export { twoPhaseDensity } from './two-phase.ts'
