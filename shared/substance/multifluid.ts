import { GAS_CONSTANT } from '../gas-constants.ts'
import { idealPart } from './ideal.ts'
import { type MixingRule, mixingRule } from './mixing-rules.ts'
import type { HelmholtzPart } from './model.ts'
import { type ReducingFunction, reducingTemperature, reducingVolume } from './reducing.ts'
import { residualPart } from './residual.ts'
import type { SubstanceData } from './types.ts'

/**
 * Molar gas constant of a mixture, J/(mol·K).
 *
 * Each pure equation was fitted with its own constant (8.31451, 8.314472 …, up to 6e-6 apart).
 * A mixture needs one; the mean of its components' would make R depend on composition and put a
 * term into every chemical potential. The reference library makes the same choice. A mixture that
 * goes over into a pure substance therefore meets it in density exactly, in pressure to 6e-6.
 */
export const MIXTURE_GAS_CONSTANT = GAS_CONSTANT

/** A set of components with everything the mixture equations need, compiled once. */
export interface Multifluid {
  readonly components: readonly SubstanceData[]
  /** kg/mol. */
  readonly molarMasses: readonly number[]
  readonly residuals: readonly HelmholtzPart[]
  readonly ideals: readonly HelmholtzPart[]
  /** Pairs above the diagonal, row by row; `undefined` where there is no departure function. */
  readonly departures: readonly (HelmholtzPart | undefined)[]
  readonly rules: readonly MixingRule[]
  readonly temperature: ReducingFunction
  readonly volume: ReducingFunction
}

/** Compile the multi-fluid model of these components (Kunz and Wagner 2012, section 2). */
export function multifluid(components: readonly SubstanceData[]): Multifluid {
  const rules = components.flatMap((a, i) => components.slice(i + 1).map((b) => mixingRule(a, b)))
  return {
    components,
    molarMasses: components.map((c) => c.molarMass),
    residuals: components.map((c) => residualPart(c.residual)),
    ideals: components.map((c) => idealPart(c.ideal, c.reducing.temperatureK)),
    departures: rules.map((rule) =>
      rule.departure === undefined ? undefined : residualPart({ power: rule.departure }),
    ),
    rules,
    temperature: reducingTemperature(components, rules),
    volume: reducingVolume(components, rules),
  }
}
