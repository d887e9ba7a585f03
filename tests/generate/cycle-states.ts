/**
 * Writes tests/reference/golden/cycle-states.json: corners of the model's own cycles, for
 * `tests/reference/cycle.py` to work out anew with an independent program.
 *
 *     node tests/generate/cycle-states.ts && python tests/reference/cycle.py
 */
import { writeFileSync } from 'node:fs'
import {
  faultOf,
  NO_DEVIATIONS,
  NO_FAULTS,
  performanceOf,
  pointsOf,
  presets,
  run,
  stateOf,
} from '../../shared/cycle/index.ts'

const path = new URL('../reference/golden/cycle-states.json', import.meta.url)

export function cycleStates() {
  return presets().flatMap(({ machine, nominal }) =>
    [
      { name: 'sound', faults: NO_FAULTS },
      { name: 'undercharge', faults: faultOf(machine, 'undercharge', 0.5) },
      { name: 'condenser-air', faults: faultOf(machine, 'condenser-air', 0.5) },
    ].flatMap(({ name, faults }) => {
      const asked = { machine, conditions: nominal, faults, deviations: NO_DEVIATIONS }
      const state = stateOf(run(asked))
      if (state === undefined) return []
      const { trial } = state.solution
      const { compression } = trial
      return [
        {
          machine: machine.id,
          case: name,
          refrigerant: machine.refrigerant,
          displacement: machine.compressor.displacement * trial.guess.stroke,
          speed: nominal.speed,
          clearance: machine.compressor.clearance,
          // all of the filling but the clearance: given by no property
          otherFilling:
            compression.volumetricEfficiency /
            (1 -
              machine.compressor.clearance *
                (compression.isentropic.density / trial.suction.density - 1)),
          isentropicEfficiency: compression.isentropicEfficiency,
          device: machine.device,
          points: pointsOf(state),
          isentropic: compression.isentropic,
          ...performanceOf(state),
          condenserHeat: trial.condensation.airHeat,
        },
      ]
    }),
  )
}

if (process.argv[1] === import.meta.filename) {
  writeFileSync(path, `${JSON.stringify(cycleStates(), null, 1)}\n`)
}
