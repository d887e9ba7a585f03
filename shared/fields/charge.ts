import { quantityIn } from '../quantity/index.ts'

/** The machine's full charge: what its label or its maker says. */
export const labelChargeIn = quantityIn.mass.describe(
  "Full charge of the machine by its label, or the maker's figure",
)
export const chargeToleranceIn = quantityIn.mass.describe(
  "How far the charge may be off to either side, from the machine's maker",
)
export const recoveredIn = quantityIn.mass.describe('Mass that came out, as weighed')
/** Pressure of the whole system at rest, and its temperature. */
export const systemPressureIn = quantityIn.pressure.describe(
  'Pressure of the system at rest, engine off',
)
export const systemTemperatureIn = quantityIn.temperature.describe(
  'Temperature of the system at rest, the same all over',
)
export const volumeIn = quantityIn.volume.describe('Inner volume, from the maker or measured')
