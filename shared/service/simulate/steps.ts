import type { Step } from '../../operation.ts'
import type { View } from './view.ts'

/** How the figures hang together: the balance of energy, and what a mechanic works out. */
export function explain({ running }: View): readonly Step[] {
  if (running === undefined) return []
  const { heatTaken, power, shellLoss, heatRejected } = running.performance
  const { suctionPressure, suctionTemperature, superheat } = running.readings
  const { liquidTemperature, subcooling, liquidPressure, dischargePressure } = running.readings
  return [
    {
      what: 'Heat that the condenser gives to the air',
      formula:
        'heat taken + power of the shaft − heat of the shell; worked out from the air itself',
      values: { heatTaken, power, shellLoss },
      gives: heatRejected,
    },
    {
      what: 'Superheat as a mechanic works it out',
      formula: 'suction line − dew temperature at the low gauge',
      values: { suctionTemperature, suctionPressure },
      gives: superheat,
    },
    {
      what: 'Subcooling as a mechanic works it out',
      formula: 'bubble temperature at the high gauge − liquid line',
      values: { dischargePressure, liquidPressure, liquidTemperature },
      gives: subcooling,
    },
  ]
}
