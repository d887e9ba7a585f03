import { describe, expect, it } from 'vitest'
import { charge } from '../../../shared/service/charge.ts'
import { refusalOf } from '../../support/refusal.ts'

const head = { refrigerant: 'R-134a', units: 'us' }
const parted = {
  ...head,
  job: 'couplers-parted',
  couplingType: 'two-valve',
  sealed: true,
  labelCharge: '2 lb 6 oz',
  ambient: '75 °F',
  suctionDry: true,
  couplingsOn: 'both-lines',
}
const caliper = { ...parted, couplingsOn: undefined, coldest: '60 °F' }
const SIX = ['liquid:18mm/4mm+2mm', 'suction:25mm/5mm+3mm']
const opened = {
  ...head,
  job: 'section-opened',
  labelCharge: '1.1 kg',
  volume: '300 mL',
  phase: 'liquid',
  temperature: '110 °F',
  sealed: true,
}
const whole = { ...head, job: 'system-opened', labelCharge: '1.1 kg' }
const hose = {
  serviceHoseBore: '5 mm',
  serviceHoseLength: '1.5 m',
  serviceHoseStarts: 'empty',
  serviceHoseHolds: 'liquid',
  ambient: '75 °F',
}
const TOLERANCE = 'Tolerance 1 oz'
const SMALL = 'Charge 2 lb 6 oz'
const LARGE = 'Charge 2 lb 6.8 oz'

type Row = readonly [string, object, string, string, readonly string[]]

/**
 * By hand: liquid R-134a weighs 1.212 g/mL at 75 °F, 1.246 at 60 °F, 1.136 at 110 °F, its vapour
 * 0.031 g/mL at 75 °F. The hose holds π/4 · 5² · 1500 mm³ = 29.5 mL, 35.7 g or 1.26 oz of liquid.
 */
describe('what is told of a charge', () => {
  it.each<Row>([
    [
      // The recesses hold 5.85 mL at their worst: 7.3 g of liquid.
      'a caliper bounds the loss within the tolerance',
      { ...caliper, suctionDry: undefined, parted: SIX },
      'fine',
      'Add nothing, if both valves shut before the seal opened and neither hissed on: at most 0.26 oz can be gone.',
      ['Bound 0.26 oz', TOLERANCE, 'Space 5.85 mL', 'Like parts 12 mL', SMALL],
    ],
    [
      'the same, its suction side without liquid',
      { ...caliper, parted: SIX },
      'fine',
      'Add nothing, if both valves shut before the seal opened and neither hissed on: at most 0.085 oz can be gone.',
      ['Bound 0.085 oz', TOLERANCE, 'Space 5.85 mL', 'Like parts 12 mL', SMALL],
    ],
    [
      'a bound beyond the tolerance',
      { ...caliper, parted: ['liquid:40mm/40mm+30mm'] },
      'check',
      'Too loose to tell: up to 3.925 oz may be gone, more than the charge allows. Measure the recess better, or recover and weigh in.',
      ['Bound 3.925 oz', TOLERANCE, 'Space 89.4 mL', SMALL],
    ],
    [
      'nothing is known of the couplings',
      caliper,
      'check',
      'Nothing can be said yet: find out the type of the couplings, then measure the parted halves with a caliper.',
      [SMALL],
    ],
    [
      // 3 mL of liquid and 3 mL of vapour: 3.73 g; the ± of the property is counted, upwards.
      'a what-if within the tolerance, at the larger end of its range',
      { ...parted, whatIf: true, spillFrom: '0.5 mL', spillTo: '3 mL' },
      'check',
      'If these spill volumes are right, at most 0.135 oz is gone, within the tolerance; only the weighed full charge makes sure.',
      ['At most 0.135 oz', TOLERANCE, SMALL],
    ],
    [
      // 60 mL of each: 74.5 ±0.2 g.
      'a what-if beyond it',
      { ...parted, whatIf: true, spillFrom: '5 mL', spillTo: '60 mL', massUnit: 'g', units: 'si' },
      'check',
      'If these spill volumes are right, up to 74.8 g may be gone: recover, evacuate and weigh in the full charge.',
      ['At most 74.8 g', 'Tolerance 28 g', 'Charge 1077.3 g'],
    ],
    [
      'less is missing than the charge may be off',
      { ...parted, spillVolume: '3 mL' },
      'fine',
      'Add nothing: the 0.1 oz that is missing lies within the tolerance of the charge.',
      ['Missing 0.1 oz', TOLERANCE, SMALL],
    ],
    [
      // 30 mL of each: 37.3 g.
      'about what it may be off',
      { ...parted, spillVolume: '30 mL' },
      'check',
      'Weigh in 1.3 oz, or the full charge to be sure: it is about what the charge may be off.',
      ['Set on scale 1.3 oz', TOLERANCE, SMALL],
    ],
    [
      'more than it may be off, by a hose that starts empty',
      { ...parted, spillVolume: '80 mL ±1 mL', ...hose },
      'check',
      'Weigh in 4.8 oz: 3.5 ±0.05 oz is missing, the rest stays in the hose.',
      ['Set on scale 4.8 ±0.05 oz', 'Missing 3.5 ±0.05 oz', TOLERANCE, 'In the hose 1.3 oz', SMALL],
    ],
    [
      'more than it may be off, and less than the scale can weigh',
      {
        ...{ ...parted, spillVolume: '5 mL', chargeTolerance: '2 g' },
        ...{ scaleDivision: '5 g', scaleTolerance: '30 g' },
      },
      'check',
      '0.2 oz is missing, which may matter and which the scale cannot weigh surely: recover and weigh in the full charge.',
      ['Set on scale 0.2 oz', 'Tolerance 0.05 oz', SMALL],
    ],
    [
      "the maker's own figure",
      { ...parted, makerCorrection: '60 g' },
      'check',
      "Weigh in 2.1 oz: the maker's figure for this job.",
      ['Set on scale 2.1 oz', TOLERANCE, SMALL],
    ],
    [
      // 300 mL at 110 °F: 341 g.
      'a section',
      opened,
      'check',
      'Weigh in 12 oz: that much went out with this job.',
      ['Set on scale 12 oz', TOLERANCE, LARGE],
    ],
    [
      'a section, of which more came out than it can have held',
      { ...opened, recovered: '500 g' },
      'check',
      'At least 17.6 ±0.6 oz is missing, more than the opened part can have held: recover the rest, evacuate and weigh in the full charge.',
      ['Missing 17.6 ±0.6 oz', TOLERANCE, LARGE, 'Recovered 17.6 ±0.6 oz'],
    ],
    [
      'the whole machine',
      whole,
      'check',
      'Weigh in the full charge: 2 lb 6.8 oz.',
      ['Set on scale 2 lb 6.8 oz'],
    ],
    [
      // 100 mL more of liquid at 110 °F: 114 g.
      'the whole machine with a part of another size, by a hose',
      {
        ...{ ...whole, ...hose, oldVolume: '700 mL', newVolume: '800 mL' },
        ...{ phase: 'liquid', temperature: '110 °F' },
      },
      'check',
      'Weigh in the full charge: 2 lb 12.1 oz (label 2 lb 6.8 oz, altered parts 4 oz, hose 1.3 oz).',
      ['Set on scale 2 lb 12.1 oz', 'Label 2 lb 6.8 oz', 'In the hose 1.3 oz', 'Change 4 oz'],
    ],
    [
      'a machine that leaked',
      { ...whole, job: 'pressure-lost' },
      'check',
      'Find and repair the leak, then weigh in the full charge: 2 lb 6.8 oz.',
      ['Set on scale 2 lb 6.8 oz'],
    ],
    [
      'a label that is gone',
      { ...whole, labelCharge: undefined },
      'check',
      'The full charge has to be found first: it is never guessed.',
      [],
    ],
    [
      'couplings that do not hold it',
      { ...parted, couplingType: 'no-valve' },
      'check',
      'Recover, and weigh in the full charge: 2 lb 6 oz. Couplings like these do not hold it when they are parted.',
      ['Set on scale 2 lb 6 oz'],
    ],
    [
      'the same, and a label that is gone',
      { ...parted, couplingType: 'no-valve', labelCharge: undefined },
      'check',
      'Recover: couplings like these do not hold the charge when parted. Then find the full charge; it is never guessed.',
      [],
    ],
  ])('%s', (_, input, level, headline, told) => {
    const { figures = [], ...answer } = charge.run(input)
    expect(answer).toMatchObject({ level, headline })
    expect(figures.map(({ label, text }) => `${label} ${text}`)).toEqual(told)
  })
})

describe('what the figures of a charge mean', () => {
  const saysOf = (input: object, id: string) =>
    charge.run(input).figures?.find((figure) => figure.id === id)?.says

  it('a bound is of liquid, unless one of the couplings can hold none', () => {
    expect(saysOf({ ...caliper, suctionDry: undefined, parted: SIX }, 'bound')).toBe(
      'if the space was full of liquid',
    )
    expect(saysOf({ ...caliper, parted: SIX }, 'bound')).toBe('if the space was full')
    expect(saysOf({ ...caliper, parted: SIX.slice(0, 1) }, 'bound')).toBe(
      'if the space was full of liquid',
    )
  })

  it('a what-if is assumed, and like parts are of another text', () => {
    const basis = (input: object, id: string) =>
      charge.run(input).figures?.find((figure) => figure.id === id)?.basis
    const range = { whatIf: true, spillFrom: '0.5 mL', spillTo: '3 mL' }
    expect(basis({ ...parted, ...range }, 'most')).toBe('assumed')
    expect(basis({ ...caliper, parted: SIX }, 'likeParts')).toBe('secondary')
  })
})

describe('sizes without a ±', () => {
  const named = (input: object) =>
    charge
      .run(input)
      .warnings.filter(({ code }) => code === 'no-band')
      .map(({ message }) => /^No ± was given with (.*), so/u.exec(message)?.[1])

  it.each([
    [{ ...opened }, ['volume']],
    [{ ...opened, volume: '300 mL ±5 mL' }, []],
    [{ ...opened, volume: undefined, hoseSize: '#8', length: '9 ft' }, ['length']],
    [
      {
        ...opened,
        volume: undefined,
        sections: [{ volume: '200 mL' }, { hoseSize: '#8', length: '2 ft ±1 in' }].map((item) => ({
          ...item,
          phase: 'liquid',
          temperature: '110 °F',
        })),
        phase: undefined,
        temperature: undefined,
      },
      ['volume'],
    ],
    [{ ...parted, spillVolume: '3 mL' }, ['spillVolume']],
    [{ ...parted, spillVolume: '3 mL ±1 mL' }, []],
    [
      {
        ...parted,
        couplingsOn: undefined,
        couplings: [{ line: 'liquid', spillVolume: '3 mL' }],
      },
      ['spillVolume'],
    ],
    [{ ...parted, makerCorrection: '60 g' }, []],
    [whole, []],
  ])('%j: %j', (input, fields) => {
    expect(named(input)).toEqual(fields.length === 0 ? [] : [fields.join(', ')])
  })
})

describe('a space of liquid and vapour together', () => {
  const refused = (more: object) =>
    refusalOf(() => charge.run({ ...opened, phase: 'two-phase', ...more }))

  it.each([
    [{ quality: undefined }, 'missing-input', ['quality'], /needs its quality/u],
    [{ quality: '101 %' }, 'out-of-range', ['quality'], /lies between 0 and 100 %/u],
    [{ quality: '20 %', pressure: '80 psig' }, 'bad-input', ['pressure'], /not both/u],
    [{ quality: '20 %', temperature: undefined }, 'missing-input', ['temperature'], /is needed/u],
  ])('%j: %s', (more, code, path, message) => {
    const error = refused(more)
    expect(error).toMatchObject({ code, path })
    expect(error.message).toMatch(message)
  })

  it('takes all liquid and all vapour', () => {
    const grams = (more: object) => charge.run({ ...opened, ...more }).result.massToAdd?.value
    expect(grams({ phase: 'two-phase', quality: '0 %' })).toBeCloseTo(grams({}) ?? 0, 1)
    expect(grams({ phase: 'two-phase', quality: '100 %' })).toBeCloseTo(
      grams({ phase: 'vapour' }) ?? 0,
      1,
    )
  })
})

describe('what does not go together', () => {
  const state = { phase: 'liquid', temperature: '110 °F' }
  const one = { volume: '100 mL', ...state }

  it.each([
    [{ ...opened, sections: [one] }, 'bad-input', ['sections'], /listed or given at the top/u],
    [
      { ...whole, oldVolume: '1 L', parts: [{ new: { volume: '1 L' }, ...state }], ...state },
      'bad-input',
      ['parts'],
      /listed or given at the top/u,
    ],
    [
      { ...whole, parts: [{ name: 'Condenser', ...state }] },
      'missing-input',
      ['parts', 0, 'new'],
      /what was there/u,
    ],
    [{ ...opened, length: '3 ft' }, 'bad-input', ['length'], /nothing beside a volume/u],
    [
      { ...opened, volume: undefined, length: '3 ft' },
      'missing-input',
      ['innerDiameter'],
      /no volume/u,
    ],
    [{ ...opened, volume: undefined, hoseSize: '#8' }, 'missing-input', ['length'], /length/iu],
    [
      { ...opened, volume: undefined, hoseSize: '#99', length: '3 ft' },
      'unknown-name',
      ['hoseSize'],
      /not a size of/u,
    ],
    [
      { ...opened, volume: undefined, tubeSize: '9/8', length: '3 ft' },
      'unknown-name',
      ['tubeSize'],
      /not a size of ACR tube/u,
    ],
  ])('%j: %s', (input, code, path, message) => {
    const error = refusalOf(() => charge.run(JSON.parse(JSON.stringify(input))))
    expect(error).toMatchObject({ code, path })
    expect(error.message).toMatch(message)
    expect(error.hint).not.toBe('')
  })
})
