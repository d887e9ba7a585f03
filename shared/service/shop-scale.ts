import { withInstrument } from '../instrument/index.ts'
import type { Notes } from '../notes.ts'
import { mass, type Quantity, widthOf } from '../quantity/index.ts'

/**
 * What a scale of the shop is off where nothing is said of it, kg; the assumption is noted.
 *
 * @param like - A mass that somebody wrote: the assumption is told in its unit system.
 */
export function shopScale(
  like: Quantity<'mass'> | undefined,
  { assumptions, sources }: Pick<Notes, 'assumptions' | 'sources'>,
): number {
  const unread = (like ?? mass(0)).within(undefined)
  const { reading, assumption, source } = withInstrument(unread, 'scale', 'scaleTolerance')
  if (assumption) assumptions.push(assumption)
  if (source) sources.push(source)
  return widthOf(reading)
}
