import * as z from 'zod'
import { CalcError, under } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import {
  absolutePressure,
  type PressureReading,
  pressureDifference,
  type Quantity,
  quantityOut,
  say,
  toAbsolute,
  toGauge,
} from '../../quantity/index.ts'
import { plausible } from '../plausible.ts'

export const TEST_GASES = [
  'nitrogen',
  'nitrogen-with-refrigerant-trace',
  'hydrogen-in-nitrogen',
  'helium',
  'oxygen',
  'compressed-air',
] as const
type TestGas = (typeof TEST_GASES)[number]

export const pressureOut = z
  .strictObject({
    gas: z.string(),
    weakestPart: z.string().optional(),
    weakestRating: quantityOut
      .optional()
      .describe('Gauge pressure that the weakest part is rated for'),
    highest: quantityOut.optional().describe('Highest pressure of this test'),
    margin: quantityOut.optional().describe('Weakest rating less the highest pressure of the test'),
  })
  .describe('Gas and test pressure')

type PressureResult = Computed<z.output<typeof pressureOut>>

interface PressureInput {
  readonly testGas: TestGas
  readonly testPressure?: PressureReading | undefined
  readonly startPressure?: PressureReading | undefined
  readonly lowSideRating?: PressureReading | undefined
  readonly highSideRating?: PressureReading | undefined
  readonly ratings?:
    | readonly { readonly part: string; readonly pressure: PressureReading }[]
    | undefined
}

/**
 * Holds the test pressure against the weakest rated part.
 *
 * @throws {CalcError} `refused` for oxygen and air as test gas, and above the weakest rating.
 */
export function pressurePart(
  input: PressureInput,
  barometerPa: number,
  notes: Notes,
): PressureResult {
  refuseGas(input.testGas)
  const rated = ratingsOf(input, barometerPa)
  const weakest = rated.reduce<Rated | undefined>(
    (kept, next) => (kept && kept.gauge.si <= next.gauge.si ? kept : next),
    undefined,
  )
  const pressures = (['testPressure', 'startPressure'] as const).flatMap((path) => {
    const reading = input[path]
    return reading ? [{ path, gauge: gaugeOf(reading, barometerPa, path) }] : []
  })
  const pressurised = pressures.filter(({ gauge }) => gauge.si > 0)
  if (pressurised.length > 0) notes.cautions.push('pressure', 'nitrogen-regulator', 'asphyxiation')
  if (!weakest) {
    if (pressurised.length > 0) {
      notes.warnings.push({
        code: 'no-rating',
        message:
          'No rating was given: read the pressure that the low side, the evaporator and the compressor shaft seal are rated for, and stay below the lowest.',
      })
    }
    return { gas: input.testGas }
  }
  if (weakest.gauge.si <= 0) {
    throw new CalcError('bad-input', `No part is rated for ${say(weakest.gauge)}.`, {
      path: [weakest.path],
      hint: 'Read the rating on the part, such as 200 psig.',
    })
  }
  for (const { path, gauge } of pressurised) refuseAbove(path, gauge, weakest)
  const highest = pressurised.reduce<Quantity<'gaugePressure'> | undefined>(
    (kept, { gauge }) => (kept && kept.si >= gauge.si ? kept : gauge),
    undefined,
  )
  return {
    gas: input.testGas,
    weakestPart: weakest.part,
    weakestRating: weakest.gauge,
    ...(highest ? { highest, margin: pressureDifference(weakest.gauge.si - highest.si) } : {}),
  }
}

interface Rated {
  readonly part: string
  readonly path: string
  readonly gauge: Quantity<'gaugePressure'>
}

function ratingsOf(input: PressureInput, barometerPa: number): readonly Rated[] {
  const sides = [
    ['low side', input.lowSideRating, 'lowSideRating'],
    ['high side', input.highSideRating, 'highSideRating'],
  ] as const
  return [
    ...sides.flatMap(([part, reading, path]) =>
      reading ? [{ part, path, gauge: gaugeOf(reading, barometerPa, path) }] : [],
    ),
    ...(input.ratings ?? []).map(({ part, pressure }, index) => ({
      part,
      path: 'ratings',
      gauge: gaugeOf(pressure, barometerPa, 'ratings', index, 'pressure'),
    })),
  ]
}

const gaugeOf = (
  reading: PressureReading,
  barometerPa: number,
  ...path: readonly (string | number)[]
) => {
  const absolute = under(path, () => toAbsolute(reading, barometerPa))
  return toGauge(absolute.si, barometerPa, absolute.plusMinus)
}

function refuseGas(gas: TestGas): void {
  if (gas === 'oxygen') {
    throw new CalcError('refused', 'Never pressurise with oxygen: with oil it can explode.', {
      path: ['testGas'],
      hint: 'Use dry nitrogen through a regulator and a relief valve.',
    })
  }
  if (gas === 'compressed-air') {
    throw new CalcError(
      'refused',
      'Never leak-test with compressed air: mixed with refrigerant under pressure it can burn, and it brings in water.',
      { path: ['testGas'], hint: 'Use dry nitrogen through a regulator and a relief valve.' },
    )
  }
}

function refuseAbove(path: string, gauge: Quantity<'gaugePressure'>, weakest: Rated): void {
  const highestPa = gauge.si + (gauge.plusMinus ?? 0)
  if (highestPa <= weakest.gauge.si) return
  const uncertain = gauge.si <= weakest.gauge.si
  throw new CalcError(
    'refused',
    uncertain
      ? `${say(gauge)} may lie above the ${say(weakest.gauge)} that the ${weakest.part} is rated for: the uncertainty of the gauge reaches over it.`
      : `${say(gauge)} is above the ${say(weakest.gauge)} that the ${weakest.part} is rated for.`,
    {
      path: [path],
      hint: `Test below ${say(weakest.gauge)}, or close off the weak part and test it by itself.`,
    },
  )
}

/** Above this, Pa, no nitrogen cylinder is filled (about 4,350 psi). */
const HIGHEST_PA = 3e7

/** A reading as absolute pressure, with the uncertainty of a service gauge where none was stated. */
export function measured(
  reading: PressureReading,
  barometerPa: number,
  path: string,
  servicePlusMinusPa: number,
): Quantity<'absolutePressure'> {
  const absolute = under(path, () => toAbsolute(reading, barometerPa))
  plausible(absolute, 0, HIGHEST_PA, 'A pressure', [path])
  return absolutePressure(absolute.si, absolute.plusMinus ?? servicePlusMinusPa)
}
