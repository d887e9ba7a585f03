import type { Act } from '../dangers.ts'
import { isCarbonDioxide, isVehicle, pickRefrigerant } from '../fields/index.ts'
import { breaksOpen } from './breaks-open.ts'
import type { WorkOrderInput } from './input.ts'

/** What this job does to the machine, as far as it can hurt somebody, before anything is read. */
export function actsOf(input: WorkOrderInput): readonly Act[] {
  const { job, cabOff, machine, charging, record } = input
  // Belts and fans in reach are a vehicle's; carbon dioxide is let out, not recovered.
  const runs: readonly Act[] = isVehicle(machine.kind) ? ['runs'] : []
  const cab: readonly Act[] = cabOff ? ['lifts-cab'] : []
  const recovers: readonly Act[] = isCarbonDioxide(pickRefrigerant(input.refrigerant))
    ? []
    : ['recovers']
  if (job === 'diagnose') return ['handles', ...runs]
  if (breaksOpen(input)) {
    return ['opens', ...recovers, 'pressurises', 'evacuates', 'charges', ...runs, ...cab]
  }
  const charges: readonly Act[] = charging || record?.charged ? ['charges'] : []
  return ['parts-couplings', ...charges, ...runs, ...cab]
}
