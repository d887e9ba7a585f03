import * as z from 'zod'
import { under } from '../../errors.ts'
import type { Place } from '../../instrument/index.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import { type AtRest, atRest } from '../../physics/at-rest.ts'
import {
  compareWithBand,
  type Quantity,
  quantityOut,
  readQuantity,
  say,
} from '../../quantity/index.ts'
import { propertyUncertainty, type Refrigerant } from '../../refrigerant/index.ts'
import { fillIn } from '../../sentence.ts'
import { PRINTED_AT_SEA_LEVEL, printedPa } from '../printed-gauge.ts'
import { propertySources } from '../property-sources.ts'
import { restShown, restShownOut } from '../rest-shown.ts'
import { printed } from './band.ts'
import { type Reading, readAlike } from './readings.ts'
import { coolingFacts, coolingSource } from './tables.ts'

export const restOut = z
  .strictObject({
    ...restShownOut,
    test: z
      .enum(['above-least', 'below-least', 'cannot-tell', 'no-published-row'])
      .describe(
        'By the published test with the engine off: whether the lower side lies above the least pressure; nothing where the pressure is not that of the refrigerant alone',
      ),
    least: quantityOut.optional().describe('Both sides should be above this'),
  })
  .describe('Pressures at rest')

type RestResult = Computed<z.output<typeof restOut>>

interface RestInput {
  readonly ambient: Quantity<'temperature'>
  readonly staticHigh?: Reading | undefined
  readonly staticLow?: Reading | undefined
}

/** A pressure at rest, judged: what is shown of it, and what it is told from. */
export interface Rest {
  readonly shown: RestResult
  readonly found: AtRest
  readonly lowest: Reading
}

/** Pressures with the engine off; undefined when none is given. */
export function restPart(
  r: Refrigerant,
  { ambient, staticHigh, staticLow }: RestInput,
  place: Place,
  notes: Notes,
): Rest | undefined {
  const readings = [staticHigh, staticLow].flatMap((entry) => entry ?? [])
  const lowest = readings.reduce<Reading | undefined>(
    (kept, next) => (kept && kept.absolute.si <= next.absolute.si ? kept : next),
    undefined,
  )
  if (!lowest) return undefined
  const settled = !(staticHigh && staticLow) || readAlike(staticHigh, staticLow)
  if (!settled) {
    notes.warnings.push({
      code: 'sides-not-equal',
      message: fillIn(coolingFacts.warnings['sides-not-equal'], { wait: coolingFacts.static.wait }),
    })
  }
  notes.sources.push(coolingSource('static-pressures-2001'), ...propertySources(r))
  const found = under('ambient', () => atRest(r, lowest.absolute, ambient))
  notes.sources.push(...propertyUncertainty(r, ambient.si, 'bubble').sources)
  const least = r.info.id === coolingFacts.static.refrigerant ? leastAt(ambient) : []
  if (least.length > 0) notes.assumptions.push(PRINTED_AT_SEA_LEVEL)
  const most = least.length === 0 ? undefined : printed('low', Math.max(...least), place)
  const shown = restShown(found, place)
  notes.steps.push({
    what: 'Pressures at rest',
    formula: 'the lower of both sides against saturation and against the published least',
    values: {
      lower: lowest.shown,
      saturation: (found.from === 'dew' ? shown.saturation.dew : shown.saturation.bubble) ?? 'none',
    },
    gives: most ? `${found.state}; least ${say(most)}` : `${found.state}; no published row`,
  })
  return {
    shown: {
      ...shown,
      test: found.state === 'above' ? 'cannot-tell' : testOf(settled ? [lowest] : readings, least),
      ...(most ? { least: most } : {}),
    },
    found,
    lowest,
  }
}

/** Published least pressures, Pa absolute, at this temperature or within its ±; empty where none is printed. */
function leastAt({ si, plusMinus = 0 }: Quantity<'temperature'>): readonly number[] {
  const rows = coolingFacts.static.rows.map(({ above, both }) => ({
    aboveK: readQuantity(above, ['temperature']).si,
    pa: printedPa(readQuantity(both, ['gaugePressure']).si),
  }))
  const at = (kelvin: number) => rows.filter(({ aboveK }) => kelvin > aboveK).at(-1)?.pa
  return [...new Set([at(si), at(si - plusMinus), at(si + plusMinus)].flatMap((pa) => pa ?? []))]
}

/** Before the sides have met, only two that lie on the same side of the least say anything. */
function testOf(readings: readonly Reading[], least: readonly number[]): RestResult['test'] {
  if (least.length === 0) return 'no-published-row'
  const found = new Set(
    readings.flatMap(({ absolute }) =>
      least.map((pa) => compareWithBand(absolute, pa, Number.POSITIVE_INFINITY)),
    ),
  )
  if (found.size > 1) return 'cannot-tell'
  if (found.has('inside')) return 'above-least'
  return found.has('below') ? 'below-least' : 'cannot-tell'
}
