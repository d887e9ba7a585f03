import { CalcError } from '../../shared/errors.ts'

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

/** Longest text that is read as one JSON value, characters: it is held in memory whole. */
export const LONGEST_TEXT = 16 * 1024 * 1024

/** Everything that is still to come. @throws {CalcError} `bad-input` where that is too long for one value. */
export async function joined(chunks: AsyncIterable<string>): Promise<string> {
  const parts: string[] = []
  let length = 0
  for await (const chunk of chunks) {
    length += chunk.length
    if (length > LONGEST_TEXT) {
      throw new CalcError('bad-input', `One JSON value takes at most ${LONGEST_TEXT} characters.`, {
        hint: 'Write many inputs as a JSON object a line: that may go on for ever.',
      })
    }
    parts.push(chunk)
  }
  return parts.join('')
}

/** Chunks that can be looked at before they are read. */
export class Peeker {
  readonly #iterator: AsyncIterator<string>
  #coming: Promise<IteratorResult<string>> | undefined
  #ended = false
  /** What came so far. */
  head = ''

  constructor(chunks: AsyncIterable<string>) {
    this.#iterator = chunks[Symbol.asyncIterator]()
  }

  /**
   * Reads until the head is as wished, the input ends, or nothing comes for a while.
   *
   * @returns Whether it is as wished.
   */
  async until(wished: (head: string) => boolean, patienceMs?: number): Promise<boolean> {
    while (!wished(this.head)) {
      if (this.#ended) return false
      this.#coming ??= this.#iterator.next()
      const next = await within(this.#coming, patienceMs)
      if (next === undefined) return false
      this.#coming = undefined
      if (next.done) this.#ended = true
      else this.head += next.value
    }
    return true
  }

  get ended(): boolean {
    return this.#ended
  }

  /** All of it from the start, once. */
  async *all(): AsyncIterable<string> {
    yield this.head
    while (!this.#ended) {
      const next = await (this.#coming ?? this.#iterator.next())
      this.#coming = undefined
      if (next.done) return
      yield next.value
    }
  }
}

async function within<T>(coming: Promise<T>, patienceMs?: number): Promise<T | undefined> {
  if (patienceMs === undefined) return coming
  let timer: ReturnType<typeof setTimeout> | undefined
  const over = new Promise<undefined>((resolve) => {
    timer = setTimeout(() => resolve(undefined), patienceMs)
  })
  try {
    return await Promise.race([coming, over])
  } finally {
    clearTimeout(timer)
  }
}
