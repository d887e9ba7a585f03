import data from '../../../../data/service/charge.json' with { type: 'json' }
import {
  exactly,
  product,
  type Quantity,
  quantity,
  say,
  type Tied,
  tied,
  times,
} from '../../../quantity/index.ts'
import type { ChargeInput } from '../input/fields.ts'
import type { Path } from '../input/gather.ts'
import type { Contents, Coupling } from '../input/items.ts'
import { fillingOf } from '../space/contents.ts'
import type { Filling } from '../space/filling.ts'
import { type Evidence, recessOf } from '../space/recess.ts'
import type { Setting } from '../space/setting.ts'
import { densityOf, massOf, volumeOf } from './shown.ts'

/** What one coupling lost over all its partings. */
export interface CouplingLoss {
  readonly name: string
  readonly evidence: Evidence
  readonly contents: string
  readonly partings: number
  readonly density: Quantity<'density'>
  /** Space that one parting can have spilt, m³. */
  readonly space: Tied
  /** Least and most that it lost, kg; one figure where space and contents are known. */
  readonly least: Tied
  readonly most: Tied
  /** Air let in over all rejoinings, m³ at the pressure of the place; undefined when not given. */
  readonly air: Tied | undefined
  readonly mouth: Coupling['mouthDiameter']
}

/** Whether it is known what it lost, or only how much it cannot exceed. */
export const isKnown = ({ least, most }: CouplingLoss) => least === most

/**
 * Loss of a coupling whose halves both seal: space × density × partings.
 *
 * @returns undefined without any figure of the space.
 */
export function couplingLoss(
  setting: Setting,
  input: ChargeInput,
  coupling: Coupling,
  path: Path,
): CouplingLoss | undefined {
  const recess = recessOf(coupling, input.whatIf, path)
  if (!recess) return undefined
  const { notes } = setting
  const line = lineOf(coupling)
  const name = coupling.name ?? `${line} coupling`
  const bounded = recess.evidence === 'caliper' || recess.evidence === 'hex'
  const [thin, dense] = fillings(setting, input, coupling, path, bounded)
  const partings = coupling.partings ?? 1
  if (coupling.partings === undefined) {
    notes.assumptions.push({
      field: [...path, 'partings'].join('.'),
      ...data.assumptions['parted-once'],
    })
  }
  const lost = (space: Tied, filling: Filling) => times(partings, product(space, filling.density))
  const most = lost(recess.most, dense)
  const same = thin === dense && recess.least === recess.most
  const least = same ? most : recess.least ? lost(recess.least, thin) : exactly(0)
  notes.steps.push({
    what: same ? `Refrigerant lost at the ${name}` : `Most that can be lost at the ${name}`,
    formula: `${recess.formula}; × density × partings`,
    values: {
      space: volumeOf(recess.most),
      contents: dense.how,
      density: densityOf(dense.density),
      partings,
    },
    gives: massOf(most),
  })
  return {
    name,
    evidence: recess.evidence,
    contents: dense.how,
    partings,
    density: densityOf(dense.density),
    space: recess.most,
    least,
    most,
    air: coupling.airInclusion && times(partings, tied(coupling.airInclusion, 'air inclusion')),
    mouth: coupling.mouthDiameter,
  }
}

const lineOf = ({ line, phase }: Coupling) => line ?? (phase === 'vapour' ? 'suction' : 'liquid')

/**
 * What the coupling held at least and at most: the thinnest and the densest that its line can hold.
 *
 * With the engine off liquid can lie in a cold suction line too: only one that is stated dry, or
 * given with its state, holds vapour.
 */
function fillings(
  setting: Setting,
  input: ChargeInput,
  coupling: Coupling,
  path: Path,
  bounded: boolean,
): readonly [thin: Filling, dense: Filling] {
  const { phase, temperature, pressure, quality } = coupling
  const stated = phase !== undefined || (temperature !== undefined && pressure !== undefined)
  const at = (held: Contents['phase']) => {
    const own = { temperature, pressure, quality }
    const state = temperature || pressure ? own : restAt(setting, input, held, bounded)
    return fillingOf(setting, { ...state, phase: held }, path)
  }
  const only = (filling: Filling) => [filling, filling] as const
  if (stated) return only(at(phase))
  if (lineOf(coupling) === 'liquid') return only(at('liquid'))
  if (input.suctionDry) return only(at('vapour'))
  setting.notes.assumptions.push({ field: 'suctionDry', ...data.assumptions['both-liquid'] })
  return [at('vapour'), at('liquid')]
}

const { coldest: COLDEST, hottest: HOTTEST } = data.couplings
const limit = ({ value, unit }: typeof HOTTEST) => quantity('temperature', value, unit)

/** The temperature of a line at rest that was not given: of the air, or for a bound whatever makes the most of it. */
function restAt(
  { notes }: Setting,
  { ambient, coldest }: ChargeInput,
  held: Contents['phase'],
  bounded: boolean,
): Contents {
  if (!bounded) {
    if (ambient) notes.assumptions.push({ field: 'temperature', ...data.assumptions['at-ambient'] })
    return { temperature: ambient ?? coldest }
  }
  if (held === 'vapour') {
    const warm = limit(HOTTEST)
    return { temperature: ambient && ambient.si > warm.si ? ambient : warm }
  }
  if (coldest) return { temperature: coldest }
  const assumed = limit(ambient ? COLDEST.beside : COLDEST.alone)
  const temperature = ambient && ambient.si < assumed.si ? ambient : assumed
  notes.assumptions.push({
    field: 'coldest',
    taken: `lines as cold as ${temperature === assumed ? say(assumed) : 'the air'}`,
    because: 'the coldest that they can have been was not given, and cold liquid is denser',
  })
  return { temperature }
}
