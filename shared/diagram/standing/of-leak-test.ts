import { CalcError } from '../../errors.ts'
import { newNotes } from '../../notes.ts'
import { type Quantity, widthOf } from '../../quantity/index.ts'
import { holdLimit } from '../../service/evacuation/hold-limit.ts'
import { asksForStanding, readingsOf } from '../../service/leak-test/standing-readings.ts'
import { leakTest } from '../../service/leak-test.ts'
import { placeWhenNeeded } from '../../service/place-when-needed.ts'
import { defineDiagram } from '../diagram.ts'
import { inWords, wordsOf } from '../scene/measure.ts'
import { drawHold } from './draw-hold.ts'

/** A standing test: what was read, and what the temperature alone explains. */
export const pressureHold = defineDiagram(leakTest, (input, { result }, told, frame) => {
  const { standing } = result
  if (!asksForStanding(input) || !standing) {
    throw new CalcError('missing-input', 'There is no standing test to draw.', {
      path: ['startPressure'],
      hint: 'Give pressure and temperature at the start and at the end of the test.',
    })
  }
  const notes = newNotes()
  const read = readingsOf(input, placeWhenNeeded(input, notes).place, notes)
  const { start, end, fromK, toK, startPa, endPa } = read
  const { system } = frame
  const onGauge = start.kind === 'gaugePressure' && end.kind === 'gaugePressure'
  const known = (gauge: Quantity, absolute: Quantity) => ({
    pa: onGauge ? gauge.si : absolute.si,
    plusMinusPa: widthOf(gauge),
  })
  const ends = known(end, endPa)
  const limit = input.vacuumLimit === undefined ? undefined : holdLimit(input.vacuumLimit)
  const air = endPa.si - end.si
  const limitPa =
    limit?.staysPa ?? (limit?.risePa === undefined ? undefined : startPa.si + limit.risePa)
  const after = input.elapsed ? ` after ${inWords(input.elapsed, system)}` : ''
  return drawHold(
    {
      title:
        standing.kind === 'vacuum'
          ? 'Standing vacuum, start and end'
          : 'Standing pressure, start and end',
      under: told,
      says: told ?? '',
      kind: onGauge ? 'gaugePressure' : 'absolutePressure',
      start: known(start, startPa),
      end: ends,
      expected: {
        pa: ends.pa - standing.unexplained.si,
        plusMinusPa: widthOf(standing.unexplained),
      },
      startText: `start: ${inWords(start, system)}, ${inWords(fromK, system)}`,
      endText: `end${after}: ${inWords(end, system)}, ${inWords(toK, system)}`,
      leftText: `unexplained ${inWords(standing.unexplained, system)}`,
      limit:
        limitPa === undefined
          ? undefined
          : {
              pa: onGauge ? limitPa - air : limitPa,
              text: `rule: at most ${wordsOf('absolutePressure', limitPa, system)}`,
            },
    },
    frame,
  )
})
