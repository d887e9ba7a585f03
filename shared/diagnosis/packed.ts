import { FAULT_KINDS, type FaultKind } from '../cycle/index.ts'
import type { Columns, Effect } from './effects.ts'
import { FEATURES } from './features.ts'
import { NUISANCES, SPREAD } from './nuisance.ts'

/** Effects of one machine as whole numbers, to be small. */
export interface Packed {
  /** Readings of the sound machine, in the order of FEATURES, in steps. */
  readonly sound: readonly number[]
  /** By cause: changes by each nuisance, a row of FEATURES each, in steps for one spread. */
  readonly columns: Readonly<Record<string, readonly number[]>>
  /** By fault: at each severity severity in hundredths, impact in thousandths, change of FEATURES in steps. */
  readonly faults: Readonly<Record<string, readonly number[]>>
}

/** Smallest step of each of FEATURES: Pa, K and share; far below what an instrument shows. */
const STEPS = [200, 500, 0.05, 0.05, 0.05, 0.05, 0.1, 0.05, 0.05, 0.001] as const
const WIDTH = FEATURES.length + 2

/** To whole numbers: for the program that writes the table. */
export function packed(effects: readonly Effect[]): Packed {
  const [sound] = effects
  if (sound === undefined) throw new Error('nothing to pack')
  const inSteps = (value: number, i: number) => Math.round(value / (STEPS[i] as number)) || 0
  const columns: Record<string, number[]> = {}
  const faults: Record<string, number[]> = {}
  for (const effect of effects) {
    columns[effect.cause] ??= effect.columns.flatMap((column, k) => {
      const size = SPREAD[NUISANCES[k] as (typeof NUISANCES)[number]]
      return Array.from(column, (value, i) => inSteps(value * size, i))
    })
    if (effect.cause === 'none') continue
    faults[effect.cause] = [
      ...(faults[effect.cause] ?? []),
      Math.round(effect.severity * 100),
      Math.round(effect.impact * 1000),
      ...Array.from(effect.mean, (value, i) => inSteps(value - (sound.mean[i] as number), i)),
    ]
  }
  return { sound: Array.from(sound.mean, inSteps), columns, faults }
}

/** Back to SI. */
export function unpacked({ sound, columns, faults }: Packed): readonly Effect[] {
  const mean = Float64Array.from(sound, (value, i) => value * (STEPS[i] as number))
  const columnsOf = (cause: string): Columns => {
    const row = columns[cause] ?? columns.none ?? []
    return NUISANCES.map((name, k) =>
      Float64Array.from(
        FEATURES,
        (_, i) => ((row[k * FEATURES.length + i] ?? 0) * (STEPS[i] as number)) / SPREAD[name],
      ),
    )
  }
  const found: Effect[] = [
    { cause: 'none', severity: 0, impact: 0, mean, columns: columnsOf('none') },
  ]
  for (const cause of FAULT_KINDS as readonly FaultKind[]) {
    const row = faults[cause]
    if (row === undefined) continue
    const own = columnsOf(cause)
    for (let at = 0; at < row.length; at += WIDTH) {
      found.push({
        cause,
        severity: (row[at] as number) / 100,
        impact: (row[at + 1] as number) / 1000,
        mean: mean.map((value, i) => value + (row[at + 2 + i] as number) * (STEPS[i] as number)),
        columns: own,
      })
    }
  }
  return found
}
