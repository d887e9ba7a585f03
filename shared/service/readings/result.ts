import * as z from 'zod'
import { PATTERN_IDS, type Pattern } from '../../diagnosis/patterns.ts'
import { type Budget, quantityOut } from '../../quantity/index.ts'
import type { Figures, Side } from './figures.ts'
import { type Finding, findingOut } from './findings.ts'
import type { Measured } from './measured.ts'
import { type Rest, restResult } from './rest.ts'
import { type Verdict, verdictOut, verdictResult } from './verdict.ts'

const sideOut = {
  gaugePressure: quantityOut.describe('As a gauge shows it here'),
  absolutePressure: quantityOut.describe('With the barometer'),
  state: z
    .enum(['saturation', 'supercritical'])
    .describe('Whether it can boil and condense at this pressure'),
  bubbleTemperature: quantityOut.optional().describe('Where its liquid begins to boil'),
  dewTemperature: quantityOut.optional().describe('Where the last of its liquid is gone'),
}

const patternOut = z
  .strictObject({
    id: z.enum(PATTERN_IDS),
    signs: z.array(z.string()).describe('What it goes by'),
    causes: z.array(z.string()).describe('Causes that fit, the likeliest first'),
    next: z.array(z.string()).describe('What to do, the first thing first'),
  })
  .meta({ id: 'ReadingPattern', description: 'Causes that several readings together fit.' })

const restOut = z
  .strictObject({
    state: z
      .enum(['below', 'between', 'at', 'above', 'liquid-full', 'cannot-tell'])
      .describe('How the pressure at rest stands to saturation'),
    temperature: quantityOut.describe('Of the air, and of a machine that has stood in it'),
    bubblePressure: quantityOut.optional().describe('Saturation there, bubble line'),
    dewPressure: quantityOut.optional().describe('Saturation there, dew line'),
    off: quantityOut.optional().describe('Measured less saturation'),
    from: z.enum(['bubble', 'dew', 'contents']).describe('Which line that is counted from'),
  })
  .describe('Both gauges read alike: against saturation at the temperature of the air')

export const readingsOut = z.strictObject({
  refrigerant: z.string(),
  superheat: quantityOut.optional().describe('Suction-line temperature less dew temperature'),
  subcooling: quantityOut.optional().describe('Bubble temperature less liquid-line temperature'),
  condensingOverAmbient: quantityOut
    .optional()
    .describe('Condensing temperature less the air entering the condenser'),
  dischargeSuperheat: quantityOut
    .optional()
    .describe('Discharge-line temperature less dew temperature'),
  compressionRatio: z
    .strictObject({ value: z.number(), plusMinus: z.number().nonnegative().optional() })
    .optional()
    .describe('High over low side, both absolute'),
  rest: restOut.optional(),
  verdicts: z.array(verdictOut).describe('What is judged, the charge first'),
  patterns: z.array(patternOut).describe('Causes that the readings together fit'),
  findings: z.array(findingOut).describe('What else they show, the most urgent first'),
  lowSide: z.strictObject(sideOut).optional().describe('The suction side'),
  highSide: z
    .strictObject({
      ...sideOut,
      readAt: z.enum(['liquid-line', 'discharge-line']).describe('Where its pressure was read'),
      condensingTemperature: quantityOut
        .optional()
        .describe('Saturation temperature; for a blend the mean of bubble and dew'),
    })
    .optional()
    .describe('The high side'),
  statements: z.array(z.string()).describe('What holds for every set of readings'),
})

/** What the result is made of. */
interface Parts {
  readonly verdicts: readonly Verdict[]
  readonly patterns: readonly Pattern[]
  readonly findings: readonly Finding[]
  readonly rest: Rest | undefined
  readonly statements: readonly string[]
}

/** The result, from figures in SI to quantities. At rest nothing evaporates or condenses. */
export function readingsResult(m: Measured, f: Figures, parts: Parts) {
  const { verdicts, patterns, findings, rest, statements } = parts
  return {
    refrigerant: m.refrigerant.info.id,
    ...(rest ? {} : runningResult(f)),
    rest: rest && restResult(rest, m),
    verdicts: verdicts.map(verdictResult),
    patterns: patterns.map(({ id, signs, causes, next }) => ({ id, signs, causes, next })),
    findings: findings.map(({ id, level, message, causes, settle }) => ({
      id,
      level,
      message,
      causes,
      settle,
    })),
    lowSide: f.low && sideResult(f.low, m),
    highSide: f.high && {
      ...sideResult(f.high, m),
      readAt: m.highFrom,
      condensingTemperature: rest ? undefined : f.condensing?.shown,
    },
    statements,
  }
}

const runningResult = (f: Figures) => ({
  superheat: f.superheat?.shown,
  subcooling: f.subcooling?.shown,
  condensingOverAmbient: f.condensingOverAmbient?.shown,
  dischargeSuperheat: f.dischargeSuperheat?.shown,
  compressionRatio: f.ratio && ratioResult(f.ratio),
})

function sideResult(side: Side, m: Measured) {
  return {
    gaugePressure:
      side.reading.kind === 'gaugePressure'
        ? side.reading.in(undefined)
        : m.place.gauge(side.reading.si, side.reading.plusMinus),
    absolutePressure: side.absolute,
    state: side.state,
    bubbleTemperature: side.bubble?.shown,
    dewTemperature: side.dew?.shown,
  }
}

/** Two decimals: a compression ratio is never known better. */
export function ratioResult({ si, plusMinus }: Budget) {
  const value = Number(si.toFixed(2))
  if (plusMinus === undefined) return { value }
  return { value, plusMinus: Math.max(0.01, Number(plusMinus.toFixed(2))) }
}
