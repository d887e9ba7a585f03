import * as z from 'zod'
import { ALL_DANGERS } from '../dangers.ts'
import { CalcError } from '../errors.ts'
import { pickRefrigerant } from '../fields/index.ts'
import { resolvePlace } from '../instrument/index.ts'
import { type Notes, newNotes, withNotes } from '../notes.ts'
import { defineOperation } from '../operation.ts'
import { airOut, airPart } from './cooling-check/air-part.ts'
import { bandsOut } from './cooling-check/band.ts'
import { clutchOut, clutchPart } from './cooling-check/clutch-part.ts'
import { condensingOut, condensingPart } from './cooling-check/condensing-part.ts'
import { dangerOf, dangerOut } from './cooling-check/danger.ts'
import { type CoolingInput, coolingFields } from './cooling-check/fields.ts'
import {
  type CoolingReadings,
  isSwapped,
  makerOut,
  makerPart,
  PRESSURES,
  readingsOf,
} from './cooling-check/readings.ts'
import { restOut, restPart } from './cooling-check/rest-part.ts'
import { tableOut, tablePart } from './cooling-check/table-part.ts'
import { coolingFacts, coolingSource } from './cooling-check/tables.ts'
import { coolingTold } from './cooling-check/told.ts'
import { mixingBasis } from './mixing-sources.ts'
import { propertyWarnings } from './property-sources.ts'
import { runningCautions, WHILE_RUNNING } from './running.ts'

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
    danger: dangerOut.optional(),
    maker: makerOut.optional(),
    bands: bandsOut.describe('Over the published tables whose conditions fit'),
    temperatures: condensingOut.optional(),
    air: airOut.optional(),
    rest: restOut.optional(),
    clutch: clutchOut.optional(),
    tables: z.array(tableOut).describe('Every published table of this refrigerant'),
  }),
  cautions: {
    always: WHILE_RUNNING,
    mayAlso: [...ALL_DANGERS, 'stop-the-machine'],
  },
  example: {
    refrigerant: 'R-134a',
    machine: 'off-road',
    engine: 'about-1000-rpm',
    ambient: '88 °F',
    relativeHumidity: '45 %',
    ventTemperature: '52 °F',
    suctionPressure: '24 psig',
    dischargePressure: '205 psig',
  },
  compute(input) {
    const notes = newNotes()
    const place = resolvePlace(input)
    const r = pickRefrigerant(input.refrigerant)
    notes.warnings.push(...propertyWarnings(r), ...place.warnings)
    const readings = readingsOf(input, place, notes)
    if (PRESSURES.some((name) => input[name]) || input.relativeHumidity) {
      notes.assumptions.push(...place.assumptions)
      notes.sources.push(...place.sources)
    }
    const danger = dangerOf(r, readings, notes)
    notes.cautions.push(...runningCautions(r, input))
    const { tables, bands, fitting } = tablePart(
      r,
      readings,
      { ...input, humidity: input.relativeHumidity?.si },
      place,
      notes,
    )
    noteConditions(readings, notes)
    const maker = makerPart(input, readings)
    const temperatures = condensingPart(r, readings, fitting, notes)
    const air = airPart(
      {
        returnAir: readings.returnAir,
        vent: readings.vent?.shown,
        relativeHumidity: readings.relativeHumidity,
      },
      place.barometer,
      notes,
    )
    const rest = restPart(r, readings, place, notes)
    const clutch = clutchPart({ ...readings, cyclesPerMinute: input.cyclesPerMinute }, place, notes)
    const told = coolingTold({
      refrigerant: r.info.id,
      mixing: mixingBasis(r),
      readings,
      place,
      danger,
      swapped: isSwapped(readings),
      rest,
      bands,
      fitting: fitting.length,
      maker,
      temperatures,
      air,
      clutch,
      cyclesPerMinute: input.cyclesPerMinute,
    })
    return {
      ...withNotes(
        {
          refrigerant: r.info.id,
          danger: danger && {
            pressure: danger.pressure,
            cutOut: danger.cutOut?.pressure.in(undefined),
            why: danger.why,
          },
          maker,
          bands,
          temperatures,
          air,
          rest: rest?.shown,
          clutch,
          tables,
        },
        notes,
      ),
      told,
    }
  },
})

function noteConditions(readings: CoolingReadings, notes: Notes): void {
  const warn = (code: 'high-below-low' | 'gauges-alike' | 'conditions-move-the-high-side') =>
    notes.warnings.push({ code, message: coolingFacts.warnings[code] })
  if (readings.alike) warn('gauges-alike')
  if (isSwapped(readings)) warn('high-below-low')
  if (!readings.high) return
  notes.sources.push(coolingSource('blower-and-humidity-1987'))
  warn('conditions-move-the-high-side')
}

function requireSomething(input: CoolingInput): void {
  const readings = [...PRESSURES, 'ventTemperature', 'relativeHumidity', 'cyclesPerMinute'] as const
  if (readings.some((name) => input[name] !== undefined)) return
  throw new CalcError('missing-input', 'There is no reading to check.', {
    path: ['dischargePressure'],
    hint: 'Give the pressures, the vent temperature, or the pressures at rest.',
  })
}
