import * as z from 'zod'
import { ALL_DANGERS, dangersOf } from '../dangers.ts'
import { CalcError } from '../errors.ts'
import { isCarbonDioxide, pickRefrigerant } from '../fields/index.ts'
import { newNotes, withNotes } from '../notes.ts'
import { defineOperation } from '../operation.ts'
import type { Refrigerant } from '../refrigerant/index.ts'
import { lawOfJob } from '../rules/job-law.ts'
import { lawStatements, leakSource, leakStatements } from './leak-test/facts.ts'
import { federalOut, federalPart } from './leak-test/federal-part.ts'
import { fields, type LeakTestInput } from './leak-test/fields.ts'
import { methodsOut, methodsPart } from './leak-test/methods-part.ts'
import { pressureOut, pressurePart } from './leak-test/pressure-part.ts'
import { standingOut, standingPart } from './leak-test/standing-part.ts'
import { tell } from './leak-test/tell.ts'
import { yearlyOut, yearlyPart } from './leak-test/yearly-part.ts'
import { placeWhenNeeded } from './place-when-needed.ts'
import { statementOut, statementSources } from './statement.ts'

/** Leak test: standing pressure, test pressure, searching, yearly loss, federal leak rate. */
export const leakTest = defineOperation({
  name: 'leak-test',
  opens: lawOfJob,
  summary:
    'Standing pressure corrected for temperature, leak rate, test pressure, sensitivity of each search',
  description:
    'Standing test with nitrogen or a standing vacuum by the absolute gas law, with what the instruments leave open; test pressure against the weakest rated part (refused without its rating, above it, and with oxygen, air or hydrogen); what each way of searching can show; loss a year from weighed charges; federal leak-rate arithmetic.',
  fields,
  check: requireSomething,
  result: z.strictObject({
    refrigerant: z.string().optional().describe('Designation of the refrigerant'),
    test: pressureOut.optional(),
    standing: standingOut.optional(),
    searching: methodsOut.optional(),
    yearly: yearlyOut.optional(),
    federal: federalOut.optional(),
    practice: z.array(statementOut).describe('What practice and law say about it'),
  }),
  cautions: {
    always: [
      'pressure',
      'no-oxygen',
      'no-air',
      'nitrogen-regulator',
      'whipping-line',
      'asphyxiation',
      'maker-first',
      'local-rules',
    ],
    mayAlso: [...ALL_DANGERS, 'hydrogen-mix-only'],
  },
  example: {
    refrigerant: 'R-134a',
    startPressure: '150 ±0.5 psig',
    endPressure: '146.9 ±0.5 psig',
    startTemperature: '80 ±1 °F',
    endTemperature: '70 ±1 °F',
    elapsed: '12 h',
    volume: '5 L',
    lowSideRating: '200 psig',
  },
  compute(input) {
    const notes = newNotes()
    const { place } = placeWhenNeeded(input, notes)
    const name = input.refrigerant
    const r = name === undefined ? undefined : pickRefrigerant(name)
    notes.cautions.push(
      ...dangersOf({
        refrigerant: r,
        compressorDrive: input.compressorDrive,
        does: ['pressurises'],
      }),
      ...(r && isCarbonDioxide(r) ? [] : (['no-venting'] as const)),
    )
    const test = asksForPressure(input) ? pressurePart(input, place, notes) : undefined
    const yearly = yearlyPart(input, notes)
    const standing = standingPart(input, r, place, notes)
    const federal = federalPart(input, r, notes)
    const searching = methodsPart(input, r, yearly?.perYear, place, notes)
    if (searching?.methods.some(({ id }) => id.startsWith('tracer-gas'))) {
      notes.cautions.push('hydrogen-mix-only')
    }
    const own = leakStatements(
      ...(test && standing?.kind !== 'vacuum' ? testPractice(r) : []),
      ...(standing?.kind === 'pressure' ? (['gas-law-not-per-degree'] as const) : []),
      ...(searching ? (['soap-locates', 'recover-tracer'] as const) : []),
      ...(yearly ? (['loss-7-oz', 'loss-check-oil'] as const) : []),
      ...(federal?.annualizing || federal?.rolling ? (['leak-rate-formulas'] as const) : []),
    )
    notes.sources.push(...statementSources(own, leakSource))
    const practice = [...own, ...lawStatements(federal?.statements ?? [])]
    const result = { refrigerant: r?.info.id, test, standing, searching, yearly, federal, practice }
    return { ...withNotes(result, notes), told: tell(result) }
  },
})

/** Test pressures that makers print: those of R-134a for R-134a, and none of them for R-744. */
function testPractice(r: Refrigerant | undefined): readonly ('150-psig' | '200-250-psi')[] {
  if (r && isCarbonDioxide(r)) return []
  return r === undefined || r.info.id === 'R-134a' ? ['150-psig', '200-250-psi'] : ['200-250-psi']
}

const asksForPressure = ({
  testPressure,
  startPressure,
  lowSideRating,
  highSideRating,
  ratings,
  testGas,
}: LeakTestInput) =>
  [testPressure, startPressure, lowSideRating, highSideRating, ratings, testGas].some(
    (entry) => entry !== undefined,
  )

/** Fields that say nothing by themselves. */
const ASIDE: ReadonlySet<string> = new Set<keyof LeakTestInput | 'law'>([
  'law',
  'refrigerant',
  'compressorDrive',
  'altitude',
  'barometer',
  'endBarometer',
  'elapsed',
  'volume',
  'vacuumLimit',
  'lowGauge',
  'lowGaugeSpan',
  'highGauge',
  'highGaugeSpan',
  'thermometer',
  'contactError',
])

function requireSomething(input: LeakTestInput): void {
  const asked = Object.entries(input).some(
    ([name, value]) => value !== undefined && !ASIDE.has(name),
  )
  if (asked) return
  throw new CalcError('missing-input', 'No reading, pressure or method of a leak test was given.', {
    path: ['startPressure'],
    hint: 'Give the readings of a standing test, a test pressure with ratings, a method, or two weighed charges.',
  })
}
