import { Bench } from 'tinybench'
import workOrder from '../../data/examples/harbour-crane.json' with { type: 'json' }
import { operation } from '../../shared/operations.ts'
import { atRest } from '../../shared/physics/at-rest.ts'
import {
  refrigerant,
  saturationPressure,
  saturationTemperature,
} from '../../shared/refrigerant/index.ts'

/** A single call is shorter than the timer's step, so calls are timed in batches of this many. */
const BATCH = 1_000

/** Median time of one call, ns. */
interface Timing {
  readonly what: string
  readonly medianNs: number
}

/** Times the property calls and the two operations a bench sees most. */
export async function microBench(): Promise<readonly Timing[]> {
  const fluids = [refrigerant('R-134a'), refrigerant('R-407C')]
  const bench = new Bench({ time: 400, warmupTime: 100 })
  const batched = new Set<string>()
  let sink = 0
  for (const fluid of fluids) {
    const pressures = Array.from({ length: BATCH }, (_, index) => 2e5 + index * 1.5e3)
    const temperatures = Array.from({ length: BATCH }, (_, index) => 260 + index * 0.06)
    const time = (what: string, call: () => void) => {
      batched.add(what)
      bench.add(what, call)
    }
    time(`T(p) ${fluid.info.id}, dew`, () => {
      for (const pressure of pressures) sink += saturationTemperature(fluid, pressure, 'dew')
    })
    time(`p(T) ${fluid.info.id}, dew`, () => {
      for (const kelvin of temperatures) sink += saturationPressure(fluid, kelvin, 'dew')
    })
  }
  const blend = refrigerant('R-407C')
  const rest = {
    pressure: { si: 1.18e6, plusMinus: 7e3 },
    temperature: { si: 298, plusMinus: 0.5 },
  }
  const contents = { mass: { si: 3.6, plusMinus: 0.02 }, volume: { si: 0.0216 } }
  bench.add('at rest R-407C, contents flashed', () => {
    sink += atRest(blend, rest.pressure, rest.temperature, contents).off?.si ?? 0
  })
  const readings = operation('readings')
  bench.add('readings', () => {
    readings.run(readings.example)
  })
  for (const solving of ['fractionation', 'contamination']) {
    const slow = operation(solving)
    bench.add(solving, () => {
      slow.run(slow.example)
    })
  }
  const order = operation('work-order')
  bench.add('work-order', () => {
    order.run(workOrder)
  })
  await bench.run()
  if (!Number.isFinite(sink)) throw new Error('A timed call gave no number.')
  return bench.tasks.map((task) => {
    const { result } = task
    if (!('latency' in result)) throw new Error(`${task.name} did not run.`)
    const calls = batched.has(task.name) ? BATCH : 1
    return { what: task.name, medianNs: (result.latency.p50 * 1e6) / calls }
  })
}
