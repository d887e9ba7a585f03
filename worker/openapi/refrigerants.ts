import { fieldsOf } from '../../shared/input/index.ts'
import type { Operation } from '../../shared/operation.ts'
import { MARKS } from '../../shared/sources.ts'
import { parameterOf } from './parameters.ts'
import { getOf, json, list, object, text } from './parts.ts'
import type { JsonObject } from './schemas.ts'

const NAME = {
  name: 'id',
  in: 'path',
  required: true,
  description: 'Designation or another name of the refrigerant',
  schema: { type: 'string', examples: ['R-134a', 'R-1234yf', 'propane'] },
} as const

const REFRIGERANT = { $ref: '#/components/schemas/Refrigerant' } as const

/** The addresses that answer GET by a refrigerant's name. */
export function refrigerantPaths(operations: readonly Operation[]): JsonObject {
  const saturation = operations.find(({ name }) => name === 'saturation')
  return {
    '/v1/refrigerants': getOf({
      operationId: 'list-refrigerants',
      tags: ['refrigerants'],
      summary: 'What is known of every refrigerant',
      answer: {
        description: 'Designation, composition, safety class, potentials, oils, sources.',
        ...json(object({ refrigerants: list(REFRIGERANT, 'In order of designation') })),
      },
    }),
    '/v1/refrigerants/{id}': getOf({
      operationId: 'get-refrigerant',
      tags: ['refrigerants'],
      summary: 'What is known of one refrigerant',
      parameters: [NAME],
      answer: { description: 'The refrigerant.', ...json(REFRIGERANT) },
      refusals: [404],
    }),
    ...(saturation ? { '/v1/refrigerants/{id}/saturation': saturationPath(saturation) } : {}),
  }
}

const sourceKey = text('Key of its source in `sources`')
const sourced = (value: JsonObject): JsonObject => object({ value, source: sourceKey })

/** What `shared/refrigerant/info.ts` says of a refrigerant. */
export const refrigerantSchema: JsonObject = {
  ...object({
    id: { ...text('ASHRAE 34 designation with its hyphen'), examples: ['R-134a'] },
    name: text('Chemical name, or for a blend what it is made of'),
    aliases: list(text('Another way to write it; case, hyphens and spaces do not count')),
    kind: {
      type: 'string',
      enum: ['pure', 'zeotrope', 'near-azeotrope', 'azeotrope'],
      description: 'A pure substance, or how far a blend boils over a span',
    },
    composition: list(
      object({
        substance: text('Designation of the component'),
        massFraction: { type: 'number', minimum: 0, maximum: 1, description: 'Nominal, by mass' },
      }),
      'What it is made of',
    ),
    safetyClass: {
      ...sourced({ type: 'string', enum: ['A1', 'A2L', 'A2', 'A3', 'B1', 'B2L', 'B2', 'B3'] }),
      description: 'ASHRAE 34 safety class',
    },
    odp: {
      ...sourced({ type: 'number', minimum: 0 }),
      description: 'Ozone depletion potential, R-11 = 1',
    },
    gwp: list(
      object(
        {
          value: { type: 'number', description: 'kg of carbon dioxide a kg, over 100 years' },
          report: {
            type: 'string',
            enum: ['AR4', 'AR5', 'AR6'],
            description: 'IPCC assessment report that the value belongs to',
          },
          below: { type: 'boolean', description: 'The value is an upper bound' },
          source: sourceKey,
        },
        ['below'],
      ),
      'Global warming potential, one a report',
    ),
    oils: list(
      object({
        oil: text('Oil met in practice with this refrigerant'),
        use: text('Where it is met'),
        source: sourceKey,
      }),
      'Usual oils',
    ),
    flammability: list(
      object({
        quantity: text('What is told about burning, such as the lower flammability limit'),
        value: { type: 'number', description: 'In that unit' },
        unit: text('Unit of the value'),
        source: sourceKey,
      }),
      'Figures about burning; empty where it does not burn',
    ),
    notes: list(text('What a person should know beside the figures')),
    sources: {
      type: 'object',
      description: 'Where the figures come from, by the keys that they name',
      additionalProperties: object(
        {
          title: text('The source'),
          mark: { type: 'string', enum: Object.keys(MARKS), description: 'How far it was checked' },
          url: text('Address'),
          note: text('What to know of it'),
        },
        ['url', 'note'],
      ),
    },
  }),
  description: 'A refrigerant that can be named in a calculation.',
}

function saturationPath(saturation: Operation): JsonObject {
  const fields = fieldsOf(saturation).filter(({ name }) => name !== 'refrigerant')
  return getOf({
    operationId: 'get-saturation',
    tags: ['refrigerants'],
    summary: saturation.summary,
    description: 'The saturation operation by query, so that an answer can be linked and kept.',
    parameters: [NAME, ...fields.map(parameterOf)],
    answer: {
      description: 'The answer.',
      ...json({ $ref: '#/components/schemas/SaturationAnswer' }),
    },
    refusals: [400, 404, 422],
  })
}
