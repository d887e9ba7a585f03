import type { Uncertain } from '../quantity/index.ts'
import {
  type Contents,
  contentsAt,
  densityUncertainty,
  propertyUncertainty,
  type Refrigerant,
} from '../refrigerant/index.ts'
import { mostOf, spanOf, widthOf } from './rest-band.ts'
import { linesAt } from './rest-lines.ts'
import type { AtRest, ContentsGiven } from './rest-types.ts'

/** Judges a pressure by the flash of the contents; readings as {@link atRest} checks them. */
export function againstContents(
  r: Refrigerant,
  pressure: Uncertain,
  temperature: Uncertain,
  { mass, volume }: ContentsGiven,
): AtRest {
  const density: Uncertain = {
    si: mass.si / volume.si,
    plusMinus:
      (mass.si / volume.si) *
      Math.hypot((mass.plusMinus ?? 0) / mass.si, (volume.plusMinus ?? 0) / volume.si),
  }
  const centre = contentsAt(r, temperature.si, density.si)
  const { holds, quality, liquidShare, pressurePa: expectedPa } = centre
  const lines = holds === 'supercritical' ? {} : linesAt(r, pressure, temperature)
  const frame = { ...lines, holds, quality, liquidShare, from: 'contents' as const }
  let mayBeFull = false
  const at = (kelvin: number, kgPerM3: number): number => {
    if (kelvin === temperature.si && kgPerM3 === density.si) return expectedPa ?? 0
    const found = contentsAt(r, kelvin, kgPerM3, centre)
    mayBeFull ||= found.holds === 'liquid-full'
    // up to the last bubble it is the bubble pressure
    return found.pressurePa ?? r.bubble.pressure(kelvin)
  }
  if (expectedPa === undefined) {
    const parts = { pressure: pressure.plusMinus ?? 0, temperature: 0, contents: 0, property: 0 }
    return { ...frame, state: 'liquid-full', parts, most: 'contents' }
  }
  const parts = {
    pressure: pressure.plusMinus ?? 0,
    temperature: spanOf(temperature, (kelvin) => at(kelvin, density.si)),
    contents: spanOf(density, (kgPerM3) => at(temperature.si, kgPerM3)),
    property: expectedPa * propertyShare(r, centre, temperature.si),
  }
  const off = pressure.si - expectedPa
  const width = widthOf(parts)
  const state = Math.abs(off) <= width ? 'at' : off > 0 ? 'above' : 'below'
  return {
    ...frame,
    // one that may be full of liquid explains any pressure above
    state: state === 'above' && mayBeFull ? 'cannot-tell' : state,
    expected: {
      si: expectedPa,
      plusMinus: Math.hypot(parts.temperature, parts.contents, parts.property),
    },
    off: { si: off, plusMinus: width },
    parts,
    most: mayBeFull && state === 'above' ? 'contents' : mostOf(parts),
  }
}

/** Relative uncertainty of the expected pressure: that of saturation, or of the vapour's density. */
function propertyShare(r: Refrigerant, { holds }: Contents, temperatureK: number): number {
  if (holds === 'two-phase') return propertyUncertainty(r, temperatureK, 'bubble').pressure
  return densityUncertainty(r, 'vapour')
}
