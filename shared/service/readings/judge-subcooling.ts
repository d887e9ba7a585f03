import type { Budget } from '../../quantity/index.ts'
import {
  SUBCOOLING_TOLERANCE_K,
  SUBCOOLING_TOLERANCE_SOURCES,
  VEHICLE_VALVE_SUBCOOLING,
} from './bands.ts'
import type { ReadingsInput } from './fields.ts'
import type { Measured } from './measured.ts'
import { readingSource } from './sources.ts'
import { compared, type Meanings, notJudged, type Verdict } from './verdict.ts'

const VEHICLE: Meanings = {
  inside: 'The subcooling fits a full charge. The weighed charge decides all the same.',
  below:
    'Too little liquid ahead of the valve: the charge may be low. Do not top up by this figure: recover, and weigh in the charge on the label.',
  above:
    'Liquid stands back in the condenser: overcharge, air in the system, which reads as subcooling, or a restriction in the liquid line, with which the superheat is high too. Compare pressure and temperature at rest for air; then recover, and weigh in the charge on the label.',
}

const STATIONARY: Meanings = {
  inside: 'The charge fits its target.',
  below:
    'Too little refrigerant, as far as air flow and outdoor air are right: add some, wait 15 minutes, and read again.',
  above:
    'Too much refrigerant, air in the system, which reads as subcooling, or a restriction in the liquid line, with which the superheat is high too. Compare pressure and temperature at rest for air, and read the superheat; else recover some, wait 15 minutes, and read again.',
}

const RESTRICTED =
  'Subcooling and superheat are both high: a restriction in the liquid line (drier, screen, kink) or a valve that closed up, not an overcharge. Take no refrigerant out by this figure: feel for the drop in temperature along the liquid line and across the drier first.'
const OVERFED =
  'Subcooling and superheat are both low: the valve lets through too much, or the compressor does not pump enough, before the charge is to blame. Add no refrigerant by this figure: set that right first, then judge the charge again.'

/**
 * The same verdict in the light of the superheat: a leak and a restriction both raise the superheat,
 * and only the sign of the subcooling tells them apart.
 */
export function withSuperheat(verdict: Verdict, superheat: Verdict['outcome']): Verdict {
  const meaning =
    verdict.outcome === 'above' && superheat === 'above'
      ? RESTRICTED
      : verdict.outcome === 'below' && superheat === 'below'
        ? OVERFED
        : undefined
  if (meaning === undefined) return verdict
  return {
    ...verdict,
    meaning,
    sources: [...verdict.sources, readingSource('rossi-braun'), readingSource('trade-practice')],
  }
}

/**
 * Charge by subcooling: the maker's figure first, then what is published for this equipment.
 *
 * Counted from the discharge pressure a subcooling shows too large, so only "below" stands.
 */
export function subcoolingVerdict(
  m: Measured,
  measured: Budget,
  input: ReadingsInput,
  equipment: 'vehicle' | 'stationary',
): Verdict {
  const verdict = bySubcooling(m, measured, input, equipment)
  const shownTooLarge = m.highFrom === 'discharge-line'
  if (!shownTooLarge || (verdict.outcome !== 'inside' && verdict.outcome !== 'above')) {
    return verdict
  }
  return {
    ...verdict,
    outcome: 'cannot-tell',
    meaning:
      'The subcooling is counted from the discharge pressure, so the true one is smaller by the pressure drop of the condenser: these readings cannot tell.',
    settle: 'The pressure at the liquid line, where its temperature is read.',
  }
}

function bySubcooling(
  m: Measured,
  measured: Budget,
  input: ReadingsInput,
  equipment: 'vehicle' | 'stationary',
): Verdict {
  const frame = {
    about: 'charge',
    figure: 'subcooling',
    measured,
    meanings: equipment === 'vehicle' ? VEHICLE : STATIONARY,
  } as const
  const { subcoolingTarget, subcoolingLow, subcoolingHigh } = input
  const weighed = equipment === 'vehicle' ? [readingSource('tm-5-3805-290')] : []
  if (subcoolingLow && subcoolingHigh) {
    return compared({
      ...frame,
      method: 'range-of-maker',
      lowK: subcoolingLow.si,
      highK: subcoolingHigh.si,
      sources: weighed,
    })
  }
  if (subcoolingTarget) {
    return compared({
      ...frame,
      method: 'target-subcooling-of-maker',
      lowK: subcoolingTarget.si - SUBCOOLING_TOLERANCE_K,
      highK: subcoolingTarget.si + SUBCOOLING_TOLERANCE_K,
      targetK: { si: subcoolingTarget.si, plusMinus: subcoolingTarget.plusMinus, parts: [] },
      sources: [...SUBCOOLING_TOLERANCE_SOURCES, ...weighed],
    })
  }
  if (equipment === 'stationary') {
    return notJudged(
      'charge',
      'subcooling',
      "No verdict: the target subcooling stands on the maker's plate or in the manual, and no general figure replaces it.",
    )
  }
  const { refrigerants, lowK, highK, sources } = VEHICLE_VALVE_SUBCOOLING
  if (!refrigerants.includes(m.refrigerant.info.id)) {
    return notJudged(
      'charge',
      'subcooling',
      `No verdict: the published band is for ${refrigerants.join(', ')} only. Give the maker's subcooling, or weigh the charge.`,
      'not-judged',
      sources,
    )
  }
  return compared({
    ...frame,
    method: 'vehicle-subcooling-band',
    lowK,
    highK,
    sources: [...sources, ...weighed],
  })
}
