import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { coldStart } from './cold-start.ts'
import { cycleBench } from './cycle.ts'
import { httpBench, type Throughput } from './http.ts'
import { microBench } from './micro.ts'

const print = (line: string) => process.stdout.write(`${line}\n`)
const nanoseconds = (value: number) =>
  value < 1e4 ? `${value.toFixed(0)} ns` : `${(value / 1e3).toFixed(0)} µs`

print('Time of one call, median')
const timings = await microBench()
for (const { what, medianNs } of timings) print(`  ${what.padEnd(28)}${nanoseconds(medianNs)}`)

const python = '.venv/bin/python'
if (existsSync(python)) {
  const { stdout, status, stderr } = spawnSync(python, ['tests/bench/coolprop.py'], {
    encoding: 'utf8',
  })
  if (status !== 0) throw new Error(stderr)
  const theirs = JSON.parse(stdout) as { version: string; 'R-134a': number }
  const ours = timings.find(({ what }) => what.startsWith('T(p) R-134a'))
  if (!ours) throw new Error('T(p) of R-134a was not timed.')
  print(
    `  CoolProp ${theirs.version} low-level T(p)   ${nanoseconds(theirs['R-134a'])}: ${(theirs['R-134a'] / ours.medianNs).toFixed(1)} times ours`,
  )
} else {
  print('  (no .venv with CoolProp: its T(p) is not compared)')
}

print('\nMachine model: one case in any weather and repair, processor time (aims in brackets)')
const AIMS: Readonly<Record<string, string>> = {
  'R-134a': '1 and 10 ms',
  'R-1234yf': '1 and 25 ms',
  'R-410A': '5 and 20 ms',
}
const cycles = cycleBench()
for (const { what, medianMs, p99Ms } of cycles.cases) {
  const times = `median ${medianMs.toFixed(2)} ms, 99 % ${p99Ms.toFixed(1)} ms`
  print(`  ${what.padEnd(28)}${times} (${AIMS[what] ?? 'none'})`)
}
print(`  sweep of 60 charges         ${cycles.sweepMs.toFixed(0)} ms (aim 100)`)

print('\nCold start, median')
const { emptyMs, cliMs } = coldStart()
print(`  node -e 0                   ${emptyMs.toFixed(0)} ms`)
print(
  `  bundled saturation command  ${cliMs.toFixed(0)} ms: ${(cliMs / emptyMs).toFixed(2)} times (aim 1.4)`,
)

print('\nRequests a second, 20 connections')
const rows = await httpBench()
const rate = (runtime: Throughput['runtime'], app: Throughput['app']) =>
  rows.find((row) => row.runtime === runtime && row.app === app)?.requestsPerSecond ?? Number.NaN
for (const runtime of ['workerd', 'node-server'] as const) {
  const ours = rate(runtime, 'chargewright')
  const bare = rate(runtime, 'bare zod route')
  print(
    `  ${runtime.padEnd(14)}${ours.toFixed(0)} against ${bare.toFixed(0)} of a bare validated route: ${(ours / bare).toFixed(2)} times`,
  )
}
// Connections kept alive by the load would hold the process for minutes.
process.exit(0)
