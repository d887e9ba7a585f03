import { CalcError } from '../../errors.ts'
import { newNotes } from '../../notes.ts'
import { holdLimit } from '../../service/evacuation/hold-limit.ts'
import { readRise } from '../../service/evacuation/rise-part.ts'
import type { RiseFit } from '../../service/evacuation/rise-shape.ts'
import type { RiseJudgement } from '../../service/evacuation/rise-view.ts'
import { targetOf } from '../../service/evacuation/target-part.ts'
import { coldest, evacuation } from '../../service/evacuation.ts'
import { placeWhenNeeded } from '../../service/place-when-needed.ts'
import { defineDiagram } from '../diagram.ts'
import { inWords, wordsOf } from '../scene/measure.ts'
import { drawRise, type Level } from './draw-rise.ts'

/** A standing vacuum over time: readings, the shape that fits best, and what must not be passed. */
export const vacuumRise = defineDiagram(evacuation, (input, { result }, told, frame) => {
  const notes = newNotes()
  const { place } = placeWhenNeeded(input, notes)
  const target = targetOf(input, place, notes)
  const read = readRise(input, coldest(input, notes), target, place, notes)
  if (!read) {
    throw new CalcError('missing-input', 'There is no rise to draw.', {
      path: ['rise'],
      hint: 'Give the readings of the standing vacuum: time and pressure of each.',
    })
  }
  const { points, levelPlusMinusPa, judged } = read
  const { system } = frame
  const rule = input.limit === undefined ? undefined : holdLimit(input.limit)
  const start = points[0]
  const { fit, name } = bestOf(judged)
  const levels: readonly Level[] = [
    {
      pressurePa: target.holdBelow.si,
      text: `stay below ${inWords(result.target.holdBelow, system)}`,
      look: 'limit',
      must: true,
    },
    ...(rule?.staysPa === undefined
      ? []
      : [
          level(
            rule.staysPa,
            `rule: at most ${wordsOf('absolutePressure', rule.staysPa, system)}`,
            true,
          ),
        ]),
    ...(rule?.risePa === undefined || !start
      ? []
      : [
          level(
            start.pressurePa + rule.risePa,
            `rule: at most ${wordsOf('pressureDifference', rule.risePa, system)} more`,
            true,
          ),
        ]),
    level(
      judged.vapourPa,
      `water boils at ${wordsOf('absolutePressure', judged.vapourPa, system)}`,
      false,
    ),
  ]
  return drawRise(
    {
      title: 'Standing vacuum',
      under: told,
      says: told ?? '',
      readings: points,
      plusMinusPa: levelPlusMinusPa,
      fitted: pressureOf(fit),
      fittedS: (points[judged.usedPoints - 1]?.timeS ?? 0) - (start?.timeS ?? 0),
      fitText: `fits best: ${name}`,
      levels,
      watch: {
        timeS: target.holdFor.si,
        text: `watch ${inWords(result.target.holdFor, system)}`,
      },
    },
    frame,
  )
})

const level = (pressurePa: number, text: string, must: boolean): Level => ({
  pressurePa,
  text,
  look: 'other-limit',
  must,
})

const NAMES = {
  flat: 'no rise',
  steady: 'a steady rise',
  levelling: 'levels off where water can push it',
  both: 'levels off, with a steady rise beside it',
  free: 'levels off',
  freeAndSteady: 'levels off, with a steady rise beside it',
  slowing: 'slows down on its way to the air',
} as const

/** The shape with the least information criterion, the simpler of equals. */
function bestOf({ fits }: RiseJudgement) {
  const names = Object.keys(NAMES) as (keyof typeof NAMES)[]
  const best = names.reduce((least, name) => (fits[name].bic < fits[least].bic ? name : least))
  return { fit: fits[best], name: NAMES[best] }
}

const pressureOf =
  ({ startPa, slope, stepPa, constantS }: RiseFit) =>
  (afterS: number) =>
    startPa + slope * afterS + (stepPa === 0 ? 0 : stepPa * (1 - Math.exp(-afterS / constantS)))
