import { CalcError, under } from '../../errors.ts'
import {
  gaugeFor,
  type InstrumentId,
  type Place,
  reader,
  resolvePlace,
} from '../../instrument/index.ts'
import type { Notes } from '../../notes.ts'
import {
  absolutePressure,
  type Ingredient,
  type PressureReading,
  type Quantity,
  quantity,
  readQuantity,
  say,
  toAbsolute,
} from '../../quantity/index.ts'
import { plausible } from '../plausible.ts'
import { leakFacts, leakSource } from './facts.ts'
import type { LeakTestInput } from './fields.ts'

/** The readings of a standing test, each with its ±, and what lay around it. */
export interface Standing {
  readonly kind: 'pressure' | 'vacuum'
  readonly start: PressureReading
  readonly end: PressureReading
  readonly fromK: Quantity<'temperature'>
  readonly toK: Quantity<'temperature'>
  /** Barometer at the start, which both gauge readings share. */
  readonly barometer: Ingredient
  /** What the barometer changed until the end, Pa; nothing where neither reading is a gauge's. */
  readonly change: Ingredient
  /** Absolute pressures, Pa, at the barometer of the start. */
  readonly startPa: Quantity<'absolutePressure'>
  readonly endPa: Quantity<'absolutePressure'>
}

const NEEDED = ['startPressure', 'endPressure', 'startTemperature', 'endTemperature'] as const
/** Above this no nitrogen cylinder is filled. */
const HIGHEST = quantity('absolutePressure', 300, 'bar abs')
/** A system this far below the air stands under vacuum. */
const VACUUM_SHARE = 0.98

/** Whether any reading of a standing test is given. */
export const asksForStanding = (input: LeakTestInput) =>
  NEEDED.some((name) => input[name] !== undefined)

/** @throws {CalcError} `missing-input` where one of the four readings is missing. */
export function readingsOf(input: LeakTestInput, place: () => Place, notes: Notes): Standing {
  const { startPressure, endPressure, startTemperature, endTemperature } = input
  if (!startPressure || !endPressure || !startTemperature || !endTemperature) {
    const missing = NEEDED.filter((name) => input[name] === undefined)
    throw new CalcError(
      'missing-input',
      'A standing test needs pressure and temperature at its start and at its end.',
      {
        path: missing.slice(0, 1),
        hint: `Give ${missing.join(', ')} as well: gas shrinks as it cools.`,
      },
    )
  }
  const take = reader(input, notes)
  const { barometerPa, barometer } = place()
  const absoluteOf = (reading: PressureReading, path: string) => {
    const found = under(path, () => toAbsolute(reading, barometerPa))
    plausible(found, 0, HIGHEST.si, 'A pressure', [path])
    return absolutePressure(found.si, reading.plusMinus)
  }
  const began = absoluteOf(startPressure, 'startPressure').si
  const kind = began < barometerPa * VACUUM_SHARE ? ('vacuum' as const) : ('pressure' as const)
  const gauge = gaugeOf(kind, startPressure)
  const start = take(startPressure, gauge, 'startPressure')
  const end = take(endPressure, gaugeOf(kind, endPressure), 'endPressure')
  return {
    kind,
    start,
    end,
    fromK: take(settled(startTemperature, 'startTemperature'), 'thermometer', 'startTemperature'),
    toK: take(settled(endTemperature, 'endTemperature'), 'thermometer', 'endTemperature'),
    barometer,
    change: changeOf(input, end, place, notes),
    startPa: absoluteOf(start, 'startPressure'),
    endPa: absoluteOf(end, 'endPressure'),
  }
}

/** A vacuum is read on an electronic gauge or on the low side's; a pressure on the gauge that reaches it. */
function gaugeOf(kind: 'pressure' | 'vacuum', reading: PressureReading): InstrumentId {
  if (kind === 'pressure') return gaugeFor(reading)
  return reading.kind === 'absolutePressure' ? 'micron-gauge' : 'low-side-gauge'
}

const settled = (given: Quantity<'temperature'>, path: string) =>
  plausible(given, 200, 420, 'A temperature', [path])

/** How far the barometer moved between the readings: measured, or what weather may have done in the time. */
function changeOf(
  { barometer, endBarometer, elapsed }: LeakTestInput,
  end: PressureReading,
  place: () => Place,
  notes: Notes,
): Ingredient {
  const name = 'change of the barometer'
  if (endBarometer) {
    if (!barometer) {
      throw new CalcError('missing-input', 'A barometer at the end needs the one at the start.', {
        path: ['barometer'],
        hint: 'Give both, as the station reads them and not reduced to sea level.',
      })
    }
    const later = under('endBarometer', () => resolvePlace({ barometer: endBarometer }))
    return { name, si: later.barometerPa - place().barometerPa, plusMinus: later.plusMinusPa }
  }
  if (end.kind === 'absolutePressure') return { name, si: 0, plusMinus: 0 }
  const { perHour, most, source } = leakFacts.barometerChange
  const hourly = readQuantity(perHour, ['pressureDifference']).si
  const largest = readQuantity(most, ['pressureDifference'])
  const hours = elapsed?.to('h') ?? Number.POSITIVE_INFINITY
  const plusMinus = Math.min(hourly * hours, largest.si)
  notes.assumptions.push({
    field: 'endBarometer',
    taken: `the barometer stood still within ±${say(quantity('pressureDifference', plusMinus, 'Pa').sized(largest.si))}`,
    because: leakFacts.told.assumed['barometer-change'],
  })
  notes.sources.push(leakSource(source as 'barometer-change'))
  return { name, si: 0, plusMinus }
}
