import { CalcError } from '../../errors.ts'
import { pickRefrigerant } from '../../fields/index.ts'
import type { Quantity } from '../../quantity/index.ts'
import {
  phaseAt,
  type Refrigerant,
  type State,
  saturatedCurves,
  saturationTemperature,
  stateAtDensity,
  stateAtPressure,
} from '../../refrigerant/index.ts'
import { compressed, type PlanePoint } from '../../refrigerant/isolines.ts'
import { type Figures, figures, type Side } from '../../service/readings/figures.ts'
import { type Measured, measured } from '../../service/readings/measured.ts'
import { readings } from '../../service/readings.ts'
import { defineDiagram } from '../diagram.ts'
import { sentences } from '../scene/drawing.ts'
import { inWords } from '../scene/measure.ts'
import type { Basis, Cycle, Leg, Mark } from './cycle.ts'
import { drawPressureEnthalpy } from './draw.ts'

/** The cycle that readings describe, on the refrigerant's pressure-enthalpy plane. */
export const pressureEnthalpy = defineDiagram(readings, (input, { result }, told, frame) => {
  const refrigerant = pickRefrigerant(input.refrigerant)
  const m = measured(refrigerant, input)
  const cycle = result.rest ? atRest(m) : running(m, figures(m), frame.system)
  const title = `${refrigerant.info.id}: pressure and enthalpy`
  return drawPressureEnthalpy(
    {
      refrigerant,
      title,
      under: told,
      says: sentences(title, told, ...cycle.marks.map(({ number, text }) => `${number}: ${text}`)),
      cycles: [cycle],
    },
    frame,
  )
})

type Point = PlanePoint & { readonly basis: Basis; readonly words: string }

/** Where a pressure and a temperature lie; on a line of saturation where the temperature does not say. */
function placed(
  r: Refrigerant,
  pressurePa: number,
  read: Quantity<'temperature'> | undefined,
  line: 'bubble' | 'dew',
): PlanePoint & { readonly basis: Basis; readonly state: State | undefined } {
  const phase = line === 'bubble' ? 'liquid' : 'vapour'
  if (read) {
    const there = phaseAt(r, read.si, pressurePa)
    if (there === phase || there === 'supercritical') {
      const state = stateAtPressure(r, read.si, pressurePa, phase)
      return { pressurePa, enthalpy: state.enthalpy, basis: 'read', state }
    }
    // What was read on the other side of both lines is drawn where it was read: a wrong reading shows.
    if (there !== 'two-phase') {
      const state = stateAtPressure(r, read.si, pressurePa, there)
      return { pressurePa, enthalpy: state.enthalpy, basis: 'read', state }
    }
  }
  const temperatureK = saturationTemperature(r, pressurePa, line)
  const enthalpy = saturatedCurves(r)[phase].enthalpy(temperatureK)
  return {
    pressurePa,
    enthalpy,
    basis: 'assumed',
    state: stateAtDensity(r, temperatureK, r[line].density(temperatureK)),
  }
}

/** Nothing where it cannot be placed, as without a temperature above the critical pressure. */
function tryPlaced(...given: Parameters<typeof placed>) {
  try {
    return placed(...given)
  } catch (error) {
    if (error instanceof CalcError) return undefined
    throw error
  }
}

function running(m: Measured, { low, high }: Figures, system: 'us' | 'si'): Cycle {
  const r = m.refrigerant
  const words = (what: string, side: Side | undefined, at: Quantity<'temperature'> | undefined) =>
    [what, side && inWords(side.reading, system), at && inWords(at, system)]
      .filter((text) => text !== undefined)
      .join(', ')
  const named = (
    found: ReturnType<typeof tryPlaced>,
    what: string,
    side: Side | undefined,
    at: Quantity<'temperature'> | undefined,
    assumed: string,
  ): Point | undefined =>
    found && {
      ...found,
      words: `${words(what, side, at)}${found.basis === 'read' ? '' : `: ${at ? assumed : 'temperature not read'}`}`,
    }
  const inlet = low && tryPlaced(r, low.absolute.si, m.suctionTemperature, 'dew')
  const suction = named(inlet, 'suction', low, m.suctionTemperature, 'on the line, no superheat')
  const outlet = high && tryPlaced(r, high.absolute.si, m.liquidTemperature, 'bubble')
  const liquid = named(outlet, 'liquid', high, m.liquidTemperature, 'on the line, no subcooling')
  const discharge = dischargeOf(m, low, high, inlet?.state, system)
  const evaporator: Point | undefined = low &&
    liquid && {
      pressurePa: low.absolute.si,
      enthalpy: liquid.enthalpy,
      basis: liquid.basis,
      words: 'evaporator inlet: as much heat in it as in the liquid',
    }
  const legs: readonly (Leg | undefined)[] = [
    discharge?.leg,
    between(discharge?.point, liquid),
    between(liquid, evaporator),
    between(evaporator, suction),
  ]
  const marks = [suction, discharge?.point, liquid, evaporator]
  return {
    texts: { read: 'cycle: read', assumed: 'cycle: assumed' },
    legs: legs.flatMap((leg) => leg ?? []),
    marks: marks.flatMap((point, index): readonly Mark[] =>
      point ? [{ ...point, number: String(index + 1), text: point.words }] : [],
    ),
  }
}

const between = (a: Point | undefined, b: Point | undefined): Leg | undefined =>
  a && b && { points: [a, b], basis: a.basis === 'read' && b.basis === 'read' ? 'read' : 'assumed' }

/** Where the compressor delivers to: as read, else as a compressor without losses would. */
function dischargeOf(
  m: Measured,
  low: Side | undefined,
  high: Side | undefined,
  inlet: State | undefined,
  system: 'us' | 'si',
): { readonly point: Point; readonly leg: Leg | undefined } | undefined {
  const reading = m.dischargePressure ?? m.highPressure
  if (!reading || !high) return undefined
  const pressurePa = m.place.absolute(reading).si
  const pressure = inWords(reading, system)
  const start = low && inlet && { pressurePa: low.absolute.si, enthalpy: inlet.enthalpy }
  const read =
    m.dischargeTemperature && tryPlaced(m.refrigerant, pressurePa, m.dischargeTemperature, 'dew')
  if (read && m.dischargeTemperature) {
    const words = `discharge, ${pressure}, ${inWords(m.dischargeTemperature, system)}`
    const point: Point = { ...read, words }
    return { point, leg: start && { points: [start, read], basis: read.basis } }
  }
  if (!inlet || pressurePa <= inlet.pressurePa) return undefined
  try {
    const points = compressed(m.refrigerant, inlet, pressurePa)
    const last = points[points.length - 1] as State
    const words = `discharge, ${pressure}: temperature not read, drawn without losses`
    return {
      point: { pressurePa, enthalpy: last.enthalpy, basis: 'assumed', words },
      leg: { points, basis: 'assumed' },
    }
  } catch (error) {
    if (error instanceof CalcError) return undefined
    throw error
  }
}

const AT_REST = { read: 'pressure of both gauges, alike', assumed: '' }

/** A machine at rest has one pressure: a level line across the two-phase region. */
function atRest(m: Measured): Cycle {
  const reading = m.suctionPressure ?? m.highPressure
  const pressurePa = reading ? m.place.absolute(reading).si : undefined
  if (pressurePa === undefined) return { texts: AT_REST, legs: [], marks: [] }
  const ends = (['bubble', 'dew'] as const).flatMap(
    (line) => tryPlaced(m.refrigerant, pressurePa, undefined, line) ?? [],
  )
  return {
    texts: AT_REST,
    legs: ends.length === 2 ? [{ points: ends, basis: 'read' }] : [],
    marks: [],
  }
}
