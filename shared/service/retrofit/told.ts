import data from '../../../data/service/retrofit.json' with { type: 'json' }
import { entry, type Told } from '../../answer/told.ts'
import { SCALE_STEP_KG } from '../../instrument/index.ts'
import { mass, type Quantity } from '../../quantity/index.ts'

interface Known {
  readonly old: string
  readonly new: string
  readonly charge: { readonly startWith: Quantity; readonly spread: Quantity } | undefined
  readonly rise: Quantity | undefined
  readonly accumulator: 'replace' | 'may-stay' | 'cannot-tell' | 'not-given'
  readonly age: Quantity | undefined
  readonly estimated: boolean
}

const { headlines, says, next } = data

/** That it is allowed, with how much to begin, and that the maker's procedure comes first. */
export function retrofitTold(known: Known): Told {
  const { charge, rise, accumulator, age, estimated } = known
  const practice = { basis: 'common practice' as const }
  const headline = headlines[charge ? 'allowed-charge' : 'allowed']
  return {
    level: 'check',
    headline: headline.replaceAll('{old}', known.old).replaceAll('{new}', known.new),
    figures: [
      ...(charge
        ? [
            {
              id: 'startWith',
              label: 'Start with',
              value: charge.startWith,
              step: SCALE_STEP_KG,
              says: says.startWith,
              ...practice,
            },
            {
              id: 'most',
              label: 'At most',
              value: mass(charge.startWith.si + charge.spread.si),
              step: SCALE_STEP_KG,
              says: says.most,
              ...practice,
            },
          ]
        : []),
      ...entry('rise', 'High side', rise, {
        says: says.rise,
        ...(estimated ? { basis: 'estimated' as const } : {}),
      }),
      ...(accumulator === 'not-given'
        ? []
        : entry('accumulator', 'Drier', age, { says: says[`accumulator-${accumulator}`] })),
    ],
    next: [...(charge ? [] : [next.label]), ...next.common].slice(0, 3),
  }
}
