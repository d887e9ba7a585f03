import { describe, expect, it } from 'vitest'
import table from '../../../data/service/designations.json' with { type: 'json' }
import data from '../../../data/service/property-uncertainty.json' with { type: 'json' }
import {
  refrigerant,
  refrigerants,
  saturationTemperature,
} from '../../../shared/refrigerant/index.ts'
import {
  densityUncertainty,
  mixingUncertainty,
  pairsOf,
  propertyUncertainty,
} from '../../../shared/refrigerant/property-uncertainty.ts'
import { MIXING_DATA } from '../../../shared/substance/mixing-rules.ts'

const ROOM = 298.15
const at = (id: string, kelvin = ROOM, line: 'bubble' | 'dew' = 'bubble') =>
  propertyUncertainty(refrigerant(id), kelvin, line)

describe('the property’s own uncertainty', () => {
  it('of a pure refrigerant is that of its equation: 0.3 % in pressure, a tenth of a kelvin', () => {
    const found = at('R-134a')
    expect(found.basis).toBe('pure')
    expect(found.pressure).toBeCloseTo(0.003, 5)
    // 2.9 % a kelvin at room temperature
    expect(found.temperatureK).toBeCloseTo(0.003 / 0.029, 2)
    expect(found.sources.map(({ id }) => id)).toEqual(['pure-equation-uncertainty', 'curve-fit'])
  })

  it('of HFC blends is what their paper states, 0.5 %', () => {
    for (const id of ['R-407C', 'R-404A', 'R-410A']) {
      expect(at(id)).toMatchObject({ basis: 'published', pressure: expect.closeTo(0.005, 5) })
      expect(at(id).sources[0]).toMatchObject({
        id: 'lemmon-jacobsen-2004-uncertainty',
        mark: 'verified',
      })
    }
  })

  it('of other published pairs is that of the weakest of them', () => {
    expect(at('R-454B').pressure).toBeCloseTo(0.01, 5)
    expect(at('R-422D').pressure).toBeCloseTo(0.03, 5)
    expect(mixingUncertainty(['R-12', 'R-134a'])?.pressure).toBe(0.03)
  })

  it('of estimated pairs is in kelvin: 4, or less where the distance is known', () => {
    expect(mixingUncertainty(['R-22', 'R-124'])).toMatchObject({
      basis: 'estimated',
      temperatureK: 4,
    })
    for (const [id, kelvin] of [
      ['R-401A', 1.8],
      ['R-408A', 1.3],
      ['R-409A', 1.6],
      ['R-413A', 4],
    ] as const) {
      expect(at(id)).toMatchObject({ basis: 'estimated', temperatureK: expect.closeTo(kelvin, 2) })
      expect(at(id).sources[0]).toMatchObject({ id: 'handbook-boiling-points', mark: 'verified' })
    }
  })

  it('turns pressure into temperature by the slope of the line, to its ends', () => {
    for (const { id } of refrigerants()) {
      const r = refrigerant(id)
      for (const line of ['bubble', 'dew'] as const) {
        const { fromK, toK } = r[line]
        for (const kelvin of [fromK, (fromK + toK) / 2, 0.97 * toK]) {
          const { pressure, temperatureK } = propertyUncertainty(r, kelvin, line)
          const pascal = r[line].pressure(kelvin)
          const step = 2e-3
          const moved = saturationTemperature(r, pascal * (1 + step), line) - kelvin
          expect(temperatureK / ((pressure * moved) / step)).toBeCloseTo(1, 1)
        }
        for (const kelvin of [fromK, toK]) {
          const { pressure, temperatureK } = propertyUncertainty(r, kelvin, line)
          expect(pressure).toBeGreaterThanOrEqual(0.003)
          expect(pressure).toBeLessThan(0.5)
          expect(temperatureK).toBeGreaterThan(0)
          expect(temperatureK).toBeLessThan(5)
        }
      }
    }
  })

  it('of a density follows its phase and what it is made of', () => {
    expect(densityUncertainty(refrigerant('R-134a'), 'liquid')).toBeCloseTo(0.002, 4)
    expect(densityUncertainty(refrigerant('R-134a'), 'vapour')).toBeCloseTo(0.005, 4)
    expect(densityUncertainty(refrigerant('R-407C'), 'liquid')).toBeCloseTo(0.002, 4)
    expect(densityUncertainty(refrigerant('R-409A'), 'liquid')).toBeCloseTo(0.01, 4)
  })
})

describe('the sizes it rests on', () => {
  it('cover the distance from published boiling points, of every blend that has a size of its own', () => {
    const printed: Readonly<Record<string, { bubbleC?: number; dewC?: number; source: string }>> =
      table.designations
    for (const [id, { temperatureK }] of Object.entries(data.blends)) {
      const { bubbleC = Number.NaN, dewC = Number.NaN, source } = printed[id] ?? { source: 'none' }
      expect(source, id).toBe('handbook-2021')
      const points = [bubbleC, dewC]
      const off = (['bubble', 'dew'] as const).map((line, i) =>
        Math.abs(saturationTemperature(refrigerant(id), 101_325, line) - 273.15 - (points[i] ?? 0)),
      )
      expect(temperatureK).toBeGreaterThanOrEqual(1)
      expect(temperatureK).toBeGreaterThan(Math.max(...off) - 0.1)
      expect(temperatureK).toBeLessThan(Math.max(1.01, ...off.map((k) => k + 0.5)))
    }
  })

  it('belong to papers that are there, and every blend of estimated pairs has one', () => {
    const dois = MIXING_DATA.map(({ doi }) => doi)
    for (const doi of Object.keys(data.publishedPairs)) {
      if (doi !== 'other') expect(dois).toContain(doi)
    }
    for (const { id, composition } of refrigerants()) {
      const pairs = pairsOf(composition.map(({ substance }) => substance))
      const estimated = pairs.some(({ rule }) => rule.basis === 'estimated')
      if (estimated) expect(Object.keys(data.blends)).toContain(id)
    }
  })
})
