import data from '../../../../data/service/bores.json' with { type: 'json' }
import { CalcError } from '../../../errors.ts'
import { nearestNames } from '../../../nearest.ts'
import type { Assumption } from '../../../operation.ts'
import { quantity } from '../../../quantity/index.ts'
import { sourceTable } from '../../../source-table.ts'
import type { Source } from '../../../sources.ts'
import type { Path } from '../input/gather.ts'

const sourceNamed = sourceTable(data.sources)
const inches = (value: number) => quantity('length', value, 'in').si

/** Nominal bore of a hose or a tube, which carries no uncertainty. */
export interface Bore {
  readonly boreM: number
  /** Outside diameter of ACR tube as listed: '3/8'. */
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
    const known = rows.map(({ size: listed }) => listed)
    throw unknownSize(size, 'an air-conditioning hose', known, path)
  }
  return {
    boreM: inches(row.boreIn),
    how: `hose ${row.size}, bore ${row.nominal} in nominal`,
    source: sourceNamed(row.source as keyof typeof data.sources),
    assumption: {
      field: path.join('.'),
      taken: `a bore of ${row.nominal} in for hose ${row.size}`,
      because: data.because['dash-number'],
    },
  }
}

/** Bore of ACR copper tube by its outside diameter; drawn tube where the temper is not given. */
export function tubeBore(size: string, temper: 'drawn' | 'annealed' | undefined, path: Path): Bore {
  const rows = data.rows.filter((row) => row.kind === 'tube')
  const wanted = bare(size).replace(/^(\d) (?=\d+\/)/u, '$1-')
  const alike = rows.filter((row) => row.size === wanted)
  const row =
    alike.find((candidate) => candidate.temper === (temper ?? 'drawn')) ??
    (temper === undefined ? alike[0] : undefined)
  if (!row) {
    if (alike.length > 0) {
      throw new CalcError('unknown-name', `There is no ${temper} ACR tube of ${wanted} in.`, {
        path,
        hint: `It is listed as ${alike.map((other) => other.temper).join(' and ')}; or give innerDiameter.`,
      })
    }
    const sizes = [...new Set(rows.map(({ size: listed }) => listed))]
    throw unknownSize(size, 'ACR tube', sizes, path)
  }
  const other = alike.find((candidate) => candidate.temper !== row.temper)
  return {
    boreM: inches(row.boreIn),
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
