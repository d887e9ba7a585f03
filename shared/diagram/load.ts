import type { Diagram } from './diagram.ts'
import type { KindName } from './index.ts'

const LOADS: Readonly<Record<KindName, () => Promise<Diagram>>> = {
  'saturation-curve': async () =>
    (await import('./saturation-curve/of-saturation.ts')).saturationCurve,
  'pressure-enthalpy': async () =>
    (await import('./pressure-enthalpy/of-readings.ts')).pressureEnthalpy,
  'superheat-subcooling': async () =>
    (await import('./saturation-curve/of-readings.ts')).superheatSubcooling,
  'charge-bar': async () => (await import('./bars/of-charge.ts')).chargeBar,
  'pressure-hold': async () => (await import('./standing/of-leak-test.ts')).pressureHold,
  'cooling-bands': async () => (await import('./cooling/of-cooling-check.ts')).coolingBands,
  'cycles-apart': async () => (await import('./model/of-cycles-apart.ts')).cyclesApart,
  'model-cycle': async () => (await import('./model/of-cycle.ts')).modelCycle,
  'fault-sweep': async () => (await import('./model/of-sweep.ts')).faultSweep,
  'mass-by-part': async () => (await import('./model/of-masses.ts')).massByPart,
  'vacuum-rise': async () => (await import('./standing/of-evacuation.ts')).vacuumRise,
}

/** What draws a kind, with its operation and nothing else: where a run or a page draws one picture. */
export const loadDiagram = (kind: KindName): Promise<Diagram> => LOADS[kind]()
