import data from '../../../data/service/oil.json' with { type: 'json' }
import type { Computed } from '../../operation.ts'
import {
  combine,
  difference,
  type Quantity,
  settle,
  surelyAbove,
  surelyBelow,
  type Tied,
  tied,
} from '../../quantity/index.ts'
import type { OilInput } from './fields.ts'
import type { Line } from './gather.ts'
import type { OilResult } from './result.ts'

const { compressorTexts: TEXTS } = data
type Shown = (figure: Tied) => Quantity<'volume'>

/** Where a total is known: what is left of it for the rest of the machine. */
export function besideCompressor(
  { flushed, longHose, compressorHolds }: OilInput,
  total: Tied | undefined,
  shown: Shown,
): Quantity<'volume'> | undefined {
  if (!total || !compressorHolds || !(flushed || longHose)) return undefined
  const holds = tied(compressorHolds, 'oil in the new compressor')
  return shown(combine([total, holds], (all = 0, held = 0) => Math.max(0, all - held)))
}

/** What the new compressor must hold, and what to take out of it or to add to it. */
export function compressorOf(
  { compressorHolds }: OilInput,
  lines: readonly Line[],
  total: Tied | undefined,
  shown: Shown,
): Computed<OilResult>['compressor'] {
  const line = lines.find((entry) => entry.part === 'compressor')
  if (!line) return undefined
  const mustHold = total ? combine([line.usual, total], Math.min) : line.usual
  const frame = { mustHold: shown(mustHold), rule: line.rule }
  if (!compressorHolds) return { ...frame, text: TEXTS.unknown }
  const holds = tied(compressorHolds, 'oil in the new compressor')
  const over = difference(holds, mustHold)
  const settled = settle(over)
  if (surelyAbove(settled, 0)) return { ...frame, drainFromNew: shown(over), text: TEXTS.over }
  if (surelyBelow(settled, 0)) {
    return { ...frame, addToNew: shown(difference(mustHold, holds)), text: TEXTS.short }
  }
  return { ...frame, text: TEXTS.same }
}
