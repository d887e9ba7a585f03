import { CalcError } from '../../errors.ts'
import type { Quantity } from '../../quantity/index.ts'
import { plausible } from '../plausible.ts'
import type { OilInput } from './fields.ts'

/** More than any machine that one person services: 1 m³ of oil, 10 km of hose. */
const MOST_OIL_M3 = 1
const LONGEST_M = 1e4

/** @throws {CalcError} `out-of-range` for an amount that no machine holds, `bad-input` for a measure that nothing uses. */
export function checkOilInput(input: OilInput): void {
  const { compressorDrained, compressorHolds, accumulatorDrained, recoveredOil, oilTotal } = input
  const given = {
    compressorDrained,
    compressorHolds,
    accumulatorDrained,
    recoveredOil,
    oilTotal,
  }
  checkAll(given, [])
  for (const [index, { part, makerAmount, drained }] of (input.parts ?? []).entries()) {
    checkAll({ makerAmount, drained }, ['parts', index])
    if (drained && part !== 'compressor' && part !== 'accumulator') {
      throw new CalcError('bad-input', `What was drained from a ${part} is not counted.`, {
        path: ['parts', index, 'drained'],
        hint: "Only compressor and accumulator go by the drained oil; for another part give the maker's amount (makerAmount).",
      })
    }
  }
  if (input.longHoseLength)
    plausible(input.longHoseLength, 0, LONGEST_M, 'A length', ['longHoseLength'])
}

function checkAll(
  given: Readonly<Record<string, Quantity<'volume'> | undefined>>,
  path: readonly (string | number)[],
): void {
  for (const [field, value] of Object.entries(given)) {
    if (value) plausible(value, 0, MOST_OIL_M3, 'An oil volume', [...path, field])
  }
}
