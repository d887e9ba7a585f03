import { isCarbonDioxide, pickRefrigerant } from '../../fields/index.ts'
import { asking, type Build, isAnswered, onPaper, outcomeLines } from './built.ts'
import { plainly, says, shortened, task, told, written } from './lines.ts'

/** Named parts on a card; the appendix has them all. */
const MOST_PARTS = 6
const LONGEST_PART = 30

/** Out of the machine: recovered, or with carbon dioxide let out. */
export const recover: Build = ({ recovery, oil, refrigerant }, outcomes) => {
  if (isCarbonDioxide(pickRefrigerant(refrigerant))) {
    return onPaper(...outcomeLines(outcomes.recovery), task('let-out'))
  }
  const values = {
    recovered: written(recovery?.recovered, 'mass'),
    oil: written(oil?.recoveredOil, 'volume'),
  }
  const lines = [
    ...outcomeLines(outcomes.recovery),
    task('hoses-purged'),
    task('stays-down'),
    task('came-out', values),
  ]
  return asking('recover', lines, values, isAnswered(outcomes.recovery))
}

export const open: Build = () => onPaper(task('proved-empty'), task('cap-at-once'))

/** The parts that go in, the drier last. */
export const replace: Build = ({ parts = [], job }) => {
  const names = parts
    .slice(0, MOST_PARTS)
    .map(({ name, part }) => shortened(name ?? part ?? 'a part', LONGEST_PART))
  const more = parts.length - names.length
  return onPaper(
    ...(names.length === 0 ? [] : [told(plainly(names.join(', ')))]),
    ...(more > 0 ? [says('more-parts', { count: String(more) })] : []),
    task('seals'),
    ...(job === 'couplers-parted' ? [] : [task('drier-last')]),
  )
}

/** How much oil goes in. */
export const oil: Build = ({ record }, { oil: outcome }) => {
  if (outcome.state === 'failed') return onPaper(...outcomeLines(outcome))
  const values = { oil: written(record?.oilAdded, 'volume') }
  const nothing = outcome.state === 'done' && outcome.computation.result.pourIn.si === 0
  return nothing && !record?.oilAdded
    ? onPaper(...outcomeLines(outcome))
    : asking('oil', [...outcomeLines(outcome), task('oil-in', values)], values, isAnswered(outcome))
}
