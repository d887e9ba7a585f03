import { fieldsOf } from '../../shared/input/index.ts'
import type { Operation } from '../../shared/operation.ts'
import { parameterOf } from './parameters.ts'
import { problemRef } from './responses.ts'
import type { JsonObject } from './schemas.ts'

const NAME = {
  name: 'id',
  in: 'path',
  required: true,
  description: 'Designation or another name of the refrigerant',
  schema: { type: 'string', examples: ['R-134a', 'R-1234yf', 'propane'] },
} as const

const json = (schema: JsonObject) => ({ content: { 'application/json': { schema } } })

/** The addresses that answer GET by a refrigerant's name. */
export function refrigerantPaths(operations: readonly Operation[]): JsonObject {
  const saturation = operations.find(({ name }) => name === 'saturation')
  return {
    '/v1/refrigerants': {
      get: {
        operationId: 'list-refrigerants',
        tags: ['refrigerants'],
        summary: 'What is known of every refrigerant',
        responses: {
          '200': {
            description: 'Designation, composition, safety class, potentials, oils, sources.',
            ...json({
              type: 'object',
              properties: { refrigerants: { type: 'array', items: refrigerantSchema } },
              required: ['refrigerants'],
            }),
          },
        },
      },
    },
    '/v1/refrigerants/{id}': {
      get: {
        operationId: 'get-refrigerant',
        tags: ['refrigerants'],
        summary: 'What is known of one refrigerant',
        parameters: [NAME],
        responses: {
          '200': { description: 'The refrigerant.', ...json(refrigerantSchema) },
          '404': problemRef(404),
        },
      },
    },
    ...(saturation ? { '/v1/refrigerants/{id}/saturation': saturationPath(saturation) } : {}),
  }
}

const refrigerantSchema: JsonObject = {
  type: 'object',
  properties: {
    id: { type: 'string' },
    name: { type: 'string' },
    kind: { enum: ['pure', 'zeotrope', 'near-azeotrope', 'azeotrope'] },
  },
  required: ['id', 'name', 'kind'],
}

function saturationPath(saturation: Operation): JsonObject {
  const fields = fieldsOf(saturation).filter(({ name }) => name !== 'refrigerant')
  return {
    get: {
      operationId: 'get-saturation',
      tags: ['refrigerants'],
      summary: saturation.summary,
      description: 'The saturation operation by query, so that an answer can be linked and cached.',
      parameters: [NAME, ...fields.map(parameterOf)],
      responses: {
        '200': {
          description: 'The answer.',
          ...json({ $ref: '#/components/schemas/SaturationAnswer' }),
        },
        '400': problemRef(400),
        '404': problemRef(404),
        '422': problemRef(422),
      },
    },
  }
}
