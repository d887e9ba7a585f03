import { under } from '../../errors.ts'
import {
  absolutePressure,
  type Budget,
  budget,
  gaugePressure,
  type Ingredient,
  type PressureReading,
  toAbsolute,
} from '../../quantity/index.ts'
import { type Line, type Refrigerant, saturationTemperature } from '../../refrigerant/index.ts'
import type { Measured } from './measured.ts'

/** A side of the machine: where its pressure puts it, SI. */
export interface Side {
  readonly reading: PressureReading
  readonly absolute: Budget
  /** Above the critical pressure, or within a hair of it, there is no saturation. */
  readonly state: 'saturation' | 'supercritical'
  readonly bubble: Budget | undefined
  readonly dew: Budget | undefined
}

/** Everything that the readings give, SI; undefined where a reading is missing or there is no saturation. */
export interface Figures {
  readonly low: Side | undefined
  readonly high: Side | undefined
  readonly superheat: Budget | undefined
  readonly subcooling: Budget | undefined
  /** Suction temperature less the bubble point of its pressure. */
  readonly suctionOverBubble: Budget | undefined
  /** Dew point of the liquid pressure less the liquid temperature. */
  readonly liquidBelowDew: Budget | undefined
  readonly condensing: Budget | undefined
  readonly condensingOverAmbient: Budget | undefined
  readonly dischargeSuperheat: Budget | undefined
  readonly liquidOverAmbient: Budget | undefined
  readonly ratio: Budget | undefined
  readonly pressureDifference: Budget | undefined
  /** Liquid less discharge pressure, where both were read. */
  readonly liquidOverDischarge: Budget | undefined
}

type Fields = 'suctionPressure' | 'liquidPressure' | 'dischargePressure'

/** All figures of one set of readings. Refusals carry the path of the reading they are about. */
export function figures(m: Measured): Figures {
  const barometer: Ingredient = {
    name: 'barometer',
    si: m.place.barometerPa,
    plusMinus: m.place.plusMinusPa,
  }
  const highField = m.highFrom === 'liquid-line' ? 'liquidPressure' : 'dischargePressure'
  const low = m.suctionPressure && side(m, 'suctionPressure', m.suctionPressure, barometer)
  const high = m.highPressure && side(m, highField, m.highPressure, barometer)
  const discharge = m.dischargePressure ?? m.highPressure
  const dischargeSide =
    discharge === m.highPressure || !discharge
      ? high
      : side(m, 'dischargePressure', discharge, barometer)

  const against = (
    on: Side | undefined,
    line: Line | 'mean',
    name: string,
    temperature: Measured['ambient'],
    sign: 1 | -1,
  ): Budget | undefined => {
    if (!on || on.state === 'supercritical' || !temperature) return undefined
    const saturated = saturatedAt(m.refrigerant, on.reading, line)
    return budget(
      [{ name, ...uncertain(temperature) }, pressureOf(on.reading, nameOf(on, m)), barometer],
      (temperatureK, reading, air) => sign * (temperatureK - saturated(reading, air)),
    )
  }
  const nameOf = (on: Side, { suctionPressure }: Measured) =>
    on.reading === suctionPressure ? 'low-side pressure' : 'high-side pressure'

  return {
    low,
    high,
    superheat: against(low, 'dew', 'suction-line temperature', m.suctionTemperature, 1),
    subcooling: against(high, 'bubble', 'liquid-line temperature', m.liquidTemperature, -1),
    suctionOverBubble: against(low, 'bubble', 'suction-line temperature', m.suctionTemperature, 1),
    liquidBelowDew: against(high, 'dew', 'liquid-line temperature', m.liquidTemperature, -1),
    condensing:
      high?.state === 'saturation'
        ? budget(
            [pressureOf(high.reading, 'high-side pressure'), barometer],
            saturatedAt(m.refrigerant, high.reading, 'mean'),
          )
        : undefined,
    condensingOverAmbient: against(high, 'mean', 'air at the condenser', m.ambient, -1),
    dischargeSuperheat: against(
      dischargeSide,
      'dew',
      'discharge-line temperature',
      m.dischargeTemperature,
      1,
    ),
    liquidOverAmbient:
      m.liquidTemperature && m.ambient
        ? budget(
            [
              { name: 'liquid-line temperature', ...uncertain(m.liquidTemperature) },
              { name: 'air at the condenser', ...uncertain(m.ambient) },
            ],
            (liquidK, airK) => liquidK - airK,
          )
        : undefined,
    ...compression(m, barometer),
    liquidOverDischarge: alongCondenser(m, barometer),
  }
}

/** The compressor works against the discharge pressure where it was read, else against the liquid pressure. */
function compression(m: Measured, barometer: Ingredient) {
  const discharge = m.dischargePressure ?? m.highPressure
  const suction = m.suctionPressure
  if (!discharge || !suction) return { ratio: undefined, pressureDifference: undefined }
  const ingredients = [
    pressureOf(discharge, 'high-side pressure'),
    pressureOf(suction, 'low-side pressure'),
    barometer,
  ]
  const absolutes = (high: number, low: number, air: number) =>
    [absolutePa(discharge, high, air), absolutePa(suction, low, air)] as const
  return {
    ratio: budget(ingredients, (...values) => {
      const [high, low] = absolutes(...(values as [number, number, number]))
      return high / low
    }),
    pressureDifference: budget(ingredients, (...values) => {
      const [high, low] = absolutes(...(values as [number, number, number]))
      return high - low
    }),
  }
}

function alongCondenser(m: Measured, barometer: Ingredient): Budget | undefined {
  const { dischargePressure: discharge, highPressure: liquid } = m
  if (!discharge || !liquid || m.highFrom !== 'liquid-line') return undefined
  return budget(
    [pressureOf(liquid, 'liquid pressure'), pressureOf(discharge, 'discharge pressure'), barometer],
    (high, low, air) => absolutePa(liquid, high, air) - absolutePa(discharge, low, air),
  )
}

function side(m: Measured, field: Fields, reading: PressureReading, barometer: Ingredient): Side {
  return under(field, () => {
    const name = field === 'suctionPressure' ? 'low-side pressure' : 'high-side pressure'
    const ingredients = [pressureOf(reading, name), barometer]
    const absolute = budget(ingredients, (value, air) => absolutePa(reading, value, air))
    const onLine = (line: Line) => budget(ingredients, saturatedAt(m.refrigerant, reading, line))
    const { bubble, dew } = m.refrigerant
    if (absolute.si > Math.min(bubble.toPa, dew.toPa)) {
      return { reading, absolute, state: 'supercritical', bubble: undefined, dew: undefined }
    }
    return { reading, absolute, state: 'saturation', bubble: onLine('bubble'), dew: onLine('dew') }
  })
}

const pressureOf = (reading: PressureReading, name: string): Ingredient => ({
  name,
  ...uncertain(reading),
})

const uncertain = ({ si, plusMinus }: { si: number; plusMinus: number | undefined }) => ({
  si,
  plusMinus,
})

/** Absolute pressure of a reading moved to `value`, Pa. */
function absolutePa(reading: PressureReading, value: number, barometerPa: number): number {
  const moved = reading.kind === 'gaugePressure' ? gaugePressure(value) : absolutePressure(value)
  return toAbsolute(moved, barometerPa).si
}

/** Saturation temperature, K, of a reading and a barometer; a blend condenses about the mean of its lines. */
function saturatedAt(r: Refrigerant, reading: PressureReading, line: Line | 'mean') {
  return (value: number, barometerPa: number): number => {
    const pressurePa = absolutePa(reading, value, barometerPa)
    if (line !== 'mean') return saturationTemperature(r, pressurePa, line)
    const bubble = saturationTemperature(r, pressurePa, 'bubble')
    return r.info.kind === 'pure'
      ? bubble
      : (bubble + saturationTemperature(r, pressurePa, 'dew')) / 2
  }
}
