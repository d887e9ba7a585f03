import * as z from 'zod'
import data from '../../data/service/retrofit.json' with { type: 'json' }
import { ALL_DANGERS } from '../dangers.ts'
import { CalcError, under } from '../errors.ts'
import { burns, placeIn, refrigerantIn } from '../fields/index.ts'
import { resolvePlace } from '../instrument/index.ts'
import { type Notes, newNotes, withNotes } from '../notes.ts'
import { defineOperation } from '../operation.ts'
import {
  compareWithBand,
  pressureDifference,
  type Quantity,
  quantity,
  quantityIn,
  quantityOut,
  temperature,
  toGauge,
} from '../quantity/index.ts'
import { type Refrigerant, refrigerant, saturationPressure } from '../refrigerant/index.ts'
import { COMPRESSORS } from '../rules/types.ts'
import { sourceTable } from '../source-table.ts'
import { propertySources, propertyWarnings } from './property-sources.ts'
import { acceptabilityOut, allDecisions, allowedConversion } from './retrofit/acceptability.ts'
import { chargePart, retrofitChargeOut } from './retrofit/charge-part.ts'
import { statementOut, statementSources, statementTable } from './statement.ts'

const sourceOf = sourceTable(data.sources)
const statements = statementTable(data.statements, sourceOf)

const fields = {
  from: refrigerantIn.describe('Refrigerant that the system was built for, such as R-12'),
  to: refrigerantIn.describe('Refrigerant that it shall get, such as R-134a'),
  machine: z
    .enum(['road-vehicle', 'bus', 'off-road', 'stationary'])
    .default('off-road')
    .describe('Kind of machine; the decisions are for vehicle cabs'),
  originalCharge: quantityIn.mass.optional().describe('Charge of the old refrigerant on the label'),
  accumulatorAge: quantityIn.duration
    .optional()
    .describe('Age of the accumulator or drier, such as 7 yr'),
  compressorDrive: z.enum(COMPRESSORS).optional().describe('Shaft with a seal, or motor inside'),
  condensingTemperature: quantityIn.temperature
    .optional()
    .describe('Condensing temperature at which the pressures are compared; 130 °F if left out'),
  ...placeIn,
}

type Input = z.output<z.ZodObject<typeof fields>>

const result = z.strictObject({
  from: z.string(),
  to: z.string(),
  decision: acceptabilityOut,
  charge: retrofitChargeOut.optional().describe('For R-134a after R-12'),
  highSide: z
    .strictObject({
      condensingTemperature: quantityOut,
      before: quantityOut,
      after: quantityOut,
      rise: quantityOut.describe('At the same condensing temperature: computed'),
      published: z.array(statementOut),
    })
    .optional(),
  accumulator: z.enum(['replace', 'may-stay', 'cannot-tell', 'not-given']),
  work: z.array(statementOut).describe('What the conversion takes, in order'),
  label: z.array(statementOut),
  decisions: z.array(acceptabilityOut).describe('Every decision known here, to compare'),
})

/** Retrofit: whether a vehicle system may be converted, with what charge and what work. */
export const retrofit = defineOperation({
  name: 'retrofit',
  summary: 'Whether a cab system may go from one refrigerant to another, with what charge and work',
  description:
    'R-12 to R-134a: the charge as a band with the spread of the rules in use, pressures, oil, seals, desiccant, fittings and label. Refuses conversions that are not acceptable (US federal): no flammable refrigerant, nothing that is for new systems only.',
  fields,
  result,
  cautions: {
    always: [
      'no-flammable-retrofit',
      'electric-compressor-oil',
      'pressure',
      'no-venting',
      'do-not-mix',
      'maker-first',
      'local-rules',
    ],
    mayAlso: ALL_DANGERS,
  },
  example: {
    from: 'R-12',
    to: 'R-134a',
    machine: 'off-road',
    originalCharge: '3 lb',
    accumulatorAge: '12 yr',
    compressorDrive: 'open-drive',
  },
  compute(input) {
    const notes = newNotes()
    notes.cautions.push(
      'no-flammable-retrofit',
      'pressure',
      'no-venting',
      'do-not-mix',
      'maker-first',
      'local-rules',
    )
    const hermetic = input.compressorDrive === 'hermetic-or-electric'
    if (hermetic) notes.cautions.push('electric-compressor-oil')
    const from = find(input.from, 'from')
    const to = find(input.to, 'to')
    checkKind(input, from.id, to.id)
    const decision = allowedConversion({ from: from.id, to: to.id, flammable: to.flammable })
    const decisions = allDecisions()
    if (input.machine !== 'road-vehicle') {
      notes.assumptions.push({
        field: 'machine',
        taken: 'the decision for vehicle air conditioning',
        because: 'the list speaks of automobiles and has no row of its own for this machine',
      })
    }
    if (!input.originalCharge) {
      notes.warnings.push({
        code: 'no-original-charge',
        message: 'Without the old charge (label of the machine) no new one can be given.',
      })
    }
    const work = statements(...workFor(to.id, hermetic))
    const label = statements('fittings', 'fittings-differ', 'no-adapters', 'label', 'label-more')
    const published = to.id === 'R-134a' ? statements('high-side-43', 'high-side-20') : []
    notes.sources.push(
      ...decisions.map((entry) => sourceOf(entry.source as 'snap-app-b')),
      ...statementSources([...work, ...label, ...published], sourceOf),
    )
    const known = from.refrigerant && to.refrigerant ? [from.refrigerant, to.refrigerant] : []
    const [old, fresh] = known
    return withNotes(
      {
        from: from.id,
        to: to.id,
        decision,
        charge:
          old && fresh && fresh.info.id === 'R-134a' && input.originalCharge
            ? chargePart(input.originalCharge, old, fresh, notes)
            : undefined,
        highSide: old && fresh ? { ...highSide(old, fresh, input, notes), published } : undefined,
        accumulator: accumulator(input.accumulatorAge),
        work,
        label,
        decisions,
      },
      notes,
    )
  },
})

interface Found {
  readonly id: string
  readonly flammable: boolean
  readonly refrigerant: Refrigerant | undefined
}

/** A refrigerant of the registry, or one that only the list of decisions knows. */
function find(name: string, path: 'from' | 'to'): Found {
  try {
    const found = refrigerant(name)
    return { id: found.info.id, flammable: burns(found), refrigerant: found }
  } catch (error) {
    const listed = data.acceptability.find((row) => plain(row.to) === plain(name))
    if (listed) return { id: listed.to, flammable: false, refrigerant: undefined }
    throw error instanceof CalcError ? error.under(path) : error
  }
}

const plain = (name: string) => name.toLowerCase().replace(/[^a-z0-9]/gu, '')

function checkKind({ machine }: Input, from: string, to: string): void {
  if (machine === 'stationary') {
    throw new CalcError('refused', 'The decisions known here are for vehicle cabs.', {
      hint: 'For a stationary machine take its maker’s list of replacement refrigerants and the law of the place.',
      path: ['machine'],
    })
  }
  if (from === to) {
    throw new CalcError('bad-input', `${from} to ${to} is no conversion.`, {
      hint: 'To put the same refrigerant back, see recovery and charging.',
      path: ['to'],
    })
  }
}

function workFor(to: string, hermetic: boolean): readonly (keyof typeof data.statements)[] {
  const general = ['maker-procedure', 'leak-check-first', 'cools-before', 'all-out'] as const
  if (to !== 'R-134a')
    return ['maker-procedure', 'all-out', 'barrier-hose-blends', 'shut-off-switch', 'no-sham']
  return [
    ...general,
    'oil-out',
    ...(hermetic ? (['no-pag-electric'] as const) : []),
    'seals',
    'seals-left-in',
    'barrier-hose',
    'desiccant',
    'j1661',
    'accumulator-age',
    'shut-off-switch',
    'evacuate-fully',
    'start-low',
    'no-sham',
  ]
}

function highSide(old: Refrigerant, fresh: Refrigerant, input: Input, notes: Notes) {
  const given = input.condensingTemperature
  const place = resolvePlace(input)
  notes.assumptions.push(...place.assumptions)
  notes.warnings.push(...place.warnings)
  const { value, unit } = data.condensing
  const at = given ?? temperature(quantity('temperature', value, unit).si)
  if (!given) {
    notes.assumptions.push({
      field: 'condensingTemperature',
      taken: '130 °F (54 °C)',
      because: 'none was given; about 40 °F above a 90 °F day',
    })
  }
  const pressureOf = (r: Refrigerant) =>
    under('condensingTemperature', () => saturationPressure(r, at.si, 'bubble'))
  const [before, after] = [pressureOf(old), pressureOf(fresh)]
  notes.sources.push(...propertySources(old), ...propertySources(fresh))
  notes.warnings.push(...propertyWarnings(old), ...propertyWarnings(fresh))
  notes.steps.push({
    what: 'Rise of the high side at the same condensing temperature',
    formula: 'saturation pressure of the new refrigerant − that of the old',
    values: { condensingTemperature: at },
    gives: pressureDifference(after - before),
  })
  return {
    condensingTemperature: at,
    before: toGauge(before, place.barometerPa),
    after: toGauge(after, place.barometerPa),
    rise: pressureDifference(after - before),
  }
}

function accumulator(
  age: Quantity<'duration'> | undefined,
): 'replace' | 'may-stay' | 'cannot-tell' | 'not-given' {
  if (!age) return 'not-given'
  const limit = quantity('duration', data.accumulatorYears.value, 'yr').si
  const place = compareWithBand(age, 0, limit)
  if (place === 'above') return 'replace'
  return place === 'inside' ? 'may-stay' : 'cannot-tell'
}
