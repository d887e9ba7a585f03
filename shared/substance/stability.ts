import { CalcError } from '../errors.ts'
import { density } from './density.ts'
import { wilsonPressure } from './first-guess.ts'
import { type Phase, phaseAt } from './fugacity.ts'
import { mixtureOf } from './mixture.ts'
import type { Multifluid } from './multifluid.ts'
import { reducingAt } from './reducing.ts'

/** The single phase a mixture would like best at T and p, and what it could split off. */
interface Stability {
  /** The root of lower Gibbs energy of the whole, as one phase. */
  readonly phase: Phase
  readonly kind: 'liquid' | 'vapour'
  /**
   * Amounts of a phase of lower energy beside one mole of the whole (they sum to more than 1: the
   * more, the less stable); absent when the single phase is stable.
   */
  readonly split?: Float64Array
}

const MAXIMUM_STEPS = 200
const TOLERANCE = 1e-10
/** Tangent-plane distance below which a trial phase counts as lower. */
const LOWER = -1e-9

/**
 * Tangent-plane test: is a mixture at K and Pa one phase?
 *
 * Trial phases start vapour-like and liquid-like from Wilson's K values and are improved by
 * successive substitution (M. L. Michelsen, Fluid Phase Equilibria 9, 1-19, 1982).
 */
export function stability(
  fluid: Multifluid,
  z: Float64Array,
  temperatureK: number,
  pressurePa: number,
): Stability {
  const feeds = (['liquid', 'vapour'] as const).flatMap((kind) => {
    const phase = singlePhase(fluid, z, temperatureK, pressurePa, kind)
    return phase === undefined ? [] : [{ kind, phase }]
  })
  const feed = feeds.reduce<(typeof feeds)[number] | undefined>(
    (best, f) => (best === undefined || energy(f.phase) < energy(best.phase) ? f : best),
    undefined,
  )
  if (feed === undefined) {
    throw new CalcError('no-convergence', 'No density was found for the mixture as one phase.')
  }
  // Wilson's K values, y/x.
  const k = fluid.components.map((c) => wilsonPressure(c, temperatureK) / pressurePa)
  const trials: readonly (readonly ['liquid' | 'vapour', Float64Array])[] = [
    ['vapour', z.map((zi, i) => zi * (k[i] as number))],
    ['liquid', z.map((zi, i) => zi / (k[i] as number))],
  ]
  let lowest = LOWER
  let split: Float64Array | undefined
  for (const [kind, amounts] of trials) {
    const found = improve(fluid, feed.phase, amounts, kind, temperatureK, pressurePa)
    if (found !== undefined && found.distance < lowest) {
      lowest = found.distance
      split = found.amounts
    }
  }
  return {
    phase: feed.phase,
    kind: kindOf(fluid, feed.phase),
    ...(split === undefined ? {} : { split }),
  }
}

/** By density: thicker or thinner than the reducing density. Above the critical point a mere name. */
function kindOf(fluid: Multifluid, phase: Phase): 'liquid' | 'vapour' {
  return phase.density * reducingAt(fluid.volume, phase.x).value > 1 ? 'liquid' : 'vapour'
}

/** One phase at T and p, or undefined where that kind does not exist. */
export function singlePhase(
  fluid: Multifluid,
  x: Float64Array,
  temperatureK: number,
  pressurePa: number,
  kind: 'liquid' | 'vapour',
): Phase | undefined {
  try {
    const rho = density(mixtureOf(fluid, [...x]), temperatureK, pressurePa, kind)
    return phaseAt(fluid, temperatureK, rho, x)
  } catch (error) {
    if (error instanceof CalcError && error.code === 'two-phase') return undefined
    throw error
  }
}

/** Σ xᵢ ln fᵢ: the molar Gibbs energy of a phase, up to what all phases share. */
function energy(phase: Phase): number {
  return phase.x.reduce((sum, x, i) => sum + x * (phase.logFugacity[i] as number), 0)
}

/** Stationary point of the tangent-plane distance, or undefined where it is the feed itself. */
function improve(
  fluid: Multifluid,
  feed: Phase,
  start: Float64Array,
  kind: 'liquid' | 'vapour',
  temperatureK: number,
  pressurePa: number,
): { readonly distance: number; readonly amounts: Float64Array } | undefined {
  let amounts = start
  for (let step = 0; step < MAXIMUM_STEPS; step += 1) {
    const total = amounts.reduce((a, b) => a + b, 0)
    const x = amounts.map((a) => a / total)
    const trial = singlePhase(fluid, x, temperatureK, pressurePa, kind)
    if (trial === undefined) return undefined
    // ln Wᵢ = ln fᵢ(feed) − ln(fᵢ(trial)/xᵢ)
    const next = x.map((xi, i) =>
      Math.exp((feed.logFugacity[i] as number) - (trial.logFugacity[i] as number) + Math.log(xi)),
    )
    const move = next.reduce(
      (m, w, i) => Math.max(m, Math.abs(Math.log(w / (amounts[i] as number)))),
      0,
    )
    amounts = next
    const trivial = next.reduce(
      (m, w, i) => Math.max(m, Math.abs(Math.log(w / (feed.x[i] as number)))),
      0,
    )
    if (trivial < 1e-4) return undefined
    if (move < TOLERANCE) break
  }
  const sum = amounts.reduce((a, b) => a + b, 0)
  return { distance: -Math.log(sum), amounts }
}
