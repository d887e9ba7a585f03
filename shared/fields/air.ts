import { quantityIn } from '../quantity/index.ts'

export const ambientIn = quantityIn.temperature.describe(
  'Air entering the condenser, in the shade: the outdoor air',
)
export const returnAirIn = quantityIn.temperature.describe(
  'Air entering the evaporator: of the cab when recirculating',
)
export const returnWetBulbIn = quantityIn.temperature.describe(
  'Wet bulb of the air entering the evaporator',
)
export const relativeHumidityIn = quantityIn.fraction.describe(
  'Relative humidity of the air entering the evaporator',
)
