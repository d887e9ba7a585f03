import data from '../../../data/service/instruments.json' with { type: 'json' }
import { CalcError } from '../../errors.ts'
import { fromLimits, type PressureReading, type Quantity, quantity } from '../../quantity/index.ts'
import type { Source } from '../../sources.ts'
import { say } from '../say.ts'
import { sourceTable } from '../source-table.ts'

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

/** A reading with the expanded uncertainty of its instrument, and the source of that. */
export interface Rated<Q> {
  readonly reading: Q
  readonly source: Source | undefined
}

/**
 * A pressure with the uncertainty of its gauge class; its own ± goes first.
 *
 * A class in percent of span needs the span. Where a grade is finer in the middle half of the scale,
 * the scale is taken to begin at zero.
 *
 * @throws {CalcError} `missing-input` without the span, `out-of-range` for a reading beyond the scale.
 */
export function ratePressure(
  reading: PressureReading,
  id: string | undefined,
  span: Quantity<'pressureDifference'> | undefined,
  path: string,
): Rated<PressureReading> {
  if (reading.plusMinus !== undefined || id === undefined) return { reading, source: undefined }
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
  reading: PressureReading,
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
 * A temperature with the uncertainty of its sensor class and of the probe's contact; its own ± goes first.
 *
 * @param contactK - Largest error of the contact, K; undefined for air.
 * @throws {CalcError} `out-of-range` outside the temperatures that the class is defined for.
 */
export function rateTemperature(
  reading: Quantity<'temperature'>,
  id: string | undefined,
  contactK: number | undefined,
): Rated<Quantity<'temperature'>> {
  if (reading.plusMinus !== undefined) return { reading, source: undefined }
  const contact = contactK === undefined ? undefined : fromLimits(contactK)
  if (id === undefined) return { reading: reading.within(contact), source: undefined }
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
    reading: reading.within(Math.hypot(fromLimits(limitK), contact ?? 0)),
    source: sourceOf(row.source as never),
  }
}

/** What is said where a pipe probe's contact is not accounted for. */
export const CONTACT_SOURCE = sourceOf('achr-pipe-temperature')
