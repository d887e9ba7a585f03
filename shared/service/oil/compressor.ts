import data from '../../../data/service/oil.json' with { type: 'json' }
import { CalcError } from '../../errors.ts'
import { combine, exactly, type Tied } from '../../quantity/index.ts'
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
  readonly drained: Tied | undefined
  /** In the new compressor as delivered, m³. */
  readonly newHolds: Tied | undefined
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
  const all = [own, ...others]
  return {
    ...own,
    rule: rule.id,
    least: combine(
      all.map(({ least }) => least),
      Math.min,
    ),
    most: combine(
      all.map(({ most }) => most),
      Math.max,
    ),
    sources: all.flatMap((entry) => entry.sources),
  }
}

/** Whether a rule needs the drained oil: all but a fixed amount and one counted from the new compressor. */
const byDrained = ({ bands }: Rule) =>
  bands.every(({ plus, under }) => plus !== undefined || under !== undefined)

function apply(rule: Rule, { drained, newHolds }: Measured): Amount {
  const [first] = rule.bands
  const sources: readonly Source[] = [oilSource(rule.source as OilSource)]
  const frame = { text: rule.text, sources }
  const { fromNew } = first ?? {}
  if (fromNew !== undefined) {
    if (!newHolds) throw missing('compressorHolds', rule)
    const at = (shift: number) =>
      combine([newHolds], (holds = 0) => Math.max(0, holds + cubic(fromNew + shift, rule.unit)))
    const width = first?.plusMinus ?? 0
    return { usual: at(0), least: at(-width), most: at(width), ...frame }
  }
  if (byDrained(rule) && !drained) throw missing('compressorDrained', rule)
  const usual = combine([drained ?? exactly(0)], (out = 0) => byBand(rule, out))
  return { usual, least: usual, most: usual, ...frame }
}

/** m³ by the band of the rule that the drained oil falls in. */
function byBand({ bands, unit }: Rule, drainedM3: number): number {
  const band = bands.find(
    ({ under, upTo }) =>
      (under === undefined || drainedM3 < cubic(under, unit)) &&
      (upTo === undefined || drainedM3 <= cubic(upTo, unit)),
  )
  return band?.set === undefined ? drainedM3 + cubic(band?.plus ?? 0, unit) : cubic(band.set, unit)
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
