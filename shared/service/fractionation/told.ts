import data from '../../../data/service/fractionation.json' with { type: 'json' }
import type { Figure, Told } from '../../answer/told.ts'
import { mass, type Quantity } from '../../quantity/index.ts'
import type { TopUp } from './top-up.ts'

interface Known {
  readonly verdict: TopUp
  readonly escapes: 'vapour' | 'liquid'
  readonly lost: Quantity<'fraction'>
  readonly shift: Quantity<'temperatureDifference'>
  readonly estimated: boolean
  readonly pressureNow: Quantity<'gaugePressure'>
  readonly startMass: Quantity<'mass'> | undefined
}

const { headlines, says, next } = data

/** What the leak did, and what to do; a mass to add only where adding it would do. */
export function fractionationTold(known: Known): Told {
  const { verdict, escapes, lost, shift, estimated, pressureNow, startMass } = known
  const basis = estimated ? { basis: 'estimated' as const } : {}
  const close = verdict === 'top-up-reads-close'
  const add: readonly Figure[] =
    close && startMass
      ? [{ id: 'add', label: 'Missing', value: mass(startMass.si * lost.si), says: says.add }]
      : []
  return {
    level: 'check',
    headline: headlines[verdict].replaceAll('{way}', escapes),
    figures: [
      { id: 'lost', label: 'Lost', value: lost, says: says.lost },
      { id: 'shift', label: 'Shift', value: shift, says: says.shift, ...basis },
      {
        id: 'pressureNow',
        label: 'Pressure now',
        value: pressureNow,
        says: says.pressureNow,
        ...basis,
      },
      ...add,
    ],
    next: next[close ? 'top-up' : 'recover'],
  }
}
