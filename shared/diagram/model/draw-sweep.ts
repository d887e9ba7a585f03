import type { Quantity } from '../../quantity/index.ts'
import { AXIS_ROOM, axes, type Plot } from '../scene/axes.ts'
import {
  type Drawing,
  EDGE,
  type Frame,
  heading,
  type KeyEntry,
  keyOf,
  part,
} from '../scene/drawing.ts'
import { type Measure, measureOf } from '../scene/measure.ts'
import { el, type Node } from '../scene/node.ts'
import type { Box, Pixel } from '../scene/path.ts'
import { linear } from '../scene/scale.ts'
import { curve, lineKey, rectangle, ring, straight } from '../scene/shapes.ts'
import { textAt } from '../scene/text.ts'
import type { Paint } from '../scene/theme.ts'

/** A row of a sweep: the size of a fault, how the machine ends up, and its figures by name. */
export interface SweepRow {
  readonly size: Quantity
  readonly state: string
  readonly figures: Readonly<Record<string, Quantity | undefined>>
}

export interface SweepView {
  readonly title: string
  readonly under?: string | undefined
  readonly says: string
  /** What the size is, for the axis. */
  readonly measured: string
  readonly rows: readonly SweepRow[]
  /** Figures that get a panel, with the words for them. */
  readonly panels: readonly { readonly name: string; readonly text: string }[]
  /** The size that the machine has now, where it has one. */
  readonly now?: { readonly size: number; readonly text: string } | undefined
  /** Sizes between which no usual instrument shows that anything moved. */
  readonly plateau?: { readonly from: number; readonly to: number } | undefined
}

const HEIGHT = 130
const NARROWEST_PANEL = 300

/** How a fault grows: a panel a figure, all over the same sizes, with how the machine ends up. */
export function drawSweep(view: SweepView, frame: Frame): Drawing {
  const { title, under, says, rows } = view
  const { paint, width, system } = frame
  const head = heading(frame, title, under)
  const columns = Math.max(1, Math.min(3, Math.floor(width / NARROWEST_PANEL)))
  const each = (width - 2 * EDGE) / columns
  const sizes = rows.map(({ size }) => size.si)
  const [least, most] = [Math.min(...sizes), Math.max(...sizes)]
  const first = rows[0] as SweepRow
  const size = measureOf(first.size.kind, system, Math.max(Math.abs(least), Math.abs(most)))
  const tall = 22 + HEIGHT + AXIS_ROOM.bottom
  const nodes = view.panels.flatMap((panel, index) => {
    const left = EDGE + (index % columns) * each
    const top = head.bottom + Math.floor(index / columns) * tall
    const box: Box = {
      left: left + AXIS_ROOM.left - EDGE,
      right: left + each - AXIS_ROOM.right,
      top: top + 22,
      bottom: top + 22 + HEIGHT,
    }
    const x = linear(size.of(least), size.of(most), box.left, box.right)
    return [part(`panel-${index + 1}`, ...drawPanel(view, panel, box, x, size, paint, system))]
  })
  const bottom = head.bottom + Math.ceil(view.panels.length / columns) * tall
  const key = keyOf(frame, keyEntries(view, paint), bottom - 4)
  return {
    title,
    says,
    height: key.bottom,
    body: [...head.nodes, ...nodes, part('key', ...key.nodes)],
  }
}

function drawPanel(
  view: SweepView,
  { name, text }: SweepView['panels'][number],
  box: Box,
  x: Plot['x'],
  size: Measure,
  paint: Paint,
  system: 'us' | 'si',
): readonly Node[] {
  const known = view.rows.flatMap((row) => {
    const figure = row.figures[name]
    return figure === undefined ? [] : [{ row, figure }]
  })
  const values = known.map(({ figure }) => figure.si)
  const [low, high] = [Math.min(...values), Math.max(...values)]
  const kind = (known[0] as (typeof known)[number]).figure.kind
  const measure = measureOf(kind, system, Math.max(Math.abs(low), Math.abs(high)))
  const beside = 0.12 * (high - low) || Math.abs(0.05 * high) || 1
  const y = linear(measure.of(low - beside), measure.of(high + beside), box.bottom, box.top)
  const at = ({ row, figure }: (typeof known)[number]): Pixel => [
    x(size.of(row.size.si)),
    y(measure.of(figure.si)),
  ]
  const { plateau, now } = view
  const edges = plateau ? [x(size.of(plateau.from)), x(size.of(plateau.to))] : []
  return [
    textAt(paint, { text, at: [box.left, box.top - 7], size: 'label', bold: true }),
    ...(plateau
      ? [
          part(
            'plateau',
            rectangle(paint, 'zone', {
              ...box,
              left: Math.min(...edges),
              right: Math.max(...edges),
            }),
          ),
        ]
      : []),
    ...axes(paint, { box, x, y }, { x: `${view.measured}, ${size.unit}`, y: measure.unit }),
    ...(now
      ? [part('now', ...curve(paint, 'limit', nowLine(x(size.of(now.size)), box), box))]
      : []),
    part('line', ...curve(paint, 'fit', known.map(at), box)),
    part('rows', ...known.flatMap((entry) => stateMark(paint, entry.row.state, at(entry)))),
  ]
}

const nowLine = (x: number, { top, bottom }: Box): readonly Pixel[] => [
  [x, top],
  [x, bottom],
]

/** Each way of ending up has a shape of its own. */
function stateMark(paint: Paint, state: string, [x, y]: Pixel): readonly Node[] {
  if (state === 'steady') return [ring(paint, 'mark', [x, y])]
  if (state === 'cycling') {
    return [el('rect', { x: x - 4.5, y: y - 4.5, width: 9, height: 9, ...paint('mark') })]
  }
  if (state === 'iced') {
    const points = `${(x - 5).toFixed(2)},${(y + 4).toFixed(2)} ${(x + 5).toFixed(2)},${(y + 4).toFixed(2)} ${x.toFixed(2)},${(y - 5).toFixed(2)}`
    return [el('polygon', { points, ...paint('mark') })]
  }
  return [
    straight(paint, 'distance', [x - 4, y - 4], [x + 4, y + 4]),
    straight(paint, 'distance', [x - 4, y + 4], [x + 4, y - 4]),
  ]
}

const STATES: Readonly<Record<string, string>> = {
  steady: 'runs steadily',
  cycling: 'cycles; the figures are those before it stops',
  iced: 'ices up',
  'high-pressure-trip': 'stopped by a cut-out',
  'low-pressure-trip': 'stopped by a cut-out',
  dry: 'pumped dry',
}

function keyEntries({ rows, plateau, now }: SweepView, paint: Paint): readonly KeyEntry[] {
  const states = [...new Map(rows.map(({ state }) => [STATES[state] ?? state, state]))]
  return [
    ...states.map(
      ([text, state]): KeyEntry => ({ text, sample: (x, y) => stateMark(paint, state, [x, y]) }),
    ),
    ...(now ? [lineKey(paint, 'limit', now.text)] : []),
    ...(plateau
      ? [
          {
            text: 'no usual instrument shows that anything moved',
            sample: (x: number, y: number) => [
              el('rect', { x: x - 12, y: y - 6, width: 24, height: 12, ...paint('zone') }),
            ],
          },
        ]
      : []),
  ]
}
