import { fieldsOf } from '../../shared/input/index.ts'
import type { Operation } from '../../shared/operation.ts'
import { TABLE_FORMATS } from '../routes/table.ts'
import { parameterOf } from './parameters.ts'
import { getOf } from './parts.ts'
import type { JsonObject } from './schemas.ts'

/** `GET /v1/table`, beside the POST that every operation has. */
export function tableGet(table: Operation): JsonObject {
  const text = { schema: { type: 'string' } }
  return getOf({
    operationId: 'get-table',
    tags: ['calculations'],
    summary: table.summary,
    description: 'The table by query: as JSON, CSV or text, by format or by the Accept header.',
    parameters: [
      ...fieldsOf(table).map(parameterOf),
      {
        name: 'format',
        in: 'query',
        required: false,
        description: 'Form of the table; it overrides the Accept header',
        schema: { type: 'string', enum: TABLE_FORMATS },
      },
    ],
    answer: {
      description: 'The table.',
      content: {
        'application/json': { schema: { $ref: '#/components/schemas/TableAnswer' } },
        'text/csv': text,
        'text/plain': text,
      },
    },
    refusals: [400, 404, 422],
  })
}
