import { groupBy } from './group.ts'
import type { Mutant, Verdict } from './types.ts'

const oneLine = (text: string): string => {
  const flat = text.replace(/\s+/gu, ' ').trim()
  return flat.length > 70 ? `${flat.slice(0, 69)}…` : flat
}

/** `shared/quantity/parse.ts:199 comparison: === → !==` */
export function describeMutant({ file, line, operator, was, becomes }: Mutant): string {
  const change = becomes.trim() === '' || becomes === ';' ? `${was} gone` : `${was} → ${becomes}`
  return `${file}:${line} ${operator}: ${oneLine(change)}`
}

export function describeVerdict({ mutant, fate, seconds, by, looked }: Verdict): string {
  const who = fate === 'survived' ? `${looked} test files saw nothing` : (by ?? 'the run itself')
  return `${fate.padEnd(8)} ${seconds.toFixed(1).padStart(5)} s  ${describeMutant(mutant)}  (${oneLine(who)})`
}

const isKilled = ({ fate }: Verdict): boolean => fate !== 'survived'

/** Killed of drawn, by room and in all, then every survivor. */
export function report(verdicts: readonly Verdict[], seed: number): string {
  const row = (name: string, list: readonly Verdict[]): string => {
    const killed = list.filter(isKilled).length
    const share = ((100 * killed) / Math.max(1, list.length)).toFixed(0)
    return `${name.padEnd(14)} ${String(killed).padStart(4)} of ${String(list.length).padStart(4)}  ${share.padStart(3)} %`
  }
  const rooms = groupBy(verdicts, ({ mutant }) => mutant.room)
  const survivors = verdicts.filter((verdict) => !isKilled(verdict))
  return [
    `Killed by the tests, golden screens and snapshots off, seed ${seed}:`,
    ...[...rooms].map(([room, list]) => row(room, list)),
    row('in all', verdicts),
    '',
    survivors.length === 0 ? 'No survivors.' : 'Survivors:',
    ...survivors.map(({ mutant }) => `  ${describeMutant(mutant)}`),
  ].join('\n')
}
