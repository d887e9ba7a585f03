import * as z from 'zod'
import data from '../../data/service/air-check.json' with { type: 'json' }
import { ALL_DANGERS, dangersOf } from '../dangers.ts'
import { CalcError, under } from '../errors.ts'
import { pickRefrigerant } from '../fields/index.ts'
import { resolvePlace } from '../instrument/index.ts'
import { type Notes, newNotes, withNotes } from '../notes.ts'
import { defineOperation } from '../operation.ts'
import {
  absolutePressure,
  pressureDifference,
  type Quantity,
  quantity,
  quantityOut,
  toAbsolute,
  toGauge,
  type Uncertain,
} from '../quantity/index.ts'
import { saturationPressure } from '../refrigerant/index.ts'
import { sourceTable } from '../source-table.ts'
import { advice, comparisons } from './air-check/advice.ts'
import { excessPressure } from './air-check/air.ts'
import { airOf, airOut } from './air-check/air-part.ts'
import { conditionsOf } from './air-check/conditions.ts'
import { explain } from './air-check/explain.ts'
import { fields } from './air-check/fields.ts'
import { airLimit } from './air-check/limit.ts'
import { FAR_ABOVE, judge, VERDICTS } from './air-check/verdict.ts'
import { conditionOut } from './condition.ts'
import { propertySources, propertyWarnings } from './property-sources.ts'
import { statementOut, statementSources, statementTable } from './statement.ts'

const sourceOf = sourceTable(data.sources)
const statements = statementTable(data.statements, sourceOf)

const result = z.strictObject({
  refrigerant: z.string(),
  verdict: z.enum(VERDICTS),
  saturation: z.strictObject({
    bubble: quantityOut,
    dew: quantityOut.optional().describe('Where it differs from the bubble pressure'),
  }),
  above: quantityOut.describe('Pressure above saturation (bubble line)'),
  limit: z
    .strictObject({
      basis: z.enum(['published-cells', 'saturation-plus-5-psi']),
      atLeast: quantityOut.optional(),
      atMost: quantityOut.optional(),
    })
    .optional()
    .describe(
      'Highest pressure allowed, as a gauge here shows it; two ends where it is only bounded',
    ),
  air: airOut,
  conditions: z.array(conditionOut),
  whatToDo: z.array(statementOut),
  forComparison: z.array(statementOut).describe('Published shares of air, to compare with'),
})

/** Air check: whether a resting cylinder or system holds air, by pressure and temperature. */
export const airCheck = defineOperation({
  name: 'air-check',
  summary: 'Whether a resting cylinder or system holds air, by its pressure and temperature',
  description:
    'Compares pressure with saturation and, for R-12 and R-134a, with the published limit for recycled refrigerant; gives the share and the mass of air, and what to do. It needs liquid in the container and an even temperature.',
  fields,
  result,
  cautions: {
    always: ['pressure', 'cold-burns', 'full-cylinder', 'no-venting', 'do-not-mix', 'local-rules'],
    mayAlso: ALL_DANGERS,
  },
  example: {
    refrigerant: 'R-134a',
    pressure: '104 psig',
    temperature: '80 °F',
    recycled: true,
    rested: '16 h',
    inSun: false,
    containerVolume: '21.6 L',
    contents: '18 lb',
  },
  compute(input) {
    const r = pickRefrigerant(input.refrigerant)
    const notes = newNotes()
    notes.cautions.push('pressure', 'cold-burns', 'no-venting', 'do-not-mix', 'local-rules')
    notes.cautions.push(...dangersOf({ refrigerant: r }))
    const place = resolvePlace(input)
    if (input.pressure.kind === 'gaugePressure') notes.assumptions.push(...place.assumptions)
    notes.warnings.push(...propertyWarnings(r), ...place.warnings)
    const { barometerPa } = place
    const pressure = under('pressure', () => toAbsolute(input.pressure, barometerPa))
    if ((pressure.plusMinus ?? 0) >= pressure.si) {
      throw new CalcError('bad-input', 'The pressure is less certain than it is high.', {
        hint: 'Give the uncertainty of the gauge in the unit of the reading, such as 104 ±1 psig.',
        path: ['pressure'],
      })
    }
    const temperatureK = input.temperature

    const bubblePa = under('temperature', () => saturationPressure(r, temperatureK.si, 'bubble'))
    const dewPa = saturationPressure(r, temperatureK.si, 'dew')
    const [p, t] = withDefaults(pressure, temperatureK, notes)
    const excess = excessPressure(r, p, t)
    notes.steps.push({
      what: 'Pressure above saturation',
      formula: 'absolute pressure − saturation pressure at this temperature (bubble line)',
      values: { pressure, saturation: absolutePressure(bubblePa), temperature: temperatureK },
      gives: pressureDifference(excess.si, excess.plusMinus),
    })
    notes.sources.push(...propertySources(r), sourceOf('partial-pressures'))

    const limit = under('temperature', () => airLimit(r, temperatureK))
    const conditions = conditionsOf(input)
    notes.sources.push(...conditions.map((entry) => sourceOf(entry.source as 'tm-5-3810-307')))
    const verdict = judge(r, pressure, temperatureK.si, excess, limit, conditions)
    explain(r, verdict, limit, conditions, notes)
    const farAbove = pressure.si > FAR_ABOVE * bubblePa
    if (farAbove) {
      notes.cautions.push('full-cylinder')
      notes.warnings.push({
        code: 'far-above-saturation',
        message:
          'The pressure is more than one and a half times saturation: too much for air alone to be likely. It may be full of liquid, or another refrigerant, or the reading is wrong.',
      })
    }
    const whatToDo = statements(...advice(r, verdict, input, farAbove))
    const forComparison = statements(...comparisons(r, input))
    notes.sources.push(...statementSources([...whatToDo, ...forComparison], sourceOf))
    const gauge = (pa: number | undefined) =>
      pa === undefined ? undefined : toGauge(pa, barometerPa)
    return withNotes(
      {
        refrigerant: r.info.id,
        verdict,
        saturation: {
          bubble: toGauge(bubblePa, barometerPa),
          dew: bubblePa - dewPa > 1 ? toGauge(dewPa, barometerPa) : undefined,
        },
        above: pressureDifference(excess.si, excess.plusMinus),
        limit: limit && {
          basis: limit.basis,
          atLeast: gauge(limit.atLeastPa),
          atMost: gauge(limit.atMostPa),
        },
        air: airOf(r, input, p, t, excess, notes),
        conditions,
        whatToDo,
        forComparison,
      },
      notes,
    )
  },
})

const GAUGE_PA = quantity('pressureDifference', 1, 'psi').si
const THERMOMETER_K = quantity('temperatureDifference', 1, '°F').si

function withDefaults(
  pressure: Quantity<'absolutePressure'>,
  temperature: Quantity<'temperature'>,
  notes: Notes,
): readonly [Uncertain, Uncertain] {
  const taken = [
    ...(pressure.plusMinus === undefined ? ['gauge ±1 psi'] : []),
    ...(temperature.plusMinus === undefined ? ['thermometer ±1 °F'] : []),
  ]
  if (taken.length > 0) {
    notes.assumptions.push({
      field: pressure.plusMinus === undefined ? 'pressure' : 'temperature',
      taken: taken.join(', '),
      because:
        'no uncertainty was stated; one step of the gauge that the procedure asks for, and one degree',
    })
  }
  return [
    { si: pressure.si, plusMinus: pressure.plusMinus ?? GAUGE_PA },
    { si: temperature.si, plusMinus: temperature.plusMinus ?? THERMOMETER_K },
  ]
}
