import * as z from 'zod'
import {
  type Budget,
  compareWithBand,
  quantityOut,
  say,
  temperatureDifference,
  widthOf,
} from '../../quantity/index.ts'
import type { Source } from '../../sources.ts'

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
    about: z.enum(['charge', 'metering-device']),
    figure: z.enum(['superheat', 'subcooling', 'none']),
    method: z.enum(METHODS),
    measured: quantityOut.optional(),
    target: quantityOut.optional(),
    low: quantityOut.optional(),
    high: quantityOut.optional(),
    outcome: z.enum(OUTCOMES),
    meaning: z.string(),
    settle: z.string().optional().describe('Which instrument or reading would settle it'),
  })
  .meta({ id: 'ReadingVerdict', description: 'How a figure stands against its target or band.' })

/** How a figure stands against its target or band; SI. */
export interface Verdict {
  readonly about: 'charge' | 'metering-device'
  readonly figure: 'superheat' | 'subcooling' | 'none'
  readonly method: Method
  readonly measured?: Budget | undefined
  readonly targetK?: Budget | undefined
  readonly lowK?: number | undefined
  readonly highK?: number | undefined
  readonly outcome: Outcome
  readonly meaning: string
  readonly settle?: string | undefined
  readonly sources: readonly Source[]
}

/** What each outcome of a comparison means, in words. */
export type Meanings = Readonly<Record<'inside' | 'below' | 'above', string>>

interface Comparison {
  readonly about: Verdict['about']
  readonly figure: 'superheat' | 'subcooling'
  readonly method: Method
  readonly measured: Budget
  readonly lowK: number
  readonly highK: number
  readonly targetK?: Budget | undefined
  readonly meanings: Meanings
  readonly sources: readonly Source[]
}

/** Compares a figure with its band; a target's own uncertainty widens the figure's. */
export function compared(c: Comparison): Verdict {
  const width = Math.hypot(widthOf(c.measured), c.targetK ? widthOf(c.targetK) : 0)
  const outcome = compareWithBand({ si: c.measured.si, plusMinus: width }, c.lowK, c.highK)
  const frame = {
    about: c.about,
    figure: c.figure,
    method: c.method,
    measured: c.measured,
    targetK: c.targetK,
    lowK: c.lowK,
    highK: c.highK,
    sources: c.sources,
  }
  if (outcome !== 'cannot-tell') return { ...frame, outcome, meaning: c.meanings[outcome] }
  return {
    ...frame,
    outcome,
    meaning: `The ${c.figure} of ${degrees(c.measured.si)} stands against its band to ±${degrees(width)}, and that reaches over an edge of ${degrees(c.lowK)} to ${degrees(c.highK)}: these readings cannot tell.`,
    settle: wouldSettle(c, width),
  }
}

/** Which reading to take better, and how well. */
function wouldSettle({ measured, lowK, highK, targetK }: Comparison, width: number): string {
  const margin = Math.min(Math.abs(measured.si - lowK), Math.abs(measured.si - highK))
  const parts = [...measured.parts, ...(targetK?.parts ?? [])].sort(
    (a, b) => b.plusMinus - a.plusMinus,
  )
  const [largest, ...others] = parts
  if (!largest) return 'A second reading.'
  const rest = Math.hypot(...others.map((part) => part.plusMinus))
  const share = `The ${largest.name} brings ±${degrees(largest.plusMinus)} of the ±${degrees(width)}`
  if (rest < margin) {
    const needed = Math.sqrt(margin ** 2 - rest ** 2)
    const sharper = (largest.plusMinus / needed).toPrecision(2)
    return `${share}: an instrument ${Number(sharper)} times as good there would settle it.`
  }
  return `${share}; one better instrument will not settle it, since the figure lies ${degrees(margin)} from the edge and the other readings bring ±${degrees(rest)}. Take every reading better, or weigh the charge.`
}

/** A verdict that is not given, and what it would take. */
export const notJudged = (
  about: Verdict['about'],
  figure: Verdict['figure'],
  meaning: string,
  outcome: 'not-judged' | 'no-valid-test' = 'not-judged',
  sources: readonly Source[] = [],
): Verdict => ({ about, figure, method: 'none', outcome, meaning, sources })

/** What is shown of a verdict. */
export function verdictResult(verdict: Verdict) {
  const { sources: _, measured, targetK, lowK, highK, settle, ...rest } = verdict
  return {
    ...rest,
    ...(measured ? { measured: shown(measured) } : {}),
    ...(targetK ? { target: shown(targetK) } : {}),
    ...(lowK === undefined ? {} : { low: temperatureDifference(lowK) }),
    ...(highK === undefined ? {} : { high: temperatureDifference(highK) }),
    ...(settle === undefined ? {} : { settle }),
  }
}

const shown = ({ si, plusMinus }: Budget) => temperatureDifference(si, plusMinus)
const degrees = (kelvin: number) => say(temperatureDifference(kelvin))
