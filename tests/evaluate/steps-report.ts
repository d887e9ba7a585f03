import { POLICIES, type Way, ways } from './steps.ts'
import { meanOf, shareWhere } from './summary.ts'

/** Steps and minutes to nine tenths by information for the minute, by a fixed order, and at random. */
export function stepsReport(count: number, seed: number): string {
  const lines = ['', '## Reading on from two gauges until one cause holds nine tenths', '']
  lines.push('| machine | order | machines | reached | right | steps | minutes |')
  lines.push('|---|---|---|---|---|---|---|')
  for (const level of ['model', 'kind'] as const) {
    const all: Way[] = [...ways(count, seed, level)].flat()
    for (const policy of POLICIES) {
      const own = all.filter((way) => way.policy === policy)
      lines.push(
        `| ${level} | ${policy} | ${own.length} | ${percent(shareWhere(own, ({ reached }) => reached))} | ${percent(shareWhere(own, ({ right }) => right))} | ${meanOf(own, ({ steps }) => steps).toFixed(1)} | ${meanOf(own, ({ minutes }) => minutes).toFixed(1)} |`,
      )
    }
  }
  return lines.join('\n')
}

export const percent = (share: number) =>
  Number.isNaN(share) ? '–' : `${(100 * share).toFixed(0)} %`
