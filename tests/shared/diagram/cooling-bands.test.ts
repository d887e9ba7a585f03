import { describe, expect, it } from 'vitest'
import { coolingBands } from '../../../shared/diagram/cooling/of-cooling-check.ts'
import { measureIn } from '../../../shared/diagram/scene/measure.ts'
import { CalcError } from '../../../shared/errors.ts'
import { coolingCheck } from '../../../shared/service/cooling-check.ts'
import {
  all,
  axisOf,
  type Found,
  middleOf,
  parsed,
  partOf,
  pointsOf,
  texts,
} from '../../support/picture.ts'

const READ = {
  refrigerant: 'R-134a',
  ambient: '88 °F',
  returnAir: '80 °F',
  ventTemperature: '52 °F',
  suctionPressure: '30 psig',
  dischargePressure: '205 psig',
  makerVentTo: '50 °F',
  makerHighTo: '240 psig',
}
const of = (input: object) => coolingCheck.compute(coolingCheck.parse(input)).result

describe.each([
  { units: 'us', pressure: 'psig', temperature: '°F' },
  { units: 'si', pressure: 'kPa g', temperature: '°C' },
] as const)(
  'readings over published figures in $units units',
  ({ units, pressure, temperature }) => {
    const picture = parsed(coolingBands.draw({ ...READ, units }, { width: 1280 }))
    const result = of(READ)
    const panel = (number: number) => partOf(picture, `panel-${number}`) as Found
    const scale = (number: number) => {
      const axis = axisOf(panel(number), 'x')
      const measure =
        number === 3 ? measureIn('temperature', temperature) : measureIn('gaugePressure', pressure)
      return (px: number) => measure.si(axis.at(px))
    }
    const near = (found: number, expected: number, number: number) => {
      const at = scale(number)
      expect(Math.abs(found - expected)).toBeLessThan(Math.abs(at(3) - at(0)))
    }

    it('shows each reading where it was read, with its ±', () => {
      for (const [index, side] of (['high', 'low', 'vent'] as const).entries()) {
        const number = index + 1
        const mark = partOf(picture, `reading-${number}`)
        const { reading } = result.bands[side]
        near(scale(number)(middleOf(mark)[0]), reading?.si ?? 0, number)
        const [line] = (mark?.children ?? []).filter(({ name }) => name === 'line')
        const width = reading?.plusMinus ?? 0
        expect(width).toBeGreaterThan(0)
        near(scale(number)(Number(line?.attributes.x1)), (reading?.si ?? 0) - width, number)
        near(scale(number)(Number(line?.attributes.x2)), (reading?.si ?? 0) + width, number)
      }
    })

    it('shows the air that goes in beside the vent', () => {
      const points = pointsOf(partOf(picture, 'return-air-3'))
      near(scale(3)(points[0]?.[0] ?? 0), measureIn('temperature', '°F').si(80), 3)
      expect(partOf(picture, 'return-air-1')).toBeUndefined()
    })

    it('has a bar for each table that fits, and none for another', () => {
      const fitting = result.tables.filter(({ status }) => status === 'fits')
      for (const [index, side] of (['high', 'low'] as const).entries()) {
        const number = index + 1
        const rows = fitting.flatMap((table) => table[side] ?? [])
        expect(rows.length).toBeGreaterThan(2)
        for (const [order, { from, to }] of rows.entries()) {
          const [bar] = partOf(picture, `table-${number}-${order + 1}`)?.children ?? []
          const left = Number(bar?.attributes.x)
          near(scale(number)(left), from.si, number)
          near(scale(number)(left + Number(bar?.attributes.width)), to.si, number)
        }
        expect(partOf(picture, `table-${number}-${rows.length + 1}`)).toBeUndefined()
      }
    })

    it('opens a figure that is a most to the colder side', () => {
      const row = result.tables.find(({ id }) => id === 'passenger-car-closed')?.vent
      const [bar] = partOf(picture, 'table-3-1')?.children ?? []
      const frame = [...all(panel(3))].find(
        ({ name, attributes }) => name === 'rect' && attributes.fill === 'none',
      )
      expect(bar?.attributes.x).toBe(frame?.attributes.x)
      near(scale(3)(Number(bar?.attributes.x) + Number(bar?.attributes.width)), row?.to.si ?? 0, 3)
      expect(texts(panel(3)).join(' ')).toMatch(/at most 4[57]? ?°F|at most 7.2 °C/u)
    })

    it('draws the maker’s figure as a line', () => {
      const [line] = partOf(panel(3), 'limit-1')?.children ?? []
      near(scale(3)(Number(line?.attributes.x1)), measureIn('temperature', '°F').si(50), 3)
      expect(texts(partOf(panel(1), 'limit-1')).join('')).toMatch(/^maker: at most/u)
      expect(partOf(panel(2), 'limit-1')).toBeUndefined()
    })
  },
)

it('leaves out tables of other machines', () => {
  const other = { ...READ, machine: 'off-road' }
  const fitting = of(other).tables.filter(({ status }) => status === 'fits')
  expect(fitting.length).toBeLessThan(of(READ).tables.length)
  const bars = [...all(parsed(coolingBands.draw(other)))].filter(({ attributes }) =>
    attributes['data-part']?.startsWith('table-1-'),
  )
  expect(bars).toHaveLength(fitting.filter(({ high }) => high).length)
})

it('draws no machine at rest', () => {
  const rest = { refrigerant: 'R-134a', ambient: '80 °F', staticHigh: '86 psig' }
  expect(() => coolingBands.draw(rest)).toThrow(CalcError)
})
