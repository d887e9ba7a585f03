/** Text from bytes, whatever way they were cut; a leading byte-order mark is dropped. */
export async function* decoded(chunks: AsyncIterable<Uint8Array | string>): AsyncIterable<string> {
  const decoder = new TextDecoder('utf-8')
  for await (const chunk of chunks) {
    const text = typeof chunk === 'string' ? chunk : decoder.decode(chunk, { stream: true })
    if (text !== '') yield text
  }
  const rest = decoder.decode()
  if (rest !== '') yield rest
}

/** Lines as they come in, so that a row is answered before the next one is there. */
export async function* lines(chunks: AsyncIterable<string>): AsyncIterable<string> {
  let rest = ''
  for await (const chunk of chunks) {
    const parts = (rest + chunk).split(/\r?\n/u)
    rest = parts.pop() ?? ''
    yield* parts
  }
  if (rest !== '') yield rest
}

/** Everything that is still to come. */
export async function joined(chunks: AsyncIterable<string>): Promise<string> {
  const parts: string[] = []
  for await (const chunk of chunks) parts.push(chunk)
  return parts.join('')
}

/** The first text that is not blank, and all of it again from the start. */
export async function peeked(
  chunks: AsyncIterable<string>,
): Promise<{ readonly first: string; readonly all: AsyncIterable<string> }> {
  const iterator = chunks[Symbol.asyncIterator]()
  let head = ''
  for (;;) {
    const next = await iterator.next()
    if (next.done) break
    head += next.value
    if (head.trim() !== '') break
  }
  async function* all() {
    yield head
    for (;;) {
      const next = await iterator.next()
      if (next.done) return
      yield next.value
    }
  }
  return { first: head.trimStart(), all: all() }
}
