import data from '../../../data/service/contamination.json' with { type: 'json' }
import { CalcError } from '../../errors.ts'
import type { Step, Warning } from '../../operation.ts'
import {
  absolutePressure,
  fraction,
  pressureDifference,
  type Quantity,
  say,
  temperatureDifference,
} from '../../quantity/index.ts'
import { type Refrigerant, saturationPressure } from '../../refrigerant/index.ts'
import { airFraction } from '../air-check/air.ts'
import {
  type OtherRefrigerant,
  type Reading,
  type Suspects,
  temperatureThatFits,
  type Verdict,
} from './explain.ts'

/** Keys of data/service/contamination.json. */
type StatementId = keyof typeof data.statements

export const CAUSES = ['air', 'other-refrigerant', 'reading', 'no-liquid', 'shifted-blend'] as const

/** One thing that would make the reading. */
interface Explanation {
  readonly cause: (typeof CAUSES)[number]
  readonly refrigerant?: string
  readonly share?: Quantity<'fraction'>
  readonly temperatureOff?: Quantity<'temperatureDifference'>
  readonly text: string
  readonly settledBy: readonly StatementId[]
}

/** Everything that fits a reading that is off, by what would have to be true. */
export function explain(
  reading: Reading,
  verdict: Verdict,
  { fits }: Suspects,
): readonly Explanation[] {
  if (verdict !== 'too-high' && verdict !== 'too-low') return []
  const high = verdict === 'too-high'
  const { expected, pressure, temperature } = reading
  const { id, kind } = expected.info
  const found: Explanation[] = []
  if (high) {
    const air = airFraction(expected, pressure, temperature)
    const share = fraction(air.si, air.plusMinus).in('%')
    found.push({
      cause: 'air',
      share,
      text: `Air (or nitrogen) over the liquid: ${say(pressureDifference(reading.off.si, reading.off.plusMinus))} of partial pressure, ${say(share)} of the vapour.`,
      settledBy: ['air-check', 'identifier'],
    })
  } else {
    found.push({
      cause: 'no-liquid',
      text: `No liquid is left in it: ${id} as vapour alone reads anything below saturation.`,
      settledBy: ['weigh-it'],
    })
  }
  for (const fit of fits) found.push(otherRefrigerant(fit, id))
  if (!high && kind === 'zeotrope') {
    found.push({
      cause: 'shifted-blend',
      text: `${id} that has lost vapour: its lighter parts left first (see fractionation).`,
      settledBy: ['weigh-it', 'identifier'],
    })
  }
  const fittingK = temperatureThatFits(reading)
  const off = fittingK === undefined ? undefined : temperatureDifference(fittingK - temperature.si)
  found.push({
    cause: 'reading',
    ...(off === undefined ? {} : { temperatureOff: off }),
    text:
      off === undefined
        ? 'A wrong reading: no temperature of the contents would explain this pressure.'
        : `A wrong reading: contents ${say(temperatureDifference(Math.abs(off.si)))} ${off.si > 0 ? 'warmer' : 'colder'} than was read, or a gauge off by ${say(pressureDifference(Math.abs(reading.off.si)))}.`,
    settledBy: ['read-again'],
  })
  return found
}

function otherRefrigerant(fit: OtherRefrigerant, expected: string): Explanation {
  const { id } = fit.refrigerant.info
  if (fit.share.si === 1) {
    return {
      cause: 'other-refrigerant',
      refrigerant: id,
      share: fraction(1).in('%'),
      text: `It is ${id} and not ${expected}: ${id} alone reads so.`,
      settledBy: ['identifier'],
    }
  }
  const share = fraction(fit.share.si, fit.share.plusMinus).in('%')
  return {
    cause: 'other-refrigerant',
    refrigerant: id,
    share,
    text: `${id} mixed into ${expected}: ${say(share)} by mass reads so${fit.estimated ? ' (mixing parameters estimated)' : ''}.`,
    settledBy: ['identifier'],
  }
}

/** What would settle which it is. */
export function settling(
  explanations: readonly Explanation[],
  verdict: Verdict,
): readonly StatementId[] {
  if (verdict === 'as-expected') return ['identifier']
  return [...new Set(explanations.flatMap((e) => e.settledBy))]
}

/** How the figures came about. */
export function stepsOf(
  { expected, bubblePa, dewPa, off, temperature }: Reading,
  measured: Quantity<'absolutePressure'>,
  fits: readonly OtherRefrigerant[],
): readonly Step[] {
  const [nearest] = fits
  return [
    {
      what: 'Distance from saturation',
      formula: `measured − bubble pressure when above it, measured − dew pressure when below it, of ${expected.info.id}`,
      values: {
        measured,
        bubble: absolutePressure(bubblePa),
        dew: absolutePressure(dewPa),
      },
      gives: pressureDifference(off.si, off.plusMinus),
    },
    ...(nearest
      ? [
          {
            what: `Share of ${nearest.refrigerant.info.id} that reads so`,
            formula:
              'smallest share by mass at which the mixed liquid’s bubble pressure equals the measured one',
            values: {
              measured,
              'pure expected': absolutePressure(bubblePa),
              'pure other': otherAlone(nearest.refrigerant, temperature.si),
            },
            gives: fraction(nearest.share.si, nearest.share.plusMinus).in('%'),
          },
        ]
      : []),
  ]
}

function otherAlone(other: Refrigerant, temperatureK: number): Quantity | string {
  try {
    return absolutePressure(saturationPressure(other, temperatureK, 'bubble'))
  } catch (error) {
    if (error instanceof CalcError) return 'above its critical point'
    throw error
  }
}

/** Says whose share rests on estimated mixing parameters. */
export function estimatedShares(fits: readonly OtherRefrigerant[]): readonly Warning[] {
  const names = fits.filter((fit) => fit.estimated).map((fit) => fit.refrigerant.info.id)
  if (names.length === 0) return []
  return [
    {
      code: 'estimated-mixing',
      message: `The share of ${names.join(', ')} rests on estimated mixing parameters: take it as an order of magnitude.`,
    },
  ]
}
