import type { PlanePoint } from '../../refrigerant/isolines.ts'

/** What a line or a point rests on. */
export type Basis = 'read' | 'assumed'

/** A numbered state. */
export interface Mark extends PlanePoint {
  readonly number: string
  /** What it is, and its figures. */
  readonly text: string
  readonly basis: Basis
}

/** A change from one state to the next. */
export interface Leg {
  readonly points: readonly PlanePoint[]
  readonly basis: Basis
}

/** A cycle, or as much of one as is known. */
export interface Cycle {
  /** What its whole lines are, and what its broken ones. */
  readonly texts: Readonly<Record<Basis, string>>
  readonly legs: readonly Leg[]
  readonly marks: readonly Mark[]
}
