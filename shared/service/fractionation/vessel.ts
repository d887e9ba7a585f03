import { CalcError } from '../../errors.ts'
import { attempt } from '../../substance/attempt.ts'
import { type Phase, phaseAt } from '../../substance/fugacity.ts'
import type { Multifluid } from '../../substance/multifluid.ts'
import { pointAt } from '../../substance/saturation-line.ts'
import { stability } from '../../substance/stability.ts'
import { splitPhases, type TwoPhase } from '../../substance/two-phase.ts'

/** What is left in a vessel of fixed volume and temperature after part has gone. */
export interface VesselState {
  /** Mass gone, as a share of the mass at the start. */
  readonly lost: number
  /** mol of each component left, of 1 kg at the start. */
  readonly amounts: Float64Array
  readonly pressurePa: number
  /** Share of the volume that liquid fills; 0 once all of it has boiled. */
  readonly liquidShare: number
  /** Both phases; undefined once the liquid is gone. */
  readonly split: TwoPhase | undefined
}

/** A vessel that something gets out of. */
export interface Vessel {
  readonly fluid: Multifluid
  readonly temperatureK: number
  readonly escapes: Escapes
  /** m³, for 1 kg at the start. */
  readonly volume: number
  /** mol of each component in it at the start. */
  readonly amounts: Float64Array
}

export type Escapes = 'vapour' | 'liquid'

/** States reported after the start, at equal shares of the mass lost. */
const REPORTED = 10
/** Longest step in −ln(1 − m); half of it moves no mass fraction by 1e-5. */
const LONGEST_STEP = 0.08

/**
 * Lets vapour or liquid out of a vessel at constant temperature, in equilibrium at every instant.
 *
 * @param amounts - mol of each component in 1 kg, each above 0.
 * @param liquidShare - Share of the volume that liquid fills at the start, above 0 and below 1.
 * @param lostTo - Mass share to let out, above 0 and below 1.
 * @throws {CalcError} `no-convergence`.
 */
export function letOut(
  fluid: Multifluid,
  amounts: Float64Array,
  temperatureK: number,
  liquidShare: number,
  escapes: Escapes,
  lostTo: number,
  longestStep = LONGEST_STEP,
): { readonly vessel: Vessel; readonly states: readonly VesselState[] } {
  const split = atStart(fluid, amounts, temperatureK, liquidShare)
  const volume = split.liquidVolume + split.vapourVolume
  const vessel = { fluid, temperatureK, escapes, volume, amounts }
  let here = stateOf(0, amounts, contentsOf(vessel, amounts, split), volume)
  const states = [here]
  for (let row = 1; row <= REPORTED; row += 1) {
    here = letOutFrom(vessel, here, (lostTo * row) / REPORTED, longestStep)
    states.push(here)
  }
  return { vessel, states }
}

/**
 * The same vessel after more has gone.
 *
 * dnᵢ/dm = −xᵢ/Σxⱼ Mⱼ with x the composition of the escaping phase and m the mass lost (Rayleigh's
 * balance for each component, with the vapour space counted in), integrated by the classical
 * Runge–Kutta method over −ln(1 − m), in which the last of a component goes no faster than the
 * first. Once the liquid is gone the rest leaves unchanged in composition.
 *
 * @param lost - Mass share gone since the start, not below that of `from`.
 */
export function letOutFrom(
  vessel: Vessel,
  from: VesselState,
  lost: number,
  longestStep = LONGEST_STEP,
): VesselState {
  const { fluid, temperatureK, escapes, volume } = vessel
  // vapour alone leaves as it is: from here on only its amount shrinks
  if (from.split === undefined) {
    const shrunk = from.amounts.map((ni) => (ni * (1 - lost)) / (1 - from.lost))
    return stateOf(lost, shrunk, vapourAlone(fluid, shrunk, temperatureK, volume), volume)
  }
  let split = from.split
  const contents = (n: Float64Array): Contents => {
    const found = contentsOf(vessel, n, split)
    if (found.split !== undefined) split = found.split
    return found
  }
  const rate = (n: Float64Array): Float64Array => {
    const { liquid, vapour } = contents(n)
    const x = (escapes === 'liquid' ? (liquid ?? vapour) : vapour).x
    const mean = x.reduce((sum, xi, i) => sum + xi * (fluid.molarMasses[i] as number), 0)
    const left = n.reduce((sum, ni, i) => sum + ni * (fluid.molarMasses[i] as number), 0)
    return x.map((xi) => (-xi * left) / mean)
  }
  const way = Math.log((1 - from.lost) / (1 - lost))
  const steps = Math.max(2, Math.ceil(way / longestStep))
  let n = from.amounts
  for (let step = 0; step < steps; step += 1) n = advance(n, rate, way / steps, vessel.amounts)
  return stateOf(lost, n, contents(n), volume)
}

/** One step of the classical Runge–Kutta method. */
function advance(
  n: Float64Array,
  rate: (n: Float64Array) => Float64Array,
  h: number,
  atFirst: Float64Array,
): Float64Array {
  const k1 = rate(n)
  const k2 = rate(along(n, k1, h / 2))
  const k3 = rate(along(n, k2, h / 2))
  const k4 = rate(along(n, k3, h))
  return n.map((ni, i) => {
    const sum = at(k1, i) + 2 * at(k2, i) + 2 * at(k3, i) + at(k4, i)
    return Math.max(ni + (h / 6) * sum, LEAST * at(atFirst, i))
  })
}

/** A component is never taken out to nothing: its logarithm is needed. */
const LEAST = 1e-9

interface Contents {
  readonly vapour: Phase
  readonly liquid?: Phase
  readonly split?: TwoPhase
}

/** Two phases, or vapour alone where the amounts no longer make liquid. */
function contentsOf(
  { fluid, temperatureK, volume }: Vessel,
  n: Float64Array,
  near: TwoPhase,
): Contents {
  const split = attempt(() => splitPhases(fluid, temperatureK, n, { volume }, near))
  if (split !== undefined && split.liquidVolume > 0) {
    return { vapour: split.vapour, liquid: split.liquid, split }
  }
  const found = vapourAlone(fluid, n, temperatureK, volume)
  // a split that was merely not found must not pass for vapour
  if (split === undefined && !isStable(fluid, found.vapour)) {
    throw new CalcError(
      'no-convergence',
      'The liquid and vapour left in the vessel were not found.',
    )
  }
  return found
}

function vapourAlone(
  fluid: Multifluid,
  n: Float64Array,
  temperatureK: number,
  volume: number,
): Contents {
  const total = n.reduce((a, b) => a + b, 0)
  const x = n.map((ni) => ni / total)
  return { vapour: phaseAt(fluid, temperatureK, total / volume, x) }
}

function isStable(fluid: Multifluid, { x, temperatureK, pressurePa, density }: Phase): boolean {
  const test = stability(fluid, x, temperatureK, pressurePa)
  return test.split === undefined && Math.abs(test.phase.density / density - 1) < 1e-6
}

function atStart(
  fluid: Multifluid,
  amounts: Float64Array,
  temperatureK: number,
  liquidShare: number,
): TwoPhase {
  if (!(liquidShare > 0 && liquidShare < 1)) {
    throw new CalcError('out-of-range', 'Liquid must fill more than none and less than all of it.')
  }
  const total = amounts.reduce((a, b) => a + b, 0)
  const z = amounts.map((n) => n / total)
  const { liquid, vapour } = pointAt(fluid, z, 'bubble', temperatureK)
  const volume = total / (liquidShare * liquid.density + (1 - liquidShare) * vapour.density)
  return splitPhases(
    fluid,
    temperatureK,
    amounts,
    { liquidShare },
    {
      liquid,
      vapour,
      liquidVolume: liquidShare * volume,
      vapourVolume: (1 - liquidShare) * volume,
    },
  )
}

function stateOf(
  lost: number,
  amounts: Float64Array,
  found: Contents,
  volume: number,
): VesselState {
  return {
    lost,
    amounts,
    pressurePa: found.vapour.pressurePa,
    liquidShare: (found.split?.liquidVolume ?? 0) / volume,
    split: found.split,
  }
}

function along(n: Float64Array, rate: Float64Array, h: number): Float64Array {
  return n.map((ni, i) => Math.max(ni + h * at(rate, i), LEAST * ni))
}

function at(values: Float64Array, index: number): number {
  return values[index] as number
}
