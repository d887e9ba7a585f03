import figures from '../../../data/service/diagnosis.json' with { type: 'json' }
import {
  type Architecture,
  type Case,
  type Conditions,
  type Deviations,
  faultOf,
  NO_DEVIATIONS,
  NO_FAULTS,
  type Outcome,
  run,
} from '../../cycle/index.ts'
import type { Machine } from '../../cycle/types.ts'
import type { Knowledge } from '../../diagnosis/index.ts'
import { keptWith } from '../../kept.ts'
import { normalFrom, randomFrom } from '../../random.ts'
import { type ModelMachine, machineFor } from '../simulate/machines.ts'
import { type Named, TOPICS, type Topic } from './topics.ts'

/** What is in front of the class, without what is the matter with it. */
export interface Scene {
  readonly seed: number
  readonly topic: Topic
  readonly modelMachine: string
  readonly name: string
  readonly architecture: Architecture
  readonly machine: Machine
  readonly conditions: Conditions
  /** Weather that the supposed moves are counted from. */
  readonly before: Conditions
  readonly knowledge: Knowledge
}

/** A scene with what is the matter. Nothing of this but `outcome`'s readings goes out before the end. */
export interface LessonCase extends Scene {
  readonly cause: Named
  readonly severity: number
  readonly asked: Case
  readonly outcome: Outcome
}

/** Weather of a case lies so far around the nominal one. */
const AROUND = { ambientK: 5, returnAirK: 3, humidity: 0.1, speed: 0.2 } as const

/**
 * The case of a seed: always the same one. Each draw takes its own numbers, so that one does not
 * hang on the other.
 */
export function caseOf(
  seed: number,
  topicId: string | undefined,
  knowledge: Knowledge,
): LessonCase {
  const random = randomFrom(seed)
  const [forTopic, forMachine, forRefrigerant, forTruth, forSeverity] = Array.from(
    { length: 5 },
    random,
  )
  const topic = TOPICS.find(({ id }) => id === topicId) ?? pick(TOPICS, forTopic)
  const modelMachine = pick(topic.machines, forMachine)
  const { name, architecture, machine, nominal } = machineOf(modelMachine, forRefrigerant)
  const conditions = weatherOf(nominal, topic, random)
  const deviations = knowledge === 'known' ? NO_DEVIATIONS : deviating(random)
  const truth = pick(topic.truths, forTruth)
  const { from = 0, to = 0 } = truth
  const scene = {
    seed,
    topic,
    modelMachine,
    name,
    architecture,
    machine,
    conditions,
    before: topic.before === 'nominal' ? nominal : conditions,
    knowledge,
  }
  return readable(
    { ...scene, cause: truth.fault },
    from + (to - from) * (forSeverity ?? 0),
    deviations,
  )
}

const pick = <T>(list: readonly T[], chance = 0): T =>
  list[Math.min(Math.floor(chance * list.length), list.length - 1)] as T

/** One of the refrigerants that the machine is modelled with. */
function machineOf(id: string, chance = 0): ModelMachine & ReturnType<typeof machineFor> {
  const { presets } = machineFor(id, undefined)
  return machineFor(id, refrigerantOf(pick(presets, chance)))
}

/** "loader-receiver-1234yf" is made for R-1234yf. */
const refrigerantOf = (presetId: string) => `R-${presetId.split('-').at(-1)}`

function weatherOf(nominal: Conditions, topic: Topic, random: () => number): Conditions {
  const around = (width: number) => width * (2 * random() - 1)
  const [ambient, cab, humidity, speed] = [
    around(AROUND.ambientK),
    around(AROUND.returnAirK),
    around(AROUND.humidity),
    around(AROUND.speed),
  ]
  return {
    ...nominal,
    ambientK: nominal.ambientK + (topic.weather?.ambientK ?? ambient),
    returnAirK: nominal.returnAirK + (topic.weather?.returnAirK ?? cab),
    returnHumidity: topic.weather?.humidity ?? nominal.returnHumidity + humidity,
    speed: nominal.speed * (1 + speed),
  }
}

/** How one machine differs from another of its kind, as far as such machines do. */
function deviating(random: () => number): Deviations {
  const { spread } = figures
  const drawn = (sigma: number) => 1 + sigma * normalFrom(random)
  return {
    condenserConductance: drawn(spread.condenserConductance),
    evaporatorConductance: drawn(spread.evaporatorConductance),
    volumetric: drawn(spread.volumetric),
    isentropic: drawn(spread.isentropic),
    device: drawn(spread.device),
  }
}

/** How the machine of a scene ends up when sound, as the model has it: read when it was new. */
export const soundOf = keptWith(({ machine, conditions }: Scene) =>
  run({ machine, conditions, faults: NO_FAULTS, deviations: NO_DEVIATIONS }),
)

/** Milder again and again, until it is a machine that runs and can be read. */
const MILDER = 0.85
const MOST_TRIES = 12

function readable(
  scene: Scene & { readonly cause: Named },
  severity: number,
  deviations: Deviations,
  tries = 0,
): LessonCase {
  const { machine, conditions, cause } = scene
  const faults = cause === 'none' ? NO_FAULTS : faultOf(machine, cause, severity)
  const asked: Case = { machine, conditions, faults, deviations }
  const outcome = run(asked)
  if (outcome.kind === 'steady' || outcome.kind === 'cycling' || tries === MOST_TRIES) {
    return { ...scene, severity, asked, outcome }
  }
  return readable(scene, severity * MILDER, deviations, tries + 1)
}
