import { MOST_WORK, weightOf } from '../batch/work.ts'
import { JSON_TYPE, LINES_TYPE } from '../reply.ts'
import type { JsonObject } from './schemas.ts'

/** `POST /v1/<operation>/batch`: many inputs in one request, each with its own answer or problem. */
export function batchPath(name: string, type: string, problems: JsonObject): JsonObject {
  const most = Math.floor(MOST_WORK / weightOf(name))
  const lines = (what: string) => ({
    schema: { type: 'string', description: `${what}, a JSON object a line` },
  })
  return {
    post: {
      operationId: `${name}-batch`,
      tags: ['batches'],
      summary: `Many inputs of ${name} in one request`,
      description: `At most ${most} inputs, fewer where they are long. They are answered in their order, as a list or a line each as they came; where one fails, it has its problem in the place of its answer, and the others go on.`,
      requestBody: {
        required: true,
        content: {
          [JSON_TYPE]: {
            schema: {
              type: 'array',
              items: { $ref: `#/components/schemas/${type}Input` },
              minItems: 1,
              maxItems: most,
            },
          },
          [LINES_TYPE]: lines('The inputs'),
        },
      },
      responses: {
        '200': {
          description: 'An entry an input: its answer or its problem.',
          content: {
            [JSON_TYPE]: { schema: { type: 'array', items: entry(type) } },
            [LINES_TYPE]: lines('The entries'),
          },
        },
        ...problems,
      },
    },
  }
}

const ROW = { type: 'integer', minimum: 1, description: 'Which input, counted from one' }

const entry = (type: string): JsonObject => ({
  type: 'object',
  properties: {
    row: ROW,
    answer: { $ref: `#/components/schemas/${type}Answer`, description: 'What it comes to' },
    problem: { $ref: '#/components/schemas/Problem', description: 'Why it has no answer' },
  },
  required: ['row'],
  // One of the two, and not both.
  oneOf: [{ required: ['answer'] }, { required: ['problem'] }],
  additionalProperties: false,
})
