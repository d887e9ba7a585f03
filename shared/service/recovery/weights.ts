import data from '../../../data/service/recovery.json' with { type: 'json' }
import { CalcError, refusal } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import { mass, type Quantity, say, temperature } from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { fillIn } from '../../sentence.ts'
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
    doubts.push(data.reasons['no-tare'])
    return { stop, doubts, result: {} }
  }
  const maximumGross = mass(tare.si + maximumKg, tare.plusMinus)
  if (!grossNow) {
    doubts.push(data.reasons['not-weighed'])
    return { stop, doubts, result: { maximumGross } }
  }
  const plusMinus = joined(tare.plusMinus, grossNow.plusMinus)
  const width = plusMinus ?? 0
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
    const [message = '', hint = ''] = data.refusals.overfull
    throw refusal(
      fillIn(message, { held: say(mass(held, plusMinus)), most: say(mass(maximumKg)) }),
      {
        hint,
        path: ['grossNow'],
        cautions: ['full-cylinder'],
      },
    )
  }
  const roomKg = maximumKg - contentsKg - width
  if (roomKg <= 0) {
    const text = data.reasons['may-be-full']
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
