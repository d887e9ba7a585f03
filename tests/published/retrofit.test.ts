import { describe, expect, it } from 'vitest'
import { retrofit } from '../../shared/service/retrofit.ts'

const run = (condensingTemperature: string) =>
  retrofit.run({
    refrigerant: 'R-12',
    newRefrigerant: 'R-134a',
    labelCharge: '3 lb',
    condensingTemperature,
    units: 'us',
  }).result

describe('rise of the high side', () => {
  it('lies between nothing and the 43 psi that one service text allows in the heat', () => {
    for (const at of ['110 °F', '130 °F', '150 °F', '165 °F']) {
      const rise = run(at).highSide?.rise.value ?? Number.NaN
      expect(rise).toBeGreaterThan(5)
      expect(rise).toBeLessThan(43)
    }
  })
})
