import { refusal } from '../../errors.ts'
import { isCarbonDioxide } from '../../fields/index.ts'
import type { Place } from '../../instrument/index.ts'
import { absolutePressure, type PressureReading, say, surelyAbove } from '../../quantity/index.ts'
import { type Refrigerant, saturationPressure } from '../../refrigerant/index.ts'

/**
 * Liquid R-744 goes in only where the system surely stands above its triple pressure: below it, and
 * in a vacuum that nobody measured, it turns to dry ice.
 *
 * The triple pressure is where the published equation's saturation line begins.
 *
 * @throws {CalcError} `refused`, level stop.
 */
export function checkDryIce(
  r: Refrigerant,
  phase: 'liquid' | 'vapour' | undefined,
  systemPressure: PressureReading | undefined,
  place: Place,
): void {
  if (!isCarbonDioxide(r) || phase !== 'liquid') return
  const triplePa = saturationPressure(r, r.bubble.fromK, 'bubble')
  if (systemPressure && surelyAbove(place.absolute(systemPressure), triplePa)) return
  throw refusal(
    `Not so: liquid R-744 turns to dry ice below ${say(absolutePressure(triplePa))}. Vapour first until the gauge surely reads above that.`,
    {
      path: systemPressure ? ['systemPressure'] : ['phase'],
      hint: systemPressure
        ? 'Let vapour in until the gauge stands well above it, then read again.'
        : 'Charge vapour first (phase vapour); give the gauge reading as systemPressure once it stands above that.',
      cautions: ['dry-ice', 'carbon-dioxide'],
    },
  )
}
