import type { RefrigerantInfo } from '../../shared/refrigerant/info.ts'
import { blendLines } from './blend-lines.ts'
import type { LinesSource } from './provider.ts'
import { pureLines } from './pure-lines.ts'

/** The exact lines of a refrigerant: of its one substance, or of its blend. */
export function linesOf(info: RefrigerantInfo): LinesSource {
  const [first, ...others] = info.composition
  if (first !== undefined && others.length === 0) return pureLines(info.id, first.substance)
  return blendLines(info)
}
