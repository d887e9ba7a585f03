import * as z from 'zod'
import data from '../../data/service/air-check.json' with { type: 'json' }
import { ALL_DANGERS, dangersOf } from '../dangers.ts'
import { CalcError, refusal, under } from '../errors.ts'
import { pickRefrigerant } from '../fields/index.ts'
import { reader, resolvePlace } from '../instrument/index.ts'
import { newNotes, withNotes } from '../notes.ts'
import { defineOperation } from '../operation.ts'
import { atRest, type ContentsGiven } from '../physics/at-rest.ts'
import { absolutePressure, pressureDifference, quantityOut, say } from '../quantity/index.ts'
import { propertyUncertainty, type Refrigerant } from '../refrigerant/index.ts'
import { sourceTable } from '../source-table.ts'
import { advice, comparisons } from './air-check/advice.ts'
import { excessPressure } from './air-check/air.ts'
import { airOf, airOut } from './air-check/air-part.ts'
import { conditionsOf } from './air-check/conditions.ts'
import { explain } from './air-check/explain.ts'
import { type AirCheckInput, fields } from './air-check/fields.ts'
import { airLimit } from './air-check/limit.ts'
import { airCheckTold } from './air-check/told.ts'
import { isFarAbove, judge, VERDICTS } from './air-check/verdict.ts'
import { conditionOut } from './condition.ts'
import { propertySources, propertyWarnings } from './property-sources.ts'
import { restShown, restShownOut } from './rest-shown.ts'
import { statementOut, statementSources, statementTable } from './statement.ts'

const sourceOf = sourceTable(data.sources)
const statements = statementTable(data.statements, sourceOf)

const result = z.strictObject({
  refrigerant: z.string(),
  verdict: z.enum(VERDICTS),
  ...restShownOut,
  above: quantityOut.describe(
    'Pressure above that of the given contents alone, or above the bubble line',
  ),
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
    'Compares the pressure with what the refrigerant alone has: with the weight of the contents and the inner volume that of those contents, else saturation; for R-12 and R-134a also with the limit for recycled refrigerant. Gives the share and the mass of air, and what to do. It needs an even temperature, and liquid in the container where no contents are given.',
  fields,
  result,
  cautions: {
    always: ['pressure', 'cold-burns', 'asphyxiation', 'do-not-mix', 'maker-first', 'local-rules'],
    mayAlso: ALL_DANGERS,
  },
  example: {
    refrigerant: 'R-134a',
    pressure: '104 psig',
    temperature: '80 °F',
    recycled: true,
    rested: '16 h',
    inSun: false,
    volume: '21.6 L',
    contents: '18 lb',
  },
  compute(input) {
    const r = pickRefrigerant(input.refrigerant)
    const notes = newNotes()
    notes.cautions.push(...dangersOf({ refrigerant: r, does: ['recovers'] }))
    const place = resolvePlace(input)
    const take = reader(input, notes)
    const reading = take(input.pressure, 'a-gauge', 'pressure')
    const temperature = take(input.temperature, 'thermometer', 'temperature')
    const contents = take(input.contents, 'scale', 'contents')
    if (reading.kind === 'gaugePressure') notes.assumptions.push(...place.assumptions)
    notes.sources.push(...propertySources(r), ...place.sources, sourceOf('partial-pressures'))
    notes.sources.push(...propertyUncertaintySources(r, temperature.si))
    notes.warnings.push(...propertyWarnings(r), ...place.warnings)
    const pressure = under('pressure', () => place.absolute(reading))
    const inside = contentsOf({ volume: input.volume, contents })
    const found = aboutReadings(() => atRest(r, pressure, temperature, inside))
    const excess = excessPressure(found, pressure)
    if (!excess) throw overfull(input)
    const alone = { si: pressure.si - excess.si, plusMinus: found.expected?.plusMinus }
    const above = pressureDifference(excess.si, excess.plusMinus)
    notes.steps.push({
      what: 'Pressure above that of the refrigerant alone',
      formula:
        found.from === 'contents'
          ? 'absolute pressure − pressure of the given contents at this temperature'
          : 'absolute pressure − saturation pressure at this temperature (bubble line)',
      values: { pressure, refrigerant: absolutePressure(alone.si), temperature },
      gives: above,
    })

    const limit = under('temperature', () => airLimit(r, temperature))
    const conditions = conditionsOf({ ...input, temperature })
    notes.sources.push(...conditions.map((entry) => sourceOf(entry.source as 'tm-5-3810-307')))
    const verdict = judge(found, pressure, limit, conditions)
    const farAbove = isFarAbove(found, pressure.si)
    explain(r, { found, verdict, limit, conditions, farAbove }, notes)
    const whatToDo = statements(...advice(r, verdict, input, farAbove))
    const forComparison = statements(...comparisons(r, input))
    notes.sources.push(...statementSources([...whatToDo, ...forComparison], sourceOf))
    const shown = restShown(found, place)
    const air = airOf(
      found,
      { volume: input.volume, contents },
      pressure,
      temperature.si,
      excess,
      notes,
    )
    // the limit is a printed one: weather is in the reading's band, not in the limit's
    const gauge = (pa: number | undefined) =>
      pa === undefined ? undefined : place.gauge(pa).within(undefined)
    return {
      ...withNotes(
        {
          refrigerant: r.info.id,
          verdict,
          ...shown,
          above,
          limit: limit && {
            basis: limit.basis,
            atLeast: gauge(limit.atLeastPa),
            atMost: gauge(limit.atMostPa),
          },
          air,
          conditions,
          whatToDo,
          forComparison,
        },
        notes,
      ),
      told: airCheckTold({
        input,
        found,
        verdict,
        conditions,
        farAbove,
        pressure: reading,
        temperature,
        alone: place.gauge(alone.si).within(undefined),
        above,
        limit: limit && {
          gauge: gauge(verdict === 'over-limit' ? limit.atMostPa : limit.atLeastPa),
          computed: limit.basis === 'saturation-plus-5-psi',
        },
        air,
      }),
    }
  },
})

/** @throws {CalcError} `missing-input` for contents without a volume. */
function contentsOf({
  volume,
  contents,
}: Pick<AirCheckInput, 'volume' | 'contents'>): ContentsGiven | undefined {
  if (!contents) return undefined
  if (volume) return { mass: contents, volume }
  throw new CalcError('missing-input', 'The contents say something only with the inner volume.', {
    hint: 'Give volume, such as 21.6 L: the water capacity in kg is about the volume in litres.',
    path: ['volume'],
  })
}

/** A refusal about saturation is one about the temperature, unless it names its own field. */
function aboutReadings<T>(work: () => T): T {
  try {
    return work()
  } catch (error) {
    if (!(error instanceof CalcError) || error.path.length > 0) throw error
    throw error.under('temperature')
  }
}

const propertyUncertaintySources = (r: Refrigerant, temperatureK: number) => {
  try {
    return propertyUncertainty(r, temperatureK, 'bubble').sources
  } catch (error) {
    if (error instanceof CalcError) return []
    throw error
  }
}

const overfull = ({ contents, volume }: AirCheckInput) =>
  refusal(
    `So much refrigerant fills the container with liquid, or does not fit it at all${
      contents && volume ? `: ${say(contents)} in ${say(volume)}` : ''
    }.`,
    {
      hint: 'Weigh again and read the volume again. If they are right, keep away from it, keep it cool, and have it emptied by somebody equipped for it: warmth bursts it.',
      path: ['contents'],
      cautions: ['full-cylinder'],
    },
  )
