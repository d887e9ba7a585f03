import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { resolvePlace } from '../../../shared/instrument/index.ts'
import { absolutePressure, gaugePressure, quantity } from '../../../shared/quantity/index.ts'
import { refusalOf } from '../../support/refusal.ts'

/** 90 kPa ±400 Pa. */
const place = resolvePlace({ barometer: quantity('barometricPressure', 900, 'hPa', 4) })

describe('a gauge reading as an absolute pressure', () => {
  it('is the barometer higher, with both uncertainties in quadrature', () => {
    const found = place.absolute(gaugePressure(200_000, 300))
    expect(found.kind).toBe('absolutePressure')
    expect(found.si).toBeCloseTo(290_000, 6)
    expect(found.plusMinus).toBeCloseTo(500, 6)
  })

  it('is known no better than the barometer', () => {
    expect(place.absolute(gaugePressure(200_000)).plusMinus).toBeCloseTo(400, 6)
    expect(place.absolute(gaugePressure(200_000, 0)).plusMinus).toBeCloseTo(400, 6)
  })

  it('cannot lie at or below a perfect vacuum', () => {
    expect(refusalOf(() => place.absolute(gaugePressure(-90_000))).code).toBe('out-of-range')
    expect(place.absolute(gaugePressure(-89_999)).si).toBeCloseTo(1, 6)
  })
})

describe('an absolute reading', () => {
  it('stays as it is: no barometer is in it', () => {
    const reading = quantity('absolutePressure', 500, 'micron', 20).in('micron')
    const found = place.absolute(reading)
    expect(found.si).toBe(reading.si)
    expect(found.plusMinus).toBe(reading.plusMinus)
    expect(found.shownIn).toBe('micron')
    expect(place.absolute(absolutePressure(3e5)).plusMinus).toBeUndefined()
  })
})

describe('what a gauge shows of an absolute pressure', () => {
  it('is the barometer lower, with its uncertainty and that of the pressure', () => {
    const shown = place.gauge(290_000, 300)
    expect(shown.kind).toBe('gaugePressure')
    expect(shown.si).toBeCloseTo(200_000, 6)
    expect(shown.plusMinus).toBeCloseTo(500, 6)
    expect(place.gauge(290_000).plusMinus).toBeCloseTo(400, 6)
    expect(place.gauge(10_000).si).toBeCloseTo(-80_000, 6)
  })

  it('turns back what was turned, at any place', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -900, max: 5_000, noNaN: true }),
        fc.double({ min: -4e4, max: 4e6, noNaN: true }),
        (metres, pascals) => {
          const there = resolvePlace({ altitude: quantity('altitude', metres, 'm') })
          const absolute = there.absolute(gaugePressure(pascals, 0))
          expect(there.gauge(absolute.si).si).toBeCloseTo(pascals, 6)
          expect(absolute.plusMinus).toBe(there.plusMinusPa)
        },
      ),
    )
  })

  it('is lower at the sea than in the mountains', () => {
    const [sea, high] = [0, 3_000].map((metres) =>
      resolvePlace({ altitude: quantity('altitude', metres, 'm') }).gauge(300_000),
    )
    expect(high?.si).toBeGreaterThan(sea?.si ?? Number.POSITIVE_INFINITY)
  })
})
