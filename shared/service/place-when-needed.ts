import { type Place, type PlaceGiven, resolvePlace } from '../instrument/index.ts'
import type { Notes } from '../notes.ts'

/** The place of a step whose answer may not depend on it. */
export interface PlaceWhenNeeded {
  /** Resolves it, and notes at the first call what was assumed. @throws {CalcError} as {@link resolvePlace}. */
  readonly place: () => Place
  /** The place, where a part has asked for it. */
  readonly asked: () => Place | undefined
}

/**
 * Resolves a place when a part first asks for it. One that was given is resolved at once, so that a
 * wrong one never passes.
 *
 * @throws {CalcError} as {@link resolvePlace}.
 */
export function placeWhenNeeded(given: PlaceGiven, notes: Notes): PlaceWhenNeeded {
  let resolved: Place | undefined
  const place = () => {
    if (resolved) return resolved
    resolved = resolvePlace(given)
    notes.assumptions.push(...resolved.assumptions)
    notes.warnings.push(...resolved.warnings)
    notes.sources.push(...resolved.sources)
    return resolved
  }
  if (given.altitude || given.barometer) place()
  return { place, asked: () => resolved }
}
