import { quantityIn } from '../quantity/index.ts'
import { choiceIn } from './choice.ts'

/** Where the machine stands: every step that reads a gauge takes these two fields. */
export const placeIn = {
  altitude: quantityIn.altitude
    .optional()
    .describe('Height of the place above sea level, negative below it'),
  barometer: quantityIn.barometricPressure
    .optional()
    .describe('Barometric pressure at the place, not reduced to sea level; overrides the altitude'),
}

/** Jurisdictions whose statements are in `data/rules`. */
export const LAWS = ['us-federal', 'eu', 'uk', 'canada', 'australia'] as const
export type Law = (typeof LAWS)[number]

export const lawIn = choiceIn(LAWS, {
  us: 'us-federal',
  usa: 'us-federal',
  'united states': 'us-federal',
  'european union': 'eu',
  gb: 'uk',
  'great britain': 'uk',
  'united kingdom': 'uk',
  ca: 'canada',
  au: 'australia',
}).describe('Whose law binds the work: us-federal, eu, uk, canada or australia')
