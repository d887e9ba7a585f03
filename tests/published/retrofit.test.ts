import { describe, expect, it } from 'vitest'
import { retrofit } from '../../shared/service/retrofit.ts'

describe('rise of the high side, R-12 to R-134a', () => {
  const rise = (condensingTemperature: string) =>
    retrofit.run({
      refrigerant: 'R-12',
      newRefrigerant: 'R-134a',
      condensingTemperature,
      units: 'us',
    }).result.highSide?.rise.value ?? Number.NaN

  // Infiniti M30 1991, retrofit: the high side up to 43 psi above R-12 where the ambient is above 59 °F.
  it.each(['110 °F', '130 °F', '150 °F', '165 °F'])('is within the printed 43 psi at %s', (at) => {
    expect(rise(at)).toBeGreaterThan(0)
    expect(rise(at)).toBeLessThan(43)
  })

  // Takeuchi TL150 manual: about 20 psi higher.
  it('is about the printed 20 psi at 130 °F condensing', () => {
    expect(Math.abs(rise('130 °F') - 20)).toBeLessThan(2.5)
  })
})
