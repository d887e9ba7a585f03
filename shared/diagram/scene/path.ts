import { rounded } from './node.ts'

export type Pixel = readonly [x: number, y: number]

/** A rectangle in pixels. */
export interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** Path data of a line through points; nothing where there are less than two. */
export function pathOf(points: readonly Pixel[]): string | undefined {
  if (points.length < 2) return undefined
  return `M${points.map((point) => point.map(rounded).join()).join('L')}`
}

/** Path data of what of a line lies inside a box: in pieces where it leaves and comes back. */
export function pathInside(points: readonly Pixel[], box: Box): string | undefined {
  const pieces: Pixel[][] = []
  for (let index = 1; index < points.length; index += 1) {
    const cut = insideOf(points[index - 1] as Pixel, points[index] as Pixel, box)
    if (!cut) continue
    const last = pieces.at(-1)
    const end = last?.at(-1)
    if (last && end && end[0] === cut[0][0] && end[1] === cut[0][1]) last.push(cut[1])
    else pieces.push([...cut])
  }
  const drawn = pieces.flatMap((piece) => pathOf(piece) ?? [])
  return drawn.length === 0 ? undefined : drawn.join('')
}

/** The part of a straight piece inside a box: Liang and Barsky, ACM Trans. Graph. 3, 1 (1984). */
function insideOf(a: Pixel, b: Pixel, box: Box): readonly [Pixel, Pixel] | undefined {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  let [from, to] = [0, 1]
  const sides = [
    [-dx, a[0] - box.left],
    [dx, box.right - a[0]],
    [-dy, a[1] - box.top],
    [dy, box.bottom - a[1]],
  ] as const
  for (const [towards, room] of sides) {
    if (towards === 0) {
      if (room < 0) return undefined
      continue
    }
    const share = room / towards
    if (towards < 0) from = Math.max(from, share)
    else to = Math.min(to, share)
  }
  if (from > to) return undefined
  const at = (share: number): Pixel =>
    share === 0 ? a : share === 1 ? b : [a[0] + share * dx, a[1] + share * dy]
  return [at(from), at(to)]
}

/** Slanted lines that fill a rectangle, rising or falling to the right: tells an area apart without colour, and without an id. */
export function hatching(box: Box, falling = false, gap = 6): string {
  const height = box.bottom - box.top
  const lines: string[] = []
  for (let x = box.left - height; x < box.right; x += gap) {
    const [from, to] = falling ? [box.top, box.bottom] : [box.bottom, box.top]
    const cut = insideOf([x, from], [x + height, to], box)
    const path = cut && pathOf(cut)
    if (path) lines.push(path)
  }
  return lines.join('')
}
