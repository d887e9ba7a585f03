import { type Field, fieldsOf } from '../../shared/input/index.ts'
import { operations } from '../../shared/operations.ts'

/** A field of an operation, wherever in its input it stands. */
export interface Placed {
  readonly operation: string
  /** Names from the top of the input down, an index for an entry of a list. */
  readonly path: readonly (string | number)[]
  readonly field: Field
}

/** Every field of every operation, those of records and lists included. */
export const everyField = (): readonly Placed[] =>
  operations.flatMap((entry) => below(entry.name, fieldsOf(entry), []))

function below(operation: string, fields: readonly Field[], at: Placed['path']): readonly Placed[] {
  return fields.flatMap((field) => {
    const path = [...at, field.name]
    const listed = field.shape.type === 'list'
    const inner = field.shape.type === 'list' ? field.shape.item : field.shape
    const deeper = listed ? [...path, 0] : path
    return [
      { operation, path, field },
      ...(inner.type === 'record' ? below(operation, inner.fields, deeper) : []),
    ]
  })
}

/** An input that holds nothing but `value` at `path`. */
export const inputWith = (path: Placed['path'], value: unknown): unknown =>
  path.reduceRight<unknown>(
    (inner, part) => (typeof part === 'number' ? [inner] : { [part]: inner }),
    value,
  )
