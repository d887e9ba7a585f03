import { simulate } from '../../service/simulate.ts'
import { type BarPicture, drawBars } from '../bars/draw.ts'
import { defineDiagram } from '../diagram.ts'
import { sentences } from '../scene/drawing.ts'
import { inWords } from '../scene/measure.ts'
import { nothingRuns, spoken } from './words.ts'

/** Where the refrigerant is: its mass by part of the model, and that of the sound machine beside it. */
export const massByPart = defineDiagram(simulate, (_, { result }, told, frame) => {
  const { machine, parts, sound, outcome } = result
  if (parts.length === 0) throw nothingRuns(outcome.state)
  const title = `${machine.name}: where the refrigerant is`
  const rows = parts.map(({ part, mass }) => {
    const beside = sound?.parts.find((entry) => entry.part === part)?.mass
    return {
      label: spoken(part),
      pieces: [{ from: 0, to: mass.si, fill: 'plain' as const }],
      beside: beside?.si,
      text: inWords(mass, frame.system),
    }
  })
  const compares = rows.some(({ beside }) => beside !== undefined)
  const picture: BarPicture = {
    title,
    under: told,
    says: sentences(title, told, ...rows.map(({ label, text }) => `${label}: ${text}`)),
    kind: 'mass',
    measured: 'Mass',
    panels: [{ name: 'Refrigerant by part', rows, zones: [], lines: [] }],
    key: [
      { fill: 'plain', text: compares ? 'with its faults' : 'in the sound machine' },
      ...(compares ? [{ fill: 'beside' as const, text: 'in the sound machine' }] : []),
    ],
  }
  return drawBars(picture, frame)
})
