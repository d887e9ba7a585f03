import * as z from 'zod'
import { CalcError } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import { pressureDifference, propagate, type Quantity, quantityOut } from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { HOLD_LIMITS, holdLimit, judgeLimit } from '../evacuation/hold-limit.ts'
import { leakSource } from './facts.ts'
import { readingsOf, type Standing, type StandingInput } from './standing-readings.ts'
import { isCoarse, STANDING_VERDICTS, type StandingVerdict, sentence } from './standing-sentence.ts'
import { sizePart } from './standing-size.ts'

export const standingOut = z
  .strictObject({
    kind: z.enum(['pressure', 'vacuum']),
    verdict: z.enum(STANDING_VERDICTS),
    sentence: z.string(),
    measuredChange: quantityOut.describe('End less start, as read'),
    byTemperature: quantityOut.describe('Change that the gas law expects from the temperatures'),
    unexplained: quantityOut.describe('What is left: negative is lost gas'),
    leakRate: quantityOut.optional().describe('Flow of the leak with volume and time'),
    testGasFlow: quantityOut.optional().describe('The same as a volume at the pressure of the air'),
    refrigerantAtSameFlow: quantityOut
      .optional()
      .describe('Refrigerant that the same pV flow carries'),
    refrigerantAtRestFrom: quantityOut
      .optional()
      .describe('Refrigerant lost through the same hole at its rest pressure, low end'),
    refrigerantAtRestTo: quantityOut.optional().describe('The same, high end'),
    smallestLeak: quantityOut.optional().describe('Smallest leak that this test could have shown'),
    smallestAsRefrigerant: quantityOut
      .optional()
      .describe('The same as refrigerant at the same pV flow'),
    limit: z
      .strictObject({
        id: z.string(),
        rule: z.string(),
        verdict: z.enum(['kept', 'broken', 'cannot-tell', 'too-short-to-tell']),
      })
      .optional(),
  })
  .describe('Standing pressure or vacuum, corrected for temperature')

type StandingResult = Computed<z.output<typeof standingOut>>

/** Below 5 psi above the air a standing test shows no more than its gauge wanders. */
const LEAST_PA = 34_474

/** Reads a standing test by the absolute gas law; undefined when none of its readings is given. */
export function standingPart(
  input: StandingInput,
  r: Refrigerant | undefined,
  barometerPa: number,
  notes: Notes,
): StandingResult | undefined {
  const needed = ['startPressure', 'endPressure', 'startTemperature', 'endTemperature'] as const
  if (needed.every((name) => input[name] === undefined)) return undefined
  const standing = readingsOf(input, barometerPa, notes)
  const { start, end, fromK, toK } = standing
  const kind = start.si < barometerPa * 0.98 ? ('vacuum' as const) : ('pressure' as const)
  if (kind === 'pressure' && start.si - Math.max(start.plusMinus ?? 0, LEAST_PA) <= barometerPa) {
    throw new CalcError(
      'bad-input',
      'The system stood at about the pressure of the air: nothing drove gas through a leak.',
      {
        path: ['startPressure'],
        hint: 'Test at the pressure of the procedure, below the weakest rating, or under vacuum.',
      },
    )
  }
  const expected = propagate([start, fromK, toK], (p, from, to) => p * (to / from - 1))
  const left = propagate([start, end, fromK, toK], (p, q, from, to) => q - (p * to) / from)
  const moved = end.si - start.si
  const shown = readable(kind, isCoarse(moved, left.plusMinus))
  const change = shown(moved, Math.hypot(start.plusMinus ?? 0, end.plusMinus ?? 0))
  const byTemperature = shown(expected.si, expected.plusMinus)
  const unexplained = shown(left.si, left.plusMinus)
  notes.sources.push(leakSource('achr-gas-law'))
  notes.steps.push({
    what: 'Change by temperature alone',
    formula:
      'start pressure × (end temperature ÷ start temperature − 1), pressures and temperatures absolute',
    values: { start, startTemperature: fromK, endTemperature: toK },
    gives: byTemperature,
  })
  notes.steps.push({
    what: 'Change that temperature does not explain',
    formula: 'end pressure − start pressure × end temperature ÷ start temperature',
    values: { start, end },
    gives: unexplained,
  })
  const verdict = verdictOf(kind, unexplained)
  if (verdict === 'cannot-tell') {
    notes.warnings.push({
      code: 'readings-disagree',
      message:
        'The pressure is higher than the gas law allows: the temperatures were not those of the gas (sun, a warm engine), or the gauge moved. Let it settle and read again.',
    })
  }
  return {
    kind,
    verdict,
    sentence: sentence(kind, verdict, change, byTemperature, unexplained),
    measuredChange: change,
    byTemperature,
    unexplained,
    ...sizePart(input, standing, unexplained, verdict, r, barometerPa, notes),
    limit: limitPart(input, standing, kind, notes),
  }
}

/** Under pressure a small difference is still read in psi; a vacuum in the unit of its gauge. */
const readable =
  (kind: 'pressure' | 'vacuum', coarse: boolean) => (pa: number, plusMinus: number | undefined) => {
    const difference = pressureDifference(pa, plusMinus)
    if (kind === 'vacuum') return difference.in(coarse ? 'inHg' : 'micron')
    return Math.abs(pa) < 500 ? difference.in('psi') : difference
  }

function verdictOf(
  kind: 'pressure' | 'vacuum',
  { si, plusMinus = 0 }: Quantity<'pressureDifference'>,
): StandingVerdict {
  if (kind === 'vacuum') return si - plusMinus > 0 ? 'rises' : 'no-leak-shown'
  if (si + plusMinus < 0) return 'leak'
  return si - plusMinus > 0 ? 'cannot-tell' : 'no-leak-shown'
}

function limitPart(
  { vacuumLimit, elapsed }: StandingInput,
  { start, end }: Standing,
  kind: 'pressure' | 'vacuum',
  notes: Notes,
): StandingResult['limit'] {
  if (vacuumLimit === undefined) return undefined
  if (kind !== 'vacuum') {
    throw new CalcError(
      'bad-input',
      'The rule for a standing vacuum does not fit a test under pressure.',
      {
        path: ['vacuumLimit'],
        hint: 'Leave it out, or give the readings of the vacuum.',
      },
    )
  }
  const limit = holdLimit(vacuumLimit)
  if (!limit || !elapsed) {
    throw new CalcError(
      limit ? 'missing-input' : 'unknown-name',
      limit ? 'A rule for a standing vacuum needs the time.' : `There is no rule "${vacuumLimit}".`,
      {
        path: [limit ? 'elapsed' : 'vacuumLimit'],
        hint: limit
          ? 'Give the time between the two readings.'
          : `There are: ${HOLD_LIMITS.join(', ')}.`,
      },
    )
  }
  notes.sources.push(limit.source)
  const points = [
    { timeS: 0, pressurePa: start.si },
    { timeS: elapsed.si, pressurePa: end.si },
  ]
  const widthPa = Math.max(start.plusMinus ?? 0, end.plusMinus ?? 0)
  const { verdict } = judgeLimit(limit, points, widthPa / 2, widthPa)
  return { id: limit.id, rule: limit.rule, verdict }
}
