import { CalcError } from '../../shared/errors.ts'
import {
  type Draft,
  type DraftValue,
  draftOf,
  inputOf,
  isEmpty,
  OF_THE_PLACE,
  SHARED,
  withValue,
} from '../../shared/form/index.ts'
import { fieldsOf } from '../../shared/input/index.ts'
import type { Operation } from '../../shared/operation.ts'
import { outcomeNow } from './compute/compute.ts'
import type { Outcome } from './compute/outcome.ts'
import { readKept, writeKept } from './kept.ts'

export type Units = 'us' | 'si' | 'both' | undefined

export interface Settings {
  readonly units?: Units
  /** Whether the description of each field stands under it. */
  readonly explained?: boolean
  /** Larger letters, for a wall. */
  readonly large?: boolean
}

const SETTINGS = 'settings'
const COMMON = 'common'
const draftName = (operation: string) => `form:${operation}`

let settings: Settings = readKept(SETTINGS, {})
let common: Draft = readKept(COMMON, {})
const drafts = new Map<string, Draft>()

export const currentSettings = (): Settings => settings

export function changeSettings(change: Settings): void {
  settings = { ...settings, ...change }
  writeKept(SETTINGS, settings)
}

/** What the shop and the machine have in common for every form. */
export const commonDraft = (): Draft => common

const ownDraft = (operation: string): Draft =>
  drafts.get(operation) ?? readKept(draftName(operation), {})

/** What stands in the form of an operation: its own fields, and those that all forms share. */
export const draftFor = (operation: string): Draft => ({
  ...ownDraft(operation),
  ...Object.fromEntries(Object.entries(common).filter(([, value]) => !isEmpty(value))),
})

/** Whether anything of its own is filled in: what is remembered alone asks for no answer. */
export const isAsked = (operation: string): boolean => !isEmpty(ownDraft(operation))

type Path = readonly (string | number)[]

export function fill(operation: string, path: Path, value: DraftValue): void {
  if (path.length === 1 && SHARED.has(String(path[0]))) {
    common = withValue(common, path, value)
    writeKept(COMMON, common)
  }
  keepDraft(operation, withValue(ownDraft(operation), path, value))
}

function keepDraft(operation: string, draft: Draft): void {
  drafts.set(operation, draft)
  writeKept(draftName(operation), draft)
}

/** Empties the form, and with it what is known of the machine; the shop's place stays. */
export function clear(operation: string): void {
  common = Object.fromEntries(Object.entries(common).filter(([name]) => OF_THE_PLACE.has(name)))
  writeKept(COMMON, common)
  keepDraft(operation, {})
}

/** Fills the form with the example of the operation; it moves no shop to another place. */
export function fillExample(operation: Operation): void {
  clear(operation.name)
  for (const [name, value] of Object.entries(operation.example)) {
    if (OF_THE_PLACE.has(name)) {
      keepDraft(operation.name, withValue(ownDraft(operation.name), [name], draftOf(value)))
    } else fill(operation.name, [name], draftOf(value))
  }
}

/** What an operation says to a filled form; `about` as for `outcomeNow`. */
export function outcomeOf(
  operation: Operation,
  draft: Draft,
  units: Units,
  about?: string,
): Outcome {
  try {
    const { input, placeOf } = inputOf(fieldsOf(operation), draft)
    const asked = units ? { ...input, units } : input
    const outcome = outcomeNow(operation, asked, about)
    if (outcome.kind === 'answer') return { ...outcome, input: asked }
    if (outcome.kind !== 'error') return outcome
    return { kind: 'error', error: outcome.error.with({ path: placeOf(outcome.error.path) }) }
  } catch (error) {
    if (error instanceof CalcError) return { kind: 'error', error }
    throw error
  }
}
