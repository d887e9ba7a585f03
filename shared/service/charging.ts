import { z } from 'zod'
import data from '../../data/service/charging.json' with { type: 'json' }
import { cautions } from '../cautions.ts'
import { CalcError } from '../errors.ts'
import { type Computed, defineOperation } from '../operation.ts'
import {
  mass,
  quantity,
  quantityIn,
  quantityOut,
  toAbsolute,
  toGauge,
  volume,
} from '../quantity/index.ts'
import { type Refrigerant, saturationPressure } from '../refrigerant/index.ts'
import { amountToAdd, scaleOut, scaleReadings } from './charging/amounts.ts'
import { cansFor } from './charging/cans.ts'
import { checkWarming, weatherConditions } from './charging/conditions.ts'
import { HOSE_STATES, type HoseState, hoseDensity, hoseVolume } from './charging/hose.ts'
import { checkRoute, isBlendWithGlide, rightRoutes, SUPPLIES } from './charging/route.ts'
import { conditionOut } from './condition.ts'
import { type Notes, newNotes, withNotes } from './notes.ts'
import { placeIn, resolveBarometer } from './place.ts'
import { propertySources } from './property-sources.ts'
import { flammableCautions, pickRefrigerant, refrigerantIn, under } from './refrigerant-input.ts'
import { say } from './say.ts'
import { sourceTable } from './source-table.ts'
import { statementOut, statementSources, statementTable } from './statement.ts'

const sourceOf = sourceTable(data.sources)
const statements = statementTable(data.statements, sourceOf)

const fields = {
  refrigerant: refrigerantIn,
  charge: quantityIn.mass.describe('Full charge to reach: the label’s, or the corrected target'),
  tolerance: quantityIn.mass.optional().describe('How far off the charge may be, to either side'),
  alreadyIn: quantityIn.mass
    .optional()
    .describe('Mass weighed in so far; leave out after evacuation'),
  supply: z.enum(SUPPLIES).default('cylinder').describe('What the refrigerant comes from'),
  scale: z
    .enum(['under-source', 'under-machine'])
    .default('under-source')
    .describe('What stands on the scale: the source or the machine being charged'),
  scaleStart: quantityIn.mass.optional().describe('Scale reading before the valve is opened'),
  scaleDivision: quantityIn.mass.optional().describe('Smallest step that the scale shows'),
  sourceContents: quantityIn.mass
    .optional()
    .describe('Refrigerant in the cylinder before charging'),
  canNet: quantityIn.mass.optional().describe('Small cans: net mass on the label of one'),
  canLeft: quantityIn.mass.optional().describe('Small cans: what stays in one when it is empty'),
  hoseBore: quantityIn.length.optional().describe('Inner diameter of the charging hose'),
  hoseLength: quantityIn.length.optional().describe('Length of the charging hose'),
  hoseAtStart: z
    .enum(HOSE_STATES)
    .optional()
    .describe('What the hose held when the scale was read at the start'),
  hoseAtEnd: z.enum(HOSE_STATES).optional().describe('What the hose holds when it is taken off'),
  hosePressure: quantityIn.pressure
    .optional()
    .describe('Pressure of the vapour in the hose at the end, such as the low side’s'),
  sourceTemperature: quantityIn.temperature
    .optional()
    .describe('Temperature of the cylinder or can'),
  waterTemperature: quantityIn.temperature
    .optional()
    .describe('Temperature of the water that warms the cylinder or can'),
  outdoorTemperature: quantityIn.temperature.optional().describe('Air temperature at the place'),
  systemPressure: quantityIn.pressure
    .optional()
    .describe('Pressure of the side that is charged into'),
  engine: z.enum(['off', 'running']).optional().describe('Engine (compressor) while charging'),
  side: z.enum(['high', 'low']).optional().describe('Side that is charged into'),
  phase: z.enum(['liquid', 'vapour']).optional().describe('How the refrigerant leaves its source'),
  throttled: z
    .boolean()
    .optional()
    .describe('Liquid is throttled to vapour on the way into the low side'),
  judgeBy: z
    .enum(['weight', 'subcooling', 'superheat'])
    .default('weight')
    .describe('What decides that the charge is right'),
  equipment: z.enum(['vehicle', 'stationary']).optional().describe('Kind of machine'),
  ...placeIn,
}

type Input = z.output<z.ZodObject<typeof fields>>

const hoseOut = z.strictObject({
  volume: quantityOut,
  atStart: z.enum(HOSE_STATES),
  atEnd: z.enum(HOSE_STATES),
  holdUp: quantityOut.describe(
    'What leaves the source and stays in the hose; negative: given back',
  ),
  fullOfLiquid: quantityOut.describe('What the hose would hold full of liquid'),
})

const cansOut = z.strictObject({
  whole: z.number().describe('Cans that go in whole'),
  fromLast: quantityOut.describe('What to take from the last can'),
  opened: z.number().describe('Cans to have at hand'),
})

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
  cautions: [
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
  sources: [sourceOf('tm-5-3805-290'), sourceOf('tm-5-2420-230'), sourceOf('ra3-2-2013')],
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
    const place = resolveBarometer(input)
    notes.warnings.push(...place.warnings, ...checkRoute(r, input))
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

function warn(r: Refrigerant, input: Input, notes: Notes): void {
  notes.cautions.push(
    ...cautions(
      'pressure',
      'cold-burns',
      'asphyxiation',
      'no-high-side-running',
      'warm-water-only',
      'no-liquid-to-suction',
      'weigh-the-charge',
      'maker-first',
      'local-rules',
    ),
  )
  if (input.engine !== 'off') notes.cautions.push(...cautions('rotating-parts'))
  notes.cautions.push(...flammableCautions(r))
}

function practiceOf(r: Refrigerant, input: Input): readonly (keyof typeof data.statements)[] {
  return [
    'weight-decides',
    ...(isBlendWithGlide(r) ? (['blend-as-liquid'] as const) : []),
    ...(isBlendWithGlide(r) && input.supply === 'small-cans' ? (['whole-cans'] as const) : []),
    'no-liquid-suction',
    ...(input.supply === 'charging-machine' ? (['charging-machine'] as const) : []),
    ...(input.supply === 'charging-machine' ? [] : (['clear-hoses'] as const)),
    'container-below-50-c',
    'cylinder-125-f',
    ...(input.judgeBy === 'subcooling' ? (['indoor-70-80'] as const) : []),
  ]
}

const ROOM_K = quantity('temperature', 77, '°F').si

function hoseOf(
  r: Refrigerant,
  input: Input,
  toleranceKg: number,
  barometerPa: number,
  notes: Notes,
): Computed<z.output<typeof hoseOut>> | undefined {
  const { hoseBore, hoseLength, supply } = input
  if (!hoseBore && !hoseLength) {
    if (supply !== 'charging-machine') {
      notes.assumptions.push({
        field: 'hoseBore',
        taken: 'nothing stays in the charging hose',
        because: 'bore and length were not given; a hose full of liquid can hold 2 oz and more',
      })
    }
    return undefined
  }
  if (!hoseBore || !hoseLength) {
    throw new CalcError('missing-input', 'The hold-up of a hose takes its bore and its length.', {
      hint: 'Give both, such as 1/4 in and 72 in.',
      path: [hoseBore ? 'hoseLength' : 'hoseBore'],
    })
  }
  const atEnd: HoseState = input.hoseAtEnd ?? (input.phase === 'vapour' ? 'vapour' : 'liquid')
  const atStart: HoseState = input.hoseAtStart ?? 'evacuated'
  const reading = input.sourceTemperature ?? input.outdoorTemperature
  if (!reading) {
    notes.assumptions.push({
      field: 'sourceTemperature',
      taken: 'a hose at 77 °F (25 °C)',
      because: 'no temperature of source or air was given',
    })
  }
  const temperatureK = reading?.si ?? ROOM_K
  const { hosePressure } = input
  const vapourPa = hosePressure
    ? under('hosePressure', () => toAbsolute(hosePressure, barometerPa).si)
    : undefined
  const space = hoseVolume(hoseBore.si, hoseLength.si)
  const holds = (state: HoseState, pressurePa?: number) =>
    space * hoseDensity(r, state, temperatureK, pressurePa)
  const full = under('sourceTemperature', () => holds('liquid'))
  const end = under('hosePressure', () => holds(atEnd, vapourPa))
  const holdUpKg = end - holds(atStart)
  if (input.hoseAtEnd === undefined) {
    notes.assumptions.push({
      field: 'hoseAtEnd',
      taken: `a hose that ends up full of ${atEnd}`,
      because: 'it was not said what stays in it',
    })
    if (full - holds('vapour') > toleranceKg) {
      notes.warnings.push({
        code: 'hose-state-matters',
        message: `Full of liquid the hose holds ${say(mass(full))}, full of vapour ${say(mass(holds('vapour')))}: the difference is more than the tolerance. See to it which one stays, and say so.`,
      })
    }
  }
  notes.steps.push({
    what: 'Hold-up of the hose',
    formula: 'π/4 × bore² × length × (density at the end − density at the start)',
    values: { hoseBore, hoseLength, atStart, atEnd, volume: volume(space) },
    gives: mass(holdUpKg),
  })
  return {
    volume: volume(space),
    atStart,
    atEnd,
    holdUp: mass(holdUpKg),
    fullOfLiquid: mass(full),
  }
}

function cansOf(
  input: Input,
  leavesKg: number,
  notes: Notes,
): Computed<z.output<typeof cansOut>> | undefined {
  if (input.supply !== 'small-cans') return undefined
  if (!input.canNet) {
    throw new CalcError('missing-input', 'The net mass of a can is missing.', {
      hint: 'Read it on the label, such as 12 oz.',
      path: ['canNet'],
    })
  }
  if (!input.canLeft) {
    notes.assumptions.push({
      field: 'canLeft',
      taken: 'cans that empty completely',
      because: 'what stays in an empty can was not given; weigh one before and after',
    })
  }
  const { whole, lastKg, opened } = cansFor(leavesKg, input.canNet, input.canLeft?.si ?? 0)
  notes.steps.push({
    what: 'Small cans',
    formula: 'mass that must leave the cans ÷ (net mass − what stays in an empty can)',
    values: { needed: mass(leavesKg), net: input.canNet, left: input.canLeft ?? mass(0) },
    gives: `${whole} whole and ${say(mass(lastKg))} from the last`,
  })
  return { whole, fromLast: mass(lastKg), opened }
}

/** One psi, a small division of a service gauge, where no uncertainty is stated, Pa. */
const GAUGE_PA = 7_000

function pressures(r: Refrigerant, input: Input, barometerPa: number, notes: Notes) {
  const { sourceTemperature, systemPressure } = input
  if (!sourceTemperature) return {}
  const sourcePa = under('sourceTemperature', () =>
    saturationPressure(r, sourceTemperature.si, 'bubble'),
  )
  const sourcePressure = toGauge(sourcePa, barometerPa)
  if (!systemPressure) return { sourcePressure }
  const system = under('systemPressure', () => toAbsolute(systemPressure, barometerPa))
  const width = system.plusMinus ?? GAUGE_PA
  const drive = sourcePa - system.si
  if (drive > width) return { sourcePressure, flow: 'into-system' as const }
  const back = drive < -width
  notes.warnings.push({
    code: back ? 'flows-back' : 'no-drive',
    message: back
      ? `The side charged into stands at ${say(toGauge(system.si, barometerPa))}, above the ${say(sourcePressure)} in the source: open the valve and refrigerant flows back into it.`
      : 'Source and system stand at the same pressure: nothing will flow. Warm the source with water within its limit, or charge into the low side with the engine running.',
  })
  return { sourcePressure, flow: back ? ('back-into-source' as const) : ('cannot-tell' as const) }
}
