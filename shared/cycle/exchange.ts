/**
 * Heat between refrigerant and air, by zones that share the coil's face.
 *
 * Air crosses the coil once, unmixed; refrigerant is mixed across the face and runs along it. Over
 * a share dw of the face the air takes C_a dw E (T − T_a), E = 1 − exp(−UA/C_a), so a single phase
 * with the capacity rate C_r cools as T − T_a = (T_in − T_a) exp(−w C_a E/C_r): the cross-flow
 * formula of the textbooks for one mixed and one unmixed stream, ε = (1/C)(1 − exp(−C(1 − e^−NTU)))
 * with C = C_a/C_r (Incropera, Fundamentals of Heat and Mass Transfer, table of ε-NTU relations,
 * read in a public code that cites it). While it boils or condenses T stays and the heat is
 * w C_a E (T − T_a).
 */

/** 1 − exp(−UA/C): the share of the way to the wall's temperature that the air goes. */
export function approach(conductance: number, capacityRate: number): number {
  return -Math.expm1(-conductance / capacityRate)
}

/** W/K of two films in a row. */
export function inSeries(a: number, b: number): number {
  return (a * b) / (a + b)
}

/** Share of the face that brings a single phase from one excess over the air to another, both K. */
export function faceToReach(
  fromExcessK: number,
  toExcessK: number,
  airRate: number,
  capacityRate: number,
): number {
  return (capacityRate / airRate) * Math.log(fromExcessK / toExcessK)
}

/** Excess over the air that a share of the face leaves of another, K. */
export function excessAfter(
  fromExcessK: number,
  face: number,
  airRate: number,
  capacityRate: number,
): number {
  return fromExcessK * Math.exp((-face * airRate) / capacityRate)
}

/** Mean excess along a face over which it falls from one to another: the logarithmic mean, K. */
export function meanExcess(fromK: number, toK: number): number {
  const ratio = fromK / toK
  return Math.abs(ratio - 1) < 1e-7 ? (fromK + toK) / 2 : (fromK - toK) / Math.log(ratio)
}
