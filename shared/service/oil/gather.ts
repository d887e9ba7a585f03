import { CalcError } from '../../errors.ts'
import type { Quantity } from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import type { Source } from '../../sources.ts'
import { oilSource, tableAmount } from './amounts.ts'
import { compressorOil } from './compressor.ts'
import type { ReplacedPart } from './fields.ts'
import { longHoseOil } from './long-hose.ts'

export interface OilInput {
  readonly refrigerant: string
  readonly replaced?: readonly ReplacedPart['part'][] | undefined
  readonly parts?: readonly ReplacedPart[] | undefined
  readonly compressorRule?: string | undefined
  readonly compressorDrained?: Quantity<'volume'> | undefined
  readonly compressorHolds?: Quantity<'volume'> | undefined
  readonly accumulatorDrained?: Quantity<'volume'> | undefined
  readonly leak?: 'none' | 'slow' | 'sudden' | undefined
  readonly recoveredOil?: Quantity<'volume'> | undefined
  readonly flushed: boolean
  readonly systemTotal?: Quantity<'volume'> | undefined
  readonly longHose?: string | undefined
  readonly labelCharge?: Quantity<'mass'> | undefined
  readonly hoseLength?: Quantity<'length'> | undefined
  readonly oil?: string | undefined
  readonly existingOil?: string | undefined
  readonly compressorDrive?: 'belt' | 'electric' | undefined
  readonly volumeUnit?: 'fl-oz' | 'mL' | undefined
}

/** One entry of the sum, m³. */
export interface Line {
  readonly what: string
  readonly part: ReplacedPart['part'] | undefined
  readonly m3: number
  readonly fromM3: number
  readonly toM3: number
  readonly rule: string
  readonly sources: readonly Source[]
}

interface Gathered {
  readonly lines: readonly Line[]
  /** The system's total by the maker or a formula, m³. */
  readonly totalM3: number | undefined
  readonly formulaM3: number | undefined
  readonly totalSource: Source | undefined
}

/** All that goes back in: per replaced part, for a sudden leak, and what recovery brought out. */
export function gatherOil(r: Refrigerant, input: OilInput): Gathered {
  const long = input.longHose
    ? longHoseOil(input.longHose, r.info.id, input.labelCharge, input.hoseLength)
    : undefined
  const totalM3 = input.systemTotal?.si ?? long?.totalM3
  const frame = {
    totalM3,
    formulaM3: long?.totalM3,
    totalSource: input.systemTotal ? undefined : long?.source,
  }
  if (input.flushed) return { lines: [wholeSystem(totalM3)], ...frame }
  const parts = [
    ...(input.replaced ?? []).map((part) => ({ part, path: ['replaced'] })),
    ...(input.parts ?? []).map((entry, index) => ({ ...entry, path: ['parts', index] })),
  ]
  const lines = parts.map((entry) => partLine(entry, input))
  const extra = long?.extraM3
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
              input.recoveredOil.si,
              'as much fresh oil as recovery brought out',
              [oilSource('pickup-1994')],
            ),
          ]
        : []),
    ],
    ...frame,
  }
}

function wholeSystem(totalM3: number | undefined): Line {
  if (totalM3 === undefined) {
    throw new CalcError(
      'missing-input',
      'After a flush the whole quantity goes in, and the total of the system is not given.',
      {
        path: ['systemTotal'],
        hint: 'Read it from the machine\'s maker ("8 fl oz"), or choose a longHose formula with labelCharge.',
      },
    )
  }
  return plain('whole system', totalM3, 'flushed: the full quantity of the system', [])
}

const plain = (what: string, m3: number, rule: string, sources: readonly Source[]): Line => ({
  what,
  part: undefined,
  m3,
  fromM3: m3,
  toM3: m3,
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
      ...plain(what, makerAmount.si, "the maker's figure, which goes before the table", []),
      part,
    }
  }
  if (part === 'compressor') {
    const measured = drained ?? input.compressorDrained
    const { text, ...amount } = compressorOil(input.compressorRule, {
      drainedM3: measured?.si,
      newHoldsM3: input.compressorHolds?.si,
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
  const { text, ...amount } = tableAmount('accumulator', measured.si)
  return { what, part, rule: text, ...amount }
}
