import data from '../../../data/service/oil.json' with { type: 'json' }
import { CalcError } from '../../errors.ts'
import { combine, type Quantity, quantity, say, type Tied, tied } from '../../quantity/index.ts'
import type { Source } from '../../sources.ts'
import { cubic, type OilSource, oilSource } from './amounts.ts'

export const LONG_HOSE_RULES = data.longHoseRules.map((rule) => rule.id) as [string, ...string[]]

interface LongHoseOil {
  /** The whole system's oil, m³; undefined for a rule that gives an extra. */
  readonly total: Tied | undefined
  /** Beyond what the compressor is delivered with, m³; undefined for a rule that gives a total. */
  readonly extra: Tied | undefined
  readonly text: string
  readonly source: Source
}

const inGrams = (kilograms: number) => quantity('mass', kilograms, 'kg').to('g')

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
  longHoseLength: Quantity<'length'> | undefined,
): LongHoseOil {
  const rule = data.longHoseRules.find((entry) => entry.id === id)
  if (!rule) throw new CalcError('unknown-name', 'There is no such rule for long hoses.')
  const frame = { text: rule.text, source: oilSource(rule.source as OilSource) }
  if (rule.flOzPerMetre !== undefined) {
    if (!longHoseLength) {
      throw missing('longHoseLength', 'Give the length of all hoses: "9 m".')
    }
    const { flOzPerMetre, flOzLess = 0 } = rule
    const extra = combine([tied(longHoseLength, 'hose length')], (metres = 0) =>
      cubic(Math.max(0, flOzPerMetre * metres - flOzLess), 'fl oz'),
    )
    return { total: undefined, extra, ...frame }
  }
  if (!labelCharge) throw missing('labelCharge', 'The formula goes by the charge: "1.1 kg".')
  const limit = quantity('mass', data.longHoseLimitG, 'g')
  const tooMuch = labelCharge.si > limit.si
  if (refrigerantId !== 'R-134a' || tooMuch) {
    throw new CalcError(
      'refused',
      tooMuch
        ? `The formula holds up to ${say(limit)}; above it the compressor's maker asks for a test on the vehicle.`
        : `The formula was published for R-134a, not for ${refrigerantId}.`,
      {
        path: [tooMuch ? 'labelCharge' : 'longHose'],
        hint: "Give the system's total oil from the machine's maker as oilTotal.",
      },
    )
  }
  const { perGram = 0, base = 0, over = 1 } = rule
  const total = combine([tied(labelCharge, 'label charge')], (kilograms = 0) =>
    cubic((inGrams(kilograms) * perGram + base) / over, 'mL'),
  )
  return { total, extra: undefined, ...frame }
}

function missing(field: string, hint: string): CalcError {
  return new CalcError('missing-input', `The rule for long hoses needs ${field}.`, {
    path: [field],
    hint,
  })
}
