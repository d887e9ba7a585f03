import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js'
import type { Asked, Document } from './requests.ts'

export interface Heard {
  readonly status: number
  readonly type: string
  readonly text: string
}

/** What no answer may have in it: the inside of the program, or the want of a number. */
const INSIDE = /\n\s+at \S|node_modules|\.ts:\d|\bNaN\b|\bInfinity\b|\[object |\bundefined\b/u

/** Tells what is wrong with an answer by what the document promises of it. */
export function judge(document: Document): (asked: Asked, heard: Heard) => string | undefined {
  const ajv = new Ajv2020({ strict: false, validateFormats: false })
  ajv.addSchema(document, 'document')
  const known = new Map<string, ValidateFunction | undefined>()
  const validator = (names: readonly string[]) => {
    const key = names.join('\n')
    if (!known.has(key)) {
      const at = names.reduce<unknown>(
        (part, name) => (part as Record<string, unknown>)?.[name],
        document,
      )
      const pointer = names.map((name) => `/${name.replaceAll('~', '~0').replaceAll('/', '~1')}`)
      known.set(
        key,
        at === undefined
          ? undefined
          : ajv.compile({ $ref: `document#${encodeURI(pointer.join(''))}` }),
      )
    }
    return known.get(key)
  }
  return ({ method, path, body = '', address }, { status, type, text }) => {
    if (status >= 500) return `status ${status}`
    const inside = INSIDE.exec(text)?.[0]
    // What somebody sent may be quoted back.
    if (inside !== undefined && !(body + decodeURIComponent(address)).includes(inside.trim())) {
      return `has "${inside.trim()}" in it`
    }
    const media = type.split(';', 1)[0] ?? ''
    const responses = ['paths', path, method, 'responses'] as const
    if (status !== 200) {
      if (media !== 'application/problem+json') return `status ${status} as ${media}`
      if (validator([...responses, String(status)]) === undefined)
        return `status ${status} is not described`
      return fault(validator(['components', 'schemas', 'Problem']), text)
    }
    const schema = [...responses, '200', 'content', media, 'schema']
    if (validator(schema) === undefined) return `an answer as ${media} is not described`
    if (media === 'application/json') return fault(validator(schema), text)
    if (!media.endsWith('ndjson')) return undefined
    const entry = validator([...responses, '200', 'content', 'application/json', 'schema', 'items'])
    return text
      .trimEnd()
      .split('\n')
      .map((line) => fault(entry, line))
      .find((found) => found !== undefined)
  }
}

function fault(validate: ValidateFunction | undefined, text: string): string | undefined {
  let value: unknown
  try {
    value = JSON.parse(text)
  } catch {
    return 'is no JSON'
  }
  if (!validate || validate(value)) return undefined
  const [error] = validate.errors ?? []
  return `does not fit: ${error?.instancePath} ${error?.message} ${JSON.stringify(error?.params)}`
}
