import { describe, expect, it } from 'vitest'
import { retrofit } from '../../shared/service/retrofit.ts'
import { apart, referencePoint } from '../support/reference-point.ts'

const ATMOSPHERE = 101_325
const PSI = 6894.757293168

describe('R-12 to R-134a against CoolProp 8.0.0', () => {
  const { charge, highSide } = retrofit.run({
    refrigerant: 'R-12',
    newRefrigerant: 'R-134a',
    labelCharge: '3 lb',
    condensingTemperature: '130 °F',
    units: 'us',
    precise: true,
  }).result

  it('has the ratio of liquid densities at 100 °F', () => {
    const reference =
      referencePoint('R-134a', 100).liquidKgPerM3 / referencePoint('R-12', 100).liquidKgPerM3
    // Shown to four decimals.
    expect(charge?.sameLiquidVolume.densityRatio).toBeCloseTo(reference, 4)
  })

  it('has the high sides at 130 °F condensing, before and after', () => {
    const psig = (name: string) => (referencePoint(name, 130).dewPa - ATMOSPHERE) / PSI
    expect(apart(highSide?.before.value, psig('R-12'))).toBeLessThan(1e-5)
    expect(apart(highSide?.after.value, psig('R-134a'))).toBeLessThan(1e-5)
    expect(highSide?.rise.value).toBeCloseTo(psig('R-134a') - psig('R-12'), 2)
  })
})
