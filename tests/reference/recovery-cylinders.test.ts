import { describe, expect, it } from 'vitest'
import data from '../../data/service/recovery.json' with { type: 'json' }
import { refrigerant } from '../../shared/refrigerant/index.ts'
import { liquidFullTemperature, specificGravity } from '../../shared/service/recovery/cylinder.ts'
import { pressureClass } from '../../shared/service/recovery/evacuation-level.ts'
import { apart, referencePoint } from '../support/reference-point.ts'
import golden from './golden/service.json' with { type: 'json' }

const PSI = 6894.757293168
/** Water at 60 °F and one atmosphere, kg/m³ (IAPWS-95, as CoolProp 8.0.0 gives it). */
const WATER = 999.016
const NAMES = Object.keys(golden.refrigerants)

describe.each(NAMES)('%s in a recovery cylinder, against CoolProp 8.0.0', (name) => {
  it('has the liquid density at 77 °F by which cylinders are filled', () => {
    const reference = referencePoint(name, 77).liquidKgPerM3
    expect(apart(specificGravity(refrigerant(name)) * WATER, reference)).toBeLessThan(2e-6)
  })

  it('has the bubble pressure at 104 °F by which appliances are classed, and its class', () => {
    const { bubblePa } = referencePoint(name, 104)
    const found = pressureClass(refrigerant(name))
    expect(apart(found.pressurePa, bubblePa)).toBeLessThan(1e-5)
    const limit = data.pressureClasses.upTo.find(({ psia }) => bubblePa < psia * PSI)
    expect(found.class).toBe(limit?.class ?? data.pressureClasses.above)
    expect(found.or).toBeUndefined()
  })
})

it('R-744 is past its critical temperature at 104 °F: very high pressure, without a figure', () => {
  expect(pressureClass(refrigerant('R-744'))).toEqual({
    class: 'very-high-pressure',
    or: undefined,
    pressurePa: undefined,
  })
})

describe('an R-134a cylinder that warms until liquid fills it, against CoolProp 8.0.0', () => {
  it.each(golden.liquidFull.rows as [number, number][])(
    'filled to %d of full at 77 °F: liquid-full at %d K',
    (share, kelvin) => {
      const r = refrigerant('R-134a')
      const found = liquidFullTemperature(r, share * specificGravity(r), 1)
      expect(Math.abs((found ?? Number.NaN) - kelvin)).toBeLessThan(1e-3)
    },
  )
})
