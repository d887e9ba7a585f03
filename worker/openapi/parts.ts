import { problemRef } from './responses.ts'
import type { Json, JsonObject } from './schemas.ts'

/** Pieces that descriptions of addresses are made of. */

export const json = (schema: JsonObject): JsonObject => ({
  content: { 'application/json': { schema } },
})

export const text = (description: string): JsonObject => ({ type: 'string', description })
export const list = (items: JsonObject, description?: string): JsonObject => ({
  type: 'array',
  items,
  ...(description === undefined ? {} : { description }),
})

/** An object of these fields and no others; all are there save the optional ones. */
export const object = (properties: JsonObject, optional: readonly string[] = []): JsonObject => ({
  type: 'object',
  properties,
  required: Object.keys(properties).filter((name) => !optional.includes(name)),
  additionalProperties: false,
})

/** What every answer to GET may be beside itself: known already, or refused. */
const OTHERWISE: JsonObject = {
  '304': {
    description: 'The answer that is kept is still good: its ETag was sent as If-None-Match.',
  },
  '429': problemRef(429),
  '500': problemRef(500),
}

/** A path with a GET. */
export function getOf({
  answer,
  refusals = [],
  ...about
}: {
  readonly answer: JsonObject
  readonly refusals?: readonly number[]
  readonly [name: string]: Json | readonly number[] | undefined
}): JsonObject {
  const responses = {
    '200': answer,
    ...Object.fromEntries(refusals.map((status) => [String(status), problemRef(status)])),
    ...OTHERWISE,
  }
  return { get: { ...(about as JsonObject), responses } }
}
