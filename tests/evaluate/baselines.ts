import figures from '../../data/service/diagnosis.json' with { type: 'json' }
import type { Cause } from '../../shared/diagnosis/hypotheses.ts'
import { CalcError } from '../../shared/errors.ts'
import { readings } from '../../shared/service/readings.ts'
import type { Truth } from './plant.ts'

/** What the published patterns alone say first: nothing where none is shown. */
export function bySigns({ preset }: Truth, input: Readonly<Record<string, unknown>>): Cause {
  const { suctionPressure, suctionTemperature, liquidTemperature, ambient, barometer } = input
  const high = input.liquidPressure ?? input.dischargePressure
  const stationary = preset.architecture.startsWith('stationary')
  try {
    const { result } = readings.run({
      refrigerant: preset.machine.refrigerant,
      machine: stationary ? 'stationary' : 'off-road',
      meteringDevice: preset.machine.device.kind === 'valve' ? 'expansion-valve' : 'orifice-tube',
      ...defined({ suctionPressure, suctionTemperature, liquidTemperature, ambient, barometer }),
      liquidPressure: high,
    })
    const [first] = result.patterns
    const faults = figures.evidence.patterns as Readonly<Record<string, readonly Cause[]>>
    return (first && faults[first.id]?.[0]) ?? 'none'
  } catch (error) {
    if (error instanceof CalcError) return 'reading-or-test-wrong'
    throw error
  }
}

const defined = (input: Readonly<Record<string, unknown>>) =>
  Object.fromEntries(Object.entries(input).filter(([, value]) => value !== undefined))

/** What is said without looking: the likeliest cause of the trade. */
export const BY_PRIOR: Cause = 'undercharge'
