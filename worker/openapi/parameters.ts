import type { Field } from '../../shared/input/index.ts'
import type { JsonObject } from './schemas.ts'

/** A field as a query parameter: always a text on the wire, read as in the other doors. */
export function parameterOf({ name, description, required, preset, shape }: Field): JsonObject {
  const said =
    typeof preset === 'string' || typeof preset === 'boolean' ? `; ${preset} if not given` : ''
  return { name, in: 'query', required, description: description + said, schema: schemaOf(shape) }
}

function schemaOf(shape: Field['shape']): JsonObject {
  switch (shape.type) {
    case 'choice':
      return { type: 'string', enum: shape.choices }
    case 'flag':
      return { type: 'boolean' }
    case 'number':
      return { type: shape.integer ? 'integer' : 'number' }
    case 'quantity':
      return { type: 'string', examples: shape.examples }
    case 'list':
      return { type: 'array', items: schemaOf(shape.item) }
    default:
      return { type: 'string' }
  }
}
