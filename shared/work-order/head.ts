import { isVehicle } from '../fields/index.ts'
import type { WorkOrderInput } from './input.ts'

export type Path = readonly (string | number)[]

/** A value of the order that steps take by its name, and where it stands. */
export interface Placed {
  readonly value: unknown
  readonly path: Path
  /** For a list of some of the order's entries: which of them they are. */
  readonly at?: readonly number[]
}

export type Head = Readonly<Record<string, Placed>>

/**
 * What every step may take from the head of the order. A field has one name in all steps, so there
 * is nothing to translate: a step takes those that it knows.
 */
export function headOf(input: WorkOrderInput): Head {
  const { machine, place = {}, person = {}, instruments = {} } = input
  const { kind, sector, compressorDrive, factorySealed, meteringDevice } = machine
  const groups: readonly (readonly [group: string | undefined, values: object])[] = [
    [
      undefined,
      {
        refrigerant: input.refrigerant,
        labelCharge: input.labelCharge,
        existingOil: input.existingOil,
        oilTotal: input.oilTotal,
        date: input.date,
      },
    ],
    ['machine', { sector, compressorDrive, factorySealed, meteringDevice }],
    ['place', place],
    ['person', { ...person, name: undefined }],
    ['instruments', instruments],
  ]
  const found = groups.flatMap(([group, values]) =>
    Object.entries(values).flatMap(([name, value]) =>
      value === undefined
        ? []
        : [[name, { value, path: group === undefined ? [name] : [group, name] }] as const],
    ),
  )
  return {
    ...Object.fromEntries(found),
    machine: { value: kind, path: ['machine', 'kind'] },
  }
}

/** Where a field that steps share belongs on the order, for one that is still missing. */
export const HEAD_PATHS: Readonly<Record<string, Path>> = {
  refrigerant: ['refrigerant'],
  labelCharge: ['labelCharge'],
  existingOil: ['existingOil'],
  oilTotal: ['oilTotal'],
  machine: ['machine', 'kind'],
  compressorDrive: ['machine', 'compressorDrive'],
  factorySealed: ['machine', 'factorySealed'],
  meteringDevice: ['machine', 'meteringDevice'],
  sector: ['machine', 'sector'],
  law: ['place', 'law'],
  altitude: ['place', 'altitude'],
  barometer: ['place', 'barometer'],
  ambient: ['place', 'ambient'],
  certificates: ['person', 'certificates'],
  forPay: ['person', 'forPay'],
  ownMachine: ['person', 'ownMachine'],
}

/** What has to run for a reading: an engine, a vehicle's electric compressor, a cargo unit, a building's. */
export function runsOf({ machine }: WorkOrderInput): 'engine' | 'electric' | 'cargo' | 'building' {
  if (!isVehicle(machine.kind)) return 'building'
  if (machine.kind === 'refrigerated-cargo') return 'cargo'
  return machine.compressorDrive === 'electric' ? 'electric' : 'engine'
}
