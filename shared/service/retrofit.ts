import * as z from 'zod'
import data from '../../data/service/retrofit.json' with { type: 'json' }
import { ALL_DANGERS, dangersOf } from '../dangers.ts'
import { CalcError } from '../errors.ts'
import {
  burns,
  compressorDriveIn,
  labelChargeIn,
  type Machine,
  machineIn,
  newRefrigerantIn,
  placeIn,
  refrigerantIn,
} from '../fields/index.ts'
import { newNotes, withNotes } from '../notes.ts'
import { type Assumption, defineOperation } from '../operation.ts'
import { compareWithBand, type Quantity, quantity, quantityIn } from '../quantity/index.ts'
import { propertyUncertainty, type Refrigerant, refrigerant } from '../refrigerant/index.ts'
import { fillIn } from '../sentence.ts'
import { sourceTable } from '../source-table.ts'
import { acceptabilityOut, allDecisions, allowedConversion } from './retrofit/acceptability.ts'
import { chargePart, retrofitChargeOut } from './retrofit/charge-part.ts'
import { CONDENSING_K, highSide, highSideOut } from './retrofit/high-side.ts'
import { retrofitTold } from './retrofit/told.ts'
import { statementOut, statementSources, statementTable } from './statement.ts'

const sourceOf = sourceTable(data.sources)
const statements = statementTable(data.statements, sourceOf)

const fields = {
  refrigerant: refrigerantIn.describe('Refrigerant that the system was built for, such as R-12'),
  newRefrigerant: newRefrigerantIn,
  machine: machineIn
    .optional()
    .describe('Kind of machine; the decisions are for vehicle cabs, off-road if left out'),
  labelCharge: labelChargeIn
    .optional()
    .describe('Charge of the old refrigerant on the label of the machine'),
  accumulatorAge: quantityIn.duration
    .optional()
    .describe('Age of the accumulator or drier, such as 7 yr'),
  compressorDrive: compressorDriveIn.optional(),
  condensingTemperature: quantityIn.temperature
    .optional()
    .describe('Condensing temperature at which the pressures are compared; 130 °F if left out'),
  ...placeIn,
}

const result = z.strictObject({
  refrigerant: z.string().describe('The old refrigerant'),
  newRefrigerant: z.string().describe('The new one'),
  decision: acceptabilityOut.describe('The decision that allows it'),
  charge: retrofitChargeOut.optional().describe('For R-134a after R-12'),
  highSide: highSideOut.optional().describe('What the conversion does to the high side'),
  accumulator: z
    .enum(['replace', 'may-stay', 'cannot-tell', 'not-given'])
    .describe('What its age asks for'),
  work: z.array(statementOut).describe('What the conversion takes, in order'),
  label: z.array(statementOut).describe('Fittings and label'),
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
      'pressure',
      'cold-burns',
      'do-not-mix',
      'maker-first',
      'local-rules',
    ],
    mayAlso: ALL_DANGERS,
  },
  example: {
    refrigerant: 'R-12',
    newRefrigerant: 'R-134a',
    machine: 'off-road',
    labelCharge: '3 lb',
    accumulatorAge: '12 yr',
    compressorDrive: 'open',
  },
  compute(input) {
    const notes = newNotes()
    const { compressorDrive, machine = 'off-road', labelCharge } = input
    const from = find(input.refrigerant, 'refrigerant')
    const to = find(input.newRefrigerant, 'newRefrigerant')
    notes.cautions.push(
      ...dangersOf({
        refrigerant: from.refrigerant,
        compressorDrive,
        does: ['opens', 'recovers'],
      }),
    )
    checkKind(machine, from.id, to.id)
    const decision = allowedConversion({ from: from.id, to: to.id, flammable: to.flammable })
    const decisions = allDecisions()
    notes.assumptions.push(...machineAssumption(input.machine))
    if (!labelCharge) {
      notes.warnings.push({ code: 'no-label-charge', message: data.warnings['no-label-charge'] })
    }
    const work = statements(...workFor(to.id, compressorDrive === 'electric'))
    const label = statements('fittings', 'fittings-differ', 'no-adapters', 'label', 'label-more')
    const published = to.id === 'R-134a' ? statements('high-side-43', 'high-side-20') : []
    notes.sources.push(
      ...decisions.map((entry) => sourceOf(entry.source as 'snap-app-b')),
      ...statementSources([...work, ...label, ...published], sourceOf),
    )
    const old = from.refrigerant
    const fresh = to.refrigerant
    const charge =
      old && fresh && fresh.info.id === 'R-134a' && labelCharge
        ? chargePart(labelCharge, old, fresh, notes)
        : undefined
    const pressures = old && fresh ? highSide(old, fresh, input, notes) : undefined
    const age = accumulator(input.accumulatorAge)
    return {
      ...withNotes(
        {
          refrigerant: from.id,
          newRefrigerant: to.id,
          decision,
          charge,
          highSide: pressures && { ...pressures, published },
          accumulator: age,
          work,
          label,
          decisions,
        },
        notes,
      ),
      told: retrofitTold({
        old: from.id,
        new: to.id,
        charge,
        rise: pressures?.rise,
        accumulator: age,
        age: input.accumulatorAge?.in('yr'),
        estimated: [old, fresh].some(
          (r) => r !== undefined && propertyUncertaintyAt(r) === 'estimated',
        ),
      }),
    }
  },
})

const propertyUncertaintyAt = (r: Refrigerant) =>
  propertyUncertainty(r, CONDENSING_K, 'bubble').basis

/** The list speaks of automobiles and has no row of its own for other cabs. */
function machineAssumption(machine: Machine | undefined): readonly Assumption[] {
  if (machine === 'road-vehicle') return []
  return [
    {
      field: 'machine',
      taken: `${machine === undefined ? 'off-road, ' : ''}the decision for vehicle air conditioning`,
      because: 'the list speaks of automobiles and has no row of its own for this machine',
    },
  ]
}

interface Found {
  readonly id: string
  readonly flammable: boolean
  readonly refrigerant: Refrigerant | undefined
}

/** A refrigerant of the registry, or one that only the list of decisions knows. */
function find(name: string, path: 'refrigerant' | 'newRefrigerant'): Found {
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

/** @throws {CalcError} for a machine that no decision here speaks of, or no change at all. */
function checkKind(machine: Machine, from: string, to: string): void {
  const words = { old: from, new: to }
  if (machine === 'stationary' || machine === 'refrigerated-cargo') {
    throw new CalcError('refused', data.refusals['cab-only'], {
      hint: data.refusals['cab-only-hint'],
      path: ['machine'],
    })
  }
  if (from === to) {
    throw new CalcError('bad-input', fillIn(data.refusals.same, words), {
      hint: data.refusals['same-hint'],
      path: ['newRefrigerant'],
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

function accumulator(
  age: Quantity<'duration'> | undefined,
): 'replace' | 'may-stay' | 'cannot-tell' | 'not-given' {
  if (!age) return 'not-given'
  const limit = quantity('duration', data.accumulatorYears.value, 'yr').si
  const place = compareWithBand(age, 0, limit)
  if (place === 'above') return 'replace'
  return place === 'inside' ? 'may-stay' : 'cannot-tell'
}
