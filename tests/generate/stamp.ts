import { createHash } from 'node:crypto'
import type { LargestErrors } from '../../shared/substance/curve.ts'
import type { LinesSource } from './provider.ts'

/** What data/saturation-fits.json holds: for each refrigerant, of what its curves were made and how well. */
export type Fits = Record<
  string,
  {
    /** Hash of everything the fit was made from. */
    readonly madeFrom: string
    readonly largestErrors: LargestErrors
  }
>

/** Raised whenever a change to the fitting programs changes what they write. */
const GENERATOR_VERSION = 2

/** A short hash of everything a refrigerant's curves are made from. */
export function stampOf(source: LinesSource): string {
  return createHash('sha256')
    .update(JSON.stringify([GENERATOR_VERSION, ...source.inputs]))
    .digest('hex')
    .slice(0, 16)
}
