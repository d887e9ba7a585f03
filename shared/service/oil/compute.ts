import type { CautionId } from '../../cautions.ts'
import { dangersOf } from '../../dangers.ts'
import { pickRefrigerant } from '../../fields/index.ts'
import type { Assumption, Computation, Computed, Step } from '../../operation.ts'
import { type Quantity, volume } from '../../quantity/index.ts'
import { LONG_HOSE_NOTES, PUBLISHED_TOTALS } from './amounts.ts'
import { checkOilInput } from './check.ts'
import { STANDARD_RULE } from './compressor.ts'
import { gatherOil, type Line, type OilInput } from './gather.ts'
import { emptyCompressor, pourM3 } from './pour.ts'
import type { OilResult } from './result.ts'
import { typeAnswer } from './type-answer.ts'
import { unusedOilFields } from './unused.ts'
import { warningsFor } from './warnings.ts'

/** Cautions of every such job; an electric compressor adds its own. */
export const ALWAYS = ['pressure', 'maker-first', 'local-rules'] as const

/** The oil that goes back in, bounded by the system's total, and whether its type may go in. */
export function computeOil(input: OilInput): Computation<Computed<OilResult>> {
  const r = pickRefrigerant(input.refrigerant)
  checkOilInput(input)
  const type = typeAnswer(input, r.info)
  const gathered = gatherOil(r, input)
  const { lines, totalM3 } = gathered
  const shown = (m3: number): Quantity<'volume'> =>
    volume(m3).in(input.volumeUnit === 'fl-oz' ? 'fl oz' : input.volumeUnit)
  const sum = (pick: (line: Line) => number) => lines.reduce((all, line) => all + pick(line), 0)
  const bounded = (m3: number) => Math.min(m3, totalM3 ?? m3)
  const wanted = sum((line) => line.m3)
  const add = shown(bounded(wanted))
  const pour = shown(pourM3(input, lines, bounded(wanted)))
  const limited = wanted > bounded(wanted)
  const notes = [...type.notes, ...(input.longHose ? LONG_HOSE_NOTES : [])]
  return {
    result: {
      pourIn: pour,
      add,
      addFrom: shown(bounded(sum((line) => line.fromM3))),
      addTo: shown(bounded(sum((line) => line.toM3))),
      limited,
      systemTotal: totalM3 === undefined ? undefined : shown(totalM3),
      ownTotal:
        input.systemTotal && gathered.formulaM3 !== undefined
          ? shown(gathered.formulaM3)
          : undefined,
      lines: lines.map((line) => ({
        what: line.what,
        add: shown(line.m3),
        from: shown(line.fromM3),
        to: shown(line.toM3),
        rule: line.rule,
        sources: [...new Set(line.sources.map(({ id }) => id))],
      })),
      besideCompressor: besideCompressor(input, totalM3, shown),
      compressor: compressorOf(input, lines, totalM3, shown),
      oilType: type.result,
      notes: notes.map(({ text, source }) => ({ text, source: source.id })),
      advice: adviceFor(input, lines),
    },
    steps: stepsOf(lines, totalM3, { add, pour, holds: input.compressorHolds }, shown),
    cautions: [
      ...(input.compressorDrive === 'electric' ? (['electric-compressor-oil'] as const) : []),
      ...dangersOf({ refrigerant: r }),
    ],
    sources: [
      ...lines.flatMap((line) => line.sources),
      ...[gathered.totalSource].flatMap((entry) => entry ?? []),
      ...(totalM3 === undefined ? PUBLISHED_TOTALS.sources : []),
      ...type.sources,
      ...notes.map(({ source }) => source),
    ],
    assumptions: assumptionsFor(input, lines),
    warnings: [
      ...type.warnings,
      ...warningsFor(input, totalM3, limited),
      ...unusedOilFields(input),
    ],
  }
}

/** Where a total is known: what is left of it for the rest of the machine. */
function besideCompressor(
  { flushed, longHose, compressorHolds }: OilInput,
  totalM3: number | undefined,
  shown: (m3: number) => Quantity<'volume'>,
): Quantity<'volume'> | undefined {
  if (totalM3 === undefined || !compressorHolds || !(flushed || longHose)) return undefined
  return shown(Math.max(0, totalM3 - compressorHolds.si))
}

function compressorOf(
  input: OilInput,
  lines: readonly Line[],
  totalM3: number | undefined,
  shown: (m3: number) => Quantity<'volume'>,
): Computed<OilResult>['compressor'] {
  const line = lines.find((entry) => entry.part === 'compressor')
  if (!line) return undefined
  const mustHold = Math.min(line.m3, totalM3 ?? line.m3)
  const holds = input.compressorHolds?.si
  const difference = holds === undefined ? undefined : holds - mustHold
  return {
    mustHold: shown(mustHold),
    rule: line.rule,
    drainFromNew: difference !== undefined && difference > 0 ? shown(difference) : undefined,
    addToNew: difference !== undefined && difference < 0 ? shown(-difference) : undefined,
    text:
      difference === undefined
        ? 'A new compressor is delivered with oil or without: drain it, measure, and put in what it must hold (compressorHolds tells how much to take out).'
        : difference > 0
          ? 'The new compressor holds more than it must: take the difference out before it goes in.'
          : difference < 0
            ? 'The new compressor holds less than it must: add what is missing.'
            : 'The new compressor holds what it must: nothing is taken out or added.',
  }
}

interface Poured {
  readonly add: Quantity<'volume'>
  readonly pour: Quantity<'volume'>
  readonly holds: Quantity<'volume'> | undefined
}

function stepsOf(
  lines: readonly Line[],
  totalM3: number | undefined,
  { add, pour, holds }: Poured,
  shown: (m3: number) => Quantity<'volume'>,
): readonly Step[] {
  return [
    ...lines.map((line) => ({
      what: `Oil for the ${line.what}`,
      formula: line.rule,
      values: { least: shown(line.fromM3), most: shown(line.toM3) },
      gives: shown(line.m3),
    })),
    {
      what: 'Oil that must go in, with what the new compressor holds of it',
      formula:
        totalM3 === undefined
          ? 'sum of the above'
          : "sum of the above, never more than the system's total",
      values: totalM3 === undefined ? {} : { "system's total": shown(totalM3) },
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

function adviceFor(input: OilInput, lines: readonly Line[]): readonly string[] {
  return [
    ...(lines.length === 0
      ? [
          input.longHose
            ? 'Nothing was replaced, lost or recovered, so no oil goes into a system that kept its own. The total is what a dry system takes: a new or a flushed one (flushed).'
            : 'Nothing was replaced, lost or recovered: no oil goes in.',
        ]
      : ['Put the oil into the new parts as they go in; measure, and write down how much.']),
    ...(input.leak === 'slow'
      ? ['A slow leak leaves the oil in the machine: nothing is added for it.']
      : []),
    ...(input.recoveredOil && !input.flushed
      ? ['What recovery brought out is waste: put in as much fresh oil.']
      : []),
    ...(input.flushed
      ? [
          'Blow the solvent out with dry nitrogen, and fit a new drier and a new orifice tube or valve screen.',
        ]
      : []),
  ]
}
