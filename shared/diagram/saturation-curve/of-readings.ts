import { CalcError } from '../../errors.ts'
import { pickRefrigerant } from '../../fields/index.ts'
import type { Quantity } from '../../quantity/index.ts'
import { figures, type Side } from '../../service/readings/figures.ts'
import { measured } from '../../service/readings/measured.ts'
import { readings } from '../../service/readings.ts'
import { defineDiagram } from '../diagram.ts'
import { sentences } from '../scene/drawing.ts'
import { inWords, wordsOf } from '../scene/measure.ts'
import { type CurvePoint, type Distance, drawSaturationCurve } from './draw.ts'

/** Readings beside the lines of saturation: superheat and subcooling as distances from them. */
export const superheatSubcooling = defineDiagram(readings, (input, { result }, told, frame) => {
  const refrigerant = pickRefrigerant(input.refrigerant)
  const m = measured(refrigerant, input)
  const { low, high } = figures(m)
  const name = (what: string, side: Side, at: Quantity<'temperature'>) =>
    `${what}: ${inWords(side.reading, frame.system)}, ${inWords(at, frame.system)}`
  const pointOf = (
    what: string,
    side: Side,
    at: Quantity<'temperature'>,
  ): Omit<CurvePoint, 'number'> => ({
    text: name(what, side, at),
    temperatureK: at.si,
    pressurePa: side.absolute.si,
    plusMinusK: at.plusMinus,
    plusMinusPa: side.absolute.plusMinus,
  })
  const suction = low && m.suctionTemperature && pointOf('suction', low, m.suctionTemperature)
  const liquid = high && m.liquidTemperature && pointOf('liquid', high, m.liquidTemperature)
  const air = result.rest && low && m.ambient && pointOf('at rest', low, m.ambient)
  const points = (result.rest ? [air] : [suction, liquid]).flatMap((point) => point ?? [])
  if (points.length === 0) {
    throw new CalcError('missing-input', 'There is no temperature to draw beside its pressure.', {
      path: ['suctionTemperature'],
      hint: 'Give the suction-line temperature with the suction pressure, the liquid-line temperature with the liquid pressure, or ask for the picture pressure-enthalpy.',
    })
  }
  const { superheat, subcooling } = result
  const distances: readonly (Distance | undefined)[] = [
    suction && superheat && low.dew
      ? {
          line: 'dew',
          pressurePa: suction.pressurePa,
          fromK: low.dew.si,
          toK: suction.temperatureK,
          text: `superheat ${wordsOf('temperatureDifference', superheat.si, frame.system, superheat.plusMinus)}`,
        }
      : undefined,
    liquid && subcooling && high.bubble
      ? {
          line: 'bubble',
          pressurePa: liquid.pressurePa,
          fromK: high.bubble.si,
          toK: liquid.temperatureK,
          text: `subcooling ${wordsOf('temperatureDifference', subcooling.si, frame.system, subcooling.plusMinus)}`,
        }
      : undefined,
  ]
  const shown = distances.flatMap((entry) => entry ?? [])
  const title = `${refrigerant.info.id}: readings beside saturation`
  return drawSaturationCurve(
    {
      refrigerant,
      title,
      under: told,
      says: sentences(
        title,
        told,
        ...points.map(({ text }) => text),
        ...shown.map(({ text }) => text),
      ),
      gaugePa: (pa) => m.place.gauge(pa).si,
      points: points.map((point, index) => ({ ...point, number: String(index + 1) })),
      distances: shown,
    },
    frame,
  )
})
