import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { absolutePressure, mass, temperature, volume } from '../../../shared/quantity/index.ts'
import {
  refrigerant,
  saturatedDensity,
  saturationPressure,
} from '../../../shared/refrigerant/index.ts'
import { airMass, airShare } from '../../../shared/service/air-check/air.ts'
import { airCheck } from '../../../shared/service/air-check.ts'
import { refusalOf } from '../../support/refusal.ts'

const run = (input: Record<string, unknown>) => airCheck.run({ units: 'us', ...input })
const verdict = (input: Record<string, unknown>) => run(input).result.verdict
const codes = (input: Record<string, unknown>) => run(input).warnings.map((entry) => entry.code)

const refusal = (input: Record<string, unknown>) => refusalOf(() => airCheck.run(input))

describe('with a published limit', () => {
  const sharp = { barometer: '1013.25 ±0 hPa', refrigerant: 'R-12', recycled: true }

  it('brackets R-12 between lines of the table by the nearest ones, never by others', () => {
    const at = (pressure: string) => run({ ...sharp, temperature: '77.5 ±0 °F', pressure })
    expect(at('89 ±0 psig').result.limit).toMatchObject({
      atLeast: { value: 90 },
      atMost: { value: 92 },
    })
    expect(at('89.9 ±0 psig').result.verdict).toBe('within-limit')
    expect(at('91 ±0 psig').result.verdict).toBe('cannot-tell')
    expect(at('92.1 ±0 psig').result.verdict).toBe('over-limit')
    expect(at('91 ±0 psig').warnings.map((entry) => entry.code)).toContain('between-cells')
  })

  it('has one end only outside the table', () => {
    const hot = run({ ...sharp, temperature: '118 ±0 °F', pressure: '153 ±0 psig' }).result
    expect(hot.limit).toMatchObject({ atLeast: { value: 154 } })
    expect(hot.limit?.atMost).toBeUndefined()
    expect(hot.verdict).toBe('within-limit')
  })

  it('counts the ± of gauge, thermometer and weather, its larger end, as given or assumed', () => {
    const at = (pressure: string, temperature: string, more = {}) =>
      verdict({ refrigerant: 'R-12', recycled: true, pressure, temperature, ...more })
    const still = { barometer: '1013.25 ±0 hPa' }
    // 80 °F: 96 psig
    expect(at('95.5 ±0 psig', '80 ±0 °F', still)).toBe('within-limit')
    expect(at('95.5 ±1 psig', '80 ±0 °F', still)).toBe('cannot-tell')
    expect(at('95.5 psig', '80 ±0 °F', still)).toBe('cannot-tell')
    expect(at('96.5 ±0 psig', '80 ±1 °F', still)).toBe('cannot-tell')
    expect(at('96.5 ±0 psig', '80 °F', still)).toBe('cannot-tell')
    expect(at('95.7 ±0 psig', '80 ±0 °F')).toBe('cannot-tell')
    expect(at('95.5 ±0 psig', '80 ±0 °F')).toBe('within-limit')
    expect(at('101 psig', '80 °F')).toBe('over-limit')
    expect(at('90 psig', '80 °F')).toBe('within-limit')
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
      run({ refrigerant: 'R-134a', temperature: '80 ±0 °F', pressure: '92.5 ±0.5 psig', altitude })
    expect(at('0 ft').result.verdict).toBe('over-limit')
    expect(at('5000 ft').result.verdict).toBe('within-limit')
    expect(at('5000 ft').result.limit?.atMost?.value).toBeCloseTo(91 + 2.47, 1)
  })

  it.each([
    [{ recycled: true, pressure: '86 psig' }, ['may-use']],
    [{ recycled: false, pressure: '86 psig' }, ['not-yet-recycled']],
    [{ pressure: '86 psig' }, ['may-use', 'not-yet-recycled']],
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
  it('leave it open while a thermometer cannot tell whether they hold', () => {
    const at = (temperature: string) =>
      verdict({ refrigerant: 'R-134a', pressure: '104 psig', temperature })
    expect(at('66.5 ±1 °F')).toBe('over-limit')
    expect(at('65.5 ±1 °F')).toBe('cannot-tell')
    expect(at('63.5 ±1 °F')).toBe('cannot-tell')
    expect(
      codes({ refrigerant: 'R-134a', pressure: '104 psig', temperature: '65.5 ±1 °F' }),
    ).toContain('conditions-not-met')
  })

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
      (answer.result.saturation.bubble?.value ?? 0) - 15,
    )
    expect(answer.warnings.map((entry) => entry.code)).toContain('composition-may-have-shifted')
    expect(answer.result.whatToDo.map((entry) => entry.id)).toContain('zeotrope')
  })

  it('counts air from the bubble line, the most that the blend itself can have', () => {
    const { result } = run({ ...base, pressure: '175 psig', precise: true })
    const { bubble } = result.saturation
    expect(result.above.value).toBeCloseTo(175 - (bubble?.value ?? Number.NaN), 6)
    expect(result.air.partialPressure.value).toBeCloseTo(result.above.value, 6)
    expect(result.air.ofVapour.value).toBeCloseTo((100 * result.above.value) / (175 + 14.696), 3)
    // gauge 1 psi, weather 0.44, thermometer 2.6, the blend's data 0.9
    expect(result.above.plusMinus).toBeGreaterThan(2.5)
    expect(result.above.plusMinus).toBeLessThan(3.6)
  })

  it('finds the air over a part-full cylinder that lies between the lines', () => {
    const part = {
      refrigerant: 'R-407C',
      pressure: '157 psig',
      temperature: '77 °F',
      volume: '21.6 L',
      contents: '8 lb',
    }
    const { result, level, headline } = run(part)
    // 151.6 psig by an exact flash of those contents
    expect(result.expected?.value).toBeCloseTo(151.6, 0)
    expect(result.from).toBe('contents')
    expect(result.verdict).toBe('air-shown')
    expect(result.above.value).toBeCloseTo(5.4, 0)
    expect(level).toBe('check')
    expect(headline).toMatch(/^Air in it, or another gas: 157 psig is 5\.\d+ psi more/u)
    const unknown = run({ ...part, volume: undefined, contents: undefined })
    expect(unknown.result).toMatchObject({ verdict: 'cannot-tell', from: 'bubble' })
    expect(unknown.warnings.map(({ code }) => code)).toContain('give-contents')
    // a rough scale hides it again
    expect(verdict({ ...part, contents: '8 ±6 lb' })).not.toBe('below-saturation')
    expect(verdict({ ...part, pressure: '157 ±6 psig' })).toBe('no-air-shown')
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
      volume: '21.6 L',
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
      volume: '21.6 L',
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
    ['contents without a volume', { contents: '5 lb' }, 'missing-input', 'volume'],
    ['more than the container holds', { contents: '50 kg', volume: '20 L' }, 'refused', 'contents'],
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
          if (contents < vapour * 0.02) return
          const { air } = airCheck.compute({
            refrigerant: name,
            pressure: absolutePressure(saturationPressure(r, temperatureK, 'bubble'), 1000),
            temperature: temperature(temperatureK, 0.2),
            container: 'cylinder',
            volume: volume(0.02),
            contents: mass(contents, 0.01),
          }).result
          const space = air.vapourSpace?.si ?? Number.NaN
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
          const share = (pa: number) => airShare({ si: pa }, { si: sat + pa }).si
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
    const light = { ...hot, pressure: '104 psig', volume: '21.6 L' }
    expect(codes({ ...light, contents: '0.5 lb' })).toContain('no-liquid')
    expect(codes({ ...light, contents: '18 lb' })).not.toContain('no-liquid')
  })

  it('reads a temperature near a whole degree on its line of the table', () => {
    const r12 = { refrigerant: 'R-12', pressure: '94.7 ±0.5 psig', recycled: true }
    expect(verdict({ ...r12, temperature: '80 ±0 °F' })).toBe('within-limit')
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
