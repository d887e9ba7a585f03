import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import * as z from 'zod'
import {
  refrigerant,
  refrigerants,
  saturatedEnthalpy,
  saturatedEntropy,
} from '../../shared/refrigerant/index.ts'
import type { RefrigerantInfo } from '../../shared/refrigerant/info.ts'
import {
  belowEnd,
  type CurveFile,
  curves,
  fromEnd,
  piecesOf,
} from '../../shared/substance/curve.ts'
import { linesOf } from '../generate/lines.ts'
import { stampOf } from '../generate/stamp.ts'

const folder = (name: string) => new URL(`../../data/${name}/`, import.meta.url)
const read = (name: string, file: string): unknown =>
  JSON.parse(readFileSync(new URL(file, folder(name)), 'utf8'))

const number = z.number()
const series = z.strictObject({
  unit: number.positive(),
  cuts: z.array(number).min(1).optional(),
  c: z.array(z.array(number.int()).min(1)).min(1),
})
const line = z.strictObject({
  fromK: number,
  toK: number,
  endK: number,
  endPa: number,
  logPressure: series.optional(),
  temperature: series.optional(),
  logDensity: series,
})
const schema = z.strictObject({
  id: z.string(),
  molarMass: number,
  criticalK: number,
  criticalPa: number,
  raise: z.strictObject({ enthalpy: number, entropy: number }),
  bubble: line.required({ logPressure: true, temperature: true }),
  dew: line,
})
const fits = z
  .record(
    z.string(),
    z.strictObject({
      madeFrom: z.string().regex(/^[0-9a-f]{16}$/u),
      largestErrors: z.strictObject({
        temperatureK: number,
        pressureRelative: number,
        densityRelative: number,
        densityRelativeNearCritical: number,
      }),
    }),
  )
  .parse(read('.', 'saturation-fits.json'))
const fitOf = (id: string) => {
  const fit = fits[id]
  if (fit === undefined) throw new Error(`data/saturation-fits.json says nothing of ${id}`)
  return fit
}

const infos = readdirSync(folder('refrigerants'))
  .filter((name) => name.endsWith('.json'))
  .map((name) => read('refrigerants', name) as RefrigerantInfo)

describe.each(infos)('data/saturation of $id', (info) => {
  const file = read('saturation', `${info.id}.json`) as CurveFile

  it('has the shape that the program reads, with pieces that touch', () => {
    const parsed = schema.parse(file)
    expect(parsed.id).toBe(info.id)
    for (const name of ['bubble', 'dew'] as const) {
      const { logPressure, temperature, logDensity, ...ends } = file[name]
      const made = curves(file)[name]
      expect(ends.fromK).toBeLessThan(ends.toK)
      expect(ends.endK).toBeGreaterThan(ends.toK)
      expect(ends.endPa).toBeGreaterThan(made.toPa)
      const s = fromEnd(ends.endK)
      const w = belowEnd(ends.endPa)
      for (const [part, from, to] of [
        [logPressure, s(ends.toK), s(ends.fromK)],
        [logDensity, s(ends.toK), s(ends.fromK)],
        [temperature, w(made.toPa), w(made.fromPa)],
      ] as const) {
        if (part === undefined) continue
        const { x, c } = piecesOf(part, from, to)
        expect(x.length).toBe(c.length + 1)
        expect([...x].sort((a, b) => a - b)).toEqual(x)
      }
    }
  })

  it('was made from the data as it is now (else: npm run data)', () => {
    expect(fitOf(info.id).madeFrom).toBe(stampOf(linesOf(info)))
  })

  it('states errors below a third of what the project promises in T(p) and density', () => {
    const { largestErrors: e } = fitOf(info.id)
    expect(e.temperatureK).toBeLessThanOrEqual(1e-3 / 3)
    expect(e.densityRelative).toBeLessThanOrEqual(1e-6 / 3)
    expect(e.pressureRelative).toBeLessThanOrEqual(1e-6 / 3)
    expect(e.densityRelativeNearCritical).toBeLessThanOrEqual(2e-5)
  })
})

describe.each(infos)('curves of $id', (info) => {
  const file = read('saturation', `${info.id}.json`) as CurveFile
  const made = curves(file)
  const exact = linesOf(info).solve()

  it('lie within their stated errors of the solver, at points of another grid', () => {
    const { largestErrors: e } = fitOf(info.id)
    for (const side of ['bubble', 'dew'] as const) {
      const { fromK, toK } = made[side]
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
      }
    }
  })

  it('give the enthalpy and entropy of the solved states, IIR reference, at their own density', () => {
    const r = refrigerant(info.id)
    for (const [side, phase] of [
      ['bubble', 'liquid'],
      ['dew', 'vapour'],
    ] as const) {
      const { fromK, toK } = made[side]
      for (let i = 0; i <= 23; i += 1) {
        const t = Math.min(toK, fromK + ((toK - fromK) * i) / 23)
        const state = exact[side].at(t)
        const { enthalpy, entropy } = file.raise
        // Near the critical point a density that is 1e-5 off is worth the most.
        const near = t > 0.98 * exact.criticalK
        expect(Math.abs(saturatedEnthalpy(r, t, phase) - state.enthalpy - enthalpy)).toBeLessThan(
          near ? 2 : 0.2,
        )
        expect(Math.abs(saturatedEntropy(r, t, phase) - state.entropy - entropy)).toBeLessThan(
          near ? 0.006 : 0.0006,
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
      'run npm run data, which writes shared/refrigerant/registry.ts',
    ).toEqual(infos.map(({ id }) => id).sort())
  })

  it('has no curves and no fits of refrigerants that nothing describes', () => {
    const known = infos.map(({ id }) => id).sort()
    expect(
      readdirSync(folder('saturation'))
        .map((name) => name.replace(/\.json$/u, ''))
        .sort(),
    ).toEqual(known)
    expect(Object.keys(fits).sort()).toEqual(known)
  })
})
