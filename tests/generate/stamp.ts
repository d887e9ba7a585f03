import { createHash } from 'node:crypto'
import type { LinesSource } from './provider.ts'

/** Raised whenever a change to the fitting programs changes what they write. */
const GENERATOR_VERSION = 1

/** A short hash of everything a refrigerant's curves are made from. */
export function stampOf(source: LinesSource): string {
  return createHash('sha256')
    .update(JSON.stringify([GENERATOR_VERSION, ...source.inputs]))
    .digest('hex')
    .slice(0, 16)
}
