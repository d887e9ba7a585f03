import * as z from 'zod'
import { CalcError } from '../../errors.ts'
import type { Place } from '../../instrument/index.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import {
  budget,
  type PressureReading,
  pressureDifference,
  type Quantity,
  quantity,
  quantityOut,
  widthOf,
} from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { HOLD_LIMITS, holdLimit, judgeLimit } from '../evacuation/hold-limit.ts'
import { because } from '../evacuation/sentences.ts'
import { leakFacts, leakSource } from './facts.ts'
import type { LeakTestInput } from './fields.ts'
import { asksForStanding, readingsOf, type Standing } from './standing-readings.ts'
import { isCoarse, STANDING_VERDICTS, type StandingVerdict, sentence } from './standing-sentence.ts'
import { sizePart } from './standing-size.ts'

export const standingOut = z
  .strictObject({
    kind: z.enum(['pressure', 'vacuum']),
    verdict: z.enum(STANDING_VERDICTS),
    sentence: z.string().describe('The verdict with its numbers'),
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
        id: z.string().describe('Name of the rule'),
        rule: z.string().describe('What it asks'),
        verdict: z
          .enum(['kept', 'broken', 'cannot-tell', 'too-short-to-tell'])
          .describe('Whether the readings keep it'),
      })
      .optional(),
  })
  .describe('Standing pressure or vacuum, corrected for temperature')

export type StandingResult = Computed<z.output<typeof standingOut>>

/** Below this above the air a standing test shows no more than its gauge wanders. */
const LEAST = quantity('pressureDifference', 5, 'psi')

/** Reads a standing test by the absolute gas law; undefined when none of its readings is given. */
export function standingPart(
  input: LeakTestInput,
  r: Refrigerant | undefined,
  place: () => Place,
  notes: Notes,
): StandingResult | undefined {
  if (!asksForStanding(input)) return undefined
  const standing = readingsOf(input, place, notes)
  const { kind, start, end, fromK, toK, startPa, endPa } = standing
  refuseAtAir(standing, place().barometerPa)
  const expected = expectedChange(standing)
  const left = unexplainedChange(standing)
  const bothOnGauge = start.kind === 'gaugePressure' && end.kind === 'gaugePressure'
  const moved = bothOnGauge ? end.si - start.si : endPa.si - startPa.si
  const shown = readable(kind, isCoarse(moved, left.plusMinus))
  const change = shown(moved, Math.hypot(widthOf(start), widthOf(end)))
  const byTemperature = shown(expected.si, expected.plusMinus)
  const unexplained = shown(left.si, left.plusMinus)
  notes.sources.push(leakSource('achr-gas-law'))
  notes.steps.push({
    what: 'Change by temperature alone',
    formula:
      'start pressure × (end temperature ÷ start temperature − 1), pressures and temperatures absolute',
    values: { start: startPa, startTemperature: fromK, endTemperature: toK },
    gives: byTemperature,
  })
  notes.steps.push({
    what: 'Change that temperature does not explain',
    formula: 'end pressure − start pressure × end temperature ÷ start temperature',
    values: {
      start: startPa,
      end: endPa,
      ...Object.fromEntries(
        left.parts.map(({ name, plusMinus }) => [`± of ${name}`, pressureDifference(plusMinus)]),
      ),
    },
    gives: unexplained,
  })
  const verdict = verdictOf(kind, unexplained)
  if (verdict === 'no-valid-test') {
    const code = kind === 'vacuum' ? 'vacuum-falls' : 'readings-disagree'
    const message =
      kind === 'vacuum' ? because('falls') : leakFacts.told.warnings['readings-disagree']
    notes.warnings.push({ code, message })
  }
  return {
    kind,
    verdict,
    sentence: sentence(kind, verdict, change, byTemperature, unexplained),
    measuredChange: change,
    byTemperature,
    unexplained,
    ...sizePart(input, standing, unexplained, verdict, r, place().barometerPa, notes),
    limit: limitPart(input, standing, notes),
  }
}

/** Nothing drives gas through a leak where inside and outside are alike. */
function refuseAtAir({ kind, startPa }: Standing, barometerPa: number): void {
  if (kind === 'vacuum' || startPa.si - Math.max(widthOf(startPa), LEAST.si) > barometerPa) return
  throw new CalcError(
    'bad-input',
    'The system stood at about the pressure of the air: nothing drove gas through a leak.',
    {
      path: ['startPressure'],
      hint: 'Test at the pressure of the procedure, below the weakest rating, or under vacuum.',
    },
  )
}

const absolute = ({ kind }: PressureReading, si: number, barometerPa: number) =>
  kind === 'gaugePressure' ? si + barometerPa : si

const named = (name: string, { si, plusMinus }: Quantity) => ({ name, si, plusMinus })

/** What the gas law expects, with the barometer under a gauge reading as one of its ingredients. */
const expectedChange = ({ start, fromK, toK, barometer }: Standing) =>
  budget(
    [
      named('start pressure', start),
      named('start temperature', fromK),
      named('end temperature', toK),
      barometer,
    ],
    (p, from, to, air) => absolute(start, p, air) * (to / from - 1),
  )

/** What is left: both readings share the barometer, and what it changed between them is its own. */
const unexplainedChange = ({ start, end, fromK, toK, barometer, change }: Standing) =>
  budget(
    [
      named('start pressure', start),
      named('end pressure', end),
      named('start temperature', fromK),
      named('end temperature', toK),
      barometer,
      change,
    ],
    (p, q, from, to, air, changed) =>
      absolute(end, q, air + changed) - (absolute(start, p, air) * to) / from,
  )

/** Under pressure a small difference is still read in psi; a vacuum in the unit of its gauge. */
const readable =
  (kind: 'pressure' | 'vacuum', coarse: boolean) => (pa: number, plusMinus: number | undefined) => {
    const difference = pressureDifference(pa, plusMinus)
    if (kind === 'vacuum') return coarse ? difference.in('inHg') : difference.sized(1)
    return difference.sized(LEAST.si)
  }

/** What a pressure below and above that of the gas law says: the other way round no closed system goes. */
const BY_DIRECTION = {
  pressure: ['leak', 'no-valid-test'],
  vacuum: ['no-valid-test', 'rises'],
} as const

function verdictOf(
  kind: 'pressure' | 'vacuum',
  { si, plusMinus = 0 }: Quantity<'pressureDifference'>,
): StandingVerdict {
  const [lower, higher] = BY_DIRECTION[kind]
  if (si + plusMinus < 0) return lower
  return si - plusMinus > 0 ? higher : 'no-leak-shown'
}

function limitPart(
  { vacuumLimit, elapsed }: LeakTestInput,
  { kind, startPa: start, endPa: end, start: read, barometer }: Standing,
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
  const widthPa = Math.max(widthOf(start), widthOf(end))
  const air = read.kind === 'gaugePressure' ? widthOf(barometer) : 0
  const { verdict } = judgeLimit(limit, points, widthPa / 2, Math.hypot(widthPa, air))
  return { id: limit.id, rule: limit.rule, verdict }
}
