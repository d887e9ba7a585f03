import { FROM_DISCHARGE_K, type Pattern } from '../../diagnosis/patterns.ts'
import type { Signs } from '../../diagnosis/signs.ts'
import { isCarbonDioxide } from '../../fields/index.ts'
import { type Uncertain, widthOf } from '../../quantity/index.ts'
import type { Figures } from './figures.ts'
import type { Finding, FindingId } from './findings.ts'
import { suctionGauge } from './gauges.ts'
import type { Measured } from './measured.ts'

/** What spoils the subcooling alone: what cooled the liquid was not the condenser. */
const NO_SUBCOOLING: FindingId = 'liquid-colder-than-ambient'

/** The signs of a running machine; none from readings that contradict each other or are a danger. */
export function signsOf(m: Measured, f: Figures, found: readonly Finding[]): Signs {
  if (found.some(({ level }) => level === 'stop' || level === 'impossible')) return {}
  // R-744 runs at a ratio of two to three, and its gas cooler close to the air: the limits are of others.
  if (isCarbonDioxide(m.refrigerant)) return { superheat: f.superheat, suction: suctionGauge(m) }
  const spoilt = found.some(({ id }) => id === NO_SUBCOOLING)
  return {
    evaporating: f.low?.dew,
    fed: f.low?.dew,
    coldish: f.low?.dew,
    overAmbient: f.condensingOverAmbient,
    raised: f.condensingOverAmbient,
    slack: f.condensingOverAmbient,
    superheat: f.superheat,
    dry: f.superheat,
    subcooling: spoilt ? undefined : subcoolingOf(m, f),
    liquidOverAmbient: f.liquidOverAmbient,
    ratio: f.ratio,
    lift: f.ratio,
    suction: suctionGauge(m),
  }
}

/** From the discharge pressure it shows too large, by as much as the pressure falls in a condenser. */
function subcoolingOf({ highFrom }: Measured, { subcooling }: Figures): Uncertain | undefined {
  if (!subcooling || highFrom === 'liquid-line') return subcooling
  const half = FROM_DISCHARGE_K / 2
  return { si: subcooling.si - half, plusMinus: widthOf(subcooling) + half }
}

/** Findings that a pattern says better, since it has both figures. */
const SAID_BY: Readonly<Partial<Record<FindingId, readonly string[]>>> = {
  'superheat-very-high': [
    'low-charge',
    'starved-not-low',
    'warm-suction',
    'starved',
    'raised-and-starved',
    'hot-and-starved',
    'restriction-in-vacuum',
  ],
  'no-subcooling': ['low-charge', 'overfed'],
  'superheat-very-low': ['overfed', 'flooded', 'evaporator-air'],
}

/** The findings without those that a pattern says better. */
export const withoutCovered = (found: readonly Finding[], patterns: readonly Pattern[]) =>
  found.filter(({ id }) => !patterns.some((pattern) => SAID_BY[id]?.includes(pattern.id)))
