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
  type Uncertain,
} from '../../quantity/index.ts'
import { type Refrigerant, saturationPressure } from '../../refrigerant/index.ts'
import { fillIn } from '../../sentence.ts'
import { airShare, excessPressure } from '../air-check/air.ts'
import {
  ALONE,
  type OtherRefrigerant,
  type Reading,
  type Suspects,
  temperatureThatFits,
  type Verdict,
} from './explain.ts'

/** Keys of data/service/contamination.json. */
type StatementId = keyof typeof data.statements

const texts = data.explanations

/** Distance from the nearer line, as shown. */
export const offOf = ({ off }: Reading) => pressureDifference(off.si, off.plusMinus)

export const CAUSES = ['air', 'other-refrigerant', 'reading', 'no-liquid', 'shifted-blend'] as const

/** One thing that would make the reading. */
interface Explanation {
  readonly cause: (typeof CAUSES)[number]
  readonly refrigerant?: string
  readonly share?: Quantity<'fraction'>
  readonly shareFrom?: Quantity<'fraction'>
  readonly shareTo?: Quantity<'fraction'>
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
  const { expected, temperature } = reading
  const { id, kind } = expected.info
  const found: Explanation[] = []
  if (high) {
    const air = airOf(reading)
    const share = fraction(air.si, air.plusMinus).in('%')
    found.push({
      cause: 'air',
      share,
      text: fillIn(texts.air, { off: say(offOf(reading)), share: say(share) }),
      settledBy: ['air-check', 'identifier'],
    })
  } else {
    found.push({
      cause: 'no-liquid',
      text: fillIn(texts['no-liquid'], { refrigerant: id }),
      settledBy: ['weigh-it'],
    })
  }
  for (const fit of fits) found.push(otherRefrigerant(fit, id))
  if (!high && kind === 'zeotrope') {
    found.push({
      cause: 'shifted-blend',
      text: fillIn(texts.shifted, { refrigerant: id }),
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
        ? texts['no-temperature']
        : fillIn(texts.temperature, {
            by: say(temperatureDifference(Math.abs(off.si))),
            way: off.si > 0 ? 'warmer' : 'colder',
            gauge: say(pressureDifference(Math.abs(reading.off.si))),
          }),
    settledBy: ['read-again'],
  })
  return found
}

/** Share of air in the vapour that would make the reading, by amount. */
export function airOf({ found, pressure }: Reading): Uncertain {
  const excess = excessPressure(found, pressure)
  return excess ? airShare(excess, pressure) : { si: 0 }
}

function otherRefrigerant(fit: OtherRefrigerant, expected: string): Explanation {
  const { id } = fit.refrigerant.info
  const { share, besides, estimated } = fit
  const also = besides.map((entry) => (entry === ALONE ? `${id} alone` : percent(entry.share)))
  const apart = also.length === 0 ? '' : fillIn(texts.besides, { besides: also.join(' or ') })
  const what =
    share === ALONE
      ? fillIn(texts.alone, { other: id, refrigerant: expected })
      : fillIn(texts.mixed, {
          other: id,
          refrigerant: expected,
          share: percent(share.share),
          from: percent(share.from),
          to: percent(share.to),
          estimated: estimated ? texts.estimated : '',
        })
  return {
    cause: 'other-refrigerant',
    refrigerant: id,
    ...shown(fit),
    text: `${what}${apart}`,
    settledBy: ['identifier'],
  }
}

/** A share with both ends of its band; its ± is the longer way to either. */
export function shown({ share: { share, from, to } }: OtherRefrigerant) {
  const longer = Math.max(share - from, to - share)
  return {
    share: fraction(share, longer === 0 ? undefined : longer).in('%'),
    shareFrom: fraction(from).in('%'),
    shareTo: fraction(to).in('%'),
  }
}

export const percent = (share: number) => `${(100 * share).toFixed(share < 0.1 ? 1 : 0)} %`

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
              'shares by mass from 0 to 100 % at which the mixed liquid’s bubble pressure equals the measured one, with the edges at which it leaves the band; here the smallest',
            values: {
              measured,
              'pure expected': absolutePressure(bubblePa),
              'pure other': otherAlone(nearest.refrigerant, temperature.si),
            },
            gives: shown(nearest).share,
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
  const names = [
    ...new Set(fits.filter((fit) => fit.estimated).map((fit) => fit.refrigerant.info.id)),
  ]
  if (names.length === 0) return []
  return [
    {
      code: 'estimated-mixing',
      message: `The share of ${names.join(', ')} rests on estimated mixing parameters: take it as an order of magnitude.`,
    },
  ]
}

/** Says of which refrigerants more than one share reads so. */
export function severalShares(fits: readonly OtherRefrigerant[]): readonly Warning[] {
  const names = [
    ...new Set(fits.filter((fit) => fit.besides.length > 0).map((fit) => fit.refrigerant.info.id)),
  ]
  if (names.length === 0) return []
  return [
    {
      code: 'several-shares-fit',
      message: `More than one share of ${names.join(', ')} reads so: the pressure alone cannot tell them apart. An identifier does.`,
    },
  ]
}
