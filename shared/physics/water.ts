import { CalcError } from '../errors.ts'
import { ZERO_CELSIUS_K } from '../gas-constants.ts'
import type { Source } from '../sources.ts'

/** Pressure at which water boils, or ice evaporates, at a temperature: and back. */
export const WATER_SOURCES: readonly Source[] = [
  {
    id: 'iapws-sr1-86',
    title:
      'IAPWS SR1-86(1992), Revised Supplementary Release on Saturation Properties of Ordinary Water Substance; W. Wagner, A. Pruss, J. Phys. Chem. Ref. Data 22, 783 (1993)',
    mark: 'secondary',
    where: 'equation (1), saturation pressure',
    url: 'https://doi.org/10.1063/1.555926',
    note: 'coefficients read in several independent public implementations; values agree with the scientific equation of state to 0.03 %',
  },
  {
    id: 'iapws-r14-08',
    title:
      'IAPWS R14-08(2011), Revised Release on the Pressure along the Melting and Sublimation Curves of Ordinary Water Substance; W. Wagner et al., J. Phys. Chem. Ref. Data 40, 043103 (2011)',
    mark: 'secondary',
    where: 'equation (6), sublimation pressure of ice Ih, 50 K to 273.16 K',
    url: 'http://iapws.org/relguide/MeltSub.html',
    note: 'coefficients read in several independent public implementations',
  },
]

export const WATER_TRIPLE_K = 273.16
const WATER_TRIPLE_PA = 611.657
const CRITICAL_K = 647.096
const CRITICAL_PA = 22.064e6
/** Lowest temperature of the sublimation equation. */
const LOWEST_K = 50

/** a_i of ϑ = 1 − T/Tc to the powers 1, 1.5, 3, 3.5, 4 and 7.5, SR1-86 equation (1). */
const SATURATION = [
  -7.85951783, 1.84408259, -11.7866497, 22.6807411, -15.9618719, 1.80122502,
] as const

/** a_i and b_i of θ = T/Tt, R14-08 equation (6). */
const SUBLIMATION: readonly (readonly [a: number, b: number])[] = [
  [-0.212144006e2, 0.333333333e-2],
  [0.273203819e2, 0.120666667e1],
  [-0.61059813e1, 0.170333333e1],
]

/**
 * Vapour pressure of water: of the liquid above the triple point, of ice below it.
 *
 * @param temperatureK - 50 K to 647.096 K, both included.
 * @returns Pa absolute.
 * @throws {CalcError} `out-of-range` outside the published equations.
 */
export function waterVapourPressure(temperatureK: number): number {
  if (!(temperatureK >= LOWEST_K && temperatureK <= CRITICAL_K)) {
    throw new CalcError(
      'out-of-range',
      `Water has no vapour pressure here at ${(temperatureK - ZERO_CELSIUS_K).toFixed(1)} °C: the equations run from −223 °C to 374 °C.`,
      { hint: 'Give the temperature of the coldest part of the system.' },
    )
  }
  return temperatureK >= WATER_TRIPLE_K ? saturation(temperatureK) : sublimation(temperatureK)
}

function saturation(temperatureK: number): number {
  const distance = 1 - temperatureK / CRITICAL_K
  // asked for thousands of times by a machine's evaporator: products are quicker than powers
  const root = Math.sqrt(distance)
  const cube = distance * distance * distance
  const [a1, a2, a3, a4, a5, a6] = SATURATION
  const sum =
    distance * (a1 + a2 * root) +
    cube * (a3 + a4 * root + a5 * distance + a6 * cube * distance * root)
  return CRITICAL_PA * Math.exp((CRITICAL_K / temperatureK) * sum)
}

function sublimation(temperatureK: number): number {
  const theta = temperatureK / WATER_TRIPLE_K
  const logTheta = Math.log(theta)
  let sum = 0
  for (const [a, b] of SUBLIMATION) sum += a * Math.exp(b * logTheta)
  return WATER_TRIPLE_PA * Math.exp(sum / theta)
}

const MOST_HALVINGS = 80
const NEAR_ENOUGH_K = 1e-9

/**
 * Temperature at which water boils (or ice evaporates) at a pressure: inverse of {@link waterVapourPressure}.
 *
 * @param pressurePa - Pa absolute, above 1e-6 Pa and up to the critical pressure.
 * @returns K, to 1e-9 K by halving: the pressure rises with temperature all the way.
 * @throws {CalcError} `out-of-range`, `above-critical`.
 */
export function waterBoilingTemperature(pressurePa: number): number {
  if (pressurePa > CRITICAL_PA) {
    throw new CalcError('above-critical', 'Above 22.064 MPa water does not boil.', {
      hint: 'Give the absolute pressure inside the system under vacuum.',
    })
  }
  let [low, high] = [100, CRITICAL_K]
  if (!(pressurePa >= 1e-6)) {
    throw new CalcError('out-of-range', `${pressurePa} Pa is below any vacuum of the trade.`, {
      hint: 'Give the absolute pressure inside the system, such as 500 micron.',
    })
  }
  for (let turn = 0; turn < MOST_HALVINGS; turn += 1) {
    const middle = (low + high) / 2
    if (high - low < NEAR_ENOUGH_K) return middle
    if (waterVapourPressure(middle) < pressurePa) low = middle
    else high = middle
  }
  throw new CalcError('no-convergence', 'The boiling temperature of water was not found.')
}
