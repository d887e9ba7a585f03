import type { Node } from './node.ts'
import type { Box } from './path.ts'
import { boxOfText, textAt, type Written } from './text.ts'
import type { Paint } from './theme.ts'

/** Puts labels where they cover neither each other nor what must be seen. */
export interface Labels {
  /** Keeps a place free. */
  keep(box: Box): void
  /** The first of the places that is free, drawn; nothing where none is. */
  place(candidates: readonly Written[]): readonly Node[]
  /** As `place`, but the place that covers least where none is free. */
  mustPlace(candidates: readonly Written[]): readonly Node[]
}

/** Room between labels, px. */
const GAP = 2

export function labelsIn(paint: Paint, bounds: Box): Labels {
  const taken: Box[] = []
  const covered = (box: Box) =>
    taken.reduce((sum, other) => sum + common(box, other), 0) + outside(box, bounds)
  const draw = (written: Written) => {
    taken.push(boxOfText(written))
    return [textAt(paint, written)]
  }
  return {
    keep: (box) => {
      taken.push(box)
    },
    place: (candidates) => {
      const free = candidates.find((written) => covered(boxOfText(written)) === 0)
      return free ? draw(free) : []
    },
    mustPlace: (candidates) => {
      const [first, ...others] = candidates
      if (!first) return []
      let best = { written: first, cover: covered(boxOfText(first)) }
      for (const written of others) {
        if (best.cover === 0) break
        const cover = covered(boxOfText(written))
        if (cover < best.cover) best = { written, cover }
      }
      return draw(best.written)
    },
  }
}

/** Area that two boxes share, with the gap between labels. */
function common(a: Box, b: Box): number {
  const width = Math.min(a.right, b.right) - Math.max(a.left, b.left) + GAP
  const height = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) + GAP
  return width > 0 && height > 0 ? width * height : 0
}

/** What of a box lies outside; counts more than covering, for it would be cut off. */
function outside(box: Box, bounds: Box): number {
  const over =
    Math.max(0, bounds.left - box.left) +
    Math.max(0, box.right - bounds.right) +
    Math.max(0, bounds.top - box.top) +
    Math.max(0, box.bottom - bounds.bottom)
  return over * 1e3
}
