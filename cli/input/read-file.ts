import { CalcError } from '../../shared/errors.ts'
import type { Streams } from '../streams.ts'

/** A small file whole. @throws {CalcError} `bad-input` where it is not there or cannot be read. */
export async function readTextFile(name: string, streams: Streams): Promise<string> {
  try {
    return await streams.readFile(name)
  } catch (error) {
    throw unreadable(`The file ${name}`, error)
  }
}

/** Why something cannot be read; what is the project's own error already stays as it is. */
export function unreadable(what: string, error: unknown): CalcError {
  if (error instanceof CalcError) return error
  const code = error instanceof Error && 'code' in error ? String(error.code) : ''
  if (code === 'EISDIR') {
    return new CalcError('bad-input', `${what} cannot be read: it is a directory.`, {
      hint: 'Name a file in it.',
    })
  }
  const reason = code === '' ? '' : ` (${code})`
  return new CalcError('bad-input', `${what} cannot be read${reason}.`, {
    hint: 'Check the path; "-" reads standard input.',
  })
}
