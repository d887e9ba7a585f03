import data from '../../../data/service/recovery.json' with { type: 'json' }
import { CalcError } from '../../errors.ts'
import { quantity } from '../../quantity/index.ts'
import { type Refrigerant, saturationPressure } from '../../refrigerant/index.ts'
import type { Compressor } from '../../rules/types.ts'

export const MACHINES = [
  'road-vehicle',
  'bus',
  'off-road',
  'small-appliance',
  'stationary',
] as const
export type Machine = (typeof MACHINES)[number]

export const PRESSURE_CLASSES = [
  'low-pressure',
  'medium-pressure',
  'high-pressure',
  'very-high-pressure',
] as const
type PressureClass = (typeof PRESSURE_CLASSES)[number]

/** Uncertainty of a computed saturation pressure, relative (Lemmon 2003 states 0.5 % for blends). */
const PROPERTY_UNCERTAINTY = 0.005
/** Of an off-road cab system above this full charge the vehicle rules do not hold (40 CFR 82.152, 2015 edition). */
const MVAC_LIKE_LIMIT_KG = quantity('mass', 20, 'lb').si

/**
 * Pressure class of an appliance by the bubble pressure at 104 °F.
 *
 * @returns The class; the next one too (`or`) when 0.5 % of pressure would change it.
 */
export function pressureClass(r: Refrigerant): {
  readonly class: PressureClass
  readonly or: PressureClass | undefined
  /** Pa absolute; undefined above the critical temperature. */
  readonly pressurePa: number | undefined
} {
  const temperatureK = quantity('temperature', data.pressureClasses.at.value, '°F').si
  if (r.criticalTemperatureK <= temperatureK || r.maximumTemperatureK < temperatureK) {
    return { class: 'very-high-pressure', or: undefined, pressurePa: undefined }
  }
  const pressurePa = saturationPressure(r, temperatureK, 'bubble')
  const own = classOf(pressurePa)
  const neighbour = [1 - PROPERTY_UNCERTAINTY, 1 + PROPERTY_UNCERTAINTY]
    .map((factor) => classOf(pressurePa * factor))
    .find((other) => other !== own)
  return { class: own, or: neighbour, pressurePa }
}

function classOf(pressurePa: number): PressureClass {
  const found = data.pressureClasses.upTo.find(
    ({ psia }) => pressurePa < quantity('absolutePressure', psia, 'psia').si,
  )
  return (found?.class ?? data.pressureClasses.above) as PressureClass
}

export type Regime = 'table-1' | 'small-appliance' | 'vehicle' | 'vehicle-like'

/**
 * Which US federal rule sets the level of evacuation before opening.
 *
 * @throws {CalcError} `missing-input` when it hangs on a compressor drive that was not given.
 */
export function evacuationRegime(
  r: Refrigerant,
  machine: Machine,
  drive: Compressor | undefined,
  fullChargeKg: number | undefined,
): Regime {
  const isR22 = r.info.id === 'R-22'
  if (machine === 'small-appliance') return 'small-appliance'
  if (machine === 'stationary') return 'table-1'
  if (machine === 'road-vehicle') return 'vehicle'
  if (machine === 'bus') return isR22 ? 'table-1' : 'vehicle'
  if (drive === undefined) {
    throw new CalcError(
      'missing-input',
      'For an off-road machine the rule hangs on how the compressor is driven.',
      {
        hint: 'open-drive for a compressor with a shaft seal and a belt or gear, hermetic-or-electric for one with its motor inside.',
        path: ['compressorDrive'],
      },
    )
  }
  const small = fullChargeKg === undefined || fullChargeKg <= MVAC_LIKE_LIMIT_KG
  return drive === 'open-drive' && !isR22 && small ? 'vehicle-like' : 'table-1'
}

export const EQUIPMENT_DATES = ['before-1993-11-15', 'from-1993-11-15'] as const
export type EquipmentDate = (typeof EQUIPMENT_DATES)[number]

/**
 * Level of 40 CFR 82.156 Table 1, Pa absolute.
 *
 * The table counts inches of mercury down from 29.9, so the level is an absolute pressure and does
 * not move with altitude: only what a gauge shows for it does.
 */
export function tableLevel(
  pressureClassName: PressureClass,
  fullChargeKg: number,
  made: EquipmentDate,
): number {
  const { rows, chargeLimitLb, lowPressureMmHgAbsolute } = data.evacuationLevels
  if (pressureClassName === 'low-pressure') {
    return quantity('absolutePressure', lowPressureMmHgAbsolute, 'mmHg abs').si
  }
  const size = fullChargeKg < quantity('mass', chargeLimitLb, 'lb').si ? 'below' : 'at-or-above'
  const row = rows.find(
    (entry) =>
      entry.class === pressureClassName && (entry.charge === 'any' || entry.charge === size),
  )
  if (!row) throw new CalcError('unknown-name', `No level is listed for ${pressureClassName}.`)
  const vacuum = made === 'before-1993-11-15' ? row.before : row.from
  return quantity('absolutePressure', 29.9 - vacuum, 'inHg abs').si
}
