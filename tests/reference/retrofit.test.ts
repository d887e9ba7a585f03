import { describe, expect, it } from 'vitest'
import { retrofit } from '../../shared/service/retrofit.ts'

const run = (labelCharge: string, condensingTemperature = '130 °F') =>
  retrofit.run({
    refrigerant: 'R-12',
    newRefrigerant: 'R-134a',
    labelCharge,
    condensingTemperature,
    units: 'us',
  }).result

describe('liquid density of R-134a over R-12 at 100 °F', () => {
  it('is 0.915 (CoolProp 8.0.0: 1156.07 and 1263.03 kg/m³)', () => {
    const { charge } = run('3 lb')
    expect(Math.abs((charge?.sameLiquidVolume.densityRatio ?? 0) - 1156.07 / 1263.03)).toBeLessThan(
      1e-4,
    )
  })
})

describe('rise of the high side', () => {
  it('is about 18 psi at 130 °F condensing (R-134a 198.7, R-12 180.5 psig by CoolProp 8.0.0)', () => {
    const { highSide } = run('3 lb')
    expect(highSide?.before.value).toBeCloseTo(180.5, 0)
    expect(highSide?.after.value).toBeCloseTo(198.7, 0)
  })
})
