import data from '../../../data/service/vacuum-limits.json' with { type: 'json' }
import {
  absolutePressure,
  compareWithBand,
  readQuantity,
  SEA_LEVEL_PA,
} from '../../quantity/index.ts'
import { sourceTable } from '../../source-table.ts'
import { MARKS, type Source } from '../../sources.ts'
import type { RisePoint } from './rise-shape.ts'

export const vacuumSource = sourceTable(data.sources)

/** What is aimed at where no maker says otherwise. */
export const practice = {
  ...data.practice,
  mark: MARKS[vacuumSource(data.practice.source as 'micron-practice').mark],
} as const

interface LimitRow {
  readonly id: string
  readonly rule: string
  readonly rise?: string
  readonly stays?: string
  /** How long the rule watches, where it says so. */
  readonly within?: string
  readonly source: string
}

const ROWS: readonly LimitRow[] = data.rows

export const HOLD_LIMITS = data.rows.map(({ id }) => id) as [string, ...string[]]

interface HoldLimit {
  readonly id: string
  readonly rule: string
  /** Permitted rise, Pa, where the rule has one. */
  readonly risePa: number | undefined
  /** Highest permitted pressure, Pa absolute, where the rule has one. */
  readonly staysPa: number | undefined
  /** How long it watches, s; undefined where the source prints no time. */
  readonly withinS: number | undefined
  /** Whether its figure is a gauge's, printed for sea level. */
  readonly atSeaLevel: boolean
  readonly source: Source
}

/** A published rule for holding a vacuum; gauge figures are taken at sea level, as they were printed. */
export function holdLimit(id: string): HoldLimit | undefined {
  const row = ROWS.find((entry) => entry.id === id)
  if (!row) return undefined
  const stays = row.stays
    ? readQuantity(row.stays, ['gaugePressure', 'absolutePressure'])
    : undefined
  return {
    id: row.id,
    rule: row.rule,
    risePa: row.rise ? readQuantity(row.rise, ['pressureDifference']).si : undefined,
    staysPa: stays && (stays.kind === 'gaugePressure' ? SEA_LEVEL_PA + stays.si : stays.si),
    withinS: row.within === undefined ? undefined : readQuantity(row.within, ['duration']).si,
    atSeaLevel: stays?.kind === 'gaugePressure',
    source: vacuumSource(row.source as never),
  }
}

type LimitVerdict = 'kept' | 'broken' | 'cannot-tell' | 'too-short-to-tell'

/**
 * Whether the readings keep a rule. One that prints no time can be broken, but never kept: how long
 * is long enough, nobody said.
 *
 * @param scatterPa - Standard deviation of one reading, Pa: a rise is uncertain by twice √2 of it.
 * @param levelPlusMinusPa - Expanded uncertainty of the level, Pa.
 */
export function judgeLimit(
  limit: Pick<HoldLimit, 'risePa' | 'staysPa' | 'withinS'>,
  points: readonly RisePoint[],
  scatterPa: number,
  levelPlusMinusPa: number,
): { readonly verdict: LimitVerdict; readonly risePa: number; readonly atEndPa: number } {
  const first = points[0] ?? { timeS: 0, pressurePa: 0 }
  const last = points.at(-1) ?? first
  const endS = limit.withinS === undefined ? last.timeS : first.timeS + limit.withinS
  const atEndPa = pressureAt(points, endS)
  const risePa = atEndPa - first.pressurePa
  const checks = [
    ...(limit.risePa === undefined
      ? []
      : [
          compareWithBand(
            { si: risePa, plusMinus: 2 * Math.SQRT2 * scatterPa },
            Number.NEGATIVE_INFINITY,
            limit.risePa,
          ),
        ]),
    ...(limit.staysPa === undefined
      ? []
      : [
          compareWithBand(
            { si: atEndPa, plusMinus: levelPlusMinusPa },
            Number.NEGATIVE_INFINITY,
            limit.staysPa,
          ),
        ]),
  ]
  const longEnough = last.timeS >= endS
  const found = checks.includes('above')
    ? 'broken'
    : checks.includes('cannot-tell') || limit.withinS === undefined
      ? 'cannot-tell'
      : longEnough
        ? 'kept'
        : 'too-short-to-tell'
  return { verdict: found, risePa, atEndPa }
}

/** Pressure at a time between the readings, by a straight line; the last reading beyond them. */
function pressureAt(points: readonly RisePoint[], timeS: number): number {
  const next = points.findIndex((point) => point.timeS >= timeS)
  const after = points[next]
  const before = points[next - 1]
  if (!after) return points.at(-1)?.pressurePa ?? 0
  if (!before) return after.pressurePa
  const share = (timeS - before.timeS) / (after.timeS - before.timeS)
  return before.pressurePa + share * (after.pressurePa - before.pressurePa)
}

/** The deepest pressure that a rule lets stand, for comparison with water's vapour pressure. */
export const permitted = (limit: HoldLimit, startPa: number) =>
  absolutePressure(
    Math.max(limit.staysPa ?? 1, limit.risePa === undefined ? 1 : startPa + limit.risePa),
  )
