import * as z from 'zod'
import type { CautionId } from '../../cautions.ts'
import { CalcError, refusal, under } from '../../errors.ts'
import type { Place } from '../../instrument/index.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import {
  gaugePressure,
  type PressureReading,
  pressureDifference,
  type Quantity,
  quantityOut,
  say,
  toAbsolute,
  toGauge,
  widthOf,
} from '../../quantity/index.ts'
import { fillIn } from '../../sentence.ts'
import { leakFacts } from './facts.ts'
import type { LeakTestInput, TestGas } from './fields.ts'

export const pressureOut = z
  .strictObject({
    gas: z.string().describe('Gas of the test'),
    weakestPart: z.string().optional().describe('Part with the lowest rating'),
    weakestRating: quantityOut
      .optional()
      .describe('Gauge pressure that the weakest part is rated for'),
    highest: quantityOut.optional().describe('Highest pressure of this test'),
    margin: quantityOut.optional().describe('Weakest rating less the highest pressure of the test'),
  })
  .describe('Gas and test pressure')

export type PressureResult = Computed<z.output<typeof pressureOut>>

const DANGERS: readonly CautionId[] = ['pressure', 'nitrogen-regulator']

/**
 * Holds the test pressure against the weakest rated part.
 *
 * @throws {CalcError} a stop for oxygen, air and hydrogen as test gas, for a planned pressure without a
 *   rating, and above the weakest rating.
 */
export function pressurePart(
  input: LeakTestInput,
  place: () => Place,
  notes: Notes,
): PressureResult {
  const gas = input.testGas ?? 'nitrogen'
  refuseGas(gas)
  if (gas === 'hydrogen-mix') notes.cautions.push('hydrogen-mix-only')
  const weakest = weakestOf(ratingsOf(input, place))
  const pressures = (['testPressure', 'startPressure'] as const).flatMap((path) => {
    const reading = input[path]
    return reading ? [{ path, gauge: gaugeOf(reading, place, path) }] : []
  })
  const pressurised = pressures.filter(({ gauge }) => gauge.si > 0)
  if (!weakest) {
    const planned = pressurised.find(({ path }) => path === 'testPressure')
    if (planned) throw withoutRating(planned.gauge)
    if (pressurised.length > 0) {
      notes.warnings.push({ code: 'no-rating', message: leakFacts.told.warnings['no-rating'] })
    }
    return { gas }
  }
  if (weakest.gauge.si <= 0) {
    throw new CalcError('bad-input', `No part is rated for ${say(weakest.gauge)}.`, {
      path: weakest.path,
      hint: 'Read the rating on the part, such as 200 psig.',
    })
  }
  for (const { path, gauge } of pressurised) refuseAbove(path, gauge, weakest)
  const highest = pressurised.reduce<Quantity<'gaugePressure'> | undefined>(
    (kept, { gauge }) => (kept && kept.si >= gauge.si ? kept : gauge),
    undefined,
  )
  return {
    gas,
    weakestPart: weakest.part,
    weakestRating: weakest.gauge,
    ...(highest ? { highest, margin: marginOf(weakest.gauge, highest) } : {}),
  }
}

/** In the unit of the rating, however small it is. */
const marginOf = (rating: Quantity<'gaugePressure'>, highest: Quantity<'gaugePressure'>) =>
  pressureDifference(rating.si - highest.si, highest.plusMinus).sized(rating.si)

interface Rated {
  readonly part: string
  readonly path: readonly (string | number)[]
  readonly gauge: Quantity<'gaugePressure'>
}

const weakestOf = (rated: readonly Rated[]) =>
  rated.reduce<Rated | undefined>(
    (kept, next) => (kept && kept.gauge.si <= next.gauge.si ? kept : next),
    undefined,
  )

function ratingsOf(input: LeakTestInput, place: () => Place): readonly Rated[] {
  const sides = [
    ['low side', input.lowSideRating, 'lowSideRating'],
    ['high side', input.highSideRating, 'highSideRating'],
  ] as const
  const named = (input.ratings ?? []).map(({ part, pressure }, index) => {
    const path = ['ratings', index, 'pressure'] as const
    return { part, path, gauge: gaugeOf(pressure, place, ...path) }
  })
  return [
    ...sides.flatMap(([part, reading, path]) =>
      reading ? [{ part, path: [path], gauge: gaugeOf(reading, place, path) }] : [],
    ),
    ...named,
  ]
}

/** A gauge pressure above the air stands as it is; any other needs the place. */
function gaugeOf(
  reading: PressureReading,
  place: () => Place,
  ...path: readonly (string | number)[]
): Quantity<'gaugePressure'> {
  if (reading.kind === 'gaugePressure' && reading.si >= 0)
    return gaugePressure(reading.si, reading.plusMinus)
  const { barometerPa } = place()
  const absolute = under(path, () => toAbsolute(reading, barometerPa))
  return reading.kind === 'gaugePressure'
    ? toGauge(absolute.si, barometerPa, reading.plusMinus)
    : place().gauge(absolute.si, reading.plusMinus)
}

const REFUSALS = leakFacts.told.refusals

const FORBIDDEN: Partial<Record<TestGas, CautionId>> = {
  oxygen: 'no-oxygen',
  'compressed-air': 'no-air',
  hydrogen: 'hydrogen-mix-only',
}

function refuseGas(gas: TestGas): void {
  const caution = FORBIDDEN[gas]
  if (caution === undefined) return
  const { message, hint } = REFUSALS[gas as keyof typeof REFUSALS]
  throw refusal(message, { path: ['testGas'], hint, cautions: [caution] })
}

const withoutRating = (gauge: Quantity<'gaugePressure'>) =>
  refusal(fillIn(REFUSALS['no-rating'].message, { planned: say(gauge) }), {
    path: ['lowSideRating'],
    hint: REFUSALS['no-rating'].hint,
    cautions: DANGERS,
  })

function refuseAbove(path: string, gauge: Quantity<'gaugePressure'>, weakest: Rated): void {
  if (gauge.si + widthOf(gauge) <= weakest.gauge.si) return
  const uncertain = gauge.si <= weakest.gauge.si
  throw refusal(
    uncertain
      ? `${say(gauge)} may lie above the ${say(weakest.gauge)} that the ${weakest.part} is rated for: the ± of the gauge reaches over it.`
      : `${say(gauge)} is above the ${say(weakest.gauge)} that the ${weakest.part} is rated for.`,
    {
      path: [path],
      hint: `Test below ${say(weakest.gauge)}, or close off the weak part and test it by itself.`,
      cautions: DANGERS,
    },
  )
}
