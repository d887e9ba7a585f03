import * as z from 'zod'
import { CalcError } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import {
  compareWithBand,
  propagate,
  type Quantity,
  quantityOut,
  temperature,
  temperatureDifference,
  widthOf,
} from '../../quantity/index.ts'
import {
  propertyUncertainty,
  type Refrigerant,
  saturationTemperature,
} from '../../refrigerant/index.ts'
import { fillIn } from '../../sentence.ts'
import { propertySources } from '../property-sources.ts'
import type { Compared } from './band.ts'
import type { Reading } from './readings.ts'
import { coolingFacts, coolingSource, type PerformanceTable } from './tables.ts'

export const condensingOut = z
  .strictObject({
    condensing: quantityOut.optional().describe('Saturation temperature at the high side'),
    aboveAmbient: quantityOut.optional(),
    tablesFrom: quantityOut.optional().describe('Least of the tables that fit, at this ambient'),
    tablesTo: quantityOut.optional().describe('Most of the tables that fit, at this ambient'),
    verdict: z.enum(['below', 'inside', 'above', 'cannot-tell']).optional(),
    evaporating: quantityOut.optional().describe('Saturation temperature at the low side'),
    ventAboveEvaporating: quantityOut.optional(),
  })
  .describe('What the pressures mean as temperatures')

export type CondensingResult = Computed<z.output<typeof condensingOut>>

interface CondensingInput {
  readonly ambient: Quantity<'temperature'>
  readonly high?: Reading | undefined
  readonly low?: Reading | undefined
  readonly vent?: Compared | undefined
}

/** Middle of bubble and dew temperature, K: for a pure refrigerant both are one. */
export const middleTemperature = (r: Refrigerant, pressurePa: number) =>
  (saturationTemperature(r, pressurePa, 'bubble') + saturationTemperature(r, pressurePa, 'dew')) / 2

/** Condensing and evaporating temperature from the pressures; undefined without any pressure. */
export function condensingPart(
  r: Refrigerant,
  input: CondensingInput,
  fitting: readonly PerformanceTable[],
  notes: Notes,
): CondensingResult | undefined {
  const { ambient, high, low, vent } = input
  if (!high && !low) return undefined
  notes.sources.push(...propertySources(r))
  if (r.info.kind !== 'pure') {
    notes.assumptions.push({
      field: 'refrigerant',
      taken: 'the middle of bubble and dew temperature',
      because: 'a blend condenses and evaporates over a span',
    })
  }
  const condensing = high && saturated(r, high, 'the high side', notes)
  const evaporating = low && saturated(r, low, 'the low side', notes)
  const above =
    condensing &&
    temperatureDifference(
      condensing.si - ambient.si,
      Math.hypot(condensing.plusMinus ?? 0, ambient.plusMinus ?? 0),
    )
  const spread = above ? spreadOf(r, fitting, ambient.si) : undefined
  if (above && condensing) {
    notes.sources.push(coolingSource('condensing-rise-2006'))
    notes.steps.push({
      what: 'Condensing above ambient',
      formula: 'saturation temperature at the high side − ambient temperature',
      values: { condensing, ambient },
      gives: above,
    })
  }
  return {
    condensing,
    aboveAmbient: above,
    ...(above && spread
      ? {
          tablesFrom: temperatureDifference(spread[0]),
          tablesTo: temperatureDifference(spread[1]),
          verdict: compareWithBand(above, spread[0], spread[1]),
        }
      : {}),
    evaporating,
    ventAboveEvaporating:
      evaporating && vent
        ? temperatureDifference(
            vent.si.si - evaporating.si,
            Math.hypot(widthOf(vent.si), widthOf(evaporating)),
          )
        : undefined,
  }
}

/** With the ± of gauge, barometer and the property itself. */
function saturated(
  r: Refrigerant,
  { absolute }: Reading,
  side: string,
  notes: Notes,
): Quantity<'temperature'> | undefined {
  try {
    const found = propagate([absolute], (pa) => middleTemperature(r, pa))
    const own = propertyUncertainty(r, found.si, 'bubble')
    notes.sources.push(...own.sources)
    return temperature(found.si, Math.hypot(widthOf(found), own.temperatureK))
  } catch (error) {
    if (!(error instanceof CalcError)) throw error
    notes.warnings.push({
      code: 'no-saturation-temperature',
      message: fillIn(coolingFacts.warnings['no-saturation-temperature'], {
        why: error.message,
        side,
      }),
    })
    return undefined
  }
}

/** The tables' own high sides at this ambient as temperatures above it. */
function spreadOf(
  r: Refrigerant,
  fitting: readonly PerformanceTable[],
  ambientK: number,
): readonly [number, number] | undefined {
  const above = fitting
    .filter(({ followsAmbient }) => followsAmbient)
    .flatMap((table) =>
      (table.high(ambientK) ?? []).map((pa) => middleTemperature(r, pa) - ambientK),
    )
  return above.length === 0 ? undefined : [Math.min(...above), Math.max(...above)]
}
