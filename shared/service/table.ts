import * as z from 'zod'
import data from '../../data/service/table.json' with { type: 'json' }
import type { Told } from '../answer/told.ts'
import { ALL_DANGERS, dangersOf } from '../dangers.ts'
import { CalcError } from '../errors.ts'
import { pickRefrigerant, placeIn, refrigerantIn } from '../fields/index.ts'
import { type Place, resolvePlace } from '../instrument/index.ts'
import { defineOperation, type Warning } from '../operation.ts'
import { type Quantity, quantity, quantityOut, toAbsolute } from '../quantity/index.ts'
import type { Refrigerant } from '../refrigerant/index.ts'
import { propertySources, propertyWarnings } from './property-sources.ts'
import { boundIn } from './table/bound.ts'
import { CHOICES, columnsOf, type RowPoint } from './table/columns.ts'
import { endsOf } from './table/ends.ts'
import { type Grid, grid, type TableKind } from './table/grid.ts'

const endIn = boundIn('TableEnd', 'A temperature or a pressure, gauge or absolute', [
  'temperature',
  'gaugePressure',
  'absolutePressure',
])
const stepIn = boundIn('TableStep', 'A difference of two temperatures or of two pressures', [
  'temperatureDifference',
  'pressureDifference',
])
const unitIn = z.string().min(1).max(20).optional()

const FIRST_COLUMN = {
  temperature: { key: 'temperature', label: 'temperature' },
  gaugePressure: { key: 'gaugePressure', label: 'gauge pressure' },
  absolutePressure: { key: 'absolutePressure', label: 'absolute pressure' },
} as const satisfies Record<TableKind, object>

/** Saturation over a range of temperature or pressure. */
export const table = defineOperation({
  name: 'table',
  summary: 'Saturation table over any range and step of temperature or pressure',
  description:
    'Rows from one end to the other, the first column in the unit that the ends are written in. A blend has a column for its bubble line (subcooling) and one for its dew line (superheat). At most 2000 rows.',
  fields: {
    refrigerant: refrigerantIn,
    from: endIn
      .optional()
      .describe('First row: a temperature, or a gauge or absolute pressure; -20 °F if left out'),
    to: endIn
      .optional()
      .describe(
        'Last row, of the same kind; where the step does not meet it, the row before; 160 °F or the highest saturation if left out',
      ),
    step: stepIn.optional().describe('Difference from row to row; 10 °F if left out'),
    columns: z
      .array(z.enum(CHOICES))
      .min(1)
      .max(CHOICES.length)
      .default(['saturation', 'density', 'latent-heat'])
      .describe('What stands beside the first column'),
    temperatureUnit: unitIn.describe('Unit of the other temperatures, such as °F or °C'),
    pressureUnit: unitIn.describe('Unit of the other pressures: psig, bar g, kPa abs'),
    densityUnit: unitIn.describe('Unit of the densities, such as kg/m3 or lb/ft3'),
    latentHeatUnit: unitIn.describe('Unit of the latent heat, such as kJ/kg or Btu/lb'),
    ...placeIn,
  },
  result: z.strictObject({
    refrigerant: z.string().describe('Designation'),
    over: z
      .enum(['temperature', 'gauge-pressure', 'absolute-pressure'])
      .describe('What the first column counts'),
    barometer: quantityOut.describe('Pressure of the air around, with its ± for every row'),
    columns: z
      .array(z.strictObject({ key: z.string(), label: z.string() }))
      .describe('Columns in order; each row has a figure under each key'),
    rows: z.array(z.record(z.string(), quantityOut)).describe('Rows in order'),
  }),
  cautions: { always: ['maker-first'], mayAlso: ALL_DANGERS },
  example: { refrigerant: 'R-134a', from: '0 °F', to: '160 °F', step: '10 °F', units: 'us' },
  compute(input) {
    const r = pickRefrigerant(input.refrigerant)
    const place = resolvePlace(input)
    const ends = endsOf(r, input)
    const steps = grid(ends.from, ends.to, ends.step)
    const first = FIRST_COLUMN[steps.kind]
    const columns = columnsOf(r, steps.kind, input.columns, input)
    const rows = steps.values.map((value) =>
      inRow(r, steps, value, () => {
        const figure = quantity(steps.kind, value, steps.unit).in(
          ends.free ? undefined : steps.unit,
        )
        const point = pointOf(steps.kind, figure.si, place.barometerPa)
        const others = columns.map((column) => [column.key, column.figure(point)] as const)
        return Object.fromEntries([[first.key, figure], ...others])
      }),
    )
    return {
      result: {
        refrigerant: r.info.id,
        over: overOf(steps.kind),
        barometer: place.air,
        columns: [first, ...columns.map(({ key, label }) => ({ key, label }))],
        rows,
      },
      told: toldOf(
        r,
        rows.map((row) => row[first.key]),
        place,
      ),
      steps: [],
      cautions: dangersOf({ refrigerant: r }),
      sources: [...propertySources(r), ...place.sources],
      assumptions: [...ends.assumptions, ...place.assumptions],
      warnings: [...propertyWarnings(r), ...place.warnings, ...endNotMet(steps)],
    }
  },
})

function toldOf(r: Refrigerant, firsts: readonly (Quantity | undefined)[], place: Place): Told {
  const [from = '', to = ''] = [firsts[0], firsts.at(-1)]
  return {
    level: 'information',
    headline: data.headline.replaceAll('{name}', r.info.id),
    figures: [
      { id: 'from', label: 'From', value: from },
      { id: 'to', label: 'To', value: to },
      { id: 'rows', label: 'Rows', value: firsts.length },
      { id: 'barometer', label: 'Barometer', value: place.air, says: data.says.barometer },
    ],
    next: [],
  }
}

/** The last row is not the end asked for: said, so that nobody takes it for that. */
function endNotMet({ values, unit, missedEnd }: Grid): readonly Warning[] {
  if (missedEnd === undefined) return []
  const shown = (value: number | undefined) => `${Number((value ?? 0).toPrecision(6))} ${unit}`
  return [
    {
      code: 'end-not-met',
      message: `The steps do not meet ${shown(missedEnd)}: the last row is ${shown(values.at(-1))}.`,
    },
  ]
}

const overOf = (kind: TableKind) =>
  kind === 'temperature'
    ? ('temperature' as const)
    : kind === 'gaugePressure'
      ? ('gauge-pressure' as const)
      : ('absolute-pressure' as const)

function pointOf(kind: TableKind, si: number, barometerPa: number): RowPoint {
  if (kind === 'temperature') return { over: 'temperature', si, barometerPa }
  const reading = quantity(kind, si, kind === 'gaugePressure' ? 'Pa g' : 'Pa abs')
  return { over: 'pressure', si: toAbsolute(reading, barometerPa).si, barometerPa }
}

/** A row outside the refrigerant's range is refused with the end that leads there. */
function inRow<T>(r: Refrigerant, { values, unit }: Grid, value: number, work: () => T): T {
  try {
    return work()
  } catch (error) {
    if (!(error instanceof CalcError)) throw error
    const end = value === values[0] ? 'from' : 'to'
    throw new CalcError(
      error.code,
      `The row of ${Number(value.toPrecision(6))} ${unit} leaves the range of ${r.info.id}. ${error.message}`,
      { path: [end], hint: error.hint },
    )
  }
}
