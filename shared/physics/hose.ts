import { propagate, type Uncertain } from '../quantity/index.ts'
import { density, type Refrigerant, saturatedDensity } from '../refrigerant/index.ts'

/** A round hose or tube, m. */
export interface Hose {
  readonly lengthM: number
  readonly boreM: number
}

/** What may be in a hose. Always said by the caller: the difference is ounces. */
export const HOSE_CONTENTS = ['empty', 'vapour', 'liquid'] as const
export type HoseContents = (typeof HOSE_CONTENTS)[number]

/** What a hose is filled with at one moment. */
export interface HoseFilling {
  readonly holds: HoseContents
  /** Of vapour, Pa absolute, where it is known; saturated otherwise. Liquid counts as saturated. */
  readonly pressurePa?: number | undefined
}

/** Inner volume, m³: π/4 · bore² · length. */
export const hoseVolume = ({ boreM, lengthM }: Hose): number => (Math.PI / 4) * boreM ** 2 * lengthM

/**
 * Density of what fills a hose at a temperature in K, kg/m³: liquid on the bubble line, vapour on
 * the dew line or at its own pressure.
 *
 * @throws {CalcError} as the properties do outside their range, or where no vapour is at that pressure.
 */
export function fillingDensity(
  r: Refrigerant,
  { holds, pressurePa }: HoseFilling,
  temperatureK: number,
): number {
  if (holds === 'empty') return 0
  return holds === 'vapour' && pressurePa !== undefined
    ? density(r, temperatureK, pressurePa, 'vapour')
    : saturatedDensity(r, temperatureK, holds)
}

/**
 * Refrigerant that leaves the source and stays in a hose, kg: volume × (density at the end − at the
 * start). Negative where a full hose is emptied into the machine.
 */
export function holdUp(
  r: Refrigerant,
  hose: Hose,
  temperatureK: number,
  start: HoseFilling,
  end: HoseFilling,
): number {
  const gained = fillingDensity(r, end, temperatureK) - fillingDensity(r, start, temperatureK)
  return hoseVolume(hose) * gained
}

/** The same with the ± of bore, length (m) and the one temperature (K) of both moments, kg. */
export function uncertainHoldUp(
  r: Refrigerant,
  bore: Uncertain,
  length: Uncertain,
  temperature: Uncertain,
  start: HoseFilling,
  end: HoseFilling,
): Uncertain {
  return propagate([bore, length, temperature], (boreM, lengthM, kelvin) =>
    holdUp(r, { boreM: boreM ?? 0, lengthM: lengthM ?? 0 }, kelvin ?? 0, start, end),
  )
}
