import * as z from 'zod'
import type { Place } from '../../instrument/index.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import {
  compareWithBand,
  type Quantity,
  quantityOut,
  readQuantity,
  surelyBelow,
} from '../../quantity/index.ts'
import { fillIn } from '../../sentence.ts'
import { PRINTED_AT_SEA_LEVEL, printedPa } from '../printed-gauge.ts'
import { printed } from './band.ts'
import type { Reading } from './readings.ts'
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

export type ClutchResult = Computed<z.output<typeof clutchOut>>

interface ClutchInput {
  readonly ambient: Quantity<'temperature'>
  readonly cutOut?: Reading | undefined
  readonly cutIn?: Reading | undefined
  readonly cyclesPerMinute?: number | undefined
}

/** A single printed setting is taken as it is printed: to half a psi. */
const HALF_PSI_PA = 3447.4

/** Switch points and cycling; undefined when nothing about the clutch is given. */
export function clutchPart(
  input: ClutchInput,
  place: Place,
  notes: Notes,
): ClutchResult | undefined {
  const { cutOut, cutIn, cyclesPerMinute } = input
  if (!cutOut && !cutIn && cyclesPerMinute === undefined) return undefined
  notes.sources.push(...coolingFacts.clutch.map(({ source }) => coolingSource(source as never)))
  if (cutOut || cutIn) notes.assumptions.push(PRINTED_AT_SEA_LEVEL)
  if (cutOut && cutIn && surelyBelow(cutIn.absolute, cutOut.absolute.si)) {
    notes.warnings.push({
      code: 'cut-in-below-cut-out',
      message: coolingFacts.warnings['cut-in-below-cut-out'],
    })
  }
  return {
    rows: coolingFacts.clutch.map(({ id, name, opens, closes }) => {
      const open = settings(opens)
      const close = settings(closes)
      return {
        id,
        name,
        opensFrom: printed('low', open[0], place),
        opensTo: printed('low', open[1], place),
        opens: cutOut && where(cutOut, open),
        closesFrom: printed('low', close[0], place),
        closesTo: printed('low', close[1], place),
        closes: cutIn && where(cutIn, close),
      }
    }),
    cycling:
      cyclesPerMinute === undefined
        ? undefined
        : cyclingText(cyclesPerMinute, input.ambient, notes),
  }
}

function settings(texts: readonly string[]): readonly [number, number] {
  const [from = 0, to = from] = texts.map((text) =>
    printedPa(readQuantity(text, ['gaugePressure']).si),
  )
  return [from, to]
}

const where = ({ absolute }: Reading, [from, to]: readonly [number, number]) =>
  compareWithBand(absolute, from - HALF_PSI_PA, to + HALF_PSI_PA)

function cyclingText(perMinute: number, ambient: Quantity<'temperature'>, notes: Notes): string {
  notes.sources.push(coolingSource('clutch-cycles-1983'), coolingSource('fast-cycling'))
  const inside = compareWithBand(
    ambient,
    readQuantity(coolingFacts.cycles.from, ['temperature']).si,
    readQuantity(coolingFacts.cycles.to, ['temperature']).si,
  )
  const normal = inside === 'inside' && perMinute >= coolingFacts.cycles.perMinute
  return fillIn(coolingFacts.cycles[normal ? 'normal' : 'unknown'], {
    perMinute: String(perMinute),
  })
}
