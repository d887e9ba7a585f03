import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { length, mass, standardAtmosphere } from '../../../shared/quantity/index.ts'
import { cansFor } from '../../../shared/service/charging/cans.ts'
import { charging } from '../../../shared/service/charging.ts'
import { refusalOf } from '../../support/refusal.ts'

const base = { refrigerant: 'R-134a', labelCharge: '1000 g', units: 'si' }

const refusal = (input: Record<string, unknown>) => refusalOf(() => charging.run(input))

const codes = (input: Record<string, unknown>) =>
  charging.run(input).warnings.map((entry) => entry.code)

describe('scale readings', () => {
  const hose = { serviceHoseBore: '1/4 in', serviceHoseLength: '72 in', sourceTemperature: '77 °F' }

  it('lets the source fall by the charge and by what stays in the hose', () => {
    const { result } = charging.run({
      ...base,
      ...hose,
      scaleStart: '10 kg',
      serviceHoseStarts: 'evacuated',
      serviceHoseHolds: 'liquid',
    })
    expect(result.hose?.holdUp.value).toBeCloseTo(69.9, 1)
    expect(result.scale?.stop).toMatchObject({ unit: 'kg', value: 8.93 })
    expect(result.scale?.earliest?.value).toBeCloseTo(8.93 + 0.028, 3)
    expect(result.scale?.latest?.value).toBeCloseTo(8.93 - 0.028, 3)
  })

  it('has no hold-up when the hose was filled the same before the scale was read', () => {
    const { result } = charging.run({
      ...base,
      ...hose,
      serviceHoseStarts: 'liquid',
      serviceHoseHolds: 'liquid',
    })
    expect(result.hose?.holdUp.value).toBe(0)
    expect(result.leavesSource.value).toBe(1000)
  })

  it('counts what a filled hose gives back when it is cleared into the system', () => {
    const { result } = charging.run({
      ...base,
      ...hose,
      serviceHoseStarts: 'liquid',
      serviceHoseHolds: 'vapour',
      serviceHosePressure: '30 psig',
    })
    expect(result.hose?.holdUp.value).toBeLessThan(-69)
    expect(result.leavesSource.value).toBeLessThan(932)
  })

  it('lets the machine rise by the charge alone when the machine stands on the scale', () => {
    const { result } = charging.run({
      ...base,
      ...hose,
      scale: 'under-machine',
      scaleStart: '40 kg',
    })
    expect(result.scale?.stop?.value).toBeCloseTo(41, 6)
    expect(result.scale?.change.value).toBe(1000)
  })

  it('says what the state of the hose does when nobody said which', () => {
    expect(codes({ ...base, ...hose })).toContain('hose-state-matters')
    expect(codes({ ...base, ...hose, serviceHoseHolds: 'liquid' })).not.toContain(
      'hose-state-matters',
    )
  })

  it('tells a scale that cannot resolve the tolerance', () => {
    const coarse = charging.run({ ...base, scaleStart: '10 kg', scaleDivision: '100 g' })
    expect(coarse.result.scale?.verdict).toBe('too-coarse')
    expect(coarse.warnings.map((entry) => entry.code)).toContain('scale-too-coarse')
    expect(
      charging.run({ ...base, scaleStart: '10 kg', scaleDivision: '5 g' }).result.scale?.verdict,
    ).toBe('fine-enough')
    // A shop scale, ±15 g in each of two readings, resolves an ounce; one off by 25 g does not.
    const shop = charging.run({ ...base, scaleStart: '10 kg' })
    expect(shop.result.scale?.verdict).toBe('fine-enough')
    expect(shop.assumptions.map(({ field }) => field)).toContain('scaleTolerance')
    expect(charging.run({ ...base, scaleTolerance: '25 g' }).result.scale?.verdict).toBe(
      'too-coarse',
    )
  })

  it('charges the rest when some is already in, and nothing when it is within tolerance', () => {
    expect(charging.run({ ...base, alreadyIn: '700 g' }).result.toAdd.value).toBe(300)
    expect(codes({ ...base, alreadyIn: '990 g' })).toContain('within-tolerance')
  })

  it('warns of a source that holds too little', () => {
    expect(codes({ ...base, sourceContents: '800 g' })).toContain('source-too-empty')
  })
})

describe('small cans', () => {
  it('counts whole cans and the part of the last', () => {
    const { result } = charging.run({ ...base, supply: 'small-cans', canNet: '340 g' })
    expect(result.cans).toMatchObject({ whole: 2, opened: 3, fromLast: { value: 320, unit: 'g' } })
  })

  it('takes account of what stays in an empty can', () => {
    const { result } = charging.run({
      ...base,
      supply: 'small-cans',
      canNet: '340 g',
      canLeft: '10 g',
    })
    expect(result.cans).toMatchObject({ whole: 3, opened: 4, fromLast: { value: 10 } })
  })

  it('breaks no can when the charge is a whole number of them', () => {
    expect(cansFor(1.02, mass(0.34), 0)).toEqual({ whole: 3, lastKg: 0, opened: 3 })
  })
})

describe('the way in', () => {
  const routes = (input: Record<string, unknown>) =>
    charging.run({ ...base, ...input }).result.routes.map((entry) => entry.id)

  it('offers liquid into the high side with the engine off, vapour into the low side running', () => {
    expect(routes({ engine: 'off' })).toEqual(['liquid-high-off'])
    expect(routes({ engine: 'running' })).toEqual(['vapour-low-running', 'throttled-low-running'])
    expect(routes({})).toContain('liquid-high-off')
  })

  it.each([
    ['high side with the engine running', { engine: 'running', side: 'high' }, 'side'],
    [
      'unthrottled liquid into the low side',
      { phase: 'liquid', side: 'low', engine: 'running' },
      'phase',
    ],
    [
      'unthrottled liquid into the low side, engine off',
      { phase: 'liquid', side: 'low', engine: 'off' },
      'phase',
    ],
    ['water hotter than the label allows', { waterTemperature: '140 °F' }, 'waterTemperature'],
    ['a can hotter than the label allows', { sourceTemperature: '60 °C' }, 'sourceTemperature'],
    ['more in than the charge', { alreadyIn: '1.2 kg' }, 'alreadyIn'],
  ])('refuses %s', (_, change, path) => {
    const error = refusal({ ...base, ...change })
    expect(error.code).toBe('refused')
    expect(error.path).toEqual([path])
    expect(error.hint).not.toBe('')
  })

  it('takes a zeotropic blend as liquid only', () => {
    const blend = { ...base, refrigerant: 'R-407C' }
    expect(refusal({ ...blend, phase: 'vapour' })).toMatchObject({
      code: 'refused',
      path: ['phase'],
    })
    const answer = charging.run({ ...blend, engine: 'running' })
    expect(answer.result.routes.map((entry) => entry.id)).toEqual(['throttled-low-running'])
    expect(answer.result.practice.map((entry) => entry.id)).toContain('blend-as-liquid')
    expect(codes({ ...blend, phase: 'vapour', supply: 'small-cans', canNet: '340 g' })).toContain(
      'blend-as-vapour',
    )
    expect(codes({ ...base, refrigerant: 'R-410A', phase: 'vapour' })).toContain('blend-as-vapour')
  })

  it('allows liquid into the low side when it is throttled', () => {
    expect(
      charging.run({ ...base, phase: 'liquid', side: 'low', engine: 'running', throttled: true })
        .result.toAdd.value,
    ).toBe(1000)
  })

  it('says which way the pressures drive it', () => {
    const at = (systemPressure: string) =>
      charging.run({ ...base, sourceTemperature: '77 °F', systemPressure }).result.flow
    expect(at('30 psig')).toBe('into-system')
    expect(at('200 psig')).toBe('back-into-source')
    expect(at('82 psig')).toBe('cannot-tell')
  })

  it('does not decide about water whose reading reaches over the limit', () => {
    expect(codes({ ...base, waterTemperature: '119 ±3 °F' })).toContain('container-may-be-too-warm')
  })
})

describe('weather', () => {
  const met = (ambient: string | undefined, judgeBy: string) =>
    charging.run({ ...base, judgeBy, ...(ambient ? { ambient } : {}) }).result.conditions[0]?.met

  it('asks 55 °F outdoors before subcooling or superheat judge the charge', () => {
    expect(met('60 °F', 'subcooling')).toBe('yes')
    expect(met('50 °F', 'superheat')).toBe('no')
    expect(met('54 ±2 °F', 'subcooling')).toBe('cannot-tell')
    expect(met(undefined, 'subcooling')).toBe('not-given')
    expect(met('50 °F', 'weight')).toBeUndefined()
  })

  it('warns a vehicle below 70 °F', () => {
    expect(codes({ ...base, machine: 'off-road', ambient: '60 °F' })).toContain('weather-air-70f')
  })
})

describe('bad input', () => {
  it.each([
    ['no charge', { labelCharge: undefined }, 'missing-input', 'labelCharge'],
    ['a charge of nothing', { labelCharge: '0 g' }, 'bad-input', 'labelCharge'],
    ['a bare number', { labelCharge: 1000 }, 'ambiguous-quantity', 'labelCharge'],
    [
      'a bore without a length',
      { serviceHoseBore: '1/4 in' },
      'missing-input',
      'serviceHoseLength',
    ],
    ['a length without a bore', { serviceHoseLength: '6 ft' }, 'missing-input', 'serviceHoseBore'],
    ['cans without their net mass', { supply: 'small-cans' }, 'missing-input', 'canNet'],
    ['empty cans', { supply: 'small-cans', canNet: '0 g' }, 'bad-input', 'canNet'],
    ['cans without end', { supply: 'small-cans', canNet: '1 mg' }, 'out-of-range', 'canNet'],
    ['a scale that shows less than the charge', { scaleStart: '500 g' }, 'bad-input', 'scaleStart'],
    ['an unknown refrigerant', { refrigerant: 'R-999' }, 'unknown-refrigerant', undefined],
    [
      'R-744 above its critical temperature in a hose',
      {
        refrigerant: 'R-744',
        serviceHoseBore: '6 mm',
        serviceHoseLength: '2 m',
        sourceTemperature: '40 °C',
      },
      'above-critical',
      'sourceTemperature',
    ],
    [
      'vapour that would be liquid',
      {
        serviceHoseBore: '6 mm',
        serviceHoseLength: '2 m',
        serviceHoseHolds: 'vapour',
        serviceHosePressure: '300 psig',
        sourceTemperature: '77 °F',
      },
      'two-phase',
      'serviceHosePressure',
    ],
  ])('%s', (_, change, code, path) => {
    const error = refusal({ ...base, ...change })
    expect(error.code).toBe(code)
    if (path) expect(error.path[0]).toBe(path)
  })
})

describe('laws', () => {
  const grams = fc.double({ min: 0.05, max: 5, noNaN: true })

  it('what leaves the source is what goes in and what the hose keeps', () => {
    fc.assert(
      fc.property(grams, fc.double({ min: 0.5, max: 10, noNaN: true }), (chargeKg, start) => {
        const { result } = charging.compute({
          refrigerant: 'R-134a',
          labelCharge: mass(chargeKg),
          supply: 'cylinder',
          scale: 'under-source',
          judgeBy: 'weight',
          scaleStart: mass(chargeKg + start),
          serviceHoseBore: length(0.00635),
          serviceHoseLength: length(1.8288),
          serviceHoseHolds: 'liquid',
        })
        const left = result.scale?.stop?.si ?? Number.NaN
        const kept = result.hose?.holdUp.si ?? Number.NaN
        expect(left + chargeKg + kept).toBeCloseTo(chargeKg + start, 9)
      }),
    )
  })

  it('whole cans and the part of the last add up to what is needed', () => {
    fc.assert(
      fc.property(grams, fc.double({ min: 0.1, max: 1, noNaN: true }), (needed, net) => {
        const { whole, lastKg, opened } = cansFor(needed, mass(net), 0)
        expect(whole * net + lastKg).toBeCloseTo(needed, 5)
        expect(lastKg).toBeLessThan(net)
        expect(opened - whole).toBe(lastKg > 0 ? 1 : 0)
      }),
    )
  })
})

describe('what a charge cannot be', () => {
  it('refuses a tolerance as large as the charge', () => {
    expect(refusal({ ...base, chargeTolerance: '2 kg' })).toMatchObject({
      code: 'bad-input',
      path: ['chargeTolerance'],
    })
  })

  it('warns of a compressor that runs in a vacuum only where nothing is in the system', () => {
    const ids = (input: Record<string, unknown>) =>
      charging.run({ ...base, side: 'low', phase: 'vapour', ...input }).cautions.map(({ id }) => id)
    expect(ids({ engine: 'running' })).toContain('compressor-in-vacuum')
    expect(ids({ engine: 'running', alreadyIn: '300 g' })).not.toContain('compressor-in-vacuum')
  })
})

describe('R-744', () => {
  const co2 = { refrigerant: 'R-744', labelCharge: '500 g', engine: 'off', side: 'high' }

  it('never goes in as liquid below its triple pressure, nor where nobody measured', () => {
    for (const systemPressure of [undefined, '28 inHg vac', '5 bar abs', '4.2 bar g', '60 psig']) {
      const error = refusal({ ...co2, phase: 'liquid', systemPressure })
      expect(error).toMatchObject({ code: 'refused', level: 'stop' })
      expect(error.message).toContain('dry ice')
      expect(error.cautions).toEqual(
        expect.arrayContaining(['dry-ice', 'carbon-dioxide', 'pressure', 'cold-burns']),
      )
    }
    // 5.18 bar absolute: 4.17 bar gauge at sea level, with the ± of gauge and weather well above it.
    expect(charging.run({ ...co2, phase: 'liquid', systemPressure: '6 bar g' }).level).toBe('check')
    expect(charging.run({ ...co2, phase: 'vapour', systemPressure: '0 bar g' }).level).toBe('check')
  })

  it('has its own way in, gear and dangers, and no fluoride', () => {
    const answer = charging.run(co2)
    expect(answer.result.routes.map(({ id }) => id)).toEqual(['carbon-dioxide-vapour-first'])
    expect(answer.result.practice.map(({ id }) => id)).toContain('carbon-dioxide-gear')
    const ids = answer.cautions.map(({ id }) => id)
    expect(ids).toEqual(expect.arrayContaining(['carbon-dioxide', 'dry-ice']))
    expect(ids).not.toContain('decomposition')
    expect(charging.run(base).result.practice.map(({ id }) => id)).not.toContain(
      'carbon-dioxide-gear',
    )
  })
})

describe('a refrigerant that burns', () => {
  const propane = { ...base, refrigerant: 'R-290' }

  it('is stopped from what is not said to be built for it', () => {
    for (const ratedForFlammable of [undefined, false]) {
      const error = refusal({ ...propane, ratedForFlammable })
      expect(error).toMatchObject({ level: 'stop', path: ['ratedForFlammable'] })
      expect(error.cautions).toEqual(
        expect.arrayContaining(['flammable', 'no-flammable-retrofit', 'pressure']),
      )
    }
    expect(charging.run({ ...propane, ratedForFlammable: true }).result.toAdd.value).toBe(1000)
    expect(refusal({ ...base, refrigerant: 'R-1234yf', ratedForFlammable: false }).level).toBe(
      'stop',
    )
    expect(charging.run({ ...base, refrigerant: 'R-1234yf' }).result.toAdd.value).toBe(1000)
  })

  it('keeps pressure and cold burns beside the flame', () => {
    const ids = charging.run({ ...base, refrigerant: 'R-1234yf' }).cautions.map(({ id }) => id)
    expect(ids).toEqual(expect.arrayContaining(['flammable', 'pressure', 'cold-burns']))
  })
})

describe('cautions', () => {
  const ids = (input: Record<string, unknown>) =>
    charging.run({ ...base, ...input }).cautions.map(({ id }) => id)
  const always = [
    'pressure',
    'cold-burns',
    'asphyxiation',
    'no-high-side-running',
    'warm-water-only',
    'no-liquid-to-suction',
    'weigh-the-charge',
    'maker-first',
    'local-rules',
  ]

  it('of every answer are in every answer, and in every stop', () => {
    for (const input of [{}, { engine: 'running' }, { alreadyIn: '999 g' }]) {
      expect(ids(input)).toEqual(expect.arrayContaining(always))
    }
    const stop = refusal({ ...base, engine: 'running', side: 'high' })
    expect(stop.level).toBe('stop')
    expect(stop.cautions).toEqual(expect.arrayContaining(always))
    expect(refusal({ ...base, waterTemperature: '140 °F' }).level).toBe('stop')
  })

  it('of belts and fans only where something runs that has them', () => {
    expect(ids({ engine: 'running' })).toContain('rotating-parts')
    expect(ids({ engine: 'off' })).not.toContain('rotating-parts')
    expect(ids({})).not.toContain('rotating-parts')
    expect(ids({ engine: 'running', machine: 'stationary' })).not.toContain('rotating-parts')
  })
})

describe('in a mechanic’s words', () => {
  const told = (input: Record<string, unknown>) =>
    charging.run({ ...base, labelCharge: '2 lb 6 oz', units: 'us', ...input })

  it('the stop reading comes first, no finer than the scale', () => {
    const { headline, figures } = told({ scaleStart: '22.4 lb', scaleDivision: '0.5 oz' })
    // 22.4 − 2.375 lb is 20 lb 0.4 oz.
    expect(headline).toBe(
      'Close the valve when the scale shows 20 lb 0.5 oz: then 2 lb 6 oz has gone in.',
    )
    expect(figures?.[0]).toMatchObject({ id: 'stop', text: '20 lb 0.5 oz' })
    expect(told({}).headline).toBe('Weigh in 2 lb 6 oz.')
    expect(told({}).next?.[0]).toContain('scaleStart')
  })

  it('names nothing to read off the scale where nothing has to be added', () => {
    const answer = told({ alreadyIn: '2 lb 5.9 oz ±0.2 oz', scaleStart: '22.4 lb' })
    expect(answer.level).toBe('fine')
    expect(answer.headline).toBe(
      'Nothing has to be added: what is missing lies within the tolerance of 1 oz.',
    )
    expect(answer.figures?.map(({ id }) => id)).toEqual(['tolerance'])
    expect(answer.result.scale).toBeUndefined()
    // With the shop scale's ±15 g half an ounce missing is not surely within one.
    expect(told({ alreadyIn: '2 lb 5.3 oz' }).level).toBe('check')
  })

  it('stops before refrigerant flows back into the source', () => {
    const { level, headline } = told({ sourceTemperature: '77 °F', systemPressure: '200 psig' })
    expect(level).toBe('stop')
    expect(headline).toContain('Do not open the valve')
  })

  it('says when the scale is too coarse, and when the source is too empty', () => {
    expect(told({ scaleDivision: '4 oz' }).headline).toContain('too coarse')
    expect(told({ sourceContents: '1 lb' }).headline).toContain('second one')
  })

  it('takes the tolerance in proportion to the charge', () => {
    const { band } = charging.run({ ...base, labelCharge: '8.5 kg', precise: true }).result
    expect((band.high.value - band.target.value) * 1000).toBeCloseTo(
      (8500 / (4 * 453.59237)) * 28.349523125,
      6,
    )
  })
})

describe('which way it flows', () => {
  const flow = (systemPressure: string, more = {}) =>
    charging.run({ ...base, sourceTemperature: '77 ±0 °F', systemPressure, ...more }).result.flow
  // R-134a at 77 °F stands at 81.8 psig; 0.3 % of it is the property's own ±, 0.4 psi the weather's.
  it('is decided with the ± of gauge, place and property, and only clear of them', () => {
    expect(flow('80 ±0.1 psig')).toBe('into-system')
    expect(flow('84 ±0.1 psig')).toBe('back-into-source')
    expect(flow('81.3 ±0 psig')).toBe('cannot-tell')
    expect(flow('81.3 ±0 psig', { barometer: '101.325 ±0 kPa' })).toBe('into-system')
    expect(flow('81.7 ±0 psig', { barometer: '101.325 ±0 kPa' })).toBe('cannot-tell')
    expect(flow('80 ±3 psig')).toBe('cannot-tell')
    // ±1 psi of a low-side gauge where none is given, ±4 psi on the high side.
    expect(flow('79 psig', { side: 'low' })).toBe('into-system')
    expect(flow('79 psig', { side: 'high', engine: 'off' })).toBe('cannot-tell')
  })

  it('never turns round by a tighter ±', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 60, max: 105, noNaN: true }),
        fc.double({ min: 0, max: 15, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (psig, plusMinus, share) => {
          const at = (half: number) =>
            charging.run({
              ...base,
              sourceTemperature: '77 °F',
              systemPressure: { value: psig, unit: 'psig', plusMinus: half },
            }).result.flow
          const wide = at(plusMinus)
          if (wide !== 'cannot-tell') expect(at(plusMinus * share)).toBe(wide)
        },
      ),
      { numRuns: 60 },
    )
  })
})

describe('more in than the charge', () => {
  it('is refused only where it is sure', () => {
    expect(refusal({ ...base, alreadyIn: '1.06 kg ±20 g' }).path).toEqual(['alreadyIn'])
    const unsure = charging.run({ ...base, alreadyIn: '1.04 kg ±20 g' })
    expect(unsure.level).toBe('fine')
    expect(unsure.result.toAdd.value).toBe(0)
  })
})

describe('a place', () => {
  it('by its altitude or by the barometer that belongs to it gives the same pressures', () => {
    fc.assert(
      fc.property(fc.double({ min: -300, max: 4000, noNaN: true }), (metres) => {
        const at = (place: object) =>
          charging.run({ ...base, sourceTemperature: '77 °F', precise: true, ...place }).result
            .sourcePressure?.value ?? Number.NaN
        const byBarometer = at({ barometer: { value: standardAtmosphere(metres), unit: 'Pa' } })
        expect(at({ altitude: { value: metres, unit: 'm' } })).toBeCloseTo(byBarometer, 9)
      }),
      { numRuns: 30 },
    )
  })
})

describe('the ± of what leaves the source', () => {
  it('is that of what is in and of the hose, and the property is not lost', () => {
    const { result } = charging.run({
      ...base,
      precise: true,
      alreadyIn: '400 ±10 g',
      serviceHoseBore: '6 ±0.3 mm',
      serviceHoseLength: '2 ±0 m',
      serviceHoseHolds: 'liquid',
      sourceTemperature: '77 ±0 °F',
    })
    const kept = result.hose?.holdUp
    expect(kept?.plusMinus).toBeCloseTo(2 * (0.3 / 6) * (kept?.value ?? 0), 6)
    expect(result.toAdd.plusMinus).toBeCloseTo(10, 9)
    expect(result.leavesSource.plusMinus).toBeCloseTo(Math.hypot(10, kept?.plusMinus ?? 0), 6)
  })
})
