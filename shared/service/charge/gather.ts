import { CalcError } from '../../errors.ts'
import type { Assumption } from '../../operation.ts'
import type { Quantity } from '../../quantity/index.ts'
import type { Contents, Coupling, Geometry, Part, Section } from './fields.ts'

type Path = readonly (string | number)[]

/** The fields of `itemsIn`, and the air temperature that parted lines have when theirs is not given. */
export interface Items extends Omit<Coupling, 'name'>, Geometry, Contents {
  readonly couplingsOn?: 'liquid-line' | 'vapour-line' | 'both-lines' | undefined
  readonly oldVolume?: Quantity<'volume'> | undefined
  readonly newVolume?: Quantity<'volume'> | undefined
  readonly couplings?: readonly Coupling[] | undefined
  readonly sections?: readonly Section[] | undefined
  readonly parts?: readonly Part[] | undefined
  readonly ambient?: Quantity<'temperature'> | undefined
}

interface Placed<T> {
  readonly item: T
  /** Where it stands in the input; empty for the fields at the top. */
  readonly path: Path
}

const contentsOf = ({ phase, temperature, pressure, quality }: Contents): Contents => ({
  phase,
  temperature,
  pressure,
  quality,
})
const silent = (contents: Contents) =>
  Object.values(contentsOf(contents)).every((value) => value === undefined)

/**
 * The couplings listed, or those of `couplingsOn`; what a coupling does not say stands at the top.
 *
 * @param linesAtTop - Whether temperature and pressure at the top are those of the parted lines;
 *   where a section was opened they are the section's, and lines at rest have the air's temperature.
 */
export function couplingsOf(
  input: Items,
  linesAtTop: boolean,
): {
  readonly couplings: readonly Placed<Coupling>[]
  readonly assumptions: readonly Assumption[]
} {
  const sides = {
    'liquid-line': ['liquid'],
    'vapour-line': ['vapour'],
    'both-lines': ['liquid', 'vapour'],
  } as const
  if (input.couplings && input.couplingsOn) {
    throw new CalcError('bad-input', 'Couplings are listed or named by couplingsOn, not both.', {
      path: ['couplingsOn'],
      hint: 'Leave one of them out.',
    })
  }
  const listed: readonly Placed<Coupling>[] = input.couplingsOn
    ? sides[input.couplingsOn].map((phase) => ({ item: { phase }, path: [] }))
    : (input.couplings ?? []).map((item, index) => ({ item, path: ['couplings', index] }))
  let atAmbient = false
  const couplings = listed.map(({ item, path }) => {
    const own = hasSpill(item) ? item : { ...item, ...spillFields(input) }
    const filled = {
      ...own,
      partings: item.partings ?? input.partings,
      airInclusion: item.airInclusion ?? input.airInclusion,
    }
    if (item.temperature || item.pressure) return { item: filled, path }
    const { temperature, pressure } = input
    if (linesAtTop && (temperature || pressure)) {
      return { item: { ...filled, temperature, pressure }, path }
    }
    if (!input.ambient) return { item: filled, path }
    atAmbient = true
    return { item: { ...filled, temperature: input.ambient }, path }
  })
  return {
    couplings,
    assumptions: atAmbient
      ? [
          {
            field: 'temperature',
            taken: 'the parted lines were at the temperature of the air, at rest, and saturated',
            because: 'no temperature or pressure of the lines was given',
          },
        ]
      : [],
  }
}

const spillFields = ({ spillVolume, spillFrom, spillTo }: Coupling) => ({
  spillVolume,
  spillFrom,
  spillTo,
})
/** Whether anything is said of its spill volume. */
export const hasSpill = (coupling: Coupling) =>
  Object.values(spillFields(coupling)).some((value) => value !== undefined)

/** The sections listed, or the one whose geometry stands at the top. */
export function sectionsOf(input: Items): readonly Placed<Section>[] {
  const { volume, hoseSize, tubeSize, tubeTemper, innerDiameter, length, makerMassPerLength } =
    input
  const geometry = {
    volume,
    hoseSize,
    tubeSize,
    tubeTemper,
    innerDiameter,
    length,
    makerMassPerLength,
  }
  const flat = Object.values(geometry).some((value) => value !== undefined)
  if (flat && input.sections) {
    throw new CalcError('bad-input', 'Sections are listed or given at the top, not both.', {
      path: ['sections'],
      hint: 'Move the section at the top into the list.',
    })
  }
  if (flat) return [{ item: { ...geometry, ...contentsOf(input) }, path: [] }]
  return (input.sections ?? []).map((item, index) => ({
    item: silent(item) ? { ...item, ...contentsOf(input) } : item,
    path: ['sections', index],
  }))
}

/** The altered parts listed, or the one of oldVolume and newVolume. */
export function partsOf(input: Items): readonly Placed<Part>[] {
  const { oldVolume, newVolume } = input
  const flat = oldVolume !== undefined || newVolume !== undefined
  if (flat && input.parts) {
    throw new CalcError('bad-input', 'Altered parts are listed or given at the top, not both.', {
      path: ['parts'],
      hint: 'Move oldVolume and newVolume into the list, as old and new.',
    })
  }
  if (flat) {
    return [
      {
        item: {
          ...(oldVolume ? { old: { volume: oldVolume } } : {}),
          ...(newVolume ? { new: { volume: newVolume } } : {}),
          ...contentsOf(input),
        },
        path: [],
      },
    ]
  }
  return (input.parts ?? []).map((item, index) => {
    const path = ['parts', index]
    if (!item.old && !item.new) {
      throw new CalcError(
        'missing-input',
        'An altered part needs what was there, what is there now, or both.',
        {
          path: [...path, 'new'],
          hint: 'Give old and new, each a volume, or a hose or tube with its length.',
        },
      )
    }
    return { item: silent(item) ? { ...item, ...contentsOf(input) } : item, path }
  })
}
