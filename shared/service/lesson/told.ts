import { entry, type Figure, type Told } from '../../answer/told.ts'
import { fraction, type Quantity, temperature } from '../../quantity/index.ts'
import { fillIn } from '../../sentence.ts'
import type { Present } from '../simulate/faults.ts'
import { TEXTS as SIMULATED } from '../simulate/texts.ts'
import { POWER_STEP_W } from '../simulate/told.ts'
import type { LessonCase } from './draw.ts'
import { OFFERS, shownFeature } from './market.ts'
import type { Graded, Reveal } from './reveal.ts'
import { type Named, TEXTS, wordsOf } from './topics.ts'

const { headlines, labels, says, next } = TEXTS

interface Known {
  readonly case_: LessonCase
  readonly seen: readonly string[]
  readonly supposed: Present | undefined
  readonly spent: Quantity<'duration'>
  readonly superheat: Quantity | undefined
  readonly subcooling: Quantity | undefined
}

/** A figure that is words. */
const words = (id: string, label: string, value: string, more: Partial<Figure> = {}): Figure => ({
  id,
  label,
  value,
  ...more,
})

/** The saying itself is only remembered, and says so. */
const isRemembered = ({ topic }: LessonCase) => TEXTS.sources[topic.source].mark === 'memory'

/** What is said, and what is to be predicted. */
export function predictTold({ case_, seen, supposed }: Known): Told {
  const { topic, name, machine, conditions } = case_
  return {
    level: 'information',
    headline: fillIn(headlines[topic.before === 'nominal' ? 'predict-weather' : 'predict'], {
      claim: topic.claim,
      supposed: wordsOf(topic.supposed.fault),
    }),
    figures: [
      words('machine', labels.machine, `${name}, ${machine.refrigerant}`),
      ...(supposed
        ? [
            {
              id: 'supposed',
              label: labels.supposed,
              value: supposed.size,
              says: SIMULATED.settings[supposed.setting],
            },
          ]
        : []),
      {
        id: 'weather',
        label: labels.weather,
        value: temperature(conditions.ambientK),
        says: says.weather,
      },
      {
        id: 'cab',
        label: labels.cab,
        value: temperature(conditions.returnAirK),
        says: says.cab,
        beside: { humidity: { value: fraction(conditions.returnHumidity) } },
      },
      words('seen', labels.seen, seen.join(', ')),
      ...(isRemembered(case_)
        ? [words('claim', labels.claim, TEXTS.trade, { basis: 'from memory' })]
        : []),
    ],
    next: next.predict,
  }
}

/** What was spent, and what follows from what was bought. */
export function buyTold({ seen, spent, superheat, subcooling }: Known): Told {
  return {
    level: 'information',
    headline: headlines[spent.si > 0 ? 'buy' : 'buy-first'],
    figures: [
      { id: 'spent', label: labels.spent, value: spent, says: says.spent },
      ...entry('superheat', labels.superheat, superheat, { says: says.superheat }),
      ...entry('subcooling', labels.subcooling, subcooling, { says: says.subcooling }),
      words('seen', labels.seen, seen.join(', ')),
    ],
    next: next.buy,
  }
}

/** What it was, what the saying misses, and what parts it from the likeliest other. */
export function revealTold(
  { case_, spent }: Known,
  reveal: Reveal,
  named: Named,
  graded: readonly Graded[],
  of: { readonly size: Present | undefined; readonly capacity: Quantity; readonly sound: Quantity },
): Told {
  const { cause, topic } = case_
  const other = reveal.others.find((each) => each.cause === named) ?? reveal.others[0]
  const right = graded.filter(({ predicted, expected }) => predicted === expected).length
  const basis = isRemembered(case_) ? { basis: 'from memory' as const } : {}
  return {
    level: 'information',
    // `{spent}` stays: it is a figure
    headline: headlines[reveal.verdict]
      .replace('{cause}', wordsOf(cause))
      .replace('{named}', wordsOf(named)),
    figures: [
      { id: 'spent', label: labels.spent, value: spent, says: says.spent },
      ...(of.size
        ? [
            {
              id: 'cause',
              label: labels.cause,
              value: of.size.size,
              says: SIMULATED.settings[of.size.setting],
            },
          ]
        : []),
      {
        id: 'capacity',
        label: labels.capacity,
        value: of.capacity,
        says: says.capacity,
        step: POWER_STEP_W,
        beside: { sound: { value: of.sound, step: POWER_STEP_W } },
      },
      words('predicted', labels.predicted, `${right} of ${graded.length}`, {
        says: says.predicted,
      }),
      words('claim', labels.claim, topic.claim, { says: topic.broken, ...basis }),
      ...(other ? [partsFigure(case_, other)] : []),
    ],
    next: next.reveal,
  }
}

/** The reading that parts the case from another cause. */
function partsFigure(case_: LessonCase, { cause, parting }: Reveal['others'][number]): Figure {
  const other = wordsOf(cause)
  if (!parting)
    return words('parts', labels.parts, TEXTS.nothing, {
      says: says.noParts.replace('{other}', other),
    })
  const shown = (value: number) => ({ value: shownFeature(OFFERS[parting.offer], value, case_) })
  return words('parts', labels.parts, TEXTS.readings[parting.offer], {
    says: says.parts.replace('{other}', other),
    beside: { would: shown(parting.would), shows: shown(parting.shows) },
  })
}
