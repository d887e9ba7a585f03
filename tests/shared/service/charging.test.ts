import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { length, mass } from '../../../shared/quantity/index.ts'
import { cansFor } from '../../../shared/service/charging/cans.ts'
import { charging } from '../../../shared/service/charging.ts'
import { refusalOf } from '../../support/refusal.ts'

const base = { refrigerant: 'R-134a', charge: '1000 g', units: 'si' }

const refusal = (input: Record<string, unknown>) => refusalOf(() => charging.run(input))

const codes = (input: Record<string, unknown>) =>
  charging.run(input).warnings.map((entry) => entry.code)

describe('scale readings', () => {
  const hose = { hoseBore: '1/4 in', hoseLength: '72 in', sourceTemperature: '77 °F' }

  it('lets the source fall by the charge and by what stays in the hose', () => {
    const { result } = charging.run({
      ...base,
      ...hose,
      scaleStart: '10 kg',
      hoseAtStart: 'evacuated',
      hoseAtEnd: 'liquid',
    })
    expect(result.hose?.holdUp.value).toBeCloseTo(69.9, 1)
    expect(result.scale.stop).toMatchObject({ unit: 'kg', value: 8.93 })
    expect(result.scale.earliest?.value).toBeCloseTo(8.93 + 0.028, 3)
    expect(result.scale.latest?.value).toBeCloseTo(8.93 - 0.028, 3)
  })

  it('has no hold-up when the hose was filled the same before the scale was read', () => {
    const { result } = charging.run({
      ...base,
      ...hose,
      hoseAtStart: 'liquid',
      hoseAtEnd: 'liquid',
    })
    expect(result.hose?.holdUp.value).toBe(0)
    expect(result.leavesSource.value).toBe(1000)
  })

  it('counts what a filled hose gives back when it is cleared into the system', () => {
    const { result } = charging.run({
      ...base,
      ...hose,
      hoseAtStart: 'liquid',
      hoseAtEnd: 'vapour',
      hosePressure: '30 psig',
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
    expect(result.scale.stop?.value).toBeCloseTo(41, 6)
    expect(result.scale.change.value).toBe(1000)
  })

  it('says what the state of the hose does when nobody said which', () => {
    expect(codes({ ...base, ...hose })).toContain('hose-state-matters')
    expect(codes({ ...base, ...hose, hoseAtEnd: 'liquid' })).not.toContain('hose-state-matters')
  })

  it('tells a scale that cannot resolve the tolerance', () => {
    const coarse = charging.run({ ...base, scaleStart: '10 kg', scaleDivision: '100 g' })
    expect(coarse.result.scale.verdict).toBe('too-coarse')
    expect(coarse.warnings.map((entry) => entry.code)).toContain('scale-too-coarse')
    expect(
      charging.run({ ...base, scaleStart: '10 kg', scaleDivision: '5 g' }).result.scale.verdict,
    ).toBe('fine-enough')
    expect(charging.run({ ...base, scaleStart: '10 kg' }).result.scale.verdict).toBe('not-given')
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
  const met = (outdoorTemperature: string | undefined, judgeBy: string) =>
    charging.run({ ...base, judgeBy, ...(outdoorTemperature ? { outdoorTemperature } : {}) }).result
      .conditions[0]?.met

  it('asks 55 °F outdoors before subcooling or superheat judge the charge', () => {
    expect(met('60 °F', 'subcooling')).toBe('yes')
    expect(met('50 °F', 'superheat')).toBe('no')
    expect(met('54 ±2 °F', 'subcooling')).toBe('cannot-tell')
    expect(met(undefined, 'subcooling')).toBe('not-given')
    expect(met('50 °F', 'weight')).toBeUndefined()
  })

  it('warns a vehicle below 70 °F', () => {
    expect(codes({ ...base, equipment: 'vehicle', outdoorTemperature: '60 °F' })).toContain(
      'weather-air-70f',
    )
  })
})

describe('bad input', () => {
  it.each([
    ['no charge', { charge: undefined }, 'missing-input', 'charge'],
    ['a charge of nothing', { charge: '0 g' }, 'bad-input', 'charge'],
    ['a bare number', { charge: 1000 }, 'ambiguous-quantity', 'charge'],
    ['a bore without a length', { hoseBore: '1/4 in' }, 'missing-input', 'hoseLength'],
    ['a length without a bore', { hoseLength: '6 ft' }, 'missing-input', 'hoseBore'],
    ['cans without their net mass', { supply: 'small-cans' }, 'missing-input', 'canNet'],
    ['empty cans', { supply: 'small-cans', canNet: '0 g' }, 'bad-input', 'canNet'],
    ['cans without end', { supply: 'small-cans', canNet: '1 mg' }, 'out-of-range', 'canNet'],
    ['a scale that shows less than the charge', { scaleStart: '500 g' }, 'bad-input', 'scaleStart'],
    ['an unknown refrigerant', { refrigerant: 'R-999' }, 'unknown-refrigerant', undefined],
    [
      'R-744 above its critical temperature in a hose',
      { refrigerant: 'R-744', hoseBore: '6 mm', hoseLength: '2 m', sourceTemperature: '40 °C' },
      'above-critical',
      'sourceTemperature',
    ],
    [
      'vapour that would be liquid',
      {
        hoseBore: '6 mm',
        hoseLength: '2 m',
        hoseAtEnd: 'vapour',
        hosePressure: '300 psig',
        sourceTemperature: '77 °F',
      },
      'two-phase',
      'hosePressure',
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
          charge: mass(chargeKg),
          supply: 'cylinder',
          scale: 'under-source',
          judgeBy: 'weight',
          scaleStart: mass(chargeKg + start),
          hoseBore: length(0.00635),
          hoseLength: length(1.8288),
          hoseAtEnd: 'liquid',
        })
        const left = result.scale.stop?.si ?? Number.NaN
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
    expect(refusal({ ...base, tolerance: '2 kg' })).toMatchObject({
      code: 'bad-input',
      path: ['tolerance'],
    })
  })

  it('warns of a compressor that runs in a vacuum only where nothing is in the system', () => {
    const ids = (input: Record<string, unknown>) =>
      charging.run({ ...base, side: 'low', phase: 'vapour', ...input }).cautions.map(({ id }) => id)
    expect(ids({ engine: 'running' })).toContain('compressor-in-vacuum')
    expect(ids({ engine: 'running', alreadyIn: '300 g' })).not.toContain('compressor-in-vacuum')
  })
})
