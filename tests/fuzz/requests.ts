import fc from 'fast-check'
import type { JsonSchema } from '../../shared/input/index.ts'
import { inputLike } from '../support/arbitrary-input.ts'

/** A request, and where the document describes it. */
export interface Asked {
  readonly method: 'get' | 'post'
  readonly path: string
  readonly address: string
  readonly type?: string
  readonly body?: string
}

interface Operation {
  readonly parameters?: readonly {
    readonly name: string
    readonly in: string
    readonly schema: JsonSchema
  }[]
  readonly requestBody?: {
    readonly content: Readonly<
      Record<
        string,
        {
          readonly schema: JsonSchema
          readonly examples?: { usual: { value: Record<string, unknown> } }
        }
      >
    >
  }
}

export interface Document {
  readonly paths: Readonly<Record<string, Readonly<Partial<Record<'get' | 'post', Operation>>>>>
  readonly components: { readonly schemas: Readonly<Record<string, JsonSchema>> }
}

const JSON_TYPE = 'application/json'
const LINES_TYPE = 'application/x-ndjson'

/** Requests of every address of the document: mostly what its schemas allow, some of it broken. */
export function requestsOf(
  document: Document,
): readonly (readonly [string, fc.Arbitrary<Asked>])[] {
  const lookUp = (reference: string) =>
    reference
      .slice(2)
      .split('/')
      .reduce<unknown>(
        (at, name) => (at as Record<string, unknown> | undefined)?.[name],
        document,
      ) as JsonSchema | undefined
  return Object.entries(document.paths).flatMap(([path, item]) =>
    (['get', 'post'] as const).flatMap((method) => {
      const operation = item[method]
      if (!operation) return []
      const made =
        method === 'get' ? gets(path, operation) : posts(path, operation, document, lookUp)
      return [[`${method.toUpperCase()} ${path}`, made] as const]
    }),
  )
}

function posts(
  path: string,
  { requestBody }: Operation,
  document: Document,
  lookUp: (reference: string) => JsonSchema | undefined,
): fc.Arbitrary<Asked> {
  const batch = path.endsWith('/batch')
  const single = path.replace(/\/batch$/u, '')
  const { schema, examples } =
    (batch ? document.paths[single]?.post?.requestBody : requestBody)?.content[JSON_TYPE] ?? {}
  const target = schema?.$ref === undefined ? schema : lookUp(schema.$ref)
  const input = inputLike(target ?? {}, lookUp, examples?.usual.value ?? {})
  const json = (body: string, type = JSON_TYPE): Asked => ({
    method: 'post',
    path,
    address: path,
    type,
    body,
  })
  if (batch) {
    const inputs = fc.array(input, { maxLength: 5 })
    return fc.oneof(
      inputs.map((list) => json(JSON.stringify(list))),
      inputs.map((list) => json(list.map((one) => JSON.stringify(one)).join('\n'), LINES_TYPE)),
      broken.map((body) => json(body, LINES_TYPE)),
    )
  }
  return fc.oneof(
    { weight: 12, arbitrary: input.map((value) => json(JSON.stringify(value))) },
    { weight: 1, arbitrary: fc.jsonValue().map((value) => json(JSON.stringify(value))) },
    { weight: 1, arbitrary: broken.map((body) => json(body)) },
    {
      weight: 1,
      // A text that is cut anywhere.
      arbitrary: input
        .map((value) => JSON.stringify(value))
        .chain((text) => fc.nat(text.length).map((end) => json(text.slice(0, end)))),
    },
  )
}

const broken = fc.oneof(
  fc.string({ unit: 'binary' }),
  fc.constantFrom(
    '',
    '\u0000',
    '[',
    '{}',
    'null',
    '{"a":1e999}',
    '{"__proto__":{}}',
    '[[[[[]]]]]',
    '\uFEFF{}',
  ),
)

const NAMES = ['R-134a', 'R-407C', 'propane', 'R-999', '__proto__', '%00', 'R-1234ze(E)', ' ']

function gets(path: string, { parameters = [] }: Operation): fc.Arbitrary<Asked> {
  const query = parameters.filter((parameter) => parameter.in === 'query')
  // Few at a time: with all of them, hardly a question makes sense.
  const values = fc
    .subarray([...query], {
      minLength: Math.min(query.length, 1),
      maxLength: path.includes('{id}') ? Math.min(query.length, 2) : query.length,
    })
    .chain((some) =>
      fc.record(Object.fromEntries(some.map(({ name, schema }) => [name, queryValue(schema)]))),
    )
  return fc.tuple(fc.constantFrom(...NAMES), values).map(([id, given]) => {
    const text = new URLSearchParams(given as Record<string, string>).toString()
    const address = path.replace('{id}', encodeURIComponent(id))
    return { method: 'get', path, address: text === '' ? address : `${address}?${text}` }
  })
}

function queryValue(schema: JsonSchema): fc.Arbitrary<string> {
  const told = [...(schema.examples ?? []), ...(schema.enum ?? [])].map(String)
  return fc.oneof(
    { weight: 8, arbitrary: fc.constantFrom(...(told.length > 0 ? told : ['R-134a', '1', 'yes'])) },
    { weight: 1, arbitrary: fc.string({ maxLength: 12 }) },
  )
}
