import { describe, expect, it } from 'vitest'
import * as z from 'zod'
import bands from '../../data/service/charge-bands.json' with { type: 'json' }
import instruments from '../../data/service/instruments.json' with { type: 'json' }
import sources from '../../data/service/reading-sources.json' with { type: 'json' }
import table from '../../data/service/target-superheat.json' with { type: 'json' }
import { source } from '../../shared/sources.ts'

const { id: _, ...sourceFields } = source.shape
const sourceRow = z.strictObject(sourceFields)
const known = (table: object) => z.enum(Object.keys(table) as [string, ...string[]])
const readingSource = known(sources.sources)
const instrumentSource = known(instruments.sources)
const id = z.string().regex(/^[a-z0-9.-]+$/u)

describe('data of the readings', () => {
  it('sources are complete', () => {
    z.record(z.string(), sourceRow).parse(sources.sources)
    z.record(z.string(), sourceRow).parse(instruments.sources)
  })

  it('instruments: each has its limits and its source, and no id twice', () => {
    const percent = z.number().positive().max(10)
    z.strictObject({
      sources: z.unknown(),
      instruments: z.record(
        z.string(),
        z.strictObject({
          name: z.string(),
          plusMinus: z.strictObject({ value: z.number().positive(), unit: z.string() }),
          percentOfReading: z.number().positive().max(20).optional(),
          source: instrumentSource,
        }),
      ),
      lowSideGaugeReaches: z.strictObject({
        value: z.number().positive(),
        unit: z.string(),
        note: z.string(),
      }),
      weather: z.strictObject({
        plusMinus: z.strictObject({ value: z.number().positive(), unit: z.string() }),
        source: instrumentSource,
      }),
      gauges: z.array(
        z.union([
          z.strictObject({
            id,
            name: z.string(),
            percentOfSpan: z.strictObject({ middle: percent, outer: percent }),
            source: instrumentSource,
          }),
          z.strictObject({
            id,
            name: z.string(),
            plusMinusPsi: z.number().positive(),
            source: instrumentSource,
          }),
        ]),
      ),
      thermometers: z.array(
        z.strictObject({
          id,
          name: z.string(),
          fixedK: z.number().positive(),
          slope: z.number().nonnegative().max(0.05),
          rule: z.enum(['sum', 'greater']),
          fromC: z.number(),
          toC: z.number(),
          source: instrumentSource,
        }),
      ),
    }).parse(instruments)
    const ids = [...instruments.gauges, ...instruments.thermometers].map((row) => row.id)
    expect(new Set(ids).size).toBe(ids.length)
    for (const row of instruments.thermometers) expect(row.fromC).toBeLessThan(row.toC)
  })

  it('EN 837-1 classes are named for their limit', () => {
    for (const row of instruments.gauges) {
      const named = /^en-837-1-class-(.+)$/u.exec(row.id)?.[1]
      if (named !== undefined && 'percentOfSpan' in row) {
        expect(row.percentOfSpan).toEqual({ middle: Number(named), outer: Number(named) })
      }
    }
  })

  it('target superheat: every row has a cell for every column, and dashes only at its left', () => {
    z.strictObject({
      tolerance: z.strictObject({ plusMinusF: z.number(), sources: z.array(readingSource) }),
      least: z.strictObject({ targetF: z.number(), sources: z.array(readingSource) }),
      coldest: z.strictObject({ outdoorDryBulbF: z.number(), sources: z.array(readingSource) }),
      indoorWetBulbF: z.array(z.number().int()),
      rows: z.array(
        z.strictObject({
          outdoorDryBulbF: z.number().int(),
          source: readingSource,
          targetF: z.array(z.number().int().min(5).nullable()).length(table.indoorWetBulbF.length),
        }),
      ),
    }).parse(table)
    for (const { targetF } of table.rows) {
      const figures = targetF.filter((cell) => cell !== null)
      expect(targetF.slice(targetF.length - figures.length)).toEqual(figures)
      expect(figures).toEqual([...figures].sort((a, b) => a - b))
    }
  })

  it('bands: each names its source', () => {
    for (const band of Object.values(bands.bands)) readingSource.parse(band.source)
  })
})
