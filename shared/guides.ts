import pages from '../data/guide/pages.json' with { type: 'json' }

/** A page of prose about using the program. */
export interface Guide {
  /** Its file in `data/guide`, without the ending, and its place in an address. */
  readonly name: string
  readonly title: string
  readonly html: string
}

/** Every `data/guide/*.md`, rendered by `npm run guides`. */
export const GUIDES: readonly Guide[] = pages
