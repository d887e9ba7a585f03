/**
 * Origins of web pages that may call the API, from a text with commas between them; `*` for all.
 *
 * A browser sends an origin as scheme, host and port, and compares letter for letter: one that is
 * written otherwise would never match, and nobody would be told.
 *
 * @throws {Error} that names the origin and how it is written.
 */
export function originsOf(setting: string | undefined): readonly string[] {
  const origins = (setting ?? '').split(',').flatMap((text) => text.trim() || [])
  for (const origin of origins) {
    const written = origin === '*' ? origin : asSent(origin)
    if (written === undefined) {
      throw new Error(`"${origin}" is no origin of a web page: write it like https://shop.example.`)
    }
    if (written !== origin) {
      throw new Error(`"${origin}" would never match: browsers send that origin as ${written}.`)
    }
  }
  return origins
}

/** An origin as browsers send it, or nothing where the text is the address of no web page. */
function asSent(text: string): string | undefined {
  if (!URL.canParse(text)) return undefined
  const { protocol, origin } = new URL(text)
  return protocol === 'https:' || protocol === 'http:' ? origin : undefined
}
