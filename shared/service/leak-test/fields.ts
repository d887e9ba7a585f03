import * as z from 'zod'
import {
  ambientIn,
  choiceIn,
  compressorDriveIn,
  gaugesIn,
  labelChargeIn,
  placeIn,
  refrigerantIn,
  systemPressureIn,
  thermometersIn,
  volumeIn,
} from '../../fields/index.ts'
import { quantityIn } from '../../quantity/index.ts'
import { HOLD_LIMITS } from '../evacuation/hold-limit.ts'
import { leakFacts } from './facts.ts'

export const METHOD_IDS = leakFacts.methods.map(({ id }) => id) as [string, ...string[]]

export const TEST_GASES = [
  'nitrogen',
  'nitrogen-with-refrigerant-trace',
  'hydrogen-mix',
  'helium',
  'hydrogen',
  'oxygen',
  'compressed-air',
] as const
export type TestGas = (typeof TEST_GASES)[number]

const testGasIn = choiceIn(TEST_GASES, {
  n2: 'nitrogen',
  'dry nitrogen': 'nitrogen',
  ofn: 'nitrogen',
  trace: 'nitrogen-with-refrigerant-trace',
  'hydrogen-in-nitrogen': 'hydrogen-mix',
  'forming gas': 'hydrogen-mix',
  'tracer gas': 'hydrogen-mix',
  he: 'helium',
  h2: 'hydrogen',
  o2: 'oxygen',
  air: 'compressed-air',
})

export const APPLIANCES = [
  'commercial-refrigeration',
  'industrial-process',
  'comfort-cooling',
] as const

const ratingIn = z.strictObject({
  part: z.string().min(1).max(60).describe('Name of the part'),
  pressure: quantityIn.pressure.describe('Pressure that it is rated for'),
})

export const fields = {
  refrigerant: refrigerantIn.optional(),
  compressorDrive: compressorDriveIn.optional(),
  testGas: testGasIn.optional().describe('Gas of the pressure test; without it nitrogen'),
  testPressure: quantityIn.pressure.optional().describe('Pressure that the test is planned at'),
  lowSideRating: quantityIn.pressure.optional().describe('Pressure that the low side is rated for'),
  highSideRating: quantityIn.pressure
    .optional()
    .describe('Pressure that the high side is rated for'),
  ratings: z
    .array(ratingIn)
    .max(40)
    .optional()
    .describe('Ratings of single parts: name and pressure'),
  startPressure: quantityIn.pressure
    .optional()
    .describe('Pressure at the start of the standing test'),
  endPressure: quantityIn.pressure.optional().describe('Pressure at its end'),
  startTemperature: quantityIn.temperature
    .optional()
    .describe('Temperature of the system at the start'),
  endTemperature: quantityIn.temperature
    .optional()
    .describe('Temperature of the system at the end'),
  elapsed: quantityIn.duration.optional().describe('Time between the two readings'),
  endBarometer: quantityIn.barometricPressure
    .optional()
    .describe('Barometric pressure at the end; barometer is then that at the start'),
  volume: volumeIn.optional().describe('Inner volume under test, from the maker or measured'),
  vacuumLimit: z
    .enum(HOLD_LIMITS)
    .optional()
    .describe('For a standing vacuum: a published rule to hold it against'),
  method: z.enum(METHOD_IDS).optional().describe('One way of searching; without it all are listed'),
  systemPressure: systemPressureIn
    .optional()
    .describe('Pressure in the system while searching, engine off'),
  ambient: ambientIn.optional().describe('Air around the machine while searching'),
  chargeThen: quantityIn.mass.optional().describe('Charge that was weighed in'),
  chargeNow: quantityIn.mass.optional().describe('Charge that was weighed out later'),
  between: quantityIn.duration.optional().describe('Time between the two weighings'),
  labelCharge: labelChargeIn.optional().describe('Full charge, for the federal leak rate'),
  added: quantityIn.mass.optional().describe('Mass added now, for the federal leak rate'),
  sinceLastAddition: quantityIn.duration
    .optional()
    .describe('Time since refrigerant was last added'),
  addedInYear: quantityIn.mass.optional().describe('All that was added in the last 365 days'),
  appliance: z.enum(APPLIANCES).optional().describe('Kind of appliance, for the federal threshold'),
  ...gaugesIn,
  ...thermometersIn,
  ...placeIn,
}

export type LeakTestInput = z.output<z.ZodObject<typeof fields>>
