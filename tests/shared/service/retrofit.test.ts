import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import data from '../../../data/service/retrofit.json' with { type: 'json' }
import { mass } from '../../../shared/quantity/index.ts'
import { refrigerant, refrigerants } from '../../../shared/refrigerant/index.ts'
import { chargeBand } from '../../../shared/service/retrofit/charge-band.ts'
import { retrofit } from '../../../shared/service/retrofit.ts'
import { refusalOf } from '../../support/refusal.ts'

const base = { refrigerant: 'R-12', newRefrigerant: 'R-134a', units: 'us' }
const run = (change: Record<string, unknown> = {}) => retrofit.run({ ...base, ...change })

const refusal = (input: Record<string, unknown>) => refusalOf(() => retrofit.run(input))

describe('charge of R-134a after R-12', () => {
  it('gives the band, the formula in its range, and the least of all to start with', () => {
    const { charge } = run({ labelCharge: '3 lb' }).result
    expect(charge).toMatchObject({
      low: { value: 2.4, unit: 'lb' },
      high: { value: 2.7, unit: 'lb' },
      formula: { use: 'in-range', mass: { value: 2.45 }, ofOriginal: { value: 81.7 } },
      startWith: { value: 2.4 },
    })
  })

  it('starts with the formula where that is less than 80 %', () => {
    const { charge } = run({ labelCharge: '2 lb' }).result
    expect(charge?.formula.ofOriginal?.value).toBeCloseTo(77.5, 6)
    expect(charge?.startWith).toMatchObject({ value: 24.8, unit: 'oz' })
  })

  it.each(['1 lb', '6 lb'])('leaves the formula out at %s and says why', (labelCharge) => {
    const answer = run({ labelCharge })
    expect(answer.result.charge?.formula).toEqual({ use: 'out-of-range' })
    expect(answer.warnings.map((entry) => entry.code)).toContain('formula-left-out')
  })

  it('does not decide about the formula when the charge may be on either side of its range', () => {
    expect(run({ labelCharge: '2.0 ±0.1 lb' }).result.charge?.formula.use).toBe('cannot-tell')
  })

  it('always says that the rules differ and the maker goes first', () => {
    const answer = run({ labelCharge: '3 lb' })
    expect(answer.warnings.map((entry) => entry.code)).toContain('charge-is-a-band')
    expect(answer.sources.find((entry) => entry.id === 'retrofit-practice')?.mark).toBe(
      'common-practice',
    )
  })

  it('asks for the old charge when there is none', () => {
    const answer = run()
    expect(answer.result.charge).toBeUndefined()
    expect(answer.warnings.map((entry) => entry.code)).toContain('no-label-charge')
  })
})

describe('the fixed-offset formula as a share of the old charge (common practice, arithmetic)', () => {
  it.each([
    ['2 lb', 77.5],
    ['3 lb', 81.7],
    ['4 lb', 83.8],
  ])('%s: %d %%', (labelCharge, share) => {
    expect(run({ labelCharge }).result.charge?.formula.ofOriginal?.value).toBeCloseTo(share, 1)
  })
})

describe('what may not be done', () => {
  it.each([
    ['R-12', 'R-1234yf'],
    ['R-134a', 'R-1234yf'],
    ['R-134a', 'R-152a'],
    ['R-12', 'R-290'],
    ['R-134a', 'R-600a'],
    ['R-134a', 'R-454B'],
    ['R-134a', 'R-744'],
    ['R-134a', 'R-12'],
    ['R-12', 'R-407C'],
    ['R-1234yf', 'R-134a'],
    ['R-134a', 'R-416A'],
  ])('%s to %s is refused', (from, to) => {
    const error = refusal({ refrigerant: from, newRefrigerant: to })
    expect(error.code).toBe('refused')
    expect(error.level).toBe('stop')
    expect(error.path).toEqual(['newRefrigerant'])
    expect(error.cautions).toContain('no-flammable-retrofit')
    expect(error.hint).toMatch(/US federal/u)
  })

  it('lets no flammable refrigerant of the registry into a system built for another', () => {
    const burning = refrigerants().filter((info) => info.safetyClass.value !== 'A1')
    expect(burning.length).toBeGreaterThan(5)
    for (const info of burning) {
      for (const from of ['R-12', 'R-134a']) {
        expect(refusal({ refrigerant: from, newRefrigerant: info.id })).toMatchObject({
          code: 'refused',
          level: 'stop',
        })
      }
    }
  })

  it.each([
    ['a stationary machine', { machine: 'stationary' }, 'refused', 'machine'],
    ['a cold box', { machine: 'refrigerated-cargo' }, 'refused', 'machine'],
    ['the same refrigerant', { newRefrigerant: 'R-12' }, 'bad-input', 'newRefrigerant'],
    ['no new refrigerant', { newRefrigerant: undefined }, 'missing-input', 'newRefrigerant'],
    ['an unknown one', { newRefrigerant: 'R-999' }, 'unknown-refrigerant', 'newRefrigerant'],
    ['an unknown old one', { refrigerant: 'R-999' }, 'unknown-refrigerant', 'refrigerant'],
    ['a charge of nothing', { labelCharge: '0 lb' }, 'bad-input', 'labelCharge'],
    [
      'a condensing temperature above critical',
      { condensingTemperature: '300 °F' },
      'above-critical',
      'condensingTemperature',
    ],
    ['a machine nobody knows', { machine: 'boat' }, 'bad-input', 'machine'],
  ])('%s', (_, change, code, path) => {
    const error = refusal({ ...base, ...change })
    expect(error.code).toBe(code)
    expect(error.path[0]).toBe(path)
  })
})

describe('what may be done', () => {
  it.each(['R-134a', 'R-401C', 'R-416A', 'r401c'])(
    'R-12 to %s, with jurisdiction, date and mark',
    (to) => {
      const { decision } = run({ newRefrigerant: to }).result
      expect(decision).toMatchObject({
        decision: 'acceptable-with-conditions',
        use: 'retrofit',
        jurisdiction: 'us-federal',
        mark: 'verified',
        checked: '2026-11-25',
      })
    },
  )

  it('gives a charge for R-134a only', () => {
    expect(run({ newRefrigerant: 'R-416A', labelCharge: '3 lb' }).result.charge).toBeUndefined()
  })

  it('says that the list speaks of automobiles when the machine is another', () => {
    expect(run().assumptions.map((entry) => entry.field)).toContain('machine')
    expect(run({ machine: 'road-vehicle' }).assumptions.map((entry) => entry.field)).not.toContain(
      'machine',
    )
  })

  it.each([
    ['3 yr', 'may-stay'],
    ['7 yr', 'replace'],
    ['5 ±1 yr', 'cannot-tell'],
    [undefined, 'not-given'],
  ])('accumulator of %s: %s', (accumulatorAge, expected) => {
    expect(run({ accumulatorAge }).result.accumulator).toBe(expected)
  })

  it('keeps PAG out of a compressor with its motor inside', () => {
    const answer = run({ compressorDrive: 'hermetic-or-electric' })
    expect(answer.result.work.map((entry) => entry.id)).toContain('no-pag-electric')
    expect(answer.cautions.map((entry) => entry.id)).toContain('electric-compressor-oil')
  })

  it('rests label, fittings and shut-off on text that was read, and names its edition', () => {
    const { result, sources } = run()
    const byId = new Map([...result.work, ...result.label].map((entry) => [entry.id, entry]))
    for (const id of ['label', 'label-more', 'shut-off-switch', 'no-adapters', 'fittings-differ']) {
      expect(byId.get(id)?.mark, id).toBe('verified')
    }
    expect(sources.find(({ id }) => id === 'snap-app-d')?.title).toContain('2015 edition')
  })

  it('has a source for every row and statement, and uses every one', () => {
    const used = new Set<string>([
      ...data.acceptability.map((row) => row.source),
      ...Object.values(data.statements).map((row) => row.source),
      data.flammable.source,
      data.charge.source,
      data.accumulatorYears.source,
    ])
    expect([...used].sort()).toEqual(Object.keys(data.sources).sort())
  })
})

describe('laws', () => {
  it('the spread holds every rule, and the start is its low end', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 10, noNaN: true }), (chargeKg) => {
        const band = chargeBand(mass(chargeKg), refrigerant('R-12'), refrigerant('R-134a'))
        const [least, most] = band.spreadKg
        for (const kg of [
          band.lowKg,
          band.highKg,
          band.sameVolumeKg,
          band.formulaKg ?? band.lowKg,
        ]) {
          expect(kg).toBeGreaterThanOrEqual(least)
          expect(kg).toBeLessThanOrEqual(most)
        }
        expect(most).toBeLessThan(chargeKg)
      }),
    )
  })
})

describe('a conversion to a blend whose properties are not known here', () => {
  it('is decided all the same, without pressures or a charge of its own', () => {
    // R-401C is decided on, and no pure or blend of this program.
    expect(refrigerants().map(({ id }) => id)).not.toContain('R-401C')
    const { result, figures = [] } = run({ newRefrigerant: 'R-401C', labelCharge: '3 lb' })
    expect(result).toMatchObject({
      newRefrigerant: 'R-401C',
      decision: { decision: 'acceptable-with-conditions' },
    })
    expect([result.highSide, result.charge]).toEqual([undefined, undefined])
    expect(figures.map(({ id }) => id)).not.toContain('rise')
    expect(run({ newRefrigerant: 'R-416A' }).result.highSide).toBeDefined()
  })
})
