/** A place in a file where a fault can be put in, and the texts that would do it. */
export interface Spot {
  /** Offsets into the file, in UTF-16 code units. */
  readonly start: number
  readonly end: number
  /** What kind of fault: `comparison`, `name`, `number`, … */
  readonly operator: string
  /** Each replaces `start`…`end`; one of them is drawn. */
  readonly variants: readonly string[]
}

/** One fault: a spot of one file with the variant that was drawn. */
export interface Mutant {
  readonly room: string
  /** Relative to the root, with forward slashes. */
  readonly file: string
  /** 1-based. */
  readonly line: number
  readonly operator: string
  readonly start: number
  readonly end: number
  readonly was: string
  readonly becomes: string
}

/** What became of a mutant. `late` is a test that did not come back: it counts as killed. */
export interface Verdict {
  readonly mutant: Mutant
  readonly fate: 'killed' | 'late' | 'survived'
  readonly seconds: number
  /** The test that saw it, where one did. */
  readonly by?: string
  /** How many test files were there to look. */
  readonly looked: number
}
