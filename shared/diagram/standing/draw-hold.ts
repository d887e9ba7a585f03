import { AXIS_ROOM, plotBox, uprightAxis } from '../scene/axes.ts'
import { type Drawing, type Frame, heading, keyOf, part, sentences } from '../scene/drawing.ts'
import { labelsIn } from '../scene/labels.ts'
import { type Measure, measureIn, measureOf } from '../scene/measure.ts'
import type { Node } from '../scene/node.ts'
import type { Box, Pixel } from '../scene/path.ts'
import { linear } from '../scene/scale.ts'
import { curve, diamond, dimension, rectangle, ring, straight } from '../scene/shapes.ts'
import { textAt, wrapped } from '../scene/text.ts'
import type { Paint } from '../scene/theme.ts'

/** A pressure with its ±, Pa. */
interface Known {
  readonly pa: number
  readonly plusMinusPa: number
}

/** A standing test of two readings. */
export interface Hold {
  readonly title: string
  readonly under?: string | undefined
  readonly says: string
  /** Whether the pressures are those of a gauge or absolute. */
  readonly kind: 'gaugePressure' | 'absolutePressure'
  readonly start: Known
  readonly end: Known
  /** What the end would read if no gas had gone in or out, with all that is not known of that. */
  readonly expected: Known
  readonly startText: string
  readonly endText: string
  /** What is left, in words. */
  readonly leftText: string
  readonly limit?: { readonly pa: number; readonly text: string } | undefined
}

/** Start and end of a standing pressure or vacuum, beside what the temperature alone would have made of it. */
export function drawHold(view: Hold, frame: Frame): Drawing {
  const { title, under, start, end, expected, limit } = view
  const { paint, width, system } = frame
  const head = heading(frame, title, under)
  const box = plotBox(width, head.bottom, Math.max(230, Math.min(400, width * 0.45)))
  const ends = [start, end, expected].flatMap(({ pa, plusMinusPa }) => [
    pa - plusMinusPa,
    pa + plusMinusPa,
  ])
  if (limit) ends.push(limit.pa)
  const [low, high] = [Math.min(...ends), Math.max(...ends)]
  const beside = 0.18 * (high - low) || 0.01 * Math.abs(high) || 1
  const measure = measureFor(view, system, high)
  // A unit that counts a vacuum downwards still has more pressure above less.
  const y = linear(measure.of(low - beside), measure.of(high + beside), box.bottom, box.top)
  const at = (share: number, pa: number): Pixel => [
    box.left + share * (box.right - box.left),
    y(measure.of(pa)),
  ]
  const labels = labelsIn(paint, box)
  const [began, ended, without] = [at(0.2, start.pa), at(0.66, end.pa), at(0.82, expected.pa)]
  for (const [x, py] of [began, ended, without]) {
    labels.keep({ left: x - 8, right: x + 8, top: py - 8, bottom: py + 8 })
  }
  labels.keep({
    left: ended[0] - 2,
    right: ended[0] + 2,
    top: at(0, end.pa + end.plusMinusPa)[1],
    bottom: at(0, end.pa - end.plusMinusPa)[1],
  })
  const zone = {
    left: at(0.5, 0)[0],
    right: at(0.98, 0)[0],
    top: at(0, expected.pa + expected.plusMinusPa)[1],
    bottom: at(0, expected.pa - expected.plusMinusPa)[1],
  }
  const body = [
    ...head.nodes,
    part('expected-zone', rectangle(paint, 'zone', zone)),
    ...uprightAxis(
      paint,
      y,
      box,
      `${view.kind === 'gaugePressure' ? 'Pressure at the gauge' : 'Pressure'}, ${measure.unit}`,
    ),
    ...(limit
      ? [
          part(
            'limit',
            straight(paint, 'limit', at(0, limit.pa), at(1, limit.pa)),
            ...labels.mustPlace([
              {
                text: limit.text,
                at: shift(at(0.02, limit.pa), 0, -5),
                look: 'cool-text',
                halo: true,
              },
              {
                text: limit.text,
                at: shift(at(0.02, limit.pa), 0, 15),
                look: 'cool-text',
                halo: true,
              },
            ]),
          ),
        ]
      : []),
    part('as-read', ...curve(paint, 'fit', [began, ended], box)),
    part('by-temperature', ...curve(paint, 'other', [began, without], box)),
    part(
      'left',
      ...dimension(paint, 'distance', [ended[0], without[1]], ended),
      ...labels.mustPlace(
        [26, -16, 40, -30, 54, -44, 68, -58, 82, -72].flatMap((dy) =>
          (['middle', 'end'] as const).map((anchor) => ({
            text: view.leftText,
            at: [ended[0] + (anchor === 'end' ? 20 : 0), (ended[1] + without[1]) / 2 + dy] as const,
            anchor,
            size: 'label' as const,
            look: 'warm-text' as const,
            bold: true,
            halo: true,
          })),
        ),
      ),
    ),
    part(
      'spread',
      ...[[0.2, start] as const, [0.66, end] as const].flatMap(([share, known]) =>
        curve(
          paint,
          'spread',
          [at(share, known.pa - known.plusMinusPa), at(share, known.pa + known.plusMinusPa)],
          box,
        ),
      ),
    ),
    part('readings', ring(paint, 'mark', began), ring(paint, 'mark', ended)),
    part('expected', diamond(paint, without)),
    ...underneath(paint, view, box, began[0], ended[0]),
  ]
  const key = keyOf(
    frame,
    [
      {
        text: 'as read',
        sample: (x, ky) => [
          straight(paint, 'fit', [x - 13, ky], [x + 13, ky]),
          ring(paint, 'mark', [x, ky]),
        ],
      },
      {
        text: 'by temperature alone, if no gas went in or out; the shaded zone is its ±, that of the readings included',
        sample: (x, ky) => [
          straight(paint, 'other', [x - 13, ky], [x + 13, ky]),
          diamond(paint, [x, ky]),
        ],
      },
    ],
    box.bottom + AXIS_ROOM.bottom,
  )
  return {
    title,
    says: sentences(view.says, view.startText, view.endText, view.leftText, limit?.text),
    height: key.bottom,
    body: [...body, part('key', ...key.nodes)],
  }
}

const shift = ([x, y]: Pixel, dx: number, dy: number): Pixel => [x + dx, y + dy]

/** Gauges are read in one unit above and below the air's pressure here. */
function measureFor({ kind }: Hold, system: 'us' | 'si', highPa: number): Measure {
  if (kind === 'absolutePressure') return measureOf('absolutePressure', system, highPa)
  return highPa > 0
    ? measureOf('gaugePressure', system, highPa)
    : measureIn('gaugePressure', system === 'us' ? 'inHg g' : 'kPa g')
}

/** What each side of the test is, under it. */
function underneath(
  paint: Paint,
  view: Hold,
  box: Box,
  startX: number,
  endX: number,
): readonly Node[] {
  const room = (box.right - box.left) / 2 - 8
  return [
    [view.startText, Math.max(startX, box.left + room / 2)] as const,
    [view.endText, Math.min(endX + 20, box.right - room / 2)] as const,
  ].flatMap(([text, x]) =>
    wrapped(text, 'tick', room)
      .slice(0, 3)
      .map((line, index) =>
        textAt(paint, { text: line, at: [x, box.bottom + 16 + 14 * index], anchor: 'middle' }),
      ),
  )
}
