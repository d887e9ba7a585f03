import type { Trial } from './evaluate.ts'
import type { Saturation } from './fluid.ts'
import type { Setup } from './setup.ts'

/** kg in all parts but the store. */
function massOutsideStore(trial: Trial): number {
  const { compressorAndDischarge, condenser, liquidLine, evaporator, suctionLine } = trial.mass
  return compressorAndDischarge + condenser + liquidLine + evaporator + suctionLine
}

/** Saturation in the store, and its volume; nothing where there is none. */
export function storeOf(
  setup: Setup,
  trial: Trial,
): { readonly volume: number; readonly at: Saturation; readonly gasDensity: number } | undefined {
  const { store } = setup.machine
  if (store.kind === 'none') return undefined
  if (store.kind === 'receiver') {
    const at = trial.condensingAt
    return { volume: store.volume, at, gasDensity: at.vapourDensity }
  }
  const at = trial.suctionAt
  return {
    volume: store.volume,
    at,
    gasDensity: Math.min(at.vapourDensity, trial.suction.density),
  }
}

/** kg in the whole machine with the store filled to a share. */
export function massIn(setup: Setup, trial: Trial, level: number): number {
  const store = storeOf(setup, trial)
  const outside = massOutsideStore(trial)
  if (store === undefined) return outside
  const { volume, at, gasDensity } = store
  return outside + volume * (level * at.liquidDensity + (1 - level) * gasDensity)
}
