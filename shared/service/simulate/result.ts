import * as z from 'zod'
import { ARCHITECTURES, FAULT_KINDS } from '../../cycle/index.ts'
import { quantityOut } from '../../quantity/index.ts'
import { SETTINGS, SWEEP_NAMES } from './fields.ts'
import { PARTS, PERFORMANCE, READINGS } from './view.ts'

export const STATES = [
  'steady',
  'cycling',
  'high-pressure-trip',
  'low-pressure-trip',
  'iced',
  'dry',
] as const

export const REMARKS = [
  'liquid-at-compressor',
  'receiver-empty',
  'vapour-at-device',
  'accumulator-empty',
  'evaporator-dry',
] as const

export const outcomeOut = z.strictObject({
  state: z.enum(STATES).describe('How the machine ends up'),
  by: z
    .enum(['thermostat', 'low-pressure-switch'])
    .optional()
    .describe('What lets the clutch go where it cycles'),
  duty: quantityOut.optional().describe('Share of the time that the compressor runs'),
  closes: quantityOut.optional().describe('Low side at which the clutch pulls in again'),
  limit: quantityOut.optional().describe('Setting of the cut-out that stops it'),
  remarks: z.array(z.enum(REMARKS)).describe('What is to be said of the state'),
  bubbles: z.boolean().optional().describe('Vapour is seen behind the condenser or receiver'),
  storeLevel: quantityOut.optional().describe('Filled share of the receiver or accumulator'),
})

/** A figure now, when sound in the same weather, and what lies between them. */
const compared = {
  now: quantityOut.optional(),
  sound: quantityOut.optional(),
  difference: quantityOut.optional().describe('Now less sound'),
}

export const readingsOut = z.array(z.strictObject({ reading: z.enum(READINGS), ...compared }))
export const performanceOut = z.array(z.strictObject({ figure: z.enum(PERFORMANCE), ...compared }))

export const pointsOut = z.array(
  z.strictObject({
    name: z.string().describe("Corner of the cycle, in the order of the refrigerant's flow"),
    pressure: quantityOut.describe('Of the refrigerant, absolute; air inside is not in it'),
    temperature: quantityOut,
    enthalpy: quantityOut.describe('From 200 kJ/kg of saturated liquid at 0 °C'),
    entropy: quantityOut.describe('From 1 kJ/(kg K) of saturated liquid at 0 °C'),
  }),
)

export const partsOut = z.array(z.strictObject({ part: z.enum(PARTS), mass: quantityOut }))

export const presentOut = z.strictObject({
  fault: z.enum(FAULT_KINDS),
  setting: z.enum(SETTINGS).describe('The field that gives its size'),
  size: quantityOut,
})

export const sweepOut = z.strictObject({
  fault: z.enum(SWEEP_NAMES).describe('The size that is led over a range'),
  unit: z.enum(['fraction', 'pressureDifference']).describe('What such a size is'),
  plateau: z
    .strictObject({ from: quantityOut, to: quantityOut })
    .optional()
    .describe('Rows between which no usual instrument shows that anything moved'),
  rows: z.array(
    z.strictObject({
      size: quantityOut,
      state: z.enum(STATES),
      moved: z.boolean().describe('Whether a usual gauge or thermometer shows it'),
      suctionPressure: quantityOut.optional(),
      dischargePressure: quantityOut.optional(),
      superheat: quantityOut.optional(),
      subcooling: quantityOut.optional(),
      dischargeTemperature: quantityOut.optional(),
      liquidTemperature: quantityOut.optional(),
      ventTemperature: quantityOut.optional(),
      capacity: quantityOut,
      power: quantityOut.optional(),
      storeLevel: quantityOut.optional(),
    }),
  ),
})

export const machineOut = z.strictObject({
  id: z.string(),
  name: z.string(),
  architecture: z.enum(ARCHITECTURES),
  refrigerant: z.string(),
  labelCharge: quantityOut,
  highFitting: z
    .enum(['discharge', 'liquid'])
    .describe('Where the high gauge sits, by which subcooling is worked out'),
})

export const conditionsOut = z.strictObject({
  ambient: quantityOut,
  returnAir: quantityOut,
  relativeHumidity: quantityOut,
  compressorRpm: z.number(),
  condenserFan: quantityOut,
  blower: quantityOut,
  barometer: quantityOut,
})
