import data from '../../../data/service/oil.json' with { type: 'json' }
import type { Assumption } from '../../operation.ts'
import { combine, exactly, type Tied, tied } from '../../quantity/index.ts'
import type { OilInput } from './fields.ts'
import type { Line } from './gather.ts'

/** Whether a new compressor is part of the job, so that what it was delivered with counts. */
const newCompressor = ({ flushed }: OilInput, lines: readonly Line[]) =>
  flushed || lines.some(({ part }) => part === 'compressor')

/**
 * Oil to pour from the can, m³: what must go in, less what the new compressor already holds of its
 * share. What it holds beyond its share is drained and helps no other part.
 *
 * @param add - Oil that must go in altogether, the new compressor's share included.
 */
export function pourIn(input: OilInput, lines: readonly Line[], add: Tied): Tied {
  const { compressorHolds, flushed } = input
  if (!compressorHolds || !newCompressor(input, lines)) return add
  const own = lines.find(({ part }) => part === 'compressor')?.usual ?? exactly(0)
  const holds = tied(compressorHolds, 'oil in the new compressor')
  return combine([add, holds, flushed ? add : own], (all = 0, held = 0, share = 0) =>
    Math.max(0, all - Math.min(held, share)),
  )
}

/** What was assumed of a new compressor whose oil was not given. */
export function emptyCompressor(input: OilInput, lines: readonly Line[]): readonly Assumption[] {
  if (input.compressorHolds || !lines.some(({ part }) => part === 'compressor')) return []
  return [
    {
      field: 'compressorHolds',
      taken: 'the new compressor is drained before it goes in',
      because: data.because['compressor-drained'],
    },
  ]
}
