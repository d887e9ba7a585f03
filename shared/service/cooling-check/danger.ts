import * as z from 'zod'
import { type CutOut, cutOutOf, reachesCutOut } from '../../diagnosis/cut-out.ts'
import { isCarbonDioxide } from '../../fields/index.ts'
import type { Notes } from '../../notes.ts'
import { type Quantity, quantityOut, say } from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { fillIn } from '../../sentence.ts'
import type { CoolingReadings } from './readings.ts'
import { coolingFacts } from './tables.ts'

export const dangerOut = z
  .strictObject({
    pressure: quantityOut.describe('Highest that was read'),
    cutOut: quantityOut.optional().describe("At which makers' switches stop the machine"),
    why: z.enum(['above-cut-out', 'above-critical']),
  })
  .describe('The machine is stopped first, whatever else was asked')

/** A pressure at which the machine must be stopped. */
export interface Danger {
  readonly pressure: Quantity<'gaugePressure'>
  readonly cutOut: CutOut | undefined
  readonly why: 'above-cut-out' | 'above-critical'
}

/** Whether any gauge shows what a running machine must not have, on whichever side it was read. */
export function dangerOf(
  r: Refrigerant,
  readings: CoolingReadings,
  notes: Notes,
): Danger | undefined {
  const { high, low, staticHigh, staticLow } = readings
  const read = [high, low, staticHigh, staticLow].flatMap((entry) => entry ?? [])
  const [highest] = read.toSorted((a, b) => b.absolute.si - a.absolute.si)
  if (!highest) return undefined
  const cutOut = cutOutOf(r)
  const reached = cutOut !== undefined && reachesCutOut(highest.gauge.si, cutOut)
  const critical = !isCarbonDioxide(r) && highest.absolute.si > r.criticalPressurePa
  if (!reached && !critical) return undefined
  const why = reached ? 'above-cut-out' : 'above-critical'
  notes.cautions.push('stop-the-machine')
  notes.sources.push(...(cutOut?.sources ?? []))
  notes.warnings.push({
    code: why,
    message: fillIn(coolingFacts.warnings[why], {
      pressure: say(highest.gauge.within(undefined)),
      refrigerant: r.info.id,
      cutOut: cutOut ? say(cutOut.pressure) : '',
    }),
  })
  return { pressure: highest.gauge.within(undefined), cutOut, why }
}
