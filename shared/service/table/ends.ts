import data from '../../../data/service/table.json' with { type: 'json' }
import { CalcError } from '../../errors.ts'
import type { Assumption } from '../../operation.ts'
import { quantity, requireUnit } from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import type { Bound } from './bound.ts'
import type { StepKind, TableKind } from './grid.ts'

interface Given {
  readonly from?: Bound<TableKind> | undefined
  readonly to?: Bound<TableKind> | undefined
  readonly step?: Bound<StepKind> | undefined
}

/** Ends and step of a table, and what stands for those that were not given. */
export interface Ends {
  readonly from: Bound<TableKind>
  readonly to: Bound<TableKind>
  readonly step: Bound<StepKind>
  /** No end was given: the first column follows the unit system. */
  readonly free: boolean
  readonly assumptions: readonly Assumption[]
}

/**
 * Without ends a table runs over the temperatures that a service meets, as far as the refrigerant has
 * saturation there.
 *
 * @throws {CalcError} `missing-input` for a table over pressure with one end.
 */
export function endsOf(r: Refrigerant, { from, to, step }: Given): Ends {
  const one = from ?? to
  if (one && one.kind !== 'temperature' && !(from && to)) {
    throw new CalcError('missing-input', 'A table over pressure needs both ends.', {
      path: [from ? 'to' : 'from'],
      hint: 'Give the other end, such as 0 psig or 300 psig.',
    })
  }
  const usual = data.default[one === undefined || one.unit === '°F' ? '°F' : '°C']
  const unit = usual === data.default['°F'] ? '°F' : '°C'
  const used = {
    from: from ?? temperatureEnd(Math.max(usual.from, lowest(r, unit, usual.step)), unit),
    to: to ?? temperatureEnd(Math.min(usual.to, highest(r, unit, usual.step)), unit),
    step: step ?? usualStep(from ?? to, usual),
  }
  const assumptions = (['from', 'to', 'step'] as const)
    .filter((field) => ({ from, to, step })[field] === undefined)
    .map((field) => ({
      field,
      taken: `${field} ${used[field].value} ${used[field].unit}`,
      because: 'none was given',
    }))
  return { ...used, free: one === undefined, assumptions }
}

const temperatureEnd = (value: number, unit: string): Bound<TableKind> => ({
  kind: 'temperature',
  value,
  unit,
})

const inUnit = (kelvin: number, unit: string) => quantity('temperature', kelvin, 'K').to(unit)

/** The first and last whole step with saturation. */
const lowest = (r: Refrigerant, unit: string, step: number) =>
  Math.ceil(inUnit(r.minimumTemperatureK, unit) / step) * step
const highest = (r: Refrigerant, unit: string, step: number) =>
  Math.floor(inUnit(Math.min(r.bubble.toK, r.dew.toK), unit) / step) * step

function usualStep(
  end: Bound<TableKind> | undefined,
  usual: (typeof data.default)['°F'],
): Bound<StepKind> {
  if (end === undefined || end.kind === 'temperature') {
    return { kind: 'temperatureDifference', value: usual.step, unit: usual.stepUnit }
  }
  const { value, unit } = data.pressureStep[/psi|inHg/u.test(end.unit) ? 'us' : 'si']
  return { kind: 'pressureDifference', value, unit: requireUnit('pressureDifference', unit).symbol }
}
