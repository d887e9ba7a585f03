import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { refrigerant, saturationPressure } from '../../../shared/refrigerant/index.ts'
import { mixed } from '../../../shared/service/contamination/mixed.ts'
import { sharesThatFit } from '../../../shared/service/contamination/shares.ts'
import { contamination } from '../../../shared/service/contamination.ts'
import { attempt } from '../../../shared/substance/attempt.ts'
import { substanceData } from '../../../shared/substance/library.ts'
import { moleFractions } from '../../../shared/substance/mixture.ts'
import { multifluid } from '../../../shared/substance/multifluid.ts'
import { pointAt } from '../../../shared/substance/saturation-line.ts'
import { flashTP } from '../../support/flash.ts'
import { refusalOf } from '../../support/refusal.ts'

const si = { units: 'si', precise: true } as const

const refusal = (input: Record<string, unknown>) => refusalOf(() => contamination.run(input))

const run = (refrigerantName: string, pressure: string, temperature: string, more = {}) =>
  contamination.run({ refrigerant: refrigerantName, pressure, temperature, ...si, ...more }).result

/** Mole fractions of two refrigerants together, worked out apart from the code under test. */
function together(a: string, b: string, shareOfB: number) {
  const parts = new Map<string, number>()
  for (const [name, share] of [
    [a, 1 - shareOfB],
    [b, shareOfB],
  ] as const) {
    for (const { substance, massFraction } of refrigerant(name).info.composition) {
      parts.set(substance, (parts.get(substance) ?? 0) + share * massFraction)
    }
  }
  const fluid = multifluid([...parts.keys()].map(substanceData))
  return { fluid, x: Float64Array.from(moleFractions([...parts.values()], fluid.molarMasses)) }
}

describe('contamination', () => {
  it('finds nothing where the pressure is that of the refrigerant', () => {
    const psat = saturationPressure(refrigerant('R-134a'), 300, 'bubble') / 1000
    const result = run('R-134a', `${psat} kPa abs`, '300 K')
    expect(result.verdict).toBe('as-expected')
    expect(result.explanations).toEqual([])
    expect(result.whatToDo.map((s) => s.id)).toEqual(['no-proof'])
  })

  it('takes a pressure between the two lines of a blend as it should be', () => {
    const r = refrigerant('R-407C')
    const middle = (saturationPressure(r, 298, 'bubble') + saturationPressure(r, 298, 'dew')) / 2000
    const result = run('R-407C', `${middle} kPa abs`, '298 K')
    expect(result.verdict).toBe('as-expected')
    expect(result.state).toBe('between')
    expect(result.off?.value).not.toBe(0)
  })

  it('gives air by its partial pressure (Dalton)', () => {
    const psat = saturationPressure(refrigerant('R-134a'), 300, 'bubble')
    const result = run('R-134a', `${(psat + 100_000) / 1000} kPa abs`, '300 K')
    expect(result.verdict).toBe('too-high')
    const air = result.explanations.find((e) => e.cause === 'air')
    expect(air?.share?.value).toBeCloseTo((100 * 100_000) / (psat + 100_000), 6)
    expect(air?.settledBy).toContain('air-check')
  })

  it('counts air in a blend from its bubble line, not from its dew line', () => {
    const psat = saturationPressure(refrigerant('R-407C'), 300, 'bubble')
    const result = run('R-407C', `${(psat + 150_000) / 1000} kPa abs`, '300 K')
    const air = result.explanations.find((e) => e.cause === 'air')
    expect(air?.share?.value).toBeCloseTo((100 * 150_000) / (psat + 150_000), 6)
    const { figures = [] } = contamination.run({
      refrigerant: 'R-407C',
      pressure: `${(psat + 150_000) / 1000} kPa abs`,
      temperature: '300 K',
      ...si,
    })
    expect(figures.find(({ id }) => id === 'air')?.value).toMatchObject({
      value: expect.closeTo(air?.share?.value ?? 0, 3),
    })
  })

  it('tells what it is first, and what settles it next', () => {
    const told = (pressure: string) =>
      contamination.run({ refrigerant: 'R-134a', pressure, temperature: '75 °F', units: 'us' })
    expect(told('110 psig')).toMatchObject({
      level: 'check',
      headline: expect.stringMatching(
        /^110 psig is 31\.\d psi over saturation of R-134a at 75 °F/u,
      ),
    })
    expect(told('75 psig')).toMatchObject({
      level: 'check',
      headline: expect.stringMatching(
        /^75 psig at 75 °F is -3\.\d psi off saturation of R-134a: no liquid left/u,
      ),
    })
    expect(told('79 psig')).toMatchObject({
      level: 'fine',
      headline: expect.stringMatching(/no proof of purity/u),
    })
    expect(told('300 psig')).toMatchObject({
      level: 'stop',
      headline: expect.stringMatching(/^STOP: 300 psig is far above saturation/u),
    })
    expect(told('110 psig').next?.[1]).toMatch(/^Identify it/u)
    expect(told('110 psig').figures?.length).toBeLessThanOrEqual(6)
  })

  it('carries the cautions that belong to it, and no venting ban for R-744', () => {
    const ids = (name: string, pressure: string, temperature: string) =>
      contamination
        .run({ refrigerant: name, pressure, temperature, suspects: ['R-134a'] })
        .cautions.map(({ id }) => id)
    const found = ids('R-134a', '79 psig', '75 °F')
    for (const id of ['pressure', 'cold-burns', 'asphyxiation', 'do-not-mix', 'local-rules']) {
      expect(found).toContain(id)
    }
    expect(found).toContain('no-venting')
    expect(ids('R-744', '650 psig', '50 °F')).not.toContain('no-venting')
  })

  it('gives the contents temperature that would explain the pressure', () => {
    const psat = saturationPressure(refrigerant('R-134a'), 305, 'bubble') / 1000
    const result = run('R-134a', `${psat} kPa abs`, '300 K')
    const reading = result.explanations.find((e) => e.cause === 'reading')
    expect(reading?.temperatureOff?.value).toBeCloseTo(5, 3)
  })

  it('says when the pressure is that of another refrigerant alone', () => {
    const psat = saturationPressure(refrigerant('R-22'), 298, 'bubble') / 1000
    const result = run('R-134a', `${psat} kPa abs`, '298 K')
    const alone = result.explanations.find((e) => e.share?.value === 100)
    expect(alone).toMatchObject({ cause: 'other-refrigerant', refrigerant: 'R-22' })
  })

  it('says for a low pressure that no liquid may be left, and that a zeotrope may have leaked', () => {
    const causes = run('R-407C', '800 kPa abs', '298 K').explanations.map((e) => e.cause)
    expect(causes).toContain('no-liquid')
    expect(causes).toContain('shifted-blend')
    expect(causes).not.toContain('air')
  })

  it('warns of fire where something that burns would explain the reading', () => {
    const answer = contamination.run(contamination.example)
    expect(answer.result.explanations.map((e) => e.refrigerant)).toContain('R-290')
    expect(answer.cautions.map((c) => c.id)).toContain('flammable')
  })

  it('keeps what does not show apart from what is ruled out', () => {
    // R-404A in R-410A: a tenth of it moves the pressure by less than the readings are good for
    const result = run('R-410A', '1657.4 kPa abs', '298.15 K')
    expect(result.unseen).toContain('R-404A')
    expect(result.ruledOut).toEqual([])
    // R-32 alone lies above R-410A, so no share of it reads low
    expect(run('R-410A', '1480 kPa abs', '298.15 K').ruledOut).toContain('R-32')
  })

  // How long it takes is measured by `npm run bench`.
  it.each(['R-134a', 'R-410A', 'R-448A', 'R-22'])('tells high from low for %s', (name) => {
    const r = refrigerant(name)
    const low = (0.85 * saturationPressure(r, 298, 'dew')) / 1000
    const high = (1.2 * saturationPressure(r, 298, 'bubble')) / 1000
    expect(run(name, `${low} kPa abs`, '298 K').verdict).toBe('too-low')
    expect(run(name, `${high} kPa abs`, '298 K').verdict).toBe('too-high')
  })

  it('refuses what it cannot judge, and says why', () => {
    const base = { refrigerant: 'R-410A', pressure: '300 psig', temperature: '77 °F' }
    expect(refusal({ ...base, temperature: '200 °F' })).toMatchObject({
      code: 'above-critical',
      path: ['temperature'],
    })
    expect(refusal({ ...base, suspects: ['R-999'] })).toMatchObject({
      code: 'unknown-refrigerant',
      path: ['suspects'],
    })
    expect(refusal({ ...base, refrigerant: 'milk' })).toMatchObject({
      code: 'unknown-refrigerant',
      path: ['refrigerant'],
    })
    expect(refusal({ ...base, pressure: 'full vacuum' }).path).toEqual(['pressure'])
  })

  it('says cannot-tell when the readings are too rough', () => {
    expect(run('R-134a', '90 ±15 psig', '80 °F').verdict).toBe('cannot-tell')
  })

  it('answers in the shape that it promises', () => {
    const answer = contamination.run(contamination.example)
    expect(() => contamination.output.parse(answer)).not.toThrow()
  })
})

describe('a share that is said to read so', () => {
  const names = [
    'R-12',
    'R-22',
    'R-32',
    'R-134a',
    'R-152a',
    'R-290',
    'R-600a',
    'R-1234yf',
    'R-404A',
    'R-407C',
    'R-410A',
  ] as const
  const name = fc.constantFrom(...names)
  const kelvin = fc.double({ min: 263, max: 313, noNaN: true })
  const factor = fc.double({ min: 0.85, max: 1.25, noNaN: true })

  it('reads so by a solve of its own, and a stability test agrees that it boils there', () => {
    fc.assert(
      fc.property(name, name, kelvin, factor, (expected, other, t, f) => {
        fc.pre(expected !== other && Math.abs(f - 1) > 0.01)
        const pure = saturationPressure(refrigerant(expected), t, 'bubble')
        const mixture = mixed(refrigerant(expected), refrigerant(other), t)
        const at = (share: number) => attempt(() => mixture.pressure(share))
        const found = sharesThatFit(at, f * pure, () => 0)
        const share = found.find((entry) => entry.share > 0 && entry.share < 1)?.share
        if (share === undefined) return
        const { fluid, x } = together(expected, other, share)
        expect(pointAt(fluid, x, 'bubble', t).pressurePa / (f * pure)).toBeCloseTo(1, 5)
        expect(flashTP(fluid, x, t, 1.02 * f * pure).kind).toBe('liquid')
        const [bubblePa, dewPa] = [f * pure, pointAt(fluid, x, 'dew', t).pressurePa]
        expect(flashTP(fluid, x, t, 0.98 * dewPa).kind).toBe('vapour')
        if (bubblePa - dewPa > 1e-3 * bubblePa) {
          expect(flashTP(fluid, x, t, (bubblePa + dewPa) / 2).kind).toBe('two-phase')
        }
      }),
      { numRuns: 60 },
    )
  })
})
