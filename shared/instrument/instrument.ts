import data from '../../data/service/instruments.json' with { type: 'json' }
import { CalcError } from '../errors.ts'
import { keptBy } from '../kept.ts'
import type { Notes } from '../notes.ts'
import type { Assumption } from '../operation.ts'
import {
  fromLimits,
  type Kind,
  Quantity,
  quantity,
  say,
  show,
  systemOf,
  widthOf,
} from '../quantity/index.ts'
import { sourceTable } from '../source-table.ts'
import { MARKS, type Source } from '../sources.ts'
import { type InstrumentClasses, ratePressure, rateTemperature } from './classes.ts'

export type InstrumentId = keyof typeof data.instruments

interface InstrumentRow {
  readonly name: string
  readonly plusMinus: { readonly value: number; readonly unit: string }
  /** Where the error grows with the reading: the larger of both counts. */
  readonly percentOfReading?: number
  readonly source: string
}

const ROWS: Readonly<Record<InstrumentId, InstrumentRow>> = data.instruments
const sourceOf = sourceTable(data.sources)

/** The kind that a half-width of each kind of reading is written in. */
const WIDTH_KIND: Partial<Record<Kind, Kind>> = {
  gaugePressure: 'pressureDifference',
  absolutePressure: 'pressureDifference',
  barometricPressure: 'pressureDifference',
  temperature: 'temperatureDifference',
}

/** A reading with the uncertainty of the instrument it was taken with. */
export interface Taken<Q> {
  readonly reading: Q
  /** What was assumed about the instrument, where the reading had no ± of its own. */
  readonly assumption?: Assumption
  readonly source?: Source
}

/**
 * A reading with the default uncertainty of its instrument; a ± of its own overrides it, ±0 included.
 *
 * One default an instrument, in `data/service/instruments.json`, so that the same reading is known
 * equally well in every step.
 *
 * @param field - Name of the input field, for the assumption.
 */
export function withInstrument<Q extends Quantity>(
  reading: Q,
  instrument: InstrumentId,
  field: string,
): Taken<Q> {
  if (reading.plusMinus !== undefined) return { reading }
  const usual = usualOf(instrument, WIDTH_KIND[reading.kind] ?? reading.kind)
  const share = ((usual.percentOfReading ?? 0) / 100) * Math.abs(reading.si)
  const grows = share > usual.width.si
  const width = grows ? share : usual.width.si
  return {
    reading: reading.within(width) as Q,
    assumption: {
      field,
      taken: grows ? `${usual.name} ±${say(new Quantity(usual.width.kind, share))}` : usual.taken,
      because: usual.because,
      short: grows
        ? `${usual.name} ±${usual.percentOfReading} %`
        : usual.short[systemOf(reading) ?? 'neither'],
    },
    source: usual.source,
  }
}

/** What an instrument is worth by default, and what is said of it: the same for every reading of a kind. */
interface Usual {
  readonly name: string
  readonly width: Quantity
  readonly percentOfReading: number | undefined
  readonly taken: string
  readonly because: string
  /** As somebody thinks of it who wrote the reading. */
  readonly short: Readonly<Record<'us' | 'si' | 'neither', string>>
  readonly source: Source
}

const usualOf = (instrument: InstrumentId, kind: Kind): Usual => usualBy(instrument)(kind)

const usualBy = keptBy((instrument: InstrumentId) =>
  keptBy((kind: Kind): Usual => {
    const { name, plusMinus, percentOfReading, source: id } = ROWS[instrument]
    const width = quantity(kind, plusMinus.value, plusMinus.unit)
    const said = say(width.in(plusMinus.unit))
    const source = sourceOf(id as keyof typeof data.sources)
    return {
      name,
      width,
      percentOfReading,
      taken: `${name} ±${said}`,
      because: `no ± was given with the reading; ${MARKS[source.mark]}`,
      short: {
        us: `${name} ±${inSystem(width, 'us')}`,
        si: `${name} ±${inSystem(width, 'si')}`,
        neither: `${name} ±${said}`,
      },
      source,
    }
  }),
)

function inSystem(width: Quantity, system: 'us' | 'si'): string {
  const { value, unit } = show(width, { units: system, precise: false })
  return `${Number(value.toPrecision(2))} ${unit}`
}

const LOW_SIDE_REACHES_PA = quantity(
  'pressureDifference',
  data.lowSideGaugeReaches.value,
  data.lowSideGaugeReaches.unit,
).si

/** Absolute readings below this are those of a vacuum gauge, Pa. */
const VACUUM_BELOW_PA = 5_000

/** What a pressure was read with, where the step does not say on which side: at rest both read alike. */
export function gaugeFor(reading: Quantity): InstrumentId {
  if (reading.kind === 'absolutePressure' && reading.si < VACUUM_BELOW_PA) return 'micron-gauge'
  return reading.si > LOW_SIDE_REACHES_PA ? 'high-side-gauge' : 'low-side-gauge'
}

/** What a step asks to be read with: an instrument, or the gauge that the reading itself tells. */
type ReadWith = InstrumentId | 'a-gauge'

/**
 * Takes readings as a step needs them: each with its own ±, with that of the instrument classes that
 * were given, or with its instrument's default; what was assumed and its source are noted.
 *
 *     const take = reader(input, notes)
 *     const suction = take(input.suctionPressure, 'low-side-gauge', 'suctionPressure')
 *
 * @throws {CalcError} as the classes do, for a reading beyond the scale or a class without its span.
 */
export function reader(classes: InstrumentClasses, notes: Pick<Notes, 'assumptions' | 'sources'>) {
  return function take<Q extends Quantity | undefined>(
    reading: Q,
    readWith: ReadWith,
    field: string,
  ): Q {
    checkContact(classes.contactError)
    if (reading === undefined || reading.plusMinus !== undefined) return reading
    const instrument = readWith === 'a-gauge' ? gaugeFor(reading) : readWith
    const rated = byClass(reading, instrument, classes)
    const taken = rated ?? withInstrument(reading, instrument, field)
    if (taken.assumption) notes.assumptions.push(taken.assumption)
    if (taken.source) notes.sources.push(taken.source)
    return taken.reading as Q
  }
}

function byClass(
  reading: Quantity,
  instrument: InstrumentId,
  classes: InstrumentClasses,
): Taken<Quantity> | undefined {
  switch (instrument) {
    case 'low-side-gauge':
      return ratePressure(reading, classes.lowGauge, classes.lowGaugeSpan, 'lowGauge')
    case 'high-side-gauge':
      return ratePressure(reading, classes.highGauge, classes.highGaugeSpan, 'highGauge')
    case 'thermometer':
      return rateTemperature(reading, classes.thermometer, undefined)
    case 'pipe-probe':
      return (
        rateTemperature(reading, classes.thermometer, classes.contactError) ??
        withContact(reading, classes.contactError)
      )
    default:
      return undefined
  }
}

/** @throws {CalcError} `out-of-range` for an error of the contact below zero. */
function checkContact(contact: InstrumentClasses['contactError']): void {
  if (contact === undefined || contact.si >= 0) return
  throw new CalcError('out-of-range', `A contact error of ${say(contact)} is below zero.`, {
    path: ['contactError'],
    hint: 'Give how far the probe may be off to either side, without a sign, such as 2 °F.',
  })
}

/** A probe whose contact is stated but whose sensor is not: a shop thermometer, and the contact beside it. */
function withContact(
  reading: Quantity,
  contact: InstrumentClasses['contactError'],
): Taken<Quantity> | undefined {
  if (!contact) return undefined
  const sensor = withInstrument(reading, 'thermometer', 'thermometer')
  const width = Math.hypot(widthOf(sensor.reading), fromLimits(contact.si))
  return { ...sensor, reading: reading.within(width) }
}
