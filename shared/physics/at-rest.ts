import { CalcError } from '../errors.ts'
import type { Uncertain } from '../quantity/index.ts'
import type { Refrigerant } from '../refrigerant/index.ts'
import { againstContents } from './rest-contents.ts'
import { againstLines } from './rest-lines.ts'
import type { AtRest, ContentsGiven } from './rest-types.ts'

export type { AtRest, ContentsGiven, Settles } from './rest-types.ts'

/**
 * What a pressure at rest says of a refrigerant in equilibrium with itself, no flow, one temperature
 * all over: below saturation, between the lines of a blend, at saturation, above it, or not to be
 * told from these readings.
 *
 * With mass and volume given, the pressure is judged against the flash of those contents, which for
 * a blend is one pressure and not two lines. The band holds the ± of pressure, temperature and
 * contents and the property's own uncertainty (all coverage factor 2).
 *
 * @param pressure - Pa absolute, its ± that of the gauge and the barometer together.
 * @param temperature - K.
 * @param contents - kg of refrigerant and m³ of inner volume.
 * @throws {CalcError} `out-of-range`, `above-critical`, `below-triple` as saturation does (R-744
 *   above 31 °C without its contents, among others); `bad-input` for a ± as large as the reading.
 */
export function atRest(
  r: Refrigerant,
  pressure: Uncertain,
  temperature: Uncertain,
  contents?: ContentsGiven,
): AtRest {
  checkReading('pressure', pressure)
  checkReading('temperature', temperature)
  if (contents === undefined) return againstLines(r, pressure, temperature)
  checkReading('contents', contents.mass)
  checkReading('volume', contents.volume)
  return againstContents(r, pressure, temperature, contents)
}

function checkReading(field: string, { si, plusMinus = 0 }: Uncertain): void {
  if (si > 0 && si < Infinity && plusMinus >= 0 && plusMinus < si) return
  throw new CalcError(
    'bad-input',
    si > 0 ? 'A reading is less certain than it is large.' : 'A reading must be above zero.',
    { path: [field], hint: 'Give the reading with the ± of the instrument, such as 104 ±1 psig.' },
  )
}
