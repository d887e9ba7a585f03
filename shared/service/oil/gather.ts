import { CalcError } from '../../errors.ts'
import { type Tied, tied } from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import type { Source } from '../../sources.ts'
import { oilSource, tableAmount } from './amounts.ts'
import { compressorOil } from './compressor.ts'
import type { OilInput, ReplacedPart } from './fields.ts'
import { longHoseOil } from './long-hose.ts'

/** One entry of the sum, m³. */
export interface Line {
  readonly what: string
  readonly part: ReplacedPart['part'] | undefined
  readonly usual: Tied
  readonly least: Tied
  readonly most: Tied
  readonly rule: string
  readonly sources: readonly Source[]
}

interface Gathered {
  readonly lines: readonly Line[]
  /** The system's total by the maker or a formula, and by the formula alone, m³. */
  readonly total: Tied | undefined
  readonly formula: Tied | undefined
  readonly totalSource: Source | undefined
}

/** All that goes back in: per replaced part, for a sudden leak, and what recovery brought out. */
export function gatherOil(r: Refrigerant, input: OilInput): Gathered {
  const long = input.longHose
    ? longHoseOil(input.longHose, r.info.id, input.labelCharge, input.longHoseLength)
    : undefined
  const total = input.oilTotal ? tied(input.oilTotal, 'oil total') : long?.total
  const frame = {
    total,
    formula: long?.total,
    totalSource: input.oilTotal ? undefined : long?.source,
  }
  if (input.flushed) return { lines: [wholeSystem(total)], ...frame }
  const parts = [
    ...(input.replaced ?? []).map((part) => ({ part, path: ['replaced'] })),
    ...(input.parts ?? []).map((entry, index) => ({ ...entry, path: ['parts', index] })),
  ]
  const lines = parts.map((entry) => partLine(entry, input))
  const extra = long?.extra
  return {
    lines: [
      ...lines,
      ...(input.leak === 'sudden' ? [leakLine()] : []),
      ...(extra === undefined || !long
        ? []
        : [plain('long hoses', extra, long.text, [long.source])]),
      ...(input.recoveredOil
        ? [
            plain(
              'recovered oil',
              tied(input.recoveredOil, 'recovered oil'),
              'as much fresh oil as recovery brought out',
              [oilSource('pickup-1994')],
            ),
          ]
        : []),
    ],
    ...frame,
  }
}

function wholeSystem(total: Tied | undefined): Line {
  if (!total) {
    throw new CalcError(
      'missing-input',
      'After a flush the whole quantity goes in, and the total of the system is not given.',
      {
        path: ['oilTotal'],
        hint: 'Read it from the machine\'s maker ("8 fl oz"), or choose a longHose formula with labelCharge.',
      },
    )
  }
  return plain('whole system', total, 'flushed: the full quantity of the system', [])
}

const plain = (what: string, amount: Tied, rule: string, sources: readonly Source[]): Line => ({
  what,
  part: undefined,
  usual: amount,
  least: amount,
  most: amount,
  rule,
  sources,
})

function leakLine(): Line {
  const { text, ...amount } = tableAmount('sudden-leak')
  return { what: 'sudden leak', part: undefined, rule: text, ...amount }
}

function partLine(
  {
    part,
    name,
    makerAmount,
    drained,
    path,
  }: Partial<ReplacedPart> & Pick<ReplacedPart, 'part'> & { path: readonly (string | number)[] },
  input: OilInput,
): Line {
  const what = name ?? part
  if (makerAmount) {
    return {
      ...plain(
        what,
        tied(makerAmount, "the maker's amount"),
        "the maker's figure, which overrides the table",
        [],
      ),
      part,
    }
  }
  if (part === 'compressor') {
    const measured = drained ?? input.compressorDrained
    const { text, ...amount } = compressorOil(input.compressorRule, {
      drained: measured && tied(measured, 'oil drained'),
      newHolds: input.compressorHolds && tied(input.compressorHolds, 'oil in the new compressor'),
    })
    return { what, part, ...amount, rule: text }
  }
  if (part !== 'accumulator') {
    const { text, ...amount } = tableAmount(part)
    return { what, part, rule: text, ...amount }
  }
  const measured = drained ?? input.accumulatorDrained
  if (!measured) {
    throw new CalcError('missing-input', 'The oil drained from the old accumulator is needed.', {
      path: path[0] === 'parts' ? [...path, 'drained'] : ['accumulatorDrained'],
      hint: 'Drain and measure it ("1.5 fl oz"; an accumulator may have to be drilled), or give the maker\'s amount under parts.',
    })
  }
  const { text, ...amount } = tableAmount('accumulator', tied(measured, 'oil drained'))
  return { what, part, rule: text, ...amount }
}
