import { chargeBar } from './bars/of-charge.ts'
import { coolingBands } from './cooling/of-cooling-check.ts'
import type { Diagram } from './diagram.ts'
import type { KindName } from './index.ts'
import { modelCycle } from './model/of-cycle.ts'
import { cyclesApart } from './model/of-cycles-apart.ts'
import { massByPart } from './model/of-masses.ts'
import { faultSweep } from './model/of-sweep.ts'
import { pressureEnthalpy } from './pressure-enthalpy/of-readings.ts'
import { superheatSubcooling } from './saturation-curve/of-readings.ts'
import { saturationCurve } from './saturation-curve/of-saturation.ts'
import { vacuumRise } from './standing/of-evacuation.ts'
import { pressureHold } from './standing/of-leak-test.ts'

/**
 * Every picture at once, for a service that has all operations anyway: loading them one by one would
 * keep its bundler from leaving out what nobody uses.
 */
export const DRAWN: Readonly<Record<KindName, Diagram>> = {
  'saturation-curve': saturationCurve,
  'pressure-enthalpy': pressureEnthalpy,
  'superheat-subcooling': superheatSubcooling,
  'charge-bar': chargeBar,
  'pressure-hold': pressureHold,
  'vacuum-rise': vacuumRise,
  'cooling-bands': coolingBands,
  'model-cycle': modelCycle,
  'cycles-apart': cyclesApart,
  'fault-sweep': faultSweep,
  'mass-by-part': massByPart,
}
