import { Validator } from '@seriousme/openapi-schema-validator'
import { describe, expect, it } from 'vitest'
import { operations } from '../shared/operations.ts'
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
      .filter(({ method, path }) => ['GET', 'POST'].includes(method) && path.startsWith('/v1/'))
      .map(({ path }) => path.replace(/\/$/u, ''))
    expect([...new Set(served)].sort()).toEqual(described.sort())
  })
})
