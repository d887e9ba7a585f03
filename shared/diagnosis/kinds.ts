import figures from '../../data/service/diagnosis.json' with { type: 'json' }
import { type Conditions, type FaultKind, type Preset, preset } from '../cycle/index.ts'
import { type Effect, effectsOf } from './effects.ts'
import { type Finer, finer } from './finer.ts'
import { NUISANCES, OF_THE_TEST, type TestNuisance } from './nuisance.ts'

/** Severities that are solved; those between lie on straight lines. */
const SOLVED_AT = [0.15, 0.3, 0.5, 0.75, 1]
const BETWEEN = 2

const tables = new Map<string, readonly Effect[]>()

/** What every fault shows on one of the model's machines in its nominal weather. Solved once. */
export function nominalEffects(id: string): readonly Effect[] {
  const known = tables.get(id)
  if (known !== undefined) return known
  const { machine, nominal } = preset(id)
  const effects = effectsOf(machine, nominal, SOLVED_AT)
  tables.set(id, effects)
  return effects
}

/** The same in some weather, solved there; the spread of faults is that of the nominal weather. */
export function solvedEffects({ machine }: Preset, conditions: Conditions): readonly Finer[] {
  const nominal = nominalEffects(machine.id)
  const columnsOf = (cause: FaultKind | 'none') =>
    nominal.find((effect) => effect.cause === cause)?.columns
  return finer(effectsOf(machine, conditions, SOLVED_AT, columnsOf), BETWEEN)
}

/** Nominal effects carried over to other weather along straight lines; the further, the less sure. */
export function carriedEffects(
  { machine, nominal }: Preset,
  conditions: Conditions,
): readonly Finer[] {
  const away: Readonly<Record<TestNuisance, number>> = {
    speed: conditions.speed / nominal.speed - 1,
    returnHumidity: conditions.returnHumidity - nominal.returnHumidity,
    returnAirK: conditions.returnAirK - nominal.returnAirK,
    ambientK: conditions.ambientK - nominal.ambientK,
  }
  return finer(nominalEffects(machine.id), BETWEEN).map((effect): Finer => {
    const mean = Float64Array.from(effect.mean)
    const carried = Float64Array.from(effect.carried)
    for (const name of OF_THE_TEST) {
      const column = effect.columns[NUISANCES.indexOf(name)] as Float64Array
      for (let i = 0; i < mean.length; i += 1) {
        const shift = (column[i] as number) * away[name]
        mean[i] = (mean[i] as number) + shift
        carried[i] = (carried[i] as number) + (figures.discrepancy.carried * shift) ** 2
      }
    }
    return { ...effect, mean, carried }
  })
}
