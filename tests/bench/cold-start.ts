import { spawnSync } from 'node:child_process'
import { median } from './median.ts'

const RUNS = 21

function timeOnce(args: readonly string[]): number {
  const start = performance.now()
  const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' })
  if (status !== 0) throw new Error(`${args.join(' ')} ended with ${status}: ${stderr}`)
  return performance.now() - start
}

/** Medians of alternating runs, ms: an empty program, and the bundled command line doing real work. */
export function coldStart(): { readonly emptyMs: number; readonly cliMs: number } {
  const empty: number[] = []
  const cli: number[] = []
  const question = ['saturation', '--refrigerant', 'R-134a', '--pressure', '32 psig', '--json']
  for (let run = 0; run < RUNS; run += 1) {
    empty.push(timeOnce(['-e', '0']))
    cli.push(timeOnce(['dist/chargewright.mjs', ...question]))
  }
  return { emptyMs: median(empty), cliMs: median(cli) }
}
