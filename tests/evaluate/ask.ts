import type { Conditions } from '../../shared/cycle/index.ts'
import { FEATURES, type Feature } from '../../shared/diagnosis/features.ts'
import { CalcError } from '../../shared/errors.ts'
import { diagnose } from '../../shared/service/diagnose.ts'
import { MODEL_MACHINES } from '../../shared/service/simulate/machines.ts'
import type { Level, Truth } from './plant.ts'

export type Result = ReturnType<typeof diagnose.run>['result']

const TEMPERATURES: Readonly<Partial<Record<Feature, string>>> = {
  suctionLineK: 'suctionTemperature',
  liquidLineK: 'liquidTemperature',
  deviceInletK: 'valveInletTemperature',
  evaporatorOutletK: 'evaporatorOutletTemperature',
  dischargeLineK: 'dischargeTemperature',
  ventK: 'ventTemperature',
  condenserAirK: 'condenserOutAir',
}

/** Readings as somebody would type them. */
export function typed(
  { preset }: Truth,
  read: Float64Array,
  set: readonly Feature[],
  conditions: Conditions,
): Record<string, unknown> {
  const input: Record<string, unknown> = {
    ambient: kelvin(conditions.ambientK),
    returnAir: kelvin(conditions.returnAirK),
    relativeHumidity: `${(100 * conditions.returnHumidity).toFixed(1)} %`,
    compressorRpm: conditions.speed * 60,
    barometer: `${(conditions.barometerPa / 1000).toFixed(3)} ±0.001 kPa`,
  }
  for (const feature of set) {
    const value = read[FEATURES.indexOf(feature)] as number
    if (feature === 'lowSidePa') input.suctionPressure = gauge(value, conditions.barometerPa)
    else if (feature === 'highSidePa') {
      const port =
        preset.machine.ports.high === 'discharge' ? 'dischargePressure' : 'liquidPressure'
      input[port] = gauge(value, conditions.barometerPa)
    } else if (feature === 'chargeShare') {
      input.recovered = `${value.toFixed(4)} ±0.002 kg`
      input.labelCharge = '1 kg'
    } else {
      const field = TEMPERATURES[feature]
      if (field) input[field] = kelvin(value)
    }
  }
  return input
}

const kelvin = (value: number) => `${(value - 273.15).toFixed(2)} °C`
const gauge = (pa: number, barometerPa: number) => `${((pa - barometerPa) / 1000).toFixed(2)} kPa g`

/** Trade word of one of the model's own machines. */
export const wordOf = (id: string) =>
  MODEL_MACHINES.find(({ presets }) => presets.includes(id))?.id ?? id

/** What the diagnosis is told of the machine. */
export function machineTold(
  { preset }: Truth,
  level: Level,
  baseline: Record<string, unknown> | undefined,
): Record<string, unknown> {
  const refrigerant = preset.machine.refrigerant
  if (level === 'model') return { refrigerant, modelMachine: wordOf(preset.machine.id) }
  if (level === 'kind') return { refrigerant, architecture: preset.architecture }
  if (level === 'baseline') {
    const { barometer: _, ...rest } = baseline ?? {}
    return { refrigerant, architecture: preset.architecture, baseline: rest }
  }
  return { refrigerant }
}

/** The answer, or nothing where it is refused. */
export function answerTo(input: Record<string, unknown>): Result | undefined {
  try {
    return diagnose.run(input).result
  } catch (error) {
    if (error instanceof CalcError) return undefined
    throw error
  }
}
