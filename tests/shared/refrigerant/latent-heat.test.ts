import { describe, expect, it } from 'vitest'
import {
  latentHeat,
  latentHeatBetween,
  refrigerant,
  refrigerants,
  saturatedDensity,
  saturatedEnthalpy,
  saturationTemperature,
} from '../../../shared/refrigerant/index.ts'
import { substanceData } from '../../../shared/substance/library.ts'
import { saturation } from '../../../shared/substance/saturation.ts'
import { stateAt } from '../../../shared/substance/state.ts'
import { AGREEMENT } from '../../support/agreement.ts'

const PURE = refrigerants().filter(({ composition }) => composition.length === 1)

/** Latent heat of a pure refrigerant by the solver, without any curve. */
function solvedHeat(id: string, temperatureK: number) {
  const r = refrigerant(id)
  const { pressurePa, liquid, vapour } = saturation(r.model(), substanceData(id), temperatureK)
  const enthalpy = (rho: number) => stateAt(r.model(), temperatureK, rho).enthalpy / r.molarMass
  return { pressurePa, heat: enthalpy(vapour) - enthalpy(liquid) }
}

describe.each(PURE.map(({ id }) => id))('latent heat of %s', (id) => {
  const r = refrigerant(id)
  it.each(AGREEMENT.latentHeat)(
    'at %d of the critical temperature is within %d of the solver',
    (fraction, near) => {
      const kelvin = Math.min(fraction * r.criticalTemperatureK, r.bubble.toK)
      const { pressurePa, heat } = solvedHeat(id, kelvin)
      const found = latentHeat(r, Math.min(pressurePa, r.bubble.toPa))
      expect(Math.abs(found / heat - 1)).toBeLessThan(near)
    },
  )

  it('is answered at both ends of the curves', () => {
    expect(latentHeat(r, r.bubble.toPa)).toBeGreaterThan(0)
    expect(latentHeat(r, r.bubble.fromPa)).toBeGreaterThan(latentHeat(r, r.bubble.toPa))
  })
})

describe.each(['R-134a', 'R-744', 'R-407C', 'R-454B'])('enthalpies of %s', (id) => {
  const r = refrigerant(id)
  it.each([3e5, 1e6, 2e6])(
    'at %d Pa differ by the latent heat, between each its own temperature',
    (pa) => {
      if (pa < r.bubble.fromPa) return
      const boils = saturationTemperature(r, pa, 'bubble')
      const dry = saturationTemperature(r, pa, 'dew')
      const heat = saturatedEnthalpy(r, dry, 'vapour') - saturatedEnthalpy(r, boils, 'liquid')
      expect(latentHeat(r, pa)).toBe(heat)
      expect(latentHeatBetween(r, boils, dry)).toBe(heat)
      const density = saturatedDensity(r, dry, 'vapour') / r.molarMass
      const { enthalpy } = stateAt(r.model(), dry, density)
      expect(saturatedEnthalpy(r, dry, 'vapour')).toBe(enthalpy / r.molarMass + r.raise.enthalpy)
    },
  )
})
