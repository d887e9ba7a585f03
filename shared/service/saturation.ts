import * as z from 'zod'
import { ALL_DANGERS, dangersOf } from '../dangers.ts'
import { CalcError } from '../errors.ts'
import { pickRefrigerant, placeIn, refrigerantIn } from '../fields/index.ts'
import { type Place, reader, resolvePlace } from '../instrument/index.ts'
import { keptWith } from '../kept.ts'
import { newNotes } from '../notes.ts'
import { defineOperation, type Step } from '../operation.ts'
import {
  quantityIn,
  quantityOut,
  specificEnergy,
  temperatureDifference,
} from '../quantity/index.ts'
import { propertyBasis, type Refrigerant } from '../refrigerant/index.ts'
import { propertySources, propertyWarnings } from './property-sources.ts'
import { type BothLines, type Given, type LinePoint, linesOf } from './saturation/lines.ts'
import { saturationTold } from './saturation/told.ts'

const lineOut = z
  .strictObject({
    temperature: quantityOut.describe('Of saturation'),
    gaugePressure: quantityOut.describe('As a gauge shows it here'),
    absolutePressure: quantityOut.describe('With the barometer'),
    density: quantityOut.describe(
      'Of the liquid on the bubble line, of the vapour on the dew line',
    ),
  })
  .describe('One end of boiling')

/** Pressure and temperature of saturation on both lines, at one reading. */
export const saturation = defineOperation({
  name: 'saturation',
  summary: 'Saturation temperature of a pressure, or saturation pressure of a temperature',
  description:
    'Give a pressure (gauge or absolute) or a temperature. A blend boils over a span: the bubble line is where liquid begins to boil (subcooling counts from it), the dew line is where the last liquid is gone (superheat counts from it).',
  fields: {
    refrigerant: refrigerantIn,
    pressure: quantityIn.pressure.optional().describe('Pressure to find the temperature of'),
    temperature: quantityIn.temperature.optional().describe('Temperature to find the pressure of'),
    ...placeIn,
  },
  check({ pressure, temperature: given }) {
    if (pressure && given) {
      throw new CalcError('bad-input', 'Both a pressure and a temperature are given.', {
        path: ['temperature'],
        hint: 'Give one of them: saturation ties the other to it.',
      })
    }
    if (!pressure && !given) {
      throw new CalcError('missing-input', 'Neither a pressure nor a temperature is given.', {
        path: ['pressure'],
        hint: 'Give a pressure such as 70 psig, or a temperature such as 40 °F.',
      })
    }
  },
  result: z.strictObject({
    refrigerant: z.string().describe('Designation'),
    given: z.enum(['pressure', 'temperature']).describe('What was asked by'),
    lines: z
      .enum(['one', 'bubble-and-dew'])
      .describe('One line for a pure refrigerant, two for a blend'),
    bubble: lineOut.describe('Saturated liquid: where boiling begins; subcooling counts from it'),
    dew: lineOut.describe(
      'Saturated vapour: where the last liquid is gone; superheat counts from it',
    ),
    glide: quantityOut.describe('Dew less bubble temperature at the bubble pressure'),
    latentHeat: quantityOut.describe('Heat that boils the liquid at the bubble pressure'),
  }),
  cautions: { always: ['maker-first'], mayAlso: ALL_DANGERS },
  example: { refrigerant: 'R-134a', pressure: '32 psig', altitude: '2500 ft' },
  compute(input) {
    const r = pickRefrigerant(input.refrigerant)
    const place = resolvePlace(input)
    const notes = newNotes()
    const take = reader({}, notes)
    const pressure = take(input.pressure, 'a-gauge', 'pressure')
    const both = linesOf(
      r,
      { pressure, temperature: take(input.temperature, 'thermometer', 'temperature') },
      place,
    )
    return {
      result: {
        refrigerant: r.info.id,
        given: pressure ? ('pressure' as const) : ('temperature' as const),
        lines: r.info.kind === 'pure' ? ('one' as const) : ('bubble-and-dew' as const),
        bubble: lineResult(both.bubble),
        dew: lineResult(both.dew),
        glide: both.glideK === 0 ? NO_GLIDE : temperatureDifference(both.glideK),
        latentHeat: specificEnergy(both.latentHeat),
      },
      told: saturationTold(r, pressure, both, place),
      steps: stepsOf(r, pressure, both, place),
      cautions: dangers(r),
      sources: [
        ...propertySources(r),
        ...propertyBasis(r).sources,
        ...notes.sources,
        ...place.sources,
      ],
      assumptions: [...notes.assumptions, ...place.assumptions],
      warnings: [...propertyWarnings(r), ...place.warnings],
    }
  },
})

/** That of every pure refrigerant. */
const NO_GLIDE = temperatureDifference(0)

/** They hang on the refrigerant alone, as nothing is done here. */
const dangers = keptWith((refrigerant: Refrigerant) => dangersOf({ refrigerant }))

const lineResult = (point: LinePoint) => ({
  temperature: point.temperature,
  gaugePressure: point.gauge,
  absolutePressure: point.pressure,
  density: point.density,
})

function stepsOf(
  r: Refrigerant,
  pressure: Given['pressure'],
  { bubble, dew }: BothLines,
  place: Place,
): readonly Step[] {
  const step = stepOn(r, pressure !== undefined)
  const lines = r.info.kind === 'pure' ? [step(bubble)] : [step(bubble), step(dew)]
  if (pressure?.kind !== 'gaugePressure') return lines
  const gauge: Step = {
    what: 'Absolute pressure',
    formula: 'gauge reading + barometric pressure',
    values: { 'gauge reading': pressure, 'barometric pressure': place.air },
    gives: bubble.pressure,
  }
  return [gauge, ...lines]
}

function stepOn(r: Refrigerant, byPressure: boolean): (point: LinePoint) => Step {
  const formula = formulas(r)[byPressure ? 'pressure' : 'temperature']
  return ({ line, temperature, pressure }) =>
    byPressure
      ? {
          what: 'Saturation temperature',
          formula: formula[line],
          values: { 'absolute pressure': pressure },
          gives: temperature,
        }
      : {
          what: 'Saturation pressure',
          formula: formula[line],
          values: { temperature },
          gives: pressure,
        }
}

/** By what is given, on each line: the same texts in every answer about a refrigerant. */
const formulas = keptWith((r: Refrigerant) => {
  const of = (given: string) => {
    const on = (line: string) => `${r.info.id}, ${line} line, at this ${given}`
    const both = r.info.kind === 'pure' ? on('saturation') : undefined
    return { bubble: both ?? on('bubble'), dew: both ?? on('dew') }
  }
  return { pressure: of('absolute pressure'), temperature: of('temperature') }
})
