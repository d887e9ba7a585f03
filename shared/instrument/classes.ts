import data from '../../data/service/instruments.json' with { type: 'json' }
import { CalcError } from '../errors.ts'
import { fromLimits, type Quantity, quantity, say } from '../quantity/index.ts'
import { sourceTable } from '../source-table.ts'
import type { Source } from '../sources.ts'

const sourceOf = sourceTable(data.sources)

interface GaugeRow {
  readonly id: string
  readonly name: string
  readonly percentOfSpan?: { readonly middle: number; readonly outer: number }
  readonly plusMinusPsi?: number
  readonly source: string
}

interface ThermometerRow {
  readonly id: string
  readonly name: string
  readonly fixedK: number
  readonly slope: number
  readonly rule: string
  readonly fromC: number
  readonly toC: number
  readonly source: string
}

const GAUGES: readonly GaugeRow[] = data.gauges
const THERMOMETERS: readonly ThermometerRow[] = data.thermometers

/** Accuracy classes of the instruments in use, where the user knows them. */
export interface InstrumentClasses {
  readonly lowGauge?: string | undefined
  readonly lowGaugeSpan?: Quantity<'pressureDifference'> | undefined
  readonly highGauge?: string | undefined
  readonly highGaugeSpan?: Quantity<'pressureDifference'> | undefined
  readonly thermometer?: string | undefined
  readonly contactError?: Quantity<'temperatureDifference'> | undefined
}

/** A reading with the expanded uncertainty of its instrument's class, and the source of that. */
interface Rated {
  readonly reading: Quantity
  readonly source: Source
}

/**
 * A pressure with the uncertainty of its gauge class.
 *
 * A class in percent of span needs the span. Where a grade is finer in the middle half of the scale,
 * the scale is taken to begin at zero.
 *
 * @returns undefined without a class.
 * @throws {CalcError} `missing-input` without the span, `out-of-range` for a reading beyond the scale.
 */
export function ratePressure(
  reading: Quantity,
  id: string | undefined,
  span: Quantity<'pressureDifference'> | undefined,
  path: string,
): Rated | undefined {
  if (id === undefined) return undefined
  const row = GAUGES.find((entry) => entry.id === id)
  if (!row)
    throw new CalcError('unknown-name', `There is no gauge class "${id}".`, { path: [path] })
  const limitPa = row.percentOfSpan
    ? percentLimit(row, row.percentOfSpan, reading, span, path)
    : quantity('pressureDifference', row.plusMinusPsi ?? 0, 'psi').si
  return {
    reading: reading.within(fromLimits(limitPa)),
    source: sourceOf(row.source as never),
  }
}

function percentLimit(
  row: GaugeRow,
  { middle, outer }: { readonly middle: number; readonly outer: number },
  reading: Quantity,
  span: Quantity<'pressureDifference'> | undefined,
  path: string,
): number {
  if (!span) {
    throw new CalcError(
      'missing-input',
      `The class of a ${row.name} is a percentage of its scale.`,
      {
        path: [`${path}Span`],
        hint: 'Give the scale from end to end, such as 500 psi or 35 bar.',
      },
    )
  }
  if (!(span.si > 0) || Math.abs(reading.si) > span.si) {
    throw new CalcError(
      'out-of-range',
      `A reading of ${say(reading)} does not lie on a scale of ${say(span)}.`,
      { path: [`${path}Span`], hint: 'Give the scale of the gauge from end to end.' },
    )
  }
  const place = Math.abs(reading.si) / span.si
  const percent = place >= 0.25 && place <= 0.75 ? middle : outer
  return (percent / 100) * span.si
}

/**
 * A temperature with the uncertainty of its sensor class and of the probe's contact.
 *
 * The class of a sensor says nothing of its contact with a pipe: without `contact` it stands alone.
 *
 * @param contact - Largest error of the contact; undefined for air.
 * @returns undefined without a class.
 * @throws {CalcError} `out-of-range` outside the temperatures that the class is defined for.
 */
export function rateTemperature(
  reading: Quantity,
  id: string | undefined,
  contact: Quantity<'temperatureDifference'> | undefined,
): Rated | undefined {
  if (id === undefined) return undefined
  const row = THERMOMETERS.find((entry) => entry.id === id)
  if (!row) {
    throw new CalcError('unknown-name', `There is no thermometer class "${id}".`, {
      path: ['thermometer'],
    })
  }
  const celsius = reading.to('°C')
  if (!(celsius >= row.fromC && celsius <= row.toC)) {
    throw new CalcError(
      'out-of-range',
      `The tolerance of a ${row.name} is defined from ${row.fromC} to ${row.toC} °C; the reading is ${say(reading)}.`,
      { path: ['thermometer'], hint: 'Give the uncertainty of this reading itself: "-45 ±2 °C".' },
    )
  }
  const proportional = row.slope * Math.abs(celsius)
  const limitK = row.rule === 'sum' ? row.fixedK + proportional : Math.max(row.fixedK, proportional)
  return {
    reading: reading.within(Math.hypot(fromLimits(limitK), fromLimits(contact?.si ?? 0))),
    source: sourceOf(row.source as never),
  }
}

/** What is said where a pipe probe's contact is not accounted for. */
export const CONTACT_SOURCE = sourceOf('achr-pipe-temperature')
