import { axes, type Plot, plotBox, underPlot } from '../scene/axes.ts'
import {
  type Drawing,
  type Frame,
  heading,
  type KeyEntry,
  keyOf,
  part,
  sentences,
} from '../scene/drawing.ts'
import { type Labels, labelsIn } from '../scene/labels.ts'
import { measureOf, wordsOf } from '../scene/measure.ts'
import type { Node } from '../scene/node.ts'
import type { Pixel } from '../scene/path.ts'
import { linear } from '../scene/scale.ts'
import { curve, lineKey, ring, straight } from '../scene/shapes.ts'
import { textAt } from '../scene/text.ts'
import type { LookName, Paint } from '../scene/theme.ts'

/** A reading of a standing vacuum; s, Pa absolute. */
interface Reading {
  readonly timeS: number
  readonly pressurePa: number
}

/** A pressure that is not to be passed, or that means something. */
export interface Level {
  readonly pressurePa: number
  readonly text: string
  readonly look: 'limit' | 'other-limit'
  /** Whether it must be in the picture; else it is named in the key where it lies above it. */
  readonly must: boolean
}

export interface Rise {
  readonly title: string
  readonly under?: string | undefined
  readonly says: string
  readonly readings: readonly Reading[]
  /** ± of the level of every reading, Pa. */
  readonly plusMinusPa: number
  /** The fitted line, Pa at s after the first reading, and how far it was fitted. */
  readonly fitted: ((afterS: number) => number) | undefined
  readonly fittedS: number
  readonly fitText: string
  readonly levels: readonly Level[]
  /** How long it must be watched, s after the first reading. */
  readonly watch?: { readonly timeS: number; readonly text: string } | undefined
}

const ALONG = 60
/** A level this many times as high as all else would press the readings flat. */
const TOO_HIGH = 2.5

/** Pressure of a standing vacuum over time, with the fit and the limits. */
export function drawRise(view: Rise, frame: Frame): Drawing {
  const { title, under, readings, plusMinusPa, fitted, fittedS } = view
  const { paint, width, system } = frame
  const head = heading(frame, title, under)
  const box = plotBox(width, head.bottom, Math.max(250, Math.min(460, width * 0.5)))
  const first = readings[0]?.timeS ?? 0
  const highest = Math.max(...readings.map(({ pressurePa }) => pressurePa + plusMinusPa))
  const must = view.levels.filter((level) => level.must).map(({ pressurePa }) => pressurePa)
  const top = 1.12 * Math.max(highest, ...must)
  const shown = view.levels.filter((level) => level.must || level.pressurePa < TOO_HIGH * top)
  const topPa = Math.max(top, ...shown.map(({ pressurePa }) => 1.12 * pressurePa))
  const pressure = measureOf('absolutePressure', system, topPa)
  const endS = Math.max(readings.at(-1)?.timeS ?? 1, first + (view.watch?.timeS ?? 0))
  const time = measureOf('duration', system, Math.max(endS, 120))
  const plot: Plot = {
    box,
    x: linear(0, time.of(endS) * 1.02, box.left, box.right),
    y: linear(0, pressure.of(topPa), box.bottom, box.top),
  }
  const at = (timeS: number, pa: number): Pixel => [plot.x(time.of(timeS)), plot.y(pressure.of(pa))]
  const labels = labelsIn(paint, box)
  for (const { timeS, pressurePa } of readings) {
    const [x, y] = at(timeS, pressurePa)
    labels.keep({ left: x - 5, right: x + 5, top: y - 5, bottom: y + 5 })
  }
  const line = fitted
    ? Array.from({ length: ALONG }, (_, index) => {
        const afterS = (fittedS * index) / (ALONG - 1)
        return at(first + afterS, fitted(afterS))
      })
    : []
  const body = [
    ...head.nodes,
    ...axes(paint, plot, {
      x: `Time since the pump was valved off, ${time.unit}`,
      y: `Pressure, ${pressure.unit}`,
    }),
    ...shown.map((level, index) => {
      const y = at(0, level.pressurePa)[1]
      return part(
        `level-${index + 1}`,
        straight(paint, level.look, [box.left, y], [box.right, y]),
        ...levelLabel(level, y, box, labels),
      )
    }),
    ...watchLine(paint, view, at(first + (view.watch?.timeS ?? 0), 0)[0], box, labels),
    part('fit', ...curve(paint, 'fit', line, box)),
    part('spread', ...spreads(paint, view, at, box)),
    part(
      'readings',
      ...readings.map(({ timeS, pressurePa }) => ring(paint, 'mark', at(timeS, pressurePa))),
    ),
  ]
  const away = view.levels.filter((level) => !shown.includes(level))
  const key = keyOf(frame, keyEntries(view, away, paint, system), underPlot(box))
  const says = sentences(view.says, ...view.levels.map(({ text }) => text), view.watch?.text)
  return { title, says, height: key.bottom, body: [...body, part('key', ...key.nodes)] }
}

type At = (timeS: number, pa: number) => Pixel

/** Bars of the ±, no more than a handful of a long series: it is the same for all. */
function spreads(paint: Paint, view: Rise, at: At, box: Plot['box']): readonly Node[] {
  const { readings, plusMinusPa } = view
  if (plusMinusPa === 0) return []
  const every = Math.max(1, Math.ceil(readings.length / 12))
  return readings
    .filter((_, index) => index % every === 0 || index === readings.length - 1)
    .flatMap(({ timeS, pressurePa }) =>
      curve(
        paint,
        'spread',
        [at(timeS, Math.max(0, pressurePa - plusMinusPa)), at(timeS, pressurePa + plusMinusPa)],
        box,
      ),
    )
}

function levelLabel(
  { text, look }: Level,
  y: number,
  box: Plot['box'],
  labels: Labels,
): readonly Node[] {
  const words: LookName = look === 'limit' ? 'cool-text' : 'soft-text'
  const put = (x: number, dy: number, anchor: 'start' | 'end') =>
    ({ text, at: [x, y + dy], anchor, look: words, halo: true }) as const
  return labels.mustPlace([
    put(box.right - 6, -5, 'end'),
    put(box.left + 6, -5, 'start'),
    put(box.right - 6, 15, 'end'),
    put(box.left + 6, 15, 'start'),
  ])
}

function watchLine(
  paint: Paint,
  { watch }: Rise,
  x: number,
  box: Plot['box'],
  labels: Labels,
): readonly Node[] {
  if (!watch) return []
  const put = (y: number, dx: number, anchor: 'start' | 'end') =>
    ({ text: watch.text, at: [x + dx, y], anchor, look: 'soft-text', halo: true }) as const
  return [
    part(
      'watch',
      straight(paint, 'other-limit', [x, box.top], [x, box.bottom]),
      ...labels.mustPlace([
        put(box.bottom - 8, -6, 'end'),
        put(box.bottom - 8, 6, 'start'),
        put(box.top + 16, -6, 'end'),
        put(box.top + 16, 6, 'start'),
      ]),
    ),
  ]
}

function keyEntries(
  view: Rise,
  away: readonly Level[],
  paint: Paint,
  system: 'us' | 'si',
): readonly KeyEntry[] {
  const plusMinus =
    view.plusMinusPa === 0
      ? ''
      : `, level known to ±${wordsOf('pressureDifference', view.plusMinusPa, system)}`
  return [
    {
      text: `readings${plusMinus}`,
      sample: (x, y) => [ring(paint, 'mark', [x, y])],
    },
    ...(view.fitted ? [lineKey(paint, 'fit', view.fitText)] : []),
    ...away.map(
      ({ text }): KeyEntry => ({
        text: `above the picture: ${text}`,
        sample: (x, y) => [textAt(paint, { text: '↑', at: [x, y + 4], anchor: 'middle' })],
      }),
    ),
  ]
}
