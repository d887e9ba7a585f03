import order from '../../data/page/order.json' with { type: 'json' }
import type { Field } from '../input/index.ts'
import { type Draft, isEmpty } from './draft.ts'
import { at } from './known.ts'
import { type Group, groupsOf } from './layout.ts'

const HEAD: ReadonlySet<string> = new Set(order.head)

/** Fields that people fill with sentences. */
export const LONG: ReadonlySet<string> = new Set(order.long)

/** Fields that hold a day. */
export const DAYS: ReadonlySet<string> = new Set(order.days)

/** The operation whose fields a part of a work order holds, or nothing where it has fields of its own. */
export const sectionOf = (name: string): string | undefined => at<string>(order.sections, name)

/** The fields of such a part in the groups of its operation, without what the head of the order says. */
export const sectionGroups = (
  operation: string,
  fields: readonly Field[],
  filled: Draft,
): readonly Group[] =>
  groupsOf(
    operation,
    // What a file brought stays in sight wherever it stands.
    fields.filter(({ name }) => !HEAD.has(name) || !isEmpty(filled[name])),
  )
