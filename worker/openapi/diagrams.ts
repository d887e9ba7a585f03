import { type DiagramKind, exampleOf } from '../../shared/diagram/index.ts'
import { DRAWING } from '../../shared/diagram/options.ts'
import { fieldsOf } from '../../shared/input/index.ts'
import type { Operation } from '../../shared/operation.ts'
import { diagramsFor, SVG_TYPE } from '../routes/diagram.ts'
import { parameterOf } from './parameters.ts'
import { getOf, json, list, object, text } from './parts.ts'
import type { JsonObject } from './schemas.ts'

/**
 * The addresses that draw.
 *
 * @param typeName - Name of an operation's input in the schemas.
 */
export function diagramPaths(
  operations: readonly Operation[],
  typeName: (operation: string) => string,
  problems: JsonObject,
): JsonObject {
  const paths = diagramsFor(operations).flatMap((entry) => {
    const operation = operations.find(({ name }) => name === entry.operation)
    return operation
      ? [[`/v1/diagram/${entry.kind}`, { post: postOf(entry, operation, typeName, problems) }]]
      : []
  })
  return { '/v1/diagram': LISTED, ...Object.fromEntries(paths) }
}

const LISTED = getOf({
  operationId: 'list-diagrams',
  tags: ['pictures'],
  summary: 'What can be drawn',
  answer: {
    description: 'The kinds of picture.',
    ...json(
      object({
        diagrams: list(
          object({
            kind: text('Name of the picture'),
            operation: text('The operation whose input it takes'),
            summary: text('What it shows'),
            method: { type: 'string', enum: ['POST'], description: 'How it is asked for' },
            address: text('Where it is asked for'),
          }),
          'In the order of a visit; the usual picture of an operation before its others',
        ),
      }),
    ),
  },
})

function postOf(
  entry: DiagramKind,
  operation: Operation,
  typeName: (operation: string) => string,
  problems: JsonObject,
): JsonObject {
  const { kind, summary } = entry
  return {
    operationId: `draw-${kind}`,
    tags: ['pictures'],
    summary,
    description: `Takes the input of ${operation.name}; \`units\` chooses the system of its axes. Refuses what ${operation.name} refuses, and an input of which there is nothing to draw. A title and a description in words are in the picture.`,
    parameters: fieldsOf(DRAWING).map(parameterOf),
    requestBody: {
      required: true,
      content: {
        'application/json': {
          schema: { $ref: `#/components/schemas/${typeName(operation.name)}Input` },
          examples: { usual: { value: exampleOf(entry, operation) as JsonObject } },
        },
      },
    },
    responses: {
      '200': {
        description: 'The picture.',
        content: { [SVG_TYPE]: { schema: { type: 'string' } } },
      },
      ...problems,
    },
  }
}
