import { isVehicle, type Machine } from '../../fields/index.ts'
import { fillIn } from '../../sentence.ts'
import {
  SUBCOOLING_TOLERANCE_K,
  SUBCOOLING_TOLERANCE_SOURCES,
  VEHICLE_VALVE_SUBCOOLING,
} from './bands.ts'
import type { ReadingsInput } from './fields.ts'
import type { Measured } from './measured.ts'
import type { Difference } from './shown.ts'
import { readingSource } from './sources.ts'
import { TEXTS } from './texts.ts'
import { compared, notJudged, type Verdict } from './verdict.ts'

/**
 * The same verdict in the light of the superheat: a leak and a restriction both raise the superheat,
 * and only the sign of the subcooling tells them apart.
 */
export function withSuperheat(verdict: Verdict, superheat: Verdict['outcome']): Verdict {
  const special =
    verdict.outcome === 'above' && superheat === 'above'
      ? 'restricted'
      : verdict.outcome === 'below' && superheat === 'below'
        ? 'overfed'
        : undefined
  if (special === undefined) return verdict
  return {
    ...verdict,
    special,
    meaning: TEXTS.meanings[special],
    sources: [...verdict.sources, readingSource('rossi-braun'), readingSource('trade-practice')],
  }
}

/**
 * Charge by subcooling: the maker's figure first, then what is published for this machine.
 *
 * Counted from the discharge pressure a subcooling shows too large, so only "below" stands.
 */
export function subcoolingVerdict(
  m: Measured,
  measured: Difference,
  input: ReadingsInput,
  machine: Machine,
): Verdict {
  const verdict = bySubcooling(m, measured, input, isVehicle(machine))
  const shownTooLarge = m.highFrom === 'discharge-line'
  if (!shownTooLarge || (verdict.outcome !== 'inside' && verdict.outcome !== 'above')) {
    return verdict
  }
  return {
    ...verdict,
    outcome: 'cannot-tell',
    special: 'from-discharge',
    meaning: TEXTS.meanings['from-discharge'],
    settle: TEXTS.settle['liquid-pressure'],
  }
}

function bySubcooling(
  m: Measured,
  measured: Difference,
  input: ReadingsInput,
  vehicle: boolean,
): Verdict {
  const { id } = m.refrigerant.info
  const frame = {
    about: 'charge',
    figure: 'subcooling',
    measured,
    refrigerant: id,
    meanings: vehicle ? 'subcooling-vehicle' : 'subcooling-stationary',
  } as const
  const { subcoolingTarget, subcoolingLow, subcoolingHigh } = input
  const weighed = vehicle ? [readingSource('tm-5-3805-290')] : []
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
  if (!vehicle) {
    return notJudged('charge', 'subcooling', TEXTS.notJudged['target-subcooling'], 'maker')
  }
  const { refrigerants, lowK, highK, sources } = VEHICLE_VALVE_SUBCOOLING
  if (!refrigerants.includes(id)) {
    const meaning = fillIn(TEXTS.notJudged['band-not-for-it'], {
      refrigerants: refrigerants.join(', '),
    })
    return notJudged('charge', 'subcooling', meaning, 'maker', { sources })
  }
  return compared({
    ...frame,
    method: 'vehicle-subcooling-band',
    lowK,
    highK,
    sources: [...sources, ...weighed],
  })
}
