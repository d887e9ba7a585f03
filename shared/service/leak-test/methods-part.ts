import * as z from 'zod'
import { under } from '../../errors.ts'
import { type Place, reader } from '../../instrument/index.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import {
  compareWithBand,
  massFlow,
  type Quantity,
  quantityOut,
  readQuantity,
  toAbsolute,
} from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { leakFacts, leakSource } from './facts.ts'
import type { LeakTestInput } from './fields.ts'

interface MethodRow {
  readonly id: string
  readonly name: string
  readonly perYear?: string
  readonly molesPerSecond?: number
  readonly source: string
}

const METHODS: readonly MethodRow[] = leakFacts.methods

const MET = ['met', 'not-met', 'cannot-tell', 'not-given'] as const

export const methodsOut = z
  .strictObject({
    methods: z.array(
      z.strictObject({
        id: z.string().describe('Short name'),
        name: z.string().describe('Way of searching'),
        smallest: quantityOut.optional().describe('Smallest single leak that it is made to show'),
        findsThisLoss: z
          .enum(['yes', 'no', 'cannot-tell'])
          .optional()
          .describe('Whether the weighed loss of a year, if from one spot, lies above that'),
      }),
    ),
    systemPressure: z
      .enum(MET)
      .describe('At least 340 kPa (50 psi) with the engine off, for an electronic detector'),
    ambient: z.enum(MET).describe('At least 15 °C (59 °F), below it leaks may not show'),
  })
  .describe('What each way of searching can show')

export type MethodsResult = Computed<z.output<typeof methodsOut>>

/** Ways of searching with the sensitivity that is published for each; undefined when none is asked for. */
export function methodsPart(
  input: LeakTestInput,
  r: Refrigerant | undefined,
  lossPerYear: Quantity<'massFlow'> | undefined,
  place: () => Place,
  notes: Notes,
): MethodsResult | undefined {
  const { method } = input
  if (!method && !input.systemPressure && !input.ambient) return undefined
  const take = reader(input, notes)
  const systemPressure = take(input.systemPressure, 'a-gauge', 'systemPressure')
  const ambient = take(input.ambient, 'thermometer', 'ambient')
  const rows = METHODS.filter(({ id }) => method === undefined || id === method)
  const floor = readQuantity(leakFacts.conditions.systemPressure, ['gaugePressure'])
  const coldest = readQuantity(leakFacts.conditions.temperature, ['temperature'])
  notes.sources.push(
    leakSource('sae-detector-use'),
    ...rows.map(({ source }) => leakSource(source as never)),
  )
  const gauge =
    systemPressure &&
    (systemPressure.kind === 'gaugePressure'
      ? systemPressure
      : place().gauge(
          under('systemPressure', () => toAbsolute(systemPressure, place().barometerPa)).si,
          systemPressure.plusMinus,
        ))
  const conditions = {
    systemPressure: met(gauge, floor.si),
    ambient: met(ambient, coldest.si),
  }
  if (conditions.systemPressure === 'not-met' || conditions.ambient === 'not-met') {
    notes.warnings.push({
      code: 'too-cold-or-too-little-pressure',
      message: leakFacts.told.warnings['too-cold-or-too-little-pressure'],
    })
  }
  return {
    methods: rows.map((row) => {
      const smallest = sensitivity(row, r)
      return {
        id: row.id,
        name: row.name,
        smallest,
        findsThisLoss:
          smallest && lossPerYear ? held(row, conditions, finds(lossPerYear, smallest)) : undefined,
      }
    }),
    ...conditions,
  }
}

/** An electronic detector that is used outside its conditions may miss what it is made to show. */
const held = (
  { id }: MethodRow,
  conditions: { readonly systemPressure: string; readonly ambient: string },
  found: 'yes' | 'no' | 'cannot-tell',
) =>
  found === 'yes' &&
  id.startsWith('electronic') &&
  Object.values(conditions).some((entry) => entry === 'not-met' || entry === 'cannot-tell')
    ? ('cannot-tell' as const)
    : found

function sensitivity(row: MethodRow, r: Refrigerant | undefined) {
  if (row.perYear) return readQuantity(row.perYear, ['massFlow'])
  return row.molesPerSecond !== undefined && r
    ? massFlow(row.molesPerSecond * r.molarMass)
    : undefined
}

function met(reading: { si: number; plusMinus?: number | undefined } | undefined, floor: number) {
  if (!reading) return 'not-given' as const
  const found = compareWithBand(reading, floor, Number.POSITIVE_INFINITY)
  return found === 'inside'
    ? ('met' as const)
    : found === 'below'
      ? ('not-met' as const)
      : ('cannot-tell' as const)
}

function finds(loss: Quantity<'massFlow'>, smallest: Quantity<'massFlow'>) {
  const found = compareWithBand(loss, smallest.si, Number.POSITIVE_INFINITY)
  return found === 'inside'
    ? ('yes' as const)
    : found === 'below'
      ? ('no' as const)
      : ('cannot-tell' as const)
}
