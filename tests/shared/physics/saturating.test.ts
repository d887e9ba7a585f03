import { describe, expect, it } from 'vitest'
import { REFRIGERANT_DATA, saturatedAt, saturating } from '../../../shared/physics/saturating.ts'
import { absolutePressure, gaugePressure } from '../../../shared/quantity/index.ts'
import {
  propertyUncertainty,
  refrigerant,
  saturationTemperature,
} from '../../../shared/refrigerant/index.ts'

const AIR = { name: 'barometer', si: 101_325, plusMinus: 3_000 }
const r = refrigerant('R-409A')

describe('the saturation temperature of a reading', () => {
  it('is that of the absolute pressure, on the line that was asked', () => {
    for (const line of ['bubble', 'dew'] as const) {
      const { si } = saturatedAt(r, gaugePressure(4e5), AIR, line)
      expect(si).toBeCloseTo(saturationTemperature(r, 501_325, line), 9)
    }
    const mean = saturatedAt(r, absolutePressure(5e5), AIR, 'mean').si
    const [bubble, dew] = (['bubble', 'dew'] as const).map((line) =>
      saturationTemperature(r, 5e5, line),
    ) as [number, number]
    expect(mean).toBeCloseTo((bubble + dew) / 2, 9)
  })

  it('rests on the reading, the barometer and the refrigerant’s data', () => {
    const { plusMinus, parts } = saturatedAt(r, gaugePressure(4e5, 7_000), AIR, 'dew', 'low side')
    expect(new Set(parts.map(({ name }) => name))).toEqual(
      new Set(['low side', 'barometer', REFRIGERANT_DATA]),
    )
    expect(plusMinus).toBeCloseTo(Math.hypot(...parts.map((part) => part.plusMinus)), 12)
    const at = (pa: number) => saturationTemperature(r, pa, 'dew')
    const part = (name: string) => parts.find((one) => one.name === name)?.plusMinus
    expect(part('low side')).toBeCloseTo((at(508_325) - at(494_325)) / 2, 6)
    expect(part('barometer')).toBeCloseTo((at(504_325) - at(498_325)) / 2, 6)
    expect(part(REFRIGERANT_DATA)).toBeCloseTo(
      propertyUncertainty(r, at(501_325), 'dew').temperatureK,
      6,
    )
  })

  it('of an absolute reading knows no barometer', () => {
    const { parts } = saturatedAt(r, absolutePressure(5e5, 7_000), AIR, 'dew')
    expect(parts.find(({ name }) => name === 'barometer')?.plusMinus).toBe(0)
  })

  it('between the lines is known no better than on the worse of them', () => {
    const data = (line: 'bubble' | 'dew' | 'mean') =>
      saturating(refrigerant('R-407C'), absolutePressure(5e5), AIR, line).ingredients.find(
        ({ name }) => name === REFRIGERANT_DATA,
      )?.plusMinus ?? 0
    expect(data('mean')).toBeGreaterThan(0.1)
    expect(data('bubble')).not.toBeCloseTo(data('dew'), 3)
    expect(data('mean')).toBeCloseTo(Math.max(data('bubble'), data('dew')), 2)
    expect(data('mean')).toBeGreaterThan(Math.min(data('bubble'), data('dew')) * 1.005)
  })

  it('looks each point up once, and many points anew', () => {
    let asked = 0
    const dew = {
      ...r.dew,
      temperature: (pa: number) => {
        asked += 1
        return r.dew.temperature(pa)
      },
    }
    const { temperatureK } = saturating({ ...r, dew }, gaugePressure(4e5, 7_000), AIR, 'dew')
    const points = [0, 1, 2, 3].map((n) => 4e5 + 1_000 * n)
    const once = points.map((pa) => temperatureK(pa, AIR.si, 0))
    const before = asked
    expect(points.map((pa) => temperatureK(pa, AIR.si, 0))).toEqual(once)
    // an error of the data is added, and no point of its own
    expect(temperatureK(4e5, AIR.si, 0.5)).toBeCloseTo((once[0] ?? Number.NaN) + 0.5, 9)
    expect(asked).toBe(before)
    // a reading under another barometer is the point of its absolute pressure
    expect(temperatureK(4e5, AIR.si + 1_000, 0)).toBe(once[1])
    expect(asked).toBe(before)
    const between = saturationTemperature(r, 4e5 + AIR.si + 500, 'dew')
    expect(temperatureK(4e5, AIR.si + 500, 0)).toBe(between)
    expect(asked).toBe(before + 1)
    for (let n = 10; n < 40; n += 1) {
      const pa = 4e5 + 1_000 * n
      expect(temperatureK(pa, AIR.si, 0)).toBe(saturationTemperature(r, pa + AIR.si, 'dew'))
    }
  })
})
