import data from '../../../data/service/oil.json' with { type: 'json' }
import { CalcError } from '../../errors.ts'
import type { Quantity } from '../../quantity/index.ts'
import type { Source } from '../../sources.ts'
import { cubic, type OilSource, oilSource } from './amounts.ts'

export const LONG_HOSE_RULES = data.longHoseRules.map((rule) => rule.id) as [string, ...string[]]

interface LongHoseOil {
  /** The whole system's oil, m³; undefined for a rule that gives an extra. */
  readonly totalM3: number | undefined
  /** Beyond what the compressor is delivered with, m³; undefined for a rule that gives a total. */
  readonly extraM3: number | undefined
  readonly text: string
  readonly source: Source
}

const KILO = 1000

/**
 * Oil of a system with long hoses, by a compressor maker's or a machine maker's formula.
 *
 * The formulas by charge hold for R-134a with an expansion valve, below 1600 g; above it the
 * maker asks for a test on the vehicle.
 *
 * @throws {CalcError} `refused` outside that, `missing-input` without charge or hose length.
 */
export function longHoseOil(
  id: string,
  refrigerantId: string,
  labelCharge: Quantity<'mass'> | undefined,
  hoseLength: Quantity<'length'> | undefined,
): LongHoseOil {
  const rule = data.longHoseRules.find((entry) => entry.id === id)
  if (!rule) throw new CalcError('unknown-name', 'There is no such rule for long hoses.')
  const frame = { text: rule.text, source: oilSource(rule.source as OilSource) }
  if (rule.flOzPerMetre !== undefined) {
    if (!hoseLength) throw missing('hoseLength', 'Give the length of all hoses: "9 m".')
    const flOz = rule.flOzPerMetre * hoseLength.si - (rule.flOzLess ?? 0)
    return { totalM3: undefined, extraM3: cubic(Math.max(0, flOz), 'fl oz'), ...frame }
  }
  if (!labelCharge) throw missing('labelCharge', 'The formula goes by the charge: "1.1 kg".')
  const limitKg = data.longHoseLimitG / KILO
  if (refrigerantId !== 'R-134a' || labelCharge.si > limitKg) {
    const tooMuch = labelCharge.si > limitKg
    throw new CalcError(
      'refused',
      tooMuch
        ? `The formula holds up to ${data.longHoseLimitG} g (56 oz); above it the compressor's maker asks for a test on the vehicle.`
        : `The formula was published for R-134a, not for ${refrigerantId}.`,
      {
        path: [tooMuch ? 'labelCharge' : 'longHose'],
        hint: "Give the system's total oil from the machine's maker as systemTotal.",
      },
    )
  }
  const grams = labelCharge.si * KILO
  const millilitres = (grams * (rule.perGram ?? 0) + (rule.base ?? 0)) / (rule.over ?? 1)
  return { totalM3: cubic(millilitres, 'mL'), extraM3: undefined, ...frame }
}

function missing(field: string, hint: string): CalcError {
  return new CalcError('missing-input', `The rule for long hoses needs ${field}.`, {
    path: [field],
    hint,
  })
}
