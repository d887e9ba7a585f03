import data from '../../../data/service/oil-types.json' with { type: 'json' }
import { CalcError } from '../../errors.ts'
import { nearestNames } from '../../nearest.ts'
import { sourceTable } from '../../source-table.ts'
import type { Source } from '../../sources.ts'

export const typeSource = sourceTable(data.sources)
export type TypeSource = keyof typeof data.sources
export type Family = keyof typeof data.families

export interface Oil {
  readonly name: string
  readonly family: Family
  /** ISO viscosity grade, mm²/s at 40 °C, where known. */
  readonly viscosity: number | undefined
  /** Refrigerant that it was made for, where known. */
  readonly madeFor: string | undefined
  readonly source: Source
}

const fold = (name: string) => name.toLowerCase().replace(/[^a-z0-9]/gu, '')

/** The oil of a name as it stands on a can or a label. @throws {CalcError} `unknown-name` with the nearest. */
export function oilNamed(typed: string, path: string): Oil {
  const wanted = fold(typed)
  const row = data.oils.find(({ name, aliases }) =>
    [name, ...aliases].some((known) => fold(known) === wanted),
  )
  if (row && wanted !== '') {
    return {
      name: row.name,
      family: row.family as Family,
      viscosity: row.viscosity,
      madeFor: row.madeFor,
      source: typeSource(row.source as TypeSource),
    }
  }
  const nearest = nearestNames(
    typed,
    data.oils.flatMap(({ name, aliases }) => [name, ...aliases]),
  )
  throw new CalcError('unknown-name', `There is no oil "${typed.slice(0, 60)}" here.`, {
    path: [path],
    hint:
      nearest.length > 0
        ? `Did you mean ${nearest.join(' or ')}? A family (PAG, POE, PVE, mineral oil, alkylbenzene) will do.`
        : 'Give its family: PAG, POE, PVE, PAO, mineral oil or alkylbenzene.',
  })
}

/** Family in words: "polyolester (POE)". */
export const familyName = (family: Family) => data.families[family]
