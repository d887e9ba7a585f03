import * as z from 'zod'
import data from '../../data/service/charging.json' with { type: 'json' }
import { ALL_DANGERS, dangersOf } from '../dangers.ts'
import { pickRefrigerant } from '../fields/index.ts'
import { resolvePlace } from '../instrument/index.ts'
import { type Notes, newNotes, withNotes } from '../notes.ts'
import { defineOperation } from '../operation.ts'
import { mass, quantityOut, say } from '../quantity/index.ts'
import type { Refrigerant } from '../refrigerant/index.ts'
import { sourceTable } from '../source-table.ts'
import { amountToAdd, scaleOut, scaleReadings } from './charging/amounts.ts'
import { cansOf, cansOut } from './charging/cans-part.ts'
import { checkWarming, weatherConditions } from './charging/conditions.ts'
import { type ChargingInput, fields } from './charging/fields.ts'
import { pressures } from './charging/flow.ts'
import { hoseOf, hoseOut } from './charging/hose-part.ts'
import { checkRoute, isBlendWithGlide, rightRoutes } from './charging/route.ts'
import { conditionOut } from './condition.ts'
import { propertySources, propertyWarnings } from './property-sources.ts'
import { statementOut, statementSources, statementTable } from './statement.ts'

const sourceOf = sourceTable(data.sources)
const statements = statementTable(data.statements, sourceOf)

const result = z.strictObject({
  refrigerant: z.string(),
  band: z.strictObject({ low: quantityOut, target: quantityOut, high: quantityOut }),
  toAdd: quantityOut,
  leavesSource: quantityOut.describe('Mass to add and hold-up of the hose together'),
  scale: scaleOut,
  hose: hoseOut.optional(),
  cans: cansOut.optional(),
  sourcePressure: quantityOut.optional().describe('Pressure in the cylinder or can'),
  flow: z
    .enum(['into-system', 'back-into-source', 'cannot-tell'])
    .optional()
    .describe('Which way the pressures drive it'),
  routes: z.array(statementOut).describe('Ways in that are right for this refrigerant'),
  conditions: z.array(conditionOut),
  practice: z.array(statementOut),
})

/** Charging: what the scale must read, which way in, and what not to do. */
export const charging = defineOperation({
  name: 'charging',
  summary: 'What the scale must read while charging, and the right way in',
  description:
    'Scale readings to stop at with the hold-up of the hose, number of small cans, liquid or vapour and on which side, limits for warming and weather. Refuses the high side with the engine running, liquid into the suction, zeotropic blends as vapour, and containers that are too warm.',
  fields,
  result,
  cautions: {
    always: [
      'pressure',
      'cold-burns',
      'asphyxiation',
      'no-high-side-running',
      'warm-water-only',
      'no-liquid-to-suction',
      'rotating-parts',
      'weigh-the-charge',
      'maker-first',
      'local-rules',
    ],
    mayAlso: ALL_DANGERS,
  },
  example: {
    refrigerant: 'R-134a',
    charge: '2 lb 6 oz',
    scaleStart: '24.50 lb',
    scaleDivision: '0.2 oz',
    hoseBore: '1/4 in',
    hoseLength: '72 in',
    hoseAtStart: 'evacuated',
    hoseAtEnd: 'liquid',
    sourceTemperature: '77 °F',
    engine: 'off',
    side: 'high',
    phase: 'liquid',
  },
  compute(input) {
    const r = pickRefrigerant(input.refrigerant)
    const notes = newNotes()
    const place = resolvePlace(input)
    notes.warnings.push(...propertyWarnings(r), ...place.warnings, ...checkRoute(r, input))
    if (input.systemPressure || input.sourceTemperature)
      notes.assumptions.push(...place.assumptions)
    warn(r, input, notes)
    checkWarming(input.waterTemperature, 'waterTemperature', notes)
    checkWarming(input.sourceTemperature, 'sourceTemperature', notes)

    const amount = amountToAdd(input.charge, input.alreadyIn, input.tolerance, notes)
    const hose = hoseOf(r, input, amount.tolerance.si, place.barometerPa, notes)
    const holdUpKg = hose?.holdUp.si ?? 0
    const leavesKg = Math.max(amount.toAdd.si + holdUpKg, 0)
    const { charge, sourceContents } = input
    if (sourceContents && sourceContents.si < leavesKg) {
      notes.warnings.push({
        code: 'source-too-empty',
        message: `The source holds ${say(sourceContents)}, less than the ${say(mass(leavesKg))} that must leave it.`,
      })
    }
    const routes = statements(...rightRoutes(r, input.engine))
    const practice = statements(...practiceOf(r, input))
    notes.sources.push(
      ...statementSources([...routes, ...practice], sourceOf),
      ...propertySources(r),
    )
    const { tolerance, toAdd } = amount
    return withNotes(
      {
        refrigerant: r.info.id,
        band: {
          low: mass(Math.max(charge.si - tolerance.si, 0)),
          target: charge,
          high: mass(charge.si + tolerance.si),
        },
        toAdd,
        leavesSource: mass(leavesKg),
        scale: scaleReadings(
          amount,
          holdUpKg,
          input.scale,
          input.scaleStart,
          input.scaleDivision,
          notes,
        ),
        hose,
        cans: cansOf(input, leavesKg, notes),
        ...pressures(r, input, place.barometerPa, notes),
        routes,
        conditions: [
          ...weatherConditions(input.outdoorTemperature, input.judgeBy, input.equipment, notes),
        ],
        practice,
      },
      notes,
    )
  },
})

function warn(r: Refrigerant, input: ChargingInput, notes: Notes): void {
  notes.cautions.push(
    'pressure',
    'cold-burns',
    'asphyxiation',
    'no-high-side-running',
    'warm-water-only',
    'no-liquid-to-suction',
    'weigh-the-charge',
    'maker-first',
    'local-rules',
  )
  if (input.engine !== 'off') {
    notes.cautions.push('rotating-parts')
    if (!input.alreadyIn) notes.cautions.push('compressor-in-vacuum')
  }
  notes.cautions.push(...dangersOf({ refrigerant: r }))
}

function practiceOf(
  r: Refrigerant,
  input: ChargingInput,
): readonly (keyof typeof data.statements)[] {
  return [
    'weight-decides',
    ...(isBlendWithGlide(r) ? (['blend-as-liquid'] as const) : []),
    ...(isBlendWithGlide(r) && input.supply === 'small-cans' ? (['whole-cans'] as const) : []),
    'no-liquid-suction',
    ...(input.supply === 'charging-machine'
      ? (['charging-machine', 'charging-machine-hoses'] as const)
      : []),
    ...(input.supply === 'charging-machine' ? [] : (['clear-hoses'] as const)),
    'container-below-50-c',
    'cylinder-125-f',
    ...(input.judgeBy === 'subcooling' ? (['indoor-70-80'] as const) : []),
  ]
}
