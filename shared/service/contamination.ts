import * as z from 'zod'
import data from '../../data/service/contamination.json' with { type: 'json' }
import type { CautionId } from '../cautions.ts'
import { ALL_DANGERS, dangersOf } from '../dangers.ts'
import { CalcError, under } from '../errors.ts'
import {
  burns,
  gaugesIn,
  pickRefrigerant,
  placeIn,
  refrigerantIn,
  thermometersIn,
} from '../fields/index.ts'
import { reader, resolvePlace } from '../instrument/index.ts'
import { newNotes } from '../notes.ts'
import { defineOperation } from '../operation.ts'
import { quantityIn, quantityOut, type Uncertain } from '../quantity/index.ts'
import { propertyUncertainty, type Refrigerant } from '../refrigerant/index.ts'
import { sourceTable } from '../source-table.ts'
import { isFarAbove } from './air-check/verdict.ts'
import { readingOf, suspectsOf, verdictOf } from './contamination/explain.ts'
import {
  CAUSES,
  estimatedShares,
  explain,
  settling,
  severalShares,
  shown,
  stepsOf,
} from './contamination/tell.ts'
import { contaminationTold } from './contamination/told.ts'
import { mixingSources } from './mixing-sources.ts'
import { propertySources, propertyWarnings } from './property-sources.ts'
import { restShown, restShownOut } from './rest-shown.ts'
import { statementOut, statementSources, statementTable } from './statement.ts'

const sourceOf = sourceTable(data.sources)
const statements = statementTable(data.statements, sourceOf)

const ALWAYS: readonly CautionId[] = [
  'pressure',
  'cold-burns',
  'asphyxiation',
  'do-not-mix',
  'maker-first',
  'local-rules',
]
/** One more than are tested for usually: each is a mixture that is solved at a dozen shares and more. */
const MOST_SUSPECTS = 12

const fields = {
  refrigerant: refrigerantIn,
  pressure: quantityIn.pressure.describe('Pressure at rest, equal all over'),
  temperature: quantityIn.temperature.describe('Temperature of the contents, equal all over'),
  suspects: z
    .array(z.string().min(1).max(60))
    .max(MOST_SUSPECTS)
    .optional()
    .describe('Refrigerants to test for instead of the usual ones'),
  ...placeIn,
  ...gaugesIn,
  ...thermometersIn,
}

const explanationOut = z.strictObject({
  cause: z.enum(CAUSES),
  refrigerant: z.string().optional().describe('The other refrigerant'),
  share: quantityOut
    .optional()
    .describe('Other refrigerant: share by mass of all; air: share of the vapour by amount'),
  shareFrom: quantityOut.optional().describe('Other refrigerant: smallest share within the band'),
  shareTo: quantityOut.optional().describe('Other refrigerant: largest share within the band'),
  temperatureOff: quantityOut
    .optional()
    .describe('How much warmer the contents would have to be than was read'),
  text: z.string(),
  settledBy: z.array(z.string()).describe('Ids of statements'),
})

const result = z.strictObject({
  refrigerant: z.string(),
  verdict: z.enum(['as-expected', 'too-high', 'too-low', 'cannot-tell']),
  ...restShownOut,
  explanations: z.array(explanationOut),
  shares: z
    .array(
      z.strictObject({
        refrigerant: z.string(),
        share: quantityOut.describe('By mass of all; 100 %: it alone'),
        shareFrom: quantityOut,
        shareTo: quantityOut,
      }),
    )
    .describe(
      'Every share of another refrigerant that reads so, with its band; where one refrigerant has several, the pressure alone cannot tell them apart',
    ),
  ruledOut: z.array(z.string()).describe('Usual suspects that cannot read so in any share'),
  unseen: z
    .array(z.string())
    .describe('Refrigerants of which 10 % by mass would not show in these readings'),
  whatToDo: z.array(statementOut),
  settle: z.array(statementOut),
})

/** What a pressure at rest that is not as it should be can mean. */
export const contamination = defineOperation({
  name: 'contamination',
  summary:
    'What could make a resting pressure too high or too low: air, another refrigerant, or the reading',
  description:
    'Compares pressure and temperature of a resting cylinder or machine with the refrigerant that should be in it. Gives each explanation that fits with its amount (air by partial pressure, another refrigerant by the mixture model), what would settle it, and what may hide in it unseen. Liquid must be in it.',
  fields,
  result,
  cautions: { always: ALWAYS, mayAlso: ALL_DANGERS },
  example: { refrigerant: 'R-134a', pressure: '108 psig', temperature: '80 °F' },
  compute(input) {
    const r = pickRefrigerant(input.refrigerant)
    const place = resolvePlace(input)
    const notes = newNotes()
    const take = reader(input, notes)
    const gauged = take(input.pressure, 'a-gauge', 'pressure')
    const temperature = take(input.temperature, 'thermometer', 'temperature')
    const pressure = under('pressure', () => place.absolute(gauged))
    const reading = readingAt(r, pressure, temperature)
    const verdict = verdictOf(reading)
    const suspects = under('suspects', () =>
      suspectsOf(reading, verdict, input.suspects ?? data.suspects),
    )
    const explanations = explain(reading, verdict, suspects)
    const wrong = verdict === 'too-high' || verdict === 'too-low'
    const farAbove = isFarAbove(reading.found, pressure.si)
    const whatToDo = wrong
      ? statements(
          ...(farAbove ? (['far-above'] as const) : []),
          'do-not-use',
          'recover-apart',
          'reclaim',
        )
      : statements('no-proof', ...(verdict === 'cannot-tell' ? (['read-again'] as const) : []))
    const settle = statements(...settling(explanations, verdict))
    const names = (list: readonly Refrigerant[]) => list.map((entry) => entry.info.id)
    const fitting = suspects.fits.map((fit) => fit.refrigerant)
    return {
      result: {
        refrigerant: r.info.id,
        verdict,
        ...restShown(reading.found, place),
        explanations,
        shares: suspects.fits.map((fit) => ({
          refrigerant: fit.refrigerant.info.id,
          ...shown(fit),
        })),
        ruledOut: names(suspects.ruledOut),
        unseen: names(suspects.unseen),
        whatToDo,
        settle,
      },
      steps: stepsOf(reading, pressure, suspects.fits),
      told: contaminationTold({
        reading,
        verdict,
        farAbove,
        fits: suspects.fits,
        pressure: gauged,
        temperature,
        place,
      }),
      cautions: [
        ...[r, ...fitting].flatMap((entry) =>
          dangersOf({ refrigerant: entry, does: ['recovers'] }),
        ),
        ...(fitting.some(burns) ? (['no-flammable-retrofit'] as const) : []),
      ],
      sources: [
        ...propertySources(r),
        ...suspects.fits.flatMap((fit) => mixingSources(fit.substances)),
        sourceOf('usual-suspects'),
        sourceOf('mixture-reading'),
        ...(explanations.some((e) => e.cause === 'air') ? [sourceOf('partial-pressures')] : []),
        ...statementSources([...whatToDo, ...settle], sourceOf),
        ...notes.sources,
        ...propertyUncertainty(r, temperature.si, 'bubble').sources,
        ...place.sources,
      ],
      assumptions: [
        ...(gauged.kind === 'gaugePressure' ? place.assumptions : []),
        {
          field: 'pressure',
          taken: data.explanations['with-liquid'],
          because: data.explanations['with-liquid-because'],
          short: data.explanations['with-liquid'],
        },
        ...notes.assumptions,
      ],
      warnings: [
        ...propertyWarnings(r),
        ...place.warnings,
        ...estimatedShares(suspects.fits),
        ...severalShares(suspects.fits),
      ],
    }
  },
})

/** A refusal about saturation is one about the temperature, unless it names its own field. */
function readingAt(r: Refrigerant, ...[pressure, temperature]: [Uncertain, Uncertain]) {
  try {
    return readingOf(r, pressure, temperature)
  } catch (error) {
    if (!(error instanceof CalcError) || error.path.length > 0) throw error
    throw error.under('temperature')
  }
}
