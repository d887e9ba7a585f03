import type { WorkOrderInput } from './input.ts'

/** Couplings whose halves do not both shut, as far as somebody said so. */
export const openCouplings = ({ couplings = [] }: WorkOrderInput) =>
  couplings.filter(({ couplingType }) => couplingType !== undefined && couplingType !== 'two-valve')

/**
 * Whether this order opens the system to the air.
 *
 * Parted couplings do so as soon as one of them has no valve in both halves.
 */
export const breaksOpen = (input: WorkOrderInput): boolean =>
  input.job === 'couplers-parted' ? openCouplings(input).length > 0 : input.job !== 'diagnose'
