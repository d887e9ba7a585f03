import * as z from 'zod'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import { compareWithBand, type Quantity, quantityOut, readQuantity } from '../../quantity/index.ts'
import { coolingFacts, coolingSource } from './tables.ts'

const COMPARISONS = ['below', 'inside', 'above', 'cannot-tell'] as const

export const clutchOut = z
  .strictObject({
    rows: z.array(
      z.strictObject({
        id: z.string(),
        name: z.string(),
        opensFrom: quantityOut,
        opensTo: quantityOut,
        opens: z.enum(COMPARISONS).optional(),
        closesFrom: quantityOut,
        closesTo: quantityOut,
        closes: z.enum(COMPARISONS).optional(),
      }),
    ),
    cycling: z.string().optional(),
  })
  .describe('Clutch cycling against published switch settings')

type ClutchResult = Computed<z.output<typeof clutchOut>>

interface ClutchInput {
  readonly ambient: Quantity<'temperature'>
  readonly cutOut?: Quantity<'gaugePressure'> | undefined
  readonly cutIn?: Quantity<'gaugePressure'> | undefined
  readonly cyclesPerMinute?: number | undefined
}

/** A single printed setting is taken as it is printed: to half a psi. */
const HALF_PSI_PA = 3447.4
const CYCLES = { from: '68 °F', to: '90 °F', perMinute: 2 }

/** Switch points and cycling; undefined when nothing about the clutch is given. */
export function clutchPart(input: ClutchInput, notes: Notes): ClutchResult | undefined {
  const { cutOut, cutIn, cyclesPerMinute } = input
  if (!cutOut && !cutIn && cyclesPerMinute === undefined) return undefined
  notes.sources.push(...coolingFacts.clutch.map(({ source }) => coolingSource(source as never)))
  if (cutOut && cutIn && cutIn.si < cutOut.si) {
    notes.warnings.push({
      code: 'cut-in-below-cut-out',
      message:
        'The clutch is given to close below the pressure at which it opens: check which is which.',
    })
  }
  return {
    rows: coolingFacts.clutch.map(({ id, name, opens, closes }) => {
      const open = settings(opens)
      const close = settings(closes)
      return {
        id,
        name,
        opensFrom: open.from,
        opensTo: open.to,
        opens: cutOut && where(cutOut, open),
        closesFrom: close.from,
        closesTo: close.to,
        closes: cutIn && where(cutIn, close),
      }
    }),
    cycling:
      cyclesPerMinute === undefined
        ? undefined
        : cyclingText(cyclesPerMinute, input.ambient, notes),
  }
}

interface Settings {
  readonly from: Quantity<'gaugePressure'>
  readonly to: Quantity<'gaugePressure'>
}

function settings(texts: readonly string[]): Settings {
  const [from, to] = texts.map((text) => readQuantity(text, ['gaugePressure']))
  const first = from ?? readQuantity('0 psig', ['gaugePressure'])
  return { from: first, to: to ?? first }
}

const where = (reading: Quantity<'gaugePressure'>, { from, to }: Settings) =>
  compareWithBand(reading, from.si - HALF_PSI_PA, to.si + HALF_PSI_PA)

function cyclingText(perMinute: number, ambient: Quantity<'temperature'>, notes: Notes): string {
  notes.sources.push(coolingSource('clutch-cycles-1983'), coolingSource('fast-cycling'))
  const inside = compareWithBand(
    ambient,
    readQuantity(CYCLES.from, ['temperature']).si,
    readQuantity(CYCLES.to, ['temperature']).si,
  )
  const norm =
    inside === 'inside' && perMinute >= CYCLES.perMinute
      ? 'One maker calls two cycles a minute and more normal at 68 to 90 °F.'
      : 'No published rate was found for this.'
  return `${perMinute} cycles a minute. ${norm} Fast cycling with a short on-time points to a low charge (common practice): weigh the charge.`
}
