import { describe, expect, it } from 'vitest'
import { superheatSubcooling } from '../../../shared/diagram/saturation-curve/of-readings.ts'
import { saturationCurve } from '../../../shared/diagram/saturation-curve/of-saturation.ts'
import { measureIn } from '../../../shared/diagram/scene/measure.ts'
import { resolvePlace } from '../../../shared/instrument/index.ts'
import {
  refrigerant,
  saturationPressure,
  saturationTemperature,
} from '../../../shared/refrigerant/index.ts'
import { readings } from '../../../shared/service/readings.ts'
import { axisOf, type Found, parsed, partOf, pointsOf, texts } from '../../support/picture.ts'

const SYSTEMS = [
  { units: 'us', degree: '°F', gauge: 'psig' },
  { units: 'si', degree: '°C', gauge: 'kPa g' },
] as const

function scales(picture: Found, { degree, gauge }: { degree: string; gauge: string }) {
  const [x, y] = [axisOf(picture, 'x'), axisOf(picture, 'y')]
  expect(x.title).toBe(`Temperature, ${degree}`)
  expect(y.title).toBe(`Pressure at the gauge, ${gauge}`)
  expect([x.kind, y.kind]).toEqual(['linear', 'linear'])
  return {
    kelvin: (px: number) => measureIn('temperature', degree).si(x.at(px)),
    gaugePa: (py: number) => measureIn('gaugePressure', gauge).si(y.at(py)),
  }
}

describe.each(SYSTEMS)('readings beside saturation in $units units', ({ units, degree, gauge }) => {
  const input = {
    refrigerant: 'R-407C',
    suctionPressure: '62 psig',
    suctionTemperature: '52 °F',
    liquidPressure: '250 psig',
    liquidTemperature: '95 °F',
    altitude: '1200 ft',
    units,
  }
  const picture = parsed(superheatSubcooling.draw(input, { width: 1280 }))
  const { kelvin, gaugePa } = scales(picture, { degree, gauge })
  const r = refrigerant('R-407C')
  const air = resolvePlace(readings.parse(input)).barometerPa

  it.each(['bubble', 'dew'] as const)('draws the %s line where the refrigerant has it', (line) => {
    const points = pointsOf(partOf(picture, line))
    expect(points.length).toBeGreaterThan(30)
    for (const [px, py] of points) {
      const pressure = saturationPressure(r, kelvin(px), line) - air
      expect(Math.abs(gaugePa(py) - pressure)).toBeLessThan(6e3)
    }
  })

  it('counts superheat from the dew line and subcooling from the bubble line', () => {
    const computed = readings.compute(readings.parse(input)).result
    for (const [line, figure, pa] of [
      ['dew', computed.superheat, 62],
      ['bubble', computed.subcooling, 250],
    ] as const) {
      const length = partOf(picture, `distance-${line}`)?.children[0]?.attributes ?? {}
      const [from, to] = [kelvin(Number(length.x1)), kelvin(Number(length.x2))]
      const absolutePa = measureIn('gaugePressure', 'psig').si(pa) + air
      expect(Math.abs(from - saturationTemperature(r, absolutePa, line))).toBeLessThan(0.15)
      expect(Math.abs(Math.abs(to - from) - (figure?.si ?? 0))).toBeLessThan(0.2)
      expect(gaugePa(Number(length.y1)) / (absolutePa - air)).toBeCloseTo(1, 2)
    }
    // Vapour is hotter than its line, liquid colder.
    const [dew, bubble] = ['dew', 'bubble'].map((line) => {
      const { x1, x2 } = partOf(picture, `distance-${line}`)?.children[0]?.attributes ?? {}
      return Number(x2) - Number(x1)
    })
    expect(dew).toBeGreaterThan(0)
    expect(bubble).toBeLessThan(0)
  })

  it('says both figures', () => {
    const words = texts(partOf(picture, 'distances')).join(' ')
    expect(words).toMatch(/superheat \d/u)
    expect(words).toMatch(/subcooling \d/u)
    expect(words).toContain(units === 'us' ? '°F' : 'K')
  })
})

describe('one point of saturation', () => {
  const draw = (input: object) => parsed(saturationCurve.draw(input, { width: 720 }))

  it('is one line of a pure refrigerant and two of a blend', () => {
    const pure = draw({ refrigerant: 'R-134a', pressure: '32 psig' })
    expect(partOf(pure, 'saturation')).toBeDefined()
    expect(partOf(pure, 'bubble')).toBeUndefined()
    const blend = draw({ refrigerant: 'R-407C', pressure: '70 psig' })
    expect(partOf(blend, 'dew')).toBeDefined()
    expect(texts(partOf(blend, 'points'))).toEqual(['1', '2'])
    expect(texts(partOf(blend, 'key')).join(' ')).toMatch(/bubble: .*dew: /u)
  })

  it('lies on its line: of a temperature, at the pressure there', () => {
    const picture = draw({ refrigerant: 'R-407C', temperature: '5 °C', units: 'si' })
    const { kelvin, gaugePa } = scales(picture, { degree: '°C', gauge: 'kPa g' })
    const circles = (partOf(picture, 'points')?.children ?? []).filter((e) => e.name === 'circle')
    const r = refrigerant('R-407C')
    const found = circles.map(({ attributes }) => ({
      k: kelvin(Number(attributes.cx)),
      pa: gaugePa(Number(attributes.cy)),
    }))
    expect(found).toHaveLength(2)
    for (const [index, line] of (['bubble', 'dew'] as const).entries()) {
      expect(found[index]?.k).toBeCloseTo(278.15, 0)
      const expected = saturationPressure(r, 278.15, line) - 101_325
      expect(Math.abs((found[index]?.pa ?? 0) - expected)).toBeLessThan(3e3)
    }
  })

  it('has an absolute axis for an absolute pressure, and a zone of vacuum below the air’s', () => {
    const absolute = draw({ refrigerant: 'R-134a', pressure: '50 psia' })
    expect(axisOf(absolute, 'y').title).toBe('Pressure, psia')
    const cold = draw({ refrigerant: 'R-134a', temperature: '-30 °F' })
    expect(partOf(cold, 'vacuum')).toBeDefined()
    expect(axisOf(cold, 'y').title).toBe('Pressure at the gauge, psig')
    expect(partOf(draw({ refrigerant: 'R-134a', pressure: '80 psig' }), 'vacuum')).toBeUndefined()
  })
})
