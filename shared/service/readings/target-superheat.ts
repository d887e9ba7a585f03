import data from '../../../data/service/target-superheat.json' with { type: 'json' }
import { CalcError } from '../../errors.ts'
import { quantity } from '../../quantity/index.ts'
import type { Source } from '../../sources.ts'
import { type ReadingSourceId, readingSource } from './sources.ts'

const difference = (fahrenheit: number) => quantity('temperatureDifference', fahrenheit, '°F').si

/** Half-width of the band around the target, K. */
export const TARGET_TOLERANCE_K = difference(data.tolerance.plusMinusF)
/** Superheat below which a machine floods, K: no target and no band goes under it. */
export const LEAST_SUPERHEAT_K = difference(data.least.targetF)
/** Outdoor air below which the charge test is not defined, K (55 °F). */
export const COLDEST_TEST_K = quantity('temperature', data.coldest.outdoorDryBulbF, '°F').si
/** Behind the width of the band, and the least target. */
export const TOLERANCE_SOURCES = [
  readingSource('superheat-table-r410a'),
  readingSource('ra3.2-2008'),
]
export const COLDEST_TEST_SOURCE = readingSource('ra3.2-2013')

interface TargetSuperheat {
  /** K */
  readonly targetK: number
  readonly method: 'published-table' | 'formula'
  readonly sources: readonly Source[]
}

const columns = data.indoorWetBulbF
const rows: readonly {
  outdoorDryBulbF: number
  source: string
  targetF: readonly (number | null)[]
}[] = data.rows

/**
 * Target superheat of a stationary machine with a fixed orifice.
 *
 * Inside the published table (40 to 115 °F outdoors, 50 to 76 °F wet bulb) it interpolates between
 * cells where all of them exist; a dash among them means that no valid test is possible. Outside the
 * table stands the common formula, which has no primary source.
 *
 * @param outdoorDryBulbK - Air entering the condenser, K.
 * @param indoorWetBulbK - Wet bulb of the air entering the evaporator, K.
 * @throws {CalcError} `refused` where the table shows a dash, or the formula gives less than 5 °F.
 */
export function targetSuperheat(outdoorDryBulbK: number, indoorWetBulbK: number): TargetSuperheat {
  const outdoorF = tidy(quantity('temperature', outdoorDryBulbK, 'K').to('°F'))
  const wetBulbF = tidy(quantity('temperature', indoorWetBulbK, 'K').to('°F'))
  const down = bracket(
    rows.map((row) => row.outdoorDryBulbF),
    outdoorF,
  )
  const across = bracket(columns, wetBulbF)
  if (down && across) return fromTable(down, across)
  const hottest = rows.at(-1)
  // Where the hottest row shows a dash, hotter air allows no test either.
  if (hottest && across && outdoorF > hottest.outdoorDryBulbF) {
    fromTable([{ index: rows.length - 1, weight: 1 }], across)
  }
  return fromFormula(outdoorF, wetBulbF)
}

/** Neighbours on an axis with their weights; one alone when the value meets it. */
type Bracket = readonly { readonly index: number; readonly weight: number }[]

function bracket(axis: readonly number[], value: number): Bracket | undefined {
  const met = axis.indexOf(value)
  if (met >= 0) return [{ index: met, weight: 1 }]
  const above = axis.findIndex((entry) => entry > value)
  const [low, high] = [axis[above - 1], axis[above]]
  if (low === undefined || high === undefined) return undefined
  const share = (value - low) / (high - low)
  return [
    { index: above - 1, weight: 1 - share },
    { index: above, weight: share },
  ]
}

function fromTable(down: Bracket, across: Bracket): TargetSuperheat {
  let targetF = 0
  const sources = new Set<string>()
  for (const { index, weight } of down) {
    const row = rows[index]
    if (row) sources.add(row.source)
    for (const column of across) {
      const cell = row?.targetF[column.index] ?? undefined
      if (cell === undefined) throw noTest('The table of target superheat shows a dash here')
      targetF += weight * column.weight * cell
    }
  }
  return {
    targetK: difference(targetF),
    method: 'published-table',
    sources: [...sources].map((id) => readingSource(id as ReadingSourceId)),
  }
}

function fromFormula(outdoorF: number, wetBulbF: number): TargetSuperheat {
  const targetF = (3 * wetBulbF - 80 - outdoorF) / 2
  if (!(targetF >= data.least.targetF))
    throw noTest('The formula gives less than 5 °F (2.8 K) here')
  return {
    targetK: difference(targetF),
    method: 'formula',
    sources: [readingSource('superheat-formula')],
  }
}

const noTest = (why: string) =>
  new CalcError(
    'refused',
    `${why}: it is too hot outside or too dry inside for a valid superheat test, and charging could flood the compressor.`,
    { hint: 'Come back in other weather, or recover and weigh in the charge.' },
  )

/** Conversions leave noise in the last digits; a reading of 95 °F must meet the row of 95 °F. */
const tidy = (value: number) => Number(value.toFixed(9))
