import * as z from 'zod'
import data from '../../data/service/recovery.json' with { type: 'json' }
import { ALL_DANGERS, dangersOf, isFluorinated } from '../dangers.ts'
import { CalcError, refusal } from '../errors.ts'
import { burns, isCarbonDioxide, MACHINES, pickRefrigerant } from '../fields/index.ts'
import { resolvePlace } from '../instrument/index.ts'
import { type Notes, newNotes, withNotes } from '../notes.ts'
import { defineOperation } from '../operation.ts'
import { type Quantity, widthOf } from '../quantity/index.ts'
import type { Refrigerant } from '../refrigerant/index.ts'
import { lawOfJob } from '../rules/job-law.ts'
import { fillIn } from '../sentence.ts'
import { sourceTable } from '../source-table.ts'
import { propertyWarnings } from './property-sources.ts'
import { refuseMixing } from './recovery/cylinder-contents.ts'
import { type CylinderResult, cylinderOut, cylinderPart } from './recovery/cylinder-part.ts'
import { type ExpectedResult, expectedOut, expectedPart } from './recovery/expected-part.ts'
import { type RecoveryInput, recoveryFields } from './recovery/fields.ts'
import { type LevelResult, levelOut, levelPart } from './recovery/level-part.ts'
import { recoveryTold } from './recovery/told.ts'
import { statementOut, statementSources, statementTable } from './statement.ts'

const sourceOf = sourceTable(data.sources)
const statements = statementTable(data.statements, sourceOf)

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
  opens: lawOfJob,
  summary: 'What should come out, how far to evacuate, and how much the recovery cylinder takes',
  description:
    'Before refrigerant is taken out: the expected mass (from the label, or from pressure and volume at rest), the level of evacuation that US federal rules ask for, and what the recovery cylinder may hold by weight and by its service pressure. Refuses disposable cylinders, mixing, overfilling, a cylinder that is too weak, and hydrocarbons into a machine that is not rated for them.',
  fields: recoveryFields,
  check: checkFields,
  result,
  cautions: {
    always: ['pressure', 'cold-burns', 'asphyxiation', 'do-not-mix', 'maker-first', 'local-rules'],
    mayAlso: ALL_DANGERS,
  },
  example: {
    refrigerant: 'R-134a',
    law: 'us-federal',
    machine: 'off-road',
    compressorDrive: 'open',
    labelCharge: '2 lb 6 oz',
    cylinder: 'refillable',
    waterCapacity: '47.7 lb',
    tare: '28.0 lb',
    grossNow: '41.5 lb',
    servicePressure: '400 psi',
    cylinderHolds: 'R-134a',
    requalified: '2023-04',
    date: '2026-11-25',
  },
  compute(input) {
    const r = pickRefrigerant(input.refrigerant)
    const notes = newNotes()
    notes.cautions.push(
      ...dangersOf({
        refrigerant: r,
        compressorDrive: input.compressorDrive,
        does: ['opens', 'recovers'],
      }),
    )
    refuseUnrated(r, input, notes)
    const place = resolvePlace(input)
    const level = levelOf(r, input, place, notes)
    if (input.systemPressure?.kind === 'gaugePressure' || level?.gaugeReading) {
      notes.assumptions.push(...place.assumptions)
      notes.sources.push(...place.sources)
      notes.warnings.push(...place.warnings)
    }
    notes.warnings.push(...propertyWarnings(r))
    const expected = expectedPart(r, input, place, notes)
    const cylinder = cylinderOf(input, r, notes)
    const practice = statements(...practiceOf(r, cylinder, input.requalificationYears))
    notes.sources.push(...statementSources(practice, sourceOf))
    const fits = fitsInto(cylinder, input.waterCapacity, expected)
    return {
      ...withNotes(
        { refrigerant: r.info.id, expected, fits, evacuation: level, cylinder, practice },
        notes,
      ),
      told: recoveryTold({ r, input, expected, cylinder, level, fits }),
    }
  },
})

/** @throws {CalcError} for what is forbidden whatever else was given, and for a level without a machine. */
function checkFields(input: RecoveryInput): void {
  if (input.cylinder === 'disposable') {
    const [message = '', hint = ''] = data.refusals.disposable
    throw refusal(message, { hint, path: ['cylinder'], cautions: ['no-disposable-refill'] })
  }
  if (!input.machine && (input.compressorDrive || input.equipmentMade || input.factorySealed)) {
    throw new CalcError('missing-input', 'The level of evacuation takes the kind of machine.', {
      hint: `Give machine, one of ${MACHINES.join(', ')}; or leave out compressorDrive, factorySealed and equipmentMade.`,
      path: ['machine'],
    })
  }
}

/** Hydrocarbons never go into a machine that is not rated for them. */
function refuseUnrated(r: Refrigerant, { flammableRated }: RecoveryInput, notes: Notes): void {
  if (!burns(r) || isFluorinated(r) || flammableRated === true) return
  const words = { refrigerant: r.info.id }
  if (flammableRated === undefined) {
    notes.warnings.push({
      code: 'hydrocarbon-machine',
      message: fillIn(data.warnings['hydrocarbon-machine'], words),
    })
    return
  }
  const [message = '', hint = ''] = data.refusals.hydrocarbon
  throw refusal(fillIn(message, words), {
    hint,
    path: ['flammableRated'],
    cautions: ['hydrocarbons-rated-machine', 'flammable'],
  })
}

/** The level of evacuation: US federal law's, so only under it or where no law was given. */
function levelOf(
  r: Refrigerant,
  input: RecoveryInput,
  place: ReturnType<typeof resolvePlace>,
  notes: Notes,
): LevelResult | undefined {
  if (!input.machine) return undefined
  if (input.law === undefined || input.law === 'us-federal') {
    return levelPart(r, input, place, notes)
  }
  notes.warnings.push({
    code: 'level-of-another-law',
    message: fillIn(data.warnings['level-of-another-law'], { law: input.law }),
  })
  return undefined
}

function practiceOf(r: Refrigerant, cylinder: CylinderResult | undefined, years: number) {
  if (isCarbonDioxide(r)) return ['carbon-dioxide'] as const
  return [
    ...(['weigh', 'one-refrigerant', 'damaged-cylinder', 'disposable'] as const),
    ...(burns(r) ? (['flammable-cylinder', 'guideline-k-nonflammable'] as const) : []),
    ...(r.info.id === 'R-12' ? (['evacuate-cylinder'] as const) : []),
    ...(cylinder ? (['service-pressure', 'overfill-cut-off'] as const) : []),
    ...(cylinder?.requalification && years === data.requalificationYears.value
      ? (['five-year-stamp'] as const)
      : []),
    ...(cylinder?.requalification?.status === 'overdue'
      ? (['overdue', 'filled-before-due'] as const)
      : []),
  ]
}

function cylinderOf(
  input: RecoveryInput,
  r: Refrigerant,
  notes: Notes,
): CylinderResult | undefined {
  const { tare, grossNow, grossRating, cylinder, cylinderHolds, requalified } = input
  const given = [tare, grossNow, grossRating, cylinder, cylinderHolds, requalified]
  if (!input.waterCapacity) {
    if (given.every((entry) => entry === undefined)) return undefined
    refuseMixing(r, cylinderHolds)
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
  return cylinderPart(r, { ...input, waterCapacity: input.waterCapacity }, notes)
}

/** The room that is told is the least there can be; that nothing fits is said of the most. */
function fitsInto(
  cylinder: CylinderResult | undefined,
  waterCapacity: Quantity<'mass'> | undefined,
  expected: ExpectedResult | undefined,
): 'yes' | 'no' | 'cannot-tell' | undefined {
  const { room, contentsNow } = cylinder ?? {}
  if (!room || !contentsNow || !waterCapacity || !expected) return undefined
  if (expected.most.si <= room.si) return 'yes'
  const { si: water, plusMinus = 0 } = waterCapacity
  const held = contentsNow.si - widthOf(contentsNow)
  const most = (cylinder?.limits[0]?.contents.si ?? 0) * ((water + plusMinus) / (water - plusMinus))
  return expected.least.si > most - held ? 'no' : 'cannot-tell'
}
