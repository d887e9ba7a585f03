import type { Kind } from '../../quantity/index.ts'
import { AXIS_ROOM, levelAxis } from '../scene/axes.ts'
import {
  type Block,
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
import type { Node } from '../scene/node.ts'
import type { Box } from '../scene/path.ts'
import { linear } from '../scene/scale.ts'
import { diamond, rectangle, ring, straight, whiskers } from '../scene/shapes.ts'
import { textAt, wrapped } from '../scene/text.ts'
import type { Paint } from '../scene/theme.ts'
import { type Line, uprightLines } from '../scene/upright-lines.ts'

/** Something that was read, SI, with its words. */
export interface ReadMark {
  readonly si: number
  readonly plusMinus: number
  readonly text: string
}

/** One side of the check on a scale of its own. */
export interface CoolingPanel {
  /** What is read, and how it stands. */
  readonly name: string
  readonly kind: Kind
  readonly measured: string
  readonly reading?: ReadMark | undefined
  /** Air into the evaporator, beside the vent. */
  readonly returnAir?: ReadMark | undefined
  /** Published figures that fit, a row a table; without `from` the figure is a most. */
  readonly tables: readonly {
    readonly label: string
    readonly from?: number | undefined
    readonly to: number
    readonly text: string
  }[]
  /** What the equipment's maker allows at most or at least. */
  readonly limits: readonly Line[]
}

export interface CoolingPicture {
  readonly title: string
  readonly under?: string | undefined
  readonly says: string
  readonly panels: readonly CoolingPanel[]
}

/** Height of the row that is read, and of a bar under its words, px. */
const READ = 34
const THICK = 14
const LINE = 15
/** Bold words are wider than they are reckoned. */
const BOLD = 1.1

/** What was read of a running machine, over the published figures for such weather, each side for itself. */
export function drawCooling(view: CoolingPicture, frame: Frame): Drawing {
  const { title, under, says, panels } = view
  const head = heading(frame, title, under)
  const nodes: Node[] = [...head.nodes]
  let top = head.bottom
  for (const [index, panel] of panels.entries()) {
    const drawn = drawPanel(panel, frame, top, index + 1)
    nodes.push(...drawn.nodes)
    top = drawn.bottom
  }
  const key = keyOf(frame, keyEntries(view, frame.paint), top)
  return { title, says, height: key.bottom, body: [...nodes, part('key', ...key.nodes)] }
}

function drawPanel(panel: CoolingPanel, frame: Frame, top: number, number: number): Block {
  const { paint, width, system } = frame
  const name = wrapped(panel.name, 'label', (width - 2 * EDGE) / BOLD)
  const named = name.map((text, index) =>
    textAt(paint, { text, at: [EDGE, top + 18 + 17 * index], size: 'label', bold: true }),
  )
  const marks = [panel.reading, panel.returnAir].flatMap((mark) => mark ?? [])
  const [left, right] = [EDGE + 10, width - AXIS_ROOM.right]
  const boxTop = top + 18 + 17 * name.length - 8 + 17 * panel.limits.length
  let bottom = boxTop + (marks.length > 0 ? READ : 4)
  const rows = panel.tables.map((table) => {
    const lines = wrapped(`${table.label}: ${table.text}`, 'tick', right - left - 12)
    const row = { ...table, lines, top: bottom }
    bottom += LINE * lines.length + THICK + 10
    return row
  })
  const box: Box = { left, right, top: boxTop, bottom: bottom + 4 }
  const [from, to] = rangeOf(panel, marks)
  const measure = measureOf(panel.kind, system, Math.max(Math.abs(from), Math.abs(to)))
  const x = linear(measure.of(from), measure.of(to), box.left, box.right)
  const at = (si: number) => x(measure.of(si))
  const middle = box.top + READ / 2 + 4
  const labels = labelsIn(paint, { ...box, left: EDGE, right: width - 4 })
  return {
    nodes: [
      part(
        `panel-${number}`,
        ...named,
        ...levelAxis(paint, x, box, `${panel.measured}, ${measure.unit}`),
        ...uprightLines(paint, panel.limits, box, at, width, 'limit'),
        ...rows.flatMap((row, index) => tableRow(paint, row, box, at, `${number}-${index + 1}`)),
        ...marks.map((mark) =>
          part(
            `${mark === panel.reading ? 'reading' : 'return-air'}-${number}`,
            ...readMark(paint, mark, mark === panel.reading, at, middle),
          ),
        ),
        ...markTexts(marks, at, middle, labels, box),
      ),
    ],
    bottom: box.bottom + AXIS_ROOM.bottom,
  }
}

/** From the least to the most that is shown, with room beside them. */
function rangeOf(panel: CoolingPanel, marks: readonly ReadMark[]): readonly [number, number] {
  const all = [
    ...marks.flatMap(({ si, plusMinus }) => [si - plusMinus, si + plusMinus]),
    ...panel.tables.flatMap(({ from, to }) => [from ?? to, to]),
    ...panel.limits.map(({ at }) => at),
  ]
  const [low, high] = [Math.min(...all), Math.max(...all)]
  const beside = 0.14 * (high - low) || 0.05 * Math.abs(high) || 1
  return [low - beside, high + beside]
}

interface Row {
  readonly lines: readonly string[]
  readonly top: number
}

/** A table's words, and under them its bar. */
function tableRow(
  paint: Paint,
  { from, to, lines, top }: CoolingPanel['tables'][number] & Row,
  box: Box,
  at: (si: number) => number,
  id: string,
): readonly Node[] {
  const under = top + LINE * lines.length + 3
  const bar: Box = {
    left: from === undefined ? box.left : at(from),
    right: at(to),
    top: under,
    bottom: under + THICK,
  }
  return [
    ...lines.map((text, index) =>
      textAt(paint, { text, at: [box.left + 6, top + LINE * (index + 1) - 3], halo: true }),
    ),
    part(
      `table-${id}`,
      // Open to the colder side: it is a most.
      rectangle(paint, from === undefined ? 'zone' : 'bar', bar),
      ...(from === undefined
        ? [straight(paint, 'frame', [bar.right, bar.top], [bar.right, bar.bottom])]
        : []),
    ),
  ]
}

/** A ring for what is judged, a diamond for the air that goes in, each with its ±. */
function readMark(
  paint: Paint,
  { si, plusMinus }: ReadMark,
  judged: boolean,
  at: (si: number) => number,
  y: number,
): readonly Node[] {
  return [
    ...(plusMinus === 0 ? [] : whiskers(paint, at(si - plusMinus), at(si + plusMinus), y)),
    judged ? ring(paint, 'mark', [at(si), y]) : diamond(paint, [at(si), y]),
  ]
}

function markTexts(
  marks: readonly ReadMark[],
  at: (si: number) => number,
  y: number,
  labels: Labels,
  box: Box,
): readonly Node[] {
  const ends = marks.map(({ si, plusMinus }) => [at(si - plusMinus) - 9, at(si + plusMinus) + 9])
  for (const [left = 0, right = 0] of ends) {
    labels.keep({ left: left + 2, right: right - 2, top: y - 8, bottom: y + 8 })
  }
  return marks.flatMap(({ text }, index) => {
    const [left = 0, right = 0] = ends[index] ?? []
    const put = (x: number, dy: number, anchor: 'start' | 'end' | 'middle') =>
      ({ text, at: [x, y + dy], anchor, size: 'label', bold: true, halo: true }) as const
    return labels.mustPlace([
      put(right, 4.5, 'start'),
      put(left, 4.5, 'end'),
      put((left + right) / 2, -9, 'middle'),
      put((left + right) / 2, 19, 'middle'),
      put(box.left + 4, -9, 'start'),
      put(box.right - 4, -9, 'end'),
    ])
  })
}

function keyEntries({ panels }: CoolingPicture, paint: Paint): readonly KeyEntry[] {
  const some = (has: (panel: CoolingPanel) => boolean) => panels.some(has)
  const swatch = (look: 'bar' | 'zone') => (x: number, y: number) => [
    rectangle(paint, look, { left: x - 12, right: x + 12, top: y - 6, bottom: y + 6 }),
  ]
  const entries: readonly (KeyEntry | false)[] = [
    some(({ reading }) => reading !== undefined) && {
      text: 'as read, with its ±',
      sample: (x, y) => [
        straight(paint, 'spread', [x - 13, y], [x + 13, y]),
        ring(paint, 'mark', [x, y]),
      ],
    },
    some(({ returnAir }) => returnAir !== undefined) && {
      text: 'air into the evaporator',
      sample: (x, y) => [diamond(paint, [x, y])],
    },
    some(({ tables }) => tables.some(({ from }) => from !== undefined)) && {
      text: 'published for such weather and running',
      sample: swatch('bar'),
    },
    some(({ tables }) => tables.some(({ from }) => from === undefined)) && {
      text: 'published as a most',
      sample: swatch('zone'),
    },
    some(({ limits }) => limits.length > 0) && {
      text: 'the maker’s figure, which overrides',
      sample: (x, y) => [straight(paint, 'limit', [x - 13, y], [x + 13, y])],
    },
  ]
  return entries.filter((entry) => entry !== false)
}
