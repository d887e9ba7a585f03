import { ABOUT } from '../../shared/about.ts'
import { getOf, json, list, object, text } from './parts.ts'
import { problemRef } from './responses.ts'
import type { JsonObject } from './schemas.ts'

/** What can be asked about the service itself. */
export const servicePaths = (): JsonObject => ({
  '/v1/operations': getOf({
    operationId: 'list-operations',
    tags: ['service'],
    summary: 'What can be asked',
    answer: {
      description: 'The operations with an example each.',
      ...json(
        object({
          operations: list(
            object({
              name: text('Name of the operation'),
              summary: text('What it answers'),
              description: text('When to use it, and what it refuses'),
              method: { type: 'string', enum: ['POST'], description: 'How it is asked' },
              address: text('Where it is asked'),
              example: { type: 'object', description: 'An input that works' },
            }),
            'In the order of a visit',
          ),
        }),
      ),
    },
  }),
  '/healthz': {
    get: {
      operationId: 'health',
      tags: ['service'],
      summary: 'Whether the service answers, and which version',
      description: 'For whoever watches it: costs nothing, is never limited and never kept.',
      responses: {
        '200': {
          description: 'It answers.',
          ...json(
            object({
              status: { type: 'string', enum: ['ok'], description: 'It answers' },
              version: { ...text('Version that runs'), examples: [ABOUT.version] },
            }),
          ),
        },
        '500': problemRef(500),
      },
    },
  },
})
