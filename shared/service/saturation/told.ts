import data from '../../../data/service/saturation.json' with { type: 'json' }
import type { Figure, Told } from '../../answer/told.ts'
import type { Place } from '../../instrument/index.ts'
import { keptBy } from '../../kept.ts'
import type { PressureReading } from '../../quantity/index.ts'
import { propertyBasis, type Refrigerant } from '../../refrigerant/index.ts'
import type { BothLines } from './lines.ts'

const { headlines, says } = data

/** Of a form, by designation: there are few of both. */
const headlineOf = keptBy((form: keyof typeof headlines) =>
  keptBy((name: string) => headlines[form].replaceAll('{name}', name)),
)

/** "R-134a at 32 psig boils at 36.8 °F (2.6 °C)"; of a blend both lines. */
export function saturationTold(
  r: Refrigerant,
  pressure: PressureReading | undefined,
  { bubble, dew }: BothLines,
  place: Place,
): Told {
  const pure = r.info.kind === 'pure'
  const form = `${pure ? 'pure' : 'blend'}-by-${pressure ? 'pressure' : 'temperature'}` as const
  const basis = propertyBasis(r).basis === 'estimated' ? ('estimated' as const) : undefined
  const estimated = basis ? { basis } : {}
  const given: Figure = pressure
    ? { id: 'pressure', label: 'Pressure', value: pressure }
    : { id: 'temperature', label: 'Temperature', value: bubble.temperature }
  const found = (point: typeof bubble) => (pressure ? point.temperature : point.gauge)
  const lines: readonly Figure[] = pure
    ? [
        pressure
          ? { id: 'temperature', label: 'Temperature', value: found(dew), ...estimated }
          : { id: 'pressure', label: 'Pressure', value: found(dew), ...estimated },
      ]
    : [
        { id: 'bubble', label: 'Bubble', value: found(bubble), says: says.bubble, ...estimated },
        { id: 'dew', label: 'Dew', value: found(dew), says: says.dew, ...estimated },
      ]
  const barometer: readonly Figure[] =
    pressure?.kind === 'absolutePressure'
      ? []
      : [
          {
            id: 'barometer',
            label: 'Barometer',
            value: place.air,
            says: says.barometer,
          },
        ]
  return {
    level: 'information',
    headline: headlineOf(form)(r.info.id),
    figures: [given, ...lines, ...barometer],
    next: [],
    line: true,
  }
}
