import type { RefrigerantInfo } from '../../refrigerant/index.ts'
import { substanceData } from '../../substance/library.ts'
import { massFractions, moleFractions } from '../../substance/mixture.ts'
import { type Multifluid, multifluid } from '../../substance/multifluid.ts'
import { type BlendState, besideFresh, boiling } from './blend-state.ts'
import { type Escapes, letOut, letOutFrom, type VesselState } from './vessel.ts'

/** Mass fractions, in the order of the blend's components, and how the blend then boils. */
export interface Part {
  readonly masses: readonly number[]
  readonly boils: BlendState
}

/** Everything that a leak of a blend comes to. */
export interface Leak {
  readonly fluid: Multifluid
  readonly fresh: readonly number[]
  readonly freshPa: { readonly bubblePa: number; readonly dewPa: number }
  readonly states: readonly VesselState[]
  readonly left: Part
  readonly escaped: Part
  readonly toppedUp: Part
  /** Of the topped-up charge from the fresh blend, on the line that moves more, K. */
  readonly shiftK: number
  /** The same had another mass share got out: goes on from the nearest state before it. */
  shiftAtK(lost: number): number
}

/**
 * Follows a leak and judges topping up.
 *
 * @param lost - Mass share that gets out, above 0 and below 1.
 * @param liquidShare - Share of the space that liquid fills at the start.
 */
export function workOut(
  info: RefrigerantInfo,
  temperatureK: number,
  liquidShare: number,
  escapes: Escapes,
  lost: number,
): Leak {
  const fluid = multifluid(info.composition.map((c) => substanceData(c.substance)))
  const fresh = info.composition.map((c) => c.massFraction)
  const amounts = Float64Array.from(fresh, (w, i) => w / (fluid.molarMasses[i] as number))
  const { vessel, states } = letOut(fluid, amounts, temperatureK, liquidShare, escapes, lost)
  const left = byMass(fluid, states.at(-1)?.amounts ?? amounts)
  const toppedUpFrom = (left: readonly number[], lost: number) =>
    fresh.map((w, i) => (1 - lost) * (left[i] as number) + lost * w)
  const toppedUp = toppedUpFrom(left, lost)
  const escaped = fresh.map((w, i) => (w - (1 - lost) * (left[i] as number)) / lost)
  const freshPa = boiling(fluid, molar(fluid, fresh), temperatureK)
  const part = (masses: readonly number[]): Part => ({
    masses,
    boils: besideFresh(fluid, molar(fluid, masses), temperatureK, freshPa),
  })
  const parts = { left: part(left), escaped: part(escaped), toppedUp: part(toppedUp) }
  return {
    fluid,
    fresh,
    freshPa,
    states,
    ...parts,
    shiftK: larger(parts.toppedUp.boils),
    shiftAtK(share) {
      const before = states.findLast((state) => state.lost <= share)
      if (!before) throw new Error('A leak begins with nothing lost.')
      const { amounts } = letOutFrom(vessel, before, share)
      return larger(part(toppedUpFrom(byMass(fluid, amounts), share)).boils)
    },
  }
}

const larger = ({ bubbleShiftK, dewShiftK }: BlendState) =>
  Math.max(Math.abs(bubbleShiftK), Math.abs(dewShiftK))

/** Mass fractions of amounts in mol. */
export function byMass(fluid: Multifluid, amounts: Float64Array): readonly number[] {
  return massFractions([...amounts], fluid.molarMasses)
}

function molar(fluid: Multifluid, masses: readonly number[]): Float64Array {
  return Float64Array.from(moleFractions(masses, fluid.molarMasses))
}
