import * as z from 'zod'
import { ALL_DANGERS, dangersOf } from '../dangers.ts'
import { CalcError } from '../errors.ts'
import { pickRefrigerant, placeIn, refrigerantIn } from '../fields/index.ts'
import { resolvePlace } from '../instrument/index.ts'
import { newNotes, withNotes } from '../notes.ts'
import { defineOperation } from '../operation.ts'
import { quantityIn } from '../quantity/index.ts'
import { HOLD_LIMITS } from './evacuation/hold-limit.ts'
import { leakSource, leakStatements } from './leak-test/facts.ts'
import { APPLIANCES, federalOut, federalPart } from './leak-test/federal-part.ts'
import { METHOD_IDS, methodsOut, methodsPart } from './leak-test/methods-part.ts'
import { pressureOut, pressurePart, TEST_GASES } from './leak-test/pressure-part.ts'
import { standingOut, standingPart } from './leak-test/standing-part.ts'
import { yearlyOut, yearlyPart } from './leak-test/yearly-part.ts'
import { statementOut, statementSources } from './statement.ts'

const ratingIn = z.strictObject({
  part: z.string().min(1).max(60).describe('Name of the part'),
  pressure: quantityIn.pressure.describe('Pressure that it is rated for'),
})

const fields = {
  refrigerant: refrigerantIn.optional(),
  testGas: z.enum(TEST_GASES).default('nitrogen').describe('Gas of the pressure test'),
  testPressure: quantityIn.pressure.optional().describe('Pressure that the test is planned at'),
  lowSideRating: quantityIn.pressure.optional().describe('Pressure that the low side is rated for'),
  highSideRating: quantityIn.pressure
    .optional()
    .describe('Pressure that the high side is rated for'),
  ratings: z
    .array(ratingIn)
    .max(40)
    .optional()
    .describe('Ratings of single parts: name and pressure'),
  startPressure: quantityIn.pressure
    .optional()
    .describe('Pressure at the start of the standing test'),
  endPressure: quantityIn.pressure.optional().describe('Pressure at its end'),
  startTemperature: quantityIn.temperature
    .optional()
    .describe('Temperature of the system at the start'),
  endTemperature: quantityIn.temperature
    .optional()
    .describe('Temperature of the system at the end'),
  elapsed: quantityIn.duration.optional().describe('Time between the two readings'),
  volume: quantityIn.volume.optional().describe('Internal volume under test'),
  vacuumLimit: z
    .enum(HOLD_LIMITS)
    .optional()
    .describe('For a standing vacuum: a published rule to hold it against'),
  method: z.enum(METHOD_IDS).optional().describe('One way of searching; without it all are listed'),
  staticPressure: quantityIn.pressure
    .optional()
    .describe('Pressure in the system while searching, engine off'),
  ambientTemperature: quantityIn.temperature.optional().describe('Temperature while searching'),
  chargeThen: quantityIn.mass.optional().describe('Charge that was weighed in'),
  chargeNow: quantityIn.mass.optional().describe('Charge that was weighed out later'),
  between: quantityIn.duration.optional().describe('Time between the two weighings'),
  fullCharge: quantityIn.mass.optional().describe('Full charge, for the federal leak rate'),
  added: quantityIn.mass.optional().describe('Mass added now, for the federal leak rate'),
  sinceLastAddition: quantityIn.duration
    .optional()
    .describe('Time since refrigerant was last added'),
  addedInYear: quantityIn.mass.optional().describe('All that was added in the last 365 days'),
  appliance: z.enum(APPLIANCES).optional().describe('Kind of appliance, for the federal threshold'),
  ...placeIn,
}

type Input = z.output<z.ZodObject<typeof fields>>

/** Leak test: standing pressure, test pressure, searching, yearly loss, federal leak rate. */
export const leakTest = defineOperation({
  name: 'leak-test',
  summary:
    'Standing pressure corrected for temperature, leak rate, test pressure, sensitivity of each search',
  description:
    'Standing test with nitrogen or a standing vacuum by the absolute gas law, with what the instruments leave open; test pressure against the weakest rated part (refused above it, and with oxygen or air); what each way of searching can show; loss a year from weighed charges; federal leak-rate arithmetic.',
  fields,
  check: requireSomething,
  result: z.strictObject({
    refrigerant: z.string().optional(),
    test: pressureOut.optional(),
    standing: standingOut.optional(),
    searching: methodsOut.optional(),
    yearly: yearlyOut.optional(),
    federal: federalOut.optional(),
    practice: z.array(statementOut),
  }),
  cautions: {
    always: [
      'pressure',
      'no-oxygen',
      'no-air',
      'nitrogen-regulator',
      'asphyxiation',
      'no-venting',
      'maker-first',
      'local-rules',
    ],
    mayAlso: ALL_DANGERS,
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
    const place = resolvePlace(input)
    const { barometerPa } = place
    const name = input.refrigerant
    const r = name === undefined ? undefined : pickRefrigerant(name)
    notes.assumptions.push(...place.assumptions)
    notes.warnings.push(...place.warnings)
    notes.sources.push(...place.sources)
    notes.cautions.push(
      'no-oxygen',
      'no-air',
      'no-venting',
      'maker-first',
      'local-rules',
      ...(r ? dangersOf({ refrigerant: r }) : []),
    )
    const yearly = yearlyPart(input, notes)
    const standing = standingPart(input, r, barometerPa, notes)
    const federal = federalPart(input, r, notes)
    const searching = methodsPart(input, r, yearly?.perYear, barometerPa, notes)
    const test = asksForPressure(input) ? pressurePart(input, barometerPa, notes) : undefined
    const practice = leakStatements(
      ...(test && standing?.kind !== 'vacuum' ? (['150-psig', '200-250-psi'] as const) : []),
      ...(standing?.kind === 'pressure' ? (['gas-law-not-per-degree'] as const) : []),
      ...(searching ? (['soap-locates', 'recover-tracer'] as const) : []),
      ...(yearly ? (['loss-7-oz', 'loss-check-oil'] as const) : []),
      ...(federal
        ? ([
            'cab-outside',
            'cab-owner-decides',
            'states-topping-up',
            'thresholds-50-lb',
            'hfc-15-lb',
            'hfc-other-rates',
            'leak-rate-formulas',
          ] as const)
        : []),
    )
    notes.sources.push(...statementSources(practice, leakSource))
    return withNotes(
      { refrigerant: r?.info.id, test, standing, searching, yearly, federal, practice },
      notes,
    )
  },
})

const asksForPressure = ({
  testPressure,
  startPressure,
  lowSideRating,
  highSideRating,
  ratings,
  testGas,
}: Input) =>
  testGas !== 'nitrogen' ||
  [testPressure, startPressure, lowSideRating, highSideRating, ratings].some(
    (entry) => entry !== undefined,
  )

function requireSomething({
  refrigerant: _name,
  altitude: _height,
  barometer: _air,
  testGas,
  elapsed: _time,
  volume: _volume,
  vacuumLimit: _rule,
  ...rest
}: Input): void {
  if (testGas !== 'nitrogen' || Object.values(rest).some((entry) => entry !== undefined)) return
  throw new CalcError('missing-input', 'There is nothing to work on.', {
    path: ['startPressure'],
    hint: 'Give the readings of a standing test, a test pressure with ratings, a method, or two weighed charges.',
  })
}
