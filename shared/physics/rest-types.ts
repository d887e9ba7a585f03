import type { Uncertain } from '../quantity/index.ts'
import type { Contents } from '../refrigerant/index.ts'

/** Mass of the contents (kg) and the inner volume that holds them (m³). */
export interface ContentsGiven {
  readonly mass: Uncertain
  readonly volume: Uncertain
}

/** What may widen the band. */
export type Settles = 'pressure' | 'temperature' | 'contents' | 'property'

/** How a pressure at rest stands to saturation. Pressures in Pa absolute. */
export interface AtRest {
  /**
   * `between`: surely between the two lines of a blend. `at`: no different from saturation (of a
   * pure refrigerant, an azeotrope or near-azeotrope) or from the flash of the contents.
   * `liquid-full`: the contents fill the volume with liquid, and the pressure tells nothing.
   * `cannot-tell`: the band reaches over an edge.
   */
  readonly state: 'below' | 'between' | 'at' | 'above' | 'liquid-full' | 'cannot-tell'
  /** Lines at the temperature, with its ± and the property's; none above the critical point. */
  readonly bubble?: Uncertain | undefined
  readonly dew?: Uncertain | undefined
  /** Pressure of the given contents at equilibrium. */
  readonly expected?: Uncertain | undefined
  /** What the given contents are. */
  readonly holds?: Contents['holds'] | undefined
  /** Shares by mass and by volume, with contents given. */
  readonly quality?: number | undefined
  readonly liquidShare?: number | undefined
  /**
   * Measured less expected; without contents, less the nearer line. Undefined when full of liquid.
   */
  readonly off?: Uncertain | undefined
  /** What `off` is measured from. */
  readonly from: 'bubble' | 'dew' | 'contents'
  /** Half-widths that make up the band of `off`, Pa. */
  readonly parts: Readonly<Record<Settles, number>>
  /** The largest of them: a better figure for it narrows the band most. */
  readonly most: Settles
}
