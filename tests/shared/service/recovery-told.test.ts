import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CalcError } from '../../../shared/errors.ts'
import { refrigerant } from '../../../shared/refrigerant/index.ts'
import { lawLine } from '../../../shared/rules/law-line.ts'
import { hottestPressure } from '../../../shared/service/recovery/service-pressure.ts'
import { recovery } from '../../../shared/service/recovery.ts'
import { refusalOf } from '../../support/refusal.ts'

type Input = Record<string, unknown>
const full = {
  refrigerant: 'R-134a',
  cylinder: 'refillable',
  waterCapacity: '47.7 lb',
  tare: '28.0 lb',
  grossNow: '41.5 lb',
  servicePressure: '400 psi',
  cylinderHolds: 'R-134a',
  requalified: '2023-04',
  date: '2026-11-25',
}
const run = (input: Input) => recovery.run({ units: 'us', ...input })
const refusal = (input: Input): CalcError => refusalOf(() => run(input))
const of = (name: string, more: Input = {}) => ({
  ...full,
  refrigerant: name,
  cylinderHolds: name,
  ...more,
})
const ids = (list: readonly { id: string }[]) => list.map(({ id }) => id)

describe('the service pressure of the cylinder, 49 CFR 173.301(a)(8)', () => {
  // 131 °F: R-410A 484 psig, R-32 496 psig; 5/4 of 350 psi is 437.5 psi, of 400 psi 500 psi.
  it.each([
    ['R-410A', '350 psi'],
    ['R-32', '350 psi'],
    ['R-410A', '387 psi'],
    ['R-410A', '350 psig'],
  ])('stops %s on its way into a cylinder of %s', (name, servicePressure) => {
    const error = refusal(of(name, { servicePressure }))
    expect(error).toMatchObject({ code: 'refused', level: 'stop', path: ['servicePressure'] })
    expect(error.message).toMatch(/^The cylinder is too weak for .*173\.301\(a\)\(8\)/u)
    expect(error.cautions).toEqual(
      expect.arrayContaining(['full-cylinder', 'pressure', 'cold-burns', 'local-rules']),
    )
  })

  it.each([
    ['R-410A', '400 psi'],
    ['R-134a', '350 psi'],
    ['R-134a', '260 psi'],
    ['R-407C', '350 psi'],
  ])('lets %s into a cylinder of %s', (name, servicePressure) => {
    expect(run(of(name, { servicePressure })).result.cylinder?.verdict).toBe('may-be-filled')
  })

  it('is in doubt where the data itself reaches over the limit', () => {
    // R-410A: 484.6 psig ±0.5 %; 388.5 psi allows 485.6
    const { result, level } = run(of('R-410A', { servicePressure: '388.5 psi' }))
    expect(result.cylinder?.verdict).toBe('cannot-tell')
    expect(result.cylinder?.reasons.join()).toMatch(/the data cannot tell/u)
    expect(level).toBe('check')
  })

  it('is asked for where a common cylinder would be too weak, and not otherwise', () => {
    const hot = run(of('R-410A', { servicePressure: undefined }))
    expect(hot.result.cylinder?.verdict).toBe('cannot-tell')
    expect(hot.result.cylinder?.reasons.join()).toMatch(/Read the service pressure/u)
    expect(hot.level).toBe('check')
    expect(hot.headline).toMatch(/^Do not fill it yet/u)
    expect(run(of('R-134a', { servicePressure: undefined })).result.cylinder?.verdict).toBe(
      'may-be-filled',
    )
  })

  it('is compared with the bubble pressure, the higher line of a blend', () => {
    expect(hottestPressure(refrigerant('R-410A')).to('psig')).toBeCloseTo(484.5, 0)
    expect(hottestPressure(refrigerant('R-407C')).to('psig')).toBeGreaterThan(342)
  })

  it('is not one that no cylinder has', () => {
    expect(refusal(of('R-134a', { servicePressure: '5 psi' }))).toMatchObject({
      code: 'out-of-range',
      path: ['servicePressure'],
    })
  })
})

describe('what must not be', () => {
  it.each([
    ['a disposable cylinder', { cylinder: 'disposable' }, 'no-disposable-refill'],
    ['another refrigerant in it', { cylinderHolds: 'R-12' }, 'do-not-mix'],
    ['unknown contents', { cylinderHolds: 'unknown' }, 'do-not-mix'],
    ['an overfull cylinder', { grossNow: '80 lb' }, 'full-cylinder'],
    ['R-744 in it', { refrigerant: 'R-744', cylinderHolds: 'empty' }, 'carbon-dioxide'],
  ])('is refused with its cautions: %s', (_, change, caution) => {
    const error = refusal({ ...full, ...change })
    expect(error.level).toBe('stop')
    expect(error.cautions).toEqual(
      expect.arrayContaining([
        caution,
        'pressure',
        'cold-burns',
        'asphyxiation',
        'do-not-mix',
        'local-rules',
      ]),
    )
  })

  it('is a hydrocarbon in a machine that is not rated for it', () => {
    const error = refusal({ refrigerant: 'R-290', flammableRated: false })
    expect(error).toMatchObject({ code: 'refused', level: 'stop', path: ['flammableRated'] })
    expect(error.cautions).toContain('hydrocarbons-rated-machine')
    const unsaid = run({ refrigerant: 'R-290' })
    expect(unsaid.warnings.map(({ code }) => code)).toContain('hydrocarbon-machine')
    expect(ids(unsaid.cautions)).toContain('hydrocarbons-rated-machine')
    const rated = run({ refrigerant: 'R-290', flammableRated: true })
    expect(rated.warnings.map(({ code }) => code)).not.toContain('hydrocarbon-machine')
    expect(run({ refrigerant: 'R-134a', flammableRated: false }).level).not.toBe('stop')
  })
})

describe('R-744', () => {
  it('is let out slowly, outdoors, without a cylinder or a level', () => {
    const { headline, result, cautions, law } = run({
      refrigerant: 'R-744',
      machine: 'bus',
      law: 'us',
    })
    expect(headline).toMatch(/^R-744 needs no recovery cylinder: let it out slowly, outdoors/u)
    expect(ids(result.practice)).toEqual(['carbon-dioxide'])
    expect(ids(cautions)).toContain('carbon-dioxide-release')
    expect(ids(cautions)).not.toContain('no-venting')
    expect(law).toMatch(/^US: R-744 may be let out/u)
  })

  it('has its filling density in the refusal of a recovery cylinder', () => {
    expect(refusal({ ...full, refrigerant: 'R-744', cylinderHolds: 'empty' }).hint).toMatch(/68 %/u)
  })
})

describe('whose law', () => {
  const split = { refrigerant: 'R-134a', machine: 'stationary' }

  it('gives the federal level under federal law, or where no law was given and it says so', () => {
    expect(run({ ...split, law: 'us' }).result.evacuation?.gaugeReading?.value).toBe(10)
    const unsaid = run(split)
    expect(unsaid.result.evacuation?.gaugeReading?.value).toBe(10)
    expect(unsaid.assumptions.map(({ field }) => field)).toContain('law')
    expect(unsaid.law).toBe(lawLine(undefined))
  })

  it('gives none under another, and says why', () => {
    const eu = run({ ...split, law: 'eu' })
    expect(eu.result.evacuation).toBeUndefined()
    expect(eu.warnings.map(({ code }) => code)).toContain('level-of-another-law')
    expect(eu.law).toMatch(/^EU: do not vent; recover/u)
  })
})

describe('the first line', () => {
  const cells: [string, Input, string, RegExp][] = [
    [
      'it fits',
      { ...full, labelCharge: '2 lb 6 oz' },
      'fine',
      /^Recover 2 lb 4\.\d oz to 2 lb 6 oz: it fits\. Stop at 74 lb/u,
    ],
    [
      'it does not',
      { ...full, labelCharge: '40 lb' },
      'check',
      /^It does not fit: 32 lb .* goes in/u,
    ],
    ['it may not', { ...full, labelCharge: '33 lb' }, 'check', /^It may not fit/u],
    [
      'overdue',
      { ...full, requalified: '2019-10' },
      'stop',
      /^Do not fill this cylinder: requalification was due in 2024-10/u,
    ],
    [
      'full',
      { ...full, grossNow: '74.08 lb' },
      'stop',
      /^Do not fill this cylinder: within the uncertainty/u,
    ],
    [
      'not known',
      { ...full, cylinderHolds: undefined },
      'check',
      /^Do not fill it yet: it was not said what/u,
    ],
    [
      'less came out',
      { refrigerant: 'R-134a', labelCharge: '1000 g', recovered: '700 g' },
      'check',
      /is missing: .* came out of .* Find the leak/u,
    ],
    [
      'all came out',
      { refrigerant: 'R-134a', labelCharge: '1000 g', recovered: '980 g' },
      'fine',
      /^What came out is what the label says/u,
    ],
    [
      'a level',
      { refrigerant: 'R-134a', machine: 'stationary' },
      'information',
      /^Before opening: pull down to 10 /u,
    ],
    [
      'a vehicle',
      { refrigerant: 'R-134a', machine: 'road-vehicle' },
      'information',
      /^Recover into a vacuum/u,
    ],
    [
      'a small appliance',
      { refrigerant: 'R-134a', machine: 'stationary', factorySealed: true, labelCharge: '3 lb' },
      'information',
      /^Expect/u,
    ],
    ['nothing', { refrigerant: 'R-134a' }, 'information', /^Weigh the cylinder/u],
  ]
  it.each(cells)('%s', (_, input, level, headline) => {
    const answer = run(input)
    expect(answer.headline).toMatch(headline)
    expect(answer.level).toBe(level)
    expect(answer.headline?.length).toBeLessThanOrEqual(160)
    expect(answer.figures?.length).toBeLessThanOrEqual(6)
    expect(answer.next?.length).toBeLessThanOrEqual(3)
  })

  it('shows no figure to stop at for a cylinder that must not be filled', () => {
    const { figures = [] } = run({ ...full, requalified: '2019-10' })
    expect(figures.map(({ id }) => id)).not.toContain('stopAt')
    expect(figures.map(({ id }) => id)).not.toContain('room')
  })
})

describe('before anything is read', () => {
  const opening = [
    'pressure',
    'cold-burns',
    'asphyxiation',
    'goggles-even-empty',
    'trapped-liquid',
    'first-aid-eyes',
    'first-aid-frostbite',
    'first-aid-inhalation',
    'full-cylinder',
    'no-disposable-refill',
    'do-not-mix',
    'maker-first',
    'local-rules',
  ]
  const fumes = ['no-venting', 'decomposition', 'first-aid-hydrogen-fluoride']

  it.each([
    ['R-134a', {}, [...opening, ...fumes]],
    [
      'R-134a',
      { machine: 'off-road', compressorDrive: 'electric' },
      [...opening, ...fumes, 'high-voltage', 'electric-compressor-oil'],
    ],
    ['R-1234yf', {}, [...opening, ...fumes, 'flammable']],
    ['R-290', {}, [...opening, 'no-venting', 'flammable', 'hydrocarbons-rated-machine']],
    ['R-744', {}, [...opening, 'carbon-dioxide', 'carbon-dioxide-release']],
  ])('the dangers of %s %j are named, all of them', (name, more, expected) => {
    expect(new Set(ids(run({ refrigerant: name, ...more }).cautions))).toEqual(new Set(expected))
  })
})

describe('what is carried to the figures', () => {
  const resting = {
    refrigerant: 'R-134a',
    systemPressure: '20 ±0 psig',
    systemTemperature: '77 ±0 °F',
    volume: '5 L',
    barometer: '1013.25 ±0 hPa',
    precise: true,
  }
  const spread = (input: Input) => {
    const { least, most } = run({ ...resting, ...input }).result.expected ?? {}
    return ((most?.value ?? 0) - (least?.value ?? 0)) / (most?.value ?? Number.NaN)
  }

  it('the ± of the density itself, of the volume and of the weather', () => {
    expect(spread({})).toBeGreaterThan(0.009)
    expect(spread({})).toBeLessThan(0.011)
    expect(spread({ volume: '5 ±0.25 L' })).toBeGreaterThan(0.09)
    expect(spread({ barometer: undefined })).toBeGreaterThan(0.02)
  })

  it('the weather, on the level that a gauge is to reach', () => {
    const level = (place: Input) =>
      run({ refrigerant: 'R-134a', machine: 'stationary', ...place }).result.evacuation
        ?.gaugeReading?.plusMinus
    expect(level({})).toBeCloseTo(0.9, 1)
    expect(level({ barometer: '1013 hPa' })).toBeLessThan(0.1)
  })
})

describe('the weights', () => {
  it('carry the ± of the scale, as given or assumed, off the stop and the room', () => {
    const stop = (grossNow: string) => run({ ...full, grossNow, precise: true }).result.cylinder
    const [exact, assumed, rough] = ['41.5 ±0 lb', '41.5 lb', '41.5 ±0.5 lb'].map(stop)
    // 15 g
    expect((exact?.stopAt?.value ?? 0) - (assumed?.stopAt?.value ?? 0)).toBeCloseTo(0.03307, 4)
    expect((exact?.room?.value ?? 0) - (rough?.room?.value ?? 0)).toBeCloseTo(0.5, 6)
  })

  it('know the display of a machine less well than a scale', () => {
    const out = (recoveredBy: string, recovered: string) =>
      run({ refrigerant: 'R-134a', labelCharge: '1000 g', recovered, recoveredBy }).result.expected
        ?.recovered?.verdict
    expect(out('scale', '930 g')).toBe('less-than-label')
    expect(out('machine', '930 g')).toBe('cannot-tell')
    expect(out('machine', '915 g')).toBe('less-than-label')
    expect(out('machine', '930 ±5 g')).toBe('less-than-label')
  })

  it('never let a better scale turn a verdict round, or make one that cannot be told', () => {
    const side = { 'less-than-label': -1, 'as-labelled': 0, 'more-than-label': 1, 'cannot-tell': 9 }
    fc.assert(
      fc.property(
        fc.double({ min: 0.85, max: 1.1, noNaN: true }),
        fc.double({ min: 0.001, max: 0.05, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (share, width, finer) => {
          const verdict = (plusMinus: number) =>
            run({
              refrigerant: 'R-134a',
              labelCharge: '1 kg',
              recovered: { value: share, unit: 'kg', plusMinus },
            }).result.expected?.recovered?.verdict ?? 'cannot-tell'
          const [rough, sharp] = [verdict(width), verdict(width * finer)]
          if (rough !== 'cannot-tell') expect(side[sharp]).toBe(side[rough])
        },
      ),
      { numRuns: 60 },
    )
  })
})

it('gives the same level for an altitude and for the barometer that belongs to it', () => {
  const at = (place: Input) =>
    run({ refrigerant: 'R-134a', machine: 'stationary', ...place }).result.evacuation?.gaugeReading
  expect(at({ altitude: '5000 ft' })?.value).toBe(at({ barometer: '843.07 hPa' })?.value)
})

it('does not say that a machine recovers without an engine that ran before', () => {
  const { result } = run({ refrigerant: 'R-134a', machine: 'road-vehicle' })
  const share = result.evacuation?.rules.find(({ id }) => id === 'j2788-share')
  expect(share?.text).toMatch(
    /without outside heat\. Running the engine beforehand, up to 15 minutes/u,
  )
})

describe('where the period of requalification comes from', () => {
  const cited = (years?: number) =>
    run({ ...full, ...(years && { requalificationYears: years }) }).sources.map(
      ({ title }) => title,
    )

  it('five years unless another is given: what recovery tanks are marked for, not the table', () => {
    const { result } = run(full)
    expect(result.cylinder?.requalification).toEqual({ status: 'in-date', due: '2028-04' })
    const stamp = result.practice.find(({ id }) => id === 'five-year-stamp')
    expect(stamp?.text).toMatch(/first retest five years after manufacture/u)
    expect(cited()).toContainEqual(
      expect.stringMatching(/40 CFR 82 Subpart B, Appendices A \(7\.4\.1\.3\) and C \(7\.3\.3\)/u),
    )
    expect(cited(5)).toEqual(cited())
  })

  it('a period of ten or twelve years is one of the table, and not what recovery tanks are marked for', () => {
    for (const years of [10, 12]) {
      expect(cited(years)).toContainEqual(expect.stringMatching(/^49 CFR 180\.209/u))
      expect(cited(years).join()).not.toMatch(/Appendices A \(7\.4\.1\.3\)/u)
    }
  })
})
