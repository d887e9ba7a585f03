import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { absolutePressure, temperature } from '../../../shared/quantity/index.ts'
import {
  refrigerant,
  saturatedDensity,
  saturationPressure,
} from '../../../shared/refrigerant/index.ts'
import { airFraction, airMass, vapourSpace } from '../../../shared/service/air-check/air.ts'
import { airCheck } from '../../../shared/service/air-check.ts'
import { refusalOf } from '../../support/refusal.ts'

const run = (input: Record<string, unknown>) => airCheck.run({ units: 'us', ...input })
const verdict = (input: Record<string, unknown>) => run(input).result.verdict
const codes = (input: Record<string, unknown>) => run(input).warnings.map((entry) => entry.code)

const refusal = (input: Record<string, unknown>) => refusalOf(() => airCheck.run(input))

describe('with a published limit', () => {
  it('brackets R-12 between verified cells by the nearest ones, never by others', () => {
    const at = (pressure: string) =>
      run({ refrigerant: 'R-12', temperature: '77 °F', pressure, recycled: true })
    expect(at('85 psig').result.limit).toMatchObject({
      atLeast: { value: 86 },
      atMost: { value: 96 },
    })
    expect(at('85 psig').result.verdict).toBe('within-limit')
    expect(at('90 psig').result.verdict).toBe('cannot-tell')
    expect(at('97 psig').result.verdict).toBe('over-limit')
    expect(at('90 psig').warnings.map((entry) => entry.code)).toContain('between-cells')
  })

  it('has one end only outside the verified cells', () => {
    const cool = run({ refrigerant: 'R-12', temperature: '67 °F', pressure: '85 psig' }).result
    expect(cool.limit?.atLeast).toBeUndefined()
    expect(cool.verdict).toBe('over-limit')
    const hot = run({ refrigerant: 'R-12', temperature: '118 °F', pressure: '153 psig' }).result
    expect(hot.limit?.atMost).toBeUndefined()
  })

  it('widens the bracket by the thermometer’s uncertainty', () => {
    const { limit } = run({
      refrigerant: 'R-12',
      temperature: '82 ±1 °F',
      pressure: '95 psig',
    }).result
    expect(limit).toMatchObject({ atLeast: { value: 98 }, atMost: { value: 100 } })
  })

  it('compares absolute pressures: at altitude the gauge may read more', () => {
    const at = (altitude: string) =>
      run({ refrigerant: 'R-134a', temperature: '80 °F', pressure: '92.5 psig', altitude })
    expect(at('0 ft').result.verdict).toBe('over-limit')
    expect(at('5000 ft').result.verdict).toBe('within-limit')
    expect(at('5000 ft').result.limit?.atMost?.value).toBeCloseTo(91 + 2.47, 1)
  })

  it.each([
    [{ recycled: true, pressure: '89 psig' }, ['may-use']],
    [{ recycled: false, pressure: '89 psig' }, ['not-yet-recycled']],
    [{ pressure: '89 psig' }, ['may-use', 'not-yet-recycled']],
    [
      { recycled: true, pressure: '100 psig' },
      ['vent-into-machine', 'shake-and-wait', 'recycle-all', 'another-refrigerant'],
    ],
    [{ recycled: false, pressure: '100 psig' }, ['not-yet-recycled']],
    [{ container: 'system', pressure: '100 psig' }, ['system-recover']],
  ])('%j: %j', (change, ids) => {
    const { result } = run({ refrigerant: 'R-134a', temperature: '80 °F', ...change })
    expect(result.whatToDo.map((entry) => entry.id)).toEqual(ids)
  })
})

describe('conditions of the check', () => {
  const base = { refrigerant: 'R-134a', temperature: '80 °F', pressure: '100 psig' }

  it.each([
    ['too cold', { temperature: '60 °F' }],
    ['not rested', { rested: '2 h' }],
    ['in the sun', { inSun: true }],
  ])('decides nothing when it is %s', (_, change) => {
    expect(verdict({ ...base, ...change })).toBe('cannot-tell')
    expect(codes({ ...base, ...change })).toContain('conditions-not-met')
  })

  it('decides when they hold or are not known', () => {
    expect(verdict(base)).toBe('over-limit')
    expect(verdict({ ...base, rested: '12 h', inSun: false })).toBe('over-limit')
  })
})

describe('without a published limit', () => {
  const base = { refrigerant: 'R-22', temperature: '80 °F' }

  it('shows air only beyond the uncertainty', () => {
    // R-22 saturates at 143.6 psig at 80 °F.
    expect(verdict({ ...base, pressure: '160 psig' })).toBe('air-shown')
    expect(verdict({ ...base, pressure: '145 psig' })).toBe('no-air-shown')
    expect(verdict({ ...base, pressure: '145 ±0.3 psig', temperature: '80 ±0.2 °F' })).toBe(
      'air-shown',
    )
  })

  it('says that no liquid is left below saturation', () => {
    expect(verdict({ ...base, pressure: '100 psig' })).toBe('below-saturation')
    expect(codes({ ...base, pressure: '100 psig' })).toContain('below-saturation')
    expect(run({ ...base, pressure: '100 psig' }).result.air.ofVapour.value).toBe(0)
  })

  it('lists what was taken for instruments that nobody stated', () => {
    const fields = run({ ...base, pressure: '145 psig' }).assumptions.map((entry) => entry.field)
    expect(fields).toContain('pressure')
  })
})

describe('zeotropic blends', () => {
  // R-407C at 80 °F: bubble about 162 psig, dew about 138 psig.
  const base = { refrigerant: 'R-407C', temperature: '80 °F' }

  it('compares with the bubble pressure and says that composition may have shifted', () => {
    const answer = run({ ...base, pressure: '175 psig' })
    expect(answer.result.verdict).toBe('air-shown')
    expect(answer.result.saturation.dew?.value).toBeLessThan(
      answer.result.saturation.bubble.value - 15,
    )
    expect(answer.warnings.map((entry) => entry.code)).toContain('composition-may-have-shifted')
    expect(answer.result.whatToDo.map((entry) => entry.id)).toContain('zeotrope')
  })

  it('tells nothing between the two lines', () => {
    expect(verdict({ ...base, pressure: '150 psig' })).toBe('cannot-tell')
    expect(verdict({ ...base, pressure: '100 psig' })).toBe('below-saturation')
  })
})

describe('mass of air', () => {
  it('is what the gas law gives in the space above the liquid', () => {
    const { result } = run({
      refrigerant: 'R-134a',
      pressure: '104 psig',
      temperature: '80 °F',
      containerVolume: '21.6 L',
      contents: '18 lb',
      units: 'si',
    })
    // 119.4 kPa of air in 15.2 L at 299.8 K: n = pV/RT = 0.729 mol, 21.1 g.
    expect(result.air.mass?.value).toBeCloseTo(21.1, 0)
    expect(result.air.isUpperBound).toBe(false)
    expect(result.air.byMass?.value).toBeCloseTo(0.26, 2)
    expect(result.forComparison.map((entry) => entry.id)).toEqual(['new-air', 'recycled-purity'])
    expect(result.forComparison[1]?.text).toMatch(/^Unverified/u)
  })

  it('is an upper bound when the contents are not known', () => {
    const { result } = run({
      refrigerant: 'R-134a',
      pressure: '104 psig',
      temperature: '80 °F',
      containerVolume: '21.6 L',
    })
    expect(result.air.isUpperBound).toBe(true)
  })
})

describe('bad input', () => {
  const base = { refrigerant: 'R-134a', pressure: '100 psig', temperature: '80 °F' }
  it.each([
    ['no pressure', { pressure: undefined }, 'missing-input', 'pressure'],
    [
      'a pressure that may be gauge or absolute',
      { pressure: '100 psi' },
      'ambiguous-quantity',
      'pressure',
    ],
    ['a pressure below a vacuum', { pressure: '-20 psig' }, 'out-of-range', 'pressure'],
    ['contents without a volume', { contents: '5 lb' }, 'missing-input', 'containerVolume'],
    [
      'more than the container holds',
      { contents: '50 kg', containerVolume: '20 L' },
      'bad-input',
      'contents',
    ],
    [
      'R-744 above its critical temperature',
      { refrigerant: 'R-744', temperature: '95 °F' },
      'above-critical',
      'temperature',
    ],
    ['an unknown field', { temp: '80 °F' }, 'bad-input', 'temp'],
  ])('%s', (_, change, code, path) => {
    const error = refusal({ ...base, ...change })
    expect(error.code).toBe(code)
    expect(error.path[0]).toBe(path)
  })
})

describe('laws', () => {
  const names = fc.constantFrom('R-12', 'R-134a', 'R-22', 'R-1234yf', 'R-152a')
  const kelvin = fc.double({ min: 292, max: 318, noNaN: true })

  it('no verdict flips within the stated uncertainty without saying cannot-tell in between', () => {
    const order = (name: string) =>
      name === 'within-limit' || name === 'no-air-shown'
        ? 0
        : name === 'over-limit' || name === 'air-shown'
          ? 2
          : 1
    fc.assert(
      fc.property(
        fc.constantFrom('R-12', 'R-134a'),
        kelvin,
        fc.double({ min: -10_000, max: 110_000, noNaN: true }),
        fc.double({ min: 1_000, max: 20_000, noNaN: true }),
        (name, temperatureK, above, width) => {
          const r = refrigerant(name)
          const pressurePa = saturationPressure(r, temperatureK, 'bubble') + above
          const at = (pa: number) =>
            airCheck.compute({
              refrigerant: name,
              pressure: absolutePressure(pa, width),
              temperature: temperature(temperatureK, 0.2),
              container: 'cylinder',
            }).result.verdict
          const verdicts = [at(pressurePa), at(pressurePa + 0.9 * width)]
          const [low, high] = verdicts.map(order)
          expect([0, 1]).toContain(Math.abs((high ?? 0) - (low ?? 0)))
        },
      ),
    )
  })

  it('liquid and vapour fill the container and weigh the contents', () => {
    fc.assert(
      fc.property(
        names,
        kelvin,
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        (name, temperatureK, fill) => {
          const r = refrigerant(name)
          const liquid = saturatedDensity(r, temperatureK, 'liquid')
          const vapour = saturatedDensity(r, temperatureK, 'vapour')
          const contents = fill * liquid * 0.02
          const space = vapourSpace(r, temperatureK, 0.02, contents)
          if (contents < vapour * 0.02) return
          expect(liquid * (0.02 - space) + vapour * space).toBeCloseTo(contents, 9)
        },
      ),
    )
  })

  it('more pressure means more air, and the share stays between none and all', () => {
    fc.assert(
      fc.property(
        names,
        kelvin,
        fc.double({ min: 0, max: 5e5, noNaN: true }),
        (name, temperatureK, excess) => {
          const r = refrigerant(name)
          const sat = saturationPressure(r, temperatureK, 'bubble')
          const share = (pa: number) => airFraction(r, { si: sat + pa }, { si: temperatureK }).si
          expect(share(excess)).toBeGreaterThanOrEqual(0)
          expect(share(excess)).toBeLessThan(1)
          expect(share(excess + 1000)).toBeGreaterThan(share(excess))
          expect(airMass({ si: excess + 1 }, temperatureK, 0.01).si).toBeGreaterThan(
            airMass({ si: excess }, temperatureK, 0.01).si,
          )
        },
      ),
    )
  })
})

describe('readings that the check was not made for', () => {
  const hot = { refrigerant: 'R-134a', pressure: '400 psig', temperature: '80 °F', recycled: true }

  it('does not have a container bled or shaken that may be full of liquid', () => {
    const { result, cautions, warnings } = run(hot)
    expect(result.whatToDo.map(({ id }) => id)).toEqual(['far-above'])
    expect(cautions.map(({ id }) => id)).toContain('full-cylinder')
    expect(warnings.map(({ code }) => code)).toContain('far-above-saturation')
    expect(codes({ ...hot, pressure: '104 psig' })).not.toContain('far-above-saturation')
  })

  it('says that contents without liquid prove nothing', () => {
    const light = { ...hot, pressure: '104 psig', containerVolume: '21.6 L' }
    expect(codes({ ...light, contents: '0.5 lb' })).toContain('no-liquid')
    expect(codes({ ...light, contents: '18 lb' })).not.toContain('no-liquid')
  })

  it('reads a temperature near a whole degree on its line of the table, stated or not', () => {
    const r12 = { refrigerant: 'R-12', pressure: '92 ±0.5 psig', recycled: true }
    expect(verdict({ ...r12, temperature: '80 °F' })).toBe('within-limit')
    expect(verdict({ ...r12, temperature: '80 ±0.2 °F' })).toBe('within-limit')
    expect(verdict({ ...r12, temperature: '80 ±2 °F' })).toBe('cannot-tell')
  })

  it('repeats a condition in plain words', () => {
    const { warnings } = run({ ...hot, pressure: '104 psig', rested: '2 h' })
    const said = warnings.find(({ code }) => code === 'conditions-not-met')?.message
    expect(said).toBe(
      'Read again when this holds: Let it rest for at least 12 hours before reading.',
    )
  })
})
