import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { standardAtmosphere } from '../../../shared/quantity/index.ts'
import {
  refrigerant,
  saturatedDensity,
  saturationTemperature,
} from '../../../shared/refrigerant/index.ts'
import { densitiesOf } from '../../../shared/service/charge/space/densities.ts'
import { computeCharge } from '../../../shared/service/charge/verdict/answer.ts'
import { charge } from '../../../shared/service/charge.ts'
import { refusalOf } from '../../support/refusal.ts'

const si = { units: 'si', precise: true } as const
const section = {
  refrigerant: 'R-134a',
  job: 'section-opened',
  labelCharge: '9 kg',
  volume: '300 mL ±10 mL',
  phase: 'liquid',
  ...si,
}
const inGrams = (shown: { value: number; unit: string } | undefined) =>
  (shown?.value ?? Number.NaN) * (shown?.unit === 'kg' ? 1000 : 1)

/** Densities that were solved for one input. */
function solves(name: string, input: Record<string, unknown>): number {
  const densities = densitiesOf(refrigerant(name))
  computeCharge(charge.parse({ refrigerant: name, ...input }), densities)
  return densities.solves
}

describe('the cost of equal states', () => {
  const many = (item: object) => Array.from({ length: 50 }, () => ({ ...item }))
  const coupling = {
    spillVolume: '1.5 ±0.5 mL',
    phase: 'liquid',
    temperature: '80 ±2 °F',
    pressure: '300 ±5 psig',
  }
  const line = {
    volume: '30 ±1 mL',
    phase: 'liquid',
    temperature: '80 ±2 °F',
    pressure: '300 ±5 psig',
  }

  it('of fifty couplings is that of one: the state, and its ± by thermometer, gauge and barometer', () => {
    const job = { job: 'couplers-parted', couplingType: 'two-valve' }
    const one = solves('R-448A', { ...job, couplings: [coupling] })
    expect(solves('R-448A', { ...job, couplings: many(coupling) })).toBe(one)
    expect(one).toBeLessThanOrEqual(7)
  })

  it('of fifty sections is that of one, flashed two-phase spaces too', () => {
    const job = { job: 'section-opened', labelCharge: '90 kg' }
    expect(solves('R-448A', { ...job, sections: many(line) })).toBe(
      solves('R-448A', { ...job, sections: [line] }),
    )
    const mixed = { volume: '30 mL', phase: 'two-phase', temperature: '80 °F', quality: '30 %' }
    const flashed = solves('R-407C', { ...job, sections: [mixed] })
    expect(flashed).toBeGreaterThan(0)
    expect(solves('R-407C', { ...job, sections: many(mixed) })).toBe(flashed)
  })
})

describe('how many items are computed at once', () => {
  const sectioned = (sections: number, parts: number) => ({
    ...section,
    volume: undefined,
    phase: undefined,
    temperature: undefined,
    sections: Array.from({ length: sections }, () => ({
      volume: '3 mL',
      phase: 'liquid',
      temperature: '110 °F',
    })),
    parts: Array.from({ length: parts }, () => ({
      old: { volume: '3 mL' },
      new: { volume: '4 mL' },
      phase: 'liquid',
      temperature: '110 °F',
    })),
  })

  it('is fifty of all kinds together: one more is refused by the list that has it', () => {
    expect(charge.run(sectioned(20, 30)).result.massToAdd).toBeDefined()
    expect(refusalOf(() => charge.run(sectioned(20, 31)))).toEqual(
      expect.objectContaining({ code: 'bad-input', path: ['parts'] }),
    )
    expect(refusalOf(() => charge.run(sectioned(51, 0)))).toEqual(
      expect.objectContaining({ code: 'bad-input', path: ['sections'] }),
    )
  })
})

describe('what the band of a mass holds', () => {
  const width = (more: object) => {
    const { result } = charge.run({ ...section, ...more })
    return inGrams(result.massToAdd) * 0 + (result.massToAdd?.plusMinus ?? Number.NaN)
  }
  const exact = { volume: '300 mL ±0 mL', temperature: '110 °F ±0 °F' }

  it('the volume, the thermometer and the density data, each by its own size', () => {
    const bare = width(exact)
    const { result } = charge.run({ ...section, ...exact })
    // 0.2 % of the liquid's density, and the curve's share beside it.
    expect(bare / inGrams(result.massToAdd)).toBeCloseTo(0.002, 4)
    const byVolume = width({ ...exact, volume: '300 mL ±10 mL' })
    expect(byVolume).toBeCloseTo(Math.hypot(bare, (10 / 300) * inGrams(result.massToAdd)), 6)
    // A shop thermometer's ±1 °F where none is given.
    expect(width({ ...exact, temperature: '110 °F' })).toBeCloseTo(
      width({ ...exact, temperature: '110 °F ±1 °F' }),
      9,
    )
    expect(width({ ...exact, temperature: '110 °F ±4 °F' })).toBeGreaterThan(1.5 * bare)
  })

  it('the saturation pressure too, where a vapour is known by its temperature', () => {
    const share = (refrigerant: string) => {
      const { result } = charge.run({ ...section, ...exact, refrigerant, phase: 'vapour' })
      return (result.massToAdd?.plusMinus ?? 0) / inGrams(result.massToAdd)
    }
    // 0.5 % in vapour density and 0.3 % in pressure; of a blend with estimated pairs some percent.
    expect(share('R-134a')).toBeCloseTo(Math.hypot(0.005, 0.003), 4)
    expect(share('R-409A')).toBeGreaterThan(0.03)
  })

  it('the barometer of the place, once for all gauges', () => {
    const line = { volume: '300 mL ±0 mL', phase: 'vapour', pressure: '30 ±0 psig' }
    const { labelCharge: _, volume: __, phase: ___, ...rest } = section
    const one = charge.run({ ...rest, sections: [line] })
    const two = charge.run({ ...rest, sections: [line, { ...line }] })
    const known = charge.run({ ...rest, sections: [line], barometer: '101.325 ±0 kPa' })
    expect(known.result.massToAdd?.plusMinus).toBeLessThan(
      0.9 * (one.result.massToAdd?.plusMinus ?? 0),
    )
    // Two sections under one barometer, filled with one refrigerant: twice as far off, not √2 times.
    expect(
      (two.result.massToAdd?.plusMinus ?? 0) / (one.result.massToAdd?.plusMinus ?? 1),
    ).toBeCloseTo(2, 9)
  })
})

describe('laws', () => {
  const names = fc.constantFrom('R-134a', 'R-1234yf', 'R-407C')
  const item = fc.record({
    ml: fc.double({ min: 1, max: 900, noNaN: true }),
    half: fc.double({ min: 0, max: 0.9, noNaN: true }),
    celsius: fc.double({ min: -20, max: 50, noNaN: true }),
    phase: fc.constantFrom('liquid', 'vapour'),
  })
  const shown = ({
    ml,
    half,
    celsius,
    phase,
  }: {
    ml: number
    half: number
    celsius: number
    phase: string
  }) => ({
    volume: { value: ml, unit: 'mL', plusMinus: half * ml },
    temperature: { value: celsius, unit: '°C', plusMinus: 2 },
    phase,
  })

  it('the order of sections and parts changes nothing', () => {
    fc.assert(
      fc.property(names, fc.array(item, { minLength: 2, maxLength: 6 }), (name, entries) => {
        const run = (list: typeof entries) =>
          charge.run({
            refrigerant: name,
            job: 'section-opened',
            labelCharge: '50 kg',
            sections: list.map(shown),
            parts: list.map((entry) => {
              const { volume, ...contents } = shown(entry)
              return { new: { volume }, ...contents }
            }),
            ...si,
          }).result
        const [one, other] = [run(entries), run([...entries].reverse())]
        for (const field of ['massToAdd', 'totalTarget', 'changeOfCharge'] as const) {
          expect(Math.abs(inGrams(other[field]) / inGrams(one[field]) - 1)).toBeLessThan(1e-12)
          expect((other[field]?.plusMinus ?? 0) / (one[field]?.plusMinus ?? 1)).toBeCloseTo(1, 9)
        }
      }),
      { numRuns: 30 },
    )
  })

  it('a tighter ± never reverses a verdict nor turns it into cannot-tell', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 120, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (ml, half, share) => {
          const verdicts = (plusMinus: number) => {
            const { result } = charge.run({
              ...section,
              volume: { value: ml, unit: 'mL', plusMinus },
              temperature: '80 ±1 °F',
              scaleTolerance: '20 g',
            })
            return [result.againstCharge?.verdict, result.againstScale?.verdict]
          }
          const [wide, fine] = [verdicts(half * ml), verdicts(half * ml * share)]
          for (const [index, verdict] of wide.entries()) {
            if (verdict !== 'cannot-tell') expect(fine[index]).toBe(verdict)
          }
        },
      ),
      { numRuns: 80 },
    )
  })

  it('an altitude and the barometer that belongs to it give the same mass', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -200, max: 4000, noNaN: true }),
        fc.double({ min: 20, max: 150, noNaN: true }),
        (metres, psig) => {
          const { temperature: _, ...rest } = { ...section, temperature: undefined }
          const at = (place: object) =>
            inGrams(
              charge.run({ ...rest, pressure: { value: psig, unit: 'psig' }, ...place }).result
                .massToAdd,
            )
          const byBarometer = at({ barometer: { value: standardAtmosphere(metres), unit: 'Pa' } })
          expect(at({ altitude: { value: metres, unit: 'm' } }) / byBarometer).toBeCloseTo(1, 12)
        },
      ),
      { numRuns: 40 },
    )
  })

  it('each caution of every answer is in every answer, and in the stop', () => {
    const always = [
      'pressure',
      'cold-burns',
      'asphyxiation',
      'goggles-even-empty',
      'weigh-the-charge',
      'maker-first',
      'local-rules',
    ]
    const jobs = [
      section,
      { ...section, temperature: '80 °F' },
      { refrigerant: 'R-744', job: 'system-opened', labelCharge: '1 kg' },
      { refrigerant: 'R-290', job: 'pressure-lost' },
      { refrigerant: 'R-134a', job: 'couplers-parted' },
    ]
    for (const job of jobs.slice(1)) {
      const ids = charge.run(job).cautions.map(({ id }) => id)
      expect(ids).toEqual(expect.arrayContaining(always))
    }
    const stop = refusalOf(() => charge.run({ refrigerant: 'CO2', job: 'couplers-parted' }))
    expect(stop.cautions).toEqual(expect.arrayContaining(always))
  })
})

describe('the tolerance of a charge', () => {
  const at = (labelCharge: string | undefined, grams: number) =>
    charge.run({
      refrigerant: 'R-134a',
      job: 'section-opened',
      labelCharge,
      volume: { value: grams / 1.2, unit: 'mL', plusMinus: 0 },
      phase: 'liquid',
      temperature: '77 ±0 °F',
      ...si,
    }).result.againstCharge

  it('is in proportion to a charge larger or smaller than a cab’s', () => {
    // 8.5 kg is 4.68 times 4 lb: what is nothing there is all the tolerance of a small car.
    const large = at('8.5 kg', 100)
    expect(large?.from.value).toBeCloseTo((8500 / (4 * 453.59237)) * 28.349523125, 6)
    expect(large?.to.value).toBeCloseTo(2 * (large?.from.value ?? 0), 9)
    expect(large?.verdict).toBe('inside')
    expect(at('1.2 kg', 100)?.verdict).toBe('outside')
    expect(at('1.2 kg', 40)?.verdict).toBe('cannot-tell')
    expect(at('1.2 kg', 40)?.text).toContain('would settle it')
    expect(at('400 g', 20)?.verdict).toBe('cannot-tell')
    expect(at(undefined, 20)?.verdict).toBe('inside')
  })
})

describe('a verdict inside the ±', () => {
  const at = (volume: string, more: object = {}) =>
    charge.run({ ...section, labelCharge: '1.2 kg', volume, temperature: '77 ±0 °F', ...more })
      .result

  it('cannot be told, on either side of the tolerance and of the scale', () => {
    // Liquid R-134a at 77 °F is 1.207 g/mL; 2 oz are 56.7 g.
    expect(at('49 ±4 mL').againstCharge?.verdict).toBe('cannot-tell')
    expect(at('49 ±1 mL').againstCharge?.verdict).toBe('outside')
    expect(at('22 ±4 mL').againstCharge?.verdict).toBe('cannot-tell')
    expect(at('22 ±1 mL').againstCharge?.verdict).toBe('inside')
    const scale = { scaleTolerance: '60 g' }
    expect(at('52 ±4 mL', scale).againstScale?.verdict).toBe('cannot-tell')
    expect(at('52 ±1 mL', scale).againstScale?.verdict).toBe('weighable')
    expect(at('47 ±4 mL', scale).againstScale?.verdict).toBe('cannot-tell')
    expect(at('47 ±1 mL', scale).againstScale?.verdict).toBe('too-small')
  })

  it('names what would settle it: the largest part, or the maker’s tolerance between the two', () => {
    expect(at('49 ±4 mL').againstCharge?.text).toContain('a better figure for the volume')
    expect(at('35 ±1 mL').againstCharge?.text).toContain("the maker's own tolerance")
  })
})

describe('a blend known by its pressure', () => {
  it('is liquid on its bubble line and vapour on its dew line', () => {
    const r = refrigerant('R-407C')
    const pascal = 1.5e6
    for (const [phase, line] of [
      ['liquid', 'bubble'],
      ['vapour', 'dew'],
    ] as const) {
      const { result } = charge.run({
        ...section,
        refrigerant: 'R-407C',
        phase,
        pressure: { value: pascal, unit: 'Pa abs' },
      })
      const expected = saturatedDensity(r, saturationTemperature(r, pascal, line), phase)
      expect(result.sections[0]?.density?.value).toBeCloseTo(expected, 6)
    }
  })
})
