import { describe, expect, it } from 'vitest'
import { pressureEnthalpy } from '../../../shared/diagram/pressure-enthalpy/of-readings.ts'
import { measureIn } from '../../../shared/diagram/scene/measure.ts'
import { resolvePlace } from '../../../shared/instrument/index.ts'
import { quantity } from '../../../shared/quantity/index.ts'
import {
  enthalpy,
  entropy,
  refrigerant,
  saturatedEnthalpy,
  saturationTemperature,
} from '../../../shared/refrigerant/index.ts'
import { readings } from '../../../shared/service/readings.ts'
import { axisOf, middleOf, parsed, partOf, pointsOf, texts } from '../../support/picture.ts'

const EXAMPLE = readings.example
const SYSTEMS = [
  { units: 'us', energy: 'Btu/lb', pressure: 'psia' },
  { units: 'si', energy: 'kJ/kg', pressure: 'kPa abs' },
] as const

/** A picture with what a reader of its axes needs, in SI. */
function read(input: object, units: 'us' | 'si' = 'us', width = 1280) {
  const picture = parsed(pressureEnthalpy.draw({ ...input, units }, { width }))
  const { energy, pressure } = SYSTEMS.find((entry) => entry.units === units) as (typeof SYSTEMS)[0]
  const [x, y] = [axisOf(picture, 'x'), axisOf(picture, 'y')]
  const si = ([px, py]: readonly [number, number]) => ({
    enthalpy: measureIn('specificEnergy', energy).si(x.at(px)),
    pressurePa: measureIn('absolutePressure', pressure).si(y.at(py)),
  })
  const marks = partOf(picture, 'marks-1')?.children ?? []
  const mark = (number: string) => {
    const index = marks.findIndex(({ text }) => text === number)
    return si(middleOf(marks[index - 1]))
  }
  return { picture, x, y, si, mark }
}

const kelvin = (fahrenheit: number) => quantity('temperature', fahrenheit, '°F').si
const air = resolvePlace({ altitude: quantity('altitude', 1200, 'ft') }).barometerPa
const psig = (value: number) => quantity('pressureDifference', value, 'psi').si + air

describe.each(SYSTEMS)('the cycle on the plane in $units units', ({ units, energy, pressure }) => {
  const { x, y, si, mark, picture } = read(EXAMPLE, units)
  const r = refrigerant('R-134a')
  const close = (found: number, expected: number, share: number) =>
    expect(Math.abs(found / expected - 1)).toBeLessThan(share)

  it('has enthalpy to the right in equal steps, pressure upwards in equal ratios, each with its unit', () => {
    expect([x.title, x.kind]).toEqual([`Enthalpy, ${energy}`, 'linear'])
    expect([y.title, y.kind]).toEqual([`Pressure, ${pressure}`, 'log'])
    expect(y.at(100)).toBeGreaterThan(y.at(300))
    expect(x.at(300)).toBeGreaterThan(x.at(100))
  })

  it('stands where the readings put it', () => {
    close(mark('1').pressurePa, psig(32), 0.005)
    close(mark('1').enthalpy, enthalpy(r, kelvin(48), psig(32), 'vapour'), 0.002)
    close(mark('3').pressurePa, psig(185), 0.005)
    close(mark('3').enthalpy, enthalpy(r, kelvin(115), psig(185), 'liquid'), 0.002)
    close(mark('4').pressurePa, psig(32), 0.005)
    close(mark('4').enthalpy, mark('3').enthalpy, 0.0005)
    // Not read: compressed at the entropy of the suction vapour.
    close(mark('2').pressurePa, psig(185), 0.005)
    const at = (temperatureK: number) => enthalpy(r, temperatureK, psig(185), 'vapour')
    let [low, high] = [saturationTemperature(r, psig(185), 'dew') + 1e-3, 400]
    const held = entropy(r, kelvin(48), psig(32), 'vapour')
    for (let step = 0; step < 50; step += 1) {
      const middle = (low + high) / 2
      if (entropy(r, middle, psig(185), 'vapour') < held) low = middle
      else high = middle
    }
    close(mark('2').enthalpy, at(low), 0.002)
  })

  it('draws the bubble line left and the dew line right, by the property core', () => {
    for (const [line, phase] of [
      ['bubble', 'liquid'],
      ['dew', 'vapour'],
    ] as const) {
      const points = pointsOf(partOf(picture, line)).map(si)
      expect(points.length).toBeGreaterThan(40)
      for (const { pressurePa, enthalpy: found } of points) {
        if (pressurePa > 0.97 * r.criticalPressurePa || pressurePa < r.bubble.fromPa) continue
        const temperatureK = saturationTemperature(r, pressurePa, line)
        close(found, saturatedEnthalpy(r, temperatureK, phase), 0.004)
      }
    }
  })

  it('writes at every isotherm the temperature at which that pressure boils', () => {
    const labels = partOf(picture, 'isotherm-labels')?.children ?? []
    expect(labels.length).toBeGreaterThan(5)
    for (const { text, attributes } of labels) {
      const [, value = '', unit = ''] = /^(-?\d+) (°[FC])$/u.exec(text) ?? []
      const temperatureK = measureIn('temperature', unit).si(Number(value))
      expect(unit).toBe(units === 'us' ? '°F' : '°C')
      if (temperatureK > r.maximumTemperatureK) continue
      const { pressurePa } = si([Number(attributes.x), Number(attributes.y) - 4])
      expect(Math.abs(saturationTemperature(r, pressurePa, 'dew') - temperatureK)).toBeLessThan(0.6)
    }
  })

  it('says in words what it shows', () => {
    const says = picture.children[1]?.text ?? ''
    expect(says).toContain('R-134a: pressure and enthalpy.')
    expect(says).toContain(units === 'us' ? '32 ±1 psig' : 'kPa g')
    expect(says).toContain('temperature not read')
    expect(texts(partOf(picture, 'key')).join(' ')).toContain('drawn, not computed')
  })
})

describe('what is known of a cycle', () => {
  const dashes = (input: object) => {
    const { picture } = read(input)
    return (partOf(picture, 'cycle-1')?.children ?? []).map(
      ({ attributes }) => attributes['stroke-dasharray'] !== undefined,
    )
  }

  it('is a whole line where it was read and a broken one where it was assumed', () => {
    // discharge, condenser, valve, evaporator
    expect(dashes(EXAMPLE)).toEqual([true, true, false, false])
    const all = { ...EXAMPLE, dischargeTemperature: '160 °F' }
    expect(dashes(all)).toEqual([false, false, false, false])
    const without = Object.fromEntries(
      Object.entries(all).filter(([name]) => name !== 'suctionTemperature'),
    )
    expect(dashes(without)).toEqual([false, false, false, true])
  })

  it('is put on the line where no temperature was read, the right line of a blend', () => {
    const input = { refrigerant: 'R-407C', suctionPressure: '60 psig', liquidPressure: '250 psig' }
    const { mark } = read(input)
    const r = refrigerant('R-407C')
    const sea = resolvePlace({}).barometerPa
    const at = (value: number) => quantity('pressureDifference', value, 'psi').si + sea
    const on = (value: number, line: 'bubble' | 'dew', phase: 'liquid' | 'vapour') =>
      saturatedEnthalpy(r, saturationTemperature(r, at(value), line), phase)
    expect(mark('1').enthalpy / on(60, 'dew', 'vapour')).toBeCloseTo(1, 3)
    expect(mark('3').enthalpy / on(250, 'bubble', 'liquid')).toBeCloseTo(1, 3)
  })

  it('is a discharge where it was read', () => {
    const { mark } = read({
      ...EXAMPLE,
      dischargePressure: '195 psig',
      dischargeTemperature: '165 °F',
    })
    const r = refrigerant('R-134a')
    expect(mark('2').pressurePa / psig(195)).toBeCloseTo(1, 2)
    expect(mark('2').enthalpy / enthalpy(r, kelvin(165), psig(195), 'vapour')).toBeCloseTo(1, 2.5)
  })

  it('is one level line for a machine at rest', () => {
    const { picture, si } = read({
      refrigerant: 'R-134a',
      suctionPressure: '70 psig',
      dischargePressure: '70 psig',
      ambient: '70 °F',
    })
    const [from, to] = pointsOf(partOf(picture, 'cycle-1')).map(si)
    expect(from?.pressurePa).toBeCloseTo(to?.pressurePa ?? 0, 0)
    expect(partOf(picture, 'marks-1')?.children).toEqual([])
  })

  it('stands above the critical point where it runs there', () => {
    const { mark } = read({
      refrigerant: 'R-744',
      suctionPressure: '500 psig',
      suctionTemperature: '50 °F',
      dischargePressure: '1450 psig',
      liquidTemperature: '100 °F',
    })
    const r = refrigerant('R-744')
    expect(mark('3').pressurePa).toBeGreaterThan(r.criticalPressurePa)
    const pressurePa = quantity('pressureDifference', 1450, 'psi').si + resolvePlace({}).barometerPa
    expect(mark('3').enthalpy / enthalpy(r, kelvin(100), pressurePa, 'vapour')).toBeCloseTo(1, 2)
  })
})
