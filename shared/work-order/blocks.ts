/** What every door prints, as blocks: each prints the same in its own form. */
export type Block =
  | { readonly kind: 'title'; readonly text: string }
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'note'; readonly text: string }
  | { readonly kind: 'pairs'; readonly rows: readonly (readonly [label: string, value: string])[] }
  | { readonly kind: 'list'; readonly name?: string; readonly items: readonly Item[] }

export interface Item {
  readonly text: string
  /** For a box to tick: whether it is ticked; undefined where there is none. */
  readonly ticked?: boolean | undefined
  /** Number of the source that stands behind it. */
  readonly source?: number | undefined
  /** Its own number, where it is a source. */
  readonly number?: number
}

export const list = (items: readonly Item[]): Block => ({ kind: 'list', items })

export const texts = (entries: readonly string[]): Block => list(entries.map((text) => ({ text })))

export const heading = (text: string): Block => ({ kind: 'heading', text })

/** A heading with its list; nothing where the list is empty. */
export const under = (name: string, entries: readonly string[]): readonly Block[] =>
  entries.length === 0 ? [] : [heading(name), texts(entries)]
