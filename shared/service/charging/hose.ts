import { density, type Phase, type Refrigerant, saturatedDensity } from '../../refrigerant/index.ts'

export const HOSE_STATES = ['evacuated', 'vapour', 'liquid'] as const
export type HoseState = (typeof HOSE_STATES)[number]

/** Volume of a hose, m³, from its bore and length, m. */
export const hoseVolume = (boreM: number, lengthM: number) => (Math.PI / 4) * boreM ** 2 * lengthM

/**
 * Density of what a service hose holds, kg/m³.
 *
 * Liquid is taken saturated at the hose's temperature; vapour too, unless its pressure is known.
 *
 * @throws {CalcError} as the properties do outside their range.
 */
export function hoseDensity(
  r: Refrigerant,
  state: HoseState,
  temperatureK: number,
  vapourPressurePa: number | undefined,
): number {
  if (state === 'evacuated') return 0
  const phase: Phase = state
  if (phase === 'vapour' && vapourPressurePa !== undefined) {
    return density(r, temperatureK, vapourPressurePa, 'vapour')
  }
  return saturatedDensity(r, temperatureK, phase)
}
