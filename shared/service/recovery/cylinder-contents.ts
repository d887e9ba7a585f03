import { CalcError, under } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import { type Quantity, quantity, say } from '../../quantity/index.ts'
import { type Refrigerant, refrigerant } from '../../refrigerant/index.ts'

const isEmpty = (holds: string | undefined) => holds?.trim().toLowerCase() === 'empty'
/** What a scale and a stamped tare may be off together, kg: half a pound (common practice). */
const SCALES_KG = quantity('mass', 0.5, 'lb').si

/** @throws {CalcError} `bad-input` where a cylinder said to be empty weighs more than its tare. */
export function refuseFullEmpty(
  holds: string | undefined,
  now: Quantity<'mass'> | undefined,
): void {
  if (!isEmpty(holds) || !now) return
  if (now.si - Math.max(now.plusMinus ?? 0, SCALES_KG) <= 0) return
  throw new CalcError(
    'bad-input',
    `The cylinder is said to be empty, but ${say(now)} more than its tare is on the scale.`,
    {
      hint: 'Identify what is in it and give that as cylinderHolds, or read scale and tare again.',
      path: ['cylinderHolds'],
    },
  )
}

/** What is in doubt about the contents. @throws {CalcError} as {@link refuseMixing}. */
export function identity(r: Refrigerant, holds: string | undefined, notes: Notes): string[] {
  if (holds === undefined) {
    return ['It was not said what the cylinder holds: read its label, or identify it.']
  }
  refuseMixing(r, holds, notes)
  return []
}

/** @throws {CalcError} `refused` where the cylinder holds another refrigerant, or nobody knows what. */
export function refuseMixing(r: Refrigerant, holds: string | undefined, notes: Notes): void {
  if (holds === undefined || isEmpty(holds)) return
  if (holds.trim().toLowerCase() === 'unknown') {
    throw new CalcError('refused', 'Refrigerant must not go into a cylinder of unknown contents.', {
      hint: 'Identify what it holds, or use an evacuated cylinder.',
      path: ['cylinderHolds'],
    })
  }
  const inside = under('cylinderHolds', () => refrigerant(holds))
  if (inside.info.id !== r.info.id) {
    notes.cautions.push('do-not-mix')
    throw new CalcError(
      'refused',
      `The cylinder holds ${inside.info.id}; ${r.info.id} must not be mixed into it.`,
      {
        hint: 'A mixture cannot be recycled or sold as either. Use a cylinder for this refrigerant alone.',
        path: ['cylinderHolds'],
      },
    )
  }
}
