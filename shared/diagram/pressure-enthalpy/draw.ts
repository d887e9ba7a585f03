import type { Refrigerant } from '../../refrigerant/index.ts'
import { saturatedCurves } from '../../refrigerant/index.ts'
import type { PlanePoint, Window } from '../../refrigerant/isolines.ts'
import { AXIS_ROOM, axes, type Plot, plotBox, underPlot } from '../scene/axes.ts'
import { type Drawing, type Frame, heading, type KeyEntry, keyOf, part } from '../scene/drawing.ts'
import { labelsIn } from '../scene/labels.ts'
import { type Measure, measureOf } from '../scene/measure.ts'
import type { Node } from '../scene/node.ts'
import type { Box, Pixel } from '../scene/path.ts'
import { linear, log } from '../scene/scale.ts'
import { curve, lineKey, numbered, RADIUS, straight } from '../scene/shapes.ts'
import { textAt } from '../scene/text.ts'
import type { LookName, Paint } from '../scene/theme.ts'
import { type Background, background } from './background.ts'
import type { Cycle, Mark } from './cycle.ts'

/** What a pressure-enthalpy picture shows. */
export interface PressureEnthalpy {
  readonly refrigerant: Refrigerant
  readonly title: string
  readonly under?: string | undefined
  readonly says: string
  /** One, or two to compare: the first is the one that matters, the second what it is held against. */
  readonly cycles: readonly Cycle[]
}

/** How the lines and points of the first cycle look, and those of the second. */
const STYLES = [
  { read: 'cycle', assumed: 'cycle-assumed', mark: 'mark', text: 'warm-text' },
  { read: 'other', assumed: 'other-assumed', mark: 'other-mark', text: 'cool-text' },
] as const satisfies readonly Readonly<Record<string, LookName>>[]

/** Pressure upwards on a logarithmic scale, enthalpy to the right: the picture that a cycle is taught on. */
export function drawPressureEnthalpy(view: PressureEnthalpy, frame: Frame): Drawing {
  const { cycles, title, under, says } = view
  const { width, paint } = frame
  const head = heading(frame, title, under)
  const box = plotBox(width, head.bottom, Math.max(280, Math.min(560, width * 0.6)))
  const plane = planeOf(view, frame, box)
  const key = keyOf(frame, keyEntries(paint, cycles), underPlot(box))
  const body = [
    ...head.nodes,
    ...drawPlane(plane, paint, box, [...cycles.entries()], plane.titles),
    part('key', ...key.nodes),
  ]
  return { title, says, height: key.bottom, body }
}

/** From this width on two panels lie beside each other, px. */
const BESIDE = 640
const GUTTER = 18
const PANEL_NAME = 22

/** Two cycles in a panel each, both on the same axes: the first as what matters, the second as what it is held against. */
export function drawCyclesApart(
  view: PressureEnthalpy & { readonly names: readonly [first: string, second: string] },
  frame: Frame,
): Drawing {
  const { cycles, title, under, says, names } = view
  const { width, paint } = frame
  const head = heading(frame, title, under)
  const beside = width >= BESIDE
  const across = beside
    ? (width - AXIS_ROOM.left - AXIS_ROOM.right - GUTTER) / 2
    : width - AXIS_ROOM.left - AXIS_ROOM.right
  const height = Math.max(240, Math.min(460, across * 0.85))
  // What it is held against comes first, as one reads.
  const order = [1, 0] as const
  const boxes = order.map((_, place): Box => {
    const left = AXIS_ROOM.left + (beside ? place * (across + GUTTER) : 0)
    const top = head.bottom + PANEL_NAME + (beside ? 0 : place * (height + PANEL_NAME + 8))
    return { left, right: left + across, top, bottom: top + height }
  })
  const plane = planeOf(view, frame, boxes[0] as Box)
  const { x, y } = plane.titles
  const panels = order.map((index, place) => {
    const box = boxes[place] as Box
    const titles = {
      ...(beside || place === 1 ? { x } : {}),
      ...(beside && place === 1 ? {} : { y }),
    }
    const cycle = cycles[index]
    const name = names[index]
    return part(
      `panel-${place + 1}`,
      textAt(paint, { text: name, at: [box.left, box.top - 8], size: 'label', bold: true }),
      ...drawPlane(plane, paint, box, cycle ? [[index, cycle]] : [], titles),
    )
  })
  const key = keyOf(frame, keyEntries(paint, cycles, true), underPlot(boxes[1] as Box))
  return {
    title,
    says,
    height: key.bottom,
    body: [...head.nodes, ...panels, part('key', ...key.nodes)],
  }
}

/** What of the plane is the same in every panel: its lines and its scales. */
interface Plane {
  readonly behind: Background
  readonly temperature: Measure
  readonly titles: { readonly x: string; readonly y: string }
  scales(box: Box): Pick<Plot, 'x' | 'y'>
  at(point: PlanePoint, plot: Pick<Plot, 'x' | 'y'>): Pixel
}

function planeOf(
  { refrigerant: r, cycles }: PressureEnthalpy,
  { system }: Frame,
  { top, bottom }: Box,
): Plane {
  const window = windowOf(r, cycles)
  const temperature = measureOf('temperature', system, 300)
  const pressure = measureOf('absolutePressure', system, window.toPa)
  const energy = measureOf('specificEnergy', system, 1e5)
  const [fromEnthalpy, toEnthalpy] = enthalpies(r, window, cycles)
  return {
    behind: background(r, window, hottest(r), temperature, (bottom - top) / 24),
    temperature,
    titles: { x: `Enthalpy, ${energy.unit}`, y: `Pressure, ${pressure.unit}` },
    scales: (box) => ({
      x: linear(energy.of(fromEnthalpy), energy.of(toEnthalpy), box.left, box.right),
      y: log(pressure.of(window.fromPa), pressure.of(window.toPa), box.bottom, box.top),
    }),
    at: ({ pressurePa, enthalpy }, { x, y }) => [
      x(energy.of(enthalpy)),
      y(pressure.of(pressurePa)),
    ],
  }
}

/** The plane in a box with some of the cycles on it, each in the style of its place. */
function drawPlane(
  { behind, temperature, scales, at: placeOf }: Plane,
  paint: Paint,
  box: Box,
  cycles: readonly (readonly [index: number, cycle: Cycle])[],
  titles: Partial<Plane['titles']>,
): readonly Node[] {
  const plot: Plot = { box, ...scales(box) }
  const at = (point: PlanePoint) => placeOf(point, plot)
  const draw = (look: LookName, points: readonly PlanePoint[]) =>
    curve(paint, look, points.map(at), box)
  const placed = apart((cycles[0]?.[1].marks ?? []).map(at))
  const labels = labelsIn(paint, box)
  for (const pixel of placed) keepClear(labels, pixel)
  for (const mark of cycles.flatMap(([, { marks }]) => marks)) keepClear(labels, at(mark))
  for (const leg of cycles.flatMap(([, { legs }]) => legs)) keepLine(labels, leg.points.map(at))
  // The one that matters lies over the one that it is held against.
  const upwards = [...cycles].reverse()
  return [
    ...axes(paint, plot, titles),
    ...lines(behind, draw),
    part('isotherm-labels', ...isothermLabels(behind, at, labels, temperature)),
    ...upwards.map(([index, cycle]) =>
      part(
        `cycle-${index + 1}`,
        ...cycle.legs.flatMap(({ points, basis }) => draw(styleOf(index)[basis], points)),
      ),
    ),
    ...upwards.map(([index, cycle]) =>
      part(
        `marks-${index + 1}`,
        ...marksOf(paint, cycle.marks, placed, at, index, index === cycles[0]?.[0]),
      ),
    ),
  ]
}

const styleOf = (index: number) => STYLES[index === 0 ? 0 : 1]

function lines(
  { dome, isotherms, isentropes, qualities }: Background,
  draw: (look: LookName, points: readonly PlanePoint[]) => readonly Node[],
): readonly Node[] {
  return [
    part('qualities', ...qualities.flatMap((line) => draw('quality', line))),
    part('isentropes', ...isentropes.flatMap((line) => draw('isentrope', line))),
    part(
      'isotherms',
      ...isotherms.flatMap(({ liquid, boiling, vapour }) =>
        draw('isotherm', [...liquid, ...boiling, ...vapour]),
      ),
    ),
    part('bubble', ...draw('dome', dome.bubble)),
    part('dew', ...draw('dome', dome.dew)),
    part('dome-top', ...draw('dome-top', dome.top)),
  ]
}

/** A temperature on its line: inside the dome where it boils, else in the vapour; left out where there is no room. */
function isothermLabels(
  { isotherms }: Background,
  at: (point: PlanePoint) => Pixel,
  labels: ReturnType<typeof labelsIn>,
  temperature: Measure,
): readonly Node[] {
  return isotherms.flatMap(({ temperatureK, boiling, vapour }) => {
    const text = `${Math.round(temperature.of(temperatureK))} ${temperature.unit}`
    const places =
      boiling.length > 1
        ? [0.5, 0.62, 0.38, 0.74, 0.26].map((s) => along(boiling, s))
        : vapour.filter((_, i) => i % 8 === 4)
    return labels.place(
      places.map((point) => {
        const [x, y] = at(point)
        return { text, at: [x, y + 4], anchor: 'middle', look: 'soft-text', halo: true } as const
      }),
    )
  })
}

/** A point a share of the way along a line, by its ends' enthalpies. */
function along(points: readonly PlanePoint[], share: number): PlanePoint {
  const [first, last] = [points[0] as PlanePoint, points.at(-1) as PlanePoint]
  const enthalpy = first.enthalpy + share * (last.enthalpy - first.enthalpy)
  const index = Math.max(
    1,
    points.findIndex((point) => point.enthalpy >= enthalpy),
  )
  const [a, b] = [points[index - 1] as PlanePoint, points[index] as PlanePoint]
  const part = (enthalpy - a.enthalpy) / (b.enthalpy - a.enthalpy || 1)
  return { enthalpy, pressurePa: a.pressurePa + part * (b.pressurePa - a.pressurePa) }
}

/** A state's number; in a square for what it is compared with. */
const markAt = (paint: Paint, { number }: Pick<Mark, 'number'>, at: Pixel, index: number) =>
  numbered(paint, number, at, { ...styleOf(index), square: index > 0 })

/** Marks nearer than this would cover each other's number. */
const APART = 2 * RADIUS + 1

/** Places for marks that do not cover each other: the later one gives way to the side, then downwards. */
function apart(pixels: readonly Pixel[]): readonly Pixel[] {
  const placed: Pixel[] = []
  const isFree = ([x, y]: Pixel) =>
    placed.every(([px, py]) => Math.hypot(px - x, py - y) >= APART - 0.01)
  for (const [x, y] of pixels) {
    const ways: readonly Pixel[] = [0, 1, 2, 3].flatMap((step): readonly Pixel[] => [
      [x + step * APART, y],
      [x - step * APART, y],
      [x, y + step * APART],
      [x, y - step * APART],
    ])
    placed.push(ways.find(isFree) ?? [x, y])
  }
  return placed
}

/**
 * The marks of a cycle. Of the one that leads, one that had to give way is led back to its state; those of the second cycle
 * are squares, without a number where the first cycle's mark lies over them.
 */
function marksOf(
  paint: Paint,
  marks: readonly Mark[],
  first: readonly Pixel[],
  at: (point: PlanePoint) => Pixel,
  index: number,
  leads: boolean,
): readonly Node[] {
  return marks.flatMap((mark, order) => {
    const here = at(mark)
    if (leads) {
      const there = first[order] ?? here
      const moved = there[0] !== here[0] || there[1] !== here[1]
      return [
        ...(moved ? [straight(paint, 'spread', here, there)] : []),
        ...markAt(paint, mark, there, index),
      ]
    }
    const covered = first.some(([x, y]) => Math.hypot(x - here[0], y - here[1]) < APART)
    return markAt(paint, { number: covered ? '' : mark.number }, here, index)
  })
}

function keepClear(labels: ReturnType<typeof labelsIn>, [x, y]: Pixel): void {
  labels.keep({ left: x - RADIUS, right: x + RADIUS, top: y - RADIUS, bottom: y + RADIUS })
}

/** Keeps a line free of labels, a stretch at a time. */
function keepLine(labels: ReturnType<typeof labelsIn>, points: readonly Pixel[]): void {
  for (let index = 1; index < points.length; index += 1) {
    const [a, b] = [points[index - 1] as Pixel, points[index] as Pixel]
    const steps = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / 8))
    for (let step = 0; step <= steps; step += 1) {
      const [x, y] = [a[0] + ((b[0] - a[0]) * step) / steps, a[1] + ((b[1] - a[1]) * step) / steps]
      labels.keep({ left: x - 2, right: x + 2, top: y - 2, bottom: y + 2 })
    }
  }
}

/** @param all - Whether the marks of the second cycle have words of their own. */
function keyEntries(paint: Paint, cycles: readonly Cycle[], all = false): readonly KeyEntry[] {
  const line = (look: LookName, text: string) => lineKey(paint, look, text)
  const ofCycle = cycles.flatMap(({ texts, legs, marks }, index) => {
    const has = (basis: 'read' | 'assumed') => legs.some((leg) => leg.basis === basis)
    return [
      ...(has('read') ? [line(styleOf(index).read, texts.read)] : []),
      ...(has('assumed') ? [line(styleOf(index).assumed, texts.assumed)] : []),
      // The second cycle has the same states, told by their shape.
      ...(index > 0 && !all ? [] : marks).map(
        (mark): KeyEntry => ({
          text: mark.text,
          sample: (x, y) => markAt(paint, mark, [x, y], index),
        }),
      ),
    ]
  })
  return [
    ...ofCycle,
    line('dome', 'bubble line (left) and dew line (right)'),
    line('dome-top', 'top of both: drawn, not computed'),
    line('isotherm', 'same temperature'),
    line('isentrope', 'same entropy'),
    line('quality', '20, 40, 60, 80 % of the latent heat'),
  ]
}

/** Past the highest of saturation by so much isotherms are drawn into the vapour. */
const ABOVE_CRITICAL_K = 60

const hottest = (r: Refrigerant) =>
  Math.min(r.criticalTemperatureK + ABOVE_CRITICAL_K, r.equationMaximumK)

/** From below the lowest state of the cycles, or a cold evaporator, to above the dome and them. */
function windowOf(r: Refrigerant, cycles: readonly Cycle[]): Window {
  const pressures = pointsOf(cycles).map(({ pressurePa }) => pressurePa)
  const least = Math.max(r.bubble.fromPa, r.dew.fromPa)
  const usual = r.criticalPressurePa / 40
  return {
    fromPa: Math.max(
      Math.min(usual, ...pressures.map((pa) => pa / 1.7)),
      Math.min(least, ...pressures),
    ),
    toPa: Math.max(1.25 * r.criticalPressurePa, ...pressures.map((pa) => 1.25 * pa)),
  }
}

const pointsOf = (cycles: readonly Cycle[]): readonly PlanePoint[] =>
  cycles.flatMap(({ legs, marks }) => [...marks, ...legs.flatMap(({ points }) => points)])

/** The dome at the bottom of the window, and room for hot vapour. */
function enthalpies(r: Refrigerant, window: Window, cycles: readonly Cycle[]): [number, number] {
  const { liquid, vapour } = saturatedCurves(r)
  const lowest = Math.max(window.fromPa, r.bubble.fromPa, r.dew.fromPa)
  const left = liquid.enthalpy(r.bubble.temperature(lowest))
  const right = Math.max(
    ...[0, 0.25, 0.5, 0.75].map((share) => {
      const pressurePa = lowest * (r.dew.toPa / lowest) ** share
      return vapour.enthalpy(r.dew.temperature(pressurePa))
    }),
  )
  const read = pointsOf(cycles).map(({ enthalpy }) => enthalpy)
  const span = right - left
  return [
    Math.min(left, ...read.map((value) => value - 0.04 * span)),
    Math.max(right + 0.22 * span, ...read.map((value) => value + 0.08 * span)),
  ]
}
