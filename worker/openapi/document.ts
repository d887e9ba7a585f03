import { ABOUT } from '../../shared/about.ts'
import type { Operation } from '../../shared/operation.ts'
import { MARKS, type Source } from '../../shared/sources.ts'
import { DOOR_PROBLEMS } from '../problem.ts'
import { batchPath } from './batch.ts'
import { diagramPaths } from './diagrams.ts'
import { described, type Schemas, withoutDefaults, withPassedFields } from './refine.ts'
import { refrigerantPaths, refrigerantSchema } from './refrigerants.ts'
import { problemRef, problemResponse, problemSchema, refusals } from './responses.ts'
import { type JsonObject, SchemaShelf } from './schemas.ts'
import { servicePaths } from './service.ts'
import { tableGet } from './table.ts'
import { unitPaths, withUnits } from './units.ts'

export interface Document extends JsonObject {
  readonly openapi: string
  readonly info: JsonObject
  readonly paths: JsonObject
  readonly components: JsonObject
}

/** The OpenAPI 3.1 description of the service, made from the list of operations. */
export function openapiDocument(operations: readonly Operation[]): Document {
  const shelf = new SchemaShelf()
  const inputs = operations.map(
    ({ name, input }) => [`${typeName(name)}Input`, shelf.add(input, 'input')] as const,
  )
  const answers = operations.map(
    ({ name, output }) => [`${typeName(name)}Answer`, shelf.add(output, 'output')] as const,
  )
  const paths = operations.map(
    (operation) =>
      [
        `/v1/${operation.name}`,
        { ...(operation.name === 'table' ? tableGet(operation) : {}), ...postOf(operation) },
      ] as const,
  )
  const schemas = refined(shelf.shared(), inputs, answers)
  return {
    openapi: '3.1.1',
    info: {
      title: ABOUT.name,
      version: ABOUT.version,
      summary: 'Refrigerant service calculations',
      description: `${ABOUT.description}\n\nEvery answer says how its figures came about, what can hurt somebody, what was taken where nothing was given, and where each figure comes from. Marks of sources: ${marks()}.`,
      license: { name: ABOUT.licence, identifier: ABOUT.licence },
    },
    servers: [{ url: '/' }],
    tags: [
      { name: 'calculations', description: 'One address an operation, in the order of a visit.' },
      { name: 'batches', description: 'Many inputs of an operation in one request.' },
      { name: 'pictures', description: 'Answers drawn as SVG.' },
      { name: 'refrigerants', description: 'What the calculations know of each refrigerant.' },
      { name: 'service', description: 'About the service itself.' },
    ],
    paths: {
      ...Object.fromEntries(paths),
      ...Object.fromEntries(
        operations.map(({ name }) => [
          `/v1/${name}/batch`,
          batchPath(name, typeName(name), problems()),
        ]),
      ),
      ...diagramPaths(operations, typeName, problems()),
      ...refrigerantPaths(operations),
      ...unitPaths(),
      ...servicePaths(),
    },
    components: {
      schemas,
      responses: Object.fromEntries(
        refusals.map((status) => [`Problem${status}`, problemResponse(status)]),
      ),
    },
  }
}

type Named = readonly (readonly [name: string, schema: JsonObject])[]

function refined(shared: Schemas, inputs: Named, answers: Named): JsonObject {
  const asked = withPassedFields(withoutDefaults({ ...shared, ...Object.fromEntries(inputs) }))
  const all = withUnits({
    ...asked,
    ...Object.fromEntries(answers),
    Refrigerant: refrigerantSchema,
    Problem: problemSchema(),
  })
  return described(all as Schemas)
}

/** `work-order` to `WorkOrder`. */
export const typeName = (name: string): string =>
  name.replace(/(?:^|-)([a-z0-9])/gu, (_, letter: string) => letter.toUpperCase())

function postOf(operation: Operation): JsonObject {
  const { name, summary } = operation
  return {
    post: {
      operationId: name,
      tags: ['calculations'],
      summary,
      description: told(operation),
      requestBody: {
        required: true,
        content: {
          'application/json': {
            schema: { $ref: `#/components/schemas/${typeName(name)}Input` },
            examples: { usual: { value: operation.example as JsonObject } },
          },
        },
      },
      responses: {
        '200': {
          description: 'The answer.',
          content: {
            'application/json': {
              schema: { $ref: `#/components/schemas/${typeName(name)}Answer` },
            },
          },
        },
        ...problems(),
      },
    },
  }
}

/** Every refusal that the calculations and the door before them know. */
function problems(): JsonObject {
  const { status: otherMethod } = DOOR_PROBLEMS['method-not-allowed']
  return Object.fromEntries(
    refusals
      .filter((status) => status !== otherMethod)
      .map((status) => [String(status), problemRef(status)]),
  )
}

function told({ description, cautions, sources }: Operation): string {
  const parts = [description]
  if (cautions.length > 0) {
    parts.push(cautions.map(({ level, text }) => `- ${level.toUpperCase()}: ${text}`).join('\n'))
  }
  if (sources.length > 0) parts.push(`Rests on:\n\n${sources.map(cited).join('\n')}`)
  return parts.join('\n\n')
}

const cited = ({ title, where, mark }: Source) =>
  `- ${where === undefined ? title : `${title}, ${where}`} (${mark})`

const marks = () =>
  Object.entries(MARKS)
    .map(([mark, meaning]) => `${mark}: ${meaning}`)
    .join('; ')
