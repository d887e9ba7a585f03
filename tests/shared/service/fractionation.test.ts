import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fractionation } from '../../../shared/service/fractionation.ts'
import { BLENDS } from '../../support/blend.ts'
import { refusalOf } from '../../support/refusal.ts'

const si = { units: 'si', precise: true } as const
const leak = { refrigerant: 'R-407C', escapes: 'vapour', temperature: '25 °C', lost: '40 %', ...si }

const refusal = (input: Record<string, unknown>) => refusalOf(() => fractionation.run(input))

const blend = fc.constantFrom(...BLENDS.map((b) => b.id))
const input = fc.record({
  refrigerant: blend,
  escapes: fc.constantFrom('vapour', 'liquid'),
  temperature: fc.integer({ min: -20, max: 55 }).map((c) => `${c} °C`),
  lost: fc.integer({ min: 1, max: 90 }).map((p) => `${p} %`),
  liquidShare: fc.integer({ min: 5, max: 90 }).map((p) => `${p} %`),
})

describe('fractionation', () => {
  it('conserves every component: what is left and what got out make the fresh blend', () => {
    fc.assert(
      fc.property(input, (given) => {
        const { result } = fractionation.run({ ...given, ...si })
        const lost = Number.parseInt(given.lost, 10) / 100
        const sums = { left: 0, escaped: 0, toppedUp: 0 }
        for (const { fresh, left, escaped, toppedUp } of result.components) {
          const balance = (1 - lost) * left.value + lost * escaped.value
          expect(balance).toBeCloseTo(fresh.value, 6)
          expect(left.value).toBeGreaterThanOrEqual(0)
          expect(escaped.value).toBeGreaterThanOrEqual(-1e-6)
          sums.left += left.value
          sums.escaped += escaped.value
          sums.toppedUp += toppedUp.value
        }
        for (const sum of Object.values(sums)) expect(sum).toBeCloseTo(100, 6)
      }),
      { numRuns: 60 },
    )
  })

  // How long it takes is measured by `npm run bench`.
  it.each(BLENDS.map(({ id }) => id))('answers for %s, vapour or liquid escaping', (id) => {
    for (const escapes of ['vapour', 'liquid']) {
      const { result } = fractionation.run({ ...leak, refrigerant: id, escapes })
      const left = result.components.map((component) => component.left.value)
      expect(left.reduce((sum, share) => sum + share, 0)).toBeCloseTo(100, 0)
    }
  })

  it('loses the lighter components first with the vapour: pressure falls, boiling gets hotter', () => {
    const { result } = fractionation.run(leak)
    const [r32, , r134a] = result.components
    expect(r32?.left.value).toBeLessThan(r32?.fresh.value ?? 0)
    expect(r134a?.left.value).toBeGreaterThan(r134a?.fresh.value ?? 100)
    const pressures = result.rows.map((row) => row.pressure.value)
    expect(pressures).toEqual([...pressures].sort((a, b) => b - a))
    expect(result.left.dewShift.value).toBeGreaterThan(2)
    expect(result.escaped.dewShift.value).toBeLessThan(-2)
    expect(result.verdict).toBe('recover-and-weigh-in')
  })

  it('changes a composition much less when liquid leaks', () => {
    const vapour = fractionation.run(leak).result
    const liquid = fractionation.run({ ...leak, escapes: 'liquid' }).result
    const shift = (r: typeof vapour) => Math.abs(r.left.bubbleShift.value)
    expect(shift(liquid)).toBeLessThan(0.1 * shift(vapour))
    expect(liquid.verdict).toBe('top-up-reads-close')
  })

  it('hardly changes an azeotrope or R-410A', () => {
    for (const refrigerant of ['R-507A', 'R-513A', 'R-410A']) {
      const { result } = fractionation.run({ ...leak, refrigerant })
      expect(result.verdict).toBe('top-up-reads-close')
      expect(Math.abs(result.left.dewShift.value)).toBeLessThan(0.5)
    }
  })

  it('starts between the bubble and the dew pressure of the fresh blend', () => {
    const { result } = fractionation.run({ ...leak, lost: '1 %' })
    // R-407C at 25 °C: bubble 1188.4 kPa, dew 1011.7 kPa absolute
    expect(result.vessel.pressureAtStart.value + 101.325).toBeGreaterThan(1_010)
    expect(result.vessel.pressureAtStart.value + 101.325).toBeLessThan(1_189)
  })

  it('goes on with one phase when all liquid has boiled: the composition then stays', () => {
    const { result } = fractionation.run({ ...leak, liquidShare: '5 %', lost: '90 %' })
    expect(result.vessel.liquidShareNow.value).toBe(0)
    const [nine, ten] = result.rows.slice(-2)
    nine?.left.forEach((share, i) => {
      expect(ten?.left[i]?.value).toBeCloseTo(share.value, 6)
    })
  })

  it('tells what was taken for the liquid at the start, and the amounts of a charge', () => {
    const answer = fractionation.run({ ...leak, startMass: '6 kg' })
    expect(answer.assumptions.map((a) => a.field)).toContain('liquidShare')
    expect(answer.result.masses?.left.value).toBeCloseTo(3.6, 9)
    expect(answer.sources.map((s) => s.title).join()).toMatch(/Lemmon.*Jacobsen/u)
  })

  it('warns of estimated mixing parameters and of a rising share that burns', () => {
    const { warnings, sources } = fractionation.run({ ...leak, refrigerant: 'R-406A' })
    expect(warnings.map((w) => w.code)).toEqual(['estimated-mixing', 'burning-share-rises'])
    expect(sources.map((s) => s.id)).toContain('ashrae-34-flammable')
  })

  it('refuses a single substance, a share that cannot be, and heat near the critical point', () => {
    expect(refusal({ ...leak, refrigerant: 'R-134a' })).toMatchObject({
      code: 'refused',
      path: ['refrigerant'],
    })
    expect(refusal({ ...leak, lost: '100 %' })).toMatchObject({
      code: 'out-of-range',
      path: ['lost'],
    })
    expect(refusal({ ...leak, lost: '0 %' })).toMatchObject({
      code: 'out-of-range',
      path: ['lost'],
    })
    expect(refusal({ ...leak, liquidShare: '100 %' })).toMatchObject({ path: ['liquidShare'] })
    expect(refusal({ ...leak, temperature: '86 °C' })).toMatchObject({
      code: 'above-critical',
      path: ['temperature'],
    })
    expect(refusal({ ...leak, temperature: '-90 °C' })).toMatchObject({
      code: 'out-of-range',
      path: ['temperature'],
    })
    expect(refusal({ ...leak, refrigerant: 'R-999' })).toMatchObject({
      code: 'unknown-refrigerant',
      path: ['refrigerant'],
    })
  })
})

it('follows no charge of nothing', () => {
  const nothing = { ...fractionation.example, startMass: '0 lb' }
  expect(() => fractionation.run(nothing)).toThrow(
    expect.objectContaining({ code: 'out-of-range', path: ['startMass'] }),
  )
})

describe('the liquid that is left', () => {
  const share = (lost: string, more: object = {}) => {
    const { result } = fractionation.run({ ...leak, liquidShare: '60 %', lost, ...more })
    return result.vessel.liquidShareNow.value
  }

  it('is by its volume what mass and densities leave, whichever escapes', () => {
    // R-407C at 25 °C: 1136 kg/m³ of liquid, 49 of its vapour (bubble and dew line), which change
    // by some percent while it fractionates. 60 % by volume: 0.6 · 1136 + 0.4 · 49 = 701 kg/m³.
    const whole = 0.6 * 1136 + 0.4 * 49
    for (const [lost, kept] of [
      ['10 %', 0.9],
      ['40 %', 0.6],
    ] as const) {
      const expected = (100 * (whole * kept - 49)) / (1136 - 49)
      for (const escapes of ['vapour', 'liquid']) {
        expect(Math.abs(share(lost, { escapes }) - expected)).toBeLessThan(1.5)
      }
    }
  })

  it('is none once all of it has boiled', () => {
    expect(share('90 %', { liquidShare: '5 %' })).toBe(0)
    expect(share('1 %')).toBeGreaterThan(58)
  })
})
