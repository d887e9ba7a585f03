import * as z from 'zod'
import data from '../../data/service/fractionation.json' with { type: 'json' }
import type { CautionId } from '../cautions.ts'
import { ALL_DANGERS, dangersOf } from '../dangers.ts'
import { under } from '../errors.ts'
import { placeIn, refrigerantIn } from '../fields/index.ts'
import { reader, resolvePlace } from '../instrument/index.ts'
import { newNotes } from '../notes.ts'
import { type Assumption, defineOperation } from '../operation.ts'
import {
  fraction,
  mass,
  propagate,
  type Quantity,
  quantityIn,
  quantityOut,
  temperatureDifference,
} from '../quantity/index.ts'
import {
  propertyUncertainty,
  type Refrigerant,
  refrigerant,
  saturationPressure,
} from '../refrigerant/index.ts'
import { sourceTable } from '../source-table.ts'
import { checkBlend, checkTemperature, shareWithin } from './fractionation/limits.ts'
import { burningWarnings, stepsOf } from './fractionation/tell.ts'
import { fractionationTold } from './fractionation/told.ts'
import { shiftOf, TOP_UPS, topUpOf } from './fractionation/top-up.ts'
import { byMass, type Part, workOut } from './fractionation/work-out.ts'
import { plausible } from './plausible.ts'
import { propertySources, propertyWarnings } from './property-sources.ts'
import { statementOut, statementSources, statementTable } from './statement.ts'

const sourceOf = sourceTable(data.sources)
const statements = statementTable(data.statements, sourceOf)

const CAUTIONS: readonly CautionId[] = [
  'pressure',
  'cold-burns',
  'asphyxiation',
  'no-venting',
  'do-not-mix',
  'weigh-the-charge',
  'maker-first',
  'local-rules',
]

const fields = {
  refrigerant: refrigerantIn,
  escapes: z
    .enum(['vapour', 'liquid'])
    .describe('What gets out: vapour (leak above the liquid, charging as vapour) or liquid'),
  temperature: quantityIn.temperature.describe('Temperature of what leaks or is drawn from'),
  lost: quantityIn.fraction.describe('Share of the mass that has gone, such as 30 %'),
  liquidShare: quantityIn.fraction
    .optional()
    .describe('Share of the space that liquid filled at the start'),
  startMass: quantityIn.mass.optional().describe('Mass at the start, to have the amounts as well'),
  ...placeIn,
}

const stateOut = z.strictObject({
  bubblePressure: quantityOut.describe('Gauge pressure at which its liquid begins to boil'),
  dewPressure: quantityOut.describe('Gauge pressure at which the last of its liquid is gone'),
  bubbleShift: quantityOut.describe(
    'How much hotter it begins to boil than the fresh blend at one pressure: the chart shows subcooling too small by this',
  ),
  dewShift: quantityOut.describe(
    'How much hotter its last liquid boils than the fresh blend’s at one pressure: the chart shows superheat too large by this',
  ),
})

const result = z.strictObject({
  refrigerant: z.string().describe('Designation'),
  verdict: z.enum(TOP_UPS).describe('Whether topping up would do'),
  shift: quantityOut.describe(
    'How far the topped-up charge boils from the fresh blend, on the line that moves more',
  ),
  components: z
    .array(
      z.strictObject({
        substance: z.string(),
        fresh: quantityOut,
        left: quantityOut,
        escaped: quantityOut.describe('In all that got out'),
        toppedUp: quantityOut.describe('After the lost mass is replaced by the fresh blend'),
      }),
    )
    .describe('Mass fractions'),
  left: stateOut,
  escaped: stateOut.describe('What a machine holds that was charged with what got out'),
  toppedUp: stateOut,
  vessel: z.strictObject({
    pressureAtStart: quantityOut,
    pressureNow: quantityOut,
    liquidShareNow: quantityOut,
  }),
  masses: z.strictObject({ atStart: quantityOut, left: quantityOut, lost: quantityOut }).optional(),
  rows: z
    .array(
      z.strictObject({
        lost: quantityOut,
        pressure: quantityOut,
        left: z.array(quantityOut).describe('Mass fractions, in the order of components'),
      }),
    )
    .describe('On the way there'),
  practice: z.array(statementOut),
})

/** What a leak, or drawing from a cylinder, does to the composition of a blend. */
export const fractionation = defineOperation({
  name: 'fractionation',
  summary: 'What a leak or vapour charging does to a blend, and what topping up would give',
  description:
    'Lets vapour or liquid out of a space at one temperature, step by step, with liquid and vapour in equilibrium. Gives the composition that is left and that got out, how far the chart of the fresh blend is off for each, and what topping up would give against recovering and weighing in. Refuses a refrigerant of one substance.',
  fields,
  result,
  cautions: { always: CAUTIONS, mayAlso: ALL_DANGERS },
  example: {
    refrigerant: 'R-407C',
    escapes: 'vapour',
    temperature: '77 °F',
    lost: '40 %',
    startMass: '6 lb',
  },
  check({ lost, liquidShare }) {
    shareWithin(lost, 'lost')
    if (liquidShare) shareWithin(liquidShare, 'liquidShare')
  },
  compute(input) {
    const r = under('refrigerant', () => refrigerant(input.refrigerant))
    checkBlend(r)
    checkTemperature(r, input.temperature)
    const substances = r.info.composition.map((c) => c.substance)
    const place = resolvePlace(input)
    const notes = newNotes()
    const take = reader({}, notes)
    const temperature = take(input.temperature, 'thermometer', 'temperature')
    const relative = pressureUncertainty(r, temperature)
    const gauge = (pressurePa: number) => place.gauge(pressurePa, pressurePa * relative)
    const { escapes, lost, startMass } = input
    if (startMass) plausible(startMass, 1e-3, 1e6, 'A mass at the start', ['startMass'])
    const share = input.liquidShare?.si ?? data.startLiquidShare
    const leak = workOut(r.info, temperature.si, share, escapes, lost.si)
    const shift = shiftOf(r, temperature.si, lost, leak)
    const verdict = topUpOf(shift)
    const practice = statements(
      'mend-first',
      ...(verdict === 'top-up-reads-close' ? (['top-up-close'] as const) : []),
      'recover-weigh-in',
      'take-liquid',
      'only-equilibrium',
    )
    const shiftQuantity = temperatureDifference(shift.si, shift.plusMinus)
    const burning = burningWarnings(leak, substances)
    const [first, last] = [leak.states[0], leak.states.at(-1)]
    return {
      result: {
        refrigerant: r.info.id,
        verdict,
        shift: shiftQuantity,
        components: substances.map((substance, i) => ({
          substance,
          fresh: massShare(leak.fresh, i),
          left: massShare(leak.left.masses, i),
          escaped: massShare(leak.escaped.masses, i),
          toppedUp: massShare(leak.toppedUp.masses, i),
        })),
        left: shown(leak.left, gauge),
        escaped: shown(leak.escaped, gauge),
        toppedUp: shown(leak.toppedUp, gauge),
        vessel: {
          pressureAtStart: gauge(first?.pressurePa ?? Number.NaN),
          pressureNow: gauge(last?.pressurePa ?? Number.NaN),
          liquidShareNow: fraction(last?.liquidShare ?? Number.NaN).in('%'),
        },
        ...(startMass ? { masses: massesOf(startMass, lost) } : {}),
        rows: leak.states.map((state) => ({
          lost: fraction(state.lost),
          pressure: gauge(state.pressurePa),
          left: byMass(leak.fluid, state.amounts).map((w) => fraction(w).in('%')),
        })),
        practice,
      },
      told: fractionationTold({
        verdict,
        escapes,
        lost,
        shift: shiftQuantity,
        estimated: propertyUncertainty(r, temperature.si, 'bubble').basis === 'estimated',
        pressureNow: gauge(last?.pressurePa ?? Number.NaN),
        startMass,
      }),
      steps: stepsOf(r, { ...input, temperature }, leak, share, verdict),
      cautions: dangersOf({ refrigerant: r, does: ['handles'] }),
      sources: [
        ...propertySources(r),
        sourceOf('rayleigh-1902'),
        sourceOf('reading-limit'),
        ...statementSources(practice, sourceOf),
        ...(burning.length > 0 ? [sourceOf('ashrae-34-flammable')] : []),
        ...notes.sources,
        ...place.sources,
      ],
      assumptions: [
        ...notes.assumptions,
        ...place.assumptions,
        ...(input.liquidShare ? [] : [LIQUID_SHARE]),
      ],
      warnings: [...place.warnings, ...propertyWarnings(r), ...burning],
    }
  },
})

const LIQUID_SHARE: Assumption = {
  field: 'liquidShare',
  taken: `${100 * data.startLiquidShare} % of the space full of liquid at the start`,
  because: 'not given; the less liquid there was, the less the composition changes',
}

const massShare = (masses: readonly number[], i: number) =>
  fraction(masses[i] ?? Number.NaN).in('%')

const massesOf = (start: Quantity<'mass'>, lost: Quantity<'fraction'>) => {
  const product = (share: (lost: number) => number) => {
    const { si, plusMinus } = propagate([start, lost], (kg, gone) => kg * share(gone))
    return mass(si, plusMinus)
  }
  return { atStart: start, left: product((gone) => 1 - gone), lost: product((gone) => gone) }
}

/** Relative, of a pressure of the blend at this temperature: that of the fresh blend stands for all. */
function pressureUncertainty(r: Refrigerant, temperature: Quantity<'temperature'>): number {
  const at = propagate([temperature], (kelvin) => saturationPressure(r, kelvin, 'bubble'))
  const data = propertyUncertainty(r, temperature.si, 'bubble').pressure
  return Math.hypot((at.plusMinus ?? 0) / at.si, data)
}

const shown = ({ boils }: Part, gauge: (pressurePa: number) => Quantity<'gaugePressure'>) => ({
  bubblePressure: gauge(boils.bubblePa),
  dewPressure: gauge(boils.dewPa),
  bubbleShift: temperatureDifference(boils.bubbleShiftK),
  dewShift: temperatureDifference(boils.dewShiftK),
})
