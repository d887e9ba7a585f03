import { FLOODED_BELOW_K, FLOODED_SOURCES } from './bands.ts'
import type { Difference } from './shown.ts'
import { readingSource } from './sources.ts'
import { compared, type Verdict } from './verdict.ts'

/**
 * An orifice tube with enough charge floods the evaporator outlet: no superheat there.
 *
 * No width is published for "none". What no metering device may go below stands for it, so that a
 * better instrument never turns a flooded outlet into a dry one.
 */
export const orificeTubeVerdict = (measured: Difference, refrigerant: string): Verdict =>
  compared({
    about: 'charge',
    figure: 'superheat',
    method: 'flooded-evaporator-outlet',
    measured,
    refrigerant,
    highK: FLOODED_BELOW_K,
    meanings: 'superheat-tube',
    sources: [
      readingSource('sae-j3023'),
      readingSource('tm-5-3805-291'),
      readingSource('tm-5-3805-290'),
      ...FLOODED_SOURCES,
    ],
  })
