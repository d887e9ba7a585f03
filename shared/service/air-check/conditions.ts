import data from '../../../data/service/air-check.json' with { type: 'json' }
import { compareWithBand, quantity } from '../../quantity/index.ts'
import { sourceTable } from '../../source-table.ts'
import type { Condition } from '../condition.ts'
import { statementTable } from '../statement.ts'
import type { AirCheckInput } from './fields.ts'

const statements = statementTable(data.statements, sourceTable(data.sources))

/** What the check needs before its readings mean anything. */
export function conditionsOf(
  input: Pick<AirCheckInput, 'rested' | 'inSun' | 'temperature'>,
): readonly Condition[] {
  const { coldest, rest } = data
  const cold = compareWithBand(
    input.temperature,
    quantity('temperature', coldest.value, coldest.unit).si,
    Number.POSITIVE_INFINITY,
  )
  const [store, hours, instruments] = statements('store', 'twelve-hours', 'instruments')
  const restNeeded = quantity('duration', rest.value, rest.unit).si
  const found: readonly (readonly [typeof store, Condition['met']])[] = [
    [store, cold === 'inside' ? 'yes' : cold === 'below' ? 'no' : 'cannot-tell'],
    [hours, input.rested ? (input.rested.si >= restNeeded ? 'yes' : 'no') : 'not-given'],
    [instruments, 'not-given'],
  ]
  const shade: Condition = {
    id: 'out-of-sun',
    met: input.inSun === undefined ? 'not-given' : input.inSun ? 'no' : 'yes',
    text: data.conditions['out-of-sun'],
    source: 'cfr-82b-app-a',
  }
  return [
    ...found.flatMap(([statement, met]) =>
      statement ? [{ id: statement.id, met, text: statement.text, source: statement.source }] : [],
    ),
    shade,
  ]
}
