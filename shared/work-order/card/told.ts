import data from '../../../data/service/card.json' with { type: 'json' }
import type { Sentence } from '../../answer/sentence.ts'
import { type Figure, LONGEST_HEADLINE, MOST_NEXT, type Told } from '../../answer/told.ts'
import type { Card, CardStep } from './schema.ts'
import type { Stop } from './stops.ts'

const { headlines, labels, meanings } = data.told

/** The order in one sentence: what forbids the work, else how far it is and what comes next. */
export function toldOf({ steps }: Card, stops: readonly Stop[]): Told {
  const [stop] = stops
  const open = nextOpen(steps)
  if (stop) return stopTold(stop, open)
  const asking = steps.filter(({ asks }) => asks)
  const figures: readonly Figure[] = [
    {
      id: 'done',
      label: labels.done,
      value: asking.filter(({ done }) => done).length,
      says: meanings.done,
    },
    { id: 'steps', label: labels.steps, value: asking.length, says: meanings.steps },
  ]
  if (!open) return { level: 'fine', headline: headlines.done, figures, next: data.told.next.done }
  return {
    level: 'check',
    headline: headlines.open.replace('%STEP%', open.title.toLowerCase()),
    figures,
    next: [],
  }
}

/** A stop-line as the headline, with the figures that it names. */
function stopTold({ says, next }: Stop, open: CardStep | undefined): Told {
  const text = shortened(says)
  const figures = Object.entries(says.values).flatMap(([id, value]): readonly Figure[] =>
    typeof value === 'object' && 'value' in value && text.includes(`{${id}`)
      ? [{ label: id, ...value, id }]
      : [],
  )
  const then = open ? [headlines.then.replace('%STEP%', open.title.toLowerCase())] : []
  return { level: 'stop', headline: text, figures, next: [...next, ...then].slice(0, MOST_NEXT) }
}

/** A refusal may be long: its first sentence is the headline then, and the card has it in whole. */
const shortened = ({ text }: Sentence) =>
  text.length <= LONGEST_HEADLINE
    ? text
    : `${(/^.*?[.:;](?=\s)/su.exec(text)?.[0] ?? text).slice(0, LONGEST_HEADLINE - 1).replace(/[.:;\s]+$/u, '')}.`

/** The step that comes next: the first open one behind the last that is done, else the first that was left out. */
function nextOpen(steps: readonly CardStep[]): CardStep | undefined {
  const asking = steps.filter(({ asks }) => asks)
  const last = asking.findLastIndex(({ done }) => done)
  const open = asking.filter(({ done }) => !done)
  const behind = asking.slice(last + 1).find(({ done }) => !done)
  // What was not read before the work cannot be read behind it.
  return behind ?? (last < 0 ? undefined : open.find(({ id }) => id !== 'before')) ?? open[0]
}
