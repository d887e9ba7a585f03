import * as z from 'zod'
import { cautions } from '../cautions.ts'
import { CalcError } from '../errors.ts'
import { defineOperation } from '../operation.ts'
import {
  compareWithBand,
  type PressureReading,
  type Quantity,
  quantityIn,
  toAbsolute,
  toGauge,
} from '../quantity/index.ts'
import { refrigerant } from '../refrigerant/index.ts'
import { airOut, airPart } from './cooling-check/air-part.ts'
import { clutchOut, clutchPart } from './cooling-check/clutch-part.ts'
import { condensingOut, condensingPart } from './cooling-check/condensing-part.ts'
import { restOut, restPart } from './cooling-check/rest-part.ts'
import { bandsOut, tableOut, tablePart } from './cooling-check/table-part.ts'
import {
  AIR_MODES,
  coolingSource,
  ENGINE_SPEEDS,
  MACHINES,
  WINDOWS,
} from './cooling-check/tables.ts'
import { type Notes, newNotes, withNotes } from './notes.ts'
import { placeIn, resolveBarometer } from './place.ts'
import { plausible } from './plausible.ts'
import { flammableCautions, refrigerantIn, under } from './refrigerant-input.ts'

const fields = {
  refrigerant: refrigerantIn,
  ambient: quantityIn.temperature.describe('Temperature of the air into the condenser'),
  ventTemperature: quantityIn.temperature.optional().describe('Air out of the centre vent'),
  lowPressure: quantityIn.pressure
    .optional()
    .describe('Low side while running, read just before the clutch lets go'),
  highPressure: quantityIn.pressure.optional().describe('High side while running'),
  airIn: quantityIn.temperature
    .optional()
    .describe('Air into the evaporator: of the cab when recirculating; without it the ambient'),
  relativeHumidity: quantityIn.fraction
    .optional()
    .describe('Relative humidity of the air into the evaporator'),
  machine: z.enum(MACHINES).optional().describe('Kind of machine, to pick the tables that fit'),
  air: z.enum(AIR_MODES).optional().describe('Recirculated or outside air'),
  windows: z.enum(WINDOWS).optional().describe('Doors and windows during the test'),
  engine: z.enum(ENGINE_SPEEDS).optional().describe('Engine speed during the test'),
  makerHighFrom: quantityIn.pressure.optional().describe('Least high side by the equipment maker'),
  makerHighTo: quantityIn.pressure.optional().describe('Most high side by the equipment maker'),
  makerLowFrom: quantityIn.pressure.optional().describe('Least low side by the equipment maker'),
  makerLowTo: quantityIn.pressure.optional().describe('Most low side by the equipment maker'),
  makerVentTo: quantityIn.temperature
    .optional()
    .describe('Warmest vent by the equipment maker under these conditions'),
  staticHigh: quantityIn.pressure.optional().describe('High side at rest, engine off, settled'),
  staticLow: quantityIn.pressure.optional().describe('Low side at rest, engine off, settled'),
  cutOut: quantityIn.pressure.optional().describe('Low side at which the clutch lets go'),
  cutIn: quantityIn.pressure.optional().describe('Low side at which the clutch pulls in'),
  cyclesPerMinute: z
    .number()
    .min(0)
    .max(60)
    .optional()
    .describe('How often the clutch pulls in within a minute'),
  ...placeIn,
}

type Input = z.output<z.ZodObject<typeof fields>>

const against = z.enum(['below', 'inside', 'above', 'cannot-tell']).optional()

/** Cooling check: readings of a running system against published tables, as a band, and the air side. */
export const coolingCheck = defineOperation({
  name: 'cooling-check',
  summary: 'Vent, pressures and humidity against published performance tables, with the air side',
  description:
    'Compares what a running system shows with several published performance tables, each with its own test condition: a band, never one rule of thumb. With humidity also the air side: dew points, wet or dry coil, heat taken. With the engine off, whether a charge is there at all. The weighed charge still decides.',
  fields,
  check: requireSomething,
  result: z.strictObject({
    refrigerant: z.string(),
    maker: z
      .strictObject({ high: against, low: against, vent: against })
      .optional()
      .describe('Against the figures of the equipment maker, which go first'),
    bands: bandsOut.describe('Over the published tables whose conditions fit'),
    temperatures: condensingOut.optional(),
    air: airOut.optional(),
    rest: restOut.optional(),
    clutch: clutchOut.optional(),
    tables: z.array(tableOut).describe('Every published table of this refrigerant'),
  }),
  cautions: ['rotating-parts', 'pressure', 'weigh-the-charge', 'maker-first', 'local-rules'],
  sources: [
    coolingSource('tm-5-3805-291-23-1'),
    coolingSource('ashrae-psychrometrics'),
    coolingSource('gm-static-2001'),
  ],
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
    const place = resolveBarometer(input)
    const { barometerPa } = place
    const r = under('refrigerant', () => refrigerant(input.refrigerant))
    notes.assumptions.push(...place.assumptions)
    notes.warnings.push(...place.warnings)
    notes.sources.push(...place.sources)
    notes.cautions.push(
      ...cautions('rotating-parts', 'pressure', 'weigh-the-charge', 'maker-first', 'local-rules'),
      ...flammableCautions(r),
    )
    const readings = readingsOf(input, barometerPa, notes)
    const { tables, bands, fitting } = tablePart(
      r,
      readings,
      { ...input, humidity: input.relativeHumidity?.si },
      notes,
    )
    noteConditions(input, notes)
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

/** One small division of a service gauge, Pa, and of a thermometer, K. */
const SERVICE_GAUGE_PA = 7_000
const THERMOMETER_K = 1
const PRESSURES = [
  'highPressure',
  'lowPressure',
  'staticHigh',
  'staticLow',
  'cutOut',
  'cutIn',
] as const
const TEMPERATURES = ['ambient', 'ventTemperature', 'airIn'] as const

function readingsOf(input: Input, barometerPa: number, notes: Notes) {
  const given = [...PRESSURES, ...TEMPERATURES].flatMap((name) => input[name] ?? [])
  if (given.some(({ plusMinus }) => plusMinus === undefined)) {
    notes.assumptions.push({
      field: 'highPressure',
      taken: 'gauges ±1 psi (7 kPa) and thermometers ±1.8 °F (1 K) where none was stated',
      because: 'no uncertainty was given with the readings; write it as "205 ±3 psig"',
    })
  }
  const gauge = (name: (typeof PRESSURES)[number]) => {
    const reading = input[name]
    return reading && gaugeOf(reading, barometerPa, name)
  }
  const kelvin = (name: 'ventTemperature' | 'airIn') => {
    const reading = input[name]
    return reading && settled(reading, name)
  }
  const ambient = settled(input.ambient, 'ambient')
  const airIn = kelvin('airIn')
  if (!airIn && (input.ventTemperature || input.relativeHumidity)) {
    notes.assumptions.push({
      field: 'airIn',
      taken: 'the ambient temperature',
      because:
        'the temperature of the air into the evaporator was not given; a recirculating cab is cooler',
    })
  }
  return {
    ambient,
    airIn: airIn ?? ambient,
    vent: kelvin('ventTemperature'),
    high: gauge('highPressure'),
    low: gauge('lowPressure'),
    staticHigh: gauge('staticHigh'),
    staticLow: gauge('staticLow'),
    cutOut: gauge('cutOut'),
    cutIn: gauge('cutIn'),
  }
}

function gaugeOf(reading: PressureReading, barometerPa: number, path: string) {
  const absolute = under(path, () => toAbsolute(reading, barometerPa))
  return toGauge(absolute.si, barometerPa, absolute.plusMinus ?? SERVICE_GAUGE_PA)
}

const settled = (reading: Quantity<'temperature'>, path: string) =>
  plausible(reading, 233.15, 343.15, 'An air temperature', [path]).within(
    reading.plusMinus ?? THERMOMETER_K,
  )

function makerPart(input: Input, readings: ReturnType<typeof readingsOf>, barometerPa: number) {
  const limit = (name: 'makerHighFrom' | 'makerHighTo' | 'makerLowFrom' | 'makerLowTo') => {
    const reading = input[name]
    return reading && under(name, () => toAbsolute(reading, barometerPa)).si - barometerPa
  }
  const where = (
    reading: Quantity | undefined,
    from: number | undefined,
    to: number | undefined,
  ) =>
    reading && (from !== undefined || to !== undefined)
      ? compareWithBand(reading, from ?? Number.NEGATIVE_INFINITY, to ?? Number.POSITIVE_INFINITY)
      : undefined
  const found = {
    high: where(readings.high, limit('makerHighFrom'), limit('makerHighTo')),
    low: where(readings.low, limit('makerLowFrom'), limit('makerLowTo')),
    vent: where(readings.vent, undefined, input.makerVentTo?.si),
  }
  return found.high || found.low || found.vent ? found : undefined
}

function noteConditions(input: Input, notes: Notes): void {
  if (!input.highPressure) return
  notes.sources.push(coolingSource('nissan-1987'))
  notes.warnings.push({
    code: 'conditions-move-the-high-side',
    message:
      'Humid air and a fast blower raise the high side, dry air and a slow blower lower it; standing still without ram air it reads high.',
  })
}

function requireSomething(input: Input): void {
  const readings = [...PRESSURES, 'ventTemperature', 'relativeHumidity', 'cyclesPerMinute'] as const
  if (readings.some((name) => input[name] !== undefined)) return
  throw new CalcError('missing-input', 'There is no reading to check.', {
    path: ['highPressure'],
    hint: 'Give the pressures, the vent temperature, or the pressures at rest.',
  })
}
