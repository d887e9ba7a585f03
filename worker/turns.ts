import type { InPieces } from '../shared/pieces.ts'

/** Time after which others have their turn, ms, where a clock goes on while there is work: at the edge it stands still. */
const MS_A_TURN = 8
/** Pieces after which they have it anyway. */
export const PIECES_A_TURN = 8

/** Lets everything else that is ready go first. Node's own way costs microseconds; a timer is there everywhere. */
export const pause = () =>
  new Promise<void>((resolve) => {
    if (typeof setImmediate === 'function') setImmediate(resolve)
    else setTimeout(resolve)
  })

/**
 * Does work piece by piece: whatever else waits has its turn in between.
 *
 * @param others - Lets others have their turn, and ends when the next piece may be done.
 */
export async function inTurns<T>(
  work: InPieces<T>,
  others: () => Promise<void> = pause,
): Promise<T> {
  for (;;) {
    const end = Date.now() + MS_A_TURN
    for (let pieces = 0; pieces < PIECES_A_TURN && Date.now() < end; pieces += 1) {
      const { done, value } = work.next()
      if (done === true) return value
    }
    await others()
  }
}
