import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import * as z from 'zod'
import { SUBSTANCES, substanceData } from '../../shared/substance/library.ts'
import { MIXING_DATA, mixingRule } from '../../shared/substance/mixing-rules.ts'
import { multifluid } from '../../shared/substance/multifluid.ts'
import type { SubstanceData } from '../../shared/substance/types.ts'
import { BLENDS } from '../support/blend.ts'

const folder = new URL('../../data/mixing/', import.meta.url)
const files = readdirSync(folder).filter((name) => name.endsWith('.json'))
const ids = SUBSTANCES.map((s) => s.id) as [string, ...string[]]

const numbers = z.array(z.number()).min(1)
const positive = z.number().positive()
const pair = z.union([
  z.strictObject({
    components: z.tuple([z.enum(ids), z.enum(ids)]),
    form: z.literal('kunz-wagner'),
    betaT: positive.optional(),
    gammaT: positive.optional(),
    betaV: positive.optional(),
    gammaV: positive.optional(),
    weight: z.number().optional(),
    departure: z.string().optional(),
    like: z.string().optional(),
  }),
  z.strictObject({
    components: z.tuple([z.enum(ids), z.enum(ids)]),
    form: z.literal('lemmon-jacobsen'),
    xiK: z.number(),
    zetaM3PerMol: z.number(),
    weight: z.number(),
    departure: z.string(),
  }),
])
const file = z.strictObject({
  id: z.string(),
  basis: z.enum(['published', 'estimated']),
  citation: z.string().min(20),
  doi: z.string().regex(/^10\.\d{4,}\//u),
  note: z.string(),
  transcribedFrom: z.string(),
  departures: z.record(
    z.string(),
    z.strictObject({ n: numbers, d: numbers, t: numbers, l: numbers }),
  ),
  pairs: z.array(pair).min(1),
})

describe.each(files)('data/mixing/%s', (name) => {
  const data = file.parse(JSON.parse(readFileSync(new URL(name, folder), 'utf8')))
  it('is named by its id and loaded', () => {
    expect(`${data.id}.json`).toBe(name)
    expect(MIXING_DATA.map((d) => d.id)).toContain(data.id)
  })
  it('has every departure function it names, each with lists of one length', () => {
    for (const { n, d, t, l } of Object.values(data.departures)) {
      expect(new Set([n.length, d.length, t.length, l.length]).size).toBe(1)
    }
    const named = data.pairs.flatMap((p) => p.departure ?? [])
    expect(new Set(named)).toEqual(new Set(Object.keys(data.departures)))
  })
})

describe('pairs', () => {
  const names = MIXING_DATA.flatMap((d) => d.pairs.map((p) => [...p.components].sort().join('/')))
  it('are listed once, and all there are', () => {
    expect(new Set(names).size).toBe(names.length)
    expect(names.length, 'tests/generate/mixing.py writes every pair').toBe(
      (ids.length * (ids.length - 1)) / 2,
    )
  })
  it('of an alkane with a halocarbon are estimated by analogy with a fitted one, or by the mean', () => {
    const estimated = MIXING_DATA.find((d) => d.id === 'estimated')
    const byLike = estimated?.pairs.filter((p) => p.like !== undefined) ?? []
    expect(byLike.length).toBeGreaterThan(5)
    for (const { gammaT, like, components } of byLike) {
      const [alkane, other] = (like ?? '').split('/')
      const find = (id: string | undefined) => SUBSTANCES.find((s) => s.id === id)
      const [a, b] = [find(alkane), find(other)]
      expect(components).toContain(other)
      if (a === undefined || b === undefined) throw new Error(`${like} names no substances`)
      const rule = mixingRule(a, b)
      expect(rule.basis).toBe('published')
      expect(rule.gammaT).toBe(gammaT)
    }
  })
})

describe('the published parameters of Lemmon and Jacobsen 2004', () => {
  // J. Phys. Chem. Ref. Data 33, 593, eqs. 4 and 5: T_r = Σ x T + x₁x₂ ξ, 1/ρ_r = Σ x/ρ + x₁x₂ ζ
  it('give the reducing lines of their own form', () => {
    const [a, b] = ['R-32', 'R-125'].map((id) => SUBSTANCES.find((s) => s.id === id))
    if (a === undefined || b === undefined) throw new Error('R-32 and R-125 are missing')
    const fluid = multifluid([a, b])
    const sum = (of: (s: SubstanceData) => number) => 0.3 * of(a) + 0.7 * of(b)
    const t = sum((s) => s.reducing.temperatureK) + 0.21 * 28.95
    const v = sum((s) => 1 / s.reducing.densityMolPerM3) + 0.21 * -6.008e-6
    const cross = (form: { own: Float64Array; cross: Float64Array }) =>
      0.09 * (form.own[0] ?? 0) + 0.49 * (form.own[1] ?? 0) + 0.21 * (form.cross[1] ?? 0)
    expect(cross(fluid.temperature)).toBeCloseTo(t, 9)
    expect(cross(fluid.volume)).toBeCloseTo(v, 14)
  })
})

describe('README', () => {
  it('names every blend with an estimated pair, and no other', () => {
    const estimated = BLENDS.filter(({ composition }) =>
      composition.some(({ substance: a }, i) =>
        composition
          .slice(i + 1)
          .some(
            ({ substance: b }) =>
              mixingRule(substanceData(a), substanceData(b)).basis === 'estimated',
          ),
      ),
    ).map(({ id }) => id)
    const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8')
    const [, listed = ''] = /such a blend \(([^)]*)\) may be off/u.exec(readme) ?? []
    expect(listed.split(', ').sort()).toEqual(estimated.sort())
  })
})
