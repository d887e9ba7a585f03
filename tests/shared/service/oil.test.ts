import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import oilData from '../../../data/service/oil.json' with { type: 'json' }
import typeData from '../../../data/service/oil-types.json' with { type: 'json' }
import { refrigerants } from '../../../shared/refrigerant/index.ts'
import { COMPRESSOR_RULES } from '../../../shared/service/oil/compressor.ts'
import { PARTS } from '../../../shared/service/oil/fields.ts'
import { classOf } from '../../../shared/service/oil/oil-fit.ts'
import { oil } from '../../../shared/service/oil.ts'
import { refusalOf } from '../../support/refusal.ts'

const us = { units: 'us', precise: true } as const
const machine = { refrigerant: 'R-134a', oilTotal: '9 fl oz', ...us }
const MILLILITRES_PER_FL_OZ = 29.5735295625

/** Fluid ounces of a volume shown in the US system. */
const flOz = (shown: { value: number; unit: string } | undefined) => {
  if (shown?.unit !== 'fl oz') throw new Error('A volume in fluid ounces was expected.')
  return shown.value
}

const refusal = (input: Record<string, unknown>) => refusalOf(() => oil.run(input))

const codes = (input: Record<string, unknown>) => oil.run(input).warnings.map(({ code }) => code)

describe('oil per replaced part', () => {
  it.each([
    ['condenser', 1, 0, 40 / MILLILITRES_PER_FL_OZ],
    ['evaporator', 3, 20 / MILLILITRES_PER_FL_OZ, 3],
    ['drier', 1, 0, 3.5],
    ['hose', 0, 0, 10 / MILLILITRES_PER_FL_OZ],
  ])('%s: the usual amount with the printed spread', (part, amount, from, to) => {
    const { result } = oil.run({ ...machine, replaced: [part] })
    expect(flOz(result.add)).toBeCloseTo(amount, 10)
    expect(flOz(result.addFrom)).toBeCloseTo(from, 10)
    expect(flOz(result.addTo)).toBeCloseTo(to, 10)
  })

  it('accumulator: as much as was drained and 2 fl oz', () => {
    const { result } = oil.run({
      ...machine,
      replaced: ['accumulator'],
      accumulatorDrained: '1.5 fl oz',
    })
    expect(flOz(result.add)).toBeCloseTo(3.5, 10)
    expect(flOz(result.addFrom)).toBeCloseTo(2.5, 10)
    expect(flOz(result.addTo)).toBeCloseTo(3.5, 10)
    expect(refusal({ ...machine, replaced: ['accumulator'] }).path).toEqual(['accumulatorDrained'])
    expect(refusal({ ...machine, parts: [{ part: 'accumulator' }] }).path).toEqual([
      'parts',
      0,
      'drained',
    ])
  })

  it("lets the maker's figure go before the table", () => {
    const { result } = oil.run({
      ...machine,
      parts: [{ part: 'condenser', name: 'roof condenser', makerAmount: '1.5 fl oz' }],
    })
    expect(flOz(result.add)).toBeCloseTo(1.5, 10)
    expect(flOz(result.addTo)).toBeCloseTo(1.5, 10)
    expect(result.lines[0]?.what).toBe('roof condenser')
    expect(result.lines[0]?.sources).toEqual([])
  })

  it('counts every part, as often as it was replaced', () => {
    const { result } = oil.run({ ...machine, replaced: ['evaporator', 'evaporator', 'hose'] })
    expect(flOz(result.add)).toBeCloseTo(6, 10)
    expect(result.lines).toHaveLength(3)
  })

  it('refuses a measure that nothing goes by', () => {
    const error = refusal({ ...machine, parts: [{ part: 'hose', drained: '1 fl oz' }] })
    expect(error.code).toBe('bad-input')
    expect(error.path).toEqual(['parts', 0, 'drained'])
  })

  it('names the sources of each line', () => {
    const answer = oil.run({ ...machine, replaced: ['drier'] })
    const ids = answer.sources.map(({ id }) => id)
    expect(answer.result.lines[0]?.sources.length).toBeGreaterThanOrEqual(5)
    for (const id of answer.result.lines[0]?.sources ?? []) expect(ids).toContain(id)
  })
})

describe('oil for a new compressor', () => {
  const amount = (rule: string | undefined, drained: string | undefined, more = {}) =>
    flOz(
      oil.run({
        ...machine,
        oilTotal: '40 fl oz',
        replaced: ['compressor'],
        compressorRule: rule,
        compressorDrained: drained,
        ...more,
      }).result.add,
    )

  it.each([
    ['drained-or-2-fl-oz-below-1', '0.5 fl oz', 2],
    ['drained-or-2-fl-oz-below-1', '1 fl oz', 1],
    ['drained-or-2-fl-oz-below-1', '4 fl oz', 4],
    ['equal-to-drained', '0.5 fl oz', 0.5],
    ['drained-plus-1-fl-oz', '2.5 fl oz', 3.5],
    ['drained-in-bands-of-3-and-5-fl-oz', '2.9 fl oz', 3],
    ['drained-in-bands-of-3-and-5-fl-oz', '3 fl oz', 4],
    ['drained-in-bands-of-3-and-5-fl-oz', '5 fl oz', 6],
    ['drained-in-bands-of-3-and-5-fl-oz', '5.1 fl oz', 5.1],
    ['drained-plus-20-ml', '50 mL', 70 / MILLILITRES_PER_FL_OZ],
    ['drained-at-least-20-ml', '5 mL', 20 / MILLILITRES_PER_FL_OZ],
    ['drained-at-least-20-ml', '50 mL', 50 / MILLILITRES_PER_FL_OZ],
    ['new-less-difference', '80 mL', 80 / MILLILITRES_PER_FL_OZ],
    ['fixed-70-ml', undefined, 70 / MILLILITRES_PER_FL_OZ],
    ['fixed-4-4-fl-oz', undefined, 4.4],
    ['fixed-207-ml', undefined, 207 / MILLILITRES_PER_FL_OZ],
  ])('rule %s with %s drained', (rule, drained, expected) => {
    expect(amount(rule, drained)).toBeCloseTo(expected, 10)
  })

  it('counts from the new compressor where the old oil cannot be known', () => {
    const given = { compressorHolds: '140 mL' }
    expect(amount('new-less-70-ml', undefined, given)).toBeCloseTo(70 / MILLILITRES_PER_FL_OZ, 10)
    expect(
      refusal({ ...machine, replaced: ['compressor'], compressorRule: 'new-less-70-ml' }).path,
    ).toEqual(['compressorHolds'])
  })

  it('takes a rule that says so when none is chosen, with the spread of all rules by drained oil', () => {
    const { result, assumptions } = oil.run({
      ...machine,
      replaced: ['compressor'],
      compressorDrained: '4 fl oz',
    })
    expect(flOz(result.add)).toBeCloseTo(4, 10)
    expect(flOz(result.addFrom)).toBeCloseTo(4, 10)
    expect(flOz(result.addTo)).toBeCloseTo(5, 10)
    expect(assumptions.map(({ field }) => field)).toContain('compressorRule')
  })

  it('asks for the drained oil', () => {
    expect(refusal({ ...machine, replaced: ['compressor'] }).path).toEqual(['compressorDrained'])
  })

  it('says what to take out of the new compressor, or to add to it', () => {
    const given = { ...machine, replaced: ['compressor'], compressorDrained: '3 fl oz' }
    const over = oil.run({ ...given, compressorHolds: '8 fl oz' }).result.compressor
    expect(flOz(over?.mustHold)).toBeCloseTo(3, 10)
    expect(flOz(over?.drainFromNew)).toBeCloseTo(5, 10)
    expect(over?.addToNew).toBeUndefined()
    const short = oil.run({ ...given, compressorHolds: '1 fl oz' }).result.compressor
    expect(flOz(short?.addToNew)).toBeCloseTo(2, 10)
  })
})

describe('oil to pour in', () => {
  const job = { ...machine, replaced: ['compressor', 'drier'], compressorDrained: '2.5 fl oz' }

  it('leaves out what the new compressor already holds of its share', () => {
    const over = oil.run({ ...job, compressorHolds: '7 fl oz' }).result
    expect(flOz(over.add)).toBeCloseTo(3.5, 10)
    expect(flOz(over.compressor?.drainFromNew)).toBeCloseTo(4.5, 10)
    expect(flOz(over.pourIn)).toBeCloseTo(1, 10)
    const short = oil.run({ ...job, compressorHolds: '1 fl oz' }).result
    expect(flOz(short.pourIn)).toBeCloseTo(2.5, 10)
  })

  it('is all of it where the compressor comes empty, which is said', () => {
    const { result, assumptions } = oil.run(job)
    expect(flOz(result.pourIn)).toBeCloseTo(3.5, 10)
    expect(assumptions.map(({ field }) => field)).toContain('compressorHolds')
    expect(
      oil.run({ ...job, compressorHolds: '7 fl oz' }).assumptions.map(({ field }) => field),
    ).not.toContain('compressorHolds')
  })

  it('counts the new compressor after a flush, and no compressor that was not replaced', () => {
    const flushed = oil.run({ ...job, flushed: true, compressorHolds: '6 fl oz' }).result
    expect(flOz(flushed.pourIn)).toBeCloseTo(3, 10)
    const other = oil.run({ ...machine, replaced: ['drier'], compressorHolds: '6 fl oz' })
    expect(flOz(other.result.pourIn)).toBeCloseTo(1, 10)
    expect(other.warnings.map(({ code }) => code)).toContain('not-used')
  })
})

describe('fields that count for nothing', () => {
  const unused = (input: Record<string, unknown>) =>
    oil
      .run({ ...machine, ...input })
      .warnings.filter(({ code }) => code === 'not-used')
      .map(({ message }) => message.split(' ')[0])

  it('are named, with what they lack', () => {
    expect(
      unused({
        replaced: ['condenser'],
        compressorDrained: '2 fl oz',
        compressorHolds: '3 fl oz',
        compressorRule: 'equal-to-drained',
        accumulatorDrained: '1 fl oz',
        longHoseLength: '12 ft',
      }),
    ).toEqual([
      'compressorDrained',
      'compressorRule',
      'compressorHolds',
      'accumulatorDrained',
      'longHoseLength',
    ])
    expect(unused({ flushed: true, recoveredOil: '20 mL', replaced: ['drier'] })).toEqual([
      'recoveredOil',
    ])
    expect(unused({ replaced: ['compressor'], compressorDrained: '2 fl oz' })).toEqual([])
  })

  it('a flush does not ask for the recovered oil once more', () => {
    const { advice } = oil.run({ ...machine, flushed: true, recoveredOil: '20 mL' }).result
    expect(advice.join(' ')).not.toContain('What recovery brought out')
  })

  it('a part in both lists is counted twice and said', () => {
    const both = { ...machine, replaced: ['condenser'], parts: [{ part: 'condenser' }] }
    expect(codes(both)).toContain('listed-twice')
    expect(codes({ ...machine, replaced: ['condenser', 'condenser'] })).not.toContain(
      'listed-twice',
    )
  })
})

describe('oil lost, recovered or flushed out', () => {
  it('is added for a sudden leak only', () => {
    expect(flOz(oil.run({ ...machine, leak: 'slow' }).result.add)).toBe(0)
    const { result } = oil.run({ ...machine, leak: 'sudden' })
    expect(flOz(result.add)).toBeCloseTo(2.5, 10)
    expect(flOz(result.addFrom)).toBeCloseTo(1, 10)
    expect(flOz(result.addTo)).toBeCloseTo(3, 10)
  })

  it('gives back what recovery brought out', () => {
    const { result } = oil.run({ ...machine, replaced: ['condenser'], recoveredOil: '20 mL' })
    expect(flOz(result.add)).toBeCloseTo(1 + 20 / MILLILITRES_PER_FL_OZ, 10)
  })

  it('fills the whole quantity after a flush, less what the new compressor holds', () => {
    const { result } = oil.run({
      ...machine,
      flushed: true,
      replaced: ['compressor', 'drier'],
      compressorHolds: '6 fl oz',
    })
    expect(flOz(result.add)).toBeCloseTo(9, 10)
    expect(flOz(result.besideCompressor)).toBeCloseTo(3, 10)
    expect(refusal({ refrigerant: 'R-134a', flushed: true }).path).toEqual(['oilTotal'])
  })

  it('never goes above the total of the system, and says so', () => {
    const { result, warnings } = oil.run({
      ...machine,
      oilTotal: '5 fl oz',
      replaced: ['condenser', 'evaporator', 'drier'],
      leak: 'sudden',
    })
    expect(flOz(result.add)).toBeCloseTo(5, 10)
    expect(flOz(result.addTo)).toBeCloseTo(5, 10)
    expect(result.limited).toBe(true)
    expect(warnings.map(({ code }) => code)).toContain('limited-by-total')
  })

  it('asks for the total where nothing bounds the sum', () => {
    expect(codes({ refrigerant: 'R-134a', replaced: ['condenser'] })).toContain('oil-total-missing')
    expect(codes({ ...machine, replaced: ['condenser'] })).not.toContain('oil-total-missing')
  })

  it('warns when the system was opened and the drier stays', () => {
    expect(codes({ ...machine, replaced: ['condenser'] })).toContain('drier-not-replaced')
    expect(codes({ ...machine, replaced: ['condenser', 'drier'] })).not.toContain(
      'drier-not-replaced',
    )
    expect(codes({ ...machine, flushed: true, replaced: ['drier'] })).not.toContain(
      'drier-not-replaced',
    )
  })
})

describe('long hoses', () => {
  const rule = (longHose: string, more = {}) =>
    oil.run({ refrigerant: 'R-134a', longHose, units: 'si', precise: true, ...more }).result

  it('gives the total by the charge, and what goes in beside the compressor', () => {
    const five = rule('total-by-charge-five-cylinder', {
      labelCharge: '1.1 kg',
      compressorHolds: '135 mL',
      flushed: true,
    })
    expect(five.oilTotal?.value).toBeCloseTo(177.5, 9)
    expect(five.besideCompressor?.value).toBeCloseTo(42.5, 9)
    const seven = rule('total-by-charge-seven-cylinder', { labelCharge: '1.1 kg' })
    expect(seven.oilTotal?.value).toBeCloseTo(140, 9)
  })

  it("lets the maker's total go before the formula", () => {
    const { oilTotal, ownTotal } = rule('total-by-charge-seven-cylinder', {
      labelCharge: '1.1 kg',
      oilTotal: '200 mL',
    })
    expect(oilTotal?.value).toBeCloseTo(200, 9)
    expect(ownTotal?.value).toBeCloseTo(140, 9)
  })

  it('adds for the length of hose, never less than nothing', () => {
    const extra = (longHoseLength: string) =>
      rule('extra-by-hose-length', { longHoseLength }).add.value / MILLILITRES_PER_FL_OZ
    expect(extra('10 m')).toBeCloseTo(0.47 * 10 - 2.15, 9)
    expect(extra('2 m')).toBe(0)
  })

  it('refuses the formula where it was not published', () => {
    const given = { refrigerant: 'R-134a', longHose: 'total-by-charge-five-cylinder' }
    expect(refusal({ ...given, labelCharge: '1.7 kg' }).code).toBe('refused')
    expect(refusal({ ...given, refrigerant: 'R-1234yf', labelCharge: '1 kg' }).code).toBe('refused')
    expect(refusal(given).path).toEqual(['labelCharge'])
    expect(refusal({ ...given, longHose: 'extra-by-hose-length' }).path).toEqual(['longHoseLength'])
  })
})

describe('oil type', () => {
  const asked = (more: object) => oil.run({ ...machine, ...more }).result.oilType

  it('fits where a published rule says so', () => {
    expect(asked({ newOil: 'PAG 46', compressorDrive: 'open' }).verdict).toBe('fits')
    expect(asked({ newOil: 'sp10', compressorDrive: 'open' }).oil).toBe('SP-10')
    expect(asked({ newOil: 'POE', compressorDrive: 'electric' }).verdict).toBe('fits')
    expect(asked({ refrigerant: 'R-12', newOil: 'mineral oil' }).verdict).toBe('fits')
    expect(asked({ refrigerant: 'R-22', newOil: 'AB', compressorDrive: 'electric' }).verdict).toBe(
      'fits',
    )
    expect(asked({ refrigerant: 'R-1234yf', newOil: 'PAG YF' }).verdict).toBe('fits')
    expect(asked({ newOil: 'PAO' }).verdict).toBe('ask-maker')
  })

  it.each([
    [
      'PAG in an electric compressor',
      { newOil: 'PAG 46', compressorDrive: 'electric' },
      'insulation',
    ],
    ['mineral oil with R-134a', { newOil: 'mineral' }, 'does not mix'],
    ['mineral oil with R-1234yf', { refrigerant: 'R-1234yf', newOil: 'mineral' }, 'does not mix'],
    ['alkylbenzene with R-134a', { newOil: 'alkylbenzene' }, 'does not mix well enough'],
    ['PAG with R-12', { refrigerant: 'R-12', newOil: 'PAG 150' }, 'mineral oil'],
    ['PAG with R-22', { refrigerant: 'R-22', newOil: 'PAG' }, 'chlorine'],
    [
      'an oil made for R-134a with R-1234yf',
      { refrigerant: 'R-1234yf', newOil: 'SP-10' },
      'made for',
    ],
    ['POE on top of PAG', { newOil: 'POE', existingOil: 'PAG 46' }, 'must not be mixed'],
    ['PAG on top of mineral oil', { newOil: 'PAG', existingOil: '5GS' }, 'must not be mixed'],
  ])('refuses %s with the reason', (_what, given, reason) => {
    const error = refusal({ ...machine, ...given })
    expect(error.code).toBe('refused')
    expect(error.path).toEqual(['newOil'])
    expect(error.message).toContain(reason)
    expect(error.hint).not.toBe('')
  })

  it('stops at PAG in an electric compressor, to go in or inside, before any amount is known', () => {
    const unmeasured = { ...machine, replaced: ['compressor'], compressorDrive: 'electric' }
    for (const [given, field] of [
      [{ newOil: 'PAG 46' }, 'newOil'],
      [{ existingOil: 'PAG 46' }, 'existingOil'],
      [{ newOil: 'POE', existingOil: 'PAG 46' }, 'existingOil'],
    ] as const) {
      const error = refusal({ ...unmeasured, ...given })
      expect(error).toMatchObject({ code: 'refused', level: 'stop', path: [field] })
      expect(error.message).toContain('conducts electricity')
      expect(error.hint).not.toContain('Use the oil that is in the machine')
      expect(error.cautions).toEqual(
        expect.arrayContaining(['electric-compressor-oil', 'high-voltage', 'pressure']),
      )
    }
    expect(refusal({ ...unmeasured, compressorDrive: 'hermetic', newOil: 'PAG' }).level).toBe(
      'stop',
    )
  })

  it('warns of an oil in the machine that does not belong there, whether or not one is to go in', () => {
    expect(codes({ ...machine, existingOil: 'mineral' })).toContain('wrong-oil-inside')
    expect(codes({ ...machine, existingOil: 'SP-10', refrigerant: 'R-1234yf' })).toContain(
      'wrong-oil-inside',
    )
    expect(codes({ ...machine, existingOil: 'PAG 46', compressorDrive: 'open' })).not.toContain(
      'wrong-oil-inside',
    )
  })

  it('names POE, and never PAG, for an electric R-1234yf compressor', () => {
    const answer = asked({ refrigerant: 'R-1234yf', compressorDrive: 'electric' })
    expect(answer.text).toContain('Fit for R-1234yf: polyolester (POE); in an electric')
    expect(
      asked({ refrigerant: 'R-1234yf', newOil: 'POE', compressorDrive: 'electric' }).verdict,
    ).toBe('fits')
  })

  it('lets another family in after a flush', () => {
    expect(asked({ newOil: 'POE', existingOil: 'mineral', flushed: true }).verdict).toBe('fits')
  })

  it('warns of another viscosity, an unknown drive, and PAG left in an electric system', () => {
    const two = { ...machine, newOil: 'PAG 100', existingOil: 'PAG 46', compressorDrive: 'open' }
    expect(codes(two)).toContain('viscosity-differs')
    expect(codes({ ...machine, newOil: 'PAG 46' })).toContain('drive-not-given')
    expect(
      codes({
        ...machine,
        newOil: 'POE',
        existingOil: 'PAG',
        flushed: true,
        compressorDrive: 'electric',
      }),
    ).toContain('pag-in-electric-system')
  })

  it('names what would fit when none is given', () => {
    const answer = asked({ compressorDrive: 'electric' })
    expect(answer.verdict).toBe('not-given')
    expect(answer.text).toContain('never PAG')
    expect(answer.text).toContain('polyolester')
  })

  it('answers an unknown name with the nearest', () => {
    const error = refusal({ ...machine, newOil: 'PAG 64' })
    expect(error.code).toBe('unknown-name')
    expect(error.hint).toContain('PAG 46')
    expect(refusal({ ...machine, existingOil: '???' }).path).toEqual(['existingOil'])
  })

  it('brings the caution of electric compressors', () => {
    const ids = (compressorDrive: string) =>
      oil.run({ ...machine, compressorDrive }).cautions.map(({ id }) => id)
    expect(ids('electric')).toContain('electric-compressor-oil')
    expect(ids('open')).not.toContain('electric-compressor-oil')
    const yf = oil.run({ refrigerant: 'R-1234yf', replaced: ['drier'] }).cautions
    expect(yf.map(({ id }) => id)).toContain('flammable')
  })

  it('tells how far each source was checked', () => {
    const { sources } = oil.run({ refrigerant: 'R-22', newOil: 'POE 68' })
    expect(sources.find(({ id }) => id === 'trade-memory')?.mark).toBe('memory')
  })
})

describe('bad input', () => {
  it('is refused with the field', () => {
    expect(refusal({ ...machine, refrigerant: 'R-1399' }).code).toBe('unknown-refrigerant')
    expect(refusal({ ...machine, oilTotal: '8 oz' }).code).toBe('ambiguous-quantity')
    expect(refusal({ ...machine, oilTotal: '8' }).code).toBe('ambiguous-quantity')
    expect(refusal({ ...machine, recoveredOil: '-5 mL' }).code).toBe('out-of-range')
    expect(refusal({ ...machine, oilTotal: '1e300 L' }).path).toEqual(['oilTotal'])
    expect(refusal({ ...machine, replaced: ['muffler'] }).path).toEqual(['replaced', 0])
    expect(refusal({ ...machine, compressorRule: 'guess' }).path).toEqual(['compressorRule'])
    expect(refusal({ ...machine, replace: ['hose'] }).message).toContain('replace')
  })
})

describe('the data', () => {
  it('gives every row a source that exists', () => {
    const ids = Object.keys(oilData.sources)
    for (const row of [...oilData.parts, ...oilData.compressorRules, ...oilData.longHoseRules]) {
      expect(ids).toContain(row.source)
    }
    const typeIds = Object.keys(typeData.sources)
    for (const row of [...typeData.fits, ...typeData.oils, ...typeData.notes]) {
      expect(typeIds).toContain(row.source)
    }
  })

  it('has a row behind every default, and families and classes that are known', () => {
    for (const part of Object.keys(oilData.defaults)) {
      expect(oilData.parts.some((row) => row.part === part)).toBe(true)
    }
    for (const row of [...typeData.fits, ...typeData.oils]) {
      expect(Object.keys(typeData.families)).toContain(row.family)
    }
  })

  it('classes every refrigerant of the registry', () => {
    for (const info of refrigerants()) expect(classOf(info), info.id).toBeDefined()
  })
})

describe('what is measured with a ±', () => {
  const ml = { refrigerant: 'R-134a', oilTotal: '500 mL', units: 'si', precise: true } as const

  it('carries it into the amount and into both ends of the spread', () => {
    const { result } = oil.run({
      ...ml,
      replaced: ['compressor', 'accumulator'],
      compressorRule: 'equal-to-drained',
      compressorDrained: '100 ±6 mL',
      accumulatorDrained: '40 ±8 mL',
      recoveredOil: '20 mL',
    })
    expect(result.add.plusMinus).toBeCloseTo(10, 9)
    const flOz2 = 2 * MILLILITRES_PER_FL_OZ
    expect(result.add.value).toBeCloseTo(160 + flOz2, 9)
    expect(result.addFrom.value).toBeCloseTo(160 + MILLILITRES_PER_FL_OZ - 10, 9)
    // The most of the accumulator's rows is one printed whole, 3.5 fl oz whatever was drained: half
    // of the ± of the drained oil reaches past it.
    const printed = 3.5 * MILLILITRES_PER_FL_OZ
    const reach = (40 + 8 + flOz2 - printed) / 2
    expect(result.addTo.value).toBeCloseTo(120 + printed + Math.hypot(6, reach), 6)
  })

  it('says nothing of the new compressor that lies within the ±', () => {
    const at = (compressorHolds: string) =>
      oil.run({
        ...ml,
        replaced: ['compressor'],
        compressorDrained: '100 ±5 mL',
        compressorRule: 'equal-to-drained',
        compressorHolds,
      }).result.compressor
    expect(at('103 ±1 mL')).toMatchObject({ text: expect.stringContaining('nothing is taken out') })
    expect(at('103 ±1 mL')?.drainFromNew).toBeUndefined()
    expect(at('110 ±1 mL')?.drainFromNew?.value).toBeCloseTo(10, 9)
    expect(at('110 ±1 mL')?.drainFromNew?.plusMinus).toBeCloseTo(Math.hypot(5, 1), 9)
    expect(at('90 ±1 mL')?.addToNew?.value).toBeCloseTo(10, 9)
  })
})

describe('in a mechanic’s words', () => {
  it('names what to pour, of what, and for which parts', () => {
    const { level, headline, figures, next } = oil.run({
      ...machine,
      replaced: ['condenser', 'drier'],
      newOil: 'PAG 46',
      precise: false,
      compressorDrive: 'belt',
    })
    expect(level).toBe('check')
    expect(headline).toBe(
      "Pour in 2 fl oz of PAG 46: condenser 1 fl oz, drier 1 fl oz. The maker's figure overrides.",
    )
    expect(figures?.map(({ id }) => id)).toEqual([
      'pourIn',
      'oil',
      'part0',
      'part1',
      'addFrom',
      'addTo',
    ])
    expect(next?.join(' ')).not.toContain('total oil')
  })

  it('names no part that takes none', () => {
    const { headline, figures } = oil.run({
      ...machine,
      replaced: ['hose', 'drier'],
      newOil: 'PAG',
    })
    expect(figures?.map(({ label }) => label)).not.toContain('hose')
    expect(headline).not.toContain('hose')
  })

  it('says that no oil goes in, without a figure', () => {
    const { level, headline, figures } = oil.run({ ...machine, leak: 'slow' })
    expect(level).toBe('fine')
    expect(headline).toContain('No oil goes in')
    expect(figures).toEqual([])
  })

  it('says how little an oil’s fit rests on, beside it', () => {
    const of = (newOil: string, refrigerant: string) =>
      oil.run({ refrigerant, newOil, replaced: ['drier'] }).figures?.find(({ id }) => id === 'oil')
        ?.basis
    expect(of('POE 68', 'R-134a')).toBe('from memory')
    expect(of('POE', 'R-134a')).toBe('secondary')
    expect(of('SP-10', 'R-134a')).toBeUndefined()
  })

  it('asks for the total, the drier and the new compressor’s oil where they are missing', () => {
    const next = oil
      .run({ refrigerant: 'R-134a', replaced: ['compressor'], compressorDrained: '3 fl oz' })
      .next?.join(' ')
    expect(next).toContain('Drain and measure the new compressor')
    expect(next).toContain('drier')
  })
})

describe('dangers', () => {
  it.each([
    ['R-134a', 'electric', ['high-voltage', 'electric-compressor-oil', 'decomposition']],
    ['R-1234yf', 'open', ['flammable', 'decomposition']],
    ['R-744', 'open', ['carbon-dioxide']],
  ])('of %s with an %s drive are told', (refrigerant, compressorDrive, expected) => {
    const ids = oil.run({ refrigerant, compressorDrive, replaced: ['drier'] }).cautions
    expect(ids.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['pressure', 'maker-first', 'local-rules', ...expected]),
    )
    if (refrigerant === 'R-744') expect(ids.map(({ id }) => id)).not.toContain('decomposition')
  })
})

describe('laws', () => {
  it('the order of the parts changes nothing', () => {
    fc.assert(
      fc.property(
        fc.shuffledSubarray(['condenser', 'evaporator', 'drier', 'hose', 'accumulator'], {
          minLength: 2,
        }),
        fc.double({ min: 0, max: 90, noNaN: true }),
        (replaced, drained) => {
          const run = (parts: readonly string[]) =>
            oil.run({
              refrigerant: 'R-134a',
              replaced: parts,
              accumulatorDrained: { value: drained, unit: 'mL', plusMinus: 3 },
              units: 'si',
              precise: true,
            }).result
          const [one, other] = [run(replaced), run([...replaced].reverse())]
          for (const field of ['pourIn', 'add', 'addFrom', 'addTo'] as const) {
            expect(other[field].value).toBeCloseTo(one[field].value, 9)
          }
        },
      ),
      { numRuns: 40 },
    )
  })

  const volumes = fc.double({ min: 0, max: 600, noNaN: true })
  const ml = (value: number) => ({ value, unit: 'mL' })

  it('oil never goes above the total of the system, nor out of its own spread', () => {
    fc.assert(
      fc.property(
        volumes,
        fc.array(fc.constantFrom(...PARTS), { maxLength: 8 }),
        fc.array(fc.record({ part: fc.constantFrom(...PARTS), amount: volumes }), { maxLength: 4 }),
        fc.constantFrom(...COMPRESSOR_RULES, undefined),
        fc.constantFrom('none', 'slow', 'sudden'),
        fc.boolean(),
        fc.record({ compressor: volumes, accumulator: volumes, holds: volumes, out: volumes }),
        (total, replaced, parts, compressorRule, leak, flushed, drained) => {
          const { result } = oil.run({
            refrigerant: 'R-134a',
            oilTotal: ml(total),
            replaced,
            parts: parts.map(({ part, amount }) => ({ part, makerAmount: ml(amount) })),
            compressorRule,
            leak,
            flushed,
            compressorDrained: ml(drained.compressor),
            accumulatorDrained: ml(drained.accumulator),
            compressorHolds: ml(drained.holds),
            recoveredOil: ml(drained.out),
            units: 'si',
            precise: true,
          })
          const least = result.addFrom.value
          const most = result.addTo.value
          const tiny = 1e-9
          expect(most).toBeLessThanOrEqual(total + tiny)
          expect(result.add.value).toBeLessThanOrEqual(most + tiny)
          expect(result.add.value).toBeGreaterThanOrEqual(least - tiny)
          expect(least).toBeGreaterThanOrEqual(0)
          expect(result.pourIn.value).toBeLessThanOrEqual(result.add.value + tiny)
          expect(result.pourIn.value).toBeGreaterThanOrEqual(
            result.add.value - drained.holds - tiny,
          )
          const mustHold = result.compressor?.mustHold.value ?? 0
          expect(mustHold).toBeLessThanOrEqual(total + tiny)
        },
      ),
      { numRuns: 200 },
    )
  })

  it('another part never takes oil away', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom('condenser', 'evaporator', 'drier', 'hose'), { maxLength: 6 }),
        fc.constantFrom('condenser', 'evaporator', 'drier', 'hose'),
        (replaced, another) => {
          const add = (parts: readonly string[]) =>
            flOz(
              oil.run({ refrigerant: 'R-134a', replaced: parts, volumeUnit: 'fl-oz', ...us }).result
                .add,
            )
          expect(add([...replaced, another])).toBeGreaterThanOrEqual(add(replaced))
        },
      ),
      { numRuns: 50 },
    )
  })
})
