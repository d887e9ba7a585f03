import { fstatSync, writeSync } from 'node:fs'

/**
 * Standard output and error.
 *
 * What goes into a pipe or a file is written straight there: the streams of Node, behind which lie those
 * of its sockets, take as long to load as the calculation takes. A terminal gets them, for its width and
 * colours, and so does a pipe that cannot take more at once.
 */

interface Standard {
  /** A promise where the reader is behind. */
  write(text: string): Promise<unknown> | undefined
  readonly isTTY: boolean
  readonly columns: number | undefined
}

/** @param failed - Told when nothing can be written any more. */
function standard(
  fd: number,
  stream: () => NodeJS.WriteStream,
  failed: (error: unknown) => void,
): Standard {
  let isStraight = takesStraight(fd)
  let loaded: NodeJS.WriteStream | undefined
  const slow = () => {
    loaded ??= stream().on('error', failed)
    return loaded
  }
  return {
    write(text) {
      const left = isStraight ? writeStraight(fd, text, failed) : text
      if (left.length === 0) return undefined
      isStraight = false
      if (slow().write(left)) return undefined
      return new Promise((resolve) => slow().once('drain', resolve))
    },
    get isTTY() {
      return !isStraight && slow().isTTY === true
    },
    get columns() {
      return isStraight ? undefined : slow().columns
    },
  }
}

function takesStraight(fd: number): boolean {
  try {
    const status = fstatSync(fd)
    return status.isFIFO() || status.isSocket() || status.isFile()
  } catch {
    return false
  }
}

/** Writes until the other side takes no more at once; returns what is left. */
function writeStraight(fd: number, text: string, failed: (error: unknown) => void): Uint8Array {
  let left: Uint8Array = Buffer.from(text)
  try {
    while (left.length > 0) left = left.subarray(writeSync(fd, left))
  } catch (error) {
    if (codeOf(error) === 'EAGAIN') return left
    failed(error)
    return new Uint8Array()
  }
  return left
}

const codeOf = (error: unknown) =>
  error instanceof Error && 'code' in error ? String(error.code) : undefined

/** Nobody can be told. */
const ignore = () => {}

export const standardError = (process: NodeJS.Process): Standard =>
  standard(2, () => process.stderr, ignore)

/** A reader that stops early (`| head`) is no failure; a disk that is full is one, and no fault of ours. */
export const standardOutput = (process: NodeJS.Process, error: Standard): Standard =>
  standard(
    1,
    () => process.stdout,
    (reason) => {
      if (codeOf(reason) === 'EPIPE') process.exit(0)
      const why = codeOf(reason) ?? (reason instanceof Error ? reason.message : String(reason))
      error.write(`error: The answer cannot be written (${why}).\n`)
      process.exit(1)
    },
  )
