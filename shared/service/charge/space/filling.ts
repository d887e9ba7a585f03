import { combine, type Tied, tied } from '../../../quantity/index.ts'
import type { Phase } from '../../../refrigerant/index.ts'
import type { PHASES } from '../input/items.ts'
import type { Setting } from './setting.ts'

/** What fills a space, with its density. */
export interface Filling {
  readonly phase: (typeof PHASES)[number]
  /** kg/m³ */
  readonly density: Tied
  /** In words: "saturated liquid at its temperature". */
  readonly how: string
}

/** The density with the property's own uncertainty in it. */
export function withProperty(
  { densities }: Setting,
  density: Tied,
  phase: Phase,
  saturatedAtK: number | undefined,
): Tied {
  const share = densities.share(phase, saturatedAtK)
  const property = tied(densities.property[phase], `${phase} density data`)
  return combine([density, property], (value = 0, off = 0) => value * (1 + share * off))
}
