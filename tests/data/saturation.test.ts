import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import * as z from 'zod'
import { refrigerants } from '../../shared/refrigerant/index.ts'
import type { RefrigerantInfo } from '../../shared/refrigerant/info.ts'
import { type CurveFile, curves } from '../../shared/substance/curve.ts'
import { linesOf } from '../generate/lines.ts'
import { stampOf } from '../generate/stamp.ts'

const folder = (name: string) => new URL(`../../data/${name}/`, import.meta.url)
const read = (name: string, file: string): unknown =>
  JSON.parse(readFileSync(new URL(file, folder(name)), 'utf8'))

const number = z.number()
const pieces = z.strictObject({
  x: z.array(number).min(2),
  c: z.array(z.array(number).min(1)).min(1),
})
const line = z.strictObject({
  fromK: number,
  toK: number,
  fromPa: number,
  toPa: number,
  endK: number,
  endPa: number,
  logPressure: pieces.optional(),
  temperature: pieces.optional(),
  logDensity: pieces,
  enthalpy: pieces,
  entropy: pieces,
})
const schema = z.strictObject({
  id: z.string(),
  madeFrom: z.string().regex(/^[0-9a-f]{16}$/u),
  molarMass: number,
  criticalK: number,
  criticalPa: number,
  raise: z.strictObject({ enthalpy: number, entropy: number }),
  bubble: line.required({ logPressure: true, temperature: true }),
  dew: line,
  largestErrors: z.strictObject({
    temperatureK: number,
    pressureRelative: number,
    densityRelative: number,
    densityRelativeNearCritical: number,
    enthalpyJPerKg: number,
    entropyJPerKgK: number,
  }),
})

const infos = readdirSync(folder('refrigerants'))
  .filter((name) => name.endsWith('.json'))
  .map((name) => read('refrigerants', name) as RefrigerantInfo)

describe.each(infos)('data/saturation of $id', (info) => {
  const file = read('saturation', `${info.id}.json`) as CurveFile

  it('has the shape that the program reads, with pieces that touch', () => {
    const parsed = schema.parse(file)
    expect(parsed.id).toBe(info.id)
    for (const side of [file.bubble, file.dew]) {
      for (const part of Object.values(side)) {
        if (typeof part === 'number') continue
        expect(part.x.length).toBe(part.c.length + 1)
        expect([...part.x].sort((a, b) => a - b)).toEqual(part.x)
      }
      expect(side.fromK).toBeLessThan(side.toK)
      expect(side.endK).toBeGreaterThan(side.toK)
      expect(side.endPa).toBeGreaterThan(side.toPa)
    }
  })

  it('was made from the data as it is now (else: npm run data)', () => {
    expect(file.madeFrom).toBe(stampOf(linesOf(info)))
  })

  it('states errors within what the project promises', () => {
    expect(file.largestErrors.temperatureK).toBeLessThanOrEqual(1e-3)
    expect(file.largestErrors.densityRelative).toBeLessThanOrEqual(1e-6)
  })
})

describe.each(infos)('curves of $id', (info) => {
  const file = read('saturation', `${info.id}.json`) as CurveFile
  const made = curves(file)
  const exact = linesOf(info).solve()

  it('lie within their stated errors of the solver, at points of another grid', () => {
    const { largestErrors: e } = file
    for (const side of ['bubble', 'dew'] as const) {
      const { fromK, toK } = exact[side]
      for (let i = 0; i <= 97; i += 1) {
        const t = Math.min(toK, fromK + ((toK - fromK) * i) / 97)
        const state = exact[side].at(t)
        const p = Math.min(made[side].toPa, Math.max(made[side].fromPa, state.pressurePa))
        // Twice: the stated errors were measured on a finer grid, but on a grid too.
        expect(Math.abs(made[side].temperature(p) - t)).toBeLessThan(2 * e.temperatureK)
        expect(Math.abs(made[side].pressure(t) / state.pressurePa - 1)).toBeLessThan(
          2 * e.pressureRelative,
        )
        const density = Math.abs(made[side].density(t) / state.density - 1)
        expect(density).toBeLessThan(
          2 * (t > 0.98 * exact.criticalK ? e.densityRelativeNearCritical : e.densityRelative),
        )
        expect(
          Math.abs(made[side].enthalpy(t) - state.enthalpy - file.raise.enthalpy),
        ).toBeLessThan(2 * e.enthalpyJPerKg)
        expect(Math.abs(made[side].entropy(t) - state.entropy - file.raise.entropy)).toBeLessThan(
          2 * e.entropyJPerKgK,
        )
      }
    }
  })
})

describe('the registry', () => {
  it('lists every refrigerant that data/refrigerants describes', () => {
    expect(
      refrigerants()
        .map(({ id }) => id)
        .sort(),
    ).toEqual(infos.map(({ id }) => id).sort())
  })

  it('has no curves of refrigerants that nothing describes', () => {
    const known = infos.map(({ id }) => `${id}.json`)
    for (const name of readdirSync(folder('saturation'))) expect(known).toContain(name)
  })
})
