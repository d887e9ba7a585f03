import { faultOf, stateOf } from '../../cycle/index.ts'
import { FEATURES, featuresOf } from '../../diagnosis/index.ts'
import type { Quantity } from '../../quantity/index.ts'
import { type Present, presentIn } from '../simulate/faults.ts'
import { type LessonCase, type Scene, soundOf } from './draw.ts'
import { costOf, OFFER_IDS, OFFERS, type Offer, observationsOf, shownFeature } from './market.ts'
import { TEXTS } from './topics.ts'

/** What is seen without an instrument. */
export function seenOf({ outcome, machine }: LessonCase): readonly string[] {
  const state = stateOf(outcome)
  const vapour = state !== undefined && state.solution.trial.condensation.quality > 0
  return [
    ...(machine.store.kind === 'receiver' ? [TEXTS.seen[vapour ? 'bubbles' : 'clear']] : []),
    TEXTS.seen[outcome.kind === 'cycling' ? 'cycles' : 'engaged'],
  ]
}

/** The supposed fault with its size; nothing where it is none. */
export function supposedIn({ topic, machine }: Scene): Present | undefined {
  const { fault, severity = 0 } = topic.supposed
  return fault === 'none' ? undefined : presentIn(faultOf(machine, fault, severity), machine)[0]
}

/** Every reading that there is to buy, with what those show that are bought. */
export function offersOf(case_: LessonCase, bought: readonly Offer[]) {
  const state = case_.knowledge === 'known' ? stateOf(soundOf(case_)) : undefined
  const sound = state && featuresOf(state)
  return OFFER_IDS.map((reading) => {
    const [observation] = bought.includes(reading) ? observationsOf(case_, [reading]) : []
    const feature = OFFERS[reading]
    const whole = sound?.[FEATURES.indexOf(feature)]
    return {
      reading,
      minutes: costOf(reading),
      shows: observation && shownFeature(feature, observation.value, case_, observation.sigma),
      sound: observation && whole !== undefined ? shownFeature(feature, whole, case_) : undefined,
    } satisfies {
      readonly reading: Offer
      readonly minutes: Quantity
      readonly shows: unknown
      readonly sound: unknown
    }
  })
}
