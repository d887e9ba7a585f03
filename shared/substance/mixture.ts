import type { HelmholtzModel, HelmholtzPart } from './model.ts'
import { MIXTURE_GAS_CONSTANT, type Multifluid, multifluid } from './multifluid.ts'
import { reducingValue } from './reducing.ts'
import { addWeighted } from './term-group.ts'
import type { SubstanceData } from './types.ts'

/** A mixture of fixed composition with what made it. */
interface MixtureModel extends HelmholtzModel {
  readonly fluid: Multifluid
  readonly moleFractions: readonly number[]
}

/** Mole fractions of mass fractions; molar masses in kg/mol. */
export function moleFractions(
  massFractions: readonly number[],
  molarMasses: readonly number[],
): number[] {
  const moles = massFractions.map((w, i) => w / (molarMasses[i] as number))
  const total = moles.reduce((a, b) => a + b, 0)
  return moles.map((n) => n / total)
}

/** Mass fractions of mole fractions; molar masses in kg/mol. */
export function massFractions(
  fractions: readonly number[],
  molarMasses: readonly number[],
): number[] {
  const masses = fractions.map((x, i) => x * (molarMasses[i] as number))
  const total = masses.reduce((a, b) => a + b, 0)
  return masses.map((m) => m / total)
}

/**
 * The Helmholtz model of a mixture of fixed composition.
 *
 * α(τ, δ) = Σ xᵢ(α⁰ᵢ + ln xᵢ) + Σ xᵢ αʳᵢ(τ, δ) + ΣΣ xᵢxⱼFᵢⱼ αʳᵢⱼ(τ, δ), τ = T_r(x)/T, δ = ρ/ρ_r(x)
 * (Kunz and Wagner 2012, eqs. 8 to 17).
 */
export function mixtureModel(
  components: readonly SubstanceData[],
  fractions: readonly number[],
): MixtureModel {
  return mixtureOf(multifluid(components), fractions)
}

/** The same from components already compiled. */
export function mixtureOf(fluid: Multifluid, fractions: readonly number[]): MixtureModel {
  const temperature = reducingValue(fluid.temperature, fractions)
  const density = 1 / reducingValue(fluid.volume, fractions)
  return {
    name: fluid.components.map((c) => c.id).join('/'),
    fluid,
    moleFractions: fractions,
    molarMass: fluid.molarMasses.reduce((sum, m, i) => sum + m * (fractions[i] as number), 0),
    gasConstant: MIXTURE_GAS_CONSTANT,
    reducingTemperature: temperature,
    reducingDensity: density,
    ideal: idealMixture(fluid, fractions, temperature, density),
    residual: residualMixture(fluid, fractions),
  }
}

function residualMixture(fluid: Multifluid, x: readonly number[]): HelmholtzPart {
  const parts: HelmholtzPart[] = [...fluid.residuals]
  const weights = [...x]
  let pair = 0
  for (let i = 0; i < x.length; i += 1) {
    for (let j = i + 1; j < x.length; j += 1) {
      const departure = fluid.departures[pair++]
      if (departure === undefined) continue
      parts.push(departure)
      weights.push((x[i] as number) * (x[j] as number))
    }
  }
  return (tau, delta) => {
    const sum = { a: 0, a_d: 0, a_t: 0, a_dd: 0, a_dt: 0, a_tt: 0 }
    for (let k = 0; k < parts.length; k += 1) {
      addWeighted(sum, weights[k] as number, (parts[k] as HelmholtzPart)(tau, delta))
    }
    return sum
  }
}

/** Each component's α⁰ stands at its own reduced variables, so τ and δ are carried over to them. */
function idealMixture(
  fluid: Multifluid,
  x: readonly number[],
  temperature: number,
  density: number,
): HelmholtzPart {
  const mixing = x.reduce((sum, xi) => sum + (xi > 0 ? xi * Math.log(xi) : 0), 0)
  return (tau, delta) => {
    let [a, a_t, a_tt] = [mixing, 0, 0]
    for (let i = 0; i < x.length; i += 1) {
      const xi = x[i] as number
      const own = fluid.components[i] as SubstanceData
      const ratio = own.reducing.temperatureK / temperature
      const part = (fluid.ideals[i] as HelmholtzPart)(
        tau * ratio,
        (delta * density) / own.reducing.densityMolPerM3,
      )
      a += xi * part.a
      a_t += xi * ratio * part.a_t
      a_tt += xi * ratio * ratio * part.a_tt
    }
    return { a, a_d: 1 / delta, a_t, a_dd: -1 / (delta * delta), a_dt: 0, a_tt }
  }
}
