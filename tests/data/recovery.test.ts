import { describe, expect, it } from 'vitest'
import * as z from 'zod'
import data from '../../data/service/recovery.json' with { type: 'json' }
import { quantity } from '../../shared/quantity/index.ts'
import { refrigerant, saturationPressure } from '../../shared/refrigerant/index.ts'

const source = z.enum(Object.keys(data.sources) as [string, ...string[]])
const figure = (...units: [string, ...string[]]) =>
  z.strictObject({ value: z.number().positive(), unit: z.enum(units) })
const share = z.strictObject({
  fraction: z.number().min(0.5).max(1),
  within: figure('min'),
  from: figure('°F'),
  to: figure('°F'),
  source,
})

const file = z.strictObject({
  sources: z.record(z.string(), z.looseObject({ title: z.string().min(10), mark: z.string() })),
  fillFraction: z.strictObject({ value: z.literal(0.8), source }),
  grossRatingFraction: z.strictObject({
    value: z.literal(0.6),
    refrigerant: z.literal('R-12'),
    source,
  }),
  fillingDensity: z.array(
    z.strictObject({
      refrigerant: z.string().regex(/^R-\d+[a-z]?$/u),
      ofWaterCapacity: z.number().min(0.3).max(1.3),
      source,
    }),
  ),
  servicePressure: z.strictObject({ factor: z.number().min(1), at: figure('°F'), source }),
  overfillCutOff: z.strictObject({ fraction: z.number().max(1), at: figure('°F'), source }),
  requalificationYears: z.strictObject({ value: z.int().positive(), source }),
  recoveryShare: share,
  recoveryShareCold: share,
  warmUp: z.strictObject({ atMost: figure('min'), rpm: z.int().positive(), source }),
  recoveryWait: z.strictObject({ unitOff: figure('min'), stable: figure('min'), source }),
  airCheckRest: z.strictObject({
    value: z.number().positive(),
    unit: z.literal('h'),
    atLeast: figure('°F'),
    source,
  }),
  indicatedRecovered: z.strictObject({ plusMinus: figure('g'), source }),
  pressureClasses: z.looseObject({ source }),
  evacuationLevels: z.looseObject({ source }),
  statements: z.record(z.string(), z.strictObject({ text: z.string().min(20), source })),
  commonServicePressures: z.strictObject({
    values: z.array(z.int().positive()).min(1),
    unit: z.literal('psi'),
    source,
  }),
  stampedWithin: z.strictObject({
    value: z.number().positive(),
    unit: z.literal('lb'),
    note: z.string(),
  }),
  smallAppliance: z.strictObject({ vacuum: z.literal('4 inHg vac'), source }),
  reasons: z.record(z.string(), z.string().min(20)),
  refusals: z.record(z.string(), z.tuple([z.string().min(20), z.string().min(20)])),
  warnings: z.record(z.string(), z.string().min(20)),
  told: z.looseObject({ headlines: z.record(z.string(), z.string().max(160)) }),
})

describe('data/service/recovery.json', () => {
  it('fits its schema, key by key, and cites sources that are there', () => {
    file.parse(data)
  })

  it('names in its 2015 sources the edition, and calls none of them current', () => {
    for (const [id, entry] of Object.entries(data.sources)) {
      const isOld = 'url' in entry && entry.url.includes('18F/allregs')
      expect(entry.title.includes('2015 edition'), id).toBe(isOld)
      expect(entry.title, id).not.toMatch(/current/iu)
    }
  })

  it('holds what makes a 350-psi cylinder too weak for R-410A and R-32, and fit for R-134a', () => {
    const hottestK = quantity('temperature', data.servicePressure.at.value, '°F').si
    const psig = (name: string) =>
      (saturationPressure(refrigerant(name), hottestK, 'bubble') - 101_325) / 6894.757
    const allowed = data.servicePressure.factor * 350
    expect(allowed).toBe(437.5)
    expect(psig('R-410A')).toBeCloseTo(484, -0.5)
    expect(psig('R-32')).toBeCloseTo(496, -0.5)
    expect(psig('R-410A')).toBeGreaterThan(allowed)
    expect(psig('R-32')).toBeGreaterThan(allowed)
    expect(psig('R-134a')).toBeLessThan(allowed)
  })
})
