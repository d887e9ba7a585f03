import { spawnSync } from 'node:child_process'
import { mkdtempSync, openSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { median } from './median.ts'

const ROWS = 20_000
const ROUNDS = 3

/** Rows a second from a CSV file to a CSV file, medians; the start of each program counts. */
export interface RowRates {
  readonly csv: number
  readonly json: number
  /** Of a loop over CoolProp's low-level call that writes the same six figures. */
  readonly coolprop: number | undefined
}

/** @param python - An interpreter that has CoolProp, where there is one. */
export function rowsBench(python: string | undefined): RowRates {
  const folder = mkdtempSync(join(tmpdir(), 'chargewright-rows-'))
  try {
    const input = join(folder, 'rows.csv')
    const pressures = Array.from({ length: ROWS }, (_, index) => 200 + (index % 1_000))
    writeFileSync(input, `pressure (kPa abs)\n${pressures.join('\n')}\n`)
    const cli = ['dist/chargewright.mjs', 'saturation', 'R-134a', input, '--units', 'si']
    const rates: { csv: number[]; json: number[]; coolprop: number[] } = {
      csv: [],
      json: [],
      coolprop: [],
    }
    for (let round = 0; round < ROUNDS; round += 1) {
      rates.csv.push(rate(process.execPath, [...cli, '--csv'], folder))
      rates.json.push(rate(process.execPath, cli, folder))
      if (python) rates.coolprop.push(rate(python, ['tests/bench/coolprop-rows.py', input], folder))
    }
    return {
      csv: median(rates.csv),
      json: median(rates.json),
      coolprop: python ? median(rates.coolprop) : undefined,
    }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

function rate(program: string, args: readonly string[], folder: string): number {
  const out = openSync(join(folder, 'out'), 'w')
  const start = performance.now()
  const { status, stderr } = spawnSync(program, args, {
    stdio: ['ignore', out, 'pipe'],
    encoding: 'utf8',
  })
  if (status !== 0) throw new Error(`${args.join(' ')} ended with ${status}: ${stderr}`)
  return (ROWS / (performance.now() - start)) * 1e3
}
