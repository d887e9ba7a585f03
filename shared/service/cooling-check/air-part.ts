import * as z from 'zod'
import { under } from '../../errors.ts'
import { ZERO_CELSIUS_K } from '../../gas-constants.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import { cooledAir, type MoistAir, moistAir } from '../../physics/moist-air.ts'
import {
  compareWithBand,
  fraction,
  type Ingredient,
  propagate,
  type Quantity,
  quantityOut,
  specificEnergy,
  temperature,
  temperatureDifference,
} from '../../quantity/index.ts'
import { coolingFacts, coolingSource } from './tables.ts'

export const airOut = z
  .strictObject({
    drop: quantityOut.optional().describe('Air into the evaporator less air out of the vent'),
    wetBulbIn: quantityOut.optional(),
    dewPointIn: quantityOut.optional().describe('Below this the coil takes water out of the air'),
    coil: z
      .enum(['wet', 'dry', 'cannot-tell'])
      .optional()
      .describe('Whether water should drip from the drain'),
    dewPointVent: quantityOut
      .optional()
      .describe('Surfaces colder than this gather dew from the vent air'),
    humidityVent: quantityOut
      .optional()
      .describe('Relative humidity of the vent air, saturated at most'),
    heatTaken: quantityOut.optional().describe('Heat taken from each mass of dry air'),
    latentShare: quantityOut.optional().describe('Share of it that dries instead of cooling'),
  })
  .describe('Air side, by psychrometrics')

export type AirResult = Computed<z.output<typeof airOut>>

interface AirInput {
  readonly returnAir: Quantity<'temperature'>
  readonly vent?: Quantity<'temperature'> | undefined
  readonly relativeHumidity?: Quantity<'fraction'> | undefined
}

/** Drop, dew points and whether the coil is wet; undefined without vent and humidity. */
export function airPart(
  { returnAir, vent, relativeHumidity }: AirInput,
  barometer: Ingredient,
  notes: Notes,
): AirResult | undefined {
  if (!vent && !relativeHumidity) return undefined
  const drop =
    vent &&
    temperatureDifference(
      returnAir.si - vent.si,
      Math.hypot(returnAir.plusMinus ?? 0, vent.plusMinus ?? 0),
    )
  if (drop && drop.si + (drop.plusMinus ?? 0) < 0) {
    notes.warnings.push({
      code: 'vent-warmer-than-inlet',
      message: coolingFacts.warnings['vent-warmer-than-inlet'],
    })
  }
  if (!relativeHumidity) return { drop }
  notes.sources.push(coolingSource('ashrae-psychrometrics'))
  const barometerPa = barometer.si
  const inlet = under('relativeHumidity', () =>
    moistAir(returnAir.si, relativeHumidity.si, barometerPa),
  )
  const spread = (f: (air: MoistAir, pa: number) => number) =>
    under('relativeHumidity', () =>
      propagate([returnAir, relativeHumidity, barometer], (t, rh, pa) =>
        f(moistAir(t, Math.min(rh, 1), pa), pa),
      ),
    )
  const dewPoint = spread(({ dewPointK }) => dewPointK)
  const wetBulb = spread(({ wetBulbK }) => wetBulbK)
  const dewPointIn = temperature(dewPoint.si, dewPoint.plusMinus)
  notes.steps.push({
    what: 'Dew point of the air going in',
    formula: 'ASHRAE psychrometrics from temperature, relative humidity and barometer',
    values: { returnAir, relativeHumidity },
    gives: dewPointIn,
  })
  const known = { drop, wetBulbIn: temperature(wetBulb.si, wetBulb.plusMinus), dewPointIn }
  if (!vent || vent.si >= returnAir.si) return known
  const outlet = under('ventTemperature', () => cooledAir(inlet, vent.si, barometerPa))
  const heat = inlet.enthalpy - outlet.enthalpy
  const heatBand = under('ventTemperature', () =>
    propagate([returnAir, relativeHumidity, barometer, vent], (t, rh, pa, out) => {
      const air = moistAir(t, Math.min(rh, 1), pa)
      return air.enthalpy - cooledAir(air, Math.min(out, t), pa).enthalpy
    }),
  )
  const heatTaken = specificEnergy(heat, heatBand.plusMinus)
  const dried = inlet.enthalpy - driedEnthalpy(inlet, outlet.humidityRatio)
  notes.steps.push({
    what: 'Heat taken from the air',
    formula:
      'enthalpy in − enthalpy out for each mass of dry air; the air keeps its water until it is saturated, then loses the rest',
    values: { returnAir, vent },
    gives: heatTaken,
  })
  return {
    ...known,
    coil: coilOf(vent, dewPointIn),
    dewPointVent: temperature(outlet.dewPointK),
    humidityVent: fraction(outlet.relativeHumidity),
    heatTaken,
    latentShare: fraction(heat > 0 ? Math.min(Math.max(dried / heat, 0), 1) : 0),
  }
}

/**
 * Enthalpy of the air at its own temperature once water was taken out of it, J a kg dry air.
 * ASHRAE Fundamentals 2017, chapter 1, equation 30: the water's part.
 */
function driedEnthalpy({ dryBulbK, humidityRatio, enthalpy }: MoistAir, left: number): number {
  return enthalpy - (humidityRatio - left) * (2_501_000 + 1_860 * (dryBulbK - ZERO_CELSIUS_K))
}

function coilOf(vent: Quantity<'temperature'>, dewPoint: Quantity<'temperature'>) {
  const found = compareWithBand(
    {
      si: vent.si - dewPoint.si,
      plusMinus: Math.hypot(vent.plusMinus ?? 0, dewPoint.plusMinus ?? 0),
    },
    Number.NEGATIVE_INFINITY,
    0,
  )
  return found === 'inside'
    ? ('wet' as const)
    : found === 'above'
      ? ('dry' as const)
      : ('cannot-tell' as const)
}
