import data from '../../../data/service/oil.json' with { type: 'json' }
import { CalcError } from '../../errors.ts'
import type { Source } from '../../sources.ts'
import { type Amount, cubic, type OilSource, oilSource } from './amounts.ts'

export const COMPRESSOR_RULES = data.compressorRules.map((rule) => rule.id) as [string, ...string[]]
/** Protects a compressor whose predecessor had run dry; otherwise gives back what came out. */
export const STANDARD_RULE = 'drained-or-2-fl-oz-below-1'

interface Band {
  readonly under?: number
  readonly upTo?: number
  readonly set?: number
  readonly plus?: number
  readonly fromNew?: number
  readonly plusMinus?: number
}

interface Rule {
  readonly id: string
  readonly text: string
  readonly unit: string
  readonly bands: readonly Band[]
  readonly source: string
}

const RULES: readonly Rule[] = data.compressorRules

interface CompressorOil extends Amount {
  readonly rule: string
}

interface Measured {
  /** Drained from the old compressor, m³. */
  readonly drainedM3: number | undefined
  /** In the new compressor as delivered, m³. */
  readonly newHoldsM3: number | undefined
}

/**
 * Oil that must be in the new compressor, by a published drain rule.
 *
 * With a rule chosen there is no spread; without one, the spread is that of all rules that go by
 * the drained oil.
 *
 * @throws {CalcError} `missing-input` for the measurement that the rule goes by.
 */
export function compressorOil(chosen: string | undefined, measured: Measured): CompressorOil {
  const rule = RULES.find((entry) => entry.id === (chosen ?? STANDARD_RULE))
  if (!rule) throw new CalcError('unknown-name', 'There is no such compressor rule.')
  const own = apply(rule, measured)
  const others =
    chosen === undefined ? RULES.filter(byDrained).map((entry) => apply(entry, measured)) : []
  return {
    ...own,
    rule: rule.id,
    fromM3: Math.min(own.fromM3, ...others.map((entry) => entry.fromM3)),
    toM3: Math.max(own.toM3, ...others.map((entry) => entry.toM3)),
    sources: [own, ...others].flatMap((entry) => entry.sources),
  }
}

/** Whether a rule needs the drained oil: all but a fixed amount and one counted from the new compressor. */
const byDrained = ({ bands }: Rule) =>
  bands.every(({ plus, under }) => plus !== undefined || under !== undefined)

function apply(rule: Rule, { drainedM3, newHoldsM3 }: Measured): Amount {
  const [first] = rule.bands
  const sources: readonly Source[] = [oilSource(rule.source as OilSource)]
  if (first?.fromNew !== undefined) {
    if (newHoldsM3 === undefined) throw missing('compressorHolds', rule)
    const at = (shift: number) =>
      Math.max(0, newHoldsM3 + cubic((first.fromNew ?? 0) + shift, rule.unit))
    const width = first.plusMinus ?? 0
    return { m3: at(0), fromM3: at(-width), toM3: at(width), text: rule.text, sources }
  }
  if (byDrained(rule) && drainedM3 === undefined) throw missing('compressorDrained', rule)
  const drained = drainedM3 ?? 0
  const band = rule.bands.find(
    ({ under, upTo }) =>
      (under === undefined || drained < cubic(under, rule.unit)) &&
      (upTo === undefined || drained <= cubic(upTo, rule.unit)),
  )
  const m3 =
    band?.set === undefined
      ? drained + cubic(band?.plus ?? 0, rule.unit)
      : cubic(band.set, rule.unit)
  return { m3, fromM3: m3, toM3: m3, text: rule.text, sources }
}

function missing(field: 'compressorDrained' | 'compressorHolds', rule: Rule): CalcError {
  return new CalcError(
    'missing-input',
    field === 'compressorDrained'
      ? 'The oil drained from the old compressor is needed.'
      : 'The oil that the new compressor holds is needed.',
    {
      path: [field],
      hint:
        field === 'compressorDrained'
          ? 'Drain and measure it ("2.5 fl oz"), or give the maker\'s amount under parts, or choose a compressorRule that goes without.'
          : `Read it from the new compressor's papers ("140 mL"); rule ${rule.id} counts from it.`,
    },
  )
}
