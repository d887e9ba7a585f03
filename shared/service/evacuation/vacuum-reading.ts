import { type InstrumentId, type Place, reader } from '../../instrument/index.ts'
import type { Notes } from '../../notes.ts'
import { newNotes } from '../../notes.ts'
import { type PressureReading, widthOf } from '../../quantity/index.ts'
import type { EvacuationInput } from './fields.ts'

/** What a vacuum is read with: an electronic gauge shows absolute pressure, the manifold's gauge does not. */
export const vacuumGauge = ({ kind }: PressureReading): InstrumentId =>
  kind === 'absolutePressure' ? 'micron-gauge' : 'low-side-gauge'

type Classes = Pick<EvacuationInput, 'lowGauge' | 'lowGaugeSpan'>

/**
 * A series read with one gauge, each reading with its ±; what was assumed of the gauge is noted once,
 * in the words of the reading that it leaves the widest.
 */
export function takeSeries(
  readings: readonly PressureReading[],
  classes: Classes,
  field: string,
  notes: Notes,
): readonly PressureReading[] {
  const each = readings.map((reading) => {
    const own = newNotes()
    return { reading: reader(classes, own)(reading, vacuumGauge(reading), field), own }
  })
  const assumed = each.filter(({ own }) => own.sources.length > 0)
  const [first, ...others] = assumed
  if (first) {
    const widest = others.reduce(
      (kept, next) => (widthOf(next.reading) > widthOf(kept.reading) ? next : kept),
      first,
    )
    notes.assumptions.push(...widest.own.assumptions)
    notes.sources.push(...widest.own.sources)
  }
  return each.map(({ reading }) => reading)
}

/**
 * Expanded uncertainty of the level of a series, Pa: the widest of its readings, with the barometer
 * under those of a gauge. Of the changes within a series it says nothing: the barometer falls out.
 */
export const levelWidth = (readings: readonly PressureReading[], place: () => Place): number =>
  Math.max(
    ...readings.map((reading) =>
      reading.kind === 'absolutePressure' ? widthOf(reading) : widthOf(place().absolute(reading)),
    ),
  )
