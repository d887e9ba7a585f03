import type { FaultKind, Preset } from '../../../cycle/index.ts'
import { soundReadings } from '../../../diagnosis/effects.ts'
import { FEATURES, type Observation } from '../../../diagnosis/features.ts'
import {
  carriedEffects,
  nominalEffects,
  solvedEffects,
  withOwnSpread,
} from '../../../diagnosis/kinds.ts'
import type { Candidate } from '../../../diagnosis/suspects.ts'
import type { Kinds } from '../input/kinds.ts'
import { conditionsIn, type Weather } from '../input/weather.ts'
import type { Running } from '../observations/observations.ts'

/** A baseline's test, as observations. */
export interface BaselineRead {
  readonly weather: Weather
  readonly observations: readonly Observation[]
  readonly highFrom: Running['highFrom']
}

/**
 * Each kind of machine that it may be, with what its faults show in this weather.
 *
 * @param how - Carried over from the nominal weather; or the sound machine and these causes solved there.
 */
export function candidatesOf(
  { presets, knowledge }: Kinds,
  weather: Weather,
  highFrom: Running['highFrom'],
  baseline: BaselineRead | undefined,
  how: 'carried' | readonly FaultKind[],
): readonly Candidate[] {
  return presets.map(({ preset, share }): Candidate => {
    const conditions = conditionsIn(preset.nominal, weather)
    const effects =
      how === 'carried'
        ? carriedEffects(preset, conditions)
        : solvedEffects(preset, conditions, how)
    return {
      share,
      knowledge: knowledge === 'model' ? 'model' : 'kind',
      effects: atPort(effects, preset, highFrom),
      baseline: baseline && {
        sound: soundIn(preset, baseline, how === 'carried'),
        observations: baseline.observations,
        sizes: baseline.weather.sizes,
      },
    }
  })
}

/** The same with what the test leaves open taken in its weather: of the sound machine, and of some faults at the severity given. */
export function withSpreads(
  candidates: readonly Candidate[],
  { presets }: Kinds,
  weather: Weather,
  severities: ReadonlyMap<FaultKind, number>,
): readonly Candidate[] {
  return candidates.map((candidate, i) => {
    const { preset } = presets[i] as Kinds['presets'][number]
    return {
      ...candidate,
      effects: withOwnSpread(
        preset,
        conditionsIn(preset.nominal, weather),
        candidate.effects,
        severities,
      ),
    }
  })
}

function soundIn(preset: Preset, { weather, highFrom }: BaselineRead, carriedOver: boolean) {
  const conditions = conditionsIn(preset.nominal, weather)
  const [carried] = carriedEffects(preset, conditions)
  const [nominal] = nominalEffects(preset.machine.id)
  const solved = carriedOver ? undefined : soundReadings(preset.machine, conditions)
  const sound = carried ?? nominal
  if (sound === undefined) throw new Error(`${preset.machine.id} does not run when it is sound.`)
  const [effect = sound] = atPort(
    [solved === undefined ? sound : { ...sound, mean: solved }],
    preset,
    highFrom,
  )
  return effect
}

/** The high side as the gauge was put on: before the condenser or behind it. */
function atPort<E extends { readonly mean: Float64Array }>(
  effects: readonly E[],
  { machine }: Preset,
  highFrom: Running['highFrom'],
): readonly E[] {
  const here = machine.ports.high === 'discharge' ? 'discharge-line' : 'liquid-line'
  if (here === highFrom) return effects
  const drop = machine.drops.discharge.nominalPa
  const at = FEATURES.indexOf('highSidePa')
  return effects.map((effect) => ({
    ...effect,
    mean: effect.mean.map((value, i) =>
      i === at ? value + (highFrom === 'discharge-line' ? drop : -drop) : value,
    ),
  }))
}
