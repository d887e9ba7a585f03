import data from '../../../data/service/contamination.json' with { type: 'json' }
import { type AtRest, atRest } from '../../physics/at-rest.ts'
import { type Uncertain, widthOf } from '../../quantity/index.ts'
import {
  mixingUncertainty,
  propertyUncertainty,
  type Refrigerant,
  refrigerant,
  saturationTemperature,
} from '../../refrigerant/index.ts'
import { attempt } from '../../substance/attempt.ts'
import { type Mixed, mixed } from './mixed.ts'
import { type FittingShare, sharesThatFit } from './shares.ts'

/** Readings at rest beside what the expected refrigerant should read, all in SI. */
export interface Reading {
  readonly expected: Refrigerant
  readonly pressure: Uncertain
  readonly temperature: Uncertain
  readonly found: AtRest
  readonly bubblePa: number
  readonly dewPa: number
  /** Less the nearer line, with the band of readings and property. */
  readonly off: Uncertain
}

export type Verdict = 'as-expected' | 'too-high' | 'too-low' | 'cannot-tell'

/** Another refrigerant that would make the reading. */
export interface OtherRefrigerant {
  readonly refrigerant: Refrigerant
  /** Mass shares of it that read so, from one end to the other; 1 where it reads so alone. */
  readonly share: FittingShare
  /** Other shares of the same refrigerant that read so just as well. */
  readonly besides: readonly FittingShare[]
  readonly estimated: boolean
  readonly substances: readonly string[]
}

/** How a usual suspect stands to the reading. */
export interface Suspects {
  readonly fits: readonly OtherRefrigerant[]
  /** No share of these reads so. */
  readonly ruledOut: readonly Refrigerant[]
  /** A tenth of these by mass would not show beyond the readings' own uncertainty. */
  readonly unseen: readonly Refrigerant[]
}

/** Expected and measured at rest. */
export function readingOf(
  expected: Refrigerant,
  pressure: Uncertain,
  temperature: Uncertain,
): Reading {
  const found = atRest(expected, pressure, temperature)
  const { bubble, dew, off } = found
  if (!bubble || !dew || !off) throw new Error('Without contents both lines are always there.')
  return { expected, pressure, temperature, found, bubblePa: bubble.si, dewPa: dew.si, off }
}

/** Whether the pressure fits the refrigerant, as far as the instruments can tell. */
export function verdictOf({ off, bubblePa, found }: Reading): Verdict {
  if (found.state === 'above') return 'too-high'
  if (found.state === 'below') return 'too-low'
  const rough = widthOf(off) > data.roughestShare * bubblePa
  return rough || found.state === 'cannot-tell' ? 'cannot-tell' : 'as-expected'
}

/** Which other refrigerants, mixed in, would read so, and which would not show at all. */
export function suspectsOf(reading: Reading, verdict: Verdict, names: readonly string[]): Suspects {
  const fits: OtherRefrigerant[] = []
  const ruledOut: Refrigerant[] = []
  const unseen: Refrigerant[] = []
  const width = widthOf(reading.off)
  for (const name of names) {
    const other = refrigerant(name)
    if (other.info.id === reading.expected.info.id) continue
    const mixture = mixed(reading.expected, other, reading.temperature.si)
    const tenth = attempt(() => mixture.pressure(data.unseenShare))
    if (
      tenth !== undefined &&
      tenth <= reading.bubblePa + width &&
      tenth >= reading.dewPa - width
    ) {
      unseen.push(other)
    }
    if (verdict !== 'too-high' && verdict !== 'too-low') continue
    const found = sharesOf(reading, other, mixture)
    if (found.length === 0) ruledOut.push(other)
    const estimated = mixingUncertainty(mixture.substances)?.basis === 'estimated'
    for (const share of found) {
      const alone = share === ALONE
      fits.push({
        refrigerant: other,
        share,
        besides: found.filter((entry) => entry !== share),
        estimated: estimated && !alone,
        substances: alone ? [] : mixture.substances,
      })
    }
  }
  return { fits: fits.sort((a, b) => a.share.share - b.share.share), ruledOut, unseen }
}

/** It is the other refrigerant and nothing else: the reading lies on or between its own lines. */
function readsAlone({ pressure, temperature, off }: Reading, other: Refrigerant): boolean {
  const width = widthOf(off)
  const { bubble, dew } = other
  const k = temperature.si
  if (!(k >= Math.max(bubble.fromK, dew.fromK) && k <= Math.min(bubble.toK, dew.toK))) return false
  return pressure.si <= bubble.pressure(k) + width && pressure.si >= dew.pressure(k) - width
}

/** The other refrigerant and nothing else. */
export const ALONE: FittingShare = { share: 1, from: 1, to: 1, exact: [1] }

/** Every share of the other that reads so; alone is told apart from almost alone. */
function sharesOf(reading: Reading, other: Refrigerant, mixture: Mixed): readonly FittingShare[] {
  const pressureAt = (share: number) => attempt(() => mixture.pressure(share))
  const width = bandAt(reading, mixture.substances)
  const mixtures = attempt(() => sharesThatFit(pressureAt, reading.pressure.si, width)) ?? []
  if (!readsAlone(reading, other)) return mixtures
  return [...mixtures.filter(({ to }) => to < 1), ALONE]
}

/**
 * Half-width of the pressure at a share, Pa: the readings', and the mixture model's. A pair's
 * parameters act with the product of both shares, so they count in full at the middle and vanish
 * towards either end.
 */
function bandAt(
  { expected, pressure, temperature, off }: Reading,
  substances: readonly string[],
): (share: number) => number {
  const readings = widthOf(off)
  const mixing = mixingUncertainty(substances)
  const own = propertyUncertainty(expected, temperature.si, 'bubble')
  const perK = own.pressure / own.temperatureK
  const model = pressure.si * (mixing?.pressure ?? (mixing?.temperatureK ?? 0) * perK)
  return (share) => Math.hypot(readings, 4 * share * (1 - share) * model)
}

/** Temperature in K that the contents would have if the pressure and the refrigerant are right. */
export function temperatureThatFits({ expected, pressure, off }: Reading): number | undefined {
  const line = off.si < 0 ? 'dew' : 'bubble'
  const { fromPa, toPa } = expected[line]
  if (!(pressure.si >= fromPa && pressure.si <= toPa)) return undefined
  return saturationTemperature(expected, pressure.si, line)
}
