import { labelOf } from '../answer/words.ts'
import { among, at } from './known.ts'

/** What a field is called on a form, or nothing where data/page does not say. */
export const knownLabel = (operation: string, field: string): string | undefined =>
  among(({ ownLabels }) => at(at(ownLabels, operation), field)) ??
  among(({ labels }) => at(labels, field))

/** What a choice is called on a form, or nothing where data/page does not say. */
export const knownChoice = (field: string, value: string): string | undefined =>
  among(({ ownChoices }) => at(at(ownChoices, field), value)) ??
  among(({ choices }) => at(choices, value))

/** What a field is called on a form of an operation, in trade words. */
export const fieldLabel = (operation: string, field: string): string =>
  knownLabel(operation, field) ?? labelOf(field)

/** What a choice is called. */
export const choiceLabel = (field: string, value: string): string =>
  knownChoice(field, value) ?? value.replaceAll('-', ' ')

/** What one row of a list is called: "Reading" of a rise. */
export const rowLabel = (operation: string, list: string): string =>
  among(({ rows }) => at(rows, list)) ?? fieldLabel(operation, list)

/**
 * Names fields by their labels where people read them on a form: "Low-side pressure" for
 * `suctionPressure`, those in quotation marks too, and the whole list for an entry of it.
 */
export function labeller(operation: string, names: readonly string[]): (text: string) => string {
  if (names.length === 0) return (text) => text
  // A name of one word may be a word of the sentence: it is a field only in quotation marks.
  const humped = names.filter((name) => /[A-Z]/u.test(name))
  const pattern = new RegExp(
    `"(${names.join('|')})"|\\b(${[...humped, '(?!)'].join('|')})\\b(?:\\.\\d+)?`,
    'gu',
  )
  return (text) =>
    text.replace(
      pattern,
      (_, quoted?: string, plain?: string) => `“${fieldLabel(operation, quoted ?? plain ?? '')}”`,
    )
}
