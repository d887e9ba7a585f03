import * as z from 'zod'
import { ALL_DANGERS, dangersOf } from '../dangers.ts'
import { CalcError } from '../errors.ts'
import { pickRefrigerant } from '../fields/index.ts'
import { resolvePlace } from '../instrument/index.ts'
import { type Notes, newNotes, withNotes } from '../notes.ts'
import { defineOperation } from '../operation.ts'
import { airOut, airPart } from './cooling-check/air-part.ts'
import { bandsOut } from './cooling-check/band.ts'
import { clutchOut, clutchPart } from './cooling-check/clutch-part.ts'
import { condensingOut, condensingPart } from './cooling-check/condensing-part.ts'
import { type CoolingInput, coolingFields } from './cooling-check/fields.ts'
import { makerOut, makerPart, PRESSURES, readingsOf } from './cooling-check/readings.ts'
import { restOut, restPart } from './cooling-check/rest-part.ts'
import { tableOut, tablePart } from './cooling-check/table-part.ts'
import { coolingSource } from './cooling-check/tables.ts'
import { propertyWarnings } from './property-sources.ts'

/** Cooling check: readings of a running system against published tables, as a band, and the air side. */
export const coolingCheck = defineOperation({
  name: 'cooling-check',
  summary: 'Vent, pressures and humidity against published performance tables, with the air side',
  description:
    'Compares what a running system shows with several published performance tables, each with its own test condition: a band, never one rule of thumb. With humidity also the air side: dew points, wet or dry coil, heat taken. With the engine off, whether a charge is there at all. The weighed charge still decides.',
  fields: coolingFields,
  check: requireSomething,
  result: z.strictObject({
    refrigerant: z.string(),
    maker: makerOut.optional(),
    bands: bandsOut.describe('Over the published tables whose conditions fit'),
    temperatures: condensingOut.optional(),
    air: airOut.optional(),
    rest: restOut.optional(),
    clutch: clutchOut.optional(),
    tables: z.array(tableOut).describe('Every published table of this refrigerant'),
  }),
  cautions: {
    always: ['rotating-parts', 'pressure', 'weigh-the-charge', 'maker-first', 'local-rules'],
    mayAlso: ALL_DANGERS,
  },
  example: {
    refrigerant: 'R-134a',
    machine: 'off-road',
    engine: 'about-1000-rpm',
    ambient: '88 °F',
    relativeHumidity: '45 %',
    ventTemperature: '52 °F',
    lowPressure: '24 psig',
    highPressure: '205 psig',
  },
  compute(input) {
    const notes = newNotes()
    const place = resolvePlace(input)
    const { barometerPa } = place
    const r = pickRefrigerant(input.refrigerant)
    notes.assumptions.push(...place.assumptions)
    notes.warnings.push(...propertyWarnings(r), ...place.warnings)
    notes.sources.push(...place.sources)
    notes.cautions.push(
      'rotating-parts',
      'pressure',
      'weigh-the-charge',
      'maker-first',
      'local-rules',
      ...dangersOf({ refrigerant: r }),
    )
    const readings = readingsOf(input, barometerPa, notes)
    const { tables, bands, fitting } = tablePart(
      r,
      readings,
      { ...input, humidity: input.relativeHumidity?.si },
      notes,
    )
    noteConditions(input, notes)
    const { high, low } = readings
    if (high && low && high.si + (high.plusMinus ?? 0) < low.si - (low.plusMinus ?? 0)) {
      notes.warnings.push({
        code: 'high-below-low',
        message:
          'The high side reads below the low side: hoses or gauges are swapped, or the readings are not of one moment. A running compressor cannot do that. Read again before any table is believed.',
      })
    }
    return withNotes(
      {
        refrigerant: r.info.id,
        maker: makerPart(input, readings, barometerPa),
        bands,
        temperatures: condensingPart(r, readings, fitting, barometerPa, notes),
        air: airPart(
          { airIn: readings.airIn, vent: readings.vent, relativeHumidity: input.relativeHumidity },
          barometerPa,
          notes,
        ),
        rest: restPart(r, readings, barometerPa, notes),
        clutch: clutchPart({ ...readings, cyclesPerMinute: input.cyclesPerMinute }, notes),
        tables,
      },
      notes,
    )
  },
})

function noteConditions(input: CoolingInput, notes: Notes): void {
  if (!input.highPressure) return
  notes.sources.push(coolingSource('blower-and-humidity-1987'))
  notes.warnings.push({
    code: 'conditions-move-the-high-side',
    message:
      'Humid air and a fast blower raise the high side, dry air and a slow blower lower it; standing still without ram air it reads high.',
  })
}

function requireSomething(input: CoolingInput): void {
  const readings = [...PRESSURES, 'ventTemperature', 'relativeHumidity', 'cyclesPerMinute'] as const
  if (readings.some((name) => input[name] !== undefined)) return
  throw new CalcError('missing-input', 'There is no reading to check.', {
    path: ['highPressure'],
    hint: 'Give the pressures, the vent temperature, or the pressures at rest.',
  })
}
