import { describe, expect, it } from 'vitest'
import { fractionation } from '../../../shared/service/fractionation.ts'
import { retrofit } from '../../../shared/service/retrofit.ts'
import { saturation } from '../../../shared/service/saturation.ts'
import { table } from '../../../shared/service/table.ts'

describe('saturation in one line', () => {
  const line = (input: Record<string, unknown>) => saturation.run(input).headline

  it('of a pressure, first in the system that it was read in', () => {
    expect(line({ refrigerant: '134a', pressure: '32 psig' })).toBe(
      'R-134a at 32 psig boils at 36.8 °F (2.6 °C).',
    )
    expect(line({ refrigerant: '134a', pressure: '2.2 bar g' })).toMatch(
      /^R-134a at 220 kPa g boils at 2\.\d °C \(36\.\d °F\)\.$/u,
    )
  })

  it('of a blend has both lines, the bubble first', () => {
    expect(line({ refrigerant: '407C', pressure: '5.2 bar g' })).toMatch(
      /: bubble 2\.8 °C \(37 °F\), dew 8\.9 °C/u,
    )
  })

  it('of a temperature is the pressure on the gauge here', () => {
    expect(line({ refrigerant: '134a', temperature: '40 °F' })).toBe(
      'R-134a at 40 °F boils at 35 psig (242 kPa g).',
    )
    // 5000 ft takes 2.46 psi from the air, and so adds it to the gauge.
    expect(line({ refrigerant: '134a', temperature: '40 °F', altitude: '5000 ft' })).toMatch(
      /at 37\.5 psig/u,
    )
  })

  it('is the whole answer, with the place’s ± among its figures', () => {
    const { line: whole, figures = [], level } = saturation.run(saturation.example)
    expect(whole).toBe(true)
    expect(level).toBe('information')
    expect(figures.find(({ id }) => id === 'barometer')?.text).toMatch(/ ±\d/u)
    const absolute = saturation.run({ refrigerant: 'R-134a', pressure: '47 psia' })
    expect(absolute.figures?.map(({ id }) => id)).not.toContain('barometer')
  })

  it('says beside the figure that mixing is estimated', () => {
    const basis = (name: string) =>
      saturation.run({ refrigerant: name, pressure: '60 psig' }).figures?.map((f) => f.basis)
    expect(basis('R-409A')).toContain('estimated')
    expect(basis('R-407C')).not.toContain('estimated')
  })
})

describe('a table alone', () => {
  it('runs over what a service meets, in the asked system', () => {
    const { result, assumptions, headline } = table.run({ refrigerant: '134a', units: 'us' })
    expect(result.rows.map((row) => row.temperature?.value)).toEqual(
      Array.from({ length: 19 }, (_, index) => -20 + 10 * index),
    )
    expect(assumptions.map(({ field }) => field).slice(0, 3)).toEqual(['from', 'to', 'step'])
    expect(headline).toBe('R-134a from -20 °F to 160 °F, 19 rows.')
    const si = table.run({ refrigerant: '134a', units: 'si' }).result
    expect(si.rows[0]?.temperature?.unit).toBe('°C')
  })

  it('ends where the refrigerant does', () => {
    const temperatures = (name: string) =>
      table.run({ refrigerant: name, units: 'us' }).result.rows.map((row) => row.temperature?.value)
    expect(temperatures('R-744').at(-1)).toBe(80)
    expect(temperatures('R-410A').at(-1)).toBe(150)
  })

  it('takes the other end and the step in the unit of the end that is given', () => {
    const { result } = table.run({ refrigerant: '134a', from: '0 °C' })
    expect(result.rows.map((row) => row.temperature?.value)).toEqual(
      Array.from({ length: 15 }, (_, index) => 5 * index),
    )
    const pressures = table.run({ refrigerant: '134a', from: '0 psig', to: '50 psig' }).result
    expect(pressures.rows.map((row) => row.gaugePressure?.value)).toEqual([0, 10, 20, 30, 40, 50])
    const bars = table.run({ refrigerant: '134a', from: '1 bar g', to: '2 bar g' }).result
    expect(bars.rows.map((row) => row.gaugePressure?.value)).toEqual([1, 1.5, 2])
  })

  it('over pressure needs both ends', () => {
    expect(() => table.run({ refrigerant: '134a', from: '0 psig' })).toThrow(
      expect.objectContaining({ code: 'missing-input', path: ['to'] }),
    )
    expect(() => table.run({ refrigerant: '134a', to: '0 psig' })).toThrow(
      expect.objectContaining({ code: 'missing-input', path: ['from'] }),
    )
  })

  it('says the ± of the place once', () => {
    const { result } = table.run({ refrigerant: '134a', altitude: '5000 ±500 ft' })
    const plain = table.run({ refrigerant: '134a', altitude: '5000 ft' }).result
    expect(result.barometer.plusMinus ?? 0).toBeGreaterThan(plain.barometer.plusMinus ?? 0)
    expect(plain.barometer.plusMinus ?? 0).toBeGreaterThan(0)
    expect(result.rows[0]?.pressure?.plusMinus).toBeUndefined()
  })
})

describe('a leak of a blend', () => {
  const leak = (input: Record<string, unknown>) =>
    fractionation.run({
      refrigerant: 'R-407C',
      escapes: 'vapour',
      temperature: '77 °F',
      lost: '40 %',
      ...input,
    })

  it('whose top-up would not read like fresh is recovered: no mass to add is told', () => {
    const { headline, figures = [], next, result } = leak({ startMass: '6 lb' })
    expect(result.verdict).toBe('recover-and-weigh-in')
    expect(headline).toMatch(/^40 % lost as vapour: .*recover, weigh in the whole charge\.$/u)
    expect(figures.map(({ id }) => id)).toEqual(['lost', 'shift', 'pressureNow'])
    expect(next?.[0]).toMatch(/leak/u)
  })

  it('whose top-up reads like fresh is told what is missing', () => {
    const { figures = [], result } = leak({ refrigerant: 'R-410A', startMass: '6 lb' })
    expect(result.verdict).toBe('top-up-reads-close')
    expect(figures.find(({ id }) => id === 'add')?.text).toBe('2 lb 6.4 oz')
  })

  it('cannot be judged where its data or the share lost reach over the limit', () => {
    // A shift of next to nothing, known to the 1.6 K of remembered boiling points.
    const estimated = leak({ refrigerant: 'R-409A', escapes: 'liquid', lost: '10 %' })
    expect(estimated.result.verdict).toBe('cannot-tell')
    expect(estimated.result.shift.plusMinus).toBeGreaterThan(1.5)
    expect(estimated.figures?.find(({ id }) => id === 'shift')?.basis).toBe('estimated')
    // R-407C shifts by 0.9 °F at about 10 % of vapour lost.
    expect(leak({ lost: '10 ±8 %' }).result.verdict).toBe('cannot-tell')
    expect(leak({ lost: '2 %' }).result.verdict).toBe('top-up-reads-close')
  })

  it('is judged by the line that moves more, with the ± of the share lost', () => {
    const at = (lost: string) => leak({ lost, units: 'si', precise: true }).result
    const { shift, toppedUp } = at('40 %')
    const [bubble, dew] = [toppedUp.bubbleShift.value, toppedUp.dewShift.value].map(Math.abs)
    expect(bubble).not.toBeCloseTo(dew ?? 0, 2)
    expect(shift.value).toBeCloseTo(Math.max(bubble ?? 0, dew ?? 0), 9)
    const half = (at('50 %').shift.value - at('30 %').shift.value) / 2
    expect(at('40 ±10 %').shift.plusMinus).toBeCloseTo(Math.hypot(half, shift.plusMinus ?? 0), 6)
  })

  it('carries the ± of thermometer, place, mixing and weighing', () => {
    const width = (input: Record<string, unknown>) =>
      leak({ ...input, units: 'si', precise: true }).result.vessel.pressureNow.plusMinus ?? 0
    const exact = { temperature: '25 ±0 °C', barometer: '101325 ±0 Pa' }
    const data = width(exact)
    // 0.5 % of about 1100 kPa.
    expect(data).toBeGreaterThan(4)
    expect(data).toBeLessThan(8)
    expect(width({ ...exact, barometer: '101325 ±3000 Pa' })).toBeCloseTo(Math.hypot(data, 3), 6)
    expect(width({ ...exact, temperature: '25 ±2 °C' })).toBeGreaterThan(50)
    const { masses } = leak({ startMass: '6 ±0.1 lb', lost: '40 ±5 %', precise: true }).result
    expect(masses?.lost.plusMinus).toBeCloseTo(Math.hypot(0.4 * 0.1, 0.05 * 6), 6)
    expect(masses?.left.plusMinus).toBeCloseTo(Math.hypot(0.6 * 0.1, 0.05 * 6), 6)
  })
})

describe('a conversion', () => {
  const run = (input: Record<string, unknown>) =>
    retrofit.run({ refrigerant: 'R-12', newRefrigerant: 'R-134a', units: 'us', ...input })

  it('is told with the least charge to begin with, as common practice', () => {
    const { headline, figures = [], level } = run({ labelCharge: '3 lb', accumulatorAge: '12 yr' })
    expect(level).toBe('check')
    expect(headline).toMatch(/^R-12 to R-134a is allowed with conditions .*2 lb 6\.4 oz first/u)
    expect(figures.find(({ id }) => id === 'startWith')?.basis).toBe('common practice')
    expect(figures.find(({ id }) => id === 'accumulator')?.text).toBe('12 yr')
  })

  it('without the old charge tells no figure of it, and asks for the label', () => {
    const { headline, figures = [], next } = run({})
    expect(headline).not.toMatch(/ lb| oz/u)
    expect(figures.map(({ id }) => id)).toEqual(['rise'])
    expect(next?.[0]).toMatch(/label/u)
  })

  it('carries the ± of both refrigerants’ data in the high side', () => {
    const at = (input: Record<string, unknown>) =>
      run({ condensingTemperature: '130 ±0 °F', ...input, precise: true }).result.highSide
    // 0.3 % of 195 and 213 psia, independent.
    expect(at({})?.rise.plusMinus).toBeCloseTo(Math.hypot(0.003 * 195.2, 0.003 * 213.4), 1)
    expect(at({ condensingTemperature: '130 ±5 °F' })?.rise.plusMinus).toBeGreaterThan(1.1)
    expect(at({ newRefrigerant: 'R-416A' })?.rise.plusMinus).toBeGreaterThan(3)
    expect(at({})?.before.plusMinus).toBeGreaterThan(0.43)
  })
})
