import { CalcError } from '../../errors.ts'
import { pickRefrigerant } from '../../fields/index.ts'
import { simulate } from '../../service/simulate.ts'
import { defineDiagram } from '../diagram.ts'
import { drawCyclesApart } from '../pressure-enthalpy/draw.ts'
import { sentences } from '../scene/drawing.ts'
import { cycleOf } from './of-cycle.ts'
import { nothingRuns, spoken } from './words.ts'

/** The sound machine's cycle and the faulty one's, a panel each on the same axes. */
export const cyclesApart = defineDiagram(simulate, (_, { result }, told, frame) => {
  const { machine, points, sound, faults, outcome } = result
  if (sound === undefined) {
    throw new CalcError('missing-input', 'The machine is sound: there is nothing beside it.', {
      path: ['fault'],
      hint: 'Put a fault in, such as undercharge.',
    })
  }
  if (points.length === 0) throw nothingRuns(outcome.state)
  if (sound.points.length === 0) throw nothingRuns(sound.outcome.state)
  const faulty = faults.map(({ fault }) => spoken(fault)).join(' and ')
  const cycles = [
    cycleOf(points, faulty, frame.system),
    cycleOf(sound.points, 'sound', frame.system),
  ]
  const title = `${machine.name}, ${machine.refrigerant}: sound and faulty on the same axes`
  return drawCyclesApart(
    {
      refrigerant: pickRefrigerant(machine.refrigerant),
      title,
      under: told,
      says: sentences(
        title,
        told,
        ...cycles.flatMap(({ texts, marks }) =>
          marks.map(({ number, text }) => `${texts.read}, ${number}: ${text}`),
        ),
      ),
      cycles,
      names: [`Faulty: ${faulty}`, 'Sound'],
    },
    frame,
  )
})
