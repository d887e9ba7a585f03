/**
 * A steady model of a vapour-compression air conditioner that a teacher can break and a diagnosis
 * can ask: pure functions from a machine, its weather and its faults to what it does.
 *
 * `run(case)` gives an `Outcome`: steady, cycling with its duty, stopped by a cut-out, iced or dry.
 * `readingsOf`, `performanceOf`, `inventoryOf` and `pointsOf` read its state. Machines come from
 * `data/service/machines.json` by `preset`, faults from `faultOf`.
 *
 * How it is built: `evaluate` follows the refrigerant round once from a guess (compressor,
 * condenser by zones, liquid line and device, evaporator wet or dry, mass by part); `branch` says
 * which balances must hold, for spare liquid and stroke are complementarity conditions with a
 * smooth piece each; `newton` solves a piece; `solve` finds the piece that agrees with its own
 * answer; `run` puts the controls around it. SI throughout, absolute pressures, IIR reference.
 *
 * What is invented, fitted or from memory is told in `data/guide/machine-model.md`. No measurement
 * has been compared with it: its signs, knees and plateaus inform, its pressures do not.
 */
export { counting, trialsSoFar } from './effort.ts'
export {
  FAULT_KINDS,
  type FaultKind,
  faultOf,
  faultsOf,
  impactOf,
  severityForImpact,
} from './faults.ts'
export { ARCHITECTURES, type Architecture, type Preset, preset, presets } from './machines.ts'
export type { Outcome } from './outcome.ts'
export {
  capacityOf,
  type Inventory,
  inventoryOf,
  type Performance,
  performanceOf,
  pointsOf,
  type Readings,
  readingsOf,
  type StatePoint,
  stateOf,
} from './readings.ts'
export {
  type Nearby,
  run,
  runFromCoils,
  runInPieces,
  runNear,
  runNearInPieces,
  runNext,
} from './run.ts'
export type { Remark, Running } from './running.ts'
export {
  type Case,
  type Conditions,
  type Deviations,
  type Faults,
  type Machine,
  NO_DEVIATIONS,
  NO_FAULTS,
} from './types.ts'
