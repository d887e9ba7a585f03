import * as z from 'zod'
import { FAULT_KINDS } from '../../cycle/index.ts'
import {
  ambientIn,
  choiceIn,
  placeIn,
  refrigerantIn,
  relativeHumidityIn,
  returnAirIn,
  returnWetBulbIn,
} from '../../fields/index.ts'
import { quantityIn } from '../../quantity/index.ts'
import { modelMachineIn } from './machines.ts'

/** Faults by the field that gives their size. */
export const SETTINGS = [
  'chargeNow',
  'condenserAir',
  'evaporatorAir',
  'restriction',
  'valveOpening',
  'compressorLeak',
  'airInside',
  'stroke',
] as const
export type Setting = (typeof SETTINGS)[number]

/** Sizes that a sweep leads over a range, as they are called, with the fields that give them. */
export const SWEEPS = {
  charge: 'chargeNow',
  'condenser-air': 'condenserAir',
  'evaporator-air': 'evaporatorAir',
  restriction: 'restriction',
  'valve-opening': 'valveOpening',
  'compressor-leak': 'compressorLeak',
  air: 'airInside',
  stroke: 'stroke',
} as const satisfies Readonly<Record<string, Setting>>
export type SweepName = keyof typeof SWEEPS
export const SWEEP_NAMES = Object.keys(SWEEPS) as [SweepName, ...SweepName[]]

export const MOST_POINTS = 60
export const USUAL_POINTS = 13

export const faultKindIn = choiceIn(FAULT_KINDS, {
  'low charge': 'undercharge',
  low: 'undercharge',
  full: 'overcharge',
  'blocked condenser': 'condenser-air',
  'dirty condenser': 'condenser-air',
  condenser: 'condenser-air',
  'dirty evaporator': 'evaporator-air',
  evaporator: 'evaporator-air',
  blower: 'evaporator-air',
  'plugged drier': 'restriction',
  leak: 'compressor-leak',
  'worn compressor': 'compressor-leak',
  'non-condensables': 'air',
}).describe('Fault of the model, one that this machine can have')

/** The weather of a simulated machine, and how it is run. Without them its nominal ones. */
export const weatherIn = {
  ambient: ambientIn.optional(),
  returnAir: returnAirIn.optional(),
  relativeHumidity: relativeHumidityIn.optional(),
  returnWetBulb: returnWetBulbIn.optional(),
  compressorRpm: z
    .number()
    .min(600)
    .max(6000)
    .optional()
    .describe("Speed of the compressor's shaft in revolutions a minute"),
  condenserFan: quantityIn.fraction
    .optional()
    .describe('Air flow that the condenser fan is set to, of its full flow'),
  blower: quantityIn.fraction
    .optional()
    .describe('Air flow that the blower is set to, of its full flow'),
}

const deviation = (what: string) =>
  quantityIn.fraction.optional().describe(`${what}, of that of the model`)

const severityIn = quantityIn.fraction.describe(
  'How bad that fault is: 0 % just about to show, 100 % as far as such faults go before all stops; 50 % if not given',
)

export const simulateFields = {
  modelMachine: modelMachineIn,
  refrigerant: refrigerantIn
    .optional()
    .describe('Refrigerant of the invented machine: vehicles R-134a or R-1234yf'),
  ...weatherIn,
  fault: faultKindIn.optional(),
  severity: severityIn.optional(),
  faults: z
    .array(
      z.strictObject({
        fault: faultKindIn,
        severity: severityIn.optional(),
      }),
    )
    .max(FAULT_KINDS.length)
    .optional()
    .describe('Several faults at once, each with its severity'),
  chargeNow: quantityIn.amount
    .optional()
    .describe('Refrigerant in the machine: a mass, or percent of its label'),
  condenserAir: quantityIn.fraction
    .optional()
    .describe('Air that still comes through the condenser, of that of the sound machine'),
  evaporatorAir: quantityIn.fraction
    .optional()
    .describe('Air that still comes through the evaporator, of that of the sound machine'),
  restriction: quantityIn.pressureDifference
    .optional()
    .describe('Pressure that the liquid line loses beyond its own at the nominal flow'),
  valveOpening: quantityIn.fraction
    .optional()
    .describe('Opening at which the expansion valve is stuck'),
  compressorLeak: quantityIn.fraction
    .optional()
    .describe("Share of the compressor's flow that leaks back, beyond its own"),
  airInside: quantityIn.pressureDifference
    .optional()
    .describe('Pressure of the air (non-condensable gas) in the condenser while running'),
  stroke: quantityIn.fraction
    .optional()
    .describe('Stroke at which a variable compressor is stuck, of its full stroke'),
  deviations: z
    .strictObject({
      condenserConductance: deviation('Heat that the condenser passes'),
      evaporatorConductance: deviation('Heat that the evaporator passes'),
      volumetric: deviation('Filling of the compressor'),
      isentropic: deviation('Isentropic efficiency of the compressor'),
      deviceSize: deviation('Size of the valve or orifice'),
    })
    .optional()
    .describe('How this machine differs from another of its kind'),
  sweep: choiceIn(SWEEP_NAMES, { undercharge: 'charge', overcharge: 'charge' })
    .optional()
    .describe('Size of a fault that is led over a range, all else as given'),
  sweepFrom: quantityIn.faultSize
    .optional()
    .describe('First size of the sweep; without it as far as such faults go'),
  sweepTo: quantityIn.faultSize.optional().describe('Last size of the sweep'),
  sweepPoints: z
    .int()
    .min(2)
    .max(MOST_POINTS)
    .optional()
    .describe(
      `Rows of the sweep, ${MOST_POINTS} at most, fewer where states have to be searched for; ${USUAL_POINTS} if not given`,
    ),
  ...placeIn,
}

export type SimulateInput = z.output<z.ZodObject<typeof simulateFields>>
