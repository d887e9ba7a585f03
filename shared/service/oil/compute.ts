import data from '../../../data/service/oil.json' with { type: 'json' }
import { dangersOf } from '../../dangers.ts'
import { pickRefrigerant } from '../../fields/index.ts'
import type { Assumption, Computation, Computed, Step } from '../../operation.ts'
import {
  combine,
  highest,
  lowest,
  type Quantity,
  settle,
  total as sum,
  type Tied,
  volume,
} from '../../quantity/index.ts'
import { LONG_HOSE_NOTES, PUBLISHED_TOTALS } from './amounts.ts'
import { checkOilInput } from './check.ts'
import { STANDARD_RULE } from './compressor.ts'
import type { OilInput } from './fields.ts'
import { gatherOil, type Line } from './gather.ts'
import { besideCompressor, compressorOf } from './new-compressor.ts'
import { emptyCompressor, pourIn } from './pour.ts'
import type { OilResult } from './result.ts'
import { toldOf } from './told.ts'
import { typeAnswer } from './type-answer.ts'
import { unusedOilFields } from './unused.ts'
import { warningsFor } from './warnings.ts'

const { advice: ADVICE } = data

/** The oil that goes back in, bounded by the system's total, and whether its type may go in. */
export function computeOil(input: OilInput): Computation<Computed<OilResult>> {
  const r = pickRefrigerant(input.refrigerant)
  // First of all: an oil that must not go in is refused whatever is still unmeasured.
  const type = typeAnswer(input, r.info)
  checkOilInput(input)
  const gathered = gatherOil(r, input)
  const { lines, total } = gathered
  const show = (cubic: number, plusMinus?: number): Quantity<'volume'> =>
    volume(cubic, plusMinus).in(input.volumeUnit === 'fl-oz' ? 'fl oz' : input.volumeUnit)
  const shown = (figure: Tied): Quantity<'volume'> => {
    const { si, plusMinus } = settle(figure)
    return show(si, plusMinus)
  }
  const capped = (figure: Tied) => (total ? combine([figure, total], Math.min) : figure)
  const wanted = sum(lines.map((line) => line.usual))
  const add = capped(wanted)
  const pour = pourIn(input, lines, add)
  const least = capped(sum(lines.map((line) => line.least)))
  const most = capped(sum(lines.map((line) => line.most)))
  const limited = total !== undefined && wanted.si > total.si
  const notes = [...type.notes, ...(input.longHose ? LONG_HOSE_NOTES : [])]
  const result = {
    pourIn: shown(pour),
    add: shown(add),
    addFrom: show(Math.max(0, lowest(settle(least)))),
    // Never above the total, whatever its ±.
    addTo: show(Math.min(highest(settle(most)), total?.si ?? Number.POSITIVE_INFINITY)),
    limited,
    oilTotal: total && shown(total),
    ownTotal: input.oilTotal && gathered.formula ? shown(gathered.formula) : undefined,
    lines: lines.map((line) => ({
      what: line.what,
      add: shown(line.usual),
      from: show(Math.max(0, lowest(settle(line.least)))),
      to: show(highest(settle(line.most))),
      rule: line.rule,
      sources: [...new Set(line.sources.map(({ id }) => id))],
    })),
    besideCompressor: besideCompressor(input, total, shown),
    compressor: compressorOf(input, lines, total, shown),
    oilType: type.result,
    notes: notes.map(({ text, source }) => ({ text, source: source.id })),
    advice: adviceFor(input, lines),
  }
  return {
    result,
    told: toldOf(input, result, type.mark),
    steps: stepsOf(lines, result, input.compressorHolds, shown),
    cautions: dangersOf({
      refrigerant: r,
      compressorDrive: input.compressorDrive,
      does: ['opens'],
    }),
    sources: [
      ...lines.flatMap((line) => line.sources),
      ...[gathered.totalSource].flatMap((entry) => entry ?? []),
      ...(total ? [] : PUBLISHED_TOTALS.sources),
      ...type.sources,
      ...notes.map(({ source }) => source),
    ],
    assumptions: assumptionsFor(input, lines),
    warnings: [
      ...type.warnings,
      ...warningsFor(input, total !== undefined, limited),
      ...unusedOilFields(input),
    ],
  }
}

type Result = Computed<OilResult>

function stepsOf(
  lines: readonly Line[],
  { add, pourIn: pour, oilTotal }: Result,
  holds: Quantity<'volume'> | undefined,
  shown: (figure: Tied) => Quantity<'volume'>,
): readonly Step[] {
  return [
    ...lines.map((line) => ({
      what: `Oil for the ${line.what}`,
      formula: line.rule,
      values: { least: shown(line.least), most: shown(line.most) },
      gives: shown(line.usual),
    })),
    {
      what: 'Oil that must go in, with what the new compressor holds of it',
      formula: oilTotal
        ? "sum of the above, never more than the system's total"
        : 'sum of the above',
      values: oilTotal ? { "system's total": oilTotal } : {},
      gives: add,
    },
    ...(pour.si < add.si && holds
      ? [
          {
            what: 'Oil to pour in',
            formula: 'all that must go in − what the new compressor already holds of its share',
            values: { 'all together': add, 'new compressor holds': holds },
            gives: pour,
          },
        ]
      : []),
  ]
}

function assumptionsFor(input: OilInput, lines: readonly Line[]): readonly Assumption[] {
  const byRule = lines.some(({ part, sources }) => part === 'compressor' && sources.length > 0)
  return [
    ...emptyCompressor(input, lines),
    ...(byRule && input.compressorRule === undefined
      ? [
          {
            field: 'compressorRule',
            taken: STANDARD_RULE,
            because: 'no rule was chosen; the spread is that of all published drain rules',
          },
        ]
      : []),
    ...(input.leak === undefined && !input.flushed
      ? [
          {
            field: 'leak',
            taken: 'no oil was lost by a sudden leak',
            because: 'it was not said how refrigerant was lost',
          },
        ]
      : []),
  ]
}

const adviceFor = (input: OilInput, lines: readonly Line[]): readonly string[] => [
  lines.length > 0 ? ADVICE['put-in'] : input.longHose ? ADVICE['nothing-long'] : ADVICE.nothing,
  ...(input.leak === 'slow' ? [ADVICE.slow] : []),
  ...(input.recoveredOil && !input.flushed ? [ADVICE.recovered] : []),
  ...(input.flushed ? [ADVICE.flushed] : []),
]
