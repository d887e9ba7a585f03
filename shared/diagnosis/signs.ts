import data from '../../data/service/patterns.json' with { type: 'json' }
import { isVehicle, type Machine } from '../fields/index.ts'
import { keptBy } from '../kept.ts'
import { type Kind, quantity, type Uncertain, widthOf } from '../quantity/index.ts'

/** What a figure may be, set against what the trade calls usual. */
export const LEVELS_OF_SIGN = ['low', 'normal', 'high'] as const
export type SignLevel = (typeof LEVELS_OF_SIGN)[number]

/** Figures that the table of patterns goes by, SI; those that were not read are left out. */
export type SignId = keyof typeof data.signs
export type Signs = Readonly<Partial<Record<SignId, Uncertain | undefined>>>

interface SignRow {
  readonly name: string
  readonly unit?: string
  readonly vehicle: Limits
  readonly stationary: Limits
}
interface Limits {
  readonly low: number
  readonly high: number
  readonly source: string
}

const ROWS: Readonly<Record<SignId, SignRow>> = data.signs
/** Of signs with a unit: temperatures are compared as such, everything else as a difference. */
const KINDS: Partial<Record<SignId, Kind>> = {
  evaporating: 'temperature',
  fed: 'temperature',
  coldish: 'temperature',
  suction: 'pressureDifference',
}

/** Limits of a sign, SI: those of the machine, or the wider of both where it is not known. */
export const limitsOf = (id: SignId, machine: Machine | undefined) => limitsBy(machine)(id)

const limitsBy = keptBy((machine: Machine | undefined) =>
  keptBy((id: SignId) => workedOut(id, machine)),
)

function workedOut(id: SignId, machine: Machine | undefined) {
  const row = ROWS[id]
  const known = machine === undefined ? undefined : isVehicle(machine) ? 'vehicle' : 'stationary'
  const used = known ? [row[known]] : [row.vehicle, row.stationary]
  const si = (value: number) =>
    row.unit === undefined
      ? value
      : quantity(KINDS[id] ?? 'temperatureDifference', value, row.unit).si
  return {
    low: si(Math.min(...used.map(({ low }) => low))),
    high: si(Math.max(...used.map(({ high }) => high))),
    name: row.name,
    sources: used.map(({ source }) => source),
  }
}

/** Every level that a figure may have within its ±: a tighter ± leaves fewer of them. */
export function possibleLevels(
  id: SignId,
  figure: Uncertain,
  machine: Machine | undefined,
): readonly SignLevel[] {
  const { low, high } = limitsOf(id, machine)
  const width = widthOf(figure)
  const [least, most] = [figure.si - width, figure.si + width]
  const levels: SignLevel[] = []
  if (least < low) levels.push('low')
  if (most >= low && least <= high) levels.push('normal')
  if (most > high) levels.push('high')
  return levels
}
