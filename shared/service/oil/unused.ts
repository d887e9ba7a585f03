import data from '../../../data/service/oil.json' with { type: 'json' }
import type { Warning } from '../../operation.ts'
import { fillIn } from '../../sentence.ts'
import type { OilInput } from './fields.ts'

/** Fields that went into nothing, and why: nobody should think that they counted. */
export function unusedOilFields(input: OilInput): readonly Warning[] {
  const named = [...(input.replaced ?? []), ...(input.parts ?? []).map(({ part }) => part)]
  const compressor = named.includes('compressor')
  const { flushed, longHose } = input
  const whole = 'after a flush the full quantity goes in, whatever was lost or replaced'
  const noCompressor = 'no compressor is on the list of replaced parts'
  const rules: readonly (readonly [keyof OilInput, unused: boolean, why: string])[] = [
    ['compressorDrained', !compressor || flushed, flushed ? whole : noCompressor],
    ['compressorRule', !compressor || flushed, flushed ? whole : noCompressor],
    ['compressorHolds', !compressor && !flushed && !longHose, noCompressor],
    [
      'accumulatorDrained',
      !named.includes('accumulator') || flushed,
      flushed ? whole : 'no accumulator is on the list of replaced parts',
    ],
    ['recoveredOil', flushed, whole],
    [
      'longHoseLength',
      longHose !== 'extra-by-hose-length',
      'only the rule extra-by-hose-length takes it',
    ],
  ]
  return [
    ...rules
      .filter(([field, unused]) => unused && input[field] !== undefined)
      .map(([field, , why]) => ({
        code: 'not-used',
        message: `${field} was not used: ${why}.`,
      })),
    ...listedTwice(input),
  ]
}

function listedTwice({ replaced = [], parts = [] }: OilInput): readonly Warning[] {
  const twice = [...new Set(replaced)].filter((part) => parts.some((entry) => entry.part === part))
  if (twice.length === 0) return []
  return [
    {
      code: 'listed-twice',
      message: fillIn(data.warnings['listed-twice'], { parts: twice.join(' and the ') }),
    },
  ]
}
