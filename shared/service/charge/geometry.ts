import data from '../../../data/service/bores.json' with { type: 'json' }
import { CalcError } from '../../errors.ts'
import { nearestNames } from '../../nearest.ts'
import type { Assumption } from '../../operation.ts'
import { sourceTable } from '../../source-table.ts'
import type { Source } from '../../sources.ts'
import { combine, type Estimate, exactly, reading } from './estimate.ts'
import type { Geometry } from './fields.ts'

const INCH = 0.0254
const sourceNamed = sourceTable(data.sources)

type Path = readonly (string | number)[]

/** A space with its volume, where that can be known. */
export interface Space {
  /** Inner volume, m³; undefined when only the maker's mass per length is known. */
  readonly volume: Estimate | undefined
  /** Outside diameter of ACR tube as listed: '3/8'. */
  readonly tube?: string
  /** Bore in words, for the steps. */
  readonly how: string
  readonly sources: readonly Source[]
  readonly assumptions: readonly Assumption[]
}

/**
 * Inner volume of a space: given, or π/4 · bore² · length.
 *
 * Bores by size are nominal ({@link hoseBore}, {@link tubeBore}) and carry no uncertainty.
 *
 * @throws {CalcError} `bad-input` for two ways at once, `missing-input` for none.
 */
export function spaceOf(geometry: Geometry, path: Path): Space {
  const { volume, hoseSize, tubeSize, innerDiameter, length, makerMassPerLength } = geometry
  const ways = { volume, hoseSize, tubeSize, innerDiameter }
  const given = Object.entries(ways).flatMap(([field, value]) => (value === undefined ? [] : field))
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
  if (geometry.tubeTemper !== undefined && tubeSize === undefined) {
    throw new CalcError('bad-input', 'A temper belongs to a tube size.', {
      path: [...path, 'tubeTemper'],
      hint: 'Give tubeSize, or leave tubeTemper out.',
    })
  }
  if (volume) {
    if (makerMassPerLength && !length) throw lengthMissing(path, 'makerMassPerLength')
    if (length && !makerMassPerLength) {
      throw new CalcError('bad-input', 'A length says nothing beside a volume.', {
        path: [...path, 'length'],
        hint: 'Leave it out, or give hoseSize, tubeSize or innerDiameter instead of the volume.',
      })
    }
    return { volume: reading(volume), how: 'volume as given', sources: [], assumptions: [] }
  }
  if (!length) {
    const [way] = makerMassPerLength ? ['makerMassPerLength'] : given
    if (way) throw lengthMissing(path, way)
    throw new CalcError('missing-input', 'The size of the space is needed.', {
      path: [...path, 'volume'],
      hint: 'Give a volume ("450 mL"), or hoseSize, tubeSize or innerDiameter with a length.',
    })
  }
  if (innerDiameter) {
    return {
      volume: cylinder(reading(innerDiameter), reading(length)),
      how: 'bore as given',
      sources: [],
      assumptions: [],
    }
  }
  if (hoseSize === undefined && tubeSize === undefined) {
    if (makerMassPerLength) return { volume: undefined, how: 'maker', sources: [], assumptions: [] }
    throw new CalcError('missing-input', 'A length alone has no volume.', {
      path: [...path, 'innerDiameter'],
      hint: 'Give hoseSize, tubeSize or innerDiameter with it.',
    })
  }
  const bore =
    hoseSize === undefined
      ? tubeBore(tubeSize ?? '', geometry.tubeTemper, [...path, 'tubeSize'])
      : hoseBore(hoseSize, [...path, 'hoseSize'])
  return {
    volume: cylinder(exactly(bore.boreM), reading(length)),
    how: bore.how,
    ...(bore.tube === undefined ? {} : { tube: bore.tube }),
    sources: [bore.source],
    assumptions: [bore.assumption],
  }
}

const cylinder = (boreM: Estimate, lengthM: Estimate) =>
  combine([boreM, lengthM], ([bore = 0, long = 0]) => (Math.PI / 4) * bore ** 2 * long)

function lengthMissing(path: Path, way: string): CalcError {
  return new CalcError('missing-input', `A length is needed beside ${way}.`, {
    path: [...path, 'length'],
    hint: 'Write it like 12 ft or 3.6 m.',
  })
}

interface Bore {
  readonly boreM: number
  readonly tube?: string
  readonly how: string
  readonly source: Source
  readonly assumption: Assumption
}

/** Nominal bore of an air-conditioning hose, by dash number (#8, -8, 8) or nominal bore (13/32). */
export function hoseBore(size: string, path: Path): Bore {
  const rows = data.rows.filter((row) => row.kind === 'hose')
  const wanted = bare(size).replace(/^(?:#|-|no\.? ?)/u, '')
  const row = rows.find(
    (candidate) => candidate.size === `#${wanted}` || candidate.nominal === wanted,
  )
  if (!row) {
    throw unknownSize(
      size,
      'an air-conditioning hose',
      rows.map(({ size: known }) => known),
      path,
    )
  }
  return {
    boreM: row.boreIn * INCH,
    how: `hose ${row.size}, bore ${row.nominal} in nominal`,
    source: sourceNamed(row.source as keyof typeof data.sources),
    assumption: {
      field: path.join('.'),
      taken: `a bore of ${row.nominal} in for hose ${row.size}`,
      because:
        'the dash number does not say the bore; nominal bores are from memory, so the hose maker or a measurement (innerDiameter) goes before',
    },
  }
}

/** Bore of ACR copper tube by its outside diameter; drawn tube where the temper is not given. */
function tubeBore(size: string, temper: 'drawn' | 'annealed' | undefined, path: Path): Bore {
  const rows = data.rows.filter((row) => row.kind === 'tube')
  const wanted = bare(size).replace(/^(\d) (?=\d+\/)/u, '$1-')
  const alike = rows.filter((row) => row.size === wanted)
  const row =
    alike.find((candidate) => candidate.temper === (temper ?? 'drawn')) ??
    (temper === undefined ? alike[0] : undefined)
  if (!row) {
    const sizes = [...new Set(rows.map(({ size: known }) => known))]
    if (alike.length > 0) {
      throw new CalcError('unknown-name', `There is no ${temper} ACR tube of ${wanted} in.`, {
        path,
        hint: `It is listed as ${alike.map((other) => other.temper).join(' and ')}; or give innerDiameter.`,
      })
    }
    throw unknownSize(size, 'ACR tube', sizes, path)
  }
  const other = alike.find((candidate) => candidate.temper !== row.temper)
  return {
    boreM: row.boreIn * INCH,
    tube: row.size,
    how: `${row.temper} ACR tube ${row.size} in outside, bore ${row.boreIn} in`,
    source: sourceNamed(row.source as keyof typeof data.sources),
    assumption: {
      field: path.join('.'),
      taken: `a bore of ${row.boreIn} in (${row.temper} tube)`,
      because: temper
        ? 'that is the nominal bore of the size and temper'
        : `no temper was given${other ? `; ${other.temper} tube has ${other.boreIn} in` : ''}`,
    },
  }
}

/** "3/8 in" and '3/8"' are 3/8. */
const bare = (size: string) =>
  size
    .trim()
    .toLowerCase()
    .replace(/\s*(?:inches|inch|in\.?|"|″)$/u, '')

function unknownSize(size: string, what: string, sizes: readonly string[], path: Path): CalcError {
  const nearest = nearestNames(size, sizes)
  return new CalcError('unknown-name', `"${size}" is not a size of ${what} listed here.`, {
    path,
    hint: `There are ${sizes.join(', ')}${nearest.length === 1 ? ` (nearest ${nearest[0]})` : ''}; or measure the bore and give innerDiameter.`,
  })
}
