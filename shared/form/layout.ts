import visit from '../../data/page/visit.json' with { type: 'json' }
import type { Field } from '../input/index.ts'
import { among, at } from './known.ts'

/** Fields of a form that belong together. */
export interface Group {
  readonly title: string
  readonly fields: readonly Field[]
  /** Whether it is open from the start; others are folded until somebody needs them. */
  readonly shown: boolean
}

export interface Stage {
  readonly id: string
  readonly title: string
  readonly says: string
  readonly operations: readonly string[]
}

/** The visit from before opening to the proof, with what is asked at each stage. */
export const STAGES: readonly Stage[] = visit.stages

/** Operations that have a place of their own beside the visit. */
export const APART: readonly string[] = visit.apart

/** Fields that hold one value for every form: a machine and its place are told once. */
export const SHARED: ReadonlySet<string> = new Set(visit.shared)

/** Of those, what belongs to the shop and stays when another machine comes in. */
export const OF_THE_PLACE: ReadonlySet<string> = new Set(visit.place)

/** Fields that are set for the whole page and stand on no form. */
export const KEPT: ReadonlySet<string> = new Set(visit.kept)

/** What somebody asks who needs this operation; nothing where data/page/visit.json does not say. */
export const knownQuestion = (operation: string): string | undefined =>
  at<string>(visit.questions, operation)

const REST = 'More'

/**
 * The fields of an operation in the order in which they are asked, grouped. Fields that nobody
 * placed come last, so that a new one is never lost.
 */
export function groupsOf(operation: string, fields: readonly Field[]): readonly Group[] {
  const byName = new Map(fields.map((field) => [field.name, field]))
  for (const name of KEPT) byName.delete(name)
  const own = among(({ groups }) => at(groups, operation)) ?? []
  const groups = [...own, ...visit.everywhere].map(({ title, fields: names, ...laid }, index) => {
    const found = names.flatMap((name) => {
      const field = byName.get(name)
      byName.delete(name)
      return field ?? []
    })
    const shown = index === 0 || ('shown' in laid && laid.shown === true)
    return { title, fields: found, shown: shown && found.length > 0 }
  })
  const rest = [...byName.values()]
  return [...groups, { title: REST, fields: rest, shown: own.length === 0 }].filter(
    (group) => group.fields.length > 0,
  )
}

/** Fields that no group of the operation names. */
export const unplaced = (operation: string, fields: readonly Field[]): readonly string[] =>
  groupsOf(operation, fields)
    .filter(({ title }) => title === REST)
    .flatMap((group) => group.fields.map(({ name }) => name))
