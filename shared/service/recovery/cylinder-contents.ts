import data from '../../../data/service/recovery.json' with { type: 'json' }
import { CalcError, refusal, under } from '../../errors.ts'
import { type Quantity, quantity, say, widthOf } from '../../quantity/index.ts'
import { type Refrigerant, refrigerant } from '../../refrigerant/index.ts'
import { fillIn } from '../../sentence.ts'

const { stampedWithin, reasons, refusals } = data

const isEmpty = (holds: string | undefined) => holds?.trim().toLowerCase() === 'empty'
const STAMPED_KG = quantity('mass', stampedWithin.value, stampedWithin.unit).si

/** @throws {CalcError} `bad-input` where a cylinder said to be empty weighs more than its tare. */
export function refuseFullEmpty(
  holds: string | undefined,
  now: Quantity<'mass'> | undefined,
): void {
  if (!isEmpty(holds) || !now) return
  if (now.si - Math.max(widthOf(now), STAMPED_KG) <= 0) return
  throw new CalcError(
    'bad-input',
    `The cylinder is said to be empty, but ${say(now.within(undefined))} more than its tare is on the scale.`,
    {
      hint: 'Identify what is in it and give that as cylinderHolds, or read scale and tare again.',
      path: ['cylinderHolds'],
    },
  )
}

/** What is in doubt about the contents. @throws {CalcError} as {@link refuseMixing}. */
export function identity(r: Refrigerant, holds: string | undefined): string[] {
  if (holds === undefined) return [reasons['holds-not-said']]
  refuseMixing(r, holds)
  return []
}

/** @throws {CalcError} `refused` where the cylinder holds another refrigerant, or nobody knows what. */
export function refuseMixing(r: Refrigerant, holds: string | undefined): void {
  if (holds === undefined || isEmpty(holds)) return
  const because = ([message = '', hint = '']: readonly string[], inside = '') =>
    refusal(fillIn(message, { inside, refrigerant: r.info.id }), {
      hint,
      path: ['cylinderHolds'],
      cautions: ['do-not-mix'],
    })
  if (holds.trim().toLowerCase() === 'unknown') throw because(refusals.unknown)
  const inside = under('cylinderHolds', () => refrigerant(holds))
  if (inside.info.id !== r.info.id) throw because(refusals.mixing, inside.info.id)
}
