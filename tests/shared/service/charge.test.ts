import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  density,
  refrigerant,
  saturatedDensity,
  saturationPressure,
} from '../../../shared/refrigerant/index.ts'
import { charge } from '../../../shared/service/charge.ts'
import { refusalOf } from '../../support/refusal.ts'

const r134a = refrigerant('R-134a')
const K = (fahrenheit: number) => (fahrenheit + 459.67) / 1.8
const si = { units: 'si', precise: true } as const

/** Grams of a mass shown in SI, whatever unit it was shown in. */
const grams = (shown: { value: number; unit: string } | undefined) => {
  if (!shown) throw new Error('There is no such mass.')
  return shown.unit === 'kg' ? shown.value * 1000 : shown.value
}

const refusal = (input: Record<string, unknown>) => refusalOf(() => charge.run(input))

const parted = {
  refrigerant: 'R-134a',
  job: 'couplers-parted',
  labelCharge: '2 lb 6 oz',
  couplingsOn: 'both-lines',
  spillVolume: '4 mL ±1 mL',
  partings: 2,
  suctionDry: true,
  ambient: '75 ±0 °F',
  ...si,
}
const opened = {
  refrigerant: 'R-134a',
  job: 'section-opened',
  labelCharge: '1.1 kg',
  volume: '300 mL',
  phase: 'liquid',
  temperature: '110 °F',
  ...si,
}
const whole = { refrigerant: 'R-134a', job: 'system-opened', labelCharge: '1.1 kg', ...si }

describe('couplers parted', () => {
  const liquid = saturatedDensity(r134a, K(75), 'liquid')
  const vapour = saturatedDensity(r134a, K(75), 'vapour')

  it('loses spill volume × density on its side × partings, of each coupling', () => {
    const { result } = charge.run(parted)
    expect(result.kind).toBe('correction')
    expect(result.appliedJob).toBe('couplers-parted')
    expect(grams(result.massToAdd)).toBeCloseTo(4e-3 * 2 * (liquid + vapour), 8)
    expect(result.couplings.map(({ name }) => name)).toEqual([
      'liquid coupling',
      'suction coupling',
    ])
    expect(grams(result.couplings[0]?.loss)).toBeCloseTo(4e-3 * 2 * liquid, 8)
  })

  it('moves both sides together when one spill volume stands for both', () => {
    const { result } = charge.run(parted)
    // Its own ± on both sides at once, and beside it 0.2 % of the liquid's density data.
    const spill = 1e-3 * 2 * (liquid + vapour)
    const width = result.massToAdd?.plusMinus ?? 0
    expect(width).toBeGreaterThan(spill)
    expect(width).toBeLessThan(1.001 * spill)
  })

  it('adds independent spill volumes in quadrature', () => {
    const { result } = charge.run({
      refrigerant: 'R-134a',
      job: 'couplers-parted',
      ambient: '75 ±0 °F',
      couplings: [
        { phase: 'liquid', spillVolume: '4 mL ±1 mL' },
        { phase: 'liquid', spillVolume: '4 mL ±1 mL' },
      ],
      ...si,
    })
    expect(result.massToAdd?.plusMinus).toBeCloseTo(Math.SQRT2 * 1e-3 * liquid, 2)
  })

  it('takes the state of a coupling that has its own', () => {
    const { result } = charge.run({
      ...parted,
      couplingsOn: undefined,
      couplings: [{ name: 'cab liquid line', temperature: '120 °F', pressure: '220 psig' }],
    })
    const pascal = 220 * 6894.757293168361 + 101325
    expect(grams(result.massToAdd)).toBeCloseTo(
      4e-3 * 2 * density(r134a, K(120), pascal, 'liquid'),
      5,
    )
    expect(result.couplings[0]?.name).toBe('cab liquid line')
  })

  it('answers a what-if as a range, with no mass to add and the advice to weigh in the full charge', () => {
    const { result } = charge.run({
      ...parted,
      spillVolume: undefined,
      whatIf: true,
      spillFrom: '1 mL',
      spillTo: '8 mL',
    })
    expect(result.kind).toBe('what-if')
    expect(result.massToAdd).toBeUndefined()
    expect(result.setOnScale).toBeUndefined()
    expect(grams(result.whatIfFrom)).toBeCloseTo(2e-3 * (liquid + vapour), 8)
    expect(grams(result.whatIfTo)).toBeCloseTo(16e-3 * (liquid + vapour), 8)
    expect(result.advice.join(' ')).toContain('weigh in the full charge')
  })

  it('lets a range pass only as a what-if, and a what-if only with a range', () => {
    const range = { spillFrom: '1 mL', spillTo: '8 mL' }
    expect(refusal({ ...parted, spillVolume: undefined, ...range }).code).toBe('refused')
    expect(refusal({ ...parted, spillVolume: undefined, whatIf: true }).code).toBe('missing-input')
    expect(refusal({ ...parted, whatIf: true, ...range }).code).toBe('bad-input')
    const reversed = { spillFrom: '8 mL', spillTo: '1 mL' }
    expect(refusal({ ...parted, spillVolume: undefined, whatIf: true, ...reversed }).path).toEqual([
      'spillTo',
    ])
  })

  it('compares the loss with the tolerance of the charge', () => {
    const verdict = (spillVolume: string, more = {}) =>
      charge.run({ ...parted, couplingsOn: 'liquid-line', partings: 1, spillVolume, ...more })
        .result.againstCharge?.verdict
    // Published: 1 to 2 oz (28 to 57 g); liquid R-134a at 75 °F is about 1.2 g/mL.
    expect(verdict('5 mL')).toBe('inside')
    expect(verdict('35 mL')).toBe('cannot-tell')
    expect(verdict('60 mL')).toBe('outside')
    expect(verdict('20 mL ±8 mL')).toBe('cannot-tell')
    expect(verdict('5 mL', { chargeTolerance: '5 g' })).toBe('outside')
  })

  it('says when even the widest what-if stays within the tolerance', () => {
    const { result } = charge.run({
      ...parted,
      spillVolume: undefined,
      whatIf: true,
      spillFrom: '0.5 mL',
      spillTo: '3 mL',
    })
    expect(result.againstCharge?.verdict).toBe('inside')
  })

  it('comes to one sentence', () => {
    const headline = (more: object) => charge.run({ ...parted, ...more }).headline
    expect(headline({})).toContain('Add nothing')
    expect(headline({ scaleTolerance: '1 g' })).toContain('Add nothing')
    expect(headline({ spillVolume: '60 ±3 mL' })).toMatch(/^Weigh in \S+ ±\S+ g: that much/u)
    expect(headline({ chargeTolerance: '2 g' })).toContain('cannot weigh surely')
    expect(headline({ spillVolume: '17 mL' })).toContain('about what the charge may be off')
    expect(headline({ sealed: false })).toContain('then weigh in the full charge: 1077.28187875 g')
    const guess = { spillVolume: undefined, whatIf: true, spillFrom: '1 mL' }
    expect(headline({ ...guess, spillTo: '3 mL' })).toContain('within the tolerance')
    expect(headline({ ...guess, spillTo: '90 mL' })).toContain('may be gone')
  })

  it('says when the scale cannot weigh it', () => {
    const scale = (more: object) => charge.run({ ...parted, ...more }).result.againstScale?.verdict
    expect(scale({ scaleDivision: '1 oz', couplingsOn: 'vapour-line' })).toBe('too-small')
    expect(scale({ scaleTolerance: '1 g', spillVolume: '4 mL' })).toBe('weighable')
    expect(scale({ scaleTolerance: '10 g' })).toBe('cannot-tell')
  })

  it('gives the air taken in, and its pressure over a given space', () => {
    const { result } = charge.run({ ...parted, airInclusion: '2 mL', vapourSpace: '4 L' })
    // Ideal gas: 8 mL of air at one atmosphere, spread over 4 L, is 1/500 of an atmosphere.
    expect(result.air?.partialPressure?.value).toBeCloseTo(101325 / 500, 6)
    const kilograms = (8e-6 * 101325) / ((8314.32 / 28.9644) * K(75))
    expect(grams(result.air?.mass)).toBeCloseTo(kilograms * 1000, 9)
    expect(charge.run(parted).result.air).toBeUndefined()
    expect(charge.run(parted).assumptions.map(({ field }) => field)).toContain('airInclusion')
    expect(
      refusal({ ...parted, airInclusion: '2 mL', temperature: '75 °F', ambient: undefined }).path,
    ).toEqual(['ambient'])
  })

  it('names no figure for the scale where nothing has to be added', () => {
    for (const spillVolume of ['1 mL', '8 mL']) {
      const { result, figures, headline, next } = charge.run({ ...parted, spillVolume })
      expect(result.setOnScale).toBeUndefined()
      expect(figures?.map(({ id }) => id)).not.toContain('setOnScale')
      expect(`${headline} ${next?.join(' ')}`).not.toMatch(/weigh (?:it )?in/iu)
    }
  })

  it('lists what was taken once, also for both lines', () => {
    const { assumptions } = charge.run({ ...parted, partings: undefined })
    const fields = assumptions.map(({ field }) => field)
    expect(fields.filter((field) => field === 'partings')).toHaveLength(1)
  })

  it('becomes a lost charge when a half did not seal', () => {
    const { result, warnings } = charge.run({ ...parted, sealed: false })
    expect(result.appliedJob).toBe('pressure-lost')
    expect(result.kind).toBe('full-charge')
    expect(grams(result.massToAdd)).toBeCloseTo(38 * 28.349523125, 8)
    expect(warnings.map(({ code }) => code)).toContain('not-used')
    expect(refusal({ ...parted, sealed: false, want: 'correction' }).code).toBe('refused')
  })

  it('weighs in the full charge when that is wanted', () => {
    const { result } = charge.run({ ...parted, want: 'full-charge' })
    expect(result.kind).toBe('full-charge')
    expect(result.appliedJob).toBe('couplers-parted')
  })

  it('asks at what temperature, and refuses what does not belong', () => {
    expect(refusal({ ...parted, ambient: undefined }).path).toEqual(['temperature'])
    expect(refusal({ ...parted, volume: '1 L' }).code).toBe('bad-input')
    expect(refusal({ ...parted, couplings: [{ phase: 'liquid' }] }).code).toBe('bad-input')
  })

  it('computes without a label charge, and asks for it', () => {
    const { result, warnings } = charge.run({ ...parted, labelCharge: undefined })
    expect(result.totalTarget).toBeUndefined()
    expect(grams(result.massToAdd)).toBeGreaterThan(9)
    expect(warnings.map(({ code }) => code)).toContain('label-charge-missing')
  })

  it("lets the maker's figure go before, and shows ours beside it", () => {
    const { result } = charge.run({ ...parted, makerCorrection: '20 g' })
    expect(grams(result.massToAdd)).toBe(20)
    expect(grams(result.ownEstimate)).toBeCloseTo(8e-3 * (liquid + vapour), 8)
    const bare = charge.run({ ...parted, couplingsOn: undefined, makerCorrection: '20 g' })
    expect(grams(bare.result.massToAdd)).toBe(20)
    const unknown = charge.run({ ...parted, spillVolume: undefined, makerCorrection: '20 g' })
    expect(grams(unknown.result.massToAdd)).toBe(20)
    expect(unknown.result.ownEstimate).toBeUndefined()
  })
})

describe('a section opened', () => {
  const hot = saturatedDensity(r134a, K(110), 'liquid')

  it('lacks what the section holds in operation', () => {
    const { result } = charge.run(opened)
    expect(result.kind).toBe('correction')
    expect(grams(result.massToAdd)).toBeCloseTo(0.3 * hot, 6)
    expect(grams(result.totalTarget)).toBeCloseTo(1100, 9)
  })

  it('takes several sections, sealed couplers with them, and altered parts', () => {
    const { result } = charge.run({
      refrigerant: 'R-134a',
      job: 'section-opened',
      labelCharge: '1.1 kg',
      sections: [
        { name: 'liquid line', volume: '100 mL', phase: 'liquid', temperature: '110 °F' },
        { name: 'suction hose', volume: '400 mL', phase: 'vapour', temperature: '40 °F' },
      ],
      couplings: [{ phase: 'liquid', temperature: '75 °F', spillVolume: '3 mL' }],
      parts: [
        {
          name: 'liquid line',
          old: { volume: '100 mL' },
          new: { volume: '130 mL' },
          phase: 'liquid',
          temperature: '110 °F',
        },
      ],
      ...si,
    })
    const sections = 0.1 * hot + 0.4 * saturatedDensity(r134a, K(40), 'vapour')
    const coupling = 3e-3 * saturatedDensity(r134a, K(75), 'liquid')
    expect(grams(result.massToAdd)).toBeCloseTo(sections + coupling + 0.03 * hot, 6)
    expect(grams(result.changeOfCharge)).toBeCloseTo(0.03 * hot, 6)
    expect(grams(result.totalTarget)).toBeCloseTo(1100 + 0.03 * hot, 6)
  })

  it('takes couplings beside a section at the temperature of the air, not of the section', () => {
    const given = { couplings: [{ phase: 'liquid', spillVolume: '3 mL' }] }
    const { result } = charge.run({ ...opened, ...given, ambient: '75 °F' })
    const spilt = 3e-3 * saturatedDensity(r134a, K(75), 'liquid')
    expect(grams(result.massToAdd)).toBeCloseTo(0.3 * hot + spilt, 6)
    expect(refusal({ ...opened, ...given }).path).toEqual(['couplings', 0, 'temperature'])
  })

  it('credits what was recovered', () => {
    const { result } = charge.run({ ...opened, recovered: '250 g' })
    expect(grams(result.lost)).toBeCloseTo(0.3 * hot - 250, 6)
    expect(grams(result.newRefrigerant)).toBeCloseTo(0.3 * hot - 250, 6)
    expect(grams(result.massToAdd)).toBeCloseTo(0.3 * hot, 6)
  })

  it('puts back what was recovered where that is more than the section can have held', () => {
    const { result, warnings } = charge.run({ ...opened, recovered: '500 g' })
    expect(grams(result.massToAdd)).toBeCloseTo(500, 9)
    expect(warnings.map(({ code }) => code)).toContain('recovered-more-than-held')
  })

  it('finds the phase from temperature and pressure', () => {
    const at = (temperature: string, pressure: string) =>
      charge.run({ ...opened, phase: undefined, temperature, pressure }).result.sections[0]?.density
        ?.value
    const pascal = 220 * 6894.757293168361 + 101325
    expect(at('110 °F', '220 psig')).toBeCloseTo(density(r134a, K(110), pascal, 'liquid'), 6)
    expect(at('180 °F', '220 psig')).toBeCloseTo(density(r134a, K(180), pascal, 'vapour'), 6)
  })

  it('refuses temperature and pressure at saturation and says what to give', () => {
    const pressure = `${(saturationPressure(r134a, K(110), 'bubble') / 1000).toFixed(6)} kPa abs`
    const error = refusal({ ...opened, phase: undefined, pressure })
    expect(error.code).toBe('two-phase')
    expect(error.hint).toContain('quality')
    const near = { phase: undefined, temperature: '110 °F ±3 °F', pressure: '148 psig' }
    expect(refusal({ ...opened, ...near }).code).toBe('two-phase')
  })

  it('takes the one fluid beyond the critical point', () => {
    const { result } = charge.run({
      refrigerant: 'R-744',
      job: 'section-opened',
      volume: '100 mL',
      temperature: '45 °C',
      pressure: '100 bar abs',
      ...si,
    })
    // CoolProp 8.0.0: D(T = 318.15 K, P = 1e7 Pa) of CarbonDioxide.
    expect(result.sections[0]?.density?.value).toBeCloseTo(498.2535, 2)
  })

  it('takes two-phase by its quality', () => {
    const { result } = charge.run({ ...opened, phase: 'two-phase', quality: '20 %' })
    const vapour = saturatedDensity(r134a, K(110), 'vapour')
    expect(grams(result.massToAdd)).toBeCloseTo(0.3 / (0.2 / vapour + 0.8 / hot), 6)
    const blend = charge.run({
      ...opened,
      refrigerant: 'R-407C',
      phase: 'two-phase',
      quality: '10 %',
      temperature: undefined,
      pressure: '515.010438 kPa abs',
    })
    // a flash by bisection, see tests/reference/physics.py
    expect(grams(blend.result.massToAdd)).toBeCloseTo(0.3 * 180.923474, 2)
    expect(refusal({ ...opened, phase: 'two-phase' }).code).toBe('missing-input')
    expect(refusal({ ...opened, quality: '20 %' }).path).toEqual(['quality'])
    expect(refusal({ ...opened, phase: 'two-phase', quality: '120 %' }).code).toBe('out-of-range')
  })

  it('takes pressure alone as saturated, read at the place', () => {
    const low = charge.run({ ...opened, temperature: undefined, pressure: '150 psig' })
    const high = charge.run({
      ...opened,
      temperature: undefined,
      pressure: '150 psig',
      altitude: '7000 ft',
    })
    // The same gauge reading is less pressure up there, so colder and denser liquid.
    expect(grams(high.result.massToAdd)).toBeGreaterThan(grams(low.result.massToAdd))
    expect(low.assumptions.map(({ field }) => field)).toContain('altitude')
    expect(high.assumptions.map(({ field }) => field)).not.toContain('altitude')
  })

  it('takes hose sizes, tube sizes and measured bores', () => {
    const volume = (geometry: object) =>
      charge.run({ ...opened, volume: undefined, length: '1 m', ...geometry }).result.sections[0]
        ?.volume?.value
    const millilitres = (inch: number) => (Math.PI / 4) * (inch * 2.54) ** 2 * 100
    expect(volume({ hoseSize: '#8' })).toBeCloseTo(millilitres(13 / 32), 8)
    expect(volume({ hoseSize: '8' })).toBeCloseTo(millilitres(13 / 32), 8)
    expect(volume({ hoseSize: '13/32 in' })).toBeCloseTo(millilitres(13 / 32), 8)
    expect(volume({ tubeSize: '3/8' })).toBeCloseTo(millilitres(0.315), 8)
    expect(volume({ tubeSize: '3/8"', tubeTemper: 'annealed' })).toBeCloseTo(millilitres(0.311), 8)
    expect(volume({ tubeSize: '1 1/8 in' })).toBeCloseTo(millilitres(1.025), 8)
    expect(volume({ innerDiameter: '8 mm' })).toBeCloseTo((Math.PI / 4) * 64, 8)
  })

  it('refuses sizes and measures that do not fit', () => {
    const geometry = (given: object) => refusal({ ...opened, volume: undefined, ...given })
    expect(geometry({ hoseSize: '#9', length: '1 m' }).code).toBe('unknown-name')
    expect(geometry({ hoseSize: '#9', length: '1 m' }).hint).toContain('innerDiameter')
    expect(geometry({ tubeSize: '1/4', tubeTemper: 'drawn', length: '1 m' }).code).toBe(
      'unknown-name',
    )
    expect(geometry({ hoseSize: '#8' }).path).toEqual(['length'])
    expect(geometry({ length: '1 m' }).path).toEqual(['innerDiameter'])
    expect(geometry({ hoseSize: '#8', tubeSize: '3/8', length: '1 m' }).code).toBe('bad-input')
    expect(geometry({ hoseSize: '#8', tubeTemper: 'drawn', length: '1 m' }).code).toBe('bad-input')
    expect(geometry({ innerDiameter: '-8 mm', length: '1 m' }).code).toBe('out-of-range')
    expect(geometry({}).path).toEqual(['sections'])
    expect(geometry({ sections: [{ phase: 'liquid', temperature: '110 °F' }] }).path).toEqual([
      'sections',
      0,
      'volume',
    ])
  })

  it("lets the maker's mass per length go before, with bore times density beside it", () => {
    const line = { ...opened, volume: undefined, length: '10 ft', makerMassPerLength: '0.6 oz/ft' }
    const { result } = charge.run({ ...line, tubeSize: '3/8' })
    expect(grams(result.massToAdd)).toBeCloseTo(6 * 28.349523125, 8)
    const check = result.sections[0]?.lineChecks[0]
    const computed = (Math.PI / 4) * (0.315 * 0.0254) ** 2 * hot
    expect(check?.computed.value).toBeCloseTo(computed * 1000, 8)
    expect(check?.ratio).toBeCloseTo((0.6 * 0.028349523125) / 0.3048 / computed, 3)
    const bare = { ...line, phase: undefined, temperature: undefined }
    expect(grams(charge.run(bare).result.massToAdd)).toBeCloseTo(6 * 28.349523125, 8)
  })

  it('refuses a section that would hold more than the machine', () => {
    const error = refusal({ ...opened, volume: '2 L' })
    expect(error.code).toBe('out-of-range')
    expect(error.message).toContain('more than the whole label charge')
  })

  it('refuses that only where it is sure', () => {
    const unsure = charge.run({ ...opened, volume: '1 L ±200 mL' })
    expect(grams(unsure.result.massToAdd)).toBeGreaterThan(1100)
    expect(refusal({ ...opened, volume: '1 L ±20 mL' }).path).toEqual(['labelCharge'])
  })

  it('opens the whole system when the shut-off leaked', () => {
    const { result } = charge.run({ ...opened, sealed: false })
    expect(result.appliedJob).toBe('system-opened')
    expect(grams(result.massToAdd)).toBeCloseTo(1100, 9)
  })

  it('warns of a band wider than the tolerance, and of a missing band', () => {
    const codes = (more: object) =>
      charge.run({ ...opened, ...more }).warnings.map(({ code }) => code)
    expect(codes({})).toContain('no-band')
    expect(codes({ volume: '300 mL ±90 mL' })).toContain('band-wider-than-tolerance')
    expect(codes({ volume: '300 mL ±5 mL' })).not.toContain('band-wider-than-tolerance')
  })
})

describe('the system opened, or pressure lost', () => {
  it('weighs in the label charge', () => {
    const { result } = charge.run(whole)
    expect(result.kind).toBe('full-charge')
    expect(grams(result.massToAdd)).toBeCloseTo(1100, 9)
    expect(result.againstCharge).toBeUndefined()
  })

  it('changes it by (new volume − old volume) × operating density of each altered part', () => {
    const { result } = charge.run({
      ...whole,
      parts: [
        {
          name: 'condenser',
          old: { volume: '1.2 L' },
          new: { volume: '1.0 L' },
          phase: 'two-phase',
          temperature: '130 °F',
          quality: '30 %',
        },
        {
          name: 'liquid hose',
          old: { hoseSize: '#8', length: '3 m' },
          new: { hoseSize: '#8', length: '5 m' },
          phase: 'liquid',
          temperature: '120 °F',
        },
      ],
    })
    const x = 0.3
    const condenser =
      1 /
      (x / saturatedDensity(r134a, K(130), 'vapour') +
        (1 - x) / saturatedDensity(r134a, K(130), 'liquid'))
    const bore = (13 / 32) * 0.0254
    const hose = (Math.PI / 4) * bore ** 2 * 2 * saturatedDensity(r134a, K(120), 'liquid') * 1000
    expect(grams(result.massToAdd)).toBeCloseTo(1100 - 0.2 * condenser + hose, 6)
    expect(result.parts.map(({ name }) => name)).toEqual(['condenser', 'liquid hose'])
  })

  it('refuses a correction and says why', () => {
    for (const done of ['system-opened', 'pressure-lost']) {
      const error = refusal({ ...whole, job: done, want: 'correction' })
      expect(error.code).toBe('refused')
      expect(error.message).toMatch(/nothing can be added to it as a correction/u)
    }
  })

  it('never makes up a label charge that is gone, and says where it is found', () => {
    const answer = charge.run({ ...whole, labelCharge: undefined })
    expect(answer.result.massToAdd).toBeUndefined()
    expect(answer.result.needs).toEqual(['labelCharge'])
    expect(answer.level).toBe('check')
    expect(answer.figures).toEqual([])
    const next = answer.next?.join(' ') ?? ''
    for (const way of ['serial number', 'sister machine', 'charging procedure']) {
      expect(next).toContain(way)
    }
    expect(answer.next?.slice(1).every((entry) => entry.startsWith('Or '))).toBe(true)
  })

  it("lets the maker's charge for the altered machine go before", () => {
    const { result } = charge.run({ ...whole, makerCharge: '1.3 kg' })
    expect(grams(result.massToAdd)).toBe(1300)
    expect(grams(result.ownEstimate)).toBeCloseTo(1100, 9)
    const added = charge.run({ ...whole, makerCorrection: '120 g' })
    expect(grams(added.result.massToAdd)).toBeCloseTo(1220, 9)
  })

  it('tells a loss or an overcharge from the recovered mass', () => {
    const short = charge.run({ ...whole, recovered: '800 g' }).result
    expect(grams(short.lost)).toBeCloseTo(300, 9)
    expect(grams(short.newRefrigerant)).toBeCloseTo(300, 9)
    const over = charge.run({ ...whole, recovered: '1.3 kg' })
    expect(over.result.lost).toBeUndefined()
    expect(over.warnings.map(({ code }) => code)).toContain('was-overcharged')
  })

  it('refuses a charge below zero', () => {
    const error = refusal({
      ...whole,
      oldVolume: '5 L',
      newVolume: '1 L',
      phase: 'liquid',
      temperature: '110 °F',
    })
    expect(error.code).toBe('out-of-range')
  })

  it('warns that a blend that leaked is no longer itself, and nothing of a two-phase blend, which is flashed', () => {
    const codes = (more: object) =>
      charge.run({ ...whole, refrigerant: 'R-407C', ...more }).warnings.map(({ code }) => code)
    expect(codes({ job: 'pressure-lost' })).toContain('blend-shifted')
    expect(codes({ job: 'pressure-lost', refrigerant: 'R-134a' })).not.toContain('blend-shifted')
    const condenser = { newVolume: '1 L', phase: 'two-phase', quality: '30 %' }
    expect(codes({ ...condenser, temperature: '110 °F' })).not.toContain('two-phase-zeotrope')
    expect(codes({ ...condenser, pressure: '250 psig' })).not.toContain('two-phase-zeotrope')
  })

  it('asks what fills an altered part, and what was altered', () => {
    expect(refusal({ ...whole, newVolume: '1 L' }).path).toEqual(['phase'])
    const parts = [{ phase: 'liquid', temperature: '110 °F' }]
    expect(refusal({ ...whole, parts }).path).toEqual(['parts', 0, 'new'])
  })
})

describe('what to set on the scale', () => {
  const hose = {
    ambient: '77 °F',
    serviceHoseBore: '1/4 in',
    serviceHoseLength: '72 in',
    serviceHoseHolds: 'liquid',
  }

  it('adds what the service hose keeps', () => {
    const { result } = charge.run({ ...whole, ...hose })
    const inside = (Math.PI / 4) * 0.00635 ** 2 * 1.8288 * 1000
    const kept = inside * saturatedDensity(r134a, K(77), 'liquid')
    expect(grams(result.holdUp)).toBeCloseTo(kept, 8)
    expect(grams(result.setOnScale)).toBeCloseTo(1100 + kept, 8)
    const inHose = charge.run({ ...whole, ...hose }).figures?.find(({ id }) => id === 'inHose')
    expect(inHose?.says).toContain('stays in the service hose')
  })

  it('counts only the difference when the hose was full before', () => {
    const { result } = charge.run({ ...whole, ...hose, serviceHoseStarts: 'liquid' })
    expect(grams(result.holdUp)).toBeCloseTo(0, 9)
  })

  it('asks for what is missing of the hose, and says when it was left out', () => {
    for (const field of Object.keys(hose)) {
      expect(refusal({ ...whole, ...hose, [field]: undefined }).path).toEqual([field])
    }
    expect(charge.run(whole).assumptions.map(({ field }) => field)).toContain('serviceHoseLength')
  })

  it('speaks in the unit that was asked for, and no finer than the scale', () => {
    const told = (more: object) =>
      charge.run({ ...whole, labelCharge: '2 lb 6.13 oz', units: 'us', precise: false, ...more })
        .headline
    expect(told({})).toBe('Weigh in the full charge: 2 lb 6.1 oz.')
    expect(told({ scaleDivision: '0.5 oz' })).toBe('Weigh in the full charge: 2 lb 6 oz.')
    expect(told({ scaleDivision: '5 g', units: 'si' })).toBe('Weigh in the full charge: 1080 g.')
    expect(told({ massUnit: 'kg' })).toBe('Weigh in the full charge: 1.08 kg.')
    expect(charge.run({ ...whole, massUnit: 'oz' }).result.massToAdd?.unit).toBe('oz')
  })
})

describe('bad input', () => {
  it('is refused where nothing would read it', () => {
    expect(refusal({ ...opened, spillVolume: '3 mL' }).path).toEqual(['spillVolume'])
    expect(refusal({ ...parted, phase: 'liquid' }).path).toEqual(['phase'])
  })

  it('is refused where the ± leaves no state at all', () => {
    expect(refusal({ ...opened, temperature: '110 °F ±900 °F' }).message).toContain('±')
  })

  it('is refused with the field', () => {
    expect(refusal({ ...opened, refrigerant: 'R-1234ab' }).code).toBe('unknown-refrigerant')
    expect(refusal({ ...opened, temperature: '110' }).code).toBe('ambiguous-quantity')
    expect(refusal({ ...opened, pressure: '150 psi' }).code).toBe('ambiguous-quantity')
    expect(refusal({ ...opened, volume: '10 oz' }).path).toEqual(['volume'])
    expect(refusal({ ...opened, labelCharge: '-1 kg' }).code).toBe('out-of-range')
    expect(refusal({ ...opened, temperature: '250 °F' }).code).toBe('above-critical')
    expect(refusal({ ...opened, job: 'hose-swapped' }).code).toBe('bad-input')
    expect(refusal({ ...parted, partings: 0 }).path).toEqual(['partings'])
    expect(refusal({ ...opened, volumes: '1 L' }).message).toContain('volumes')
    expect(refusal({ ...opened, makerCharge: '1 kg' }).path).toEqual(['makerCharge'])
    expect(refusal({ ...opened, volume: '1e300 m3' }).path).toEqual(['volume'])
    expect(refusal({ ...whole, labelCharge: '1e307 kg' }).path).toEqual(['labelCharge'])
    const sections = [{ volume: '1e300 L', phase: 'liquid', temperature: '75 °F' }]
    expect(refusal({ ...opened, volume: undefined, sections }).path).toEqual([
      'sections',
      0,
      'volume',
    ])
  })

  it('warns of fire only where the refrigerant burns', () => {
    const ids = (name: string) =>
      charge.run({ ...whole, refrigerant: name }).cautions.map(({ id }) => id)
    expect(ids('R-1234yf')).toContain('flammable')
    expect(ids('R-134a')).not.toContain('flammable')
    expect(ids('R-744')).toContain('carbon-dioxide')
    expect(ids('R-134a')).not.toContain('carbon-dioxide')
  })
})

describe('laws', () => {
  const names = fc.constantFrom('R-134a', 'R-1234yf', 'R-12', 'R-22', 'R-290')
  const millilitres = fc.double({ min: 0, max: 2000, noNaN: true })
  const celsius = fc.double({ min: -20, max: 60, noNaN: true })
  const phase = fc.constantFrom('liquid', 'vapour')

  it('mass balance: what stays in the machine and what is added make the total', () => {
    fc.assert(
      fc.property(
        names,
        fc.array(fc.record({ millilitres, celsius, phase }), { minLength: 1, maxLength: 4 }),
        fc.array(fc.record({ before: millilitres, after: millilitres, celsius }), { maxLength: 3 }),
        (name, sections, parts) => {
          const r = refrigerant(name)
          const rho = (t: number, p: string) =>
            saturatedDensity(r, t + 273.15, p === 'liquid' ? 'liquid' : 'vapour')
          const held = sections.reduce(
            (sum, s) => sum + (s.millilitres / 1e3) * rho(s.celsius, s.phase),
            0,
          )
          const change = parts.reduce(
            (sum, p) => sum + ((p.after - p.before) / 1e3) * rho(p.celsius, 'liquid'),
            0,
          )
          fc.pre(held + change >= 0)
          const label = held * 1.2 + 100
          const { result } = charge.run({
            refrigerant: name,
            job: 'section-opened',
            labelCharge: { value: label, unit: 'g' },
            sections: sections.map((s) => ({
              volume: { value: s.millilitres, unit: 'mL' },
              temperature: { value: s.celsius, unit: '°C' },
              phase: s.phase,
            })),
            parts: parts.map((p) => ({
              old: { volume: { value: p.before, unit: 'mL' } },
              new: { volume: { value: p.after, unit: 'mL' } },
              temperature: { value: p.celsius, unit: '°C' },
              phase: 'liquid',
            })),
            ...si,
          })
          const left = label - held
          expect(left + grams(result.massToAdd)).toBeCloseTo(grams(result.totalTarget), 6)
        },
      ),
      { numRuns: 60 },
    )
  })

  it('a part exchanged there and back leaves the charge as it was', () => {
    fc.assert(
      fc.property(names, millilitres, millilitres, celsius, phase, (name, a, b, t, p) => {
        const swap = (from: number, to: number) => ({
          old: { volume: { value: from, unit: 'mL' } },
          new: { volume: { value: to, unit: 'mL' } },
          temperature: { value: t, unit: '°C' },
          phase: p,
        })
        const { result } = charge.run({
          refrigerant: name,
          job: 'system-opened',
          labelCharge: '20 kg',
          parts: [swap(a, b), swap(b, a)],
          ...si,
        })
        expect(grams(result.massToAdd)).toBeCloseTo(20_000, 6)
      }),
      { numRuns: 60 },
    )
  })

  it('more volume or more partings never lose less', () => {
    fc.assert(
      fc.property(
        names,
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.integer({ min: 1, max: 20 }),
        celsius,
        (name, a, b, partings, t) => {
          const loss = (volume: number, times: number) =>
            grams(
              charge.run({
                refrigerant: name,
                job: 'couplers-parted',
                couplingsOn: 'both-lines',
                spillVolume: { value: volume, unit: 'mL' },
                partings: times,
                suctionDry: true,
                ambient: { value: t, unit: '°C' },
                ...si,
              }).result.massToAdd,
            )
          expect(loss(Math.max(a, b), partings)).toBeGreaterThanOrEqual(
            loss(Math.min(a, b), partings),
          )
          expect(loss(a, partings + 1)).toBeGreaterThanOrEqual(loss(a, partings))
        },
      ),
      { numRuns: 60 },
    )
  })

  it('the unit system of the readings does not change the mass', () => {
    fc.assert(
      fc.property(names, fc.double({ min: 0, max: 120, noNaN: true }), (name, fahrenheit) => {
        const at = (temperature: object) =>
          grams(
            charge.run({ ...opened, refrigerant: name, labelCharge: '9 kg', temperature }).result
              .massToAdd,
          )
        expect(at({ value: fahrenheit, unit: '°F' })).toBeCloseTo(
          at({ value: (fahrenheit - 32) / 1.8, unit: '°C' }),
          6,
        )
      }),
      { numRuns: 60 },
    )
  })
})

describe('a state that the refrigerant cannot have', () => {
  const section = { refrigerant: 'R-134a', job: 'section-opened', volume: '300 mL' }

  it('is refused at the field that says it', () => {
    const path = (more: object) => refusal({ ...section, ...more }).path
    expect(path({ phase: 'liquid', temperature: '230 °F' })).toEqual(['temperature'])
    expect(path({ phase: 'liquid', pressure: '900 psig' })).toEqual(['pressure'])
    expect(path({ phase: 'vapour', temperature: '55 °F', pressure: '150 psig' })).toEqual(['phase'])
    expect(path({ phase: 'two-phase', temperature: '230 °F', quality: '20 %' })).toEqual([
      'temperature',
    ])
    const sections = [{ volume: '300 mL', phase: 'liquid', temperature: '230 °F' }]
    expect(refusal({ refrigerant: 'R-134a', job: 'section-opened', sections }).path).toEqual([
      'sections',
      0,
      'temperature',
    ])
  })

  it('is called a fluid beyond its critical point, not vapour', () => {
    const { steps } = charge.run({
      ...section,
      refrigerant: 'R-744',
      volume: '100 mL',
      temperature: '100 °F',
      pressure: '1300 psig',
    })
    expect(steps[0]?.values.contents).toContain('beyond its critical point')
  })
})

describe('more recovered than the opened part can have held', () => {
  it('concludes that the full charge is right', () => {
    const { headline, warnings } = charge.run({
      refrigerant: 'R-134a',
      job: 'section-opened',
      sealed: true,
      labelCharge: '2 lb 6 oz',
      volume: '400 mL ±20 mL',
      phase: 'liquid',
      temperature: '110 ±5 °F',
      recovered: '640 ±5 g',
    })
    expect(warnings.map(({ code }) => code)).toContain('recovered-more-than-held')
    expect(headline).toContain('weigh in the full charge')
    expect(headline).toContain('At least')
  })
})

describe('about as much recovered as the opened part can have held', () => {
  it('takes what was weighed, and does not say that more came out than can have been there', () => {
    const { headline, result, warnings } = charge.run({
      ...opened,
      temperature: '110 ±0 °F',
      volume: '300 mL ±30 mL',
      recovered: '360 ±5 g',
    })
    expect(warnings.map(({ code }) => code)).toContain('recovered-about-as-held')
    expect(grams(result.massToAdd)).toBeCloseTo(360, 9)
    expect(headline).not.toContain('At least')
  })

  it('weighs what came out with the shop scale where nothing is said of it', () => {
    const band = (recovered: string) =>
      charge.run({ ...whole, recovered }).result.recovered?.plusMinus
    expect(band('800 g')).toBeCloseTo(15, 9)
    expect(band('800 ±2 g')).toBeCloseTo(2, 9)
  })
})

describe('fields that count for nothing', () => {
  const unused = (input: Record<string, unknown>) =>
    charge
      .run({ refrigerant: 'R-134a', labelCharge: '2 lb', ...input })
      .warnings.filter(({ code }) => code === 'not-used')
      .map(({ message }) => message.split(' ')[0])

  it('are named where the full charge is weighed in', () => {
    expect(
      unused({
        job: 'system-opened',
        spillVolume: '2 mL',
        whatIf: true,
        chargeTolerance: '1 oz',
        vapourSpace: '2 L',
        partings: 3,
        phase: 'liquid',
        temperature: '110 °F',
      }).sort(),
    ).toEqual(
      [
        'chargeTolerance',
        'partings',
        'phase',
        'spillVolume',
        'temperature',
        'vapourSpace',
        'whatIf',
      ].sort(),
    )
    expect(unused({ job: 'system-opened' })).toEqual([])
    const part = { oldVolume: '1 L', newVolume: '1.1 L', phase: 'liquid', temperature: '110 °F' }
    expect(unused({ job: 'system-opened', ...part })).toEqual([])
  })

  it('are named in a correction', () => {
    const section = { volume: '200 mL', phase: 'liquid', temperature: '110 °F' }
    expect(
      unused({ job: 'section-opened', ...section, partings: 3, vapourSpace: '2 L', whatIf: true }),
    ).toEqual(['partings', 'vapourSpace', 'whatIf'])
    expect(unused({ job: 'section-opened', ...section })).toEqual([])
  })

  it('a length beside a volume is refused', () => {
    const error = refusal({
      refrigerant: 'R-134a',
      job: 'section-opened',
      volume: '200 mL',
      length: '4 ft',
      phase: 'liquid',
      temperature: '110 °F',
    })
    expect(error.code).toBe('bad-input')
    expect(error.path).toEqual(['length'])
  })
})

describe('a full charge that is not the label’s', () => {
  const hose = {
    ambient: '21 °C',
    serviceHoseBore: '6 mm',
    serviceHoseLength: '1.8 m',
    serviceHoseHolds: 'liquid',
    serviceHoseStarts: 'empty',
  }

  it('says what it is made of', () => {
    const answer = charge.run({ ...whole, ...hose, precise: false })
    // π/4 · 6 mm² · 1.8 m = 50.9 mL of liquid at 21 °C, 1.22 g/mL.
    expect(answer.headline).toBe('Weigh in the full charge: 1162 g (label 1100 g, hose 62 g).')
  })

  it('is told without parts where it is that of the label', () => {
    expect(charge.run({ ...whole, precise: false }).headline).toBe(
      'Weigh in the full charge: 1100 g.',
    )
  })
})
