import * as z from 'zod'
import { choiceIn } from './choice.ts'

/** What the system cools. */
export const MACHINES = [
  'road-vehicle',
  'bus',
  'off-road',
  'stationary',
  'refrigerated-cargo',
] as const
export type Machine = (typeof MACHINES)[number]

/** What turns the compressor: a shaft through a seal, or a motor inside. */
export const COMPRESSOR_DRIVES = ['open', 'electric'] as const
export type CompressorDrive = (typeof COMPRESSOR_DRIVES)[number]

export const METERING_DEVICES = [
  'expansion-valve',
  'electronic-valve',
  'fixed-orifice',
  'orifice-tube',
] as const
export type MeteringDevice = (typeof METERING_DEVICES)[number]

/** What an off-road machine works at, where a rule names some kinds of work only. */
export const SECTORS = ['agriculture', 'mining', 'construction', 'other'] as const
export type Sector = (typeof SECTORS)[number]

export const sectorIn = choiceIn(SECTORS, {
  farm: 'agriculture',
  forestry: 'other',
  quarry: 'mining',
  building: 'construction',
}).describe(
  'What an off-road machine works at; rules of the EU name agriculture, mining, construction',
)

export const machineIn = choiceIn(MACHINES, {
  vehicle: 'road-vehicle',
  car: 'road-vehicle',
  truck: 'road-vehicle',
  loader: 'off-road',
  tractor: 'off-road',
  excavator: 'off-road',
  'construction machine': 'off-road',
  building: 'stationary',
  cargo: 'refrigerated-cargo',
  trailer: 'refrigerated-cargo',
}).describe(
  'Kind of machine: the cab of a road vehicle, a bus or an off-road machine; a building; or refrigerated cargo',
)

export const compressorDriveIn = choiceIn(COMPRESSOR_DRIVES, {
  'open-drive': 'open',
  belt: 'open',
  'belt-driven': 'open',
  shaft: 'open',
  'hermetic-or-electric': 'electric',
  hermetic: 'electric',
  'semi-hermetic': 'electric',
}).describe(
  'What turns the compressor: open (belt or shaft through a seal) or electric (motor inside)',
)

export const factorySealedIn = z
  .boolean()
  .describe('Whether the unit was wholly made, charged and hermetically sealed in a factory')

export const meteringDeviceIn = choiceIn(METERING_DEVICES, {
  valve: 'expansion-valve',
  txv: 'expansion-valve',
  tev: 'expansion-valve',
  'thermal expansion valve': 'expansion-valve',
  'block valve': 'expansion-valve',
  exv: 'electronic-valve',
  eev: 'electronic-valve',
  orifice: 'fixed-orifice',
  piston: 'fixed-orifice',
  capillary: 'fixed-orifice',
  tube: 'orifice-tube',
}).describe('What feeds the evaporator')

/** Whether the machine's cab or building is cooled in a vehicle of any kind. */
export const isVehicle = (machine: Machine): boolean => machine !== 'stationary'
