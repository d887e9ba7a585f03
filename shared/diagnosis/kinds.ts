import table from '../../data/diagnosis/effects.json' with { type: 'json' }
import figures from '../../data/service/diagnosis.json' with { type: 'json' }
import { type Conditions, type FaultKind, faultsOf, type Preset } from '../cycle/index.ts'
import { keptBy } from '../kept.ts'
import { type Columns, type Effect, effectsOf, withTestColumns } from './effects.ts'
import { FEATURES } from './features.ts'
import { type Finer, finer } from './finer.ts'
import { NUISANCES, OF_THE_TEST, SPREAD, type TestNuisance } from './nuisance.ts'
import { type Packed, unpacked } from './packed.ts'
import { added } from './spread.ts'

/** Severities that are solved; those between lie on straight lines. */
const USUAL_STEPS = [0.15, 0.3, 0.5, 0.75, 1]
/**
 * Where a store runs empty all turns at once, and what passes a valve goes by its inverse. What is
 * stuck where it usually stands is no sound machine: in other weather it stands elsewhere.
 */
const STEPS_OF: Readonly<Partial<Record<FaultKind, readonly number[]>>> = {
  undercharge: [0.15, 0.3, 0.5, 0.6, 0.7, 0.8, 0.9, 1],
  'valve-stuck-open': [0, ...USUAL_STEPS],
  'valve-stuck-closed': [0, 0.15, 0.3, 0.5, 0.65, 0.8, 0.9, 1],
  'stroke-stuck-high': [0, ...USUAL_STEPS],
  'stroke-stuck-low': [0, ...USUAL_STEPS],
}
export const solvedAt = (cause: FaultKind): readonly number[] => STEPS_OF[cause] ?? USUAL_STEPS
const BETWEEN = 2

const TABLE: Readonly<Record<string, Packed>> = table

/** Machines that share their effects: R-1234yf runs at nearly the pressures of R-134a. */
const LIKE = { own: '-1234yf', model: '-134a' } as const

/**
 * What every fault shows on one of the model's machines in its nominal weather; `npm run effects`
 * solves it ahead of time. Of one with R-1234yf that of its twin with R-134a: good for how readings
 * spread, not for the readings themselves.
 */
export const nominalEffects = keptBy((id: string): readonly Effect[] => {
  const row = TABLE[id] ?? TABLE[id.replace(LIKE.own, LIKE.model)]
  if (row === undefined) throw new Error(`No effects of ${id}: npm run effects`)
  return unpacked(row)
})

/** The same with what lies between. */
const nominalCurves = keptBy((id: string): readonly Finer[] => finer(nominalEffects(id), BETWEEN))

/**
 * The same in some weather: the sound machine and some causes solved there, all others carried over
 * by as much as their own change. The spread is that of the nominal weather.
 *
 * @returns empty where not even the sound machine runs.
 */
export function solvedEffects(
  preset: Preset,
  conditions: Conditions,
  causes: readonly FaultKind[] = faultsOf(preset.machine),
): readonly Finer[] {
  const { machine } = preset
  const nominal = nominalEffects(machine.id)
  const columnsOf = (cause: FaultKind | 'none') =>
    nominal.find((effect) => effect.cause === cause)?.columns
  const solved = finer(effectsOf(machine, conditions, solvedAt, columnsOf, SPREAD, causes), BETWEEN)
  const [sound] = solved
  const [from, ...carried] = carriedEffects(preset, conditions)
  if (sound === undefined || from === undefined) return []
  const off = sound.mean.map((value, i) => value - (from.mean[i] as number))
  const others = carried
    .filter(({ cause }) => !(causes as readonly string[]).includes(cause))
    .map((effect) => ({
      ...effect,
      mean: effect.mean.map((value, i) => value + (off[i] as number)),
    }))
  return [...solved, ...others]
}

/**
 * Effects with what the test leaves open taken in that weather as well: of the sound machine, and of
 * some faults where each was solved next to the severity given. A clutch or a stroke that just begins
 * to work changes it altogether.
 */
export function withOwnSpread<E extends Effect>(
  { machine }: Preset,
  conditions: Conditions,
  effects: readonly E[],
  severities: ReadonlyMap<FaultKind, number>,
): readonly E[] {
  const own = new Map<Effect['cause'], Columns>()
  for (const [cause, severity] of [['none', 0] as const, ...severities]) {
    const [nearest] = effects
      .filter((effect) => effect.cause === cause)
      .sort((a, b) => Math.abs(a.severity - severity) - Math.abs(b.severity - severity))
    if (nearest) own.set(cause, withTestColumns(machine, conditions, nearest))
  }
  return effects.map((effect) => ({ ...effect, columns: own.get(effect.cause) ?? effect.columns }))
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
  const shiftOf = keptBy((columns: Columns) => shiftBy(columns, away))
  return nominalCurves(machine.id).map((effect): Finer => {
    const shift = shiftOf(effect.columns)
    return {
      ...effect,
      mean: added(effect.mean, shift.mean),
      carried: added(effect.carried, shift.variance),
    }
  })
}

/** What other weather moves, with the variance by which that may miss. */
interface Shift {
  readonly mean: Float64Array
  readonly variance: Float64Array
}

function shiftBy(columns: Columns, away: Readonly<Record<TestNuisance, number>>): Shift {
  const mean = new Float64Array(FEATURES.length)
  const variance = new Float64Array(FEATURES.length)
  for (const name of OF_THE_TEST) {
    const column = columns[NUISANCES.indexOf(name)] as Float64Array
    for (let i = 0; i < mean.length; i += 1) {
      const shift = (column[i] as number) * away[name]
      mean[i] = (mean[i] as number) + shift
      variance[i] = (variance[i] as number) + (figures.discrepancy.carried * shift) ** 2
    }
  }
  return { mean, variance }
}
