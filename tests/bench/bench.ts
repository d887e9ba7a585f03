import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { beforeBench } from './before.ts'
import { coldStart } from './cold-start.ts'
import { cycleBench } from './cycle.ts'
import { diagnoseBench } from './diagnose.ts'
import { httpBench } from './http.ts'
import { microBench } from './micro.ts'
import { rowsBench } from './rows.ts'
import { worstBench } from './worst.ts'

const print = (line: string) => process.stdout.write(`${line}\n`)
const nanoseconds = (value: number) =>
  value < 1e4 ? `${value.toFixed(0)} ns` : `${(value / 1e3).toFixed(0)} µs`
const thousands = (value: number) => `${(value / 1e3).toFixed(1)} k`

/** Python with CoolProp: that of CI, or whichever there is. */
const python = ['.venv/bin/python', 'python3'].find(
  (name) => spawnSync(name, ['-c', 'import CoolProp'], { stdio: 'ignore' }).status === 0,
)
const isBuilt = existsSync('dist/chargewright.mjs')
const NOT_BUILT = '  not measured: there is no dist/chargewright.mjs (npm run build makes it)'

/** A part of the bench: where it cannot be, it says why, and the others go on. */
async function part(title: string, measure: () => void | Promise<void>): Promise<void> {
  print(`\n${title}`)
  try {
    await measure()
  } catch (error) {
    print(`  not measured: ${error instanceof Error ? error.message : String(error)}`)
  }
}

await part('Time of one call, median', async () => {
  const timings = await microBench()
  for (const { what, medianNs } of timings) print(`  ${what.padEnd(28)}${nanoseconds(medianNs)}`)
  if (!python) {
    print('  CoolProp is not there, so its T(p) is not compared')
    return
  }
  const { stdout, status, stderr } = spawnSync(python, ['tests/bench/coolprop.py'], {
    encoding: 'utf8',
  })
  if (status !== 0) throw new Error(stderr)
  const theirs = JSON.parse(stdout) as { version: string; 'R-134a': number }
  const ours = timings.find(({ what }) => what.startsWith('T(p) R-134a'))?.medianNs ?? Number.NaN
  print(
    `  CoolProp ${theirs.version} low-level T(p)   ${nanoseconds(theirs['R-134a'])}: ${(theirs['R-134a'] / ours).toFixed(1)} times ours`,
  )
})

await part('One answer, beside what it took at a197c30', async () => {
  for (const { what, whole, length, same, toldNow } of await beforeBench()) {
    const beside = ({ before, now }: { readonly before: number; readonly now: number }) =>
      `${before.toFixed(1)} then, ${now.toFixed(1)} µs now: ${(now / before).toFixed(2)} times`
    const more = whole.now - same.now - toldNow
    print(`  ${what.padEnd(28)}${beside(whole)}, with ${length.toFixed(1)} times the text`)
    print(`    the same parts            ${beside(same)} (aim 0.5)`)
    print(`    the answer in words       ${toldNow.toFixed(1)} µs, which there was none of`)
    print(`    ±, cautions, assumptions  ${more.toFixed(1)} µs, of which there were fewer`)
  }
})

await part(
  'Machine model: one case in any weather and repair, processor time (aims in brackets)',
  () => {
    const aims: Readonly<Record<string, string>> = {
      'R-134a': '1 and 10 ms',
      'R-1234yf': '1 and 25 ms',
      'R-410A': '5 and 20 ms',
    }
    const { cases, sweepMs, answerMs } = cycleBench()
    for (const { what, medianMs, p99Ms } of cases) {
      const times = `median ${medianMs.toFixed(2)} ms, 99 % ${p99Ms.toFixed(1)} ms`
      print(`  ${what.padEnd(28)}${times} (${aims[what] ?? 'none'})`)
    }
    print(`  sweep of 60 charges         ${sweepMs.toFixed(0)} ms (aim 100)`)
    print(`  the same by "simulate"      ${answerMs.toFixed(0)} ms (aim 100)`)
  },
)

await part('A diagnosis by five readings, processor time (aim 50 ms)', () => {
  for (const { what, medianMs, p99Ms } of diagnoseBench()) {
    const times = `median ${medianMs.toFixed(0)} ms, 99 % ${p99Ms.toFixed(0)} ms`
    print(`  machine: ${what.padEnd(19)}${times}`)
  }
})

await part('Dearest inputs found so far (npm run worst), processor time, aim 50 ms', () => {
  for (const { what, ms } of worstBench()) print(`  ${what.padEnd(28)}${ms.toFixed(2)} ms`)
})

await part('Start of the command line, median of alternating runs', () => {
  if (!isBuilt) {
    print(NOT_BUILT)
    return
  }
  const { emptyMs, cliMs, firstMs } = coldStart()
  print(`  node -e 0                   ${emptyMs.toFixed(0)} ms`)
  print(
    `  bundled saturation command  ${cliMs.toFixed(0)} ms: ${(cliMs / emptyMs).toFixed(2)} times (aim 2.0), with its compiled code kept`,
  )
  print(
    `  its very first run          ${firstMs.toFixed(0)} ms: ${(firstMs / emptyMs).toFixed(2)} times, which keeps that code`,
  )
})

await part('Rows a second, CSV file in, file out, start included', () => {
  if (!isBuilt) {
    print(NOT_BUILT)
    return
  }
  const { csv, json, coolprop } = rowsBench(python)
  const beside = (rate: number) =>
    coolprop === undefined ? '' : `: ${(rate / coolprop).toFixed(2)} times CoolProp's`
  print(`  saturation as CSV           ${thousands(csv)}${beside(csv)} (aim 1.0)`)
  print(`  saturation as JSON lines    ${thousands(json)}${beside(json)}`)
  print(
    coolprop === undefined
      ? '  CoolProp is not there, so the loop over its low-level call is not compared'
      : `  loop over CoolProp's low-level call, six figures  ${thousands(coolprop)}`,
  )
})

for (const runtime of ['Node', 'workerd'] as const) {
  await part(`A request on ${runtime}, 20 connections, medians of interleaved rounds`, async () => {
    const { ours, query, bare } = await httpBench(runtime)
    const rows = { ours, 'by GET': query, bare }
    for (const [name, { cpuMicroseconds, perSecond }] of Object.entries(rows)) {
      print(
        `  ${name.padEnd(8)}${cpuMicroseconds.toFixed(0)} µs of CPU, ${thousands(perSecond)} a second`,
      )
    }
    const byCpu = bare.cpuMicroseconds / ours.cpuMicroseconds
    const byRate = ours.perSecond / bare.perSecond
    print(
      `  a validated route that sends the same bytes and headers: ${byCpu.toFixed(2)} of it by CPU (aim 0.8), ${byRate.toFixed(2)} by requests a second`,
    )
  })
}
