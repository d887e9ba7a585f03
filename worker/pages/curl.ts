import type { Json } from '../openapi/schemas.ts'

/** Where the service is, as long as nobody has asked for the page: pages are made once, for every host. */
const HERE = 'http://service.invalid'

/** The request of an example for a terminal. */
export const curl = (method: string, address: string, example: Json): string =>
  `curl -X ${method} ${HERE}${address} \\
  -H 'Content-Type: application/json' \\
  -d '${JSON.stringify(example, null, 2).replaceAll("'", `'\\''`)}'`

/** A batch of lines for a terminal. */
export const curlLines = (address: string, lines: readonly string[]): string =>
  `printf '%s\\n' ${lines.map((line) => `'${line}'`).join(' \\\n  ')} |
  curl ${HERE}${address} -H 'Content-Type: application/x-ndjson' --data-binary @-`

/** Of a host and a port no more than these letters: it is put into a page as it is. */
const ORIGIN = /^https?:\/\/[\w.:[\]-]+$/u

/**
 * A page whose requests name the host that it was asked from.
 *
 * @param forwarded - Scheme by which a proxy in front was asked.
 */
export function withHost(page: string, address: string, forwarded: string | undefined): string {
  const { protocol, host } = new URL(address)
  const scheme = forwarded === 'https' || forwarded === 'http' ? `${forwarded}:` : protocol
  const origin = `${scheme}//${host}`
  return ORIGIN.test(origin) ? page.replaceAll(HERE, origin) : page
}
