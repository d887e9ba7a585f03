import { pickRefrigerant } from '../../fields/index.ts'
import { resolvePlace } from '../../instrument/index.ts'
import { saturation } from '../../service/saturation.ts'
import { defineDiagram } from '../diagram.ts'
import { sentences } from '../scene/drawing.ts'
import { inWords } from '../scene/measure.ts'
import { type CurvePoint, drawSaturationCurve } from './draw.ts'

/** Where a pressure or a temperature lies on the lines of saturation. */
export const saturationCurve = defineDiagram(saturation, (input, { result }, told, frame) => {
  const refrigerant = pickRefrigerant(input.refrigerant)
  const place = resolvePlace(input)
  const pure = result.lines === 'one'
  const byTemperature = result.given === 'temperature'
  const isAbsolute = input.pressure?.kind === 'absolutePressure'
  const lines = pure ? (['dew'] as const) : (['bubble', 'dew'] as const)
  const points = lines.map((line, index): CurvePoint => {
    const { temperature, gaugePressure, absolutePressure } = result[line]
    const pressure = isAbsolute ? absolutePressure : gaugePressure
    const words = [inWords(pressure, frame.system), inWords(temperature, frame.system)]
    return {
      number: String(index + 1),
      text: `${pure ? 'saturation' : line}: ${(byTemperature ? [...words].reverse() : words).join(', ')}`,
      temperatureK: temperature.si,
      pressurePa: absolutePressure.si,
      plusMinusK: temperature.plusMinus,
      plusMinusPa: absolutePressure.plusMinus,
    }
  })
  const title = `${refrigerant.info.id}: saturation`
  return drawSaturationCurve(
    {
      refrigerant,
      title,
      under: told,
      says: sentences(title, told, ...points.map(({ text }) => text)),
      gaugePa: isAbsolute ? undefined : (pa) => place.gauge(pa).si,
      points,
      distances: [],
    },
    frame,
  )
})
