import { z } from 'zod'
import data from '../../data/service/air-check.json' with { type: 'json' }
import { cautions } from '../cautions.ts'
import { CalcError } from '../errors.ts'
import { defineOperation } from '../operation.ts'
import {
  absolutePressure,
  compareWithBand,
  fraction,
  mass,
  pressureDifference,
  type Quantity,
  quantity,
  quantityIn,
  quantityOut,
  toAbsolute,
  toGauge,
  type Uncertain,
  volume,
} from '../quantity/index.ts'
import { type Refrigerant, saturationPressure } from '../refrigerant/index.ts'
import { airFraction, airMass, excessPressure, vapourSpace } from './air-check/air.ts'
import { type AirLimit, airLimit } from './air-check/limit.ts'
import { againstLimit, againstSaturation, VERDICTS, type Verdict } from './air-check/verdict.ts'
import { type Condition, conditionOut } from './condition.ts'
import { type Notes, newNotes, withNotes } from './notes.ts'
import { placeIn, resolveBarometer } from './place.ts'
import { propertySources } from './property-sources.ts'
import { flammableCautions, pickRefrigerant, refrigerantIn, under } from './refrigerant-input.ts'
import { sourceTable } from './source-table.ts'
import { statementOut, statementSources, statementTable } from './statement.ts'

const sourceOf = sourceTable(data.sources)
const statements = statementTable(data.statements, sourceOf)

const fields = {
  refrigerant: refrigerantIn,
  pressure: quantityIn.pressure.describe('Pressure of the resting container or system'),
  temperature: quantityIn.temperature.describe('Its temperature, read within 4 inches of it'),
  container: z
    .enum(['cylinder', 'system'])
    .default('cylinder')
    .describe('A cylinder of recovered or recycled refrigerant, or a machine at rest'),
  recycled: z.boolean().optional().describe('The contents have been recycled'),
  rested: quantityIn.duration.optional().describe('How long it has rested at this temperature'),
  inSun: z.boolean().optional().describe('It stands in the sun or near heat'),
  containerVolume: quantityIn.volume.optional().describe('Internal volume of the container'),
  contents: quantityIn.mass.optional().describe('Refrigerant in it: gross less tare'),
  ...placeIn,
}

type Input = z.output<z.ZodObject<typeof fields>>

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
  air: z.strictObject({
    partialPressure: quantityOut,
    ofVapour: quantityOut.describe('Share of air in the vapour, by amount'),
    mass: quantityOut.optional(),
    vapourSpace: quantityOut.optional(),
    isUpperBound: z.boolean().optional().describe('The contents were not given'),
    byMass: quantityOut.optional().describe('Air over refrigerant, by mass'),
  }),
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
  cautions: ['pressure', 'cold-burns', 'no-venting', 'do-not-mix', 'local-rules'],
  sources: [sourceOf('cfr-82b-app-a'), sourceOf('sae-j2211'), sourceOf('tm-5-3810-307')],
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
    notes.cautions.push(
      ...cautions('pressure', 'cold-burns', 'no-venting', 'do-not-mix', 'local-rules'),
    )
    notes.cautions.push(...flammableCautions(r))
    const place = resolveBarometer(input)
    if (input.pressure.kind === 'gaugePressure') notes.assumptions.push(...place.assumptions)
    notes.warnings.push(...place.warnings)
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
    const whatToDo = statements(...advice(r, verdict, input))
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

function judge(
  r: Refrigerant,
  pressure: Quantity<'absolutePressure'>,
  temperatureK: number,
  excess: Uncertain,
  limit: AirLimit | undefined,
  conditions: readonly Condition[],
): Verdict {
  const bySaturation = againstSaturation(r, pressure.si, temperatureK, excess)
  if (bySaturation === 'below-saturation') return bySaturation
  if (conditions.some((entry) => entry.met === 'no')) return 'cannot-tell'
  return limit ? againstLimit(pressure, limit) : bySaturation
}

function explain(
  r: Refrigerant,
  verdict: Verdict,
  limit: AirLimit | undefined,
  conditions: readonly Condition[],
  notes: Notes,
): void {
  if (limit) {
    const published = limit.basis === 'published-cells'
    notes.sources.push(sourceOf(published ? 'cfr-82b-app-a' : 'sae-j2211'))
    notes.assumptions.push({
      field: 'altitude',
      taken: 'a limit made for gauges at sea level, compared as an absolute pressure',
      because: 'the table gives gauge pressures and no altitude',
    })
    if (!published) {
      notes.warnings.push({
        code: 'limit-computed',
        message:
          'The limit for R-134a is computed (saturation pressure plus 5 psi, fraction dropped) by the method of SAE J2211; its printed table was not read.',
      })
    } else if (limit.atLeastPa !== limit.atMostPa) {
      notes.warnings.push({
        code: 'between-cells',
        message:
          'The temperature lies between cells of the table that were verified, or outside them: the limit is only bounded by the nearest ones. Read again at a temperature from 70 to 74, 80 to 84, 90 to 94, 100 to 104 or 110 to 114 °F.',
      })
    }
  }
  if (r.info.kind === 'zeotrope') {
    notes.warnings.push({
      code: 'composition-may-have-shifted',
      message: `${r.info.id} is a zeotropic blend: after a vapour leak, or with little liquid left, its pressure differs from the table without any air. The bubble pressure was used.`,
    })
  }
  if (verdict === 'below-saturation') {
    notes.warnings.push({
      code: 'below-saturation',
      message:
        'The pressure is below saturation: no liquid is left in it, the temperature is not that of the contents, or it is another refrigerant. The check says nothing about air.',
    })
  }
  const missed = conditions.filter((entry) => entry.met === 'no')
  if (missed.length > 0) {
    notes.warnings.push({
      code: 'conditions-not-met',
      message: `Read again when this holds: ${missed.map((entry) => entry.text).join(' ')}`,
    })
  }
}

function conditionsOf(input: Input): readonly Condition[] {
  const { coldest, rest } = data
  const cold = compareWithBand(
    input.temperature,
    quantity('temperature', coldest.value, coldest.unit).si,
    Number.POSITIVE_INFINITY,
  )
  const [store, hours, instruments] = statements('store', 'twelve-hours', 'instruments')
  const restNeeded = quantity('duration', rest.value, rest.unit).si
  const found: readonly (readonly [typeof store, Condition['met']])[] = [
    [store, cold === 'inside' ? 'yes' : cold === 'below' ? 'no' : 'cannot-tell'],
    [hours, input.rested ? (input.rested.si >= restNeeded ? 'yes' : 'no') : 'not-given'],
    [instruments, 'not-given'],
  ]
  const shade: Condition = {
    id: 'out-of-sun',
    met: input.inSun === undefined ? 'not-given' : input.inSun ? 'no' : 'yes',
    text: 'It stands out of the sun and away from heat.',
    source: 'tm-5-3810-307',
  }
  return [
    ...found.flatMap(([statement, met]) =>
      statement ? [{ id: statement.id, met, text: statement.text, source: statement.source }] : [],
    ),
    shade,
  ]
}

function advice(
  r: Refrigerant,
  verdict: Verdict,
  { container, recycled }: Input,
): readonly (keyof typeof data.statements)[] {
  const blend = r.info.kind === 'zeotrope' ? (['zeotrope'] as const) : []
  const isAir = verdict === 'over-limit' || verdict === 'air-shown'
  if (container === 'system') return isAir ? ['system-recover', ...blend] : [...blend]
  if (verdict === 'within-limit' || verdict === 'no-air-shown') {
    if (recycled === true) return verdict === 'within-limit' ? ['may-use'] : [...blend]
    return recycled === false
      ? ['not-yet-recycled', ...blend]
      : [
          ...(verdict === 'within-limit' ? (['may-use'] as const) : []),
          'not-yet-recycled',
          ...blend,
        ]
  }
  if (!isAir) return ['store', 'twelve-hours', 'instruments', ...blend]
  return recycled === false
    ? ['not-yet-recycled', ...blend]
    : ['vent-into-machine', 'shake-and-wait', 'recycle-all', 'another-refrigerant', ...blend]
}

function comparisons(
  r: Refrigerant,
  { contents }: Input,
): readonly (keyof typeof data.statements)[] {
  const { id } = r.info
  return [
    ...(id === 'R-134a' || id === 'R-1234yf' ? (['new-air'] as const) : []),
    ...(contents && (id === 'R-12' || id === 'R-134a' || id === 'R-1234yf')
      ? (['recycled-purity'] as const)
      : []),
  ]
}

function airOf(
  r: Refrigerant,
  input: Input,
  p: Uncertain,
  t: Uncertain,
  excess: Uncertain,
  notes: Notes,
) {
  const share = airFraction(r, p, t)
  const base = {
    partialPressure: pressureDifference(Math.max(excess.si, 0), excess.plusMinus),
    ofVapour: fraction(share.si, share.plusMinus),
  }
  const { containerVolume, contents } = input
  if (!containerVolume) {
    if (contents) {
      throw new CalcError(
        'missing-input',
        'The mass of air takes the volume of the container too.',
        {
          hint: 'Give containerVolume, such as 21.6 L: water capacity in kg is about the volume in litres.',
          path: ['containerVolume'],
        },
      )
    }
    return base
  }
  const space = vapourSpace(r, t.si, containerVolume.si, contents?.si)
  const found = airMass(excess, t.si, space)
  const massOfAir = mass(found.si, found.plusMinus)
  notes.steps.push({
    what: 'Mass of air',
    formula: 'partial pressure of air × vapour space × molar mass of air ÷ (R × temperature)',
    values: { partialPressure: base.partialPressure, vapourSpace: volume(space) },
    gives: massOfAir,
  })
  if (!contents) {
    notes.assumptions.push({
      field: 'contents',
      taken: 'the whole container as vapour space',
      because: 'the contents were not given, so the mass of air is an upper bound',
    })
  }
  return {
    ...base,
    mass: massOfAir,
    vapourSpace: volume(space),
    isUpperBound: contents === undefined,
    byMass:
      contents && contents.si > 0
        ? fraction(
            found.si / contents.si,
            found.plusMinus === undefined ? undefined : found.plusMinus / contents.si,
          )
        : undefined,
  }
}
