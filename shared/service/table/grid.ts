import { CalcError } from '../../errors.ts'
import { type Kind, requireUnit } from '../../quantity/index.ts'
import type { Bound } from './bound.ts'

/** More rows than anybody prints, few enough to answer at once. */
const MOST_ROWS = 2_000

export type TableKind = 'temperature' | 'gaugePressure' | 'absolutePressure'
export type StepKind = 'temperatureDifference' | 'pressureDifference'

export interface Grid {
  readonly kind: TableKind
  /** Unit of the first column. */
  readonly unit: string
  /** In `unit`, from the first row to the last. */
  readonly values: readonly number[]
  /** The end asked for, in `unit`, where the step does not meet it; undefined where it does. */
  readonly missedEnd: number | undefined
}

/**
 * The figures of a table's first column, in the unit of `from`.
 *
 * A table runs up or down; its last row is `to` where the step meets it, else the last step before.
 * From vacuum to pressure it runs in the unit of pressure, since a vacuum unit counts backwards.
 *
 * @throws {CalcError} `wrong-kind` for ends or a step that do not go together, `out-of-range` for a step
 *   of nothing or more than 2000 rows. A step's sign says nothing: the ends give the direction.
 */
export function grid(from: Bound<TableKind>, to: Bound<TableKind>, step: Bound<StepKind>): Grid {
  if (from.kind !== to.kind) throw mixedKinds(from, to)
  const { kind } = from
  const wanted = kind === 'temperature' ? 'temperatureDifference' : 'pressureDifference'
  if (step.kind !== wanted) {
    throw new CalcError(
      'wrong-kind',
      `A step of ${step.value} ${step.unit} does not fit a table over ${kind === 'temperature' ? 'temperature' : 'pressure'}.`,
      {
        path: ['step'],
        hint:
          kind === 'temperature' ? 'Write it like 2 °F or 1 K.' : 'Write it like 5 psi or 20 kPa.',
      },
    )
  }
  const unit = backwards(kind, from.unit) ? to.unit : from.unit
  const { factor } = requireUnit(kind, unit)
  const first = inUnit(from, unit)
  const last = inUnit(to, unit)
  const size = Math.abs((step.value * requireUnit(step.kind, step.unit).factor) / factor)
  if (!(size > 0)) {
    throw new CalcError('out-of-range', 'A step of nothing never reaches the end of the table.', {
      path: ['step'],
      hint: 'Give a step above zero.',
    })
  }
  const ratio = Math.abs(last - first) / size
  // A step that meets the end but for rounding meets it.
  const steps = Math.floor(ratio + 1e-9 * Math.max(1, ratio))
  if (!(steps < MOST_ROWS)) {
    throw new CalcError(
      'out-of-range',
      `This range and step make ${steps < 1e9 ? `${steps + 1}` : 'over a billion'} rows; a table has at most ${MOST_ROWS}.`,
      { path: ['step'], hint: 'Take a larger step or a shorter range.' },
    )
  }
  const sign = last < first ? -1 : 1
  const values = Array.from({ length: steps + 1 }, (_, index) => tidy(first + sign * index * size))
  const end = values.at(-1) ?? first
  const missed = Math.abs(last - end) > 1e-6 * size
  return { kind, unit, values, missedEnd: missed ? last : undefined }
}

const tidy = (value: number) => {
  const cut = Number(value.toPrecision(12))
  return Math.abs(cut) < 1e-9 ? 0 : cut
}

const backwards = (kind: Kind, unit: string) => requireUnit(kind, unit).factor < 0

function inUnit(bound: Bound<TableKind>, unit: string): number {
  const own = requireUnit(bound.kind, bound.unit)
  const { factor, offset } = requireUnit(bound.kind, unit)
  return tidy((bound.value * own.factor + own.offset - offset) / factor)
}

function mixedKinds(from: Bound<TableKind>, to: Bound<TableKind>): CalcError {
  return new CalcError(
    'wrong-kind',
    `A table cannot run from ${from.value} ${from.unit} to ${to.value} ${to.unit}.`,
    {
      path: ['to'],
      hint: 'Give both ends as temperatures, both as gauge pressures, or both as absolute pressures.',
    },
  )
}
