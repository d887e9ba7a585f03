import { capital } from '../../answer/words.ts'
import { CalcError } from '../../errors.ts'
import { resolvePlace } from '../../instrument/index.ts'
import { newNotes } from '../../notes.ts'
import { type Quantity, widthOf } from '../../quantity/index.ts'
import { NAMES, SIDES, type Side } from '../../service/cooling-check/band.ts'
import { readingsOf } from '../../service/cooling-check/readings.ts'
import { PERFORMANCE_TABLES } from '../../service/cooling-check/tables.ts'
import { coolingCheck } from '../../service/cooling-check.ts'
import { defineDiagram } from '../diagram.ts'
import { sentences } from '../scene/drawing.ts'
import { inWords } from '../scene/measure.ts'
import { type CoolingPanel, drawCooling } from './draw.ts'

/** What the makers' fields are called under a side: least and most. */
const MAKERS = {
  high: ['makerHighFrom', 'makerHighTo'],
  low: ['makerLowFrom', 'makerLowTo'],
  vent: [undefined, 'makerVentTo'],
} as const

/** The readings of a running machine over the published figures that fit, with return air and vent. */
export const coolingBands = defineDiagram(coolingCheck, (input, { result }, told, frame) => {
  const { bands, tables, refrigerant } = result
  const { system } = frame
  const place = resolvePlace(input)
  const { returnAir } = readingsOf(input, place, newNotes())
  const words = (quantity: Quantity) => inWords(quantity, system)
  const mark = (quantity: Quantity, name: string) => ({
    si: quantity.si,
    plusMinus: widthOf(quantity),
    text: `${name} ${words(quantity)}`,
  })
  const limitsOf = (side: Side) =>
    MAKERS[side].flatMap((field, index) => {
      const given = field && input[field]
      if (!given) return []
      const at = given.kind === 'absolutePressure' ? place.gauge(given.si) : given
      return [{ at: at.si, text: `maker: at ${index === 0 ? 'least' : 'most'} ${words(at)}` }]
    })
  const tablesOf = (side: Side): CoolingPanel['tables'] =>
    tables.flatMap(({ id, status, [side]: row }) => {
      if (status !== 'fits' || row === undefined) return []
      const isMost =
        side === 'vent' && PERFORMANCE_TABLES.find((table) => table.id === id)?.oneVentFigure
      const label = capital(id.replaceAll('-', ' '))
      if (isMost) return [{ label, to: row.to.si, text: `at most ${words(row.to)}` }]
      const text = `${words(row.from)} to ${words(row.to)}`
      return [{ label, from: row.from.si, to: row.to.si, text }]
    })
  const panels = SIDES.flatMap((side): readonly CoolingPanel[] => {
    const { reading, sentence } = bands[side]
    const [rows, limits] = [tablesOf(side), limitsOf(side)]
    if (reading === undefined && rows.length === 0 && limits.length === 0) return []
    const isVent = side === 'vent'
    return [
      {
        name: sentence?.replace(/\.$/u, '') ?? capital(NAMES[side]),
        kind: isVent ? 'temperature' : 'gaugePressure',
        measured: isVent ? 'Temperature' : 'Pressure at the gauge',
        reading: reading && mark(reading, NAMES[side]),
        returnAir: isVent && reading ? mark(returnAir, 'return air') : undefined,
        tables: rows,
        limits,
      },
    ]
  })
  if (panels.every(({ reading }) => reading === undefined)) {
    throw new CalcError('missing-input', 'There is no reading of a running machine to draw.', {
      path: ['ventTemperature'],
      hint: 'Give the vent temperature, or the pressures while it runs.',
    })
  }
  const title = `${refrigerant}: what was read, and what is published`
  return drawCooling(
    {
      title,
      under: told,
      says: sentences(
        title,
        told,
        ...panels.flatMap(({ name, reading, returnAir: air, tables: rows, limits }) => [
          name,
          reading?.text,
          air?.text,
          ...rows.map(({ label, text }) => `${label}: ${text}`),
          ...limits.map(({ text }) => text),
        ]),
      ),
      panels,
    },
    frame,
  )
})
