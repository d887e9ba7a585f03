import type { Refrigerant } from '../../refrigerant/index.ts'
import { axes, type Plot, plotBox, underPlot } from '../scene/axes.ts'
import { type Drawing, type Frame, heading, keyOf, part } from '../scene/drawing.ts'
import { type Labels, labelsIn } from '../scene/labels.ts'
import { type Measure, measureIn, measureOf } from '../scene/measure.ts'
import { el, type Node } from '../scene/node.ts'
import type { Box, Pixel } from '../scene/path.ts'
import { linear } from '../scene/scale.ts'
import {
  curve,
  dimension,
  lineKey,
  numbered,
  RADIUS,
  rectangle,
  straight,
} from '../scene/shapes.ts'
import type { Anchor, Written } from '../scene/text.ts'
import type { LookName, Paint } from '../scene/theme.ts'

/** A point by its readings, or one on a line. SI: K, Pa absolute; ± of coverage factor 2. */
export interface CurvePoint {
  readonly number: string
  readonly text: string
  readonly temperatureK: number
  readonly pressurePa: number
  readonly plusMinusK?: number | undefined
  readonly plusMinusPa?: number | undefined
}

/** How far a temperature is from a line, at a pressure. */
export interface Distance {
  readonly line: 'bubble' | 'dew'
  readonly pressurePa: number
  readonly fromK: number
  readonly toK: number
  readonly text: string
}

export interface SaturationCurve {
  readonly refrigerant: Refrigerant
  readonly title: string
  readonly under?: string | undefined
  readonly says: string
  /** What the gauge here reads at an absolute pressure, Pa; without it the axis is of absolute pressure. */
  readonly gaugePa?: ((absolutePa: number) => number) | undefined
  readonly points: readonly CurvePoint[]
  readonly distances: readonly Distance[]
}

/** Points along a line of saturation. */
const ALONG = 90
/** Temperatures to either side of what is read, K. */
const BESIDE_K = 14

/** Pressure upwards, temperature to the right, both in equal steps: bubble and dew line with readings on them. */
export function drawSaturationCurve(view: SaturationCurve, frame: Frame): Drawing {
  const { refrigerant: r, title, under, says, points, distances } = view
  const { paint, width, system } = frame
  const head = heading(frame, title, under)
  const box = plotBox(width, head.bottom, Math.max(260, Math.min(480, width * 0.55)))
  const temperature = measureOf('temperature', system, 300)
  const [fromK, toK] = span(view)
  const gauge = view.gaugePa ?? ((pa: number) => pa)
  const topPa =
    1.08 * Math.max(r.bubble.pressure(inside(r, toK, 'bubble')), ...points.map((p) => p.pressurePa))
  const lowPa = Math.min(
    r.dew.pressure(inside(r, fromK, 'dew')),
    ...points.map((p) => p.pressurePa),
  )
  const pressure = pressureMeasure(view, system, gauge(topPa))
  const bottom = Math.min(0, gauge(lowPa) - 0.05 * (gauge(topPa) - gauge(lowPa)))
  const plot: Plot = {
    box,
    x: linear(temperature.of(fromK), temperature.of(toK), box.left, box.right),
    y: linear(
      pressure.of(view.gaugePa ? bottom : 0),
      pressure.of(gauge(topPa)),
      box.bottom,
      box.top,
    ),
  }
  const at = (kelvin: number, pa: number): Pixel => [
    plot.x(temperature.of(kelvin)),
    plot.y(pressure.of(gauge(pa))),
  ]
  const lineOf = (line: 'bubble' | 'dew') =>
    Array.from({ length: ALONG }, (_, index) => {
      const kelvin = inside(r, fromK + ((toK - fromK) * index) / (ALONG - 1), line)
      return at(kelvin, r[line].pressure(kelvin))
    })
  const [bubble, dew] = [lineOf('bubble'), lineOf('dew')]
  const pure = r.info.kind === 'pure'
  const labels = labelsIn(paint, box)
  for (const { temperatureK, pressurePa } of points) {
    const [x, y] = at(temperatureK, pressurePa)
    labels.keep({ left: x - RADIUS, right: x + RADIUS, top: y - RADIUS, bottom: y + RADIUS })
  }
  for (const [x, y] of [...bubble, ...dew]) {
    labels.keep({ left: x - 3, right: x + 3, top: y - 3, bottom: y + 3 })
  }
  const body = [
    ...head.nodes,
    ...vacuum(paint, plot, view, labels),
    ...axes(paint, plot, {
      x: `Temperature, ${temperature.unit}`,
      y: `${view.gaugePa ? 'Pressure at the gauge' : 'Pressure'}, ${pressure.unit}`,
    }),
    ...(pure ? [] : [part('between', ...curveArea(paint, bubble, dew, box))]),
    part('drops', ...points.flatMap((point) => drops(paint, point, at, box))),
    ...(pure
      ? [part('saturation', ...curve(paint, 'dome', dew, box))]
      : [
          part('bubble', ...curve(paint, 'bubble', bubble, box)),
          part('dew', ...curve(paint, 'dew', dew, box)),
        ]),
    part('distances', ...distances.flatMap((entry) => distanceAt(paint, entry, at, labels))),
    part('points', ...points.flatMap((point) => pointAt(paint, point, at, box))),
  ]
  const key = keyOf(
    frame,
    [
      ...points.map((point) => ({
        text: point.text,
        sample: (x: number, y: number) =>
          numbered(paint, point.number, [x, y], { mark: 'mark', text: 'warm-text' }),
      })),
      ...(pure
        ? [lineKey(paint, 'dome', 'saturation: boiling and condensing')]
        : [
            lineKey(paint, 'bubble', 'bubble line: boiling begins; subcooling counts from it'),
            lineKey(paint, 'dew', 'dew line: the last liquid is gone; superheat counts from it'),
          ]),
    ],
    underPlot(box),
  )
  return { title, says, height: key.bottom, body: [...body, part('key', ...key.nodes)] }
}

/** The temperature, or the end of the line that is nearest to it. */
const inside = (r: Refrigerant, kelvin: number, line: 'bubble' | 'dew') =>
  Math.min(Math.max(kelvin, r[line].fromK), r[line].toK)

/** In the unit that gauges are read in above the air's pressure, all the way down. */
function pressureMeasure(view: SaturationCurve, system: 'us' | 'si', topPa: number): Measure {
  if (!view.gaugePa) return measureOf('absolutePressure', system, topPa)
  return system === 'us'
    ? measureIn('gaugePressure', 'psig')
    : measureOf('gaugePressure', 'si', 1e5)
}

function span({ refrigerant: r, points, distances }: SaturationCurve): [number, number] {
  const read = [
    ...points.map(({ temperatureK }) => temperatureK),
    ...distances.flatMap(({ fromK, toK }) => [fromK, toK]),
  ]
  const [least, most] = [Math.min(...read), Math.max(...read)]
  const beside = Math.max(BESIDE_K, 0.18 * (most - least))
  const from = Math.min(Math.max(least - beside, r.minimumTemperatureK), least - 1)
  const to = Math.max(Math.min(most + beside, r.maximumTemperatureK), most + 1)
  return [from, to]
}

/** Below the air's pressure a gauge reads a vacuum. */
function vacuum(
  paint: Paint,
  { box, y }: Plot,
  { gaugePa }: SaturationCurve,
  labels: Labels,
): readonly Node[] {
  if (!gaugePa || y.from >= 0) return []
  const top = y(0)
  const zone = rectangle(paint, 'zone', { ...box, top })
  const words: Written = {
    text: 'vacuum',
    at: [box.right - 6, box.bottom - 6],
    anchor: 'end',
    look: 'soft-text',
  }
  return [part('vacuum', zone, ...(box.bottom - top > 18 ? labels.place([words]) : []))]
}

function curveArea(
  paint: Paint,
  bubble: readonly Pixel[],
  dew: readonly Pixel[],
  box: Box,
): readonly Node[] {
  const points = [...bubble, ...[...dew].reverse()].map(([x, y]) => [
    Math.min(Math.max(x, box.left), box.right),
    Math.min(Math.max(y, box.top), box.bottom),
  ])
  return [
    el('polygon', {
      points: points.map((p) => p.map((v) => v?.toFixed(2)).join(',')).join(' '),
      ...paint('zone'),
    }),
  ]
}

type At = (kelvin: number, pa: number) => Pixel

/** Dotted lines from a point to both axes. */
function drops(
  paint: Paint,
  { temperatureK, pressurePa }: CurvePoint,
  at: At,
  box: Box,
): readonly Node[] {
  const [x, y] = at(temperatureK, pressurePa)
  return [
    straight(paint, 'drop', [box.left, y], [x, y]),
    straight(paint, 'drop', [x, y], [x, box.bottom]),
  ]
}

/** The ± of a reading, and its number. */
function pointAt(paint: Paint, point: CurvePoint, at: At, box: Box): readonly Node[] {
  const { number, temperatureK, pressurePa, plusMinusK = 0, plusMinusPa = 0 } = point
  const spread = [
    [at(temperatureK - plusMinusK, pressurePa), at(temperatureK + plusMinusK, pressurePa)],
    [at(temperatureK, pressurePa - plusMinusPa), at(temperatureK, pressurePa + plusMinusPa)],
  ].flatMap((ends) => curve(paint, 'spread', ends as Pixel[], box))
  return [
    ...spread,
    ...numbered(paint, number, at(temperatureK, pressurePa), { mark: 'mark', text: 'warm-text' }),
  ]
}

function distanceAt(
  paint: Paint,
  { line, pressurePa, fromK, toK, text }: Distance,
  at: At,
  labels: Labels,
): readonly Node[] {
  const look: LookName = line === 'dew' ? 'distance' : 'other-distance'
  const textLook: LookName = line === 'dew' ? 'warm-text' : 'cool-text'
  const [from, to] = [at(fromK, pressurePa), at(toK, pressurePa)]
  const middle = (from[0] + to[0]) / 2
  const right = Math.max(from[0], to[0])
  const left = Math.min(from[0], to[0])
  const words = (x: number, y: number, anchor: Anchor): Written => ({
    text,
    at: [x, y],
    anchor,
    size: 'label',
    look: textLook,
    bold: true,
    halo: true,
  })
  const places = [
    words(middle, from[1] + 24, 'middle'),
    words(middle, from[1] - 14, 'middle'),
    words(right + 14, from[1] + 4, 'start'),
    words(left - 14, from[1] + 4, 'end'),
    words(right, from[1] + 24, 'end'),
    words(left, from[1] - 14, 'start'),
    words(left, from[1] + 24, 'start'),
    words(right, from[1] - 14, 'end'),
    words(left, from[1] - 30, 'start'),
    words(right, from[1] + 40, 'end'),
  ]
  return [
    part(`distance-${line}`, ...dimension(paint, look, from, to)),
    ...labels.mustPlace(places),
  ]
}
