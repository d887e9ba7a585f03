import type { Uncertain } from '../quantity/index.ts'
import {
  type Line,
  propertyUncertainty,
  type Refrigerant,
  saturationPressure,
} from '../refrigerant/index.ts'
import { mostOf, spanOf, widthOf } from './rest-band.ts'
import type { AtRest } from './rest-types.ts'

/** A pressure beside one line. */
interface BesideLine {
  /** The line's own pressure with the ± that temperature and property give it, Pa. */
  readonly line: Uncertain
  /** Measured less the line, Pa, and what its band is made of. */
  readonly off: number
  readonly parts: AtRest['parts']
  readonly width: number
}

/** Judges a pressure by the bubble and the dew line alone; readings as {@link atRest} checks them. */
export function againstLines(r: Refrigerant, pressure: Uncertain, temperature: Uncertain): AtRest {
  const bubble = besideLine(r, 'bubble', pressure, temperature)
  const dew = besideLine(r, 'dew', pressure, temperature)
  const from = nearer(bubble.off, dew.off)
  const { off, width, parts } = from === 'bubble' ? bubble : dew
  return {
    state: stateOf(r, bubble, dew),
    bubble: bubble.line,
    dew: dew.line,
    off: { si: off, plusMinus: width },
    from,
    parts,
    most: mostOf(parts),
  }
}

/** Both lines with their bands, beside a judgement that does not rest on them. */
export function linesAt(r: Refrigerant, pressure: Uncertain, temperature: Uncertain) {
  return {
    bubble: besideLine(r, 'bubble', pressure, temperature).line,
    dew: besideLine(r, 'dew', pressure, temperature).line,
  }
}

function besideLine(
  r: Refrigerant,
  line: Line,
  pressure: Uncertain,
  temperature: Uncertain,
): BesideLine {
  const at = (kelvin: number) => saturationPressure(r, kelvin, line)
  const saturated = at(temperature.si)
  const parts = {
    pressure: pressure.plusMinus ?? 0,
    temperature: spanOf(temperature, at),
    contents: 0,
    property: saturated * propertyUncertainty(r, temperature.si, line).pressure,
  }
  return {
    line: { si: saturated, plusMinus: Math.hypot(parts.temperature, parts.property) },
    off: pressure.si - saturated,
    parts,
    width: widthOf(parts),
  }
}

/** The dew line for a pressure below it or nearer to it, else the bubble line. */
const nearer = (aboveBubble: number, aboveDew: number): Line =>
  Math.abs(aboveDew) < Math.abs(aboveBubble) ? 'dew' : 'bubble'

/**
 * Where the lines are practically one, a reading that is neither above nor below is `at`. Between
 * lines that lie apart, a band that reaches over either says nothing yet: a tighter one may.
 */
function stateOf(r: Refrigerant, bubble: BesideLine, dew: BesideLine): AtRest['state'] {
  if (bubble.off > bubble.width) return 'above'
  if (dew.off < -dew.width) return 'below'
  if (r.info.kind !== 'zeotrope') return 'at'
  return bubble.off <= -bubble.width && dew.off >= dew.width ? 'between' : 'cannot-tell'
}
