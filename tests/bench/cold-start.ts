import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { median } from './median.ts'

const RUNS = 21

/** @param cache - Folder of compiled code; an empty program is given none, which would cost it. */
function timeOnce(args: readonly string[], cache?: string): number {
  const start = performance.now()
  const { status, stderr } = spawnSync(process.execPath, args, {
    encoding: 'utf8',
    env: cache === undefined ? process.env : { ...process.env, NODE_COMPILE_CACHE: cache },
  })
  if (status !== 0) throw new Error(`${args.join(' ')} ended with ${status}: ${stderr}`)
  return performance.now() - start
}

export interface ColdStart {
  /** An empty program. */
  readonly emptyMs: number
  /** The bundled command line doing real work, its compiled code kept from an earlier run. */
  readonly cliMs: number
  /** The same as on the day that it is installed: nothing is kept yet, and this run keeps it. */
  readonly firstMs: number
}

/** Medians of alternating runs. */
export function coldStart(): ColdStart {
  const [empty, cli, first]: readonly [number[], number[], number[]] = [[], [], []]
  const question = ['saturation', '--refrigerant', 'R-134a', '--pressure', '32 psig', '--json']
  const ask = ['dist/chargewright.mjs', ...question]
  const folder = mkdtempSync(join(tmpdir(), 'chargewright-cache-'))
  try {
    const kept = join(folder, 'kept')
    timeOnce(ask, kept)
    for (let run = 0; run < RUNS; run += 1) {
      empty.push(timeOnce(['-e', '0']))
      cli.push(timeOnce(ask, kept))
      first.push(timeOnce(ask, join(folder, String(run))))
    }
  } finally {
    rmSync(folder, { recursive: true })
  }
  return { emptyMs: median(empty), cliMs: median(cli), firstMs: median(first) }
}
