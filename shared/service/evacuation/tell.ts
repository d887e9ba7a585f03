import type { Told } from '../../answer/told.ts'
import { sentences } from './sentences.ts'
import { ofRise } from './told/of-rise.ts'
import { ofVacuum } from './told/of-vacuum.ts'
import type { Found } from './told/says.ts'

/** The answer in a mechanic's words: the target, or how the vacuum stands to it, or what the rise says. */
export function tell(found: Found): Told {
  const says = found.rise ? ofRise(found, found.rise) : ofVacuum(found)
  return {
    level: says.level ?? 'check',
    headline: sentences.headlines[says.headline],
    figures: says.figures.flatMap((figure) => figure ?? []).slice(0, 6),
    next: says.next.flatMap((id) => (id === false ? [] : sentences.next[id])).slice(0, 3),
  }
}
