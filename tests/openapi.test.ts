import { Validator } from '@seriousme/openapi-schema-validator'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { operation, operations } from '../shared/operations.ts'
import { createApp } from '../worker/app.ts'
import type { Json } from '../worker/openapi/schemas.ts'

const app = createApp()
const document = (await (await app.request('/openapi.json')).json()) as Record<string, Json>

function* parts(
  value: Json,
  path = '#',
): Generator<readonly [path: string, part: { readonly [name: string]: Json }]> {
  if (Array.isArray(value)) {
    for (const [index, item] of value.entries()) yield* parts(item, `${path}/${index}`)
  } else if (typeof value === 'object' && value !== null) {
    const part = value as { readonly [name: string]: Json }
    yield [path, part]
    for (const [name, item] of Object.entries(part)) yield* parts(item, `${path}/${name}`)
  }
}

/** The calculations and what watches them; the pages and this document itself are not. */
const isDescribed = (path: string) => path.startsWith('/v1/') || path === '/healthz'

const lookUp = (reference: string): Json | undefined =>
  reference
    .slice(2)
    .split('/')
    .reduce<Json | undefined>(
      (at, name) =>
        typeof at === 'object' && at !== null && !Array.isArray(at)
          ? (at as { readonly [key: string]: Json })[name]
          : undefined,
      document,
    )

describe('the OpenAPI document', () => {
  it('is valid OpenAPI 3.1', async () => {
    const validator = new Validator()
    const { valid, errors } = await validator.validate(structuredClone(document))
    expect(errors ?? []).toEqual([])
    expect(valid).toBe(true)
    expect(validator.version).toBe('3.1')
  })

  it('leads every reference to something', () => {
    const references = [...parts(document)].flatMap(([path, { $ref }]) =>
      typeof $ref === 'string' ? [[path, $ref] as const] : [],
    )
    expect(references.length).toBeGreaterThan(20)
    expect(references.filter(([, reference]) => !reference.startsWith('#/components/'))).toEqual([])
    expect(references.filter(([, reference]) => lookUp(reference) === undefined)).toEqual([])
  })

  it('has every operation with a body, an example and its refusals', () => {
    for (const { name, example } of operations) {
      const post =
        lookUp(`#/paths/~1v1~1${name}`) ??
        (document.paths as { [path: string]: Json })[`/v1/${name}`]
      expect(post).toEqual(
        expect.objectContaining({
          post: expect.objectContaining({
            operationId: name,
            requestBody: expect.objectContaining({
              content: {
                'application/json': expect.objectContaining({
                  examples: { usual: { value: example } },
                }),
              },
            }),
            responses: expect.objectContaining({
              200: expect.anything(),
              400: expect.anything(),
              422: expect.anything(),
            }),
          }),
        }),
      )
    }
  })

  it('names each operation once', () => {
    const names = [...parts(document.paths ?? null)].flatMap(
      ([, { operationId }]) => operationId ?? [],
    )
    expect(new Set(names).size).toBe(names.length)
    expect(names.length).toBeGreaterThan(operations.length)
  })

  it('has every address that the service has, and no other', () => {
    const described = Object.keys(document.paths as object).map((path) =>
      path.replace(/\{(\w+)\}/gu, ':$1'),
    )
    const served = app.routes
      .filter(({ method, path }) => ['GET', 'POST'].includes(method) && isDescribed(path))
      .map(({ path }) => path.replace(/\/$/u, ''))
    expect([...new Set(served)].sort()).toEqual(described.sort())
  })

  it('says of every field what it is and what it takes', () => {
    const fields = [...parts(document)].flatMap(([path, { properties }]) =>
      typeof properties === 'object' && properties !== null && !Array.isArray(properties)
        ? Object.entries(properties as object).map(
            ([name, field]) => [`${path}/${name}`, field as { [key: string]: Json }] as const,
          )
        : [],
    )
    expect(fields.length).toBeGreaterThan(1_000)
    const target = (field: { [key: string]: Json }): { [key: string]: Json } =>
      typeof field.$ref === 'string' ? target(lookUp(field.$ref) as { [key: string]: Json }) : field
    const mute = fields.filter(([, field]) => !field.description && !target(field).description)
    expect(mute.map(([path]) => path)).toEqual([])
    const untyped = fields.filter(
      ([, field]) =>
        !['type', 'anyOf', 'oneOf', 'enum', 'const'].some((key) => key in target(field)),
    )
    expect(untyped.map(([path]) => path)).toEqual([])
  })

  it('promises no default of an input, which generated clients take for a needed field', () => {
    const { schemas } = document.components as { schemas: Record<string, Json> }
    const inputs = Object.entries(schemas).filter(([name]) => name.endsWith('Input'))
    expect(inputs).toHaveLength(operations.length)
    const defaults = [...parts(inputs as unknown as Json)].filter(([, part]) => 'default' in part)
    expect(defaults).toEqual([])
  })

  it('names for every address what else may come: too many requests, a fault, an answer that is kept', () => {
    const paths = document.paths as Record<string, Record<string, { responses: object }>>
    for (const [path, item] of Object.entries(paths)) {
      for (const [method, { responses }] of Object.entries(item)) {
        const others = path === '/healthz' ? ['500'] : ['429', '500']
        if (method === 'get' && path !== '/healthz') others.push('304')
        expect(Object.keys(responses), `${method} ${path}`).toEqual(expect.arrayContaining(others))
      }
    }
  })
})

describe('what the service says', () => {
  const ajv = new Ajv2020({ strict: false, allErrors: true, validateFormats: false })
  ajv.addSchema(document, 'document')
  const pointer = (...names: readonly string[]) =>
    names.map((name) => `/${name.replaceAll('~', '~0').replaceAll('/', '~1')}`).join('')
  /** What does not fit the schema at that place of the document. */
  const faults = (value: unknown, ...place: readonly string[]) => {
    const validate = ajv.compile({ $ref: `document#${encodeURI(pointer(...place))}` })
    validate(value)
    return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`)
  }
  const body = ['content', 'application/json', 'schema'] as const
  const answerAt = (path: string, method: string) => [
    'paths',
    path,
    method,
    'responses',
    '200',
    ...body,
  ]
  const ask = async (path: string, sent?: unknown) =>
    (await (
      await app.request(
        path,
        sent === undefined
          ? {}
          : {
              method: 'POST',
              headers: { 'content-type': 'application/json' },
              body: JSON.stringify(sent),
            },
      )
    ).json()) as unknown

  it.each(operations.map(({ name, example }) => [name, example] as const))(
    'of %s fits the document: example, answer, batch',
    async (name, example) => {
      const path = `/v1/${name}`
      expect(faults(example, 'paths', path, 'post', 'requestBody', ...body)).toEqual([])
      expect(
        faults({ ...example, nonsense: 1 }, 'paths', path, 'post', 'requestBody', ...body),
      ).not.toEqual([])
      expect(faults(await ask(path, example), ...answerAt(path, 'post'))).toEqual([])
      const batch = await ask(`${path}/batch`, [example, {}])
      expect(faults(batch, ...answerAt(`${path}/batch`, 'post'))).toEqual([])
      expect(faults(await ask(path, {}), 'components', 'schemas', 'Problem')).toEqual([])
    },
  )

  it.each(['/v1/refrigerants', '/v1/units', '/v1/operations', '/healthz'])(
    'at %s fits the document',
    async (path) => {
      const answer = await ask(path)
      expect(faults(answer, ...answerAt(path, 'get'))).toEqual([])
      expect(faults({ ...(answer as object), other: 1 }, ...answerAt(path, 'get'))).not.toEqual([])
    },
  )

  it('lists the units as enums: those of its kind and no others', () => {
    const at = ['components', 'schemas', 'Pressure'] as const
    expect(faults({ value: 32, unit: 'psig' }, ...at)).toEqual([])
    expect(faults({ value: 32, unit: 'psia' }, ...at)).toEqual([])
    expect(faults({ value: 32, unit: 'oz' }, ...at)).not.toEqual([])
    expect(faults({ value: 32, unit: 'pound' }, 'components', 'schemas', 'Quantity')).not.toEqual(
      [],
    )
  })

  it('has of an order’s sections what the steps have', () => {
    const at = ['components', 'schemas', 'WorkOrderInput'] as const
    const order = operation('work-order').example
    expect(faults({ ...order, leakTest: { refrigerant: 'R-22' } }, ...at)).toEqual([])
    expect(faults({ ...order, leakTest: { nonsense: 1 } }, ...at)).not.toEqual([])
    expect(faults({ ...order, couplings: [{ spillVolume: 5 }] }, ...at)).not.toEqual([])
  })
})
