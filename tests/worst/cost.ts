import { parseJson } from '../../shared/input/index.ts'
import type { Operation } from '../../shared/operation.ts'
import { jsonText } from '../../shared/visible.ts'

/** What one input costs as a door answers it, from its text to the text of the answer. */
export interface Cost {
  /** CPU time of this thread, ms: what other programs and the compiler beside it take is left out. */
  readonly ms: number
  /** Whether it is answered, and not refused. */
  readonly valid: boolean
}

/** The system counts CPU time in steps of a few ms, so an input is run again until this much is counted. */
const COUNTED_MS = 16
const MOST_RUNS = 200

/**
 * CPU time of one input, or nothing where it is surely below `least`: once by the clock, which no CPU
 * time exceeds, and only where that is not enough again and again.
 */
export function costOf(operation: Operation, text: string, least = 0): Cost | undefined {
  const start = performance.now()
  const valid = isAnswered(operation, text)
  if (performance.now() - start < least) return undefined
  return { ms: cpuMs(() => isAnswered(operation, text)), valid }
}

function cpuMs(work: () => void): number {
  const before = process.threadCpuUsage()
  for (let runs = 1; ; runs += 1) {
    work()
    const { user, system } = process.threadCpuUsage(before)
    const ms = (user + system) / 1e3
    if (ms >= COUNTED_MS || runs === MOST_RUNS) return ms / runs
  }
}

export function isAnswered(operation: Operation, text: string): boolean {
  try {
    return jsonText(operation.run(parseJson(text))).length > 0
  } catch {
    return false
  }
}
