import * as z from 'zod'
import {
  choiceIn,
  compressorDriveIn,
  dateIn,
  factorySealedIn,
  gaugesIn,
  labelChargeIn,
  lawIn,
  machineIn,
  placeIn,
  recoveredIn,
  refrigerantIn,
  systemPressureIn,
  systemTemperatureIn,
  thermometersIn,
  volumeIn,
} from '../../fields/index.ts'
import { quantityIn } from '../../quantity/index.ts'

export const EQUIPMENT_DATES = ['before-1993-11-15', 'from-1993-11-15'] as const
export type EquipmentDate = (typeof EQUIPMENT_DATES)[number]

export const recoveryFields = {
  refrigerant: refrigerantIn,
  law: lawIn
    .optional()
    .describe('Whose law binds the work; the level of evacuation is that of us-federal'),
  machine: machineIn.optional(),
  compressorDrive: compressorDriveIn.optional(),
  factorySealed: factorySealedIn.optional(),
  labelCharge: labelChargeIn.optional(),
  recovered: recoveredIn.optional(),
  recoveredBy: choiceIn(['scale', 'machine'])
    .default('scale')
    .describe('What showed the mass that came out: a scale, or the display of the machine'),
  systemPressure: systemPressureIn.optional(),
  systemTemperature: systemTemperatureIn.optional(),
  volume: volumeIn.optional().describe('Inner volume of the refrigerant circuit'),
  equipmentMade: z
    .enum(EQUIPMENT_DATES)
    .optional()
    .describe('When the recovery equipment was made or imported'),
  flammableRated: z
    .boolean()
    .optional()
    .describe('Whether the recovery machine is rated for this flammable refrigerant'),
  cylinder: choiceIn(['refillable', 'disposable'], { nrc: 'disposable', dot39: 'disposable' })
    .optional()
    .describe('Kind of the recovery cylinder'),
  waterCapacity: quantityIn.mass.optional().describe('WC on the collar of the cylinder'),
  tare: quantityIn.mass.optional().describe('TW on the collar of the cylinder'),
  grossNow: quantityIn.mass.optional().describe('What the cylinder weighs now'),
  grossRating: quantityIn.mass
    .optional()
    .describe('Highest gross weight marked on the cylinder, where it has one'),
  servicePressure: quantityIn.ratedPressure
    .optional()
    .describe('Service pressure in the DOT marking of the cylinder: 4BA350 is 350 psi'),
  cylinderHolds: z
    .string()
    .min(1)
    .max(60)
    .optional()
    .describe('Refrigerant already in the cylinder, or "empty"'),
  requalified: z
    .string()
    .max(20)
    .optional()
    .describe('Month of the last requalification stamped on the collar, YYYY-MM'),
  date: dateIn.optional(),
  requalificationYears: z
    .literal([5, 10, 12])
    .default(5)
    .describe('Requalification period of the cylinder: 5, 10 or 12 years'),
  ...placeIn,
  ...gaugesIn,
  ...thermometersIn,
}

export type RecoveryInput = z.output<z.ZodObject<typeof recoveryFields>>
