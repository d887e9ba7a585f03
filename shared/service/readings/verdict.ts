import * as z from 'zod'
import type { Assumption, Warning } from '../../operation.ts'
import { REFRIGERANT_DATA } from '../../physics/saturating.ts'
import {
  type Budget,
  compareWithBand,
  quantityOut,
  say,
  settling,
  temperatureDifference,
  widthOf,
} from '../../quantity/index.ts'
import { fillIn } from '../../sentence.ts'
import type { Source } from '../../sources.ts'
import type { Difference } from './shown.ts'
import { TEXTS } from './texts.ts'

const OUTCOMES = ['inside', 'below', 'above', 'cannot-tell', 'no-valid-test', 'not-judged'] as const
export type Outcome = (typeof OUTCOMES)[number]

export const METHODS = [
  'target-superheat-table',
  'target-superheat-formula',
  'target-superheat-of-maker',
  'target-subcooling-of-maker',
  'range-of-maker',
  'vehicle-subcooling-band',
  'flooded-evaporator-outlet',
  'metering-superheat-range',
  'none',
] as const
type Method = (typeof METHODS)[number]

export const verdictOut = z
  .strictObject({
    about: z.enum(['charge', 'metering-device']).describe('What is judged'),
    figure: z.enum(['superheat', 'subcooling', 'none']).describe('By which figure'),
    method: z.enum(METHODS).describe('Against what'),
    measured: quantityOut.optional().describe('The figure'),
    target: quantityOut.optional().describe('Target that the band lies around'),
    low: quantityOut.optional().describe('Lower end of the band'),
    high: quantityOut.optional().describe('Upper end of the band'),
    outcome: z.enum(OUTCOMES).describe('Where the figure stands, its ± counted'),
    meaning: z.string().describe('What that says'),
    settle: z.string().optional().describe('Which instrument or reading would settle it'),
  })
  .meta({ id: 'ReadingVerdict', description: 'How a figure stands against its target or band.' })

/** Rows of sentences for the outcomes of a comparison, in `data/service/readings.json`. */
export type MeaningsId =
  | 'subcooling-vehicle'
  | 'subcooling-stationary'
  | 'superheat-orifice'
  | 'superheat-tube'
  | 'superheat-valve'

/** What would bring a verdict, for the list of things to do. */
export type Lacks = keyof typeof TEXTS.headlines.why

/** How a figure stands against its target or band; SI. */
export interface Verdict {
  readonly about: 'charge' | 'metering-device'
  readonly figure: 'superheat' | 'subcooling' | 'none'
  readonly method: Method
  readonly measured?: Difference | undefined
  readonly targetK?: Budget | undefined
  readonly lowK?: number | undefined
  readonly highK?: number | undefined
  readonly outcome: Outcome
  readonly meaning: string
  readonly settle?: string | undefined
  readonly sources: readonly Source[]
  /** Which sentences say it. */
  readonly meanings?: MeaningsId | undefined
  /** A sentence of its own instead, where two figures together say more. */
  readonly special?: 'restricted' | 'overfed' | 'from-discharge' | undefined
  /** The ingredient that leaves it open. */
  readonly weakest?: string | undefined
  readonly lacks?: Lacks | undefined
}

/** Verdicts with what was assumed and is to be known about them. */
export interface Judgement {
  readonly verdicts: readonly Verdict[]
  readonly assumptions: readonly Assumption[]
  readonly warnings: readonly Warning[]
}

interface Comparison {
  readonly about: Verdict['about']
  readonly figure: 'superheat' | 'subcooling'
  readonly method: Method
  readonly measured: Difference
  /** Designation, for the sentence about its data. */
  readonly refrigerant: string
  /** Undefined where there is no lower end. */
  readonly lowK?: number | undefined
  readonly highK: number
  readonly targetK?: Budget | undefined
  readonly meanings: MeaningsId
  readonly sources: readonly Source[]
}

/** Compares a figure with its band; a target's own uncertainty widens the figure's. */
export function compared(c: Comparison): Verdict {
  const { measured, targetK, lowK, highK } = c
  const width = Math.hypot(widthOf(measured), targetK ? widthOf(targetK) : 0)
  const outcome = compareWithBand({ si: measured.si, plusMinus: width }, lowK ?? -Infinity, highK)
  const { about, figure, method, sources, meanings } = c
  const frame = { about, figure, method, measured, targetK, lowK, highK, sources, meanings }
  if (outcome !== 'cannot-tell') {
    return { ...frame, outcome, meaning: TEXTS.meanings[meanings][outcome] }
  }
  return {
    ...frame,
    outcome,
    meaning: fillIn(TEXTS.meanings['cannot-tell'], {
      figure,
      measured: degrees(measured.si),
      width: degrees(width),
      band: lowK === undefined ? degrees(highK) : `${degrees(lowK)} to ${degrees(highK)}`,
    }),
    ...wouldSettle(c, width),
  }
}

/** Which reading to take better, and how well. */
function wouldSettle(
  { measured, lowK, highK, targetK, refrigerant }: Comparison,
  width: number,
): Pick<Verdict, 'settle' | 'weakest'> {
  const margin = Math.min(
    Math.abs(measured.si - (lowK ?? -Infinity)),
    Math.abs(measured.si - highK),
  )
  const parts = [...measured.parts, ...(targetK?.parts ?? [])].sort(
    (a, b) => b.plusMinus - a.plusMinus,
  )
  const found = settling(parts, margin)
  if (!found) return { settle: TEXTS.settle.none }
  const { largest, timesAsGood, othersPlusMinus } = found
  const way = largest.name === REFRIGERANT_DATA ? 'data' : timesAsGood === undefined ? 'all' : 'one'
  return {
    weakest: largest.name,
    settle: fillIn(TEXTS.settle[way], {
      name: largest.name,
      part: degrees(largest.plusMinus),
      width: degrees(width),
      times: String(Number((timesAsGood ?? 1).toPrecision(2))),
      margin: degrees(margin),
      rest: degrees(othersPlusMinus),
      refrigerant,
    }),
  }
}

/** A verdict that is not given, and what it would take. */
export const notJudged = (
  about: Verdict['about'],
  figure: Verdict['figure'],
  meaning: string,
  lacks: Lacks,
  more: Pick<Verdict, 'sources'> & Partial<Verdict> = { sources: [] },
): Verdict => ({
  about,
  figure,
  method: 'none',
  outcome: 'not-judged',
  meaning,
  lacks,
  ...more,
})

/** What is shown of a verdict. */
export function verdictResult(verdict: Verdict) {
  const { about, figure, method, outcome, meaning, measured, targetK, lowK, highK, settle } =
    verdict
  return {
    about,
    figure,
    method,
    outcome,
    meaning,
    ...(measured ? { measured: measured.shown } : {}),
    ...(targetK ? { target: shown(targetK) } : {}),
    ...(lowK === undefined ? {} : { low: temperatureDifference(lowK) }),
    ...(highK === undefined ? {} : { high: temperatureDifference(highK) }),
    ...(settle === undefined ? {} : { settle }),
  }
}

const shown = ({ si, plusMinus }: Budget) => temperatureDifference(si, plusMinus)
const degrees = (kelvin: number) => say(temperatureDifference(kelvin))
