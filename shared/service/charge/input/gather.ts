import { CalcError } from '../../../errors.ts'
import type { ChargeInput } from './fields.ts'
import type { Contents, Coupling, Part, Section } from './items.ts'

export type Path = readonly (string | number)[]

export interface Placed<T> {
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
const silent = (contents: Contents) => allMissing(contentsOf(contents))
const allMissing = (fields: object) => Object.values(fields).every((value) => value === undefined)

const LINES_OF = {
  'liquid-line': ['liquid'],
  'suction-line': ['suction'],
  'both-lines': ['liquid', 'suction'],
} as const

/** Fields that tell what one coupling can have spilt. */
export const spillOf = ({
  spillVolume,
  mouthDiameter,
  firstDepth,
  secondDepth,
  hexSize,
  joinedLength,
  spillFrom,
  spillTo,
}: Coupling) => ({
  spillVolume,
  mouthDiameter,
  firstDepth,
  secondDepth,
  hexSize,
  joinedLength,
  spillFrom,
  spillTo,
})

/** Whether anything is said of what it can have spilt. */
export const hasSpill = (coupling: Coupling) => !allMissing(spillOf(coupling))

/** The couplings listed, in one word each, or named by `couplingsOn`; what one does not say stands at the top. */
export function couplingsOf(input: ChargeInput): readonly Placed<Coupling>[] {
  const ways = (['couplings', 'couplingsOn', 'parted'] as const).filter((field) => input[field])
  if (ways.length > 1) {
    throw new CalcError('bad-input', 'Couplings are listed in one way only.', {
      path: [ways[1] ?? 'couplings'],
      hint: 'Keep couplings, couplingsOn or parted, and leave the others out.',
    })
  }
  const { couplingsOn } = input
  const listed: readonly Placed<Coupling>[] = couplingsOn
    ? LINES_OF[couplingsOn].map((line) => ({ item: { line }, path: [] }))
    : input.parted
      ? input.parted.map((item, index) => ({ item, path: ['parted', index] }))
      : (input.couplings ?? []).map((item, index) => ({ item, path: ['couplings', index] }))
  return listed.map(({ item, path }) => ({
    item: {
      ...item,
      ...(hasSpill(item) ? {} : spillOf(input)),
      partings: item.partings ?? input.partings,
      airInclusion: item.airInclusion ?? input.airInclusion,
      ...linesAtTop(input, item),
    },
    path,
  }))
}

/** Where couplings were parted, temperature and pressure at the top are those of the parted lines. */
function linesAtTop(input: ChargeInput, { temperature, pressure }: Coupling) {
  if (temperature || pressure || input.job !== 'couplers-parted') return {}
  return { temperature: input.temperature, pressure: input.pressure }
}

/** The sections listed, or the one whose geometry stands at the top. */
export function sectionsOf(input: ChargeInput): readonly Placed<Section>[] {
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
  const flat = !allMissing(geometry)
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
export function partsOf(input: ChargeInput): readonly Placed<Part>[] {
  const { oldVolume, newVolume } = input
  const flat = oldVolume !== undefined || newVolume !== undefined
  if (flat && input.parts) {
    throw new CalcError('bad-input', 'Altered parts are listed or given at the top, not both.', {
      path: ['parts'],
      hint: 'Move oldVolume and newVolume into the list, as old and new.',
    })
  }
  if (flat) {
    const old = oldVolume ? { old: { volume: oldVolume } } : {}
    const now = newVolume ? { new: { volume: newVolume } } : {}
    return [{ item: { ...old, ...now, ...contentsOf(input) }, path: [] }]
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
