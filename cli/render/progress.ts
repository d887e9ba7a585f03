import type { Streams } from '../streams.ts'

const EVERY_MS = 200

export interface Progress {
  tell(rows: number, failed: number): void
  end(rows: number, failed: number): void
}

/** How far a run of rows is, on one line of the terminal; silent where nobody looks. */
export function progressOn(streams: Streams, asked: boolean): Progress {
  if (!asked || !streams.isWatched) return { tell: () => {}, end: () => {} }
  const start = performance.now()
  let told = start
  const write = (rows: number, failed: number, end: string) => {
    const rate = rows / Math.max((performance.now() - start) / 1e3, 1e-3)
    const text = `${rows} rows, ${Math.round(rate)} a second${failed > 0 ? `, ${failed} refused` : ''}`
    streams.err(`\r${text.padEnd(Math.min(streams.width - 1, 60))}${end}`)
  }
  return {
    tell(rows, failed) {
      if (performance.now() - told < EVERY_MS) return
      told = performance.now()
      write(rows, failed, '')
    },
    end: (rows, failed) => write(rows, failed, '\n'),
  }
}
