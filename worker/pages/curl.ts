import type { Json } from '../openapi/schemas.ts'
import { HERE } from './host.ts'

/** The request of an example for a terminal. */
export const curl = (method: string, address: string, example: Json): string =>
  `curl -X ${method} ${HERE}${address} \\
  -H 'Content-Type: application/json' \\
  -d '${JSON.stringify(example, null, 2).replaceAll("'", `'\\''`)}'`

/** A batch of lines for a terminal. */
export const curlLines = (address: string, lines: readonly string[]): string =>
  `printf '%s\\n' ${lines.map((line) => `'${line}'`).join(' \\\n  ')} |
  curl ${HERE}${address} -H 'Content-Type: application/x-ndjson' --data-binary @-`
