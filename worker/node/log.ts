import type { IncomingMessage, ServerResponse } from 'node:http'
import { visible } from '../../shared/visible.ts'

/** Longest path that a line shows. */
const LONGEST_PATH = 200
/** Lines are written together: a write a request would cost as much as finding its route. */
const FLUSH_AFTER_MS = 100
const FLUSH_AT_BYTES = 64 * 1024

export interface RequestLog {
  /** Follows a request until its answer is sent or whoever asked is gone. */
  follow(request: IncomingMessage, response: ServerResponse): void
  /** Writes what waits. */
  flush(): void
}

/**
 * One line a request: `2026-11-27T08:15:00.123Z POST /v1/saturation 200 1.8 ms`.
 *
 * Queries, bodies and addresses stay out: they may be somebody's. A caller that hung up has `-` for its status.
 */
export function requestLog(write: (text: string) => void): RequestLog {
  let waiting = ''
  let timer: NodeJS.Timeout | undefined
  let second = 0
  let clock = ''
  /** Many answers go out in one second, and writing a date takes as long as finding a route. */
  const timeText = () => {
    const now = Date.now()
    const milliseconds = now % 1000
    if (now - milliseconds !== second) {
      second = now - milliseconds
      clock = new Date(second).toISOString().slice(0, -'000Z'.length)
    }
    return `${clock}${String(milliseconds).padStart(3, '0')}Z`
  }
  const flush = () => {
    clearTimeout(timer)
    timer = undefined
    if (waiting !== '') write(waiting)
    waiting = ''
  }
  return {
    flush,
    follow(request, response) {
      const start = performance.now()
      response.on('close', () => {
        const status = response.writableFinished ? response.statusCode : '-'
        const path = visible(pathOf(request.url ?? '')).slice(0, LONGEST_PATH)
        const took = tenths(performance.now() - start)
        waiting += `${timeText()} ${request.method} ${path} ${status} ${took} ms\n`
        if (waiting.length > FLUSH_AT_BYTES) flush()
        else timer ??= setTimeout(flush, FLUSH_AFTER_MS).unref()
      })
    },
  }
}

/** An address without its query. */
function pathOf(address: string): string {
  const end = address.indexOf('?')
  return end < 0 ? address : address.slice(0, end)
}

/** One decimal, in a fraction of the time of `toFixed`. */
function tenths(milliseconds: number): string {
  const whole = Math.round(milliseconds * 10)
  return `${Math.trunc(whole / 10)}.${whole % 10}`
}
