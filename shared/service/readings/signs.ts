import type { Pattern } from '../../diagnosis/patterns.ts'
import type { Signs } from '../../diagnosis/signs.ts'
import { isCarbonDioxide } from '../../fields/index.ts'
import type { Figures } from './figures.ts'
import type { Finding, FindingId } from './findings.ts'
import { suctionGauge } from './gauges.ts'
import type { Measured } from './measured.ts'

/** Readings that spoil the subcooling alone: what cooled the liquid was not the condenser. */
const NO_SUBCOOLING: readonly FindingId[] = [
  'liquid-colder-than-ambient',
  'subcooling-from-discharge-pressure',
]

/** The signs of a running machine; none from readings that contradict each other or are a danger. */
export function signsOf(m: Measured, f: Figures, found: readonly Finding[]): Signs {
  if (found.some(({ level }) => level === 'stop' || level === 'impossible')) return {}
  // R-744 runs at a ratio of two to three, and its gas cooler close to the air: the limits are of others.
  if (isCarbonDioxide(m.refrigerant)) return { superheat: f.superheat, suction: suctionGauge(m) }
  const spoilt = found.some(({ id }) => NO_SUBCOOLING.includes(id))
  return {
    evaporating: f.low?.dew,
    overAmbient: f.condensingOverAmbient,
    superheat: f.superheat,
    subcooling: spoilt ? undefined : f.subcooling,
    ratio: f.ratio,
    suction: suctionGauge(m),
  }
}

/** Findings that a pattern says better, since it has both figures. */
const SAID_BY: Readonly<Partial<Record<FindingId, readonly string[]>>> = {
  'superheat-very-high': ['low-charge', 'starved-not-low', 'restriction-in-vacuum'],
  'no-subcooling': ['low-charge', 'overfed'],
  'superheat-very-low': ['overfed', 'evaporator-air'],
}

/** The findings without those that a pattern says better. */
export const withoutCovered = (found: readonly Finding[], patterns: readonly Pattern[]) =>
  found.filter(({ id }) => !patterns.some((pattern) => SAID_BY[id]?.includes(pattern.id)))
