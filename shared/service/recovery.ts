import * as z from 'zod'
import data from '../../data/service/recovery.json' with { type: 'json' }
import { ALL_DANGERS, dangersOf } from '../dangers.ts'
import { CalcError } from '../errors.ts'
import {
  burns,
  COMPRESSOR_DRIVES as COMPRESSORS,
  pickRefrigerant,
  placeIn,
  refrigerantIn,
} from '../fields/index.ts'
import { resolvePlace } from '../instrument/index.ts'
import { type Notes, newNotes, withNotes } from '../notes.ts'
import { defineOperation } from '../operation.ts'
import { quantityIn } from '../quantity/index.ts'
import type { Refrigerant } from '../refrigerant/index.ts'
import { sourceTable } from '../source-table.ts'
import { propertyWarnings } from './property-sources.ts'
import { refuseMixing } from './recovery/cylinder-contents.ts'
import { type CylinderResult, cylinderOut, cylinderPart } from './recovery/cylinder-part.ts'
import { EQUIPMENT_DATES, MACHINES } from './recovery/evacuation-level.ts'
import { type ExpectedResult, expectedOut, expectedPart } from './recovery/expected-part.ts'
import { levelOut, levelPart } from './recovery/level-part.ts'
import { statementOut, statementSources, statementTable } from './statement.ts'

const sourceOf = sourceTable(data.sources)
const statements = statementTable(data.statements, sourceOf)

const fields = {
  refrigerant: refrigerantIn,
  machine: z
    .enum(MACHINES)
    .optional()
    .describe('What is to be opened; gives the level of evacuation (US federal)'),
  compressorDrive: z
    .enum(COMPRESSORS)
    .optional()
    .describe('For an off-road machine: shaft with a seal, or motor inside'),
  labelCharge: quantityIn.mass.optional().describe('Full charge on the label of the machine'),
  recovered: quantityIn.mass.optional().describe('Mass that came out, by the scale or the machine'),
  systemPressure: quantityIn.pressure.optional().describe('Pressure of the system at rest'),
  systemTemperature: quantityIn.temperature
    .optional()
    .describe('Temperature of the system at rest, the same all over'),
  internalVolume: quantityIn.volume
    .optional()
    .describe('Internal volume of the refrigerant circuit, from the maker or measured'),
  equipmentMade: z
    .enum(EQUIPMENT_DATES)
    .optional()
    .describe('When the recovery equipment was made or imported'),
  cylinder: z
    .enum(['refillable', 'disposable'])
    .optional()
    .describe('Kind of the recovery cylinder'),
  waterCapacity: quantityIn.mass.optional().describe('WC on the collar of the cylinder'),
  tare: quantityIn.mass.optional().describe('TW on the collar of the cylinder'),
  grossNow: quantityIn.mass.optional().describe('What the cylinder weighs now'),
  grossRating: quantityIn.mass
    .optional()
    .describe('Highest gross weight marked on the cylinder, where it has one'),
  cylinderHolds: z
    .string()
    .max(60)
    .optional()
    .describe('Refrigerant already in the cylinder, or "empty"'),
  requalified: z
    .string()
    .max(20)
    .optional()
    .describe('Month of the last requalification stamped on the collar, YYYY-MM'),
  on: z.string().max(20).optional().describe('Day of the work, YYYY-MM-DD'),
  requalificationYears: z
    .literal([5, 10, 12])
    .default(5)
    .describe('Requalification period of the cylinder: 5, 10 or 12 years'),
  ...placeIn,
}

type Input = z.output<z.ZodObject<typeof fields>>

const result = z.strictObject({
  refrigerant: z.string(),
  expected: expectedOut.optional().describe('What should come out'),
  fits: z
    .enum(['yes', 'no', 'cannot-tell'])
    .optional()
    .describe('Whether the cylinder takes what should come out'),
  evacuation: levelOut.optional().describe('How far to evacuate before opening, US federal'),
  cylinder: cylinderOut.optional(),
  practice: z.array(statementOut),
})

/** Recovery: what should come out, how far to evacuate, and what the cylinder takes. */
export const recovery = defineOperation({
  name: 'recovery',
  opens: true,
  summary: 'What should come out, how far to evacuate, and how much the recovery cylinder takes',
  description:
    'Before refrigerant is taken out: the expected mass (from the label, or from pressure and volume at rest), the level of evacuation that US federal rules ask for, and what the recovery cylinder may hold by weight. Refuses disposable cylinders, mixing and overfilling.',
  fields,
  result,
  cautions: {
    always: [
      'pressure',
      'cold-burns',
      'asphyxiation',
      'full-cylinder',
      'no-disposable-refill',
      'do-not-mix',
      'no-venting',
      'local-rules',
    ],
    mayAlso: ALL_DANGERS,
  },
  example: {
    refrigerant: 'R-134a',
    machine: 'off-road',
    compressorDrive: 'open',
    labelCharge: '2 lb 6 oz',
    cylinder: 'refillable',
    waterCapacity: '47.7 lb',
    tare: '28.0 lb',
    grossNow: '41.5 lb',
    cylinderHolds: 'R-134a',
    requalified: '2023-04',
    on: '2026-11-25',
  },
  compute(input) {
    const r = pickRefrigerant(input.refrigerant)
    const notes = newNotes()
    notes.cautions.push(
      'pressure',
      'cold-burns',
      'asphyxiation',
      'local-rules',
      ...(r.info.id === 'R-744' ? [] : (['no-venting'] as const)),
      ...dangersOf({ refrigerant: r }),
    )
    const { barometerPa, assumptions, warnings } = resolvePlace(input)
    const readsGauge = input.systemPressure?.kind === 'gaugePressure' || input.machine !== undefined
    if (readsGauge) notes.assumptions.push(...assumptions)
    notes.warnings.push(...propertyWarnings(r), ...warnings)

    const expected = expectedPart(r, input, barometerPa, notes)
    const cylinder = cylinderOf(input, r, notes)
    if (!input.machine && (input.compressorDrive || input.equipmentMade)) {
      throw new CalcError('missing-input', 'The level of evacuation takes the kind of machine.', {
        hint: `Give machine, one of ${MACHINES.join(', ')}; or leave out compressorDrive and equipmentMade.`,
        path: ['machine'],
      })
    }
    const level = input.machine
      ? levelPart(r, { ...input, machine: input.machine }, barometerPa, notes)
      : undefined
    const practice = statements(
      ...(['weigh', 'one-refrigerant', 'damaged-cylinder', 'disposable'] as const),
      ...(burns(r) ? (['flammable-cylinder', 'guideline-k-nonflammable'] as const) : []),
      ...(r.info.id === 'R-12' ? (['evacuate-cylinder'] as const) : []),
      ...(cylinder?.requalification?.status === 'overdue'
        ? (['overdue', 'filled-before-due'] as const)
        : []),
    )
    notes.sources.push(...statementSources(practice, sourceOf))
    return withNotes(
      {
        refrigerant: r.info.id,
        expected,
        fits: fitsInto(cylinder?.room?.si, expected),
        evacuation: level,
        cylinder,
        practice,
      },
      notes,
    )
  },
})

function cylinderOf(input: Input, r: Refrigerant, notes: Notes): CylinderResult | undefined {
  if (input.cylinder === 'disposable') {
    throw new CalcError('refused', 'A disposable cylinder must never take recovered refrigerant.', {
      hint: 'Use a refillable recovery cylinder with a water capacity, a tare and a requalification date on its collar.',
      path: ['cylinder'],
    })
  }
  const { tare, grossNow, grossRating, cylinder, cylinderHolds, requalified } = input
  const given = [tare, grossNow, grossRating, cylinder, cylinderHolds, requalified]
  if (!input.waterCapacity) {
    if (given.every((entry) => entry === undefined)) return undefined
    refuseMixing(r, cylinderHolds, notes)
    throw new CalcError('missing-input', 'The water capacity of the cylinder is missing.', {
      hint: 'Read WC on the collar, such as 47.7 lb.',
      path: ['waterCapacity'],
    })
  }
  if (!input.cylinder) {
    throw new CalcError('missing-input', 'Is the cylinder refillable or disposable?', {
      hint: 'A refillable one has WC, TW and a requalification date on its collar; a disposable one is marked NRC.',
      path: ['cylinder'],
    })
  }
  notes.cautions.push('full-cylinder', 'no-disposable-refill', 'do-not-mix')
  return cylinderPart(
    r,
    { ...input, waterCapacity: input.waterCapacity, cylinder: input.cylinder },
    notes,
  )
}

function fitsInto(
  roomKg: number | undefined,
  expected: ExpectedResult | undefined,
): 'yes' | 'no' | 'cannot-tell' | undefined {
  if (roomKg === undefined || !expected) return undefined
  if (expected.most.si <= roomKg) return 'yes'
  return expected.least.si > roomKg ? 'no' : 'cannot-tell'
}
