import { preset, presets } from '../../shared/cycle/machines.ts'
import { stateOf } from '../../shared/cycle/readings.ts'
import { run } from '../../shared/cycle/run.ts'
import { NO_DEVIATIONS, NO_FAULTS } from '../../shared/cycle/types.ts'
import { randomFrom } from '../../shared/random.ts'
import { simulate } from '../../shared/service/simulate.ts'
import { randomCase } from '../generate/cycle-cases.ts'

const EACH = 300
const WARM_UP = 60
const SWEEP = 60

const SWEEP_ASKED = {
  modelMachine: 'van',
  sweep: 'charge',
  sweepFrom: '50 %',
  sweepTo: '148 %',
  sweepPoints: SWEEP,
}

/** How long one case takes, ms of processor time: what other programs do at the same time is left out. */
export interface CycleTiming {
  readonly what: string
  readonly medianMs: number
  readonly p99Ms: number
}

/** ms of processor time. */
export function processorTime(work: () => void): number {
  const before = process.cpuUsage()
  work()
  const { user, system } = process.cpuUsage(before)
  return (user + system) / 1000
}

/** Median and 99th percentile over any weather and state of repair, by refrigerant; and a sweep of 60 charges. */
export function cycleBench(): {
  readonly cases: readonly CycleTiming[]
  readonly sweepMs: number
  /** The same as an operation answers it, every row shown in both unit systems. */
  readonly answerMs: number
} {
  const random = randomFrom(20)
  const times = new Map<string, number[]>()
  for (const each of presets()) {
    for (let count = 0; count < EACH + WARM_UP; count += 1) {
      const asked = randomCase(each, random)
      const ms = processorTime(() => run(asked))
      if (count < WARM_UP) continue
      const list = times.get(each.machine.refrigerant) ?? []
      times.set(each.machine.refrigerant, [...list, ms])
    }
  }
  const at = (list: readonly number[], share: number) =>
    [...list].sort((a, b) => a - b)[Math.floor(share * (list.length - 1))] ?? Number.NaN
  const { machine, nominal } = preset('van-valve-134a')
  const sweepMs = processorTime(() => {
    let near: ReturnType<typeof stateOf>
    for (let step = 0; step < SWEEP; step += 1) {
      const faults = { ...NO_FAULTS, charge: 0.5 + step / SWEEP }
      const asked = { machine, conditions: nominal, faults, deviations: NO_DEVIATIONS }
      near = stateOf(run(asked, near?.solution.trial.guess)) ?? near
    }
  })
  return {
    cases: [...times].map(([what, list]) => ({
      what,
      medianMs: at(list, 0.5),
      p99Ms: at(list, 0.99),
    })),
    sweepMs,
    answerMs: processorTime(() => simulate.run(SWEEP_ASKED)),
  }
}
