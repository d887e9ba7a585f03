import type { Quantity } from '../quantity/index.ts'
import type { WorkOrderInput } from './input.ts'
import { rawQuantity } from './raw.ts'
import type { Inherited } from './section.ts'

type Value = Inherited | undefined

/** A value of the order as a step's parser reads it, with the place where it stands. */
export function from(raw: unknown, ...path: (string | number)[]): Value {
  return raw === undefined ? undefined : { raw, path }
}

/** The same of a quantity that was read already: handed on with its unit and its ±. */
export const fromQuantity = (quantity: Quantity | undefined, ...path: string[]): Value =>
  quantity && { raw: rawQuantity(quantity), path }

/** What every step may take from the head of the order, by the names that the steps use. */
export function shared(input: WorkOrderInput): Readonly<Record<string, Value>> {
  const { machine, place, person } = input
  const ambient = fromQuantity(place?.ambient, 'place', 'ambient')
  const equipment = machine.kind === 'stationary' ? 'stationary' : 'vehicle'
  const drive = from(machine.compressor, 'machine', 'compressor')
  return {
    refrigerant: from(input.refrigerant, 'refrigerant'),
    labelCharge: fromQuantity(input.labelCharge, 'labelCharge'),
    altitude: fromQuantity(place?.altitude, 'place', 'altitude'),
    barometer: fromQuantity(place?.barometer, 'place', 'barometer'),
    ambient,
    outdoorTemperature: ambient,
    equipment: from(equipment, 'machine', 'kind'),
    meteringDevice: from(machine.meteringDevice, 'machine', 'meteringDevice'),
    compressor: drive,
    compressorDrive: drive,
    factorySealed: from(machine.factorySealed, 'machine', 'factorySealed'),
    sector: from(machine.sector, 'machine', 'sector'),
    place: from(place?.law, 'place', 'law'),
    forPay: from(person?.forPay, 'person', 'forPay'),
    ownMachine: from(person?.ownMachine, 'person', 'ownMachine'),
    certificates: from(person?.certificates, 'person', 'certificates'),
  }
}

/** Where a field that most steps share belongs on the order, for one that is still missing. */
export const HEAD_PATHS: Readonly<Record<string, readonly string[]>> = {
  refrigerant: ['refrigerant'],
  labelCharge: ['labelCharge'],
  oilTotal: ['oilTotal'],
  altitude: ['place', 'altitude'],
  barometer: ['place', 'barometer'],
  ambient: ['place', 'ambient'],
}

/**
 * A list of the order as a step takes it: of each entry the named fields, leaving out entries that
 * hold none of `wanted`; without `wanted` every entry stays.
 */
export function fromList(
  entries: readonly Readonly<Record<string, unknown>>[] | undefined,
  key: string,
  allowed: readonly string[],
  wanted?: readonly string[],
): Value {
  const kept = (entries ?? []).flatMap((entry, index) =>
    !wanted || wanted.some((field) => field in entry)
      ? [
          {
            index,
            entry: Object.fromEntries(
              Object.entries(entry).filter(([field]) => allowed.includes(field)),
            ),
          },
        ]
      : [],
  )
  if (kept.length === 0) return undefined
  return {
    raw: kept.map(({ entry }) => entry),
    path: [key],
    indexes: kept.map(({ index }) => index),
  }
}
