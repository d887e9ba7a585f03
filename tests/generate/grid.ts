/**
 * Runs the machine model over a grid of at least ten thousand cases, accounts for every one, and
 * confirms by a fine scan each of which it says that it has no steady state.
 *
 *     npm run grid              1000 cases a machine
 *     npm run grid -- 100 7     100 a machine, another seed
 */
import { run } from '../../shared/cycle/run.ts'
import { scanHighSide } from '../../shared/cycle/scan.ts'
import { cases } from './cycle-cases.ts'

const each = Number(process.argv[2] ?? 1000)
const seed = Number(process.argv[3] ?? 1)
const ACCEPTED = 1e-8
const BALANCE = 1e-6
/** Of so many steady states one is looked at by a scan: it must be the only one. */
const SAMPLE = 25

interface Row {
  readonly counts: Map<string, number>
  readonly times: number[]
  worstError: number
  worstBalance: number
}

const rows = new Map<string, Row>()
const unconfirmed: string[] = []
let total = 0
let scanned = 0
let several = 0
for (const { preset, case: asked } of cases(each, seed)) {
  const { id } = preset.machine
  const row: Row = rows.get(id) ?? { counts: new Map(), times: [], worstError: 0, worstBalance: 0 }
  rows.set(id, row)
  const started = process.cpuUsage()
  const outcome = run(asked)
  const { user, system } = process.cpuUsage(started)
  row.times.push((user + system) / 1000)
  total += 1
  const state = 'state' in outcome ? outcome.state : undefined
  let name: string = outcome.kind
  if (state === undefined) {
    name += ' (no steady state)'
    const limit = outcome.kind === 'high-pressure-trip' ? outcome.limitPa : Infinity
    const scan = scanHighSide(asked, limit)
    const confirmed = scan.crossings === 0 && (outcome.kind === 'dry' || scan.risesAtTop)
    if (!confirmed)
      unconfirmed.push(
        `${id} ${outcome.kind} ${JSON.stringify({ scan, ...asked.conditions, ...asked.faults })}`,
      )
  } else {
    const { solution, imbalance, remarks } = state
    row.worstError = Math.max(row.worstError, solution.error)
    // a state that a clutch does not let settle has no balance of its evaporator
    if (solution.branch.pinned === undefined) {
      row.worstBalance = Math.max(row.worstBalance, Math.abs(imbalance))
    }
    if (outcome.kind === 'steady' && total % SAMPLE === 0) {
      const { crossings } = scanHighSide(asked, preset.machine.controls.highCutOutPa)
      scanned += 1
      // a condenser flooded by far may have a second, from which it would run away
      if (crossings > 1) several += 1
    }
    const { thermostat, cyclingSwitch } = preset.machine.controls
    const lets =
      state.leaving.probeK < (thermostat?.opensK ?? 0) ||
      solution.trial.guess.suctionPa < (cyclingSwitch?.opensPa ?? 0)
    if (outcome.kind === 'steady' && lets)
      unconfirmed.push(
        `${id} steady though its control has opened ${JSON.stringify({ ...asked.conditions, ...asked.faults })}`,
      )
    for (const remark of outcome.kind === 'steady' ? remarks : []) name += ` +${remark}`
  }
  row.counts.set(name, (row.counts.get(name) ?? 0) + 1)
}

let failed = unconfirmed.length > 0
for (const [id, row] of rows) {
  const { counts, times, worstError, worstBalance } = row
  times.sort((a, b) => a - b)
  const at = (share: number) => (times[Math.floor(share * (times.length - 1))] ?? 0).toFixed(2)
  const sum = [...counts.values()].reduce((a, b) => a + b, 0)
  if (sum !== each || worstError > ACCEPTED || worstBalance > BALANCE) failed = true
  console.log(
    `${id}  ${sum} cases; median ${at(0.5)} ms, 95 % ${at(0.95)}, 99 % ${at(0.99)}, longest ${at(1)}; largest residual ${worstError.toExponential(1)}, balance ${worstBalance.toExponential(1)}`,
  )
  for (const [name, count] of [...counts].sort(([, a], [, b]) => b - a)) {
    console.log(`  ${String(count).padStart(5)}  ${name}`)
  }
}
console.log(
  `${total} cases; ${scanned} steady ones scanned, ${several} with more than one state; ${unconfirmed.length} not confirmed`,
)
for (const line of unconfirmed) console.log(line)
if (failed) process.exitCode = 1
