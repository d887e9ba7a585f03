import { capacityOf } from './readings.ts'
import { run } from './run.ts'
import { type Case, type Faults, type Machine, NO_FAULTS } from './types.ts'

/** Every single fault that the model can have. */
export const FAULT_KINDS = [
  'undercharge',
  'overcharge',
  'condenser-air',
  'evaporator-air',
  'restriction',
  'valve-stuck-open',
  'valve-stuck-closed',
  'compressor-leak',
  'air',
  'stroke-stuck-high',
  'stroke-stuck-low',
] as const

export type FaultKind = (typeof FAULT_KINDS)[number]

/** The sizes that severity 1 stands for: assumed, as far as such faults go before all stops. */
const WORST = {
  charge: { under: 0.35, over: 1.7 },
  air: 0.25,
  restrictionPa: 12e5,
  valve: { open: 1, closed: 0.04 },
  leakage: 0.65,
  airPa: 3e5,
} as const
/** Opening that a valve sticks at with severity 0, the usual one of a sound machine. */
const USUAL_OPENING = 0.62
const USUAL_STROKE = 0.7

/** Which faults a machine can have. */
export function faultsOf(machine: Machine): readonly FaultKind[] {
  const { device, compressor } = machine
  return FAULT_KINDS.filter((kind) =>
    kind.startsWith('valve')
      ? device.kind === 'valve'
      : kind.startsWith('stroke')
        ? compressor.stroke !== undefined
        : true,
  )
}

/** One fault with a severity from 0 (none, or just about to show) to 1 (as bad as it gets). */
export function faultOf(machine: Machine, kind: FaultKind, severity: number): Faults {
  const between = (from: number, to: number) => from + severity * (to - from)
  const least = machine.compressor.stroke?.minimum ?? 1
  switch (kind) {
    case 'undercharge':
      return { ...NO_FAULTS, charge: between(1, WORST.charge.under) }
    case 'overcharge':
      return { ...NO_FAULTS, charge: between(1, WORST.charge.over) }
    case 'condenser-air':
      return { ...NO_FAULTS, condenserAir: between(1, WORST.air) }
    case 'evaporator-air':
      return { ...NO_FAULTS, evaporatorAir: between(1, WORST.air) }
    case 'restriction':
      return { ...NO_FAULTS, restrictionPa: between(0, WORST.restrictionPa) }
    case 'valve-stuck-open':
      return { ...NO_FAULTS, valveStuck: between(USUAL_OPENING, WORST.valve.open) }
    case 'valve-stuck-closed':
      return { ...NO_FAULTS, valveStuck: between(USUAL_OPENING, WORST.valve.closed) }
    case 'compressor-leak':
      return { ...NO_FAULTS, leakage: between(0, WORST.leakage) }
    case 'air':
      return { ...NO_FAULTS, airPa: between(0, WORST.airPa) }
    case 'stroke-stuck-high':
      return { ...NO_FAULTS, strokeStuck: between(USUAL_STROKE, 1) }
    case 'stroke-stuck-low':
      return { ...NO_FAULTS, strokeStuck: between(USUAL_STROKE, least) }
  }
}

/** Share of the capacity that the faults of a case cost, in its weather; below 0 where they add some. */
export function impactOf(faulty: Case): number {
  const sound = capacityOf(run({ ...faulty, faults: NO_FAULTS }))
  return 1 - capacityOf(run(faulty)) / sound
}

const HALVINGS = 18
const STEPS = 16

/**
 * The least severity that costs a share of the capacity in some weather, or `undefined` where not
 * even the worst does: spare liquid hides a wrong charge, and a stroke gives way.
 */
export function severityForImpact(
  sound: Omit<Case, 'faults'>,
  kind: FaultKind,
  impact: number,
): number | undefined {
  const costs = (severity: number) =>
    impactOf({ ...sound, faults: faultOf(sound.machine, kind, severity) }) >= impact
  let high: number | undefined
  for (let step = 1; step <= STEPS && high === undefined; step += 1) {
    if (costs(step / STEPS)) high = step / STEPS
  }
  if (high === undefined) return undefined
  let low = high - 1 / STEPS
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle: number = (low + high) / 2
    if (costs(middle)) high = middle
    else low = middle
  }
  return high
}
