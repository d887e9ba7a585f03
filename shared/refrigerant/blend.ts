import { substanceData } from '../substance/library.ts'
import { moleFractions } from '../substance/mixture.ts'
import { type Multifluid, multifluid } from '../substance/multifluid.ts'
import type { Refrigerant } from './refrigerant.ts'

/** A blend as the mixture equations need it. */
export interface Blend {
  readonly fluid: Multifluid
  /** Mole fractions. */
  readonly z: Float64Array
}

const compiled = new WeakMap<Refrigerant, Blend>()

/** The mixture behind a blend, compiled when first asked for; undefined for a pure refrigerant. */
export function blendOf(r: Refrigerant): Blend | undefined {
  const { composition } = r.info
  if (composition.length < 2) return undefined
  const known = compiled.get(r)
  if (known !== undefined) return known
  const fluid = multifluid(composition.map(({ substance }) => substanceData(substance)))
  const masses = composition.map(({ massFraction }) => massFraction)
  const made = { fluid, z: Float64Array.from(moleFractions(masses, fluid.molarMasses)) }
  compiled.set(r, made)
  return made
}
