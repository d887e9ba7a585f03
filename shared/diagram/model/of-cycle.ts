import { pickRefrigerant } from '../../fields/index.ts'
import type { Quantity } from '../../quantity/index.ts'
import { simulate } from '../../service/simulate.ts'
import { defineDiagram } from '../diagram.ts'
import type { Cycle } from '../pressure-enthalpy/cycle.ts'
import { drawPressureEnthalpy } from '../pressure-enthalpy/draw.ts'
import { sentences } from '../scene/drawing.ts'
import { inWords } from '../scene/measure.ts'
import { nothingRuns, spoken } from './words.ts'

/** A corner of the model's cycle, in the order of flow. */
export interface Corner {
  readonly name: string
  readonly pressure: Quantity
  readonly temperature: Quantity
  readonly enthalpy: Quantity
}

/** The cycle of the model with its faults, and the sound one beside it on the same plane. */
export const modelCycle = defineDiagram(simulate, (_, { result }, told, frame) => {
  const { machine, points, sound, faults, outcome } = result
  const faulty = faults.map(({ fault }) => spoken(fault)).join(' and ')
  const now =
    points.length === 0
      ? undefined
      : cycleOf(points, faulty === '' ? 'sound' : faulty, frame.system)
  const beside =
    sound === undefined || sound.points.length === 0
      ? undefined
      : cycleOf(sound.points, 'sound, in squares', frame.system)
  const cycles = [now, beside].flatMap((cycle) => cycle ?? [])
  if (now === undefined) throw nothingRuns(outcome.state)
  const title = `${machine.name}, ${machine.refrigerant}: pressure and enthalpy of the model`
  return drawPressureEnthalpy(
    {
      refrigerant: pickRefrigerant(machine.refrigerant),
      title,
      under: told,
      says: sentences(title, told, ...now.marks.map(({ number, text }) => `${number}: ${text}`)),
      cycles,
    },
    frame,
  )
})

/** Corners that get a number; the others lie close to one of them. */
const NUMBERED = ['compressor-inlet', 'compressor-outlet', 'condenser-outlet', 'evaporator-inlet']

/** A closed line through all corners, the numbered ones marked. */
export function cycleOf(corners: readonly Corner[], name: string, system: 'us' | 'si'): Cycle {
  const at = corners.map(({ pressure, enthalpy }) => ({
    pressurePa: pressure.si,
    enthalpy: enthalpy.si,
  }))
  const marked = corners.filter((corner) => NUMBERED.includes(corner.name))
  return {
    texts: { read: name, assumed: name },
    legs: [{ points: [...at, ...at.slice(0, 1)], basis: 'read' }],
    marks: marked.map((corner, index) => ({
      number: String(index + 1),
      text: `${spoken(corner.name)}: ${inWords(corner.pressure, system)}, ${inWords(corner.temperature, system)}`,
      pressurePa: corner.pressure.si,
      enthalpy: corner.enthalpy.si,
      basis: 'read',
    })),
  }
}
