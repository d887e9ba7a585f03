import type { KeyEntry } from './drawing.ts'
import { el, type Node, rounded } from './node.ts'
import { type Box, type Pixel, pathInside } from './path.ts'
import { SIZES, textAt } from './text.ts'
import type { LookName, Paint } from './theme.ts'

/** What of a line lies inside a box. */
export function curve(
  paint: Paint,
  look: LookName,
  points: readonly Pixel[],
  box: Box,
): readonly Node[] {
  const d = pathInside(points, box)
  return d === undefined ? [] : [el('path', { d, ...paint(look) })]
}

/** Less than this in either direction would not be seen, px. */
const THINNEST = 0.6

/** An area, never so thin that nothing of it is seen. */
export const rectangle = (paint: Paint, look: LookName, { left, right, top, bottom }: Box): Node =>
  el('rect', {
    x: left,
    y: top,
    width: Math.max(right - left, THINNEST),
    height: Math.max(bottom - top, THINNEST),
    ...paint(look),
  })

export const RADIUS = 9

/** A number in a circle, or in a square where two sets must be told apart. */
export function numbered(
  paint: Paint,
  number: string,
  [x, y]: Pixel,
  { mark, text, square = false }: { mark: LookName; text: LookName; square?: boolean },
): readonly Node[] {
  return [
    square
      ? el('rect', { x: x - 8, y: y - 8, width: 16, height: 16, ...paint(mark) })
      : el('circle', { cx: x, cy: y, r: RADIUS, ...paint(mark) }),
    ...(number === ''
      ? []
      : [
          textAt(paint, {
            text: number,
            at: [x, y + SIZES.tick * 0.35],
            anchor: 'middle',
            look: text,
            bold: true,
          }),
        ]),
  ]
}

/** A reading: a small ring, with its ± where that is wider than the ring. */
export function ring(paint: Paint, look: LookName, [x, y]: Pixel): Node {
  return el('circle', { cx: x, cy: y, r: 4.5, ...paint(look) })
}

/** What something is held against. */
export const diamond = (paint: Paint, [x, y]: Pixel): Node =>
  el('path', { d: `M${rounded(x)},${rounded(y - 7)}l7,7l-7,7l-7,-7Z`, ...paint('other-mark') })

/** A length between two ends with a stroke across at each, as dimensions are drawn. */
export function dimension(paint: Paint, look: LookName, from: Pixel, to: Pixel): readonly Node[] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const size = Math.hypot(dx, dy)
  const [ax, ay] = size === 0 ? [0, 0] : [(-dy / size) * 6, (dx / size) * 6]
  const line = (a: Pixel, b: Pixel) =>
    el('line', { x1: a[0], y1: a[1], x2: b[0], y2: b[1], ...paint(look) })
  const across = ([x, y]: Pixel) => line([x - ax, y - ay], [x + ax, y + ay])
  return [line(from, to), ...(size === 0 ? [] : [across(from), across(to)])]
}

/** A straight line. */
export const straight = (paint: Paint, look: LookName, from: Pixel, to: Pixel): Node =>
  el('line', { x1: from[0], y1: from[1], x2: to[0], y2: to[1], ...paint(look) })

/** How far something is known, along a level line: its ends have a stroke across. */
export const whiskers = (paint: Paint, low: number, high: number, y: number): readonly Node[] => [
  straight(paint, 'spread', [low, y], [high, y]),
  ...[low, high].map((x) => straight(paint, 'spread', [x, y - 5], [x, y + 5])),
]

/** An entry of the key for a line. */
export const lineKey = (paint: Paint, look: LookName, text: string): KeyEntry => ({
  text,
  sample: (x, y) => [straight(paint, look, [x - 13, y], [x + 13, y])],
})
