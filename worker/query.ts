import { CalcError } from '../shared/errors.ts'
import { type Field, fieldNamed, readText, unknownName } from '../shared/input/index.ts'

/**
 * An operation's input from a query string: each parameter is a field, in camelCase or kebab-case.
 *
 * @throws {CalcError} `bad-input` for a parameter that is no field, or one that is given twice.
 */
export function inputFromQuery(
  fields: readonly Field[],
  query: Readonly<Record<string, readonly string[]>>,
): Record<string, unknown> {
  const input: Record<string, unknown> = {}
  for (const [name, values] of Object.entries(query)) {
    const field = fieldNamed(fields, name)
    if (!field) throw unknownName(name, fields)
    const read = values.map((text) => readText(field, text))
    const listed = field.shape.type === 'list'
    if (field.name in input || (read.length > 1 && !listed)) {
      throw new CalcError('bad-input', `The field "${name}" is given twice.`, {
        path: [field.name],
        hint: 'Give it once.',
      })
    }
    input[field.name] = listed ? read.flat() : read[0]
  }
  return input
}
