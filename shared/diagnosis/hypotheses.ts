import {
  type Conditions,
  type FaultKind,
  faultsOf,
  type Machine,
  type Outcome,
} from '../cycle/index.ts'
import { atOnce, type InPieces } from '../pieces.ts'
import { type Columns, effectsInPieces } from './effects.ts'
import { FEATURES } from './features.ts'
import { nominalEffects } from './kinds.ts'
import { KNOWN_SHARE, NUISANCES, type Nuisance, OF_THE_TEST, SPREAD } from './nuisance.ts'
import { type Spread, widened } from './spread.ts'

/** What may be the matter: one fault, none, or the readings themselves. */
export type Cause = FaultKind | 'none' | 'reading-or-test-wrong'

/** One cause at one severity, with what it would show. */
export interface Hypothesis {
  readonly cause: Cause
  /** 0 to 1; 0 where there is nothing to be severe. */
  readonly severity: number
  /** Expected readings, in the order of FEATURES. */
  readonly mean: Float64Array
  /** Spread of them by what is not known of machine and test; instruments left out. */
  readonly spread: Spread
  /** That spread is what machines of its kind are guessed to differ by, not what this one is known to. */
  readonly isGuess?: boolean
}

/** How well the machine is known: by readings of its own when it was sound, or by its kind alone. */
export type Knowledge = 'known' | 'roughly'

const SEVERITIES = [0.1, 0.2, 0.3, 0.4, 0.5, 0.65, 0.8, 1]
/** A mistake can move a reading by so many times the spread and the instrument together. */
export const MISTAKE = 6

/**
 * What every fault of a machine would show in some weather, at rising severity, with the spread by
 * all that is not known: coils, compressor, device, air flows, humidity, temperatures, speed, charge.
 * A state that a cut-out stops is left out: a machine that was read was running.
 *
 * What the machine itself may differ by moves readings as it does in its nominal weather.
 *
 * Some 150 solves; empty only where not even the sound machine runs.
 */
export const hypotheses = (
  ...asked: Parameters<typeof hypothesesInPieces>
): readonly Hypothesis[] => atOnce(hypothesesInPieces(...asked))

/**
 * The same with a pause after every few solves.
 *
 * @param solved - How the sound machine ends up, where that is known.
 */
export function* hypothesesInPieces(
  machine: Machine,
  conditions: Conditions,
  knowledge: Knowledge,
  solved?: Outcome,
): InPieces<readonly Hypothesis[]> {
  const sizes = sizesOf(knowledge)
  const nominal = nominalEffects(machine.id)
  const ofTheMachine = (cause: FaultKind | 'none') =>
    nominal.find((effect) => effect.cause === cause)?.columns
  const effects = yield* effectsInPieces(
    machine,
    conditions,
    () => SEVERITIES,
    { ofTheMachine },
    sizes,
    faultsOf(machine),
    solved,
  )
  const spreads = new Map<Columns, Float64Array>()
  const found = effects.map(({ cause, severity, mean, columns }): Hypothesis => {
    const covariance = spreads.get(columns) ?? spreadOf(columns, sizes)
    spreads.set(columns, covariance)
    return { cause, severity, mean, spread: { common: covariance } }
  })
  const [sound, ...faults] = found
  return sound === undefined ? [] : [sound, mistaken(sound), ...faults]
}

/** The readings or the test are wrong: what is shown lies anywhere around the sound machine. */
export const mistaken = ({ mean, spread, isGuess = false }: Hypothesis): Hypothesis => ({
  isGuess,
  cause: 'reading-or-test-wrong',
  severity: 0,
  mean,
  spread: widened(spread, MISTAKE),
})

function sizesOf(knowledge: Knowledge): Readonly<Record<Nuisance, number>> {
  const part = knowledge === 'known' ? KNOWN_SHARE : 1
  const size = (name: Nuisance) =>
    name === 'speed'
      ? SPREAD.speed * KNOWN_SHARE
      : SPREAD[name] * ((OF_THE_TEST as readonly Nuisance[]).includes(name) ? 1 : part)
  return Object.fromEntries(NUISANCES.map((name) => [name, size(name)])) as Record<Nuisance, number>
}

/** J Λ Jᵀ. */
function spreadOf(columns: Columns, sizes: Readonly<Record<Nuisance, number>>): Float64Array {
  const n = FEATURES.length
  const covariance = new Float64Array(n * n)
  NUISANCES.forEach((name, k) => {
    const column = columns[k] as Float64Array
    const variance = sizes[name] ** 2
    for (let i = 0; i < n; i += 1) {
      for (let j = 0; j < n; j += 1) {
        covariance[i * n + j] =
          (covariance[i * n + j] as number) +
          variance * (column[i] as number) * (column[j] as number)
      }
    }
  })
  return covariance
}
