import steps from '../../data/page/steps.json' with { type: 'json' }
import { learn } from './known.ts'

/** The forms of every step beyond those that a page begins with: importing this makes them known. */
learn(steps)
