import { heightOf, part, widthOf } from './drawing.ts'
import { el, type Node } from './node.ts'
import type { Box } from './path.ts'
import type { Scale } from './scale.ts'
import { textAt, widthOfText } from './text.ts'
import type { Paint } from './theme.ts'

/** A plane with two scales, in the units of its axes. */
export interface Plot {
  readonly box: Box
  readonly x: Scale
  readonly y: Scale
}

/** Pixels that a tick needs along each axis. */
const APART = { x: 64, y: 34 } as const

/** More than this are not tried. */
const MOST_TICKS = 30

/** Room that the labels of an axis need: left of the plot, and under it. */
export const AXIS_ROOM = { left: 66, bottom: 42, right: 14, top: 8 } as const

/** The box of a plot under a heading. */
export const plotBox = (width: number, top: number, height: number): Box => ({
  left: AXIS_ROOM.left,
  right: width - AXIS_ROOM.right,
  top: top + AXIS_ROOM.top,
  bottom: top + AXIS_ROOM.top + height,
})

/** Where a plot with its axis labels ends. */
export const underPlot = (box: Box) => box.bottom + AXIS_ROOM.bottom

/** An axis without a title has its grid alone: a plot beside or above has its words. */
interface AxisTitles {
  readonly x?: string
  readonly y?: string
}

/** Grid, ticks and titles of a plot. */
export function axes(paint: Paint, { box, x, y }: Plot, titles: AxisTitles): readonly Node[] {
  const across = ticksAcross(x, box)
  const up = ticksUp(y, box)
  return [
    part(
      'grid',
      ...across.map((tick) => upright(paint, x(tick), box)),
      ...levels(paint, y, up, box),
    ),
    ...(titles.x === undefined
      ? []
      : [part('x-axis', ...xLabels(paint, x, across, box, titles.x))]),
    ...(titles.y === undefined ? [] : [part('y-axis', ...yLabels(paint, y, up, box, titles.y))]),
  ]
}

/** The same with an upright axis alone: what lies beside each other says by itself what it is. */
export function uprightAxis(paint: Paint, y: Scale, box: Box, title: string): readonly Node[] {
  const up = ticksUp(y, box)
  return [
    part('grid', ...levels(paint, y, up, box)),
    part('y-axis', ...yLabels(paint, y, up, box, title)),
  ]
}

/** The same with a level axis alone, for bars. */
export function levelAxis(paint: Paint, x: Scale, box: Box, title: string): readonly Node[] {
  const across = ticksAcross(x, box)
  return [
    part('grid', ...across.map((tick) => upright(paint, x(tick), box)), frameOf(paint, box)),
    part('x-axis', ...xLabels(paint, x, across, box, title)),
  ]
}

const ticksAcross = (x: Scale, box: Box) => ticksOf(x, widthOf(box) / APART.x)
const ticksUp = (y: Scale, box: Box) => ticksOf(y, heightOf(box) / APART.y)

/** As many as there is room for, and two at least: one alone gives no scale. */
function ticksOf(scale: Scale, room: number): readonly number[] {
  for (let count = Math.max(2, Math.floor(room)); count < MOST_TICKS; count += 1) {
    const ticks = scale.ticks(count)
    if (ticks.length >= 2) return ticks
  }
  return [scale.from, scale.to]
}

const upright = (paint: Paint, x: number, box: Box) => rule(paint, x, box.top, x, box.bottom)

const levels = (paint: Paint, y: Scale, up: readonly number[], box: Box): readonly Node[] => [
  ...up.map((tick) => rule(paint, box.left, y(tick), box.right, y(tick))),
  frameOf(paint, box),
]

const frameOf = (paint: Paint, box: Box) =>
  el('rect', {
    x: box.left,
    y: box.top,
    width: widthOf(box),
    height: heightOf(box),
    ...paint('frame'),
  })

function xLabels(
  paint: Paint,
  x: Scale,
  across: readonly number[],
  box: Box,
  title: string,
): readonly Node[] {
  const words = wordsFor(across)
  return [
    ...across.map((tick) => {
      const text = words(tick)
      // The outermost labels stay inside the picture.
      const least = box.right + AXIS_ROOM.right - 2 - widthOfText(text, 'tick') / 2
      const at = Math.min(x(tick), least)
      return textAt(paint, { text, at: [at, box.bottom + 16], anchor: 'middle', look: 'soft-text' })
    }),
    textAt(paint, {
      text: title,
      at: [(box.left + box.right) / 2, box.bottom + 36],
      size: 'label',
      anchor: 'middle',
    }),
  ]
}

function yLabels(
  paint: Paint,
  y: Scale,
  up: readonly number[],
  box: Box,
  title: string,
): readonly Node[] {
  const words = wordsFor(up)
  return [
    ...up.map((tick) =>
      textAt(paint, {
        text: words(tick),
        at: [box.left - 6, y(tick) + 4],
        anchor: 'end',
        look: 'soft-text',
      }),
    ),
    textAt(paint, {
      text: title,
      at: [box.left - AXIS_ROOM.left + 16, (box.top + box.bottom) / 2],
      size: 'label',
      anchor: 'middle',
      turned: -90,
    }),
  ]
}

const rule = (paint: Paint, x1: number, y1: number, x2: number, y2: number): Node =>
  el('line', { x1, y1, x2, y2, ...paint('grid') })

/** Ticks with as many decimals as tell them apart. */
export function wordsFor(ticks: readonly number[]): (tick: number) => string {
  const gaps = ticks.slice(1).map((tick, index) => Math.abs(tick - (ticks[index] as number)))
  const finest = Math.min(...gaps, Number.POSITIVE_INFINITY)
  const decimals = Number.isFinite(finest)
    ? Math.min(Math.max(-Math.floor(Math.log10(finest) + 1e-9), 0), 6)
    : 0
  return (tick) => String(Number(tick.toFixed(decimals)))
}
