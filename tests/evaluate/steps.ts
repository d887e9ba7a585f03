import { presets } from '../../shared/cycle/index.ts'
import { FEATURES, type Feature } from '../../shared/diagnosis/features.ts'
import { USUAL_CANDIDATES } from '../../shared/diagnosis/next.ts'
import { randomFrom } from '../../shared/random.ts'
import { answerTo, machineTold, typed } from './ask.ts'
import { baselineOf } from './cases.ts'
import { drawTruth, normal, withNoise } from './draw.ts'
import { type Level, SIGMA, type Truth } from './plant.ts'

const START: readonly Feature[] = ['lowSidePa', 'highSidePa']
/** As a form on a clipboard has them. */
const FIXED: readonly Feature[] = [
  'suctionLineK',
  'liquidLineK',
  'ventK',
  'dischargeLineK',
  'condenserAirK',
  'evaporatorOutletK',
  'deviceInletK',
  'chargeShare',
]
const SURE = 0.9
export const POLICIES = ['worth', 'fixed', 'random'] as const
export type Policy = (typeof POLICIES)[number]

export interface Way {
  readonly policy: Policy
  readonly steps: number
  readonly minutes: number
  readonly reached: boolean
  readonly right: boolean
}

/** Reads on after the gauges until one cause holds nine tenths, by one order or another. */
export function* ways(count: number, seed: number, level: Level): Generator<readonly Way[]> {
  const random = randomFrom(seed)
  const machines = presets()
  for (let index = 0; index < count; index += 1) {
    const truth = drawTruth(
      machines[index % machines.length] as (typeof machines)[number],
      'usual',
      level,
      random,
    )
    if (truth.cause === 'reading-or-test-wrong') continue
    const read = withNoise(truth, (feature) => SIGMA[feature], random)
    read[FEATURES.indexOf('chargeShare')] = truth.charge + SIGMA.chargeShare * normal(random)
    const baseline = level === 'baseline' ? baselineOf(truth, random) : undefined
    yield POLICIES.map((policy) => wayOf(policy, truth, read, level, baseline, random))
  }
}

function wayOf(
  policy: Policy,
  truth: Truth,
  read: Float64Array,
  level: Level,
  baseline: Record<string, unknown> | undefined,
  random: () => number,
): Way {
  const set = [...START]
  let minutes = 0
  for (;;) {
    const result = answerTo({
      ...typed(truth, read, set, truth.readConditions),
      ...machineTold(truth, level, baseline),
    })
    const first = result?.causes[0]
    const reached = (first?.share ?? 0) >= SURE
    const left = FIXED.filter((feature) => !set.includes(feature))
    const right = first?.cause === truth.cause
    const steps = set.length - START.length
    if (reached || left.length === 0) return { policy, steps, minutes, reached, right }
    const next =
      policy === 'fixed'
        ? left[0]
        : policy === 'random'
          ? left[Math.floor(random() * left.length)]
          : result?.nextSteps.map(({ id }) => id as Feature).find((id) => left.includes(id))
    if (next === undefined) return { policy, steps, minutes, reached, right }
    set.push(next)
    minutes += USUAL_CANDIDATES.find(({ feature }) => feature === next)?.minutes ?? 0
  }
}
