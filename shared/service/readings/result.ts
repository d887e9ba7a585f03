import * as z from 'zod'
import {
  absolutePressure,
  type Budget,
  quantityOut,
  temperature,
  temperatureDifference,
  toGauge,
} from '../../quantity/index.ts'
import type { Figures, Side } from './figures.ts'
import { type Finding, findingOut } from './findings.ts'
import type { Measured } from './measured.ts'
import { type Verdict, verdictOut, verdictResult } from './verdict.ts'

const sideOut = {
  gaugePressure: quantityOut,
  absolutePressure: quantityOut,
  state: z.enum(['saturation', 'supercritical']),
  bubbleTemperature: quantityOut.optional(),
  dewTemperature: quantityOut.optional(),
}

export const readingsOut = z.strictObject({
  refrigerant: z.string(),
  superheat: quantityOut.optional().describe('Suction-line temperature less dew temperature'),
  subcooling: quantityOut.optional().describe('Bubble temperature less liquid-line temperature'),
  condensingOverAmbient: quantityOut.optional(),
  dischargeSuperheat: quantityOut
    .optional()
    .describe('Discharge-line temperature less dew temperature'),
  compressionRatio: z
    .strictObject({ value: z.number(), plusMinus: z.number().nonnegative().optional() })
    .optional()
    .describe('High over low side, both absolute'),
  verdicts: z.array(verdictOut),
  findings: z.array(findingOut),
  lowSide: z.strictObject(sideOut).optional(),
  highSide: z
    .strictObject({
      ...sideOut,
      readAt: z.enum(['liquid-line', 'discharge-line']),
      condensingTemperature: quantityOut
        .optional()
        .describe('Saturation temperature; for a blend the mean of bubble and dew'),
    })
    .optional(),
  statements: z.array(z.string()).describe('What holds for every set of readings'),
})

/** The result, from figures in SI to quantities. */
export function readingsResult(
  m: Measured,
  f: Figures,
  verdicts: readonly Verdict[],
  findings: readonly Finding[],
  statements: readonly string[],
) {
  return {
    refrigerant: m.refrigerant.info.id,
    superheat: difference(f.superheat),
    subcooling: difference(f.subcooling),
    condensingOverAmbient: difference(f.condensingOverAmbient),
    dischargeSuperheat: difference(f.dischargeSuperheat),
    compressionRatio: f.ratio && ratioResult(f.ratio),
    verdicts: verdicts.map(verdictResult),
    findings: findings.map(({ sources: _, ...finding }) => finding),
    lowSide: f.low && sideResult(f.low, m),
    highSide: f.high && {
      ...sideResult(f.high, m),
      readAt: m.highFrom,
      condensingTemperature: degree(f.condensing),
    },
    statements,
  }
}

const difference = (figure: Budget | undefined) =>
  figure && temperatureDifference(figure.si, figure.plusMinus)

const degree = (figure: Budget | undefined) => figure && temperature(figure.si, figure.plusMinus)

function sideResult(side: Side, m: Measured) {
  return {
    gaugePressure: toGauge(side.absolute.si, m.place.barometerPa, side.reading.plusMinus),
    absolutePressure: absolutePressure(side.absolute.si, side.absolute.plusMinus),
    state: side.state,
    bubbleTemperature: degree(side.bubble),
    dewTemperature: degree(side.dew),
  }
}

/** Two decimals: a compression ratio is never known better. */
function ratioResult({ si, plusMinus }: Budget) {
  const value = Number(si.toFixed(2))
  if (plusMinus === undefined) return { value }
  return { value, plusMinus: Math.max(0.01, Number(plusMinus.toFixed(2))) }
}
