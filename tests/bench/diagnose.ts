import { preset, presets } from '../../shared/cycle/machines.ts'
import { randomFrom } from '../../shared/random.ts'
import { diagnose } from '../../shared/service/diagnose.ts'
import { machineTold, typed } from '../evaluate/ask.ts'
import { drawTruth, withNoise } from '../evaluate/draw.ts'
import { type Level, SETS, SIGMA } from '../evaluate/plant.ts'
import { type CycleTiming, processorTime } from './cycle.ts'
import { median } from './median.ts'

const EACH = 110
const WARM_UP = 22
/** Times that each case is asked: the middle one counts, so that a collection of garbage is not its own. */
const ASKED = 3

/** How long a diagnosis takes, ms of processor time, by how well the machine is known. */
export function diagnoseBench(): readonly CycleTiming[] {
  return (['model', 'kind', 'unknown'] as const satisfies readonly Level[]).map((level) => {
    const inputs = inputsAt(level)
    for (const input of inputs.slice(0, WARM_UP)) diagnose.run(input)
    const times = inputs
      .slice(WARM_UP)
      .map((input) =>
        median(Array.from({ length: ASKED }, () => processorTime(() => diagnose.run(input)))),
      )
      .sort((a, b) => a - b)
    const at = (share: number) => times[Math.floor(share * (times.length - 1))] ?? Number.NaN
    return { what: level, medianMs: at(0.5), p99Ms: at(0.99) }
  })
}

/** Readings of machines drawn anew, each of the model's in turn. */
function inputsAt(level: Level) {
  const machines = presets()
  const random = randomFrom(31)
  return Array.from({ length: WARM_UP + EACH }, (_, count) => {
    const one = machines[count % machines.length] ?? preset('van-valve-134a')
    const truth = drawTruth(one, 'usual', 'kind', random)
    const read = withNoise(truth, (feature) => SIGMA[feature], random)
    return {
      ...typed(truth, read, SETS.usual, truth.readConditions),
      ...machineTold(truth, level, undefined),
    }
  })
}
