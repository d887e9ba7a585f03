import * as z from 'zod'
import data from '../../../data/service/recovery.json' with { type: 'json' }
import { CalcError } from '../../errors.ts'
import { reader } from '../../instrument/index.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import { mass, type Quantity, quantityOut, say } from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { fillIn } from '../../sentence.ts'
import { sourceTable } from '../../source-table.ts'
import { propertySources } from '../property-sources.ts'
import { type FillLimit, fillLimits, specificGravity } from './cylinder.ts'
import { identity, refuseFullEmpty } from './cylinder-contents.ts'
import type { RecoveryInput } from './fields.ts'
import { requalification } from './requalification.ts'
import { checkServicePressure } from './service-pressure.ts'
import { fullAt, weigh } from './weights.ts'

const sourceOf = sourceTable(data.sources)

export const cylinderOut = z.strictObject({
  verdict: z.enum(['may-be-filled', 'do-not-fill', 'cannot-tell']),
  reasons: z.array(z.string()).describe('Why it must not be filled, or what is not known'),
  limits: z
    .array(
      z.strictObject({
        rule: z.enum([
          'eighty-percent',
          'filling-density',
          'not-full-at-131f',
          'gross-rating',
          'sixty-percent-of-gross',
        ]),
        contents: quantityOut,
        source: z.string(),
      }),
    )
    .describe('What each rule lets the cylinder hold, smallest first; the smallest holds'),
  maximumContents: quantityOut,
  maximumGross: quantityOut.optional().describe('Tare plus the highest contents'),
  contentsNow: quantityOut.optional(),
  room: quantityOut.optional().describe('What may still be added'),
  stopAt: quantityOut
    .optional()
    .describe(
      'Scale reading at which to stop: the highest gross less the uncertainty of the weights',
    ),
  liquidFullAtMaximum: quantityOut
    .optional()
    .describe('Temperature at which the highest contents would fill the cylinder with liquid'),
  liquidFullNow: quantityOut.optional().describe('The same for what is in it now'),
  requalification: z
    .strictObject({
      status: z.enum(['in-date', 'due-this-month', 'overdue']),
      due: z.string().describe('Month, YYYY-MM'),
    })
    .optional(),
})

export type CylinderResult = Computed<z.output<typeof cylinderOut>>

type CylinderInput = RecoveryInput & { readonly waterCapacity: Quantity<'mass'> }

/**
 * What a recovery cylinder may hold, what still fits, and what the scale must read.
 *
 * @throws {CalcError} `refused` for another refrigerant inside and for an overfull cylinder.
 */
export function cylinderPart(r: Refrigerant, input: CylinderInput, notes: Notes): CylinderResult {
  const doubts = identity(r, input.cylinderHolds)
  const { waterCapacity, tare, grossRating } = input
  if (!(waterCapacity.si > (waterCapacity.plusMinus ?? 0))) {
    throw new CalcError('bad-input', 'A water capacity of nothing is no cylinder.', {
      hint: 'Read WC on the collar, such as 47.7 lb.',
      path: ['waterCapacity'],
    })
  }
  if (grossRating && tare && grossRating.si <= tare.si) {
    throw new CalcError(
      'bad-input',
      `The gross weight rating of ${say(grossRating)} is not above the tare of ${say(tare)}.`,
      { hint: 'Read both on the collar again.', path: ['grossRating'] },
    )
  }
  const limits = fillLimits(r, {
    waterCapacityKg: waterCapacity.si - (waterCapacity.plusMinus ?? 0),
    tareKg: tare?.si,
    grossRatingKg: grossRating?.si,
  })
  const smallest = limits[0] as FillLimit
  doubts.push(...checkServicePressure(r, input.servicePressure, notes))
  explainLimits(r, waterCapacity, limits, smallest, grossRating, notes)
  const weights = weigh(
    r,
    { ...input, grossNow: reader(input, notes)(input.grossNow, 'scale', 'grossNow') },
    smallest.massKg,
    notes,
  )
  refuseFullEmpty(input.cylinderHolds, weights.result.contentsNow)
  doubts.push(...weights.doubts)
  const dates = dateCheck(input, doubts, notes)
  const stop = [...dates.stop, ...weights.stop]
  return {
    verdict: stop.length > 0 ? 'do-not-fill' : doubts.length > 0 ? 'cannot-tell' : 'may-be-filled',
    reasons: [...stop, ...doubts],
    limits: limits.map((entry) => ({
      rule: entry.rule,
      contents: mass(entry.massKg),
      source: entry.source.id,
    })),
    maximumContents: mass(smallest.massKg),
    liquidFullAtMaximum: fullAt(r, smallest.massKg, waterCapacity.si),
    requalification: dates.result,
    ...weights.result,
  }
}

function explainLimits(
  r: Refrigerant,
  waterCapacity: Quantity<'mass'>,
  limits: readonly FillLimit[],
  smallest: FillLimit,
  grossRating: Quantity<'mass'> | undefined,
  notes: Notes,
): void {
  const eighty = limits.find((entry) => entry.rule === 'eighty-percent')
  notes.steps.push({
    what: 'Most the cylinder may hold by the 80 % rule',
    formula: '0.80 × water capacity × specific gravity of the liquid at 77 °F',
    values: {
      waterCapacity,
      specificGravity: Number(specificGravity(r).toFixed(4)),
    },
    gives: mass(eighty?.massKg ?? smallest.massKg),
  })
  notes.sources.push(
    ...limits.map((entry) => entry.source),
    sourceOf('filling-density-definition'),
    ...propertySources(r),
  )
  const sixty = limits.find((entry) => entry.rule === 'sixty-percent-of-gross')
  if (sixty && grossRating) {
    notes.assumptions.push({
      field: 'grossRating',
      taken: '60 % of the gross weight rating as a limit on the contents',
      because:
        'the rule speaks of the filling level by weight; where your inspector reads it as cylinder and contents together, it is stricter',
    })
  } else if (r.info.id === data.grossRatingFraction.refrigerant) {
    notes.warnings.push({
      code: 'gross-rating-missing',
      message: data.warnings['gross-rating-missing'],
    })
  }
}

function dateCheck(input: CylinderInput, doubts: string[], notes: Notes) {
  const { requalified, date, requalificationYears } = input
  if (requalified === undefined || date === undefined) {
    if (requalified !== undefined || date !== undefined) {
      throw new CalcError(
        'missing-input',
        requalified === undefined
          ? 'The stamped requalification date is missing.'
          : 'The day of the work is missing.',
        {
          hint: 'Give both, such as 2023-04 from the collar and 2026-11-25 for the day.',
          path: [requalified === undefined ? 'requalified' : 'date'],
        },
      )
    }
    doubts.push(data.reasons['date-not-given'])
    return { stop: [] as string[], result: undefined }
  }
  const result = requalification(requalified, date, requalificationYears)
  notes.sources.push(
    sourceOf('cfr-180-209'),
    ...(requalificationYears === data.requalificationYears.value
      ? [sourceOf('five-year-stamp')]
      : []),
  )
  if (result.status === 'in-date') return { stop: [] as string[], result }
  const late = result.status === 'overdue'
  const message = fillIn(data.reasons[late ? 'overdue' : 'due'], { due: result.due })
  notes.warnings.push({ code: late ? 'requalification-overdue' : 'requalification-due', message })
  return { stop: late ? [message] : [], result }
}
