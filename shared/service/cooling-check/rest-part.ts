import * as z from 'zod'
import { under } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import {
  compareWithBand,
  gaugePressure,
  propagate,
  type Quantity,
  quantityOut,
  readQuantity,
  say,
} from '../../quantity/index.ts'
import { type Refrigerant, saturationPressure } from '../../refrigerant/index.ts'
import { propertySources } from '../property-sources.ts'
import { coolingFacts, coolingSource } from './tables.ts'

export const restOut = z
  .strictObject({
    verdict: z
      .enum(['charge-present', 'leak-test-first', 'cannot-tell', 'no-published-row'])
      .describe('By the published test with the engine off'),
    least: quantityOut.optional().describe('Both sides should be above this'),
    againstSaturation: z
      .enum(['at-saturation', 'below', 'above', 'cannot-tell'])
      .describe(
        'Below: no liquid is left where it is warm. Above: air, or the temperature is not that of the system',
      ),
    saturation: quantityOut.describe('Gauge pressure of saturation at this temperature'),
  })
  .describe('Pressures at rest')

type RestResult = Computed<z.output<typeof restOut>>

interface RestInput {
  readonly ambient: Quantity<'temperature'>
  readonly staticHigh?: Quantity<'gaugePressure'> | undefined
  readonly staticLow?: Quantity<'gaugePressure'> | undefined
}

/** Pressures with the engine off; undefined when none is given. */
export function restPart(
  r: Refrigerant,
  { ambient, staticHigh, staticLow }: RestInput,
  barometerPa: number,
  notes: Notes,
): RestResult | undefined {
  const readings = [staticHigh, staticLow].flatMap((entry) => entry ?? [])
  const lowest = readings.reduce<Quantity<'gaugePressure'> | undefined>(
    (kept, next) => (kept && kept.si <= next.si ? kept : next),
    undefined,
  )
  if (!lowest) return undefined
  const settled = !(staticHigh && staticLow && warnUnequal(staticHigh, staticLow, notes))
  notes.sources.push(coolingSource('static-pressures-2001'), ...propertySources(r))
  const found = under('ambient', () =>
    propagate([ambient], (kelvin) => saturationPressure(r, kelvin, 'bubble') - barometerPa),
  )
  const saturation = gaugePressure(found.si, found.plusMinus)
  const width = Math.hypot(found.plusMinus ?? 0, lowest.plusMinus ?? 0)
  const gap = lowest.si - found.si
  const least = r.info.id === coolingFacts.static.refrigerant ? leastAt(ambient) : []
  notes.steps.push({
    what: 'Pressures at rest',
    formula: 'the lower of both sides against the published least and against saturation',
    values: { lower: lowest, saturation },
    gives: least.length === 0 ? 'no published row' : say(gaugePressure(Math.max(...least))),
  })
  return {
    verdict: settled ? verdictOf(lowest, least) : unsettledVerdict(readings, least),
    ...(least.length === 0 ? {} : { least: gaugePressure(Math.max(...least)) }),
    againstSaturation: Math.abs(gap) <= width ? 'at-saturation' : gap < 0 ? 'below' : 'above',
    saturation,
  }
}

/** Published least pressures that hold at this temperature or within its uncertainty; empty where none is printed. */
function leastAt({ si, plusMinus = 0 }: Quantity<'temperature'>): readonly number[] {
  const rows = coolingFacts.static.rows.map(({ above, both }) => ({
    aboveK: readQuantity(above, ['temperature']).si,
    pa: readQuantity(both, ['gaugePressure']).si,
  }))
  const at = (kelvin: number) => rows.filter(({ aboveK }) => kelvin > aboveK).at(-1)?.pa
  return [...new Set([at(si), at(si - plusMinus), at(si + plusMinus)].flatMap((pa) => pa ?? []))]
}

function verdictOf(
  lowest: Quantity<'gaugePressure'>,
  least: readonly number[],
): RestResult['verdict'] {
  if (least.length === 0) return 'no-published-row'
  const found = new Set(least.map((pa) => compareWithBand(lowest, pa, Number.POSITIVE_INFINITY)))
  if (found.size > 1) return 'cannot-tell'
  if (found.has('inside')) return 'charge-present'
  return found.has('below') ? 'leak-test-first' : 'cannot-tell'
}

/** Before the sides have met, only two that agree on which side of the least they lie say anything. */
function unsettledVerdict(
  readings: readonly Quantity<'gaugePressure'>[],
  least: readonly number[],
): RestResult['verdict'] {
  const found = [...new Set(readings.map((reading) => verdictOf(reading, least)))]
  return found.length === 1 && found[0] ? found[0] : 'cannot-tell'
}

/** @returns Whether they differ. */
function warnUnequal(
  high: Quantity<'gaugePressure'>,
  low: Quantity<'gaugePressure'>,
  notes: Notes,
): boolean {
  const width = Math.hypot(high.plusMinus ?? 0, low.plusMinus ?? 0)
  if (Math.abs(high.si - low.si) <= width) return false
  notes.warnings.push({
    code: 'sides-not-equal',
    message: `The sides differ by more than the gauges explain: wait ${coolingFacts.static.wait} or longer with the engine off, then read again. If they stay apart, a passage between them is shut.`,
  })
  return true
}
