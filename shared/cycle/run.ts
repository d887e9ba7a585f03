import { ZERO_CELSIUS_K } from '../gas-constants.ts'
import type { Solution } from './branch.ts'
import { clutchOpens, cycle } from './clutch.ts'
import type { Guess } from './evaluate.ts'
import type { Outcome } from './outcome.ts'
import { type Running, running } from './running.ts'
import { findBelow, settled } from './scan.ts'
import { type Setup, setUp } from './setup.ts'
import { MOST_STARTS, solveAnyhow, solveSteady } from './solve.ts'
import type { Case, Controls } from './types.ts'

/**
 * What a machine does in the case asked. `start` is a state near by, for sweeps: it makes a steady
 * state quicker to find. Where controls take part it could lead to another of several states, so that
 * those are always sought from the beginning.
 */
export function run(asked: Case, start?: Guess): Outcome {
  if (start !== undefined) {
    const near = outcomeOf(asked, start)
    if (near.kind === 'steady') return near
  }
  return outcomeOf(asked)
}

function outcomeOf(asked: Case, start?: Guess): Outcome {
  const setup = setUp(asked)
  const { controls } = setup.machine
  const steady = steadyState(setup, start)
  if (steady === 'tripped') {
    return { kind: 'high-pressure-trip', limitPa: controls.highCutOutPa }
  }
  if (steady === undefined) return withoutSteady(setup)
  const state = running(setup, steady)
  const { suctionPa, dischargePa } = steady.trial.guess
  const stopped = clutchOpens(controls, state)
  if (stopped !== undefined) {
    const cycling = cycle(setup, stopped, state)
    if (cycling !== undefined) return cycling
  }
  if (dischargePa > controls.highCutOutPa) {
    return { kind: 'high-pressure-trip', limitPa: controls.highCutOutPa, state }
  }
  if (controls.lowCutOutPa !== undefined && suctionPa < controls.lowCutOutPa) {
    return { kind: 'low-pressure-trip', limitPa: controls.lowCutOutPa, state }
  }
  if (freezes(controls, state)) return { kind: 'iced', state }
  return { kind: 'steady', state }
}

/** The state that a machine settles in; or that it trips on the way to one, or pumps itself down. */
function steadyState(setup: Setup, start?: Guess): Solution | 'tripped' | undefined {
  const found = solveSteady(setup, start) ?? solveAnyhow(setup, 1)
  if (found !== undefined) return settled(setup, found)
  const below = findBelow(setup, setup.machine.controls.highCutOutPa)
  if (below !== undefined) return below
  const any = solveAnyhow(setup, MOST_STARTS)
  if (any !== undefined) return settled(setup, any)
  return findBelow(setup, setup.machine.controls.highCutOutPa, true)
}

/** No state at all: pumped down, unless a control stops it before. */
function withoutSteady(setup: Setup): Outcome {
  const { cyclingSwitch, thermostat } = setup.machine.controls
  if (cyclingSwitch !== undefined) return cycle(setup, 'low-pressure-switch') ?? { kind: 'dry' }
  if (thermostat !== undefined) return cycle(setup, 'thermostat') ?? { kind: 'dry' }
  return { kind: 'dry' }
}

/** Only where no thermostat and no cycling switch guards the fins. */
function freezes(controls: Controls, state: Running): boolean {
  return (
    controls.thermostat === undefined &&
    controls.cyclingSwitch === undefined &&
    state.leaving.surfaceK < ZERO_CELSIUS_K &&
    state.setup.returnAir.dewPointK > state.leaving.surfaceK
  )
}
