import { describe, expect, it } from 'vitest'
import { gaugeFor } from '../../../shared/instrument/instrument.ts'
import { resolvePlace } from '../../../shared/instrument/place.ts'
import { GAUGE_STEP_PA, SCALE_STEP_KG } from '../../../shared/instrument/shown-steps.ts'
import { absolutePressure, gaugePressure, quantity } from '../../../shared/quantity/index.ts'
import { refusalOf } from '../../support/refusal.ts'

describe('the gauge that a reading tells', () => {
  it('is a vacuum gauge below 5 kPa absolute, and none at it', () => {
    expect(gaugeFor(absolutePressure(4_999.9))).toBe('micron-gauge')
    expect(gaugeFor(absolutePressure(5_000))).toBe('low-side-gauge')
    // A deep vacuum on a compound gauge is still read on that gauge.
    expect(gaugeFor(gaugePressure(-99_000))).toBe('low-side-gauge')
  })

  it('is the low-side one up to 250 psi', () => {
    expect(gaugeFor(quantity('gaugePressure', 249.99, 'psig'))).toBe('low-side-gauge')
    expect(gaugeFor(quantity('gaugePressure', 250.01, 'psig'))).toBe('high-side-gauge')
  })
})

describe('the place', () => {
  const at = (pascals: number) =>
    resolvePlace({ barometer: quantity('barometricPressure', pascals, 'Pa') }).barometerPa

  it.each([22_600, 115_000])(
    'is answered at %d Pa, and refused a tenth of a pascal beyond',
    (edge) => {
      expect(at(edge)).toBe(edge)
      const beyond = edge < 100_000 ? edge - 0.1 : edge + 0.1
      expect(refusalOf(() => at(beyond))).toMatchObject({
        code: 'out-of-range',
        path: ['barometer'],
      })
    },
  )
})

describe('the smallest steps that a shop reads', () => {
  // Common practice, written again: no text was read for it.
  it('are 2 g on a charging scale and 1 psi on a gauge', () => {
    expect(SCALE_STEP_KG).toBe(quantity('mass', 2, 'g').si)
    expect(GAUGE_STEP_PA).toBeCloseTo(quantity('pressureDifference', 1, 'psi').si, 3)
  })
})
