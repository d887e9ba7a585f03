import type { Kind } from '../../quantity/index.ts'
import { AXIS_ROOM, levelAxis } from '../scene/axes.ts'
import {
  type Drawing,
  EDGE,
  type Frame,
  heading,
  type KeyEntry,
  keyOf,
  part,
} from '../scene/drawing.ts'
import { type Labels, labelsIn } from '../scene/labels.ts'
import { measureOf } from '../scene/measure.ts'
import { el, type Node } from '../scene/node.ts'
import { type Box, hatching } from '../scene/path.ts'
import { linear } from '../scene/scale.ts'
import { diamond, rectangle, whiskers } from '../scene/shapes.ts'
import { textAt, widthOfText, wrapped } from '../scene/text.ts'
import type { Paint } from '../scene/theme.ts'
import { type Line, uprightLines } from '../scene/upright-lines.ts'

/** How a piece of a bar is filled: what is there, what comes to it, what is only bounded. */
export type Fill = 'plain' | 'hatched' | 'hatched-cool' | 'open'

/** A stretch of a bar, SI. */
export interface Piece {
  readonly from: number
  readonly to: number
  readonly fill: Fill
}

/** A bar, or several in rows, on one scale. */
export interface Bars {
  readonly name: string
  readonly rows: readonly {
    /** What stands before the row, where there are several. */
    readonly label?: string | undefined
    readonly pieces: readonly Piece[]
    /** How far the end of the last piece is known. */
    readonly plusMinus?: number | undefined
    /** Where its end would be otherwise: a diamond. */
    readonly beside?: number | undefined
    /** Its figure; none where it is empty. */
    readonly text: string
  }[]
  /** Stretches that mean something, shaded behind the bar. */
  readonly zones: readonly { readonly from: number; readonly to: number }[]
  readonly lines: readonly Line[]
}

export interface BarPicture {
  readonly title: string
  readonly under?: string | undefined
  readonly says: string
  readonly kind: Kind
  /** Name of what the scales measure. */
  readonly measured: string
  readonly panels: readonly Bars[]
  readonly key: readonly {
    readonly fill: Fill | 'zone' | 'spread' | 'beside'
    readonly text: string
  }[]
}

const THICK = 26
const ROOM = 16

/** Bars of a mass or another amount, each group on a scale of its own from zero. */
export function drawBars(view: BarPicture, frame: Frame): Drawing {
  const { title, under, says } = view
  const head = heading(frame, title, under)
  const nodes: Node[] = [...head.nodes]
  let top = head.bottom
  for (const [index, panel] of view.panels.entries()) {
    const drawn = drawPanel(view, panel, frame, top, index + 1)
    nodes.push(...drawn.nodes)
    top = drawn.bottom
  }
  const key = keyOf(frame, view.key.map(keyEntry(frame.paint)), top)
  return { title, says, height: key.bottom, body: [...nodes, part('key', ...key.nodes)] }
}

function drawPanel(view: BarPicture, panel: Bars, frame: Frame, top: number, number: number) {
  const { paint, width, system } = frame
  const room = width - 2 * EDGE
  const name = wrapped(panel.name, 'label', room)
  const named = name.map((text, index) =>
    textAt(paint, { text, at: [EDGE, top + 18 + 17 * index], size: 'label', bold: true }),
  )
  const before = leftOf(panel, width)
  const lineRoom = panel.lines.length > 0 ? 17 * panel.lines.length + 4 : 0
  const box: Box = {
    left: EDGE + before,
    right: width - AXIS_ROOM.right,
    top: top + 18 + 17 * name.length - 10 + lineRoom,
    bottom: top + 18 + 17 * name.length - 10 + lineRoom + ROOM + panel.rows.length * (THICK + ROOM),
  }
  const most = highest(panel)
  const measure = measureOf(view.kind, system, most)
  const x = linear(0, measure.of(most * 1.06), box.left, box.right)
  const at = (si: number) => x(measure.of(si))
  const labels = labelsIn(paint, { left: EDGE, right: width - 4, top: box.top, bottom: box.bottom })
  for (const line of panel.lines) {
    labels.keep({ ...box, left: at(line.at) - 2, right: at(line.at) + 2 })
  }
  const body = [
    ...named,
    part(
      `zones-${number}`,
      ...panel.zones.map(({ from, to }) =>
        rectangle(paint, 'zone', { ...box, left: at(from), right: at(Math.min(to, most * 1.06)) }),
      ),
    ),
    ...levelAxis(paint, x, box, `${view.measured}, ${measure.unit}`),
    ...panel.rows.flatMap((row, index) => drawRow(paint, row, box, at, index, labels, number)),
    ...uprightLines(paint, panel.lines, box, at, width),
  ]
  return { nodes: [part(`panel-${number}`, ...body)], bottom: box.bottom + AXIS_ROOM.bottom }
}

/** Room for the labels of rows, where there are any. */
function leftOf({ rows }: Bars, width: number): number {
  const widest = Math.max(0, ...rows.map(({ label = '' }) => widthOfText(label, 'tick')))
  return widest === 0 ? 10 : Math.min(widest + 12, width * 0.4)
}

/** The longest bar with its ±, and every line that it is held against. */
const highest = ({ rows, lines, zones }: Bars): number =>
  Math.max(
    ...rows.flatMap(({ pieces, plusMinus = 0, beside = 0 }) => [
      ...pieces.map(({ to }) => to + plusMinus),
      beside,
    ]),
    ...lines.map(({ at }) => at),
    ...zones.map(({ from }) => from),
    1e-12,
  )

function drawRow(
  paint: Paint,
  { label, pieces, plusMinus, beside, text }: Bars['rows'][number],
  box: Box,
  at: (si: number) => number,
  index: number,
  labels: Labels,
  number: number,
): readonly Node[] {
  const top = box.top + ROOM + index * (THICK + ROOM)
  const lines = wrapped(label ?? '', 'tick', box.left - EDGE - 8)
  const end = at(Math.max(0, ...pieces.map(({ to }) => to)))
  const low = at(Math.max(0, (pieces.at(-1)?.to ?? 0) - (plusMinus ?? 0)))
  const high = at((pieces.at(-1)?.to ?? 0) + (plusMinus ?? 0))
  const middle = top + THICK / 2
  const put = (x: number, y: number, anchor: 'start' | 'end') =>
    ({ text, at: [x, y], anchor, size: 'label', bold: true, halo: true }) as const
  if (beside !== undefined) {
    labels.keep({
      left: at(beside) - 8,
      right: at(beside) + 8,
      top: middle - 8,
      bottom: middle + 8,
    })
  }
  const right = Math.max(end, high) + 8
  return [
    ...(label === undefined
      ? []
      : lines.map((line, order) =>
          textAt(paint, {
            text: line,
            at: [box.left - 6, middle + 4 + 13 * (order - (lines.length - 1) / 2)],
            anchor: 'end',
          }),
        )),
    part(
      `bar-${number}-${index + 1}`,
      ...pieces.flatMap(({ from, to, fill }) =>
        filled(paint, fill, { left: at(from), right: at(to), top, bottom: top + THICK }),
      ),
    ),
    ...(plusMinus === undefined || plusMinus === 0
      ? []
      : [part(`spread-${number}-${index + 1}`, ...whiskers(paint, low, high, middle))]),
    ...(beside === undefined
      ? []
      : [part(`beside-${number}-${index + 1}`, diamond(paint, [at(beside), middle]))]),
    ...(text === ''
      ? []
      : labels.mustPlace([
          put(right, middle + 4.5, 'start'),
          ...(beside === undefined ? [] : [put(at(beside) + 12, middle + 4.5, 'start')]),
          put(Math.min(end, low) - 8, middle + 4.5, 'end'),
          put(box.right - 4, top - 3, 'end'),
        ])),
  ]
}

function filled(paint: Paint, fill: Fill, box: Box): readonly Node[] {
  if (fill === 'plain') return [rectangle(paint, 'bar', box)]
  const outline = rectangle(paint, 'bar-more', box)
  if (fill === 'open') return [outline]
  const d = hatching(box, fill === 'hatched-cool')
  const look = fill === 'hatched' ? 'hatch' : 'hatch-cool'
  return d === '' ? [outline] : [outline, el('path', { d, ...paint(look) })]
}

const keyEntry =
  (paint: Paint) =>
  ({ fill, text }: BarPicture['key'][number]): KeyEntry => ({
    text,
    sample: (x, y) => {
      const box = { left: x - 12, right: x + 12, top: y - 6, bottom: y + 6 }
      if (fill === 'zone') return [rectangle(paint, 'zone', box)]
      if (fill === 'beside') return [diamond(paint, [x, y])]
      if (fill !== 'spread') return filled(paint, fill, box)
      return whiskers(paint, x - 12, x + 12, y)
    },
  })
