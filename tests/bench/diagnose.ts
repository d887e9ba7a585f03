import { preset, presets } from '../../shared/cycle/machines.ts'
import { randomFrom } from '../../shared/random.ts'
import { diagnose } from '../../shared/service/diagnose.ts'
import { machineTold, typed } from '../evaluate/ask.ts'
import { drawTruth, withNoise } from '../evaluate/draw.ts'
import { type Level, SETS, SIGMA } from '../evaluate/plant.ts'
import type { CycleTiming } from './cycle.ts'

const EACH = 60
const WARM_UP = 12

/** How long a diagnosis takes, ms of processor time, by how well the machine is known. */
export function diagnoseBench(): readonly CycleTiming[] {
  const machines = presets()
  return (['model', 'kind', 'unknown'] as const satisfies readonly Level[]).map((level) => {
    const random = randomFrom(31)
    const times: number[] = []
    for (let count = 0; count < EACH + WARM_UP; count += 1) {
      const one = machines[count % machines.length] ?? preset('van-valve-134a')
      const truth = drawTruth(one, 'usual', 'kind', random)
      const read = withNoise(truth, (feature) => SIGMA[feature], random)
      const input = {
        ...typed(truth, read, SETS.usual, truth.readConditions),
        ...machineTold(truth, level, undefined),
      }
      const before = process.cpuUsage()
      diagnose.run(input)
      const { user, system } = process.cpuUsage(before)
      if (count >= WARM_UP) times.push((user + system) / 1000)
    }
    times.sort((a, b) => a - b)
    const at = (share: number) => times[Math.floor(share * (times.length - 1))] ?? Number.NaN
    return { what: level, medianMs: at(0.5), p99Ms: at(0.99) }
  })
}
