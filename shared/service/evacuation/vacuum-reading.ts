import { type InstrumentId, type Place, reader } from '../../instrument/index.ts'
import { type Notes, newNotes } from '../../notes.ts'
import { type PressureReading, widthOf } from '../../quantity/index.ts'
import type { EvacuationInput } from './fields.ts'

/** What a vacuum is read with: an electronic gauge shows absolute pressure, the manifold's gauge does not. */
export const vacuumGauge = ({ kind }: PressureReading): InstrumentId =>
  kind === 'absolutePressure' ? 'micron-gauge' : 'low-side-gauge'

type Classes = Pick<EvacuationInput, 'lowGauge' | 'lowGaugeSpan'>

/**
 * Expanded uncertainty of the level of a series that one gauge read, Pa: the widest of its readings,
 * with the barometer under those of a dial. Of the changes within a series it says nothing: the
 * barometer falls out of them, and so does what the gauge is off by.
 *
 * A gauge is worst at one end of what it read, so the ends stand for the series; what was assumed of
 * it is noted once.
 */
export function levelWidth(
  readings: readonly PressureReading[],
  classes: Classes,
  field: string,
  place: () => Place,
  notes: Notes,
): number {
  const given = readings.filter(({ plusMinus }) => plusMinus !== undefined)
  const taken = endsOf(readings.filter(({ plusMinus }) => plusMinus === undefined)).map(
    (reading) => {
      const own = newNotes()
      return { reading: reader(classes, own)(reading, vacuumGauge(reading), field), own }
    },
  )
  const widest = taken.reduce<(typeof taken)[number] | undefined>(
    (kept, next) => (kept && widthOf(kept.reading) >= widthOf(next.reading) ? kept : next),
    undefined,
  )
  notes.assumptions.push(...(widest?.own.assumptions ?? []))
  notes.sources.push(...(widest?.own.sources ?? []))
  const width = (reading: PressureReading) =>
    widthOf(reading.kind === 'absolutePressure' ? reading : place().absolute(reading))
  return Math.max(0, ...[...given, ...taken.map(({ reading }) => reading)].map(width))
}

/** The lowest and the highest reading of each kind of gauge. */
function endsOf(readings: readonly PressureReading[]): readonly PressureReading[] {
  return (['absolutePressure', 'gaugePressure'] as const).flatMap((kind) => {
    const [first, ...others] = readings.filter((reading) => reading.kind === kind)
    if (!first) return []
    const pick = (further: (a: number, b: number) => boolean) =>
      others.reduce((kept, next) => (further(next.si, kept.si) ? next : kept), first)
    return [pick((a, b) => a < b), pick((a, b) => a > b)]
  })
}
