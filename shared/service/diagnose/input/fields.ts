import * as z from 'zod'
import { ARCHITECTURES, FAULT_KINDS } from '../../../cycle/index.ts'
import {
  choiceIn,
  gaugesIn,
  labelChargeIn,
  lawIn,
  placeIn,
  recoveredIn,
  scaleIn,
  systemPressureIn,
  systemTemperatureIn,
  thermometersIn,
} from '../../../fields/index.ts'
import { quantityIn } from '../../../quantity/index.ts'
import { readingsIn } from '../../readings/fields.ts'
import { weatherIn } from '../../simulate/fields.ts'
import { modelMachineIn } from '../../simulate/machines.ts'

export const LIQUID_STORES = ['receiver', 'accumulator', 'none'] as const
export const DISPLACEMENTS = ['fixed', 'variable'] as const
export const PRIOR_SETS = ['usual', 'equal'] as const

const {
  refrigerant,
  machine,
  meteringDevice,
  suctionPressure,
  suctionTemperature,
  liquidPressure,
  liquidTemperature,
  dischargePressure,
  dischargeTemperature,
  ambient,
  returnWetBulb,
} = readingsIn

/** What can be read on the machine while it runs, today or when it was sound. */
export const runningIn = {
  suctionPressure,
  suctionTemperature,
  liquidPressure,
  dischargePressure,
  liquidTemperature,
  dischargeTemperature,
  ambient,
  returnAir: weatherIn.returnAir,
  returnWetBulb,
  relativeHumidity: weatherIn.relativeHumidity,
  ventTemperature: quantityIn.temperature.optional().describe('Air out of the centre vent'),
  condenserOutAir: quantityIn.temperature.optional().describe('Air leaving the condenser, mixed'),
  evaporatorOutletTemperature: quantityIn.temperature
    .optional()
    .describe('Pipe at the evaporator outlet, before an accumulator'),
  valveInletTemperature: quantityIn.temperature
    .optional()
    .describe('Liquid line right before the valve or orifice, behind drier and hoses'),
  compressorRpm: weatherIn.compressorRpm,
}

/** Names of the readings that a baseline may hold. */
export type RunningField = keyof typeof runningIn

export const RUNNING_FIELDS = Object.keys(runningIn) as readonly RunningField[]

export const diagnoseIn = {
  refrigerant,
  machine: machine.describe('Kind of machine; without it every kind is thought of'),
  meteringDevice: meteringDevice.describe('What feeds the evaporator; without it less can be said'),
  liquidStore: choiceIn(LIQUID_STORES, {
    'receiver-drier': 'receiver',
    drier: 'receiver',
    'suction accumulator': 'accumulator',
    no: 'none',
  })
    .optional()
    .describe('Where spare liquid stands: receiver (in the liquid line), accumulator, none'),
  displacement: choiceIn(DISPLACEMENTS)
    .optional()
    .describe('Stroke of the compressor: fixed (with a clutch that cycles) or variable'),
  architecture: z
    .enum(ARCHITECTURES)
    .optional()
    .describe('Device, store and stroke in one word, instead of them'),
  modelMachine: modelMachineIn
    .optional()
    .describe('One of the model’s own invented machines, for lessons and tests'),
  ...runningIn,
  systemPressure: systemPressureIn.optional(),
  systemTemperature: systemTemperatureIn.optional(),
  recovered: recoveredIn.optional(),
  labelCharge: labelChargeIn.optional(),
  baseline: z
    .strictObject(runningIn)
    .optional()
    .describe('The same readings of this machine when it was sound, with the weather of that day'),
  ruledOut: z
    .array(z.enum(FAULT_KINDS))
    .max(FAULT_KINDS.length)
    .optional()
    .describe('Causes that were looked for and not found'),
  priors: z
    .enum(PRIOR_SETS)
    .optional()
    .describe(
      'How likely each cause is before anything is read: usual (of the trade, from memory) or equal',
    ),
  law: lawIn.optional(),
  ...gaugesIn,
  ...thermometersIn,
  ...scaleIn,
  ...placeIn,
}

/** As parsed: quantities in SI. */
export type DiagnoseInput = z.output<z.ZodObject<typeof diagnoseIn>>
export type RunningInput = Pick<DiagnoseInput, RunningField>
