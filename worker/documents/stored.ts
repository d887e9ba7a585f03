import type { Operation } from '../../shared/operation.ts'
import type { Settings } from '../settings.ts'
import { addressOf } from './addresses.ts'
import type { Documents } from './documents.ts'

/** The documents as files of the edge, written by `tests/generate/edge.ts`. */
export const documents = (_: readonly Operation[]): Documents => ({
  openapi: (settings) => needed('openapi', settings),
  reference: (settings) => needed('reference', settings),
  problem: (code, settings) => found(`problem-${code}`, settings),
  guide: (name, settings) => found(`guide-${name}`, settings),
  front: (settings) => needed('front', settings),
})

async function needed(name: string, settings: Settings): Promise<string> {
  const text = await found(name, settings)
  if (text === undefined)
    throw new Error(`${addressOf(name)} is not among the files: npm run build:edge`)
  return text
}

/** A name is a word or a few; what else is asked for has no file. */
async function found(name: string, { ASSETS }: Settings): Promise<string | undefined> {
  if (!/^[a-z0-9-]+$/u.test(name)) return undefined
  const response = await ASSETS?.fetch(new Request(`http://files.invalid${addressOf(name)}`))
  return response?.ok ? response.text() : undefined
}
