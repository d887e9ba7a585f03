import { stateOf } from '../../cycle/index.ts'
import {
  FEATURES,
  type Feature,
  featuresOf,
  type Observation,
  USUAL_CANDIDATES,
} from '../../diagnosis/index.ts'
import {
  duration,
  gaugePressure,
  mass,
  propagate,
  type Quantity,
  quantity,
  temperature,
  temperatureDifference,
} from '../../quantity/index.ts'
import { normalFrom, randomFrom } from '../../random.ts'
import { refrigerant } from '../../refrigerant/index.ts'
import type { LessonCase, Scene } from './draw.ts'

/** Readings that can be bought, by the feature that they are of. */
export const OFFERS = {
  'low-side': 'lowSidePa',
  'high-side': 'highSidePa',
  'suction-line': 'suctionLineK',
  'liquid-line': 'liquidLineK',
  'device-inlet': 'deviceInletK',
  'evaporator-outlet': 'evaporatorOutletK',
  'discharge-line': 'dischargeLineK',
  vent: 'ventK',
  'condenser-air-out': 'condenserAirK',
  'weighed-charge': 'chargeShare',
} as const satisfies Readonly<Record<string, Feature>>
export type Offer = keyof typeof OFFERS
export const OFFER_IDS = Object.keys(OFFERS) as [Offer, ...Offer[]]

export const offerOf = (feature: Feature): Offer =>
  OFFER_IDS.find((offer) => OFFERS[offer] === feature) as Offer

const candidateOf = (offer: Offer) =>
  USUAL_CANDIDATES.find(({ feature }) => feature === OFFERS[offer])

/** What a reading costs. */
export const costOf = (offer: Offer) =>
  quantity('duration', candidateOf(offer)?.minutes ?? 0, 'min').in('min')

export const totalCost = (offers: readonly Offer[]) =>
  duration(offers.reduce((sum, offer) => sum + costOf(offer).si, 0)).in('min')

/** What the instruments of the class read: the machine with the errors of its seed, the same each time. */
export function observationsOf(
  { seed, topic, outcome }: LessonCase,
  offers: readonly Offer[],
): readonly Observation[] {
  const state = stateOf(outcome)
  if (state === undefined) return []
  const features = featuresOf(state)
  return offers.map((offer): Observation => {
    const feature = OFFERS[offer]
    const sigma = candidateOf(offer)?.sigma ?? 0
    const error = sigma * normalFrom(randomFrom(keyOf(`${topic.id} ${offer}`, seed)))
    return { feature, sigma, value: (features[FEATURES.indexOf(feature)] as number) + error }
  })
}

/** A number for a name and a seed: what is drawn for one says nothing of another (FNV-1a, 32 bits). */
function keyOf(name: string, seed: number): number {
  let key = 0x811c9dc5 ^ seed
  for (const letter of name) key = Math.imul(key ^ (letter.codePointAt(0) ?? 0), 0x01000193)
  return key >>> 0
}

/** A feature as an instrument shows it; a ± is two of its standard deviations. */
export function shownFeature(
  feature: Feature,
  value: number,
  { machine, conditions }: Scene,
  sigma?: number,
): Quantity {
  const width = sigma === undefined ? undefined : 2 * sigma
  if (feature === 'chargeShare') {
    const found = mass(value * machine.charge, width && width * machine.charge)
    // all in the unit of the label
    return found.sized(machine.charge)
  }
  return feature.endsWith('Pa')
    ? gaugePressure(value - conditions.barometerPa, width)
    : temperature(value, width)
}

/** Superheat and subcooling, as soon as what they need is bought. */
export function workedOut(observations: readonly Observation[], { machine }: Scene) {
  const { bubble, dew } = refrigerant(machine.refrigerant)
  const read = (feature: Feature) => {
    const found = observations.find((each) => each.feature === feature)
    return found && { si: found.value, plusMinus: 2 * found.sigma }
  }
  const [low, suction] = [read('lowSidePa'), read('suctionLineK')]
  const [high, liquid] = [read('highSidePa'), read('liquidLineK')]
  const difference = ({ si, plusMinus }: ReturnType<typeof propagate>) =>
    temperatureDifference(si, plusMinus)
  return {
    superheat:
      low &&
      suction &&
      difference(propagate([suction, low], (line, pa) => line - dew.temperature(pa))),
    subcooling:
      high &&
      liquid &&
      difference(
        propagate(
          [liquid, high],
          (line, pa) => bubble.temperature(Math.min(pa, bubble.toPa)) - line,
        ),
      ),
  }
}
