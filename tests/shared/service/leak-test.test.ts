import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { leakTest } from '../../../shared/service/leak-test.ts'
import { refusalOf } from '../../support/refusal.ts'

const run = (input: Record<string, unknown>) => leakTest.run({ units: 'us', ...input })

const refusal = (input: Record<string, unknown>) => refusalOf(() => run(input))

const codes = (answer: { warnings: readonly { code: string }[] }) =>
  answer.warnings.map(({ code }) => code)

const cooled = {
  startPressure: '150 ±0.5 psig',
  endPressure: '146.9 ±0.5 psig',
  startTemperature: '80 ±1 °F',
  endTemperature: '70 ±1 °F',
}

describe('a standing vacuum by two readings', () => {
  const held = { startTemperature: '75 °F', endTemperature: '75 °F' }

  it.each([
    [
      '500 ±20 micron',
      '2000 ±50 micron',
      'Rose 1500 micron; no change expected, ±54 micron: it rises',
    ],
    [
      '28.5 ±0.25 inHg vac',
      '26 ±0.25 inHg vac',
      // ±0.25 twice, the barometer's change of up to 3 kPa, and 1 °F twice
      'Rose 2.5 inHg; no change expected, ±0.95 inHg: it rises',
    ],
    ['28.5 inHg vac', '27 inHg vac', 'Rose 1.5 inHg; no change expected, ±3 inHg: no leak shown'],
  ])('speaks of %s to %s in the unit of the gauge', (startPressure, endPressure, says) => {
    const { standing } = run({ ...held, startPressure, endPressure }).result
    expect(standing?.sentence).toContain(says)
    expect(says).toContain(standing?.measuredChange.unit)
  })

  it('takes an electronic gauge where the readings are absolute, not a dial', () => {
    const electronic = { ...held, startPressure: '500 micron', endPressure: '2000 micron' }
    expect(run(electronic).result.standing?.verdict).toBe('rises')
    expect(run({ ...electronic, endPressure: '540 micron' }).result.standing?.verdict).toBe(
      'no-leak-shown',
    )
  })

  it('offers no test pressures under vacuum', () => {
    const { practice } = run({
      ...held,
      startPressure: '500 micron',
      endPressure: '600 micron',
    }).result
    expect(practice).toEqual([])
  })
})

describe('a test that can show nothing', () => {
  it.each([
    [
      'readings at the pressure of the air',
      { ...cooled, startPressure: '0 psig', endPressure: '0 psig' },
      ['startPressure'],
    ],
    ['a rating of nothing', { ...cooled, lowSideRating: '0 psig' }, ['lowSideRating']],
    [
      'a pressure that no cylinder has',
      { ...cooled, startPressure: '1e6 psig' },
      ['startPressure'],
    ],
    ['a time and a volume alone', { elapsed: '12 h', volume: '5 L' }, ['startPressure']],
    [
      'a rating below vacuum',
      { testPressure: '100 psig', ratings: [{ part: 'seal', pressure: '-40 psig' }] },
      ['ratings', 0, 'pressure'],
    ],
  ])('is refused: %s', (_, input, path) => {
    expect(refusal(input).path).toEqual(path)
  })
})

describe('whether the federal leak-repair duty may apply', () => {
  it.each([
    ['R-744', '18 lb', 'no'],
    ['R-1234yf', '18 lb', 'no'],
    ['R-22', '18 lb', 'no'],
    ['R-22', '60 lb', 'yes'],
    ['R-134a', '18 lb', 'look-up'],
    ['R-401A', '18 lb', 'look-up'],
  ])('%s, %s: %s', (refrigerant, labelCharge, applies) => {
    const { federal } = run({ refrigerant, labelCharge, addedInYear: '1 lb' }).result
    expect(federal?.applies).toBe(applies)
  })
})

describe('standing pressure', () => {
  it('explains a fall by cooling and says so in one sentence', () => {
    const { standing } = run(cooled).result
    expect(standing?.verdict).toBe('no-leak-shown')
    expect(standing?.sentence).toBe('Fell 3.1 psi; 3.1 ±1 psi explained by cooling: no leak shown.')
  })

  it('calls the rest of a larger fall a leak, and sizes it', () => {
    const answer = leakTest.run({
      ...cooled,
      endPressure: '140 ±0.5 psig',
      elapsed: '10 h',
      volume: '5 L',
      refrigerant: 'R-134a',
      units: 'si',
      precise: true,
    })
    const { standing } = answer.result
    expect(standing?.verdict).toBe('leak')
    // by hand: 164.696 psia × 529.67/539.67 = 161.644; 154.696 read; 6.948 psi × 6894.757 Pa × 0.005 m³ ÷ 36 000 s
    expect(Math.abs((standing?.leakRate?.value ?? 0) / 6.653e-3 - 1)).toBeLessThan(1e-3)
    expect(standing?.testGasFlow?.unit).toBe('mL/min')
    // the same flow as a volume at 101 325 Pa
    expect(standing?.testGasFlow?.value).toBeCloseTo((6.653e-3 / 101_325) * 6e7, 2)
    expect(standing?.sentence).toContain('it leaks')
  })

  it('names the smallest leak that a passed test could have shown', () => {
    const { standing } = run({
      ...cooled,
      elapsed: '12 h',
      volume: '5 L',
      refrigerant: 'R-134a',
    }).result
    expect(standing?.leakRate).toBeUndefined()
    expect(standing?.smallestAsRefrigerant?.value).toBeGreaterThan(1)
  })

  it('does not accept a pressure that the gas law does not allow', () => {
    const answer = run({ ...cooled, endPressure: '160 psig' })
    expect(answer.result.standing?.verdict).toBe('no-valid-test')
    expect(codes(answer)).toContain('readings-disagree')
  })

  it('does not accept a vacuum that deepens by itself', () => {
    const vacuum = (endPressure: string) =>
      run({
        startPressure: '800 ±20 micron',
        endPressure,
        startTemperature: '75 °F',
        endTemperature: '75 °F',
      })
    const answer = vacuum('500 ±20 micron')
    expect(answer.result.standing?.verdict).toBe('no-valid-test')
    expect(answer.level).toBe('check')
    expect(answer.headline).toMatch(/^No valid test: the vacuum deepens by 300 /u)
    expect(answer.next?.[0]).toMatch(/^close the valve to the pump/u)
    expect(codes(answer)).toContain('vacuum-falls')
    // Within what the gauge is worth it is none the less a vacuum that holds.
    expect(vacuum('790 ±20 micron').result.standing?.verdict).toBe('no-leak-shown')
    expect(vacuum('860 ±20 micron').result.standing?.verdict).toBe('rises')
  })

  it('takes service instruments and says so when no uncertainty is stated', () => {
    const answer = run({
      startPressure: '150 psig',
      endPressure: '147 psig',
      startTemperature: '80 °F',
      endTemperature: '70 °F',
    })
    expect(answer.assumptions.map(({ field }) => field)).toContain('startPressure')
  })

  it('reads a standing vacuum, and does not tell a leak from water by two readings', () => {
    const { standing } = run({
      startPressure: '500 ±10 micron',
      endPressure: '2500 ±50 micron',
      startTemperature: '72 °F',
      endTemperature: '72 °F',
      elapsed: '10 min',
      volume: '5 L',
      vacuumLimit: 'rise-500-micron-in-10-min',
    }).result
    expect(standing?.kind).toBe('vacuum')
    expect(standing?.verdict).toBe('rises')
    expect(standing?.sentence).toContain('air or by water')
    expect(standing?.limit?.verdict).toBe('broken')
  })

  it('shows no leak in a tight system at any temperatures, and a leak in one that lost a tenth', () => {
    const kelvin = fc.double({ min: 265, max: 320, noNaN: true })
    fc.assert(
      fc.property(
        kelvin,
        kelvin,
        fc.double({ min: 5e5, max: 2e6, noNaN: true }),
        (from, to, pa) => {
          const verdict = (left: number) =>
            run({
              startPressure: { value: pa, unit: 'Pa abs', plusMinus: 3000 },
              endPressure: { value: (pa * to * left) / from, unit: 'Pa abs', plusMinus: 3000 },
              startTemperature: { value: from, unit: 'K', plusMinus: 0.5 },
              endTemperature: { value: to, unit: 'K', plusMinus: 0.5 },
            }).result.standing?.verdict
          expect(verdict(1)).toBe('no-leak-shown')
          expect(verdict(0.9)).toBe('leak')
        },
      ),
      { numRuns: 50 },
    )
  })

  it('never turns from leak to disagreeing readings within the stated uncertainty', () => {
    const share = fc.double({ min: 0.97, max: 1.03, noNaN: true })
    const within = fc.double({ min: -1, max: 1, noNaN: true })
    fc.assert(
      fc.property(share, within, (left, shift) => {
        const verdict = (move: number) =>
          run({
            startPressure: { value: 1e6, unit: 'Pa abs', plusMinus: 4000 },
            endPressure: { value: 1e6 * left + move * 4000, unit: 'Pa abs', plusMinus: 4000 },
            startTemperature: '295 ±0.5 K',
            endTemperature: '295 ±0.5 K',
          }).result.standing?.verdict
        const both = new Set([verdict(0), verdict(shift)])
        expect(both.has('leak') && both.has('no-valid-test')).toBe(false)
      }),
      { numRuns: 60 },
    )
  })
})

describe('test pressure', () => {
  it('gives the margin to the weakest part', () => {
    const { test } = run({
      testPressure: '150 psig',
      ratings: [
        { part: 'evaporator', pressure: '175 psig' },
        { part: 'condenser', pressure: '450 psig' },
      ],
    }).result
    expect(test?.weakestPart).toBe('evaporator')
    expect(test?.margin).toMatchObject({ value: 25, unit: 'psi' })
  })

  it.each([
    [{ testPressure: '200 psig', lowSideRating: '175 psig' }, ['testPressure']],
    [{ testPressure: '174 ±3 psig', lowSideRating: '175 psig' }, ['testPressure']],
    [{ ...cooled, lowSideRating: '120 psig' }, ['startPressure']],
    [{ testPressure: '100 psig', testGas: 'oxygen' }, ['testGas']],
    [{ testPressure: '100 psig', testGas: 'compressed-air' }, ['testGas']],
  ])('refuses %j', (input, path) => {
    const error = refusal(input)
    expect(error.code).toBe('refused')
    expect(error.path).toEqual(path)
  })

  it('refuses a planned pressure without a rating, as a stop with its cautions', () => {
    const error = refusal({ refrigerant: 'R-134a', testPressure: '1000 psig' })
    expect(error).toMatchObject({ code: 'refused', level: 'stop', path: ['lowSideRating'] })
    expect(error.message).toContain('1000 psig')
    expect(error.cautions).toEqual(
      expect.arrayContaining(['nitrogen-regulator', 'pressure', 'no-oxygen', 'no-air']),
    )
  })

  it('warns of a standing test whose weakest rating nobody gave', () => {
    const answer = run({ ...cooled, testGas: 'nitrogen' })
    expect(codes(answer)).toContain('no-rating')
  })

  it.each([
    ['oxygen', 'no-oxygen'],
    ['compressed-air', 'no-air'],
    ['air', 'no-air'],
    ['hydrogen', 'hydrogen-mix-only'],
  ])('stops at %s before anything else', (testGas, caution) => {
    expect(refusal({ testGas })).toMatchObject({
      code: 'refused',
      level: 'stop',
      path: ['testGas'],
      cautions: expect.arrayContaining([caution]),
    })
  })

  it('takes hydrogen as the ready-made mix alone, and says so', () => {
    const of = (input: Record<string, unknown>) => run(input).cautions.map(({ id }) => id)
    expect(of({ testGas: 'hydrogen-in-nitrogen' })).toContain('hydrogen-mix-only')
    expect(of({ method: 'tracer-gas-14' })).toContain('hydrogen-mix-only')
    expect(of({ testGas: 'nitrogen' })).not.toContain('hydrogen-mix-only')
  })

  it('shows a margin of nothing in the unit of the rating', () => {
    const input = { testPressure: '175 psig', lowSideRating: '175 psig' }
    expect(run(input).result.test?.margin).toEqual({ value: 0, unit: 'psi' })
    expect(run({ ...input, units: 'si' }).result.test?.margin).toMatchObject({ unit: 'kPa' })
    const near = run({ testPressure: '174.95 psig', lowSideRating: '175 psig' })
    expect(near.result.test?.margin?.unit).toBe('psi')
  })

  it('gives the practice of R-134a to R-134a alone, and R-744 a caution of its own', () => {
    const tested = (refrigerant: string) =>
      run({ ...cooled, refrigerant, lowSideRating: '200 psig' })
    const practice = (refrigerant: string) =>
      tested(refrigerant).result.practice.map(({ id }) => id)
    expect(practice('R-134a')).toContain('150-psig')
    expect(practice('R-1234yf')).not.toContain('150-psig')
    expect(practice('R-744')).not.toContain('150-psig')
    expect(practice('R-744')).not.toContain('200-250-psi')
    const cautionsOf = (refrigerant: string) => tested(refrigerant).cautions.map(({ id }) => id)
    expect(cautionsOf('R-744')).toContain('carbon-dioxide-test-pressure')
    expect(cautionsOf('R-744')).not.toContain('no-venting')
    expect(cautionsOf('R-134a')).toContain('no-venting')
    expect(cautionsOf('R-290')).toContain('flammable')
  })
})

describe('searching', () => {
  it('lists each way with what it can show', () => {
    const { searching } = run({
      refrigerant: 'R-134a',
      systemPressure: '80 psig',
      ambient: '72 °F',
    }).result
    expect(searching?.systemPressure).toBe('met')
    expect(searching?.ambient).toBe('met')
    // 4.5e-10 mol/s of R-134a: 1.45 g a year
    const soap = searching?.methods.find(({ id }) => id === 'soap-film')
    expect(soap?.smallest?.value).toBeCloseTo(0.0511, 3)
  })

  it('warns when it is too cold, and cannot tell at the edge', () => {
    const cold = run({ ambient: '50 °F' })
    expect(cold.result.searching?.ambient).toBe('not-met')
    expect(codes(cold)).toContain('too-cold-or-too-little-pressure')
    expect(run({ systemPressure: '49.5 ±1 psig' }).result.searching?.systemPressure).toBe(
      'cannot-tell',
    )
  })

  it('says whether the weighed loss could be found', () => {
    const { searching } = run({
      method: 'electronic-14',
      chargeThen: '2 lb',
      chargeNow: '1 lb',
      between: '1 yr',
    }).result
    expect(searching?.methods.map(({ findsThisLoss }) => findsThisLoss)).toEqual(['yes'])
  })
})

describe('loss a year', () => {
  it('is what was weighed in less what was weighed out', () => {
    const { yearly } = run({
      chargeThen: '1000 g',
      chargeNow: '700 g',
      between: '2 yr',
      units: 'si',
    }).result
    expect(yearly?.perYear.value).toBeCloseTo(150, 0)
    expect(yearly?.shareOfChargePerYear.value).toBeCloseTo(15, 0)
    expect(yearly?.againstNormal).toBe('below')
  })

  it('cannot tell when the scales reach over the limit, and warns of a gain', () => {
    const near = run({ chargeThen: '1000 g', chargeNow: '795 g', between: '1 yr' })
    expect(near.result.yearly?.againstNormal).toBe('cannot-tell')
    expect(codes(run({ chargeThen: '700 g', chargeNow: '900 g', between: '1 yr' }))).toContain(
      'more-than-was-charged',
    )
  })
})

describe('federal leak rate', () => {
  it('annualizes and averages by the text of 2015', () => {
    const answer = run({
      refrigerant: 'R-22',
      labelCharge: '100 lb',
      added: '10 lb',
      sinceLastAddition: '73 d',
      addedInYear: '15 lb',
      appliance: 'comfort-cooling',
    })
    expect(answer.result.federal?.annualizing?.value).toBeCloseTo(50, 6)
    expect(answer.result.federal?.rolling?.value).toBeCloseTo(15, 6)
    expect(answer.result.federal?.applies).toBe('yes')
    expect(answer.result.federal?.above).toBe('yes')
    const formulas = answer.result.practice.find(({ id }) => id === 'leak-rate-formulas')
    expect(formulas?.mark).toBe('verified')
    expect(codes(answer)).toContain('formulas-of-2015')
    expect(answer.sources.find(({ id }) => id === 'cfr-82-152-leak-rate')?.title).toContain(
      '2015 edition',
    )
    const law = answer.sources.find(({ id }) => id === 'us-federal/leak-50-lb')
    expect(law?.where).toBe('40 CFR 82.157')
  })

  it('credits the rules of states to no federal section', () => {
    const { practice } = run({
      refrigerant: 'R-22',
      labelCharge: '60 lb',
      addedInYear: '1 lb',
    }).result
    expect(practice.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['leak-50-lb', 'states-differ']),
    )
    const states = practice.filter(({ text }) => /Wisconsin|states/iu.test(text))
    expect(states.map(({ source }) => source)).toEqual(['us-federal/states-differ'])
  })

  it('cannot tell when the weighings reach over the threshold', () => {
    const near = { refrigerant: 'R-22', labelCharge: '100 lb', appliance: 'comfort-cooling' }
    const above = (addedInYear: string) => run({ ...near, addedInYear }).result.federal?.above
    expect([above('9.9 ±0.5 lb'), above('9 ±0.5 lb'), above('11 ±0.5 lb')]).toEqual([
      'cannot-tell',
      'no',
      'yes',
    ])
  })

  it('says that a cab falls outside', () => {
    const { federal } = run({ refrigerant: 'R-134a', labelCharge: '2 lb' }).result
    expect(federal?.applies).toBe('no')
    expect(federal?.because).toContain('Cab systems normally fall outside')
  })

  it('does not decide what the HFC rules leave to be looked up', () => {
    expect(run({ refrigerant: 'R-134a', labelCharge: '60 lb' }).result.federal?.applies).toBe(
      'look-up',
    )
  })
})

describe('bad input', () => {
  it.each([
    [{}, 'missing-input', ['startPressure']],
    [{ startPressure: '150 psig' }, 'missing-input', ['endPressure']],
    [{ chargeThen: '2 lb' }, 'missing-input', ['chargeNow']],
    [{ added: '2 lb' }, 'missing-input', ['labelCharge']],
    [{ labelCharge: '2 lb', added: '1 lb' }, 'missing-input', ['sinceLastAddition']],
    [{ ...cooled, vacuumLimit: 'rise-1-inhg-in-5-min' }, 'bad-input', ['vacuumLimit']],
    [{ ...cooled, volume: '0 L', elapsed: '1 h' }, 'out-of-range', ['volume']],
    [{ ...cooled, startTemperature: '500 °F' }, 'out-of-range', ['startTemperature']],
    [{ ...cooled, refrigerant: 'R-9999' }, 'unknown-refrigerant', ['refrigerant']],
  ])('%j is answered with the field', (input, code, path) => {
    const error = refusal(input)
    expect(error.code).toBe(code)
    expect(error.path).toEqual(path)
  })
})

describe('a detector outside its conditions', () => {
  const lost = {
    refrigerant: 'R-134a',
    chargeThen: '2 lb',
    chargeNow: '1 lb 8 oz',
    between: '365 d',
  }
  const finds = (input: Record<string, unknown>) =>
    Object.fromEntries(
      (run({ ...lost, ...input }).result.searching?.methods ?? []).map(({ id, findsThisLoss }) => [
        id,
        findsThisLoss,
      ]),
    )

  it('is not promised to find what it would find within them', () => {
    const warm = { systemPressure: '60 psig', ambient: '75 °F' }
    expect(finds(warm)['electronic-4']).toBe('yes')
    expect(finds({ ...warm, ambient: '50 °F' })['electronic-4']).toBe('cannot-tell')
    expect(finds({ ...warm, systemPressure: '20 psig' })['electronic-4']).toBe('cannot-tell')
    expect(finds({ ...warm, ambient: '50 °F' })['soap-film']).toBe('yes')
  })
})

describe('an inner volume alone', () => {
  it.each([{}, { law: 'eu' }])('asks for something to work on, under any law', (law) => {
    expect(refusal({ refrigerant: 'R-134a', volume: '4.5 L', ...law })).toMatchObject({
      code: 'missing-input',
      path: ['startPressure'],
    })
  })
})
