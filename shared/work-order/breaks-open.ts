import type { WorkOrderInput } from './input.ts'

/**
 * Whether this order opens the system to the air.
 *
 * Parted couplings do so as soon as one of them does not close by itself.
 */
export const breaksOpen = ({ job, couplings = [] }: WorkOrderInput): boolean =>
  job === 'couplers-parted'
    ? couplings.some(({ selfSealing }) => selfSealing === false)
    : job !== 'diagnose'
