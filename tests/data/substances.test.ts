import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import * as z from 'zod'
import { MARKS } from '../../shared/sources.ts'
import { SUBSTANCES } from '../../shared/substance/library.ts'
import type { SubstanceData } from '../../shared/substance/types.ts'

const folder = new URL('../../data/substances/', import.meta.url)

const positive = z.number().positive()
const list = z.array(z.number()).min(1)
/** Lists of one table have one length. */
const table = <S extends z.ZodRawShape>(shape: S) =>
  z.strictObject(shape).refine((lists) => {
    const lengths = Object.values(lists)
      .filter((value) => Array.isArray(value))
      .map((value) => value.length)
    return new Set(lengths).size === 1
  }, 'lists of one table differ in length')
const whole = z.array(z.number().int().nonnegative()).min(1)

const schema = z.strictObject({
  id: z.string().regex(/^R-\d+[A-Za-z0-9]*(\([EZ]\))?$/u),
  chemicalName: z.string().min(3),
  cas: z.string().regex(/^\d{2,7}-\d\d-\d$/u),
  molarMass: positive.max(0.3),
  gasConstant: z.number().min(8.3144).max(8.3146),
  acentricFactor: positive.max(0.5),
  reducing: z.strictObject({ temperatureK: positive, densityMolPerM3: positive }),
  critical: z.strictObject({
    temperatureK: positive,
    pressurePa: positive,
    densityMolPerM3: positive,
  }),
  triple: z.strictObject({ temperatureK: positive }),
  valid: z.strictObject({
    minimumTemperatureK: positive,
    maximumTemperatureK: positive,
    maximumPressurePa: positive,
  }),
  ideal: z.strictObject({
    a1: z.number(),
    a2: z.number(),
    logTau: z.number(),
    power: table({ n: list, t: list }).optional(),
    planckEinstein: table({ n: list, t: z.array(positive).min(1) }).optional(),
    heatCapacity: table({ c: list, t: list, fromK: positive }).optional(),
  }),
  residual: z.strictObject({
    power: table({ n: list, d: whole, t: list, l: whole }).optional(),
    gaussian: table({
      n: list,
      d: whole,
      t: list,
      eta: list,
      epsilon: list,
      beta: list,
      gamma: list,
    }).optional(),
    exponential: table({ n: list, d: whole, t: list, l: whole, m: list }).optional(),
    nonAnalytic: table({
      n: list,
      a: list,
      b: list,
      beta: list,
      A: list,
      B: list,
      C: list,
      D: list,
    }).optional(),
  }),
  source: z.strictObject({
    citation: z.string().regex(/\(\d{4}.*\)/u, 'a citation gives its year'),
    doi: z.string().startsWith('10.').optional(),
    mark: z.enum(Object.keys(MARKS) as [string, ...string[]]),
    transcribedFrom: z.string(),
  }),
})

const files = readdirSync(folder).filter((name) => name.endsWith('.json'))
const read = (name: string) =>
  JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as SubstanceData

describe.each(files)('data/substances/%s', (name) => {
  const data = read(name)

  it('fits the schema and is named for its designation', () => {
    schema.parse(data)
    expect(`${data.id}.json`).toBe(name)
  })

  it('has a CAS number with a right check digit', () => {
    const digits = data.cas.replaceAll('-', '')
    const sum = [...digits.slice(0, -1)]
      .reverse()
      .reduce((total, digit, i) => total + Number(digit) * (i + 1), 0)
    expect(sum % 10).toBe(Number(digits.at(-1)))
  })

  it('has its limits in order', () => {
    const { triple, critical, valid, reducing } = data
    expect(triple.temperatureK).toBeLessThan(critical.temperatureK)
    expect(valid.minimumTemperatureK).toBeGreaterThanOrEqual(triple.temperatureK - 1e-6)
    expect(valid.maximumTemperatureK).toBeGreaterThan(critical.temperatureK)
    expect(valid.maximumPressurePa).toBeGreaterThan(critical.pressurePa)
    expect(Math.abs(reducing.temperatureK / critical.temperatureK - 1)).toBeLessThan(1e-3)
    expect(Math.abs(reducing.densityMolPerM3 / critical.densityMolPerM3 - 1)).toBeLessThan(0.02)
  })
})

describe('the library', () => {
  it('lists every substance of the folder once', () => {
    expect(SUBSTANCES.map(({ id }) => `${id}.json`).sort()).toEqual([...files].sort())
  })
})
