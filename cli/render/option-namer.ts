import { fieldsOf, kebab } from '../../shared/input/index.ts'
import type { Operation } from '../../shared/operation.ts'

/**
 * Names fields as options where people read at a terminal: `--spill-volume` for `spillVolume`, those in
 * quotation marks too, and the whole list for an entry of it (`certificates.0`).
 */
export function optionNamer(operation: Operation | undefined): (text: string) => string {
  const names = operation ? fieldsOf(operation).map(({ name }) => name) : []
  if (names.length === 0) return (text) => text
  const otherwise = names.filter((name) => kebab(name) !== name)
  const pattern = new RegExp(
    `"(${names.join('|')})"|\\b(${[...otherwise, '(?!)'].join('|')})\\b(?:\\.\\d+)?|\\b(${names.join('|')})\\.\\d+`,
    'gu',
  )
  return (text) =>
    text.replace(
      pattern,
      (_, quoted?: string, plain?: string, entry?: string) =>
        `--${kebab(quoted ?? plain ?? entry ?? '')}`,
    )
}
