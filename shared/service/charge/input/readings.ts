import { type InstrumentId, reader } from '../../../instrument/index.ts'
import type { Notes } from '../../../notes.ts'
import { Quantity } from '../../../quantity/index.ts'
import type { ChargeInput } from './fields.ts'

/** Which of the fields are readings, and what each is read with. Design figures and volumes are not. */
const READ_WITH: Readonly<Record<string, InstrumentId | 'a-gauge'>> = {
  temperature: 'thermometer',
  ambient: 'thermometer',
  pressure: 'a-gauge',
  serviceHosePressure: 'a-gauge',
  recovered: 'scale',
  innerDiameter: 'caliper',
  mouthDiameter: 'caliper',
  firstDepth: 'caliper',
  secondDepth: 'caliper',
  hexSize: 'caliper',
  joinedLength: 'caliper',
}

/**
 * The input with every reading's ±: its own, its class's, or its instrument's default.
 *
 * A reading that stands for several items stays one object, so that it moves them together.
 */
export function withReadings(
  input: ChargeInput,
  notes: Pick<Notes, 'assumptions' | 'sources'>,
): ChargeInput {
  const take = reader(input, notes)
  const taken = new Map<Quantity, Quantity>()
  const walk = (value: unknown, path: readonly (string | number)[]): unknown => {
    if (Array.isArray(value)) return value.map((item, index) => walk(item, [...path, index]))
    if (value instanceof Quantity) {
      const readWith = READ_WITH[String(path.at(-1))]
      if (!readWith) return value
      const before = taken.get(value)
      const reading = before ?? take(value as Quantity, readWith, path.join('.'))
      taken.set(value, reading)
      return reading
    }
    if (value === null || typeof value !== 'object') return value
    return Object.fromEntries(
      Object.entries(value).map(([key, item]) => [key, walk(item, [...path, key])]),
    )
  }
  return walk(input, []) as ChargeInput
}
