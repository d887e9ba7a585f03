import { under } from '../../errors.ts'
import { keptBy } from '../../kept.ts'
import {
  absolutePa,
  type Saturating,
  type SaturationLine,
  saturatedOn,
  saturating,
} from '../../physics/saturating.ts'
import {
  type Budget,
  budget,
  type Ingredient,
  type PressureReading,
  type Quantity,
} from '../../quantity/index.ts'
import type { Measured } from './measured.ts'
import { type Degree, type Difference, degree, difference } from './shown.ts'

/** A side of the machine: where its pressure puts it, SI. */
export interface Side {
  readonly reading: PressureReading
  /** What the reading is called where its ± is spoken of. */
  readonly name: string
  readonly absolute: Quantity<'absolutePressure'>
  /** Above the critical pressure, or within a hair of it, there is no saturation. */
  readonly state: 'saturation' | 'supercritical'
  /** What its saturation on a line rests on; each line is asked for by several figures. */
  readonly on: (line: SaturationLine) => Saturating
  readonly bubble: Degree | undefined
  readonly dew: Degree | undefined
}

/** Everything that the readings give, SI; undefined where a reading is missing or there is no saturation. */
export interface Figures {
  readonly low: Side | undefined
  readonly high: Side | undefined
  readonly superheat: Difference | undefined
  readonly subcooling: Difference | undefined
  /** Suction temperature less the bubble point of its pressure. */
  readonly suctionOverBubble: Difference | undefined
  /** Dew point of the liquid pressure less the liquid temperature. */
  readonly liquidBelowDew: Difference | undefined
  readonly condensing: Degree | undefined
  readonly condensingOverAmbient: Difference | undefined
  readonly dischargeSuperheat: Difference | undefined
  readonly liquidOverAmbient: Budget | undefined
  readonly ratio: Budget | undefined
  readonly pressureDifference: Budget | undefined
  /** Liquid less discharge pressure, where both were read. */
  readonly liquidOverDischarge: Budget | undefined
}

type PressureField = 'suctionPressure' | 'liquidPressure' | 'dischargePressure'

/** All figures of one set of readings. Refusals carry the path of the reading they are about. */
export function figures(m: Measured): Figures {
  const highField = m.highFrom === 'liquid-line' ? 'liquidPressure' : 'dischargePressure'
  const low = m.suctionPressure && side(m, 'suctionPressure', m.suctionPressure)
  const high = m.highPressure && side(m, highField, m.highPressure)
  const discharge = m.dischargePressure ?? m.highPressure
  const dischargeSide =
    discharge === m.highPressure || !discharge ? high : side(m, 'dischargePressure', discharge)
  const { suctionTemperature, liquidTemperature, dischargeTemperature, ambient } = m
  const superheat = against(low, 'dew', SUCTION_LINE, suctionTemperature, 1)
  const subcooling = against(high, 'bubble', LIQUID_LINE, liquidTemperature, -1)
  // Both lines of one substance are the same.
  const pure = m.refrigerant.info.kind === 'pure'
  return {
    low,
    high,
    superheat,
    subcooling,
    suctionOverBubble: pure
      ? superheat
      : against(low, 'bubble', SUCTION_LINE, suctionTemperature, 1),
    liquidBelowDew: pure ? subcooling : against(high, 'dew', LIQUID_LINE, liquidTemperature, -1),
    condensing: high && (pure ? high.bubble : condensingOf(high)),
    condensingOverAmbient: against(high, 'mean', AIR, ambient, -1),
    dischargeSuperheat: against(dischargeSide, 'dew', DISCHARGE_LINE, dischargeTemperature, 1),
    liquidOverAmbient:
      liquidTemperature && ambient
        ? budget(
            [named(LIQUID_LINE, liquidTemperature), named(AIR, ambient)],
            (liquidK, airK) => liquidK - airK,
          )
        : undefined,
    ...compression(m),
    liquidOverDischarge: alongCondenser(m),
  }
}

const condensingOf = ({ state, on }: Side) =>
  state === 'saturation' ? degree(saturatedOn(on('mean'))) : undefined

const SUCTION_LINE = 'suction-line temperature'
const LIQUID_LINE = 'liquid-line temperature'
const DISCHARGE_LINE = 'discharge-line temperature'
const AIR = 'air at the condenser'

/** A temperature less the saturation of a side (`sign` 1), or that saturation less the temperature. */
function against(
  side: Side | undefined,
  line: SaturationLine,
  name: string,
  temperature: Quantity<'temperature'> | undefined,
  sign: 1 | -1,
): Difference | undefined {
  if (!side || side.state === 'supercritical' || !temperature) return undefined
  const { ingredients, temperatureK } = side.on(line)
  return difference(
    budget(
      [...ingredients, named(name, temperature)],
      (reading = 0, air = 0, data = 0, pipeK = 0) =>
        sign * (pipeK - temperatureK(reading, air, data)),
    ),
  )
}

/** The compressor works against the discharge pressure where it was read, else against the liquid pressure. */
function compression(m: Measured) {
  const discharge = m.dischargePressure ?? m.highPressure
  const suction = m.suctionPressure
  if (!discharge || !suction) return { ratio: undefined, pressureDifference: undefined }
  const ingredients = [
    named('high-side pressure', discharge),
    named('low-side pressure', suction),
    m.place.barometer,
  ]
  const both = (of: (high: number, low: number) => number) =>
    budget(ingredients, (high = 0, low = 0, air = 0) =>
      of(absolutePa(discharge, high, air), absolutePa(suction, low, air)),
    )
  return {
    ratio: both((high, low) => high / low),
    pressureDifference: both((high, low) => high - low),
  }
}

function alongCondenser(m: Measured): Budget | undefined {
  const { dischargePressure: discharge, highPressure: liquid } = m
  if (!discharge || !liquid || m.highFrom !== 'liquid-line') return undefined
  return budget(
    [named('liquid pressure', liquid), named('discharge pressure', discharge), m.place.barometer],
    (high = 0, low = 0, air = 0) => absolutePa(liquid, high, air) - absolutePa(discharge, low, air),
  )
}

function side(m: Measured, field: PressureField, reading: PressureReading): Side {
  return under(field, () => {
    const name = field === 'suctionPressure' ? 'low-side pressure' : 'high-side pressure'
    const absolute = m.place.absolute(reading)
    const onLine = keptBy((line: SaturationLine) =>
      saturating(m.refrigerant, reading, m.place.barometer, line, name),
    )
    // Both lines of one substance are the same.
    const pure = m.refrigerant.info.kind === 'pure'
    const on = pure ? () => onLine('bubble') : onLine
    const frame = { reading, name, absolute, on }
    const { bubble, dew } = m.refrigerant
    if (absolute.si > Math.min(bubble.toPa, dew.toPa)) {
      return { ...frame, state: 'supercritical', bubble: undefined, dew: undefined }
    }
    const boils = degree(saturatedOn(on('bubble')))
    const dries = pure ? boils : degree(saturatedOn(on('dew')))
    return { ...frame, state: 'saturation', bubble: boils, dew: dries }
  })
}

const named = (name: string, { si, plusMinus }: Quantity): Ingredient => ({ name, si, plusMinus })
