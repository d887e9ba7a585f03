import file from '../../data/service/machines.json' with { type: 'json' }
import { CalcError } from '../errors.ts'
import type { Conditions, Machine } from './types.ts'

/** What makes two machines answer alike: where spare liquid stands, and what regulates. */
export const ARCHITECTURES = [
  'valve',
  'valve-receiver',
  'orifice-accumulator',
  'valve-receiver-variable',
  'stationary-orifice',
  'stationary-valve',
] as const

export type Architecture = (typeof ARCHITECTURES)[number]

/** An invented machine, with the weather and speed that its nominal figures belong to. */
export interface Preset {
  readonly name: string
  readonly architecture: Architecture
  readonly machine: Machine
  readonly nominal: Conditions
}

type Row = Readonly<Record<string, unknown>> & { readonly id: string; readonly like?: string }

const rows = new Map<string, Row>(file.machines.map((row) => [row.id, row as Row]))

/** A row with what it leaves out taken from the row that it is like. */
function complete(id: string): Row {
  const row = rows.get(id)
  if (row === undefined) {
    throw new CalcError('unknown-name', `There is no model machine '${id}'.`, {
      hint: `Known: ${[...rows.keys()].join(', ')}.`,
    })
  }
  return row.like === undefined ? row : { ...complete(row.like), ...row }
}

/** One of the model machines by its id. Throws 'unknown-name'. */
export function preset(id: string): Preset {
  const { name, architecture, nominal, like: _, ...machine } = complete(id)
  return {
    name: name as string,
    architecture: architecture as Architecture,
    machine: machine as unknown as Machine,
    nominal: nominal as Conditions,
  }
}

/** All the model machines, in the order of the file. */
export function presets(): readonly Preset[] {
  return [...rows.keys()].map(preset)
}
