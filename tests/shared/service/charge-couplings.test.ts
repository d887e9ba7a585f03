import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { refrigerant, saturatedDensity } from '../../../shared/refrigerant/index.ts'
import { charge } from '../../../shared/service/charge.ts'
import { refusalOf } from '../../support/refusal.ts'

const r134a = refrigerant('R-134a')
const K = (fahrenheit: number) => (fahrenheit + 459.67) / 1.8
const OUNCE_G = 28.349523125
const base = {
  refrigerant: 'R-134a',
  job: 'couplers-parted',
  couplingType: 'two-valve',
  coldest: '60 °F',
  units: 'si',
  precise: true,
}
const SIX = ['liquid:18mm/4mm+2mm', 'suction:25mm/5mm+3mm']
const exact = { caliper: ['liquid:18 ±0 mm/4 ±0 mm+2 ±0 mm', 'suction:25 ±0 mm/5 ±0 mm+3 ±0 mm'] }

const run = (more: object) => charge.run({ ...base, ...more })
const refusal = (more: object) => refusalOf(() => run(more))
const inGrams = (shown: { value: number; unit: string } | undefined) =>
  (shown?.value ?? Number.NaN) * (shown?.unit === 'kg' ? 1000 : 1)
const boundOf = (more: object) => run(more).result.bound

/** π/4 · d² · (a + b) in mL of the six figures. */
const LIQUID_ML = (Math.PI / 4) * 18 ** 2 * (4 + 2) * 1e-3
const SUCTION_ML = (Math.PI / 4) * 25 ** 2 * (5 + 3) * 1e-3
const cold = saturatedDensity(r134a, K(60), 'liquid') * 1e-3

describe('couplings measured with a caliper', () => {
  it('cannot have lost more than the recess between their shut valves, full of cold liquid', () => {
    const { result } = run({ parted: exact.caliper })
    expect(result.kind).toBe('bound')
    // 0.2 % for the liquid's density data is all the ± there is.
    const grams = (LIQUID_ML + SUCTION_ML) * cold
    expect(inGrams(result.bound?.most) / grams).toBeGreaterThan(1.0019)
    expect(inGrams(result.bound?.most) / grams).toBeLessThan(1.0022)
    expect(result.bound?.space.value).toBeCloseTo(LIQUID_ML + SUCTION_ML, 6)
    expect(result.couplings.map(({ evidence }) => evidence)).toEqual(['caliper', 'caliper'])
  })

  it('counts the caliper’s ±0.2 mm at its worse end in every figure', () => {
    const parts = [
      [18, 6],
      [25, 8],
    ] as const
    // 2·0.2/d of the mouth and 0.2/(a + b) of each depth, one on top of the other.
    const worst = parts.reduce(
      (sum, [d, deep]) => sum + (Math.PI / 4) * d ** 2 * deep * (1 + 0.4 / d + 0.4 / deep) * 1e-3,
      0,
    )
    const bound = boundOf({ parted: SIX })
    expect(bound?.space.value).toBeCloseTo(worst, 3)
    expect(run({ parted: SIX }).assumptions.map(({ taken }) => taken)).toContain('caliper ±0.2 mm')
  })

  it('is a bound and never the loss, and never becomes a mass to add', () => {
    const { result, figures, headline } = run({ parted: SIX, labelCharge: '3 lb 8 oz' })
    for (const absent of [result.massToAdd, result.setOnScale, result.massToAddTo, result.lost]) {
      expect(absent).toBeUndefined()
    }
    for (const { loss, lossFrom } of result.couplings) {
      expect(loss).toBeUndefined()
      expect(lossFrom?.value).toBe(0)
    }
    expect(figures?.map(({ id }) => id)).toEqual([
      'bound',
      'tolerance',
      'space',
      'likeParts',
      'labelCharge',
    ])
    expect(headline).not.toMatch(/missing|weigh in/iu)
  })

  it('says to add nothing where it lies inside the tolerance, and only then', () => {
    const inside = run({ parted: SIX, labelCharge: '3 lb 8 oz', units: 'us', precise: false })
    expect(inside.level).toBe('fine')
    expect(inside.headline).toBe(
      'Add nothing, if both valves shut before the seal opened and neither hissed on: at most 0.26 oz can be gone.',
    )
    expect(inside.next?.[0]).toContain('Leak-check')
    const loose = run({ parted: SIX, chargeTolerance: '7 g' })
    expect(loose.result.bound?.verdict).toBe('too-loose')
    expect(loose.level).toBe('check')
    expect(loose.headline).toContain('Too loose to tell')
    expect(loose.headline).not.toContain('Add nothing')
    // The ± decides: 6.7 g by the bare figures, 7.3 g with the caliper's ±0.2 mm.
    expect(boundOf({ parted: exact.caliper, chargeTolerance: '7 g' })?.verdict).toBe('inside')
  })

  it('tells the tolerance as a scale can show it, and never more than it is', () => {
    const { figures } = run({ parted: SIX, labelCharge: '500 g', units: 'si', precise: false })
    expect(figures?.find(({ id }) => id === 'tolerance')?.text).toBe('15 g')
  })

  it('counts both sides as liquid unless the suction line is stated dry', () => {
    const both = inGrams(boundOf({ parted: exact.caliper })?.most)
    const dry = inGrams(boundOf({ parted: exact.caliper, suctionDry: true })?.most)
    const hottest = saturatedDensity(r134a, K(120), 'vapour') * 1e-3
    expect(dry / (LIQUID_ML * cold + SUCTION_ML * hottest)).toBeCloseTo(1, 2)
    expect(both).toBeGreaterThan(2.5 * dry)
    const fields = run({ parted: SIX }).assumptions.map(({ field }) => field)
    expect(fields).toContain('suctionDry')
  })

  it('takes the coldest that the lines can have been, and colder than the air without it', () => {
    const bound = (more: object) =>
      inGrams(boundOf({ parted: exact.caliper, coldest: undefined, ...more })?.most)
    const at = (fahrenheit: number) =>
      (LIQUID_ML + SUCTION_ML) * saturatedDensity(r134a, K(fahrenheit), 'liquid') * 1e-3
    expect(bound({ ambient: '75 °F' }) / at(32)).toBeCloseTo(1.002, 4)
    expect(bound({ ambient: '20 ±0 °F' }) / at(20)).toBeCloseTo(1.002, 4)
    expect(bound({}) / at(0)).toBeCloseTo(1.002, 4)
    expect(bound({ coldest: '50 °F', ambient: '75 °F' }) / at(50)).toBeCloseTo(1.002, 4)
  })

  it('grows with each parting', () => {
    const once = inGrams(boundOf({ parted: ['liquid:18mm/4mm+2mm'] })?.most)
    expect(inGrams(boundOf({ parted: ['liquid:18mm/4mm+2mm x3'] })?.most)).toBeCloseTo(3 * once, 9)
    expect(inGrams(boundOf({ parted: ['liquid:18mm/4mm+2mm'], partings: 2 })?.most)).toBeCloseTo(
      2 * once,
      9,
    )
  })

  it('reads the six figures as fields, too', () => {
    const coupling = (
      line: string,
      mouthDiameter: string,
      firstDepth: string,
      secondDepth: string,
    ) => ({ line, mouthDiameter, firstDepth, secondDepth })
    const couplings = [
      coupling('liquid', '18 mm', '4 mm', '2 mm'),
      coupling('suction', '25 mm', '5 mm', '3 mm'),
    ]
    expect(boundOf({ couplings })).toEqual(boundOf({ parted: SIX }))
    expect(boundOf({ parted: [SIX.join(',')] })).toEqual(boundOf({ parted: SIX }))
    const { secondDepth: _, ...half } = coupling('liquid', '18 mm', '4 mm', '2 mm')
    expect(refusal({ couplings: [half] }).path).toEqual(['couplings', 0, 'secondDepth'])
  })

  it('refuses a word that is no coupling', () => {
    for (const word of ['18mm/4mm+2mm', 'liquid:18mm', 'liquid:18/4+2', 'drain:18mm/4mm+2mm']) {
      expect(refusal({ parted: [word] }).path.slice(0, 2)).toEqual(['parted', 0])
    }
    expect(refusal({ parted: ['liquid:18mm/4mm+2mm x0'] }).code).toBe('bad-input')
    expect(refusal({ parted: SIX, couplingsOn: 'both-lines' }).code).toBe('bad-input')
  })

  it('stands beside the limits of like parts, which are no figure of it', () => {
    const { result, sources } = run({ parted: SIX })
    // ISO 14541: 1.4 to 2.7 mL around 18 mm, 2.7 to 9.3 mL around 25 mm.
    expect(result.likeParts?.from.value).toBeCloseTo(1.4 + 2.7, 9)
    expect(result.likeParts?.to.value).toBeCloseTo(2.7 + 9.3, 9)
    expect(sources.find(({ id }) => id === result.likeParts?.source)?.mark).toBe('secondary')
    expect(run({ parted: ['liquid:12mm/4mm+2mm'] }).result.likeParts?.from.value).toBe(0)
    expect(run({ parted: ['liquid:40mm/1mm+1mm'] }).result.likeParts).toBeUndefined()
    const figure = run({ parted: SIX }).figures?.find(({ id }) => id === 'likeParts')
    expect(figure?.basis).toBe('secondary')
  })
})

describe('a job that nobody named', () => {
  const unnamed = (more: object) => charge.run({ refrigerant: 'R-134a', ...more })

  it('is the parting of the couplings that are described, and said to be assumed', () => {
    const described = [
      { parted: SIX },
      { couplingType: 'two-valve' },
      { couplingsOn: 'both-lines' },
      { couplings: [{ line: 'liquid' }] },
    ]
    for (const more of described) {
      const { result, assumptions } = unnamed(more)
      expect(result.appliedJob).toBe('couplers-parted')
      expect(assumptions.find(({ field }) => field === 'job')?.taken).toBe('couplers-parted')
      const named = unnamed({ ...more, job: 'couplers-parted' })
      expect(named.result).toEqual(result)
      expect(named.assumptions.some(({ field }) => field === 'job')).toBe(false)
    }
  })

  it('is asked for where nothing says which', () => {
    const error = refusalOf(() => unnamed({ labelCharge: '3 lb 8 oz' }))
    expect(error).toMatchObject({ code: 'missing-input', path: ['job'] })
    expect(error.hint).toContain('pressure-lost')
  })

  it('stops R-744 all the same', () => {
    const error = refusalOf(() => charge.run({ refrigerant: 'R-744', couplingType: 'two-valve' }))
    expect(error.level).toBe('stop')
  })
})

describe('couplings measured from outside', () => {
  const hex = { couplingsOn: 'liquid-line', hexSize: '30 ±0 mm', joinedLength: '25.4 ±0 mm' }

  it('hold no more than a cylinder that touches the flats of the hex: true, but loose', () => {
    const { result } = run(hex)
    // 18.0 mL an inch of a 30 mm hex.
    expect(result.bound?.space.value).toBeCloseTo((Math.PI / 4) * 30 ** 2 * 25.4e-3, 6)
    expect(result.couplings[0]?.evidence).toBe('hex')
    expect(result.likeParts).toBeUndefined()
    expect(refusal({ ...hex, joinedLength: undefined }).path).toEqual(['joinedLength'])
  })

  it('give way to a caliper, and a caliper to the maker’s figure', () => {
    const caliper = { ...hex, mouthDiameter: '18 mm', firstDepth: '4 mm', secondDepth: '2 mm' }
    expect(run(caliper).result.couplings[0]?.evidence).toBe('caliper')
    const maker = run({ ...caliper, spillVolume: '1 mL ±0.1 mL', ambient: '75 °F' })
    expect(maker.result.couplings[0]?.evidence).toBe('maker')
    expect(maker.result.kind).toBe('correction')
  })
})

describe('couplings of a maker’s spill volume', () => {
  const maker = { couplingType: undefined, spillVolume: '4 mL ±1 mL', ambient: '75 °F' }

  it('are a bound where the suction line may hold liquid, and a loss where it is stated dry', () => {
    const open = run({ ...maker, couplingsOn: 'both-lines' })
    expect(open.result.kind).toBe('bound')
    const liquid = saturatedDensity(r134a, K(75), 'liquid')
    expect(inGrams(open.result.bound?.most)).toBeGreaterThan(8e-3 * liquid)
    expect(run({ ...maker, couplingsOn: 'both-lines', suctionDry: true }).result.kind).toBe(
      'correction',
    )
    expect(run({ ...maker, couplings: [{ phase: 'vapour' }] }).result.kind).toBe('correction')
  })
})

describe('what has to be found out first', () => {
  it('is told on one screen, not in three refusals', () => {
    const { level, result, next, figures } = run({ couplingType: undefined })
    expect(level).toBe('check')
    expect(result.kind).toBe('measure')
    expect(result.needs).toEqual(['couplingType', 'parted'])
    expect(next?.[0]).toContain('two-valve')
    expect(next?.[1]).toContain('liquid:18mm/4mm+2mm')
    expect(next?.[2]).toContain('recover')
    expect(figures).toEqual([])
    expect(run({ couplingsOn: 'both-lines' }).result.needs).toEqual(['parted'])
    expect(run({ parted: SIX, couplingType: undefined }).result.needs).toEqual(['couplingType'])
    expect(run({ parted: SIX, couplingType: undefined }).result.bound).toBeUndefined()
  })

  it.each(['one-valve', 'diaphragm', 'no-valve', 'spring-lock'])(
    'sends %s couplings to the weighed full charge, whatever was measured',
    (couplingType) => {
      const { result, headline } = run({ parted: SIX, couplingType, labelCharge: '1.1 kg' })
      expect(result.kind).toBe('full-charge')
      expect(inGrams(result.massToAdd)).toBeCloseTo(1100, 9)
      expect(result.bound).toBeUndefined()
      expect(headline).toContain('Recover, and weigh in the full charge')
      expect(run({ couplingType }).headline).toContain('Recover')
    },
  )

  it('recovers where a half hisses on, too', () => {
    const { result } = run({ parted: SIX, sealed: false, labelCharge: '1.1 kg' })
    expect(result.appliedJob).toBe('pressure-lost')
    expect(result.kind).toBe('full-charge')
  })
})

describe('beside an opened section', () => {
  it('a bound is told and never added to the mass that is known', () => {
    const section = {
      job: 'section-opened',
      volume: '300 mL',
      phase: 'liquid',
      temperature: '110 ±0 °F',
      labelCharge: '1.1 kg',
    }
    const alone = run({ ...section, couplingType: undefined, coldest: undefined })
    const both = run({ ...section, parted: SIX })
    expect(inGrams(both.result.massToAdd)).toBe(inGrams(alone.result.massToAdd))
    expect(both.warnings.map(({ code }) => code)).toContain('bound-beside-section')
    expect(inGrams(both.result.bound?.most)).toBeCloseTo(inGrams(boundOf({ parted: SIX })?.most), 6)
  })
})

describe('dangers of parted couplings', () => {
  const cautions = (more: object) => run(more).cautions.map(({ id }) => id)

  it('are told before anything is measured', () => {
    expect(cautions({ couplingType: undefined })).toEqual(
      expect.arrayContaining([
        'pressure',
        'cold-burns',
        'asphyxiation',
        'goggles-even-empty',
        'parted-half',
        'stuck-coupling',
        'trapped-liquid',
        'whipping-line',
        'no-venting',
        'weigh-the-charge',
        'maker-first',
        'local-rules',
      ]),
    )
    expect(cautions({ compressorDrive: 'electric' })).toEqual(
      expect.arrayContaining(['high-voltage', 'electric-compressor-oil']),
    )
    expect(cautions({ refrigerant: 'R-1234yf' })).toContain('flammable')
    expect(cautions({})).not.toContain('flammable')
  })

  it('stop R-744 from being parted at all', () => {
    for (const given of [
      { parted: SIX },
      {},
      { job: 'section-opened', couplingsOn: 'both-lines' },
    ]) {
      const error = refusal({ ...given, refrigerant: 'R-744' })
      expect(error).toMatchObject({ code: 'refused', level: 'stop' })
      expect(error.cautions).toEqual(
        expect.arrayContaining(['carbon-dioxide-couplings', 'carbon-dioxide', 'pressure']),
      )
      expect(error.cautions).not.toContain('decomposition')
    }
  })

  it('warn of a shut section full of liquid, and of no fluoride in R-744', () => {
    const section = { job: 'section-opened', volume: '300 mL', phase: 'liquid' }
    expect(cautions({ ...section, temperature: '80 °F' })).toContain('trapped-liquid')
    const co2 = cautions({ ...section, refrigerant: 'R-744', temperature: '60 °F' })
    expect(co2).toContain('carbon-dioxide')
    expect(co2).not.toContain('decomposition')
    expect(co2).not.toContain('first-aid-hydrogen-fluoride')
  })
})

describe('laws of a bound', () => {
  const mm = fc.double({ min: 1, max: 40, noNaN: true })
  const wide = fc.double({ min: 0, max: 0.9, noNaN: true })
  const coupling = fc.record({
    line: fc.constantFrom('liquid', 'suction'),
    d: mm,
    a: mm,
    b: mm,
    w: wide,
  })
  const size = (value: number, plusMinus: number) => ({ value, unit: 'mm', plusMinus })
  const listed = (
    entries: readonly { line: string; d: number; a: number; b: number; w: number }[],
    share = 1,
  ) =>
    entries.map(({ line, d, a, b, w }) => ({
      line,
      mouthDiameter: size(d, w * share),
      firstDepth: size(a, w * share),
      secondDepth: size(b, w * share),
    }))

  it('the order of the couplings changes nothing', () => {
    fc.assert(
      fc.property(fc.array(coupling, { minLength: 2, maxLength: 6 }), (entries) => {
        const one = inGrams(boundOf({ couplings: listed(entries) })?.most)
        const other = inGrams(boundOf({ couplings: listed([...entries].reverse()) })?.most)
        expect(Math.abs(other / one - 1)).toBeLessThan(1e-12)
      }),
      { numRuns: 50 },
    )
  })

  it('a better caliper never loosens it', () => {
    fc.assert(
      fc.property(
        fc.array(coupling, { minLength: 1, maxLength: 4 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (entries, share) => {
          const wideBound = boundOf({ couplings: listed(entries) })
          const fineBound = boundOf({ couplings: listed(entries, share) })
          expect(inGrams(fineBound?.most)).toBeLessThanOrEqual(inGrams(wideBound?.most) + 1e-9)
          if (wideBound?.verdict === 'inside') expect(fineBound?.verdict).toBe('inside')
        },
      ),
      { numRuns: 60 },
    )
  })

  it('no true recess, line temperature or contents within what was said exceeds it', () => {
    const unit = fc.double({ min: -1, max: 1, noNaN: true })
    fc.assert(
      fc.property(coupling, unit, unit, unit, (entry, x, y, z) => {
        const { d, a, b, w } = entry
        const truth =
          (Math.PI / 4) *
          (d + x * w) ** 2 *
          (Math.max(a + y * w, 0) + Math.max(b + z * w, 0)) *
          1e-3
        const most = inGrams(boundOf({ couplings: listed([entry]) })?.most)
        // The ends of all three at once: first order leaves out their product, at most some percent.
        const second =
          1 + ((w / d) * (2 * w)) / (a + b) + (w / d) ** 2 + 2 * (w / d) * (w / Math.min(a, b))
        expect(truth * cold).toBeLessThanOrEqual(most * second * 1.1)
      }),
      { numRuns: 100 },
    )
  })

  it('is inside one tolerance at most: the published ounce, for a charge of a cab', () => {
    const ounces = (labelCharge: string | undefined) =>
      inGrams(
        run({ parted: SIX, labelCharge }).figures?.find(({ id }) => id === 'tolerance')
          ?.value as never,
      ) / OUNCE_G
    expect(ounces(undefined)).toBeCloseTo(1, 9)
    expect(ounces('3 lb')).toBeCloseTo(1, 9)
    expect(ounces('8 lb')).toBeCloseTo(2, 9)
    expect(ounces('1 lb')).toBeCloseTo(0.5, 9)
  })
})
