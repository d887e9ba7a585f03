import data from '../../../data/service/air-check.json' with { type: 'json' }
import { quantity, SEA_LEVEL_PA, type Uncertain } from '../../quantity/index.ts'
import { type Refrigerant, saturationPressure } from '../../refrigerant/index.ts'
import { printedPa } from '../printed-gauge.ts'

/**
 * Highest container pressure that a published check allows, Pa absolute.
 *
 * `atLeastPa` and `atMostPa` bound it where the temperature lies between cells or is uncertain; they are
 * equal where it is known. A missing end means that no cell bounds it there.
 */
export interface AirLimit {
  readonly basis: 'published-cells' | 'saturation-plus-5-psi'
  readonly atLeastPa: number | undefined
  readonly atMostPa: number | undefined
}

const PSI_PA = quantity('pressureDifference', 1, 'psi').si
/** The table goes by whole degrees: a temperature this near to one, °F, is read on its line. */
const SAME_F = 0.25
/** Guards the dropped fraction of a psi against rounding of the conversion. */
const SAME_PSI = 1e-9

const toFahrenheit = (kelvin: number) => kelvin * 1.8 - 459.67
const atSeaLevel = (psig: number) => printedPa(psig * PSI_PA)

/** The limit for this refrigerant; undefined where none was published or can be computed by a published method. */
export function airLimit(r: Refrigerant, temperatureK: Uncertain): AirLimit | undefined {
  const width = temperatureK.plusMinus ?? 0
  if (r.info.id === 'R-12') {
    return publishedLimit(
      toFahrenheit(temperatureK.si - width),
      toFahrenheit(temperatureK.si + width),
    )
  }
  if (r.info.id !== 'R-134a') return undefined
  return {
    basis: 'saturation-plus-5-psi',
    atLeastPa: marginLimit(r, temperatureK.si - width),
    atMostPa: marginLimit(r, temperatureK.si + width),
  }
}

function publishedLimit(fromF: number, toF: number): AirLimit {
  const cells = data.r12Limits.cells.map(([, , fahrenheit, psig]) => ({
    fahrenheit: fahrenheit ?? Number.NaN,
    psig: psig ?? Number.NaN,
  }))
  const below = cells.findLast((cell) => cell.fahrenheit <= fromF + SAME_F)
  const above = cells.find((cell) => cell.fahrenheit >= toF - SAME_F)
  return {
    basis: 'published-cells',
    atLeastPa: below && atSeaLevel(below.psig),
    atMostPa: above && atSeaLevel(above.psig),
  }
}

function marginLimit(r: Refrigerant, temperatureK: number): number {
  const psig = (saturationPressure(r, temperatureK, 'bubble') - SEA_LEVEL_PA) / PSI_PA
  return atSeaLevel(Math.floor(psig + data.r134aMargin.value + SAME_PSI))
}
