import { CalcError } from '../../errors.ts'
import { SCALE_STEP_KG } from '../../instrument/index.ts'
import { newNotes } from '../../notes.ts'
import type { Computation, Computed } from '../../operation.ts'
import { mass, type Quantity, widthOf } from '../../quantity/index.ts'
import type { ChargeResult } from '../../service/charge/verdict/result.ts'
import { charge } from '../../service/charge.ts'
import { type ChargeTolerance, chargeToleranceOf } from '../../service/charge-tolerance.ts'
import { defineDiagram } from '../diagram.ts'
import { sentences } from '../scene/drawing.ts'
import { inWords } from '../scene/measure.ts'
import { type BarPicture, type Bars, drawBars } from './draw.ts'

type Result = Computation<Computed<ChargeResult>>['result']

/** The charge as a bar: what is still there, what is missing, and the tolerance that it is held against. */
export const chargeBar = defineDiagram(charge, (input, { result }, told, frame) => {
  const say = (quantity: Quantity) => inWords(quantity.in(undefined), frame.system)
  const panels = [
    whole(result, say),
    gone(result, toleranceOf(input, result), say),
    onScale(result, (quantity) =>
      inWords(quantity, frame.system, input.scaleDivision?.si ?? SCALE_STEP_KG),
    ),
  ].flatMap((panel) => panel ?? [])
  if (panels.length === 0) {
    throw new CalcError('missing-input', 'No mass is known yet, so there is none to draw.', {
      path: result.needs.slice(0, 1),
      hint: `Give ${result.needs.length > 0 ? result.needs.join(', ') : 'the label charge'}.`,
    })
  }
  const title = 'Charge'
  const words = panels.flatMap(({ name, rows, lines }) => [
    `${name}: ${rows.map(({ text }) => text).join(', ')}`,
    ...lines.map(({ text }) => text),
  ])
  const picture: BarPicture = {
    title,
    under: told,
    says: sentences(told, ...words),
    kind: 'mass',
    measured: 'Mass',
    panels,
    key: keyOf(panels, result),
  }
  return drawBars(picture, frame)
})

/** What the charge may be off by, wherever something is missing. */
const toleranceOf = (
  { chargeTolerance, labelCharge }: ReturnType<typeof charge.parse>,
  { kind }: Result,
) =>
  kind === 'full-charge' ? undefined : chargeToleranceOf(chargeTolerance, labelCharge, newNotes())

type Say = (quantity: Quantity) => string

/** The whole charge: what stays in the machine, and what goes in. */
function whole(result: Result, say: Say): Bars | undefined {
  const { totalTarget, massToAdd, kind, recovered } = result
  const missing = missingOf(result)
  if (!totalTarget) return undefined
  const target = totalTarget.si
  const gone = Math.min(missing?.si ?? 0, target)
  const lines = [{ at: target, text: `charge ${say(totalTarget)}` }]
  if (kind === 'full-charge') {
    const back = Math.min(recovered?.si ?? 0, target)
    return {
      name: 'The whole charge, weighed in',
      rows: [
        {
          pieces: [
            ...(back > 0 ? [{ from: 0, to: back, fill: 'plain' as const }] : []),
            { from: back, to: target, fill: 'hatched' },
          ],
          text: say(massToAdd ?? totalTarget),
        },
      ],
      zones: [],
      lines,
    }
  }
  return {
    name:
      kind === 'bound'
        ? 'The charge, and the most that can be gone'
        : 'The charge, and what is missing',
    rows: [
      {
        pieces: [
          { from: 0, to: target - gone, fill: 'plain' },
          { from: target - gone, to: target, fill: kind === 'bound' ? 'open' : 'hatched' },
        ],
        text: '',
      },
    ],
    zones: [],
    lines,
  }
}

/** What has left the machine: known, or at most. */
const missingOf = ({ kind, massToAdd, bound, whatIfTo, lost }: Result) =>
  kind === 'full-charge'
    ? lost
    : kind === 'bound'
      ? bound?.most
      : (massToAdd ?? whatIfTo ?? bound?.most)

/** What is missing, large, against the tolerance of the charge. */
function gone(
  result: Result,
  tolerance: Pick<ChargeTolerance, 'from' | 'to'> | undefined,
  say: Say,
): Bars | undefined {
  const { kind, massToAdd, bound, whatIfFrom, whatIfTo } = result
  const zones = tolerance ? [{ from: 0, to: tolerance.from.si }] : []
  const lines = tolerance
    ? [
        { at: tolerance.from.si, text: `may be off by ${say(tolerance.from)}` },
        ...(tolerance.to.si > tolerance.from.si
          ? [{ at: tolerance.to.si, text: `surely outside from ${say(tolerance.to)}` }]
          : []),
      ]
    : []
  const row = (
    text: string,
    to: Quantity,
    fill: 'hatched' | 'open',
    plusMinus?: number,
    from = 0,
  ) => ({
    pieces: [{ from, to: to.si, fill }],
    plusMinus,
    text,
  })
  if (kind === 'correction' && massToAdd) {
    return {
      name: 'Missing',
      rows: [row(say(massToAdd), massToAdd, 'hatched', widthOf(massToAdd))],
      zones,
      lines,
    }
  }
  if (kind === 'what-if' && whatIfFrom && whatIfTo) {
    const text = `${say(whatIfFrom.within(undefined))} to ${say(whatIfTo.within(undefined))}`
    return {
      name: 'What-if: may be missing',
      rows: [row(text, whatIfTo, 'open', widthOf(whatIfTo), whatIfFrom.si)],
      zones,
      lines,
    }
  }
  if (!bound) return undefined
  return {
    name: 'At most gone',
    rows: [row(`at most ${say(bound.most)}`, bound.most, 'open')],
    zones,
    lines,
  }
}

/** What leaves the cylinder: into the machine, and into the service hose. */
function onScale({ massToAdd, setOnScale, holdUp }: Result, say: Say): Bars | undefined {
  if (!setOnScale || !massToAdd || !holdUp) return undefined
  return {
    name: 'On the scale',
    rows: [
      {
        pieces: [
          { from: 0, to: massToAdd.si, fill: 'hatched' },
          { from: massToAdd.si, to: mass(massToAdd.si + holdUp.si).si, fill: 'hatched-cool' },
        ],
        plusMinus: widthOf(setOnScale),
        text: say(setOnScale.in(undefined)),
      },
    ],
    zones: [],
    lines: [],
  }
}

function keyOf(panels: readonly Bars[], { kind, recovered }: Result): BarPicture['key'] {
  const fills = new Set(
    panels.flatMap(({ rows }) => rows.flatMap(({ pieces }) => pieces.map(({ fill }) => fill))),
  )
  const has = (test: (bars: Bars) => boolean) => panels.some(test)
  const full = kind === 'full-charge'
  return [
    ...(fills.has('plain')
      ? [
          {
            fill: 'plain' as const,
            text: full && recovered ? 'as much as was recovered' : 'still in the machine',
          },
        ]
      : []),
    ...(fills.has('hatched')
      ? [
          {
            fill: 'hatched' as const,
            text: full
              ? recovered
                ? 'beyond what was recovered'
                : 'to weigh in'
              : 'missing, to weigh in',
          },
        ]
      : []),
    ...(fills.has('open')
      ? [
          {
            fill: 'open' as const,
            text: kind === 'what-if' ? 'what-if, no measurement' : 'a bound, and no loss',
          },
        ]
      : []),
    ...(fills.has('hatched-cool')
      ? [{ fill: 'hatched-cool' as const, text: 'stays in the service hose' }]
      : []),
    ...(has(({ rows }) => rows.some(({ plusMinus = 0 }) => plusMinus > 0))
      ? [{ fill: 'spread' as const, text: '±' }]
      : []),
    ...(has(({ zones }) => zones.length > 0)
      ? [{ fill: 'zone' as const, text: 'inside the tolerance of the charge' }]
      : []),
  ]
}
