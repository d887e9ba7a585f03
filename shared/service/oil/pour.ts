import type { Assumption } from '../../operation.ts'
import type { Line, OilInput } from './gather.ts'

/** Whether a new compressor is part of the job, so that what it was delivered with counts. */
const newCompressor = ({ flushed }: OilInput, lines: readonly Line[]) =>
  flushed || lines.some(({ part }) => part === 'compressor')

/**
 * Oil to pour from the can, m³: what must go in, less what the new compressor already holds of its
 * share. What it holds beyond its share is drained and helps no other part.
 *
 * @param addM3 - Oil that must go in altogether, the new compressor's share included.
 */
export function pourM3(input: OilInput, lines: readonly Line[], addM3: number): number {
  const holds = input.compressorHolds?.si
  if (holds === undefined || !newCompressor(input, lines)) return addM3
  const share = input.flushed ? addM3 : (lines.find(({ part }) => part === 'compressor')?.m3 ?? 0)
  return Math.max(0, addM3 - Math.min(holds, share))
}

/** What was taken of a new compressor whose oil was not given. */
export function emptyCompressor(input: OilInput, lines: readonly Line[]): readonly Assumption[] {
  if (input.compressorHolds || !lines.some(({ part }) => part === 'compressor')) return []
  return [
    {
      field: 'compressorHolds',
      taken: 'the new compressor is drained before it goes in',
      because:
        'what it was delivered with was not given; oil that stays in it must not be put in a second time',
    },
  ]
}
