import { CalcError } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import { mass, type Quantity, say, temperature } from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { liquidFullTemperature } from './cylinder.ts'

interface Weights {
  readonly waterCapacity: Quantity<'mass'>
  readonly tare?: Quantity<'mass'> | undefined
  readonly grossNow?: Quantity<'mass'> | undefined
}

/**
 * What the scale says about the cylinder, and at what reading to stop.
 *
 * @throws {CalcError} `refused` for an overfull cylinder.
 */
export function weigh(r: Refrigerant, input: Weights, maximumKg: number, notes: Notes) {
  const { tare, grossNow, waterCapacity } = input
  const stop: string[] = []
  const doubts: string[] = []
  if (!tare) {
    if (grossNow) {
      throw new CalcError('missing-input', 'The gross weight says nothing without the tare.', {
        hint: 'Read TW on the collar.',
        path: ['tare'],
      })
    }
    doubts.push('Without the tare (TW on the collar) no scale reading can be given.')
    return { stop, doubts, result: {} }
  }
  const maximumGross = mass(tare.si + maximumKg, tare.plusMinus)
  if (!grossNow) {
    doubts.push('Weigh the cylinder as it stands: what it already holds is not known.')
    return { stop, doubts, result: { maximumGross } }
  }
  const plusMinus = joined(tare.plusMinus, grossNow.plusMinus)
  const width = plusMinus ?? 0
  if (grossNow.plusMinus === undefined) {
    notes.assumptions.push({
      field: 'grossNow',
      taken: 'the scale as exact',
      because: 'no uncertainty was given; write it as 41.5 ±0.1 lb and the room shrinks by it',
    })
  }
  const contentsKg = grossNow.si - tare.si
  if (contentsKg + width < 0) {
    throw new CalcError(
      'bad-input',
      `The cylinder weighs ${say(grossNow)}, less than its tare of ${say(tare)}.`,
      { hint: 'Zero the scale and read TW on the collar again.', path: ['grossNow'] },
    )
  }
  const held = Math.max(contentsKg, 0)
  if (contentsKg - width > maximumKg) {
    throw new CalcError(
      'refused',
      `The cylinder is overfull: it holds ${say(mass(held, plusMinus))} and may hold ${say(mass(maximumKg))}.`,
      {
        hint: 'Keep it cool, do not warm or move it in the sun, and transfer the excess into a second cylinder by weight.',
        path: ['grossNow'],
      },
    )
  }
  const roomKg = maximumKg - contentsKg - width
  if (roomKg <= 0) {
    const text = 'Within the uncertainty of the weights the cylinder may already be full.'
    stop.push(text)
    notes.warnings.push({ code: 'cylinder-full', message: `${text} Use another one.` })
  }
  const room = mass(Math.max(roomKg, 0))
  notes.steps.push({
    what: 'What still fits',
    formula: 'highest contents − (gross now − tare) − uncertainty of the weights',
    values: { highestContents: mass(maximumKg), grossNow, tare, uncertainty: mass(width) },
    gives: room,
  })
  return {
    stop,
    doubts,
    result: {
      maximumGross,
      contentsNow: mass(held, plusMinus),
      room,
      stopAt: mass(Math.max(tare.si + maximumKg - width, 0)),
      liquidFullNow: held > 0 ? fullAt(r, held, waterCapacity.si) : undefined,
    },
  }
}

const joined = (a: number | undefined, b: number | undefined) =>
  a === undefined && b === undefined ? undefined : Math.hypot(a ?? 0, b ?? 0)

/** Temperature at which this mass fills the cylinder with liquid; undefined when it never does below critical. */
export const fullAt = (r: Refrigerant, massKg: number, waterCapacityKg: number) => {
  const kelvin = massKg > 0 ? liquidFullTemperature(r, massKg, waterCapacityKg) : undefined
  return kelvin === undefined ? undefined : temperature(kelvin)
}
