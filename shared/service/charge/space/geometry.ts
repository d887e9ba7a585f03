import { CalcError } from '../../../errors.ts'
import { hoseVolume } from '../../../physics/hose.ts'
import { combine, exactly, type Tied, tied } from '../../../quantity/index.ts'
import type { Path } from '../input/gather.ts'
import type { Geometry } from '../input/items.ts'
import { hoseBore, tubeBore } from './bores.ts'
import type { Setting } from './setting.ts'

/** A space with its volume, where that can be known. */
export interface Space {
  /** Inner volume, m³; undefined when only the maker's mass per length is known. */
  readonly volume: Tied | undefined
  /** Outside diameter of ACR tube as listed: '3/8'. */
  readonly tube?: string
  /** Bore in words, for the steps. */
  readonly how: string
}

/**
 * Inner volume of a space: given, or π/4 · bore² · length.
 *
 * Bores by size are nominal ({@link hoseBore}, {@link tubeBore}) and carry no uncertainty.
 *
 * @throws {CalcError} `bad-input` for two ways at once, `missing-input` for none.
 */
export function spaceOf({ notes }: Setting, geometry: Geometry, path: Path): Space {
  const { volume, hoseSize, tubeSize, innerDiameter, length, makerMassPerLength } = geometry
  const given = waysOf(geometry)
  checkOneWay(geometry, given, path)
  if (volume) {
    if (makerMassPerLength && !length) throw lengthMissing(path, 'makerMassPerLength')
    if (length && !makerMassPerLength) {
      throw new CalcError('bad-input', 'A length says nothing beside a volume.', {
        path: [...path, 'length'],
        hint: 'Leave it out, or give hoseSize, tubeSize or innerDiameter instead of the volume.',
      })
    }
    return { volume: tied(volume, 'volume'), how: 'volume as given' }
  }
  if (!length) {
    const [way] = makerMassPerLength ? ['makerMassPerLength'] : given
    if (way) throw lengthMissing(path, way)
    throw new CalcError('missing-input', 'The size of the space is needed.', {
      path: [...path, 'volume'],
      hint: 'Give a volume ("450 mL"), or hoseSize, tubeSize or innerDiameter with a length.',
    })
  }
  const long = tied(length, 'length')
  if (innerDiameter) {
    return { volume: cylinder(tied(innerDiameter, 'bore'), long), how: 'bore as given' }
  }
  if (hoseSize === undefined && tubeSize === undefined) {
    if (makerMassPerLength) return { volume: undefined, how: 'maker' }
    throw new CalcError('missing-input', 'A length alone has no volume.', {
      path: [...path, 'innerDiameter'],
      hint: 'Give hoseSize, tubeSize or innerDiameter with it.',
    })
  }
  const bore =
    hoseSize === undefined
      ? tubeBore(tubeSize ?? '', geometry.tubeTemper, [...path, 'tubeSize'])
      : hoseBore(hoseSize, [...path, 'hoseSize'])
  notes.sources.push(bore.source)
  notes.assumptions.push(bore.assumption)
  return {
    volume: cylinder(exactly(bore.boreM), long),
    how: bore.how,
    ...(bore.tube === undefined ? {} : { tube: bore.tube }),
  }
}

/** π/4 · bore² · length, m³. */
export const cylinder = (bore: Tied, long: Tied): Tied =>
  combine([bore, long], (boreM = 0, lengthM = 0) => hoseVolume({ boreM, lengthM }))

const waysOf = ({ volume, hoseSize, tubeSize, innerDiameter }: Geometry) =>
  Object.entries({ volume, hoseSize, tubeSize, innerDiameter }).flatMap(([field, value]) =>
    value === undefined ? [] : field,
  )

function checkOneWay(geometry: Geometry, given: readonly string[], path: Path): void {
  if (given.length > 1) {
    throw new CalcError(
      'bad-input',
      `A space has one measure; ${given.join(' and ')} were given.`,
      {
        path: [...path, given[1] ?? ''],
        hint: 'Give a volume, or one of hoseSize, tubeSize, innerDiameter with a length.',
      },
    )
  }
  if (geometry.tubeTemper !== undefined && geometry.tubeSize === undefined) {
    throw new CalcError('bad-input', 'A temper belongs to a tube size.', {
      path: [...path, 'tubeTemper'],
      hint: 'Give tubeSize, or leave tubeTemper out.',
    })
  }
}

function lengthMissing(path: Path, way: string): CalcError {
  return new CalcError('missing-input', `A length is needed beside ${way}.`, {
    path: [...path, 'length'],
    hint: 'Write it like 12 ft or 3.6 m.',
  })
}
