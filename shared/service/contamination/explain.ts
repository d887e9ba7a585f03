import data from '../../../data/service/contamination.json' with { type: 'json' }
import { propagate, type Uncertain } from '../../quantity/index.ts'
import {
  type Refrigerant,
  refrigerant,
  saturationPressure,
  saturationTemperature,
} from '../../refrigerant/index.ts'
import { attempt } from '../../substance/attempt.ts'
import { estimatedWarnings } from '../mixing-sources.ts'
import { type FoundShare, mixed, shareThatReads } from './mixed.ts'

/** Readings at rest beside what the expected refrigerant should read, all in SI. */
export interface Reading {
  readonly expected: Refrigerant
  readonly pressure: Uncertain
  readonly temperature: Uncertain
  readonly bubblePa: number
  readonly dewPa: number
  /** Pressure above the bubble line (positive) or below the dew line (negative), 0 between them. */
  readonly off: Uncertain
}

export type Verdict = 'as-expected' | 'too-high' | 'too-low' | 'cannot-tell'

/** Another refrigerant that would make the reading. */
export interface OtherRefrigerant {
  readonly refrigerant: Refrigerant
  /** Mass share of it in the mixture; 1 where it reads so alone. */
  readonly share: Uncertain
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

/** Expected and measured at rest; a blend may read anywhere between its two lines. */
export function readingOf(
  expected: Refrigerant,
  pressure: Uncertain,
  temperature: Uncertain,
): Reading {
  const bubblePa = saturationPressure(expected, temperature.si, 'bubble')
  const dewPa = saturationPressure(expected, temperature.si, 'dew')
  const line = pressure.si < dewPa ? 'dew' : 'bubble'
  const off = propagate(
    [pressure, temperature],
    (pa, kelvin) => pa - saturationPressure(expected, kelvin, line),
  )
  const between = pressure.si >= dewPa && pressure.si <= bubblePa
  return {
    expected,
    pressure,
    temperature,
    bubblePa,
    dewPa,
    off: between ? { si: 0, plusMinus: off.plusMinus } : off,
  }
}

/** Whether the pressure fits the refrigerant, as far as the instruments can tell. */
export function verdictOf({ off, bubblePa }: Reading): Verdict {
  const width = off.plusMinus ?? 0
  if (Math.abs(off.si) > width) return off.si > 0 ? 'too-high' : 'too-low'
  return width > data.roughestShare * bubblePa ? 'cannot-tell' : 'as-expected'
}

/** Which other refrigerants, mixed in, would read so, and which would not show at all. */
export function suspectsOf(reading: Reading, verdict: Verdict, names: readonly string[]): Suspects {
  const fits: OtherRefrigerant[] = []
  const ruledOut: Refrigerant[] = []
  const unseen: Refrigerant[] = []
  const width = reading.off.plusMinus ?? 0
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
    if (readsAlone(reading, other)) {
      fits.push({ refrigerant: other, share: { si: 1 }, estimated: false, substances: [] })
    }
    const found = attempt(() => shareThatReads(mixture, reading.bubblePa, reading.pressure.si))
    const share = found && withBand(found, width)
    if (share === undefined) {
      if (fits.at(-1)?.refrigerant !== other) ruledOut.push(other)
    } else {
      const estimated = estimatedWarnings(mixture.substances).length > 0
      fits.push({ refrigerant: other, share, estimated, substances: mixture.substances })
    }
  }
  return { fits: fits.sort((a, b) => a.share.si - b.share.si), ruledOut, unseen }
}

/** It is the other refrigerant and nothing else: the reading lies on or between its own lines. */
function readsAlone({ pressure, temperature, off }: Reading, other: Refrigerant): boolean {
  const width = off.plusMinus ?? 0
  const { bubble, dew } = other
  const k = temperature.si
  if (!(k >= Math.max(bubble.fromK, dew.fromK) && k <= Math.min(bubble.toK, dew.toK))) return false
  return pressure.si <= bubble.pressure(k) + width && pressure.si >= dew.pressure(k) - width
}

/** The share with the span that the readings' uncertainty gives it: never below nothing. */
function withBand({ share, slope }: FoundShare, widthPa: number): Uncertain {
  return { si: share, plusMinus: Math.min(share, Math.abs(widthPa / slope)) }
}

/** Temperature in K that the contents would have if the pressure and the refrigerant are right. */
export function temperatureThatFits({ expected, pressure, off }: Reading): number | undefined {
  const line = off.si < 0 ? 'dew' : 'bubble'
  const { fromPa, toPa } = expected[line]
  if (!(pressure.si >= fromPa && pressure.si <= toPa)) return undefined
  return saturationTemperature(expected, pressure.si, line)
}
