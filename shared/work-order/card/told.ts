import type { Figure, Told } from '../../answer/told.ts'
import type { Card } from './card.ts'

/** The order in one sentence: what forbids the work, else how far it is and what comes next. */
export function toldOf({ stops, steps }: Card): Told {
  const done = steps.filter((step) => step.done).length
  const open = steps.find((step) => !step.done)
  const progress: readonly Figure[] = [
    { id: 'done', label: 'Done', value: done, says: 'steps' },
    { id: 'steps', label: 'Steps', value: steps.length, says: 'in this visit' },
  ]
  const [stop] = stops
  if (stop) {
    const figures = Object.entries(stop.values).flatMap(([id, value]): readonly Figure[] =>
      typeof value === 'object' && 'value' in value ? [{ label: id, ...value, id }] : [],
    )
    return {
      level: 'stop',
      headline: stop.text,
      figures: figures.slice(0, 4),
      next: open ? [`Then: ${open.title.toLowerCase()}.`] : [],
    }
  }
  if (!open) {
    return {
      level: 'fine',
      headline: 'All {steps} steps are written down: sign the records.',
      figures: progress,
      next: [],
    }
  }
  return {
    level: 'check',
    headline: `{done} of {steps} steps are written down; next: ${open.title.toLowerCase()}.`,
    figures: progress,
    next: [],
  }
}
